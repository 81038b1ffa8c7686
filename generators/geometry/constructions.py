"""Constructions with ruler and compasses: what was constructed, and what follows from it.

England's programme of study for key stage 3 (2013) asks pupils to "derive and use the standard
ruler and compass constructions (perpendicular bisector of a line segment, constructing a
perpendicular to a given line from/at a given point, bisecting a given angle)" (from memory). The
drawing itself is left to a person: here the arcs are drawn, and pupils say what they have made.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from generators.geometry import _constructions_followed as followed
from generators.geometry import _constructions_named as names
from generators.geometry._construction_mistakes import EVERY
from generators.geometry._constructions_told import with_told
from itembank.items import kinds
from itembank.items.item import Draft, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic

_MADE: dict[str, Callable[[int, int], Draft]] = {
    "name": names.name,
    "as far": names.as_far,
    "shortest": names.shortest,
    "part of a line": followed.part_of_line,
    "part of an angle": followed.part_of_angle,
    "half of odd": followed.part_of_angle,
    "whole line": followed.whole_line,
    "whole angle": followed.whole_angle,
    "known": followed.known,
    "joined": followed.joined,
    "quarter": followed.quarter,
    "from a quarter": followed.from_quarter,
    "known twice": followed.known_twice,
    "back to the base": followed.base,
    "letter in an angle": followed.letter_in_angle,
    "letter in a length": followed.letter_in_length,
}


def _support(ask: str, n: int, k: int) -> bool:
    if ask == "part of a line":
        return 6 <= n <= 60 and n % 2 == 0 and k == n % 3
    if ask == "part of an angle":
        return 30 <= n <= 150 and n % 2 == 0 and k == 0
    if ask == "whole line":
        return 6 <= n <= 45 and k == n % 3
    if ask == "whole angle":
        return 16 <= n <= 74 and k == 0
    return n < 6  # as far from


def _core(ask: str, n: int, k: int) -> bool:
    if ask == "name":
        return n < names.COUNT
    if ask == "known":
        return n < 12 and k < 2
    if ask == "joined":
        return _triangle(n) and k < 2
    if ask == "shortest":
        return n < 6
    return 31 <= n <= 149 and n % 4 == 3 and k == 0  # half of an odd number of degrees


def _triangle(n: int) -> bool:
    """Tell whether an angle at the base leaves room, and no two angles are equal by chance."""
    return 33 <= n <= 58 and n != 45


def _challenge(ask: str, n: int, k: int) -> bool:
    if ask == "quarter":
        return 60 <= n <= 150 and n % 2 == 0 and k < 2
    if ask == "from a quarter":
        return 15 <= n <= 37 and k < 2
    if ask == "known twice":
        return n < 12 and k < 2
    if ask == "back to the base":
        return _triangle(n) and k < 2
    a, b, x = followed.expression(n, k)
    half = a * x + b
    least, most = (15, 74) if ask == "letter in an angle" else (5, 40)
    apart = len({wrong for _, wrong in followed.wrong_letters(a, b, x)} - {None, x}) > 1
    return least <= half <= most and n < 76 and b != 0 and apart


@register
class Constructions(Topic):
    """Halves and wholes; what arcs have made, and known angles; two bisectors, and letters."""

    id = "geometry.constructions"
    title = "Constructions with ruler and compasses"
    statements = ("geometry.constructions",)
    prerequisites = ("geometry.angles-in-triangles", "geometry.loci")
    misconceptions = EVERY
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            ask=("part of a line", "part of an angle", "whole line", "whole angle", "as far"),
            n=range(151),
            k=range(4),
        ),
        Tier.CORE: Space(
            _core,
            ask=("name", "known", "joined", "shortest", "half of odd"),
            n=range(150),
            k=range(3),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            ask=(
                *("quarter", "from a quarter", "known twice", "back to the base"),
                *("letter in an angle", "letter in a length"),
            ),
            n=range(151),
            k=range(3),
        ),
    }
    spaces = with_told(kinds.with_statements(spaces))

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, n, k = values
        return _MADE[ask](n, k)
