"""How answers in fractions are asked for and brought to their form."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from itembank.items.forms.form_rules import number_node, simplest_node
from itembank.items.item import Step
from itembank.notation import tree as t

SIMPLEST = " Give your answer in its simplest form."
AS_MIXED = " Give your answer as a mixed number in its simplest form."


def answer_form(value: Fraction) -> tuple[str, str]:
    """Return the sentence that says what form is wanted, and the form's name.

    >>> answer_form(Fraction(7, 4))
    (' Give your answer as a mixed number in its simplest form.', 'mixed')
    """
    if value > 1 and value.denominator > 1:
        return AS_MIXED, "mixed"
    return SIMPLEST, "simplest"


def finish(top: int, bottom: int) -> tuple[Step, ...]:
    """Return the lines that bring ``top/bottom`` to its simplest form, none if it is there.

    >>> [step.say for step in finish(10, 4)]
    ['Divide the numerator and denominator by 2.', 'Write it as a mixed number.']
    """
    value, common = Fraction(top, bottom), gcd(top, bottom)
    steps = []
    if value.denominator == 1:
        return (
            Step(
                "Divide the numerator by the denominator.",
                t.equals(t.frac(top, bottom), number_node(value)),
            ),
        )
    if common > 1:
        cancelled = t.equals(t.frac(top, bottom), number_node(value))
        steps.append(Step(f"Divide the numerator and denominator by {common}.", cancelled))
    if value > 1:
        whole = t.equals(number_node(value), simplest_node(value))
        steps.append(Step("Write it as a mixed number.", whole))
    return tuple(steps)


def mixed(whole: int, top: int, bottom: int) -> t.Node:
    """Return ``whole top/bottom`` as written, without the part that is 0.

    >>> mixed(0, 3, 4) == t.frac(3, 4), mixed(2, 0, 4)
    (True, Int(n=2))
    """
    if not top:
        return t.Int(whole)
    return t.Mixed(whole, top, bottom) if whole else t.frac(top, bottom)
