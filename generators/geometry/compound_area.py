"""Areas of compound shapes: split into rectangles, or with a piece cut out.

England's programme of study for key stage 3 (2013) asks pupils to "calculate and solve problems
involving perimeters of 2-D shapes (including circles), areas of circles and composite shapes"
(from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.geometry import _areas as a
from generators.geometry._areas import asked, length, said_question, shape_question
from generators.geometry._rectilinear import cut, ell, tee
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_LAWNS = (
    ("lawn", "path"),
    ("pavilion", "strip of paving"),
    ("flower bed", "strip of gravel"),
    ("swimming pool", "strip of tiles"),
    ("vegetable bed", "grass path"),
)
_PIECES = ("piece of card", "sheet of plastic", "sheet of cork", "piece of felt")


def _unit(n: int) -> str:
    return by_turns(("cm", "m"), n)


def _support(p: int, q: int, c: int, d: int) -> bool:
    fits = c + 2 <= p and d + 2 <= q and q <= p + 2 and (2 * p + q + 3 * c + d) % 4 == 1
    fits = fits and 4 * c >= p and 4 * d >= q
    return fits and p * d != c * (q - d) and c not in (p - c,) and p <= 3 * q


def _core(kind: int, p: int, q: int, c: int, d: int) -> bool:
    if kind == 0:  # an L, of which a length has to be found first
        return _support(p, q, c, d) and c + 3 <= p and d + 3 <= q
    even = (p - c) % 2 == 0 and p - c >= 4 and d + 2 <= q <= p and 4 * c >= p and 4 * d >= q
    if kind == 2:  # the piece cut out is wide enough for its lengths
        wide = 2 * c >= p >= 3 * q // 2 and q - d >= 4 and p < 13
        return even and wide and p * d != c * (q - d)
    return even and (p + 2 * q + c + d + kind) % 6 == 1 and p * d != c * (q - d)


def _challenge(kind: int, p: int, q: int, c: int, d: int) -> bool:
    if kind == 0:  # a path all round
        return c in (1, 2) and d == 2 and q < p and (p + q + c) % 2 == 0
    if kind == 1:  # squares cut from the corners
        return c in (2, 3) and d == 2 and 2 * c < q < p and (p + q + c) % 2 == 1
    # a rectangle with a triangle cut off
    return (
        c >= 2
        and 2 <= d < q < p
        and c < p
        and c > 2
        and c * d % 2 == 0
        and (p + q + c + d) % 9 == 2
    )


@register
class CompoundArea(Topic):
    """Areas of shapes made of rectangles."""

    id = "geometry.compound-area"
    title = "Area of compound shapes"
    statements = ("geometry.perimeter-area",)
    misconceptions = (
        *(a.WHOLE_RECTANGLE, a.ONE_PART, a.OVERLAP, a.PERIMETER_FOR_AREA, a.PIECE_ADDED),
        *(a.ONE_EDGE, a.ONE_CORNER, a.NOT_HALVED),
    )
    prerequisites = ("geometry.area-of-rectangles",)
    spaces = {
        Tier.SUPPORT: Space(_support, p=range(6, 15), q=range(5, 12), c=range(2, 9), d=range(2, 8)),
        Tier.CORE: Space(
            _core, kind=range(3), p=range(7, 17), q=range(5, 12), c=range(2, 10), d=range(2, 8)
        ),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(3), p=range(7, 25), q=range(6, 16), c=range(1, 7), d=range(2, 7)
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return _ell(*values, found=False)
        kind, *rest = values
        if tier is Tier.CORE:
            return _ell(*rest, found=True) if kind == 0 else (_tee, _cut)[kind - 1](*rest)
        return (_path, _corners, _triangle)[kind](*rest)


def _two(first: tuple[int, int], second: tuple[int, int], unit: str, key: t.Node) -> list[Step]:
    """Return the working that adds two rectangles."""
    areas = [length(x * y, f"{unit}^2") for x, y in (first, second)]
    lines = [
        Step(say, t.equals(t.times(length(x, unit), length(y, unit)), area))
        for say, (x, y), area in zip(
            ("Find the area of the lower rectangle.", "Find the area of the upper rectangle."),
            (first, second),
            areas,
            strict=True,
        )
    ]
    return [*lines, Step("Add the two areas.", t.equals(t.add(*areas), key))]


def _ell(p: int, q: int, c: int, d: int, *, found: bool) -> Draft:
    """Return an L; with `found` the height of its upper part has to be found first."""
    unit = _unit(p + q + c)
    upper = q - d
    area = p * d + c * upper
    # Without it all four lengths of the two rectangles stand on the shape.
    figure = ell(p, q, c, d, unit, "1256" if found else "1245", flip=(p + d) % 2 == 1)
    key = length(area, f"{unit}^2")
    steps = _two((p, d), (c, upper), unit, key)
    if found:
        steps.insert(
            0,
            Step(
                "Find the height of the upper part.",
                t.equals(t.sub(length(q, unit), length(d, unit)), length(upper, unit)),
            ),
        )
    wrong = [
        (a.WHOLE_RECTANGLE, p * q),
        (a.OVERLAP, p * d + c * q),
        (a.ONE_PART, p * d),
        (a.PERIMETER_FOR_AREA, 2 * (p + q)),
    ]
    return shape_question(
        figure, asked("area", "shape", p + c), key, steps, wrong, ("L", found, p, q, c, d)
    )


def _tee(p: int, q: int, c: int, d: int) -> Draft:
    unit = _unit(p + q + c)
    upper = q - d
    key = length(p * d + c * upper, f"{unit}^2")
    figure = tee(p, q, c, d, unit, "1245")
    return shape_question(
        figure,
        asked("area", "shape", p + c),
        key,
        _two((p, d), (c, upper), unit, key),
        [
            (a.WHOLE_RECTANGLE, p * q),
            (a.OVERLAP, p * d + c * q),
            (a.ONE_PART, p * d),
            (a.PERIMETER_FOR_AREA, 2 * (p + q)),
        ],
        ("T", p, q, c, d),
    )


def _cut(p: int, q: int, c: int, d: int) -> Draft:
    unit = _unit(p + q + c)
    deep = q - d
    full, piece = length(p * q, f"{unit}^2"), length(c * deep, f"{unit}^2")
    key = length(p * q - c * deep, f"{unit}^2")
    figure = cut(p, q, c, d, unit, "1245")
    steps = [
        Step(
            "Find the area of the whole rectangle.",
            t.equals(t.times(length(p, unit), length(q, unit)), full),
        ),
        Step(
            "Find the area of the piece that is cut out.",
            t.equals(t.times(length(c, unit), length(deep, unit)), piece),
        ),
        Step("Subtract.", t.equals(t.sub(full, piece), key)),
    ]
    return shape_question(
        figure,
        asked("area", "shape", p + c),
        key,
        steps,
        [
            (a.WHOLE_RECTANGLE, p * q),
            (a.ONE_PART, c * deep),
            (a.PIECE_ADDED, p * q + c * deep),
            (a.PERIMETER_FOR_AREA, 2 * (p + q + deep)),
        ],
        ("cut", p, q, c, d),
    )


def _path(p: int, q: int, c: int, d: int) -> Draft:
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


def _corners(p: int, q: int, c: int, d: int) -> Draft:
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


def _triangle(p: int, q: int, c: int, d: int) -> Draft:
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
