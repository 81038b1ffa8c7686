"""Congruent triangles: the partner of a side or an angle, and the conditions SSS, SAS, ASA, RHS.

England's programme of study for key stage 3 (2013) asks pupils to "know and use the criteria for
congruence of triangles" (from memory). What is told never holds for certain by a drawing: the
triangles are not drawn accurately.
"""

from __future__ import annotations

from typing import Any

from generators.geometry import _congruent_mistakes as m
from generators.geometry._congruent_conditions import Why, moved, named, swinging, third_angle
from generators.geometry._congruent_drawn import TRIANGLES
from generators.geometry._congruent_partners import Partner, found_angle, partner
from generators.geometry._congruent_told import TOLD
from itembank.items import kinds
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic

_ROWS = range(len(TRIANGLES))


class Hard:
    """What is asked in the challenge tier."""

    THIRD_ANGLE, SWINGING, FOUND_ANGLE = range(3)


def _support(kind: int, row: int, corner: int) -> bool:
    match kind:
        case Why.SSS | Why.ANGLES:
            return corner == 0
        case Why.LEGS:
            return corner == 2
        case Why.RHS:
            return corner < 2
    return True


def _core(kind: int, row: int, corner: int, other: int) -> bool:
    if kind == Partner.SAS_ANGLE and _crowded(corner, other):
        return False
    if kind == Partner.SSS_ANGLE and TRIANGLES[row].angles[(corner + other) % 3] == 60:
        return False
    return (kind != Partner.SAS_SIDE or other == 0) and (row + kind + corner + other) % 3 != 0


def _crowded(corner: int, other: int) -> bool:
    """Tell whether two angles would be told at the narrow end, where there is no room."""
    return corner == 2 and other == 1


def _elsewhere(kind: int, row: int, corner: int, other: int) -> bool:
    # The other angles stand too close to a side, and so does the last row's.
    return kind == Why.ASA_MOVED or (corner == 1 and row < len(TRIANGLES) - 1)


def _challenge(kind: int, row: int, corner: int, other: int) -> bool:
    return other == 0 if kind == Hard.SWINGING else not _crowded(corner, other)


@register
class CongruentTriangles(Topic):
    """The condition named; a partner found, or parts moved; a third angle, or a swinging side."""

    id = "geometry.congruent-triangles"
    title = "Congruent triangles"
    statements = ("geometry.congruence",)
    misconceptions = m.MISTAKES
    prerequisites = ("geometry.angles-in-triangles",)
    spare = "sixteen triangles with room for their labels, each told in eleven ways in support"
    spaces = {
        Tier.SUPPORT: Space(_support, kind=range(6), row=_ROWS, corner=range(3)),
        Tier.CORE: Space(_core, kind=range(4), row=_ROWS, corner=range(3), other=range(2)).then(
            _elsewhere,
            kind=(Why.SAS_MOVED, Why.ASA_MOVED),
            row=_ROWS,
            corner=range(3),
            other=(0,),
        ),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(3), row=_ROWS, corner=range(3), other=range(2)
        ),
    }
    spaces = with_brief(spaces, TOLD)
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return named(*values)
        if tier is Tier.CORE:
            elsewhere = values[0] in (Why.SAS_MOVED, Why.ASA_MOVED)
            return moved(*values[:3]) if elsewhere else partner(*values)
        kind, *rest = values
        return (third_angle, swinging, found_angle)[kind](*rest)
