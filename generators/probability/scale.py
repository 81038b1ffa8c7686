"""The probability scale: a line from 0 to 1, where an arrow points, and which arrow is meant.

England's programme of study for key stage 3 (2013) asks pupils to describe chance "using
appropriate language and the 0-1 probability scale" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import gcd
from typing import Any

from generators.probability import _misconceptions as m
from itembank.figures.kinds.number.number_line import NumberLine
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_LEAD = "The line is a probability scale."


def _read(steps: int, mark: int, other: int, decimal: bool) -> bool:
    """Keep two arrows that stand apart, at neither end and not halfway."""
    if mark >= steps or other >= steps or abs(mark - other) * 12 < steps:
        return False
    if 2 * mark == steps or other in (mark, steps - mark):
        return False
    return decimal or gcd(mark, steps) == 1


def _pick(way: str, steps: int, mark: int) -> bool:
    """Keep a place that is asked for by another number than its steps show."""
    if mark >= steps or 2 * mark == steps:
        return False
    value = Fraction(mark, steps)
    if way == "fraction":
        return gcd(mark, steps) > 1 and value.numerator > 1 and steps in (8, 10, 12, 15, 16, 20)
    if way == "decimal":
        return steps in (8, 20) and gcd(mark, steps) == 1
    return steps in (8, 10, 20) and gcd(mark, steps) == 1


def _places(steps: int, mark: int) -> list[int] | None:
    """Return the mark that is meant and those of likely mistakes, or None where they meet."""
    value = Fraction(mark, steps)
    wanted = [mark, steps - mark]
    numerator = value.numerator if value.denominator != steps else mark + 1
    wanted.append(numerator)
    if len({*wanted}) < 3 or not all(0 < place < steps for place in wanted):
        return None
    ordered = sorted(wanted)
    if any((b - a) * 12 < steps for a, b in pairwise(ordered)):
        return None
    return wanted


@register
class ProbabilityScale(Topic):
    """Where an arrow points, in steps that are named so and that are not; which arrow is meant."""

    id = "probability.scale"
    title = "The probability scale"
    statements = ("probability.experiments",)
    prerequisites = ("fractions.equivalent",)
    misconceptions = (
        *(m.COUNTS_MARKS, m.FROM_ONE, m.STEP_IS_TENTH, m.NUMERATOR_MARKS, m.NEXT_MARK),
    )
    spare = "A line has at most 20 steps, so few places can be asked for by another number."
    spaces = {
        Tier.SUPPORT: Space(
            lambda steps, mark, other, decimal: (
                _read(steps, mark, other, decimal) and decimal == (steps == 10)
            ),
            steps=(5, 6, 8, 10, 12),
            mark=range(1, 12),
            other=range(1, 12),
            decimal=(False, True),
        ),
        Tier.CORE: Space(
            _read, steps=(5, 20), mark=range(1, 20), other=range(1, 20), decimal=(True,)
        ),
        Tier.CHALLENGE: Space(
            lambda way, steps, mark, turn: _pick(way, steps, mark) and bool(_places(steps, mark)),
            way=("fraction", "decimal", "percentage"),
            steps=(8, 10, 12, 15, 16, 20),
            mark=range(2, 20),
            turn=range(6),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        return _which(*values) if tier is Tier.CHALLENGE else _point(*values)


def _line(steps: int, points: dict[str, int]) -> NumberLine:
    return NumberLine(t.Int(0), t.Int(1), steps, points=tuple(points.items()))


def _point(steps: int, mark: int, other: int, decimal: bool) -> Draft:
    first, second = ("A", "B") if mark < other else ("B", "A")
    figure = _line(steps, {first: mark, second: other})
    noun = "decimal" if decimal else "fraction"
    text = (f"{_LEAD} What {noun} does the arrow {first} point to?",)
    value = Fraction(mark, steps)
    write = decimal_node if decimal else number_node
    key = write(value)
    each = write(Fraction(1, steps))
    worked = t.equals(t.times(t.Int(mark), each), key) if mark > 1 else key
    wrong: list[tuple[Any, Fraction]] = [(m.FROM_ONE, 1 - value), (m.COUNTS_MARKS, Fraction(mark))]
    if steps != 10:
        wrong.append((m.STEP_IS_TENTH, Fraction(mark, 10)))
    return Draft(
        text,
        of_figure(figure, text),
        key,
        noun,
        (
            Step(f"There are {steps} equal steps from 0 to 1: each is 1/{steps}."),
            Step(f"The arrow is {mark} {'steps' if mark > 1 else 'step'} from 0.", worked),
        ),
        slips(*wrong, write=write, key=key),
        ("point", steps, mark, other, decimal),
        figure=figure,
    )


_ORDERS = ((0, 1, 2), (0, 2, 1), (1, 0, 2), (1, 2, 0), (2, 0, 1), (2, 1, 0))


def _which(way: str, steps: int, mark: int, turn: int) -> Draft:
    places = _places(steps, mark)
    assert places is not None
    # The letters do not go in order along the line, or the middle one would tell.
    letters = ("A", "B", "C")
    named = dict(zip((letters[n] for n in _ORDERS[turn]), places, strict=True))
    by_place = {place: name for name, place in named.items()}
    figure = _line(steps, dict(sorted(named.items())))
    value = Fraction(mark, steps)
    shown: t.Node = number_node(value)
    if way == "decimal":
        shown = decimal_node(value)
    elif way == "percentage":
        shown = t.Percent(decimal_node(value * 100))
    text = prompt(f"{_LEAD} Which arrow points to {{p}}?", p=shown)
    key = t.Label(by_place[mark])
    other = m.NUMERATOR_MARKS if value.denominator != steps else m.NEXT_MARK
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        (
            Step(f"There are {steps} equal steps from 0 to 1."),
            Step(f"Write it in parts of {steps}: {mark}/{steps}."),
            Step(f"Count {mark} steps from 0.", key),
        ),
        slips(
            (m.FROM_ONE, t.Label(by_place[places[1]])),
            (other, t.Label(by_place[places[2]])),
            key=key,
        ),
        ("which", way, steps, mark, turn),
        figure=figure,
    )
