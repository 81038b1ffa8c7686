"""Compound areas told in words: paths all round, and pieces cut from the corners."""

from __future__ import annotations

from generators._turns import by_turns
from generators.geometry import _areas as a
from generators.geometry._areas import length, said_question
from itembank.items.item import Draft, Step
from itembank.notation import tree as t

_LAWNS = (
    ("lawn", "path"),
    ("pavilion", "strip of paving"),
    ("flower bed", "strip of gravel"),
    ("swimming pool", "strip of tiles"),
    ("vegetable bed", "grass path"),
)
_PIECES = ("piece of card", "sheet of plastic", "sheet of cork", "piece of felt")


def path_round(p: int, q: int, c: int, d: int) -> Draft:
    """Return the question for the area of a path c wide round a rectangle."""
    what, round_it = by_turns(_LAWNS, p + q)
    first, second, wide = length(p, "m"), length(q, "m"), length(c, "m")
    outer = (p + 2 * c, q + 2 * c)
    both = t.times(t.Int(2), wide)
    target = t.sub(
        t.times(t.Bracket(t.add(first, both)), t.Bracket(t.add(second, both))),
        t.times(first, second),
    )
    area = outer[0] * outer[1] - p * q
    key = length(area, "m^2")
    return said_question(
        f"A rectangular {what} is {{p}} by {{q}}. A {round_it} {{w}} wide goes all the way round "
        f"it. Work out the area of the {round_it}.",
        target,
        key,
        [
            Step(
                "Find how long the outer rectangle is.",
                t.equals(t.add(first, both), length(outer[0], "m")),
            ),
            Step("Find how wide it is.", t.equals(t.add(second, both), length(outer[1], "m"))),
            Step(
                "Find its area.",
                t.equals(
                    t.times(length(outer[0], "m"), length(outer[1], "m")),
                    length(outer[0] * outer[1], "m^2"),
                ),
            ),
            Step(
                f"Find the area of the {what}.",
                t.equals(t.times(first, second), length(p * q, "m^2")),
            ),
            Step(
                "Subtract.",
                t.equals(t.sub(length(outer[0] * outer[1], "m^2"), length(p * q, "m^2")), key),
            ),
        ],
        [
            (a.ONE_EDGE, (p + c) * (q + c) - p * q),
            (a.WHOLE_RECTANGLE, outer[0] * outer[1]),
            (a.PERIMETER_FOR_AREA, 2 * (p + q) * c if 2 * (p + q) * c != area else None),
        ],
        ("path", p, q, c),
        (2,),
        p=first,
        q=second,
        w=wide,
    )


def corners_cut(p: int, q: int, c: int, d: int) -> Draft:
    """Return the question for what is left when squares are cut from the corners."""
    what = by_turns(_PIECES, p + q)
    first, second, side = length(p, "cm"), length(q, "cm"), length(c, "cm")
    squares = t.times(t.Int(4), side, side)
    area = p * q - 4 * c * c
    key = length(area, "cm^2")
    return said_question(
        f"A rectangular {what} is {{p}} by {{q}}. A square with sides of {{c}} is cut out of each "
        "of its four corners. Work out the area that is left.",
        t.sub(t.times(first, second), squares),
        key,
        [
            Step(
                "Find the area of the rectangle.",
                t.equals(t.times(first, second), length(p * q, "cm^2")),
            ),
            Step(
                "Find the area of the four squares.", t.equals(squares, length(4 * c * c, "cm^2"))
            ),
            Step(
                "Subtract.", t.equals(t.sub(length(p * q, "cm^2"), length(4 * c * c, "cm^2")), key)
            ),
        ],
        [
            (a.ONE_CORNER, p * q - c * c),
            (a.WHOLE_RECTANGLE, p * q),
            (a.OVERLAP, (p - 2 * c) * (q - 2 * c)),
        ],
        ("corners", p, q, c),
        (4,),
        p=first,
        q=second,
        c=side,
    )


def triangle_cut(p: int, q: int, c: int, d: int) -> Draft:
    """Return the question for what is left when a triangle is cut off a corner."""
    what = by_turns(_PIECES, p + c)
    first, second, base, high = (length(n, "cm") for n in (p, q, c, d))
    triangle = t.divide(t.Bracket(t.times(base, high)), t.Int(2))
    key = length(p * q - c * d // 2, "cm^2")
    return said_question(
        f"A rectangular {what} is {{p}} by {{q}}. A right-angled triangle is cut off one corner. "
        "The two shorter sides of the triangle are {c} and {d} long. "
        "Work out the area that is left.",
        t.sub(t.times(first, second), triangle),
        key,
        [
            Step(
                "Find the area of the rectangle.",
                t.equals(t.times(first, second), length(p * q, "cm^2")),
            ),
            Step("Find the area of the triangle.", t.equals(triangle, length(c * d // 2, "cm^2"))),
            Step(
                "Subtract.", t.equals(t.sub(length(p * q, "cm^2"), length(c * d // 2, "cm^2")), key)
            ),
        ],
        [
            (a.NOT_HALVED, p * q - c * d),
            (a.WHOLE_RECTANGLE, p * q),
            (a.PIECE_ADDED, p * q + c * d // 2),
        ],
        ("triangle", p, q, c, d),
        (2,),
        p=first,
        q=second,
        c=base,
        d=high,
    )
