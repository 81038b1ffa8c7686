"""Two equations: how they are written, asked about and worked from one unknown to the other."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.asks import Solve
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Misconception, Step, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_X, _Y = (t.Sym("x"), t.Sym("y"))


def row_of(a: int, b: int, total: int) -> t.Relation:
    """Return ax + by = total as it is written."""
    return t.equals(t.add(t.juxt(t.num(a), _X), t.juxt(t.num(b), _Y)), t.num(total))


def both_values(x: Fraction | int, y: Fraction | int) -> t.Listing:
    """Return the values of x and y as a listing."""
    return t.Listing((t.equals(_X, number_node(x)), t.equals(_Y, number_node(y))))


def other_value(total: int, a: int, b: int, x: Fraction) -> Fraction:
    """Return y of ax + by = total."""
    return (total - a * x) / Fraction(b)


def pair_question(
    first: t.Relation,
    second: t.Relation,
    x: int,
    y: int,
    steps: tuple[Step, ...],
    wrong: list[tuple[Misconception, tuple[Fraction | int, Fraction | int] | None]],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question to solve two equations in x and y."""
    key = both_values(x, y)
    found: list[Wrong] = [(which, both_values(*pair)) for which, pair in wrong if pair is not None]
    return Draft(
        prompt("Solve the simultaneous equations {p} and {q}.", p=first, q=second),
        Solve((first, second)),
        key,
        "roots",
        (*steps, Step("Write both values.", key)),
        slips(*found, key=key),
        twin,
    )


def substituted(which: str, a: int, b: int, total: int, x: int, y: int) -> tuple[Step, ...]:
    """Return the lines that find y from ax + by = total."""
    lots = t.juxt(t.num(b), _Y)
    line = t.equals(t.add(t.num(a * x), lots), t.num(total))
    rest = t.equals(lots, t.num(total - a * x))
    steps = [
        Step(f"Substitute x = {x} in the {which} equation.", line),
        Step(f"Subtract {a * x} from both sides.", rest),
    ]
    if b != 1:
        steps.append(Step(f"Divide both sides by {b}.", t.equals(_Y, t.num(y))))
    return tuple(steps)


def lots_of(count: int, total: int, x: int) -> tuple[Step, ...]:
    """Return the working from so many x to one."""
    if count == 1:
        return ()
    shown = str(count).replace("-", "−")
    return (Step(f"Divide both sides by {shown}.", t.equals(_X, t.num(x))),)
