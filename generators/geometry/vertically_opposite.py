"""Two straight lines that cross: angles opposite each other, and next to each other.

England's programme of study for key stage 3 (2013) asks pupils to "apply the properties of angles
at a point, angles at a point on a straight line, vertically opposite angles" (from memory).
"""

from __future__ import annotations

from collections.abc import Mapping
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
    total,
    value_letter,
    value_question,
    whole_number,
)
from generators.geometry._angles_in_brief import CROSSING
from itembank.figures.kinds.plane.angles import Angles
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

OPPOSITE = "Vertically opposite angles are equal."
NEXT = "Angles on a straight line add up to 180°."
_TURNS = (0, 10, 335, 20, 345)


def _crossing(first: int, labels: Mapping[int, t.Node], turn: int, *, accurate: bool) -> Angles:
    """Return the figure: angle 1 has the size `first`, and the others follow anticlockwise."""
    drawn = first if accurate else not_to_scale((first, 180 - first))[0]
    return Angles("crossing", (drawn,), tuple(sorted(labels.items())), (), turn % 360, accurate)


def _flat(first: int) -> int:
    """Return by how much to turn, so that angle 1 opens to the right, where a label has room."""
    return -(first // 2)


def _support(across: int, a: int, at: int) -> bool:
    return a != 90 and at == a % 2


def _opposite(across: int, a: int, at: int) -> bool:
    return a != 90 and at != a % 2


def _core(kind: int, count: int, b: int, x: int) -> bool:
    size = count * x + b
    plain = count == 1
    if plain == (b == 0) or (kind % 2 == 1 and size == 90):
        return False
    given = size if kind == 0 else 180 - size
    apart = 90 not in (given, size) and len({x, given, size, 180 - given}) > 2
    return (
        x % 2 == kind
        and 48 <= size <= 132
        and apart
        and x != 180 - size
        and given not in (x, 2 * b)
    )


def _challenge(kind: int, a: int, b: int, c: int, x: int) -> bool:
    size = a * x + b
    d = size - c * x
    sized = 50 <= size <= 130 and size != 90 and x not in (size, 180 - size)
    if kind == 0:
        found = {_on_line(a, b, c, d), whole_number(d + b, a - c)} - {None, x, size}
        if not found:
            return False
    elif (b + x) % 3:
        return False
    return sized and a > c and d != b and 0 < abs(d) <= 80


def _on_line(a: int, b: int, c: int, d: int) -> int | None:
    """Return the letter's value if ax + b and cx + d made a straight line."""
    return whole_number(180 - b - d, a + c)


@register
class VerticallyOpposite(Topic):
    """Angles where two straight lines cross."""

    id = "geometry.vertically-opposite"
    title = "Vertically opposite angles"
    statements = ("geometry.angles",)
    misconceptions = (
        m.NOT_SHARED,
        m.NUMBERS_LEFT_OUT,
        *(m.OPPOSITE_AS_LINE, m.REST_OF_TURN, m.COPIED, m.LINE_RIGHT_ANGLE, m.NOT_DIVIDED),
        *(m.SUBTRACTS_MULTIPLIER, m.ADDS_NUMBER, m.ANGLE_NOT_LETTER, m.NUMBERS_WRONG_WAY),
        *(m.OTHER_ANGLE, m.LINE_FULL_TURN),
    )
    prerequisites = ("geometry.angles-on-a-line",)
    spaces = {
        # The further part has more that are opposite, which is the idea of the topic.
        Tier.SUPPORT: Space(_support, across=(1, 0), a=range(35, 146), at=(0, 1)).then(
            _opposite, across=(1,), a=range(35, 146, 3), at=(0, 1)
        ),
        Tier.CORE: Space(
            _core,
            kind=(0, 1),
            count=(1, 2, 3, 4, 5),
            b=(-25, -12, 0, 15, 28, 40),
            x=range(11, 94),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=(0, 1),
            a=(2, 3, 4, 5),
            b=(-20, -12, 8, 15, 30),
            c=(1, 2, 3),
            x=range(11, 45),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = with_brief(spaces, CROSSING)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._one(*values)
        return self._number(*values) if tier is Tier.CORE else self._letters(*values)

    def _one(self, across: int, a: int, at: int) -> Draft:
        x = letter_of(a, at)
        # Angle `at + 1` is given; the one asked for is across from it, or next to it.
        given, wanted = at + 1, at + 3 if across else (at + 2 if a % 4 < 2 else (at + 3) % 4 + 1)
        first = a if at == 0 else 180 - a
        figure = _crossing(first, {given: deg(a), wanted: x}, by_turns(_TURNS, a), accurate=True)
        wrong: list[Wrong]
        if across:
            size = a
            steps = [Step(OPPOSITE, t.equals(x, deg(a)))]
            wrong = [(m.OPPOSITE_AS_LINE, 180 - a), (m.REST_OF_TURN, 360 - a)]
        else:
            size = 180 - a
            steps = [
                Step(NEXT, t.equals(t.add(deg(a), x), deg(180))),
                Step(
                    "Subtract the angle that you know.",
                    t.equals(x, t.sub(deg(180), deg(a)), deg(size)),
                ),
            ]
            wrong = [
                (m.COPIED, a),
                (m.REST_OF_TURN, 360 - a),
                (m.LINE_RIGHT_ANGLE, 90 - a if a < 90 else None),
            ]
        return size_question(figure, x, size, steps, wrong, (across, a, at))

    def _number(self, kind: int, count: int, b: int, value: int) -> Draft:
        """Return one angle with a letter and one given: opposite (0), or next to it (1)."""
        x = value_letter(count, b, value)
        size = count * value + b
        given = size if kind == 0 else 180 - size
        labels = {1: degrees_of(count, x, b), 3 if kind == 0 else 2: deg(given)}
        figure = _crossing(size, labels, _flat(size), accurate=False)
        if kind == 0:
            steps = [Step(OPPOSITE, t.equals(side(count, x, b), t.Int(size)))]
        else:
            steps = [
                Step(NEXT, t.equals(total([side(count, x, b), t.Int(given)]), t.Int(180))),
                Step(
                    f"Subtract {given} from both sides.",
                    t.equals(side(count, x, b), t.Int(size)),
                ),
            ]
        steps += balance(x, count, b, 0, size)
        other = 180 - size
        mistaken = m.OPPOSITE_AS_LINE if kind == 0 else m.COPIED
        wrong: list[Wrong] = [
            (m.ANGLE_NOT_LETTER if b else m.NOT_DIVIDED, size),
            (mistaken, whole_number(other - b, count)),
            (m.SUBTRACTS_MULTIPLIER, size - count if count > 1 else None),
            (m.ADDS_NUMBER, whole_number(size + b, count) if b else None),
        ]
        return value_question(figure, x, value, steps, wrong, (kind, count, b, value))

    def _letters(self, kind: int, a: int, b: int, c: int, value: int) -> Draft:
        """Return two opposite angles with letters: find the letter (0) or the angle beside (1)."""
        x = value_letter(a, b, value)
        size = a * value + b
        d = size - c * value
        labels: dict[int, t.Node] = {1: degrees_of(a, x, b), 3: degrees_of(c, x, d)}
        beside = t.Sym("y")
        if kind == 1:
            labels[2 if value % 2 else 4] = beside
        figure = _crossing(size, labels, _flat(size), accurate=False)
        first: list[Step] = [
            Step(OPPOSITE, t.equals(side(a, x, b), side(c, x, d))),
            *balance(x, a, b, c, d),
        ]
        if kind == 0:
            wrong: list[Wrong] = [
                (m.ANGLE_NOT_LETTER, size),
                (m.OPPOSITE_AS_LINE, _on_line(a, b, c, d)),
                (m.NUMBERS_WRONG_WAY, whole_number(d + b, a - c)),
            ]
            return value_question(figure, x, value, first, wrong, (kind, a, b, c, value))
        put = t.Quantity(
            t.Bracket(t.add(t.times(t.Int(a), t.Int(value)), t.num(b)))
            if b > 0
            else t.Bracket(t.sub(t.times(t.Int(a), t.Int(value)), t.Int(-b))),
            "°",
        )
        steps = [
            *first,
            Step(f"Substitute {x.name} = {value} to find the angle.", t.equals(put, deg(size))),
            Step(NEXT, t.equals(beside, t.sub(deg(180), deg(size)), deg(180 - size))),
        ]
        wrong = [
            (m.OTHER_ANGLE, size),
            (m.REST_OF_TURN, 360 - size),
            (m.LINE_RIGHT_ANGLE, 90 - size if size < 90 else None),
        ]
        return size_question(figure, beside, 180 - size, steps, wrong, (kind, a, b, c, value))
