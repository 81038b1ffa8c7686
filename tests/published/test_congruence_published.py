"""Euclid's propositions on equal triangles (Elements, book I), from memory: 4, 8 and 26.

That two sides and an angle across from the shorter are not enough is common in school books.
"""

from __future__ import annotations

import pytest

from itembank.figures.kinds.plane.congruence import Told, condition

SIDES, ANGLES = {0: 3, 1: 5, 2: 7}, {0: 22, 1: 38, 2: 120}
"""3, 5 and 7 make a triangle with an angle of 120° (its others are rounded here)."""


def told(sides: tuple[int, ...], angles: tuple[int, ...]) -> Told:
    return Told({k: SIDES[k] for k in sides}, {k: ANGLES[k] for k in angles})


@pytest.mark.parametrize(
    ("proposition", "sides", "angles", "name"),
    [
        ("I.4", (0, 1), (2,), "SAS"),
        ("I.8", (0, 1, 2), (), "SSS"),
        ("I.26, the side between", (2,), (0, 1), "ASA"),
        ("I.26, the side across", (0,), (0, 1), "ASA"),
        ("no proposition: three angles", (), (0, 1, 2), "none"),
        ("no proposition: the shorter side swings", (0, 1), (0,), "none"),
    ],
)
def test_euclids_propositions(proposition, sides, angles, name) -> None:
    assert condition(told(sides, angles), told(sides, angles)) == name
