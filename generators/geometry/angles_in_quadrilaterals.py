"""Angles of quadrilaterals: any, with parallel sides, and with expressions to solve.

England's programme of study for key stage 3 (2013) asks pupils to "derive and use the sum of
angles in a triangle and use it to deduce the angle sum in any polygon", and to know the
properties of quadrilaterals (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._corners import parallelogram_corners, quadrilateral_corners
from generators.equations._balance import balance
from generators.equations._writing import side
from generators.geometry import _misconceptions as m
from generators.geometry._angles import (
    deg,
    degrees_of,
    left_over,
    letter_of,
    not_to_scale,
    several_wrong,
    size_question,
    solving,
    value_letter,
    value_question,
    whole_number,
    wrong_values,
)
from generators.geometry._shapes_angles_in_brief import QUADRILATERAL
from generators.geometry._worked_wrongly import angles
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

WHY = "Angles in a quadrilateral add up to 360°."
OPPOSITE = "Opposite angles of a parallelogram are equal."
FACING = "Co-interior angles between parallel lines add up to 180°."
_ARROWS = (("AB", "DC"), ("AD", "BC"))

Labels = tuple[t.Node | None, ...]


def _figure(
    corners: Any, labels: Labels, *, right: str = "", parallel: Any = (), accurate: bool = False
) -> Polygon:
    shown = zip("ABCD", labels, strict=True)
    return Polygon(
        corners,
        angles=tuple((corner, label) for corner, label in shown if label is not None),
        right=right,
        parallel=parallel,
        accurate=accurate,
    )


def _support(kind: int, a: int, b: int, c: int) -> bool:
    d = 360 - a - b - c
    if kind == 1 and b != 90:
        return False
    sizes = (a, b, c, d)
    apart = len({*sizes}) == 4 and 90 not in (a, c, d) and (kind == 1) == (b == 90)
    return apart and min(sizes) >= 66 and max(sizes) <= 126 and a + c != 180 and a + b != 180


def _core(kind: int, a: int, b: int, c: int) -> bool:
    if kind == 0:  # a parallelogram; the angle opposite (c = 60) or beside (c = 75)
        # An opposite angle is simply equal: a few of these are enough.
        fewer = c == 75 or (c == 60 and a % 4 == 0)
        return b == 70 and fewer and 52 <= a <= 128 and a != 90
    if kind == 1:  # a trapezium, all but one angle given or one given
        return b == 70 and c == 60 and 56 <= a <= 128 and 90 not in (a, 180 - a)
    if kind == 2:  # two equal angles and two others
        half, over = divmod(360 - a - b, 2)
        apart = len({a, b, half}) == 3 and 90 not in (a, half) and a + b != 180
        return (
            c == 60 and not over and 66 <= half <= 118 and 62 <= a <= 120 and a % 2 == 1 and apart
        )
    # two right angles and another
    return b == 70 and c == 60 and 60 <= a <= 116 and a != 90


def _parts(kind: int, a: int, b: int, c: int, x: int) -> list[tuple[int, int]]:
    """Return the angles px + q of a quadrilateral, as pairs p and q."""
    number = 75 + 10 * (x % 4)
    return [(a, b), (0, number), (c, 0), (0, 360 - number - a * x - b - c * x)]


def _challenge(kind: int, a: int, b: int, c: int, x: int) -> bool:
    first, second = a * x + b, c * x
    if b == 0 or a == c or x in (first, second) or 90 in (first, second):
        return False
    if kind == 0:
        parts = _parts(kind, a, b, c, x)
        sizes = [p * x + q for p, q in parts]
        # The two acute angles are drawn at the base, where the widest label has most room.
        sized = min(sizes) >= 50 and max(sizes) <= 140 and sizes[0] < 90 and 90 not in sizes
        acute = sum(size < 90 for size in sizes) == 2
        plain = (a + b + x) % 3 == 0
        return sized and acute and plain and len({*sizes}) == 4 and several_wrong(parts, x, 360)
    if kind == 1:  # a parallelogram: two neighbours
        found = {whole_number(360 - b, a + c), whole_number(-b, a - c)} - {None, x, first}
        sums = first + second == 180 and bool(found)
        return sums and min(first, second) >= 52
    # a parallelogram: two opposite angles, and the angle beside them is asked for
    return c > a and b == (c - a) * x and 52 <= second <= 128


@register
class AnglesInQuadrilaterals(Topic):
    """The angles of a quadrilateral, parallelograms and trapeziums too."""

    id = "geometry.angles-in-quadrilaterals"
    title = "Angles in quadrilaterals"
    statements = ("geometry.angle-sums", "geometry.properties")
    misconceptions = (
        *(m.OPPOSITE_EQUAL, m.NEIGHBOURS_HALF_TURN, m.QUADRILATERAL_HALF_TURN, m.LEFT_OUT),
        *(m.SQUARE_UNSEEN, m.FACING_EQUAL, m.EQUAL_AS_LINE, m.REST_OF_TURN, m.NOT_SHARED),
        *(m.NUMBERS_LEFT_OUT, m.NUMBERS_WRONG_WAY, m.ANGLE_NOT_LETTER, m.SET_EQUAL),
        *(m.OTHER_ANGLE, m.COPIED),
    )
    prerequisites = ("geometry.angles-in-triangles",)
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            kind=(0, 1),
            a=range(63, 136, 4),
            b=(70, 85, 90, 95, 105, 110),
            c=(66, 77, 88, 98, 109, 120),
        ),
        Tier.CORE: Space(_core, kind=range(4), a=range(52, 129), b=(70, 85, 105, 110), c=(60, 75)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            a=(1, 2, 3, 4),
            b=(-30, -20, -10, 10, 15, 24, 30, 36, 40, 45, 48, 60),
            c=(1, 2, 3, 4, 5),
            x=range(12, 64),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(spaces, "geometry.angles-in-quadrilaterals", angles)
    spaces = with_brief(spaces, QUADRILATERAL)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._one(*values)
        return self._several(*values) if tier is Tier.CORE else self._letters(*values)

    def _one(self, kind: int, a: int, b: int, c: int) -> Draft:
        x = letter_of(kind, a, b, c)
        size = 360 - a - b - c
        beside = None if kind == 1 else deg(b)
        # The unknown is at C or at D; the right angle, where there is one, is at B.
        sizes = (a, b, c, size)
        labels: Labels = (deg(a), beside, deg(c), x)
        if a % 3 == 0:
            sizes, labels = (a, b, size, c), (deg(a), beside, x, deg(c))
        figure = _figure(
            quadrilateral_corners(sizes), labels, right="B" * (kind == 1), accurate=True
        )
        opposite = sizes[(sizes.index(size) + 2) % 4]
        known = [90, a, c] if kind == 1 else [a, b, c]
        wrong: list[Wrong] = [
            (m.OPPOSITE_EQUAL, opposite),
            (m.NEIGHBOURS_HALF_TURN, 180 - sizes[sizes.index(size) - 1]),
            (m.SQUARE_UNSEEN if kind == 1 else m.LEFT_OUT, 360 - a - c),
        ]
        return size_question(figure, x, size, left_over(WHY, x, 360, known), wrong, (kind, a, b, c))

    def _several(self, kind: int, a: int, b: int, c: int) -> Draft:
        x = letter_of(kind, a, c)
        wrong: list[Wrong]
        drawn = not_to_scale((a, 180 - a))[0]
        facing = [
            Step(FACING, t.equals(t.add(deg(a), x), deg(180))),
            Step(
                "Subtract the angle that you know.",
                t.equals(x, t.sub(deg(180), deg(a)), deg(180 - a)),
            ),
        ]
        beside = [(m.FACING_EQUAL, a), (m.REST_OF_TURN, 360 - a)]
        if kind == 0 and c == 60:
            size = a
            figure = _figure(
                parallelogram_corners(drawn), (deg(a), None, x, None), parallel=_ARROWS
            )
            steps = [Step(OPPOSITE, t.equals(x, deg(a)))]
            wrong = [(m.EQUAL_AS_LINE, 180 - a), (m.REST_OF_TURN, 360 - a)]
        elif kind == 0:
            size = 180 - a
            figure = _figure(
                parallelogram_corners(drawn), (deg(a), x, None, None), parallel=_ARROWS
            )
            steps, wrong = facing, [*beside]
        elif kind == 1:
            size, other = 180 - a, 65 + a % 4 * 5 + (a == 70)
            figure = _figure(
                quadrilateral_corners((a, other, 180 - other, 180 - a), level=True),
                (deg(a), deg(other), None, x),
                parallel=_ARROWS[:1],
            )
            steps = facing
            wrong = [*beside, (m.NEIGHBOURS_HALF_TURN, 180 - other)]
        elif kind == 2:
            rest = 360 - a - b
            size = rest // 2
            sizes = not_to_scale((a, size, b, size))
            figure = _figure(quadrilateral_corners(sizes), (deg(a), x, deg(b), x))
            steps = left_over(WHY, x, 360, [a, b], 2)
            wrong = [
                (m.NOT_SHARED, rest),
                (m.OPPOSITE_EQUAL, a),
                (m.NEIGHBOURS_HALF_TURN, 180 - a),
            ]
        else:
            size = 180 - a
            sizes = (90, 90, *not_to_scale((a, 180 - a)))
            figure = _figure(quadrilateral_corners(sizes), (None, None, deg(a), x), right="AB")
            steps = left_over(WHY, x, 360, [90, 90, a])
            wrong = [(m.SQUARE_UNSEEN, 360 - a), (m.COPIED, a), (m.NOT_SHARED, (360 - a) // 3)]
        return size_question(figure, x, size, steps, wrong, (kind, a, b, c))

    def _letters(self, kind: int, a: int, b: int, c: int, value: int) -> Draft:
        x = value_letter(a, b, value)
        twin = (kind, a, b, c, value)
        first, second = a * value + b, c * value
        if kind == 0:
            parts = _parts(kind, a, b, c, value)
            by_size = sorted(parts, key=lambda part: part[0] * value + part[1])
            order, sizes = (
                (by_size, (58, 66, 112, 124))
                if value % 2
                else (
                    [by_size[1], by_size[0], by_size[2], by_size[3]],
                    (66, 58, 112, 124),
                )
            )
            labels = tuple(degrees_of(p, x, q) if p else deg(q) for p, q in order)
            figure = _figure(quadrilateral_corners(sizes, high=580), labels)
            return value_question(
                figure,
                x,
                value,
                solving(WHY, x, parts, 360),
                wrong_values(parts, value, 360, m.QUADRILATERAL_HALF_TURN),
                twin,
            )
        drawn = parallelogram_corners(not_to_scale((first, 180 - first))[0])
        wide, narrow = degrees_of(a, x, b), degrees_of(c, x)
        if kind == 1:
            figure = _figure(drawn, (wide, narrow, None, None), parallel=_ARROWS)
            wrong = wrong_values([(a, b), (c, 0)], value, 180, m.REST_OF_TURN)
            return value_question(
                figure, x, value, solving(FACING, x, [(a, b), (c, 0)], 180), wrong, twin
            )
        y = t.Sym("y")
        figure = _figure(drawn, (wide, y, narrow, None), parallel=_ARROWS)
        steps = [
            Step(OPPOSITE, t.equals(side(a, x, b), side(c, x))),
            *balance(x, a, b, c, 0),
            Step(
                f"Substitute {x.name} = {value} to find the equal angles.",
                t.equals(t.times(t.Int(c), deg(value)), deg(second)),
            ),
            Step(FACING, t.equals(y, t.sub(deg(180), deg(second)), deg(180 - second))),
        ]
        wrong = [(m.OTHER_ANGLE, second), (m.REST_OF_TURN, 360 - second)]
        return size_question(figure, y, 180 - second, steps, wrong, twin)
