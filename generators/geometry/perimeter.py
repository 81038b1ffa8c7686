"""Perimeters: sides that are equal, sides without a number, and a side from the perimeter.

England's programme of study for key stage 3 (2013) asks pupils to "calculate and solve problems
involving perimeters of 2-D shapes (including circles)" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.geometry import _areas as a
from generators.geometry._areas import length, said_question, unit_of, whole
from generators.geometry._perimeter_drawn import (
    ell_shape,
    isosceles,
    kite,
    parallelogram,
    shape_with_notch,
    tee_shape,
)
from generators.geometry._rectangles_in_brief import PERIMETERS
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_REGULAR = {5: "regular pentagon", 6: "regular hexagon", 8: "regular octagon"}
_FENCED = (
    "A vegetable plot",
    "A goat pen",
    "A car park at a bus depot",
    "A play area",
    "A bike yard",
    "A nursery bed",
)


def _support(kind: int, p: int, q: int) -> bool:
    if kind == 0:  # an isosceles triangle
        return 5 <= q <= 14 and 4 <= p < 2 * q - 2 and p != q and (p + q) % 2 == 0
    # a parallelogram, or a kite
    return p > q >= 4 and p <= 2 * q + 2 and (p + q) % 2 == kind - 1


def _core(kind: int, p: int, q: int, c: int, d: int) -> bool:
    even = (p - c) % 2 == 0 and p - c >= 4 and d + 2 <= q <= p and 4 * c >= p and 4 * d >= q
    if kind == 0:  # a T
        return even and p < 17 and (p + q + c + d) % 3 == 1
    if kind == 1:  # a piece cut out
        return even and 2 * c >= p >= 3 * q // 2 and q - d >= 4 and p < 13
    if d != 2:
        return False
    if kind == 2:  # an isosceles triangle, from its perimeter
        return c == 2 and q < 2 * p and q != p and (p + q) % 2 == 1
    # a regular polygon, from its perimeter
    return c in _REGULAR and q == 5 and p > 3


def _challenge(kind: int, p: int, q: int, c: int, d: int) -> bool:
    if kind == 0:  # an L of which two sides have no number
        fits = c + 2 <= p and d + 2 <= q <= p + 2 and 4 * c >= p and 4 * d >= q
        return fits and 5 * min(c, d) >= p and (2 * p + q + 3 * c + d) % 5 == 1
    if kind == 1:  # a square round as far as a rectangle
        return c == 3 and d == 2 and q < p and (p + q) % 2 == 0
    # the cost of a fence
    return c in (3, 4, 5) and d == 2 and q < p and (p + q) % 3 == c % 3 and p % 2 == 1


@register
class Perimeter(Topic):
    """How far it is round a shape."""

    id = "geometry.perimeter"
    title = "Perimeter"
    statements = ("geometry.perimeter-area",)
    misconceptions = (
        *(a.SHOWN_SIDES, a.TWO_SIDES, a.AREA_FOR_PERIMETER, a.ONE_SIDE_TAKEN, a.NOT_SHARED),
        *(a.SUBTRACTED, a.ROUND_RECTANGLE, a.AREA_KEPT, a.FOUR_SIDES, a.SIDES_MULTIPLIED),
    )
    prerequisites = ("geometry.area-of-rectangles",)
    spaces = {
        Tier.SUPPORT: Space(_support, kind=range(3), p=range(4, 31), q=range(4, 18)),
        Tier.CORE: Space(
            _core, kind=range(4), p=range(4, 25), q=range(5, 13), c=range(2, 10), d=range(2, 8)
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            p=range(7, 25),
            q=range(5, 12),
            c=range(2, 10),
            d=range(2, 8),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.perimeter",
        kinds.working_goes_wrong(
            {
                a.SHOWN_SIDES: (e.left_out,),
                a.SIDES_MULTIPLIED: (e.turned,),
                a.TWO_SIDES: (e.first_half,),
                a.NOT_SHARED: (e.cut_short,),
            }
        ),
    )
    spaces = with_brief(spaces, PERIMETERS)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, p, q, *rest = values
        if tier is Tier.SUPPORT:
            return (isosceles, parallelogram, kite)[kind](p, q)
        if tier is Tier.CORE:
            return (tee_shape, shape_with_notch, _third_side, _regular)[kind](p, q, *rest)
        return (ell_shape, _square, _fence)[kind](p, q, *rest)


def _third_side(p: int, q: int, c: int, d: int) -> Draft:
    unit = unit_of(p + q)
    side, around, key = length(p, unit), length(2 * p + q, unit), length(q, unit)
    both = t.times(t.Int(2), side)
    return said_question(
        "An isosceles triangle has two equal sides. Each of the equal sides is {s} long. "
        "The perimeter is {p}. How long is the third side?",
        t.sub(around, both),
        key,
        [
            Step(
                "Find how long the equal sides are together.", t.equals(both, length(2 * p, unit))
            ),
            Step(
                "Take that away from the perimeter.",
                t.equals(t.sub(around, length(2 * p, unit)), key),
            ),
        ],
        [(a.ONE_SIDE_TAKEN, p + q), (a.NOT_SHARED, whole(p + q, 2)), (a.TWO_SIDES, 2 * p)],
        ("third", p, q),
        (2,),
        s=side,
        p=around,
    )


def _regular(p: int, q: int, c: int, d: int) -> Draft:
    unit = unit_of(p)
    around, key = length(p * c, unit), length(p, unit)
    target = t.divide(around, t.Int(c))
    return said_question(
        f"A {_REGULAR[c]} has a perimeter of {{p}}. Work out the length of one side.",
        target,
        key,
        [Step(f"It has {c} equal sides. Divide by {c}.", t.equals(target, key))],
        [
            (a.SUBTRACTED, p * c - c),
            (a.FOUR_SIDES, whole(p * c, 4)),
            (a.TWO_SIDES, whole(p * c, 2)),
            (a.SIDES_MULTIPLIED, p * c * c),
        ],
        ("regular", p, c),
        (c,),
        p=around,
    )


def _square(p: int, q: int, c: int, d: int) -> Draft:
    unit = unit_of(p)
    first, second = length(p, unit), length(q, unit)
    key, around = length(Fraction(p + q, 2), unit), length(2 * (p + q), unit)
    return said_question(
        "A square has the same perimeter as a rectangle that is {p} by {q}. "
        "Work out the length of one side of the square.",
        t.divide(t.Bracket(t.times(t.Int(2), t.Bracket(t.add(first, second)))), t.Int(4)),
        key,
        [
            Step(
                "Find the perimeter of the rectangle.",
                t.equals(t.add(first, second, first, second), around),
            ),
            Step(
                "A square has four equal sides. Divide by 4.",
                t.equals(t.divide(around, t.Int(4)), key),
            ),
        ],
        [
            (a.NOT_SHARED, 2 * (p + q)),
            (a.TWO_SIDES, whole(p + q, 4)),
            (a.AREA_KEPT, _root(p * q)),
            (a.ONE_SIDE_TAKEN, p + q),
        ],
        ("square", p, q),
        (2, 4),
        p=first,
        q=second,
    )


def _root(n: int) -> int | None:
    return next((k for k in range(1, n) if k * k == n), None)


def _fence(p: int, q: int, c: int, d: int) -> Draft:
    what = by_turns(_FENCED, p + q)
    first, second, each = length(p, "m"), length(q, "m"), t.Money(t.Int(c))
    around = 2 * (p + q)
    key = t.Money(t.Int(around * c))
    return said_question(
        f"{what} is a rectangle, {{p}} by {{q}}. A fence goes all the way round it. "
        "One metre of fence costs {each}. How much does the fence cost?",
        t.times(t.Int(2), t.Bracket(t.add(t.Int(p), t.Int(q))), each),
        key,
        [
            Step(
                "Find the perimeter.",
                t.equals(t.add(first, second, first, second), length(around, "m")),
            ),
            Step("Multiply by the cost of one metre.", t.equals(t.times(t.Int(around), each), key)),
        ],
        [(a.TWO_SIDES, (p + q) * c), (a.AREA_FOR_PERIMETER, p * q * c)],
        ("fence", p, q, c),
        (2,),
        p=first,
        q=second,
        each=each,
    )
