"""Angles round a point: one missing, several equal, and expressions to solve.

England's programme of study for key stage 3 (2013) asks pupils to "apply the properties of angles
at a point, angles at a point on a straight line, vertically opposite angles" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
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
    turned,
    value_letter,
    value_question,
    whole_number,
    wrong_values,
)
from generators.geometry._angles_in_brief import AT_A_POINT
from generators.geometry._worked_wrongly import angles
from itembank.figures.kinds.plane.angles import Angles
from itembank.items import kinds
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

WHY = "Angles round a point add up to 360°."
_TURNS = (0, 40, 75, 330)


def _point(
    sizes: tuple[int, ...], labels: tuple[t.Node | None, ...], turn: int, *, accurate: bool = False
) -> Angles:
    """Return the figure, turned by so much; an angle without a label is a marked right angle."""
    shown = tuple((k, label) for k, label in enumerate(labels, 1) if label is not None)
    right = tuple(k for k, label in enumerate(labels, 1) if label is None)
    drawn = sizes if accurate else not_to_scale(sizes)
    return Angles("point", drawn, shown, right, turn % 360, accurate)


def _support(kind: int, a: int, b: int) -> bool:
    c = 360 - a - b
    if kind == 0:  # two angles: one of them is reflex
        return b == 70 and a % 90 != 0 and (50 <= a <= 160 or 195 <= a <= 300) and a % 7 in (1, 5)
    if kind == 1:  # three, one of them right
        return b == 90 and 60 <= a <= 168 and a not in (90, 135) and not 168 < c < 192
    # three, none of them right
    return a <= 160 and 60 <= c < 180 and 90 not in (a, b, c) and c not in (a, b) and a % 4 == 3


def _core(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # four angles, one of them right
        c = 270 - a - b
        return 55 <= a <= 120 and 55 <= c <= 150 and a % 4 == 2 and len({a, b, c, 90}) == 4
    if kind == 1:  # two equal angles and another
        half = (360 - a) // 2
        return b == 70 and a % 2 == 0 and 60 <= a <= 164 and half != a and 90 not in (a, half)
    if kind == 2:  # three equal angles and another
        third, over = divmod(360 - a, 3)
        return b == 70 and over == 0 and 60 <= a <= 160 and 90 not in (a, third) and third != a
    # x and a multiple of it, and another
    times = b // 35
    part, over = divmod(360 - a, times + 1)
    apart = 90 not in (a, part, times * part) and 180 not in (a, times * part) and a != part
    return b in (70, 105) and over == 0 and part >= 50 and times * part < 240 and a >= 50 and apart


def _parts(kind: int, a: int, b: int, c: int, x: int) -> list[tuple[int, int]]:
    """Return the angles px + q of a question, as pairs p and q."""
    first = a * x + b
    if kind == 0:  # two with letters and a number
        return [(a, b), (0, 360 - first - c * x), (c, 0)]
    return [(a, b), (1, 0), (c, 360 - first - x - c * x)]  # three with letters


def _challenge(kind: int, a: int, b: int, c: int, x: int) -> bool:
    parts = _parts(kind, a, b, c, x)
    sizes = [p * x + q for p, q in parts]
    apart = len({*sizes, x}) >= 3 + (kind == 0) and 90 not in sizes
    straight = any(168 < size < 192 for size in sizes)  # or it would seem to be a line
    # With labels as wide as these every angle has to be wide too.
    wide = all(size >= (58 if p and q else 54) for (p, q), size in zip(parts, sizes, strict=True))
    tame = all(abs(q) <= 75 or not p for p, q in parts) and max(sizes) < 200 and parts[-1][1] >= 0
    return not straight and a != c and apart and wide and tame and several_wrong(parts, x, 360)


@register
class AnglesAtAPoint(Topic):
    """Angles that make a whole turn."""

    id = "geometry.angles-at-a-point"
    title = "Angles round a point"
    statements = ("geometry.angles",)
    misconceptions = (
        *(m.POINT_HALF_TURN, m.COPIED, m.LEFT_OUT, m.SQUARE_UNSEEN, m.NOT_SHARED),
        *(m.MULTIPLE_ALONE, m.SHARED_EQUALLY, m.NUMBERS_LEFT_OUT, m.NUMBERS_WRONG_WAY),
        *(m.ANGLE_NOT_LETTER, m.SET_EQUAL),
    )
    prerequisites = ("geometry.angles-on-a-line",)
    spaces = {
        Tier.SUPPORT: Space(
            _support, kind=range(3), a=range(50, 301), b=(70, 90, 105, 115, 130, 145)
        ),
        Tier.CORE: Space(_core, kind=range(4), a=range(50, 165), b=(70, 80, 85, 100, 105, 115)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(2),
            a=(2, 3, 4, 5),
            b=(-30, -20, 10, 15, 24, 40),
            c=(1, 2, 3),
            x=range(20, 66),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(spaces, "geometry.angles-at-a-point", angles)
    spaces = with_brief(spaces, AT_A_POINT)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._one(*values)
        return self._several(*values) if tier is Tier.CORE else self._letters(*values)

    def _one(self, kind: int, a: int, b: int) -> Draft:
        x = letter_of(kind, a, b)
        known = [a] if kind == 0 else [b, a]
        size = 360 - sum(known)
        wrong: list[Wrong]
        sizes: tuple[int, ...]
        labels: tuple[t.Node | None, ...]
        if kind == 0:
            sizes, labels = (a, size), (deg(a), x)
            wrong = [(m.POINT_HALF_TURN, abs(180 - a)), (m.COPIED, a)]
        else:
            sizes, labels = (a, size, b), (deg(a), x, None if kind == 1 else deg(b))
            left_out = m.SQUARE_UNSEEN if kind == 1 else m.LEFT_OUT
            less = 180 - a - b
            wrong = [
                (left_out, 360 - a),
                (m.POINT_HALF_TURN, less if less > 0 else None),
                (m.COPIED, a),
            ]
        figure = _point(turned(sizes, a), turned(labels, a), by_turns(_TURNS, a + b), accurate=True)
        return size_question(figure, x, size, left_over(WHY, x, 360, known), wrong, (kind, a, b))

    def _several(self, kind: int, a: int, b: int) -> Draft:
        x = letter_of(kind, a, b)
        wrong: list[Wrong]
        sizes: tuple[int, ...]
        labels: tuple[t.Node | None, ...]
        if kind == 0:
            count, known, size = 1, [90, a, b], 270 - a - b
            sizes, labels = (a, 90, size, b), (deg(a), None, x, deg(b))
            wrong = [(m.SQUARE_UNSEEN, 360 - a - b), (m.LEFT_OUT, 270 - a)]
        elif kind in (1, 2):
            count, known, rest = kind + 1, [a], 360 - a
            size = rest // count
            sizes, labels = (a, *[size] * count), (deg(a), *[x] * count)
            wrong = [
                (m.NOT_SHARED, rest),
                (m.POINT_HALF_TURN, whole_number(180 - a, count)),
                (m.COPIED, a),
            ]
        else:
            times, rest = b // 35, 360 - a
            count, known = times + 1, [a]
            size = rest // count
            sizes, labels = (a, size, times * size), (deg(a), x, times_letter(times, x))
            wrong = [
                (m.NOT_SHARED, rest),
                (m.MULTIPLE_ALONE, whole_number(rest, times)),
                (m.SHARED_EQUALLY, whole_number(rest, 2)),
                (m.POINT_HALF_TURN, whole_number(180 - a, count)),
            ]
        figure = _point(turned(sizes, a + b), turned(labels, a + b), by_turns(_TURNS, a))
        steps = left_over(WHY, x, 360, known, count)
        return size_question(figure, x, size, steps, wrong, (kind, a, b))

    def _letters(self, kind: int, a: int, b: int, c: int, value: int) -> Draft:
        x = value_letter(a, b, value)
        parts = _parts(kind, a, b, c, value)
        sizes = tuple(p * value + q for p, q in parts)
        labels = tuple(degrees_of(p, x, q) if p else deg(q) for p, q in parts)
        # The widest label stands to the right or the left, where it has most room.
        figure = _point(sizes, labels, sizes[0] // 2 - 90 + 180 * (value % 2))
        return value_question(
            figure,
            x,
            value,
            solving(WHY, x, parts, 360),
            wrong_values(parts, value, 360),
            (kind, a, b, c, value),
        )
