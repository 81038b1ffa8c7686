"""What follows from a construction: which lengths are in what proportion, how large angles are.

Lengths of one group are so many times a length that all of them share. An angle is so many degrees
and so many times the angle that the construction begins with.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

HALVED = {"angle bisector": 2, "equilateral triangle": 2, "perpendicular at a point on a line": 2}
"""Constructions of an angle ABC, and how often it may be bisected; BD and BE do that."""
LETTERS = {
    "perpendicular bisector": "ABCDM",
    "perpendicular from a point to a line": "ABPQN",
    **dict.fromkeys(HALVED, "ABCDE"),
}
"""The points of each construction, as they are called in this file."""


class Shown(NamedTuple):
    """Lengths with their group and how many of its unit; angles as degrees and times the first."""

    lengths: dict[str, tuple[str, Fraction]]
    angles: dict[str, tuple[Fraction, Fraction]]


def begins_with(shape: str) -> Fraction | None:
    """Return the angle ABC that a construction makes by itself, None where it is given.

    >>> begins_with("equilateral triangle")
    Fraction(60, 1)
    """
    return {
        "equilateral triangle": Fraction(60),
        "perpendicular at a point on a line": Fraction(90),
    }.get(shape)


@lru_cache(maxsize=512)
def shown(shape: str, letters: str, halved: int, joined: bool) -> Shown:
    """Return what follows, under the letters that are printed.

    >>> facts = shown("perpendicular bisector", "PQRST", 0, False)
    >>> facts.lengths["PQ"], facts.angles["PTR"]
    (('along', Fraction(2, 1)), (Fraction(90, 1), Fraction(0, 1)))
    """
    facts = _at_right_angles(shape, joined) if shape not in HALVED else _of_angle(shape, halved)
    names = str.maketrans(dict(zip(LETTERS[shape], letters, strict=False)))
    return Shown(
        {name.translate(names): value for name, value in facts.lengths.items()},
        {name.translate(names): value for name, value in facts.angles.items()},
    )


def _at_right_angles(shape: str, joined: bool) -> Shown:
    right = (Fraction(90), Fraction(0))
    single, double = Fraction(1), Fraction(2)
    if shape == "perpendicular from a point to a line":
        return Shown(
            {"PQ": ("across", double), "PN": ("across", single), "NQ": ("across", single)},
            dict.fromkeys(("PNA", "PNB", "QNA", "QNB"), right),
        )
    lengths = dict.fromkeys(("AM", "MB"), ("along", single)) | {"AB": ("along", double)}
    lengths |= {"CM": ("across", single), "MD": ("across", single), "CD": ("across", double)}
    lengths |= dict.fromkeys(("AC", "BC"), ("joined", single)) if joined else {}
    angles = dict.fromkeys(("AMC", "BMC", "AMD", "BMD"), right)
    if joined:
        base, rest = (Fraction(0), single), (Fraction(90), -single)
        angles |= {"CAB": base, "CBA": base, "ACM": rest, "BCM": rest}
        angles["ACB"] = (Fraction(180), -double)
    return Shown(lengths, angles)


def _of_angle(shape: str, halved: int) -> Shown:
    parts = {"ABC": Fraction(1)}
    if halved:
        parts |= {"ABD": Fraction(1, 2), "DBC": Fraction(1, 2)}
    if halved > 1:
        parts |= {"EBC": Fraction(1, 4), "DBE": Fraction(1, 4), "ABE": Fraction(3, 4)}
    begun = begins_with(shape)
    angles = {
        name: (Fraction(0), part) if begun is None else (begun * part, Fraction(0))
        for name, part in parts.items()
    }
    sides = ("AB", "BC", "CA") if begun == 60 else ()
    return Shown({name: ("sides", Fraction(1)) for name in sides}, angles)
