"""How the subject of a formula is asked for, and how a wrong one is tried."""

from __future__ import annotations

from itembank.items.item import Draft, Misconception, Step, Subject, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


def subject_question(
    formula: t.Relation,
    x: t.Sym,
    value: t.Node,
    lines: list[tuple[str, t.Relation]],
    wrong: list[tuple[Misconception, t.Node]],
    twin: tuple[object, ...],
    story: str = "",
) -> Draft:
    """Return the question to make x, which comes to `value`, the subject of a formula."""
    key = t.equals(x, value)
    steps = [Step(say, line) for say, line in lines]
    if lines[-1][1] != key:
        steps.append(Step(f"Write {x.name} on the left.", key))
    text = "Make {x} the subject of {f}."
    if story:
        text = story + " is given by the formula {f}. Make {x} the subject of the formula."
    found: list[Wrong] = [(which, t.equals(x, node)) for which, node in wrong]
    return Draft(
        prompt(text, x=x, f=formula),
        Subject(formula, x),
        key,
        "subject",
        tuple(steps),
        slips(*found, key=key),
        twin,
    )


def back_check(y: str, x: str, formula: t.Node, at: int, value: int) -> str:
    """Ask to try a number: the formula there and back."""
    return f"If {x} is {at}, {y} is {value}. What does your formula give for {y} = {value}?"


def lots_of(x: t.Sym, a: int) -> t.Node:
    """Return a letter so many times."""
    return t.juxt(t.Int(a), x)
