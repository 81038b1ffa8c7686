"""Stories about the perimeters and angles of shapes."""

from __future__ import annotations

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, number_left, one_of
from generators.equations._balance import balance
from generators.equations._story import (
    N,
    Story,
    W,
    X,
    degrees,
    ending,
    metres,
)
from generators.equations._writing import side, solution
from itembank.items.item import Find, Step, prompt
from itembank.notation import tree as t


def flower_bed(d: int, width: int) -> Story:
    """Return a rectangle by its perimeter and the difference of its sides; `d` is even."""
    p = 4 * width + 2 * d
    more, around = metres(d), metres(p)
    model = t.equals(t.times(t.Int(2), t.Bracket(t.add(W, W, more))), around)
    key = metres(width)
    steps = (
        Step(
            f"Let w be the width in metres, so the length is w + {d}.",
            t.equals(t.juxt(t.Int(2), t.Bracket(t.add(W, W, t.num(d)))), t.num(p)),
        ),
        Step("Collect like terms and expand the bracket.", t.equals(side(4, W, 2 * d), t.num(p))),
        *balance(W, 4, 2 * d, 0, p),
    )
    return Story(
        prompt(
            "A rectangular plot is {d} longer than it is wide. "
            "Its perimeter is {p}. How wide is it?",
            d=more,
            p=around,
        ),
        Find(W, (model,)),
        key,
        "quantity",
        ending(steps, "Write the answer in metres.", key),
        (
            (
                asking(
                    m.TWO_SIDES,
                    "How many lengths and how many widths are there round a rectangle?",
                ),
                metres(2 * width + d // 2),
            ),
            (
                asking(m.FORGETS_DIFFERENCE, f"Is your length {d} m more than your width?"),
                metres(width + d // 2),
            ),
        ),
        (2,),
    )


def triangle_angles(a: int, value: int) -> Story:
    """Return a triangle with angles x, ax and x + b degrees."""
    k = a + 2
    b = 180 - k * value
    angles = (
        t.Quantity(X, "°"),
        t.Quantity(side(a, X), "°"),
        t.Quantity(t.Bracket(side(1, X, b)), "°"),
    )
    return Story(
        prompt(
            "The angles of a triangle are {a}, {b} and {c}. Work out {x}.",
            a=angles[0],
            b=angles[1],
            c=angles[2],
            x=X,
        ),
        Find(X, (t.equals(t.add(*angles), degrees(180)),)),
        solution(X, value),
        "solution",
        (
            Step(
                "The angles of a triangle add up to 180°.",
                t.equals(t.add(X, side(a, X), t.Bracket(side(1, X, b))), t.num(180)),
            ),
            Step("Collect like terms.", t.equals(side(k, X, b), t.num(180))),
            *balance(X, k, b, 0, 180),
        ),
        (
            (m.FULL_TURN, solution(X, 180 // k + value)),
            (asking(m.SAME_OPERATION, number_left(b, 180)), solution(X, 360 // k - value)),
        ),
        (180,),
    )


def isosceles(k: int, third: int) -> Story:
    """Return an isosceles triangle by its perimeter; `k` is a multiple of 3."""
    p = 3 * third + 2 * k
    more, around = metres(k), metres(p)
    longer = t.Bracket(t.add(N, more))
    key = metres(third)
    plain = t.Bracket(t.add(N, t.num(k)))
    steps = (
        Step(
            f"Let the third side be n metres, so each equal side is n + {k} metres.",
            t.equals(t.add(N, plain, plain), t.num(p)),
        ),
        Step("Collect like terms.", t.equals(side(3, N, 2 * k), t.num(p))),
        *balance(N, 3, 2 * k, 0, p),
    )
    return Story(
        prompt(
            "A triangular plot has two equal sides, each {k} longer than the third side. "
            "Its perimeter is {p}. How long is the third side?",
            k=more,
            p=around,
        ),
        Find(N, (t.equals(t.add(N, longer, longer), around),)),
        key,
        "quantity",
        ending(steps, "Write the answer in metres.", key),
        (
            (
                asking(
                    m.FORGETS_DIFFERENCE,
                    "Are the three sides equal? How much longer are two of them?",
                ),
                metres(third + 2 * k // 3),
            ),
            (
                asking(m.EXTRA_ONCE, f"How many of the sides are {k} m longer than the third?"),
                metres(third + k // 3),
            ),
        ),
    )


def opposite_sides(a: int, b: int, c: int, value: int) -> Story:
    """Return the equal sides of a rectangle, ax + b and cx + d, and ask for their length."""
    d = b + (a - c) * value
    first, second = side(a, X, b), side(c, X, d)
    sides = [t.Quantity(t.Bracket(part), "m") for part in (first, second)]
    length = a * value + b
    key = metres(length)
    worked = t.Bracket(t.add(t.times(t.num(a), t.num(value)), t.num(b)))
    return Story(
        prompt(
            "Two opposite sides of a rectangle are {p} and {q} long. How long is each of them?",
            p=sides[0],
            q=sides[1],
        ),
        Find(sides[0], (t.equals(sides[0], sides[1]),)),
        key,
        "quantity",
        (
            Step("Opposite sides of a rectangle are equal.", t.equals(first, second)),
            *balance(X, a, b, c, d),
            Step(f"Substitute x = {value}.", t.equals(t.Quantity(worked, "m"), key)),
        ),
        (
            (
                asking(m.LETTER_ONLY, f"That is x. How long is a side of {a}x + {b} metres?"),
                metres(value),
            ),
            (asking(m.STOPS_EARLY, one_of(a - c, X)), metres((a - c) * value)),
        ),
    )


def equal_angles(a: int, b: int, c: int, value: int) -> Story:
    """Return an isosceles triangle by its equal angles, and ask for the third."""
    d = b + (a - c) * value
    first, second = side(a, X, b), side(c, X, d)
    angles = [t.Quantity(t.Bracket(part), "°") for part in (first, second)]
    size = a * value + b
    key = degrees(180 - 2 * size)
    model: t.Relation = t.equals(angles[0], angles[1])
    worked = t.Bracket(t.add(t.times(t.num(a), t.num(value)), t.num(b)))
    return Story(
        prompt(
            "The two equal angles of an isosceles triangle are {p} and {q}. "
            "Work out the size of the third angle.",
            p=angles[0],
            q=angles[1],
        ),
        Find(t.sub(degrees(180), angles[0], angles[1]), (model,)),
        key,
        "quantity",
        (
            Step("The two angles are equal.", t.equals(first, second)),
            *balance(X, a, b, c, d),
            Step(f"Substitute x = {value}.", t.equals(t.Quantity(worked, "°"), degrees(size))),
            Step(
                "The angles of a triangle add up to 180°.",
                t.equals(t.sub(degrees(180), degrees(size), degrees(size)), key),
            ),
        ),
        (
            (
                asking(m.STOPS_EARLY, f"Which angles are {size}°? Which one is asked for?"),
                degrees(size),
            ),
            (
                asking(m.EXTRA_ONCE, f"How many angles of {size}° does the triangle have?"),
                degrees(180 - size),
            ),
        ),
        (180,),
    )
