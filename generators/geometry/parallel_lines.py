"""Angles on parallel lines: corresponding, alternate and co-interior.

England's programme of study for key stage 3 (2013) asks pupils to "understand and use the
relationship between parallel lines and alternate and corresponding angles" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.equations._balance import balance
from generators.equations._writing import side
from generators.geometry import _misconceptions as m
from generators.geometry._angles import (
    deg,
    degrees_of,
    letter_of,
    not_to_scale,
    size_question,
    solving,
    value_letter,
    value_question,
    whole_number,
    wrong_values,
)
from generators.geometry._angles_in_brief import PARALLEL
from itembank.figures.kinds.plane.angles import Angles
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

CORRESPONDING = "Corresponding angles are equal."
ALTERNATE = "Alternate angles are equal."
FACING = "Co-interior angles add up to 180°."
OPPOSITE = "Vertically opposite angles are equal."
ON_LINE = "Angles on a straight line add up to 180°."

# The angles round the upper crossing are numbered 1 to 4, anticlockwise from the one above and
# to the right; round the lower one 5 to 8 in the same way.
_EQUAL = ((1, 5), (2, 6), (3, 7), (4, 8), (3, 5), (4, 6))
_WIDE_FIRST = ((5, 1), (6, 2), (3, 7), (4, 8), (3, 5), (4, 6))
"""Equal angles, the first of them between the parallel lines, where a wide label has room."""
_FACING = ((4, 5), (3, 6), (5, 4), (6, 3))
_TWO_STEPS = ((1, 7), (2, 8), (7, 1), (8, 2), (1, 6), (2, 5), (1, 8), (2, 7), (5, 2), (8, 3))
_TURNS = (0, 0, 12, 345)


def _lines(first: int, labels: dict[int, t.Node], turn: int, *, accurate: bool) -> Angles:
    drawn = first if accurate else not_to_scale((first, 180 - first))[0]
    return Angles("parallel", (drawn,), tuple(sorted(labels.items())), (), turn, accurate)


def _first(number: int, size: int) -> int:
    """Return the size of angle 1, where another one's is given."""
    return size if number % 2 else 180 - size


def _support(pair: int, a: int, turned: bool) -> bool:
    return a != 90 and a % 2 == pair % 2 and turned == (a % 4 < 2)


def _core(pair: int, a: int, turned: bool) -> bool:
    return a not in (90, 60, 120) and not turned and a % 5 == pair % 5


def _challenge(kind: int, a: int, b: int, c: int, x: int) -> bool:
    size = a * x + b
    if b == 0 or not 76 <= size <= 124 or size == 90 or x in (size, 180 - size):
        return False
    if kind < 2:  # two equal angles; then an angle beside
        line = _as_line(a, b, c, 0)
        return c > a and b == (c - a) * x and (kind == 1 or line not in (None, x, size))
    wrong = wrong_values([(a, b), (c, 0)], x, 180, m.REST_OF_TURN)
    several = len({value for _, value in wrong} - {None}) > 1
    return several and a != c and size + c * x == 180  # co-interior angles


def _as_line(a: int, b: int, c: int, d: int) -> int | None:
    """Return the letter's value if ax + b and cx + d made a straight line."""
    return whole_number(180 - b - d, a + c)


@register
class ParallelLines(Topic):
    """Angles where a line crosses two parallel lines."""

    id = "geometry.parallel-lines"
    title = "Angles on parallel lines"
    statements = ("geometry.parallel-lines",)
    misconceptions = (
        *(m.EQUAL_AS_LINE, m.PARALLEL_ALL_EQUAL, m.REST_OF_TURN, m.LINE_RIGHT_ANGLE),
        *(m.NUMBERS_LEFT_OUT, m.NUMBERS_WRONG_WAY, m.ANGLE_NOT_LETTER, m.SET_EQUAL),
        m.OTHER_ANGLE,
    )
    prerequisites = ("geometry.angles-on-a-line", "geometry.vertically-opposite")
    spaces = {
        Tier.SUPPORT: Space(_support, pair=range(6), a=range(50, 131), turned=(False, True)),
        Tier.CORE: Space(_core, pair=range(14), a=range(48, 133), turned=(False,)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            a=(1, 2, 3, 4),
            b=range(-30, 91),
            c=(1, 2, 3, 4, 5),
            x=range(11, 61),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = with_brief(spaces, PARALLEL)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._one(*values)
        return self._several(*values) if tier is Tier.CORE else self._letters(*values)

    def _one(self, pair: int, a: int, turned: bool) -> Draft:
        x = letter_of(pair, a)
        given, wanted = _EQUAL[pair][:: -1 if turned else 1]
        figure = _lines(
            _first(given, a), {given: deg(a), wanted: x}, by_turns(_TURNS, a), accurate=True
        )
        why = CORRESPONDING if abs(given - wanted) == 4 else ALTERNATE
        wrong: list[Wrong] = [(m.EQUAL_AS_LINE, 180 - a), (m.REST_OF_TURN, 360 - a)]
        return size_question(
            figure, x, a, [Step(why, t.equals(x, deg(a)))], wrong, (pair, a, turned)
        )

    def _several(self, pair: int, a: int, turned: bool) -> Draft:
        x = letter_of(pair, a)
        given, wanted = (*_FACING, *_TWO_STEPS)[pair]
        equal = (given - wanted) % 2 == 0
        size = a if equal else 180 - a
        labels: dict[int, t.Node] = {given: deg(a), wanted: x}
        figure = _lines(_first(given, a), labels, by_turns(_TURNS, a), accurate=False)
        steps: list[Step] = []
        if pair < len(_FACING):
            steps = [Step(FACING, t.equals(t.add(deg(a), x), deg(180)))]
        wrong: list[Wrong]
        if equal:
            steps.append(Step(f"{CORRESPONDING} {OPPOSITE}", t.equals(x, deg(a))))
            wrong = [(m.EQUAL_AS_LINE, 180 - a), (m.REST_OF_TURN, 360 - a)]
        else:
            if pair >= len(_FACING):
                steps.append(
                    Step(f"{CORRESPONDING} {ON_LINE}", t.equals(t.add(deg(a), x), deg(180)))
                )
            steps.append(
                Step(
                    "Subtract the angle that you know.",
                    t.equals(x, t.sub(deg(180), deg(a)), deg(size)),
                )
            )
            wrong = [
                (m.PARALLEL_ALL_EQUAL, a),
                (m.REST_OF_TURN, 360 - a),
                (m.LINE_RIGHT_ANGLE, 90 - a if a < 90 else None),
            ]
        return size_question(figure, x, size, steps, wrong, (pair, a))

    def _letters(self, kind: int, a: int, b: int, c: int, value: int) -> Draft:
        x = value_letter(a, b, value)
        twin = (kind, a, b, c, value)
        size = a * value + b
        wide = degrees_of(a, x, b)
        if kind == 2:
            given, wanted = _FACING[(a + value) % 4]
            parts = [(a, b), (c, 0)]
            labels: dict[int, t.Node] = {given: wide, wanted: degrees_of(c, x)}
            figure = _lines(_first(given, size), labels, 0, accurate=False)
            wrong = wrong_values(parts, value, 180, m.REST_OF_TURN)
            return value_question(figure, x, value, solving(FACING, x, parts, 180), wrong, twin)
        given, wanted = by_turns(_WIDE_FIRST, a + b + value)
        why = CORRESPONDING if abs(given - wanted) == 4 else ALTERNATE
        labels = {given: wide, wanted: degrees_of(c, x)}
        steps = [Step(why, t.equals(side(a, x, b), side(c, x))), *balance(x, a, b, c, 0)]
        if kind == 0:
            figure = _lines(_first(given, size), labels, 0, accurate=False)
            wrong = [
                (m.ANGLE_NOT_LETTER, size),
                (m.EQUAL_AS_LINE, _as_line(a, b, c, 0)),
            ]
            return value_question(figure, x, value, steps, wrong, twin)
        y = t.Sym("y")
        beside = wanted + 1 if wanted % 4 else wanted - 3
        labels[beside] = y
        figure = _lines(_first(given, size), labels, 0, accurate=False)
        times = t.times(t.Int(a), t.Int(value))
        worked = t.add(times, t.Int(b)) if b > 0 else t.sub(times, t.Int(-b))
        steps += [
            Step(
                f"Substitute {x.name} = {value} to find the equal angles.",
                t.equals(t.Quantity(t.Bracket(worked), "°"), deg(size)),
            ),
            Step(ON_LINE, t.equals(y, t.sub(deg(180), deg(size)), deg(180 - size))),
        ]
        wrong = [
            (m.OTHER_ANGLE, size),
            (m.REST_OF_TURN, 360 - size),
            (m.LINE_RIGHT_ANGLE, 90 - size if size < 90 else None),
        ]
        return size_question(figure, y, 180 - size, steps, wrong, twin)
