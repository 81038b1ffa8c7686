"""Rates that join two measures: speed, density, pressure and their like.

An amount is a rate times a base: a distance is a speed times a time, a mass a density times a
volume.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from generators.ratio._parts import amount
from itembank.items.item import Misconception, Slip
from itembank.items.wrong_answers import slips


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
