"""Pictograms: what a row stands for, two rows compared or added, and all of them.

England's programme of study for key stage 3 (2013) asks pupils to "construct and interpret
frequency tables, bar charts, pie charts, and pictograms for categorical data" (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from generators._scatter import unlike
from generators.statistics import _chart_mistakes as m
from generators.statistics import _charts as c
from generators.statistics import _missing_drawn as missing
from generators.statistics._pictograms_in_brief import BRIEF
from itembank.figures.kinds.chart.pictogram import Pictogram
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import in_full

_ROWS, _SQUARES = 3, 5


def _values(story: int, each: int, parts: int, seed: int) -> tuple[int, ...]:
    """Return three values, in squares that are cut in 2 or 4 parts."""
    steps = unlike(story + len(c.STORIES) * seed, _ROWS, 1, _SQUARES * parts)
    return tuple(step * each // parts for step in steps)


def _likely(story: int, values: tuple[int, ...]) -> bool:
    return len({*values}) == _ROWS and max(values) <= c.STORIES[story].most


def _two(seed: int) -> tuple[int, int]:
    return seed % _ROWS, (seed + 1 + seed // _ROWS % 2) % _ROWS


def _support(kind: int, story: int, each: int, seed: int) -> bool:
    values = _values(story, each, 2, seed)
    if not _likely(story, values):
        return False
    if kind == c.VALUE:  # a half square at the end
        return values[seed % _ROWS] % each != 0 and values[seed % _ROWS] > each
    # Whole squares only, to be added up.
    whole = all(value % each == 0 for value in values)
    return whole and len({max(values), sum(values) - values[-1], sum(values) // each}) == 3


def _core(kind: int, story: int, each: int, seed: int) -> bool:
    values = _values(story, each, 2, seed)
    if not _likely(story, values) or (kind == c.TWO and c.STORIES[story].verb == "chose"):
        return False
    a, b = (values[place] for place in _two(seed))
    if kind in (c.MORE, c.FEWER):
        return abs(a - b) not in (a, b) and (a % each != 0 or b % each != 0)
    return len({a + b, a, abs(a - b)}) == 3 and (a % each != 0 or b % each != 0)


def _challenge(kind: int, story: int, each: int, seed: int) -> bool:
    values = _values(story, each, 4, seed)
    quarters = sum(value * 2 % each != 0 for value in values)
    if not _likely(story, values) or quarters < 2:
        return False
    a, total = values[_two(seed)[0]], sum(values)
    # A part over the rest of 1/3 would be another mistake too.
    if kind == c.ALL:
        return max(values) != total - values[-1]
    return total not in (2 * a, 3 * a, 4 * a)


@register
class Pictograms(Topic):
    """A row with half a square; two rows together or compared; quarters, and all rows."""

    id = "statistics.pictograms"
    title = "Pictograms"
    statements = ("statistics.charts",)
    prerequisites = ("fractions.lowest-terms",)
    misconceptions = (
        *(m.IGNORES_KEY, m.PART_AS_WHOLE, m.LEAVES_OUT_PART, m.PART_IS_ONE, m.ADDS_FOR_MORE),
        *(m.READS_ONE_OF_TWO, m.TOTAL_OF_ALL, m.SUBTRACTS_TO_ADD, m.LARGEST_ONLY),
        *(m.LEAVES_OUT_LAST, m.PART_TO_REST, m.EACH_ALIKE),
        *missing.ROW_MISTAKES,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            kind=(c.VALUE, c.ALL),
            story=range(len(c.STORIES)),
            each=(2, 4, 10, 20),
            seed=range(1, 26),
        ),
        Tier.CORE: Space(
            _core,
            kind=(c.MORE, c.FEWER, c.TWO),
            story=range(len(c.STORIES)),
            each=(2, 4, 10, 20),
            seed=range(1, 14),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=(c.ALL, c.FRACTION),
            story=range(len(c.STORIES)),
            each=(4, 8, 20),
            seed=range(1, 30),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = missing.with_missing_rows(spaces)
    spaces = with_brief(spaces, BRIEF)
    spaces = kinds.with_working_spotted(
        spaces,
        "statistics.pictograms",
        kinds.working_goes_wrong(
            {
                m.ADDS_FOR_MORE: (e.turned,),
                m.SUBTRACTS_TO_ADD: (e.turned,),
                m.READS_ONE_OF_TWO: (e.cut_short,),
                m.LEAVES_OUT_PART: (e.left_out,),
                m.LEAVES_OUT_LAST: (e.left_out,),
                m.PART_TO_REST: (e.everywhere(e.left_out),),
            }
        ),
    )
    spaces = kinds.with_people_asked(spaces, "statistics.pictograms")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, story, each, seed = values
        told = c.STORIES[story]
        told = told._replace(names=told.names[:_ROWS])
        shown = _values(story, each, 4 if tier is Tier.CHALLENGE else 2, seed)
        figure = Pictogram(told.names, shown, each, told.thing)
        first, second = _two(seed)
        asked = c.asked_of(kind, told, shown, first, second)
        steps, wrongs = asked.steps, asked.wrongs
        if kind == c.VALUE:
            value = shown[first]
            over = value % each
            steps = _read(told.names[first : first + 1], (value,), each)
            wrongs = [
                (m.IGNORES_KEY, -(-value // each)),
                (m.PART_AS_WHOLE, value - over + each),
                (m.LEAVES_OUT_PART, value - over),
                (m.PART_IS_ONE, value - over + 1),
            ]
        elif kind in (c.MORE, c.FEWER, c.TWO):
            pair = (first, second)
            read = _read([told.names[p] for p in pair], [shown[p] for p in pair], each)
            steps = [*read, *steps]
        else:
            if kind == c.ALL and tier is Tier.SUPPORT:
                wrongs = [(m.IGNORES_KEY, sum(shown) // each), *wrongs]
            steps = [*_read(told.names, shown, each), *steps]
        text = (f"{told.lead('pictogram')} {asked.text}",)
        return Draft(
            text,
            of_figure(figure, text),
            asked.key,
            asked.form,
            tuple(steps),
            slips(*wrongs, key=asked.key),
            (kind, told.names[first], told.names[second], each, *shown),
            figure=figure,
        )


_PARTS = {1: "a quarter", 2: "a half", 3: "three quarters"}


def _read(names: Sequence[str], values: Sequence[int], each: int) -> list[Step]:
    """Return how rows are read: whole squares, and a part of one."""
    steps = []
    for name, value in zip(names, values, strict=True):
        whole, over = divmod(value, each)
        quarters = 4 * over // each
        part = _part(each, quarters) if over else None
        whole_ones = t.times(t.Int(whole), t.Int(each))
        if part is None:
            said, line = "1 square" if whole == 1 else f"{whole} squares", whole_ones
        elif whole:
            said, line = f"{whole} and {_PARTS[quarters]} squares", t.add(whole_ones, t.Int(over))
        else:
            said, line = (
                "half a square" if quarters == 2 else f"{_PARTS[quarters]} of a square",
                part,
            )
        row = in_full(name)
        steps.append(Step(f"{row[:1].upper()}{row[1:]} has {said}.", t.equals(line, t.Int(value))))
    return steps


def _part(each: int, quarters: int) -> t.Node:
    """Return the sum for a part of a square."""
    if quarters == 2:
        return t.divide(t.Int(each), t.Int(2))
    quarter = t.divide(t.Int(each), t.Int(4))
    return quarter if quarters == 1 else t.times(t.Int(3), t.Int(each // 4))
