"""Angles of triangles: one missing, isosceles triangles, and expressions to solve.

England's programme of study for key stage 3 (2013) asks pupils to "derive and use the sum of
angles in a triangle" and to use the properties of triangles (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._corners import low_triangle, triangle_corners
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
    times_letter,
    value_letter,
    value_question,
    whole_number,
    wrong_values,
)
from generators.geometry._shapes_angles_in_brief import TRIANGLE
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

WHY = "Angles in a triangle add up to 180°."
EQUAL = "The angles opposite the equal sides are equal."


def _triangle(
    sizes: tuple[int, int, int],
    labels: tuple[t.Node | None, ...],
    *,
    accurate: bool = False,
    right: str = "",
    equal: tuple[str, ...] = (),
) -> Polygon:
    """Return the triangle drawn with angles of these sizes at A, B and C; AB is level."""
    return Polygon(
        triangle_corners(sizes[0], sizes[1]),
        angles=tuple(
            (corner, label)
            for corner, label in zip("ABC", labels, strict=True)
            if label is not None
        ),
        right=right,
        equal=(equal,) if equal else (),
        accurate=accurate,
    )


def _support(kind: int, a: int, b: int) -> bool:
    c = 180 - a - b
    if kind == 0:  # two angles given
        return (
            42 <= c <= 105
            and 90 not in (a, b, c)
            and len({a, b, c}) == 3
            and a % 2 == 1
            and (a % 5 != 0 or a < b)
        )
    return b == 40 and 36 <= a <= 54 and a != 45  # right-angled


def _core(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # isosceles, the angle between the equal sides given
        return b in (40, 50) and a % 2 == 0 and 44 <= a <= 104 and a not in (60, 90)
    if kind == 1:  # isosceles, one of the equal angles given
        return b in (40, 50) and 37 <= a <= 74 and a not in (45, 60)
    # x, a multiple of it and an angle that is given
    times = b // 20
    part, over = divmod(180 - a, times + 1)
    apart = 90 not in (a, part, times * part) and a not in (part, times * part)
    return b in (40, 60, 80) and over == 0 and part >= 31 and 44 <= a <= 100 and apart


def _parts(kind: int, a: int, b: int, c: int, x: int) -> list[tuple[int, int]]:
    """Return the angles px + q of a triangle, as pairs p and q."""
    if kind == 0:
        return [(a, b), (c, 0), (0, 180 - a * x - b - c * x)]
    return [(a, b), (1, 0), (c, 0)]


def _challenge(kind: int, a: int, b: int, c: int, x: int) -> bool:
    if kind == 2:  # isosceles: the equal angles are ax + b and cx
        size = c * x
        sized = 46 <= size <= 58 and x not in (size, 180 - 2 * size)
        return sized and a < c and b == (c - a) * x % 2
    parts = _parts(kind, a, b, c, x)
    sizes = [p * x + q for p, q in parts]
    # The largest angle is drawn at the top, and the widest label has the next to it.
    sized = 30 <= min(sizes) < sizes[0] < max(sizes) < 125
    apart = len({*sizes}) == 3 and x not in sizes[:1] + sizes[2:] and 90 not in sizes
    whole = sum(sizes) == 180
    return sized and whole and b != 0 and a != c and apart and several_wrong(parts, x, 180)


@register
class AnglesInTriangles(Topic):
    """The angles of a triangle, isosceles ones too."""

    id = "geometry.angles-in-triangles"
    title = "Angles in triangles"
    statements = ("geometry.angle-sums",)
    misconceptions = (
        *(m.TRIANGLE_FULL_TURN, m.TRIANGLE_ONE_ANGLE, m.SQUARE_UNSEEN, m.COPIED, m.NOT_SHARED),
        *(m.WRONG_PAIR, m.EXTRA_SHARED, m.ONE_BASE_ANGLE, m.MULTIPLE_ALONE),
        *(m.NUMBERS_LEFT_OUT, m.NUMBERS_WRONG_WAY, m.ANGLE_NOT_LETTER, m.SET_EQUAL),
        m.OTHER_ANGLE,
    )
    prerequisites = ("geometry.angles-on-a-line",)
    spare = "an isosceles triangle has one angle to choose, and few are whole numbers and not dull"
    spaces = {
        Tier.SUPPORT: Space(_support, kind=(0, 1), a=range(28, 103), b=range(40, 85, 5)),
        Tier.CORE: Space(_core, kind=range(3), a=range(30, 105), b=(40, 50, 60, 80)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            a=(1, 2, 3, 4),
            b=(-20, -12, 0, 1, 5, 10, 15, 24, 32),
            c=(1, 2, 3, 4, 5, 6),
            x=range(11, 62),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(spaces, "geometry.angles-in-triangles", angles)
    spaces = with_brief(spaces, TRIANGLE)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._one(*values)
        return self._equal(*values) if tier is Tier.CORE else self._letters(*values)

    def _one(self, kind: int, a: int, b: int) -> Draft:
        x = letter_of(kind, a, b)
        wrong: list[Wrong]
        if kind == 0:
            size, known = 180 - a - b, [a, b]
            # The largest angle at the top, so that the triangle is a wide one.
            three: list[tuple[int, t.Node]] = [(a, deg(a)), (b, deg(b)), (size, x)]
            shown = sorted(three, key=lambda row: row[0])
            sizes = (shown[0][0], shown[1][0], shown[2][0])
            labels: tuple[t.Node | None, ...] = tuple(label for _, label in shown)
            figure = _triangle(sizes, labels, accurate=True)
            wrong = [(m.TRIANGLE_FULL_TURN, 360 - a - b), (m.TRIANGLE_ONE_ANGLE, 180 - a)]
        else:
            size, known = 90 - a, [90, a]
            right = "AB"[a % 2]
            given = deg(a)
            if a % 4 < 2:  # the unknown at the top
                labels = (None, given, x) if right == "A" else (given, None, x)
                sizes = (90, a, size) if right == "A" else (a, 90, size)
            else:
                labels = (None, x, given) if right == "A" else (x, None, given)
                sizes = (90, size, a) if right == "A" else (size, 90, a)
            figure = _triangle(sizes, labels, accurate=True, right=right)
            wrong = [
                (m.SQUARE_UNSEEN, 180 - a),
                (m.TRIANGLE_FULL_TURN, 270 - a),
                (m.COPIED, a),
            ]
        return size_question(figure, x, size, left_over(WHY, x, 180, known), wrong, (kind, a, b))

    def _equal(self, kind: int, a: int, b: int) -> Draft:
        x = letter_of(kind, a, b)
        wrong: list[Wrong]
        if kind == 0:
            size, rest = (180 - a) // 2, 180 - a
            figure = _isosceles(size, a, b == 50, x, deg(a), a // 2 % 2 == 0)
            steps = [
                Step(EQUAL, t.equals(t.add(deg(a), times_letter(2, x)), deg(180))),
                *left_over(WHY, x, 180, [a], 2)[1:],
            ]
            wrong = [
                (m.NOT_SHARED, rest),
                (m.WRONG_PAIR, a),
                (m.TRIANGLE_FULL_TURN, (360 - a) // 2),
            ]
        elif kind == 1:
            size = 180 - 2 * a
            figure = _isosceles(a, size, b == 50, deg(a), x, a % 2 == 1)
            steps = [
                Step(EQUAL, t.equals(t.add(deg(a), deg(a), x), deg(180))),
                Step(
                    "Subtract the two equal angles.",
                    t.equals(x, t.sub(deg(180), deg(a), deg(a)), deg(size)),
                ),
            ]
            wrong = [
                (m.WRONG_PAIR, a),
                (m.EXTRA_SHARED, whole_number(180 - a, 2)),
                (m.ONE_BASE_ANGLE, 180 - a),
                (m.TRIANGLE_FULL_TURN, 360 - 2 * a),
            ]
        else:
            times, rest = b // 20, 180 - a
            size = rest // (times + 1)
            figure = _triangle(_nearly(size, times * size, a), (x, times_letter(times, x), deg(a)))
            steps = left_over(WHY, x, 180, [a], times + 1)
            wrong = [
                (m.NOT_SHARED, rest),
                (m.MULTIPLE_ALONE, whole_number(rest, times)),
                (m.TRIANGLE_FULL_TURN, whole_number(360 - a, times + 1)),
            ]
        return size_question(figure, x, size, steps, wrong, (kind, a, b))

    def _letters(self, kind: int, a: int, b: int, c: int, value: int) -> Draft:
        x = value_letter(a, b, value)
        twin = (kind, a, b, c, value)
        if kind < 2:
            parts = _parts(kind, a, b, c, value)
            sizes = [p * value + q for p, q in parts]
            labels = [degrees_of(p, x, q) if p else deg(q) for p, q in parts]
            top = max(range(3), key=lambda at: sizes[at])
            order = (0, 3 - top, top) if value % 2 else (3 - top, 0, top)
            first, second, third = (sizes[at] for at in order)
            figure = _triangle(
                low_triangle(first, second, third), tuple(labels[at] for at in order)
            )
            return value_question(
                figure,
                x,
                value,
                solving(WHY, x, parts, 180),
                wrong_values(parts, value, 180, m.TRIANGLE_FULL_TURN),
                twin,
            )
        size, more = c * value, (c - a) * value
        top = 180 - 2 * size
        y = t.Sym("y")
        figure = _triangle(
            low_triangle(size, size, top),
            (degrees_of(a, x, more), degrees_of(c, x), y),
            equal=("CA", "CB"),
        )
        steps = [
            Step(EQUAL, t.equals(side(a, x, more), side(c, x))),
            *balance(x, a, more, c, 0),
            Step(
                f"Substitute {x.name} = {value} to find the equal angles.",
                t.equals(t.times(t.Int(c), deg(value)), deg(size)),
            ),
            Step(WHY, t.equals(y, t.sub(deg(180), deg(size), deg(size)), deg(top))),
        ]
        wrong = [
            (m.OTHER_ANGLE, size),
            (m.ONE_BASE_ANGLE, 180 - size),
            (m.TRIANGLE_FULL_TURN, 360 - 2 * size),
        ]
        return size_question(figure, y, top, steps, wrong, twin)


def _nearly(a: int, b: int, c: int) -> tuple[int, int, int]:
    first, second, third = not_to_scale((a, b, c))
    return first, second, third


def _isosceles(
    base: int, top: int, lying: bool, at_base: t.Node, at_top: t.Node, left: bool
) -> Polygon:
    """Return an isosceles triangle on its base, or lying on one of its equal sides.

    One of the two equal angles is labelled: with `left` the one met first.
    """
    first, second = (at_base, None) if left else (None, at_base)
    if lying:
        sizes = _nearly(top, base, base)
        return _triangle(sizes, (at_top, first, second), equal=("AB", "AC"))
    return _triangle(_nearly(base, base, top), (first, second, at_top), equal=("CA", "CB"))
