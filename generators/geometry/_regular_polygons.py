"""Questions about regular polygons: the angle inside, the angle outside, and how many sides."""

from __future__ import annotations

from generators.geometry import _misconceptions as m
from generators.geometry._angles import deg, whole_number
from generators.geometry._polygon_steps import polygon_draft, sides_around
from itembank.items.item import Draft, Step
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

REGULAR = (5, 6, 8, 9, 10, 12, 15, 18, 20, 24, 30, 36, 40, 45, 60, 72)
"""Numbers of sides with whole degrees for each angle."""


def exterior_angle(n: int, b: int) -> Draft:
    """Return the question for an exterior angle of a regular polygon with n sides."""
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
    return polygon_draft(text, target, deg(size), steps, wrong, ("exterior", n), (360,), n=t.Int(n))


def interior_beside(n: int, b: int) -> Draft:
    """Return the question for the interior angle beside a given exterior one."""
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
    return polygon_draft(
        text, target, deg(180 - size), steps, wrong, ("beside", n), (180,), a=given
    )


def sides_from_exterior(n: int) -> Draft:
    """Return the question for the number of sides from an exterior angle."""
    given = deg(360 // n)
    target = t.divide(deg(360), given)
    steps = [sides_around(given, n)]
    wrong: list[Wrong] = [
        (m.HALF_TURN_SHARED, whole_number(180, 360 // n)),
        (m.SUBTRACTS_ANGLE, 360 - 360 // n),
        (m.EXTERIOR_FOR_INTERIOR, whole_number(360, 180 - 360 // n)),
        (m.TWO_NOT_ADDED, n - 2),
    ]
    text = "Each exterior angle of a regular polygon is {a}. How many sides does the polygon have?"
    return polygon_draft(text, target, t.Int(n), steps, wrong, ("sides", n), (360,), a=given)


def interior_angle(n: int) -> Draft:
    """Return the question for an interior angle of a regular polygon with n sides."""
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
    return polygon_draft(
        text, target, deg(size), steps, wrong, ("interior", n), (180, 360), n=t.Int(n)
    )


def sides_from_interior(n: int, b: int) -> Draft:
    """Return the question for the number of sides from an interior angle."""
    outside = 360 // n
    given = deg(180 - outside)
    target = t.divide(deg(360), t.Bracket(t.sub(deg(180), given)))
    steps = [
        Step(
            "Find the exterior angle: it makes a straight line with the interior one.",
            t.equals(t.sub(deg(180), given), deg(outside)),
        ),
        sides_around(deg(outside), n),
    ]
    wrong: list[Wrong] = [
        (m.INTERIOR_OVER_360, whole_number(360, 180 - outside)),
        (m.HALF_TURN_SHARED, whole_number(180, outside)),
        (m.SUBTRACTS_ANGLE, outside),
        (m.TWO_NOT_ADDED, n - 2),
    ]
    text = "Each interior angle of a regular polygon is {a}. How many sides does the polygon have?"
    return polygon_draft(
        text, target, t.Int(n), steps, wrong, ("from interior", n), (180, 360), a=given
    )


def sides_from_times(n: int, b: int) -> Draft:
    """Return the question for the sides where the interior angle is n times the exterior."""
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
    return polygon_draft(
        text, target, t.Int(2 * n + 2), steps, wrong, ("times", n), (180, 360, 1), n=times
    )
