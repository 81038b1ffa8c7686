"""Rates that join two measures: speed, density, pressure and their like.

An amount is a rate times a base: a distance is a speed times a time, a mass a density times a
volume.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any

from generators.ratio._parts import amount
from itembank.items.item import Draft, Find, Misconception, Slip, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def written(top: int, bottom: int, places: int = 2) -> Fraction | None:
    """Return a quotient if it is positive and ends after so many places, else None.

    >>> written(9, 4), written(1, 3), written(-2, 1)
    (Fraction(9, 4), None, None)
    """
    return Fraction(top, bottom) if top > 0 and top * 10**places % bottom == 0 else None


def apart(key: Fraction | int, *wrong: Fraction | int | None) -> bool:
    """Tell whether at least two mistakes give different wrong answers.

    >>> apart(4, 5, None, 4), apart(4, 5, 6)
    (False, True)
    """
    return len({value for value in wrong if value is not None and value > 0 and value != key}) > 1


def wrong_amounts(
    unit: str,
    key: Fraction | int,
    mistakes: Iterable[Misconception],
    found: Iterable[Fraction | int | None],
) -> tuple[Slip, ...]:
    """Return the wrong answers, in a unit, that are positive and not the key."""
    pairs = (
        (mistake, None if value is None or value <= 0 else amount(value, unit))
        for mistake, value in zip(mistakes, found, strict=True)
    )
    return slips(*pairs, key=amount(key, unit))


def by_formula(
    text: str,
    shown: Mapping[str, t.Node],
    asked: t.Node,
    key: t.Node,
    say: str,
    likely: tuple[Slip, ...],
    twin: tuple[Any, ...],
    form: str = "quantity",
) -> Draft:
    """Return the question for one of rate, base and amount, where the other two are told.

    >>> mass, volume = amount(54, "g"), amount(20, "cm^3")
    >>> draft = by_formula(
    ...     "Work out the density of {m} in {v}.", {"m": mass, "v": volume}, t.divide(mass, volume),
    ...     amount(Fraction(27, 10), "g/cm^3"), "Density is mass divided by volume.", (), (),
    ... )
    >>> [step.say for step in draft.steps]
    ['Density is mass divided by volume.']
    """
    x = t.Sym("x")
    return Draft(
        prompt(text, **shown),
        Find(x, (t.equals(x, asked),)),
        key,
        form,
        (Step(say, t.equals(asked, key)),),
        likely,
        twin,
    )
