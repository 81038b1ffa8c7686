"""Amounts of a unit, and questions in words whose answers are amounts."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from itembank.figures.written_as import in_unit
from itembank.items.item import Draft, Find, Misconception, Slip, Step, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

Number = int | Fraction


def length(size: Number, unit: str) -> t.Node:
    """Return an amount of a unit, as a decimal where it is no whole number.

    >>> from itembank.notation.line import line
    >>> line(length(Fraction(9, 2), "cm")), line(length(12, "m^2"))
    ('4.5 cm', '12 m^2')
    """
    if size.denominator == 1:
        whole = t.num(size.numerator)
        return t.Quantity(whole, unit) if unit else whole
    number = in_unit(Fraction(size), "")
    if not isinstance(number, t.Int):
        tenths = Fraction(size) * 10
        places = "1" if tenths.denominator == 1 else "2"
        digits = str(int(Fraction(size) * (10 if places == "1" else 100)))
        digits = digits.rjust(int(places) + 1, "0")
        number = t.Dec(digits[: -int(places)], digits[-int(places) :])
    return t.Quantity(number, unit) if unit else number


def said_question(
    words: str,
    target: t.Node,
    key: t.Node,
    steps: Sequence[Step],
    wrong: Sequence[tuple[Misconception, Number | None]],
    twin: tuple[object, ...],
    constants: tuple[int, ...] = (),
    **shown: t.Node,
) -> Draft:
    """Return a question in words with its model."""
    form = "quantity" if isinstance(key, t.Quantity) else "integer"
    if isinstance(key, t.Money):
        form = "money"
    return Draft(
        prompt(words, **shown),
        Find(target),
        key,
        form,
        tuple(steps),
        amounts(wrong, key),
        twin,
        constants=constants,
    )


def amounts(wrong: Sequence[tuple[Misconception, Number | None]], key: t.Node) -> tuple[Slip, ...]:
    """Return wrong answers, given as numbers above 0, in the unit of the key."""
    unit = key.unit if isinstance(key, t.Quantity) else ""
    made: list[Wrong] = []
    for mistake, size in wrong:
        if size is None or size <= 0:
            continue
        if isinstance(key, t.Money):
            made.append((mistake, t.Money(t.Int(int(size)))))
        else:
            made.append((mistake, length(size, unit)))
    return slips(*made, key=key)
