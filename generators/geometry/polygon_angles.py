"""Interior and exterior angles of polygons, and how many sides a polygon has.

England's programme of study for key stage 3 (2013) asks pupils to use the sum of angles in a
triangle "to deduce the angle sum in any polygon, and to derive properties of regular polygons"
(from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from generators._corners import polygon_corners
from generators.geometry import _misconceptions as m
from generators.geometry._angles import (
    deg,
    degrees_of,
    left_over,
    letter_of,
    several_wrong,
    size_question,
    solving,
    value_letter,
    value_question,
    whole_number,
    wrong_values,
)
from itembank.figures.kinds.polygon import Polygon
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_REGULAR = (5, 6, 8, 9, 10, 12, 15, 18, 20, 24, 30, 36, 40, 45, 60, 72)
"""Numbers of sides with whole degrees for each angle."""
_SOME = (0, 4, -7, 10, -12, 15)
"""By how much angles of an irregular polygon are off those of a regular one."""


def _irregular(count: int, first: int, second: int) -> list[int]:
    """Return the angles of a polygon that are given; what is left for the last is its angle."""
    middle = 180 * (count - 2) // count
    given = [middle + first, middle + second]
    given += [middle + (-3, 6, -11)[(k + first) % 3] for k in range(count - 3)]
    return given


def _last(count: int, given: Sequence[int]) -> int:
    return 180 * (count - 2) - sum(given)


def _fits(count: int, first: int, second: int) -> bool:
    given = _irregular(count, first, second)
    last = _last(count, given)
    middle = 180 * (count - 2) // count
    near = abs(last - middle) <= 24
    return near and last not in given and 90 not in (*given, last) and max(*given, last) < 155


def _support(kind: int, n: int, b: int) -> bool:
    if kind == 0:  # the sum of the interior angles
        return 5 <= n <= 20 and b == 0
    if kind == 1:  # an exterior angle of a regular polygon
        return n in _REGULAR[:12] and b == 0
    if kind == 2:  # the interior angle beside an exterior one
        return n in _REGULAR and b == 0
    # the fourth exterior angle of a quadrilateral
    known = (n, 105 - b // 2, 80 + b)
    x = 360 - sum(known)
    return 60 <= n <= 110 and x not in known and 55 <= x <= 130 and x != 90 and n % 4 == 1


def _core(kind: int, n: int, b: int) -> bool:
    if kind == 0:  # sides from an exterior angle
        return n in _REGULAR and b == 0 and n != 60
    if kind == 1:  # an interior angle of a regular polygon
        return n in _REGULAR and b == 0
    if kind == 2:  # sides from the sum
        return 7 <= n <= 22 and b == 0
    count = kind + 2  # a pentagon or a hexagon with one angle missing
    return n <= 12 and _fits(count, n - 12, b)


def _parts(n: int, b: int) -> tuple[list[tuple[int, int]], int]:
    """Return the angles px + q of a pentagon with its letter's value."""
    given = _irregular(5, n % 25 - 12, b)
    times = 2 + n // 25
    value = given[0] // times
    return [(times, 0), (1, given[1] - value), *((0, size) for size in given[2:])], value


def _challenge(kind: int, n: int, b: int) -> bool:
    if kind == 0:  # sides from an interior angle
        return n in _REGULAR and b == 0 and n != 6
    if kind == 1:  # how many times as large the interior angle is
        return 2 <= n <= 17 and b == 0 and n != 4
    if kind == 2:  # an exterior angle from the sum of the interior ones
        return n in _REGULAR and b == 0
    given = _irregular(5, n % 25 - 12, b)
    times = 2 + n // 25
    if given[0] % times or n >= 75 or not _fits(5, n % 25 - 12, b):
        return False
    value = given[0] // times
    parts, _ = _parts(n, b)
    plain = parts[1][1] not in (0, value) and value not in given
    whole = [*parts, (0, _last(5, given))]
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
        Tier.CORE: Space(_core, kind=range(5), n=range(73), b=_SOME),
        Tier.CHALLENGE: Space(_challenge, kind=range(4), n=range(75), b=_SOME),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, n, b = values
        if tier is Tier.SUPPORT:
            return (_sum, _exterior, _beside, _fourth)[kind](n, b)
        if tier is Tier.CORE:
            if kind > 2:
                return _missing(kind + 2, n, b)
            return (_sides, _interior, _sides_of_sum)[kind](n)
        return (_sides_of_interior, _times, _exterior_of_sum, _expressions)[kind](n, b)


def _draft(
    text: str,
    target: t.Node,
    key: t.Node,
    steps: Sequence[Step],
    wrong: Sequence[Wrong],
    twin: tuple[object, ...],
    constants: tuple[int, ...],
    **shown: t.Node,
) -> Draft:
    angle = isinstance(key, t.Quantity)
    write = (lambda size: deg(int(size))) if angle else (lambda size: t.Int(int(size)))
    return Draft(
        prompt(text, **shown),
        Find(target),
        key,
        "quantity" if angle else "integer",
        tuple(steps),
        slips(*wrong, write=write, key=key),
        twin,
        constants=constants,
    )


def _sum(n: int, b: int) -> Draft:
    whole = 180 * (n - 2)
    sides = t.Int(n)
    triangles = t.sub(sides, t.Int(2))
    target = t.times(t.Bracket(triangles), deg(180))
    steps = [
        Step(
            f"A polygon with {n} sides splits into {n} − 2 triangles.",
            t.equals(triangles, t.Int(n - 2)),
        ),
        Step(
            "The angles of each triangle add up to 180°.",
            t.equals(t.times(t.Int(n - 2), deg(180)), deg(whole)),
        ),
    ]
    wrong: list[Wrong] = [
        (m.SUM_WITHOUT_TWO, 180 * n),
        (m.ONE_TOO_FEW, 180 * (n - 1)),
        (m.OTHER_POLYGON, 360),
    ]
    text = "A polygon has {n} sides. Work out the sum of its interior angles in degrees."
    return _draft(text, target, deg(whole), steps, wrong, ("sum", n), (2, 180), n=sides)


def _exterior(n: int, b: int) -> Draft:
    size = 360 // n
    target = t.divide(deg(360), t.Int(n))
    steps = [
        Step("The exterior angles of any polygon add up to 360°.", t.equals(target, deg(size)))
    ]
    wrong: list[Wrong] = [
        (m.HALF_TURN_SHARED, whole_number(180, n)),
        (m.EXTERIOR_FOR_INTERIOR, 180 - size),
        (m.FORGETS_SIDES, 360),
    ]
    text = (
        "A regular polygon has {n} sides. Work out the size of each of its exterior angles "
        "in degrees."
    )
    return _draft(text, target, deg(size), steps, wrong, ("exterior", n), (360,), n=t.Int(n))


def _beside(n: int, b: int) -> Draft:
    size = 360 // n
    given = deg(size)
    target = t.sub(deg(180), given)
    steps = [
        Step(
            "The interior and the exterior angle stand on a straight line.",
            t.equals(target, deg(180 - size)),
        )
    ]
    wrong: list[Wrong] = [(m.REST_OF_TURN, 360 - size), (m.COPIED, size)]
    text = (
        "Each exterior angle of a regular polygon is {a}. Work out the size of each interior angle."
    )
    return _draft(text, target, deg(180 - size), steps, wrong, ("beside", n), (180,), a=given)


def _fourth(n: int, b: int) -> Draft:
    known = (n, 105 - b // 2, 80 + b)
    size = 360 - sum(known)
    first, second, third = map(deg, known)
    target = t.sub(deg(360), first, second, third)
    steps = [
        Step(
            "The exterior angles of any polygon add up to 360°.",
            t.equals(t.add(first, second, third), deg(sum(known))),
        ),
        Step(
            "Subtract the three that you know.",
            t.equals(t.sub(deg(360), deg(sum(known))), deg(size)),
        ),
    ]
    wrong: list[Wrong] = [
        (m.LEFT_OUT, 360 - known[0] - known[1]),
        (m.EXTERIOR_FOR_INTERIOR, 180 - size),
    ]
    text = (
        "Three exterior angles of a quadrilateral are {a}, {b} and {c}. "
        "Work out the size of the fourth exterior angle."
    )
    return _draft(
        text, target, deg(size), steps, wrong, ("fourth", n, b), (360,), a=first, b=second, c=third
    )


def _sides(n: int) -> Draft:
    given = deg(360 // n)
    target = t.divide(deg(360), given)
    steps = [
        Step(
            "The exterior angles add up to 360°. See how many of them there are.",
            t.equals(target, t.Int(n)),
        )
    ]
    wrong: list[Wrong] = [
        (m.HALF_TURN_SHARED, whole_number(180, 360 // n)),
        (m.SUBTRACTS_ANGLE, 360 - 360 // n),
        (m.EXTERIOR_FOR_INTERIOR, whole_number(360, 180 - 360 // n)),
        (m.TWO_NOT_ADDED, n - 2),
    ]
    text = "Each exterior angle of a regular polygon is {a}. How many sides does the polygon have?"
    return _draft(text, target, t.Int(n), steps, wrong, ("sides", n), (360,), a=given)


def _interior(n: int) -> Draft:
    size = 180 - 360 // n
    target = t.sub(deg(180), t.divide(deg(360), t.Int(n)))
    steps = [
        Step(
            "The exterior angles add up to 360°. Find one of them.",
            t.equals(t.divide(deg(360), t.Int(n)), deg(360 // n)),
        ),
        Step(
            "The interior and the exterior angle stand on a straight line.",
            t.equals(t.sub(deg(180), deg(360 // n)), deg(size)),
        ),
    ]
    wrong: list[Wrong] = [
        (m.EXTERIOR_FOR_INTERIOR, 360 // n),
        (m.FORGETS_SIDES, 180 * (n - 2)),
        (m.HALF_TURN_SHARED, 180 - 180 // n if 180 % n == 0 else None),
    ]
    text = (
        "A regular polygon has {n} sides. Work out the size of each of its interior angles "
        "in degrees."
    )
    return _draft(text, target, deg(size), steps, wrong, ("interior", n), (180, 360), n=t.Int(n))


def _sides_of_sum(n: int) -> Draft:
    given = deg(180 * (n - 2))
    target = t.add(t.divide(given, deg(180)), t.Int(2))
    steps = [
        Step(
            "See how many triangles the polygon splits into.",
            t.equals(t.divide(given, deg(180)), t.Int(n - 2)),
        ),
        Step(
            "A polygon has 2 sides more than that.",
            t.equals(t.add(t.Int(n - 2), t.Int(2)), t.Int(n)),
        ),
    ]
    wrong: list[Wrong] = [
        (m.TWO_NOT_ADDED, n - 2),
        (m.ONE_TOO_FEW, n - 1),
        (m.OTHER_POLYGON, whole_number(n - 2, 2)),
    ]
    text = "The interior angles of a polygon add up to {a}. How many sides does the polygon have?"
    return _draft(text, target, t.Int(n), steps, wrong, ("sum sides", n), (180, 2), a=given)


def _missing(count: int, n: int, b: int) -> Draft:
    given = _irregular(count, n - 12, b)
    size, whole = _last(count, given), 180 * (count - 2)
    x = letter_of(n, b)
    angles = [*given, size]
    labels: list[t.Node] = [*map(deg, given), x]
    figure = _drawn(angles, labels)
    name = "pentagon" if count == 5 else "hexagon"
    steps = [
        Step(
            f"A {name} splits into {count - 2} triangles.",
            t.equals(t.times(t.Int(count - 2), deg(180)), deg(whole)),
        ),
        *left_over(f"So its angles add up to {whole}°.", x, whole, given),
    ]
    short = whole - 180 - sum(given)
    wrong: list[Wrong] = [
        (m.ONE_TOO_FEW, size + 180),
        (m.LEFT_OUT, size + given[-1]),
        (m.COPIED, given[-1] if short < 0 else None),
    ]
    return size_question(figure, x, size, steps, wrong, (count, n, b))


def _drawn(angles: Sequence[int], labels: Sequence[t.Node]) -> Polygon:
    named = "ABCDEF"[: len(angles)]
    return Polygon(
        polygon_corners(angles), angles=tuple(zip(named, labels, strict=True)), accurate=False
    )


def _sides_of_interior(n: int, b: int) -> Draft:
    outside = 360 // n
    given = deg(180 - outside)
    target = t.divide(deg(360), t.Bracket(t.sub(deg(180), given)))
    steps = [
        Step(
            "Find the exterior angle: it makes a straight line with the interior one.",
            t.equals(t.sub(deg(180), given), deg(outside)),
        ),
        Step(
            "The exterior angles add up to 360°. See how many of them there are.",
            t.equals(t.divide(deg(360), deg(outside)), t.Int(n)),
        ),
    ]
    wrong: list[Wrong] = [
        (m.INTERIOR_OVER_360, whole_number(360, 180 - outside)),
        (m.HALF_TURN_SHARED, whole_number(180, outside)),
        (m.SUBTRACTS_ANGLE, outside),
        (m.TWO_NOT_ADDED, n - 2),
    ]
    text = "Each interior angle of a regular polygon is {a}. How many sides does the polygon have?"
    return _draft(text, target, t.Int(n), steps, wrong, ("from interior", n), (180, 360), a=given)


def _times(n: int, b: int) -> Draft:
    times = t.Int(n)
    parts = t.add(times, t.Int(1))
    target = t.divide(t.Int(360), t.Bracket(t.divide(t.Int(180), t.Bracket(parts))))
    steps = [
        Step(
            f"The interior angle is {n} parts and the exterior angle 1 part of 180°.",
            t.equals(parts, t.Int(n + 1)),
        ),
    ]
    if 180 % (n + 1) == 0:
        outside = 180 // (n + 1)
        steps += [
            Step(
                "Find the exterior angle in degrees.",
                t.equals(t.divide(t.Int(180), t.Int(n + 1)), t.Int(outside)),
            ),
            Step(
                "The exterior angles add up to 360°. See how many of them there are.",
                t.equals(t.divide(t.Int(360), t.Int(outside)), t.Int(2 * n + 2)),
            ),
        ]
    else:
        steps.append(
            Step(
                f"So {n + 1} exterior angles make 180°, and twice as many make 360°.",
                t.equals(t.times(t.Int(2), t.Int(n + 1)), t.Int(2 * n + 2)),
            )
        )
    wrong: list[Wrong] = [(m.SIDES_ONE_OFF, 2 * n), (m.HALF_TURN_SHARED, n + 1)]
    text = (
        "Each interior angle of a regular polygon is {n} times as large as each exterior angle. "
        "How many sides does the polygon have?"
    )
    return _draft(
        text, target, t.Int(2 * n + 2), steps, wrong, ("times", n), (180, 360, 1), n=times
    )


def _exterior_of_sum(n: int, b: int) -> Draft:
    given, size = deg(180 * (n - 2)), 360 // n
    sides = t.add(t.divide(given, deg(180)), t.Int(2))
    target = t.divide(deg(360), t.Bracket(sides))
    steps = [
        Step(
            "See how many triangles the polygon splits into.",
            t.equals(t.divide(given, deg(180)), t.Int(n - 2)),
        ),
        Step(
            "A polygon has 2 sides more than that.",
            t.equals(t.add(t.Int(n - 2), t.Int(2)), t.Int(n)),
        ),
        Step(
            "The exterior angles add up to 360°.", t.equals(t.divide(deg(360), t.Int(n)), deg(size))
        ),
    ]
    wrong: list[Wrong] = [
        (m.EXTERIOR_FOR_INTERIOR, 180 - size),
        (m.TWO_NOT_ADDED, whole_number(360, n - 2)),
        (m.HALF_TURN_SHARED, whole_number(180, n)),
        (m.FORGETS_SIDES, 360),
    ]
    text = (
        "The interior angles of a regular polygon add up to {a}. "
        "Work out the size of each exterior angle."
    )
    return _draft(
        text, target, deg(size), steps, wrong, ("exterior of sum", n), (180, 2, 360), a=given
    )


def _expressions(n: int, b: int) -> Draft:
    parts, value = _parts(n, b)
    given = [p * value + q for p, q in parts]
    whole = [*parts, (0, _last(5, given))]
    x = value_letter(n, b)
    labels = [degrees_of(p, x, q) if p else deg(q) for p, q in whole]
    figure = _drawn([p * value + q for p, q in whole], labels)
    steps = [
        Step(
            "A pentagon splits into 3 triangles.",
            t.equals(t.times(t.Int(3), t.Int(180)), t.Int(540)),
        ),
        *solving("So its angles add up to 540°.", x, whole, 540),
    ]
    wrong = wrong_values(whole, value, 540, m.OTHER_POLYGON)
    return value_question(figure, x, value, steps, wrong, (n, b))
