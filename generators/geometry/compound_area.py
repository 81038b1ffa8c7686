"""Areas of compound shapes: split into rectangles, or with a piece cut out.

England's programme of study for key stage 3 (2013) asks pupils to "calculate and solve problems
involving perimeters of 2-D shapes (including circles), areas of circles and composite shapes"
(from memory).
"""

from __future__ import annotations

from typing import Any

from generators.geometry import _areas as a
from generators.geometry._areas import asked, length, shape_question, unit_of
from generators.geometry._compound_stories import corners_cut, path_round, triangle_cut
from generators.geometry._rectangles_in_brief import COMPOUND
from generators.geometry._rectilinear import cut, ell, tee
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


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
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.compound-area",
        kinds.working_goes_wrong(
            {
                a.PIECE_ADDED: (e.turned,),
                a.ONE_CORNER: (e.everywhere(e.left_out),),
                a.NOT_HALVED: (e.everywhere(e.left_out),),
            }
        ),
    )
    spaces = with_brief(spaces, COMPOUND)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return _ell(*values, found=False)
        kind, *rest = values
        if tier is Tier.CORE:
            return _ell(*rest, found=True) if kind == 0 else (_tee, _cut)[kind - 1](*rest)
        return (path_round, corners_cut, triangle_cut)[kind](*rest)


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
    unit = unit_of(p + q + c)
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
    unit = unit_of(p + q + c)
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
    unit = unit_of(p + q + c)
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
