"""The working that solves a linear equation, one balance step a line."""

from __future__ import annotations

from fractions import Fraction

from generators.equations._words import Number, shown, shown_term, size
from generators.equations._writing import side, solution
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Step
from itembank.notation import tree as t


def take_number(b: Number) -> str:
    """Return the sentence that undoes ``+ b``."""
    if b > 0:
        return f"Subtract {shown(b)} from both sides."
    return f"Add {shown(-b)} to both sides."


def take_letter(a: Number, x: t.Sym) -> str:
    """Return the sentence that undoes ``+ ax``."""
    verb, word = ("Subtract", "from") if a > 0 else ("Add", "to")
    return f"{verb} {shown_term(size(a), x)} {word} both sides."


def balance(x: t.Sym, a: Number, b: Number, c: Number, d: Number) -> tuple[Step, ...]:
    """Return the working that solves ``ax + b = cx + d``, letters to the side with more.

    >>> for step in balance(t.Sym("x"), 5, 1, 2, 13):
    ...     print(step.say)
    Subtract 2x from both sides.
    Subtract 1 from both sides.
    Divide both sides by 3.
    """
    steps: list[Step] = []
    right = a < c
    if right:
        # Solve it as if turned round, so that the letter keeps a positive coefficient.
        a, b, c, d = c, d, a, b

    def line(left: t.Node, other: t.Node) -> t.Relation:
        return t.equals(other, left) if right else t.equals(left, other)

    if c:
        say = take_letter(c, x)
        a = a - c
        last = a == 1 and not b
        steps.append(Step(say, solution(x, d) if last else line(side(a, x, b), number_node(d))))
    if b:
        d = d - b
        last = a == 1
        steps.append(
            Step(take_number(b), solution(x, d) if last else line(side(a, x), number_node(d)))
        )
    if a != 1:
        steps.append(Step(f"Divide both sides by {shown(a)}.", solution(x, Fraction(d) / a)))
    elif not steps:
        steps.append(Step("Swap the sides.", solution(x, d)))
    return tuple(steps)
