"""Angles on a straight line: one missing, several equal, and expressions to solve.

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
from generators.geometry._angles_in_brief import ON_A_LINE
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

WHY = "Angles on a straight line add up to 180°."
_TURNS = (0, 0, 15, 345, 0, 30)


def _line(
    sizes: tuple[int, ...], labels: tuple[t.Node | None, ...], *, accurate: bool, turn: int = 0
) -> Angles:
    """Return the figure; an angle without a label is a right angle with its mark."""
    shown = tuple((k, label) for k, label in enumerate(labels, 1) if label is not None)
    right = tuple(k for k, label in enumerate(labels, 1) if label is None)
    drawn = sizes if accurate else not_to_scale(sizes)
    return Angles("line", drawn, shown, right, by_turns(_TURNS, turn), accurate)


def _support(kind: int, a: int, at: int) -> bool:
    if kind == 0:  # two angles, the unknown on the one side or the other
        return a != 90 and at == a % 2
    return 26 <= a < 65 and a != 45 and at != a % 3  # three, one of them right


def _core(kind: int, a: int, b: int) -> bool:
    c = 180 - a - b
    if kind == 0:  # three angles, none of them right
        return min(a, c) >= 36 and 90 not in (a, b, c) and c not in (a, b) and a % 3 == b % 3
    if kind == 1:  # two equal angles and another
        return b == 40 and a % 2 == 0 and 36 <= a <= 116 and a not in (60, 90)
    if kind == 2:  # x and a multiple of it, and another
        times = b // 20
        part, over = divmod(180 - a, times + 1)
        apart = 90 not in (a, part, times * part) and (180 - a) // 2 != part and a != part
        return b in (40, 60, 80) and over == 0 and part >= 30 and apart
    # four angles, two of them equal
    return 40 <= a < 62 and b in (40, 45, 50, 55, 60) and c % 2 == 0 and c >= 76 and c // 2 != a


def _parts(kind: int, a: int, b: int, c: int, x: int) -> list[tuple[int, int]]:
    """Return the angles px + q of a question, as pairs p and q."""
    first = a * x + b
    if kind == 0:
        return [(a, b), (c, 180 - first - c * x)]
    return [(a, 0), (0, 180 - (a + c) * x - b), (c, b)]


def _challenge(kind: int, a: int, b: int, c: int, x: int) -> bool:
    if a == c or not several_wrong(_parts(kind, a, b, c, x), x, 180):
        return False
    if kind == 1:  # ax° and (cx + b)° with a number between
        first, last = a * x, c * x + b
        number = 180 - first - last
        apart = len({first, last, number, x}) == 4 and 90 not in (first, last, number)
        return apart and min(first, number) >= 36 and last >= 52 and number % 2 == 0
    first, last = a * x + b, 180 - a * x - b
    d = last - c * x
    sized = min(first, last) >= 52 and 90 not in (first, last) and x not in (first, last)
    # The wrong ways give whole numbers where the letters' number is a factor of 180.
    return sized and a > c and 180 % (a + c) == 0 and 0 < abs(d) <= 60 and b + d != 0


@register
class AnglesOnALine(Topic):
    """Angles that make a straight line."""

    id = "geometry.angles-on-a-line"
    title = "Angles on a straight line"
    statements = ("geometry.angles",)
    misconceptions = (
        *(m.LINE_FULL_TURN, m.LINE_RIGHT_ANGLE, m.COPIED, m.LEFT_OUT, m.SQUARE_UNSEEN),
        *(m.NOT_SHARED, m.SHARED_EQUALLY, m.MULTIPLE_ALONE, m.NUMBERS_LEFT_OUT),
        *(m.ANGLE_NOT_LETTER, m.NUMBERS_WRONG_WAY, m.SET_EQUAL),
    )
    spaces = {
        Tier.SUPPORT: Space(_support, kind=(0, 1), a=range(24, 157), at=range(3)),
        Tier.CORE: Space(_core, kind=range(4), a=range(34, 131), b=range(40, 85, 5)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(2),
            a=(2, 3, 4, 5),
            b=(-20, -15, -5, 10, 12, 25),
            c=(1, 2, 3),
            x=range(12, 40),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(spaces, "geometry.angles-on-a-line", angles)
    spaces = with_brief(spaces, ON_A_LINE)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._one(*values)
        return self._several(*values) if tier is Tier.CORE else self._letters(*values)

    def _one(self, kind: int, a: int, at: int) -> Draft:
        x = letter_of(kind, a, at)
        if kind == 0:
            size, known = 180 - a, [a]
            sizes: tuple[int, ...] = (a, size)
            labels: tuple[t.Node | None, ...] = (deg(a), x)
            if at:
                sizes, labels = sizes[::-1], labels[::-1]
            figure = _line(sizes, labels, accurate=True, turn=a)
            wrong: list[Wrong] = [
                (m.LINE_FULL_TURN, 360 - a),
                (m.COPIED, a),
                (m.LINE_RIGHT_ANGLE, 90 - a if a < 90 else None),
            ]
        else:
            size, known = 90 - a, [90, a]
            sizes, labels = turned((a, size, 90), at), turned((deg(a), x, None), at)
            figure = _line(sizes, labels, accurate=True, turn=a)
            wrong = [(m.LINE_FULL_TURN, 270 - a), (m.SQUARE_UNSEEN, 180 - a), (m.COPIED, a)]
        steps = left_over(WHY, x, 180, known)
        return size_question(figure, x, size, steps, wrong, (kind, a, at))

    def _several(self, kind: int, a: int, b: int) -> Draft:
        x = letter_of(kind, a, b)
        wrong: list[Wrong]
        sizes: tuple[int, ...]
        labels: tuple[t.Node | None, ...]
        count = 1
        if kind == 0:
            size, known = 180 - a - b, [a, b]
            sizes, labels = (a, size, b), (deg(a), x, deg(b))
            wrong = [(m.LEFT_OUT, 180 - a), (m.LINE_FULL_TURN, 360 - a - b)]
        elif kind == 1:
            count, size, known = 2, (180 - a) // 2, [a]
            sizes, labels = (a, size, size), (deg(a), x, x)
            wrong = [
                (m.NOT_SHARED, 180 - a),
                (m.LINE_FULL_TURN, (360 - a) // 2),
                (m.COPIED, a),
            ]
        elif kind == 2:
            times = b // 20
            count, known = times + 1, [a]
            rest = 180 - a
            size = rest // count
            sizes, labels = (size, a, times * size), (x, deg(a), times_letter(times, x))
            wrong = [
                (m.NOT_SHARED, rest),
                (m.MULTIPLE_ALONE, rest // times if rest % times == 0 else None),
                (m.LINE_FULL_TURN, (360 - a) // count if 180 % count == 0 else None),
            ]
        else:
            rest = 180 - a - b
            count, size, known = 2, rest // 2, [a, b]
            sizes, labels = (size, a, size, b), (x, deg(a), x, deg(b))
            wrong = [
                (m.NOT_SHARED, rest),
                (m.LEFT_OUT, whole_number(180 - a, 2)),
                (m.LINE_FULL_TURN, (360 - a - b) // 2),
            ]
        at = a + b
        figure = _line(turned(sizes, at), turned(labels, at), accurate=False)
        steps = left_over(WHY, x, 180, known, count)
        return size_question(figure, x, size, steps, wrong, (kind, a, b))

    def _letters(self, kind: int, a: int, b: int, c: int, value: int) -> Draft:
        x = value_letter(a, b, value)
        parts = _parts(kind, a, b, c, value)
        if value % 2:
            parts.reverse()
        sizes = tuple(p * value + q for p, q in parts)
        labels = tuple(degrees_of(p, x, q) if p else None if q == 90 else deg(q) for p, q in parts)
        figure = _line(sizes, labels, accurate=False)
        return value_question(
            figure,
            x,
            value,
            solving(WHY, x, parts, 180),
            wrong_values(parts, value, 180),
            (kind, a, b, c, value),
        )
