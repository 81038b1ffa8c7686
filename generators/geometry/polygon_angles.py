"""Interior and exterior angles of polygons, and how many sides a polygon has.

England's programme of study for key stage 3 (2013) asks pupils to use the sum of angles in a
triangle "to deduce the angle sum in any polygon, and to derive properties of regular polygons"
(from memory).
"""

from __future__ import annotations

from typing import Any

from generators.geometry import _misconceptions as m
from generators.geometry._angles import several_wrong
from generators.geometry._polygon_sums import (
    exterior_from_sum,
    fourth_exterior,
    sides_from_sum,
    sum_inside,
)
from generators.geometry._polygons_drawn import (
    SOME,
    drawn_expressions,
    drawn_missing,
    fits_drawn,
    irregular,
    last_angle,
    letter_parts,
)
from generators.geometry._polygons_in_brief import BRIEF
from generators.geometry._regular_polygons import (
    REGULAR,
    exterior_angle,
    interior_angle,
    interior_beside,
    sides_from_exterior,
    sides_from_interior,
    sides_from_times,
)
from itembank.items import kinds
from itembank.items.item import Draft, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic


def _support(kind: int, n: int, b: int) -> bool:
    if kind == 0:  # the sum of the interior angles
        return 5 <= n <= 20 and b == 0
    if kind == 1:  # an exterior angle of a regular polygon
        return n in REGULAR[:12] and b == 0
    if kind == 2:  # the interior angle beside an exterior one
        return n in REGULAR and b == 0
    # the fourth exterior angle of a quadrilateral
    known = (n, 105 - b // 2, 80 + b)
    x = 360 - sum(known)
    return 60 <= n <= 110 and x not in known and 55 <= x <= 130 and x != 90 and n % 4 == 1


def _core(kind: int, n: int, b: int) -> bool:
    if kind == 0:  # sides from an exterior angle
        return n in REGULAR and b == 0 and n != 60
    if kind == 1:  # an interior angle of a regular polygon
        return n in REGULAR and b == 0
    if kind == 2:  # sides from the sum
        return 7 <= n <= 22 and b == 0
    count = kind + 2  # a pentagon or a hexagon with one angle missing
    return n <= 12 and fits_drawn(count, n - 12, b)


def _challenge(kind: int, n: int, b: int) -> bool:
    if kind == 0:  # sides from an interior angle
        return n in REGULAR and b == 0 and n != 6
    if kind == 1:  # how many times as large the interior angle is
        return 2 <= n <= 17 and b == 0 and n != 4
    if kind == 2:  # an exterior angle from the sum of the interior ones
        return n in REGULAR and b == 0
    given = irregular(5, n % 25 - 12, b)
    times = 2 + n // 25
    if given[0] % times or n >= 75 or not fits_drawn(5, n % 25 - 12, b):
        return False
    value = given[0] // times
    parts, _ = letter_parts(n, b)
    plain = parts[1][1] not in (0, value) and value not in given
    whole = [*parts, (0, last_angle(5, given))]
    return plain and several_wrong(whole, value, 540)


@register
class PolygonAngles(Topic):
    """The angles of polygons, regular ones too."""

    id = "geometry.polygon-angles"
    title = "Angles of polygons"
    statements = ("geometry.angle-sums",)
    misconceptions = (
        *(m.SUM_WITHOUT_TWO, m.ONE_TOO_FEW, m.OTHER_POLYGON, m.HALF_TURN_SHARED),
        *(m.EXTERIOR_FOR_INTERIOR, m.LEFT_OUT, m.REST_OF_TURN, m.COPIED, m.FORGETS_SIDES),
        *(m.TWO_NOT_ADDED, m.INTERIOR_OVER_360, m.SIDES_ONE_OFF, m.SUBTRACTS_ANGLE),
        *(m.NUMBERS_LEFT_OUT, m.NUMBERS_WRONG_WAY, m.ANGLE_NOT_LETTER, m.SET_EQUAL),
    )
    prerequisites = ("geometry.angles-in-triangles", "geometry.angles-in-quadrilaterals")
    spare = "few regular polygons have whole degrees, and a sum belongs to each number of sides"
    spaces = {
        Tier.SUPPORT: Space(_support, kind=range(4), n=range(5, 111), b=range(0, 35, 6)),
        Tier.CORE: Space(_core, kind=range(5), n=range(73), b=SOME),
        Tier.CHALLENGE: Space(_challenge, kind=range(4), n=range(75), b=SOME),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.polygon-angles",
        kinds.working_goes_wrong(
            {
                m.LEFT_OUT: (e.everywhere(e.left_out),),
                m.REST_OF_TURN: (e.out_of(360),),
                m.EXTERIOR_FOR_INTERIOR: (e.cut_short,),
                m.TWO_NOT_ADDED: (e.cut_short,),
                m.SUM_WITHOUT_TWO: (e.everywhere(e.left_out),),
            }
        ),
    )
    spaces = with_brief(spaces, BRIEF)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, n, b = values
        if tier is Tier.SUPPORT:
            return (sum_inside, exterior_angle, interior_beside, fourth_exterior)[kind](n, b)
        if tier is Tier.CORE:
            if kind > 2:
                return drawn_missing(kind + 2, n, b)
            return (sides_from_exterior, interior_angle, sides_from_sum)[kind](n)
        return (sides_from_interior, sides_from_times, exterior_from_sum, drawn_expressions)[kind](
            n, b
        )
