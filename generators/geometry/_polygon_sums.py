"""Questions about what the angles of a polygon add up to, inside and outside."""

from __future__ import annotations

from generators.geometry import _misconceptions as m
from generators.geometry._angles import deg, whole_number
from generators.geometry._polygon_steps import polygon_draft, sides_from_triangles
from itembank.items.item import Draft, Step
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t


def sum_inside(n: int, b: int) -> Draft:
    """Return the question for the sum of the interior angles of a polygon with n sides."""
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
    return polygon_draft(text, target, deg(whole), steps, wrong, ("sum", n), (2, 180), n=sides)


def fourth_exterior(n: int, b: int) -> Draft:
    """Return the question for the fourth exterior angle of a quadrilateral."""
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
    return polygon_draft(
        text, target, deg(size), steps, wrong, ("fourth", n, b), (360,), a=first, b=second, c=third
    )


def sides_from_sum(n: int) -> Draft:
    """Return the question for the number of sides from the sum of the interior angles."""
    given = deg(180 * (n - 2))
    target = t.add(t.divide(given, deg(180)), t.Int(2))
    steps = sides_from_triangles(given, n)
    wrong: list[Wrong] = [
        (m.TWO_NOT_ADDED, n - 2),
        (m.ONE_TOO_FEW, n - 1),
        (m.OTHER_POLYGON, whole_number(n - 2, 2)),
    ]
    text = "The interior angles of a polygon add up to {a}. How many sides does the polygon have?"
    return polygon_draft(text, target, t.Int(n), steps, wrong, ("sum sides", n), (180, 2), a=given)


def exterior_from_sum(n: int, b: int) -> Draft:
    """Return the question for an exterior angle from the sum of the interior ones."""
    given, size = deg(180 * (n - 2)), 360 // n
    sides = t.add(t.divide(given, deg(180)), t.Int(2))
    target = t.divide(deg(360), t.Bracket(sides))
    steps = [
        *sides_from_triangles(given, n),
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
    return polygon_draft(
        text, target, deg(size), steps, wrong, ("exterior of sum", n), (180, 2, 360), a=given
    )
