"""Bar charts: reading, comparing and adding bars; two kinds of bar side by side.

England's programme of study for key stage 3 (2013) asks pupils to "construct and interpret ...
bar charts ... for categorical data" (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from generators._scatter import unlike
from generators.statistics import _chart_mistakes as m
from generators.statistics import _charts as c
from generators.statistics import _missing_drawn as missing
from generators.statistics._bars_in_brief import BRIEF
from itembank.figures.kinds.chart.bar_chart import BarChart, Series
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

_LINES = 4
"""The most numbered lines above 0, so that a chart stays low."""
_ROWS = 4


def _values(story: int, scale: int, between: int, seed: int) -> tuple[int, ...]:
    """Return four values on the lines of an axis, of which a step is cut in `between`."""
    steps = unlike(story + len(c.STORIES) * seed, _ROWS, 1, _LINES * between)
    return tuple(step * scale // between for step in steps)


def _fits(story: int, scale: int, values: tuple[int, ...]) -> bool:
    return (
        len({*values}) == _ROWS
        and max(values) <= c.STORIES[story].most
        and max(values) > scale * (_LINES - 2)
    )


def _two(seed: int) -> tuple[int, int]:
    first = seed % _ROWS
    return first, (first + 1 + seed // _ROWS % (_ROWS - 1)) % _ROWS


def _support(kind: int, story: int, scale: int, seed: int) -> bool:
    values = _values(story, scale, 2 if kind == c.VALUE else 1, seed)
    if not _fits(story, scale, values):
        return False
    if kind == c.VALUE:  # halfway between two lines
        return values[_two(seed)[0]] % scale != 0
    return values[0] not in (max(values), min(values)) and values[-1] not in (
        max(values),
        min(values),
    )


def _core(kind: int, story: int, scale: int, seed: int) -> bool:
    values = _values(story, scale, 2, seed)
    first, second = _two(seed)
    if not _fits(story, scale, values):
        return False
    a, b = values[first], values[second]
    if kind == c.TWO and c.STORIES[story].verb == "chose":
        return False  # chose soup and pasta: nobody chose both
    if kind in (c.MORE, c.FEWER):
        return abs(a - b) not in (a, b) and (a % scale != 0 or b % scale != 0)
    return len({a + b, a, abs(a - b)}) == 3 and a + b != sum(values)


class _Hard:
    """What is asked in the challenge tier."""

    FRACTION, SERIES_MORE, SERIES_ALL = range(3)


def _challenge(kind: int, story: int, scale: int, seed: int) -> bool:
    if kind == _Hard.FRACTION:
        values = _values(story, scale, 2, seed)
        a, total = values[_two(seed)[0]], sum(values)
        # A part over the rest of 1/4 would be another mistake too.
        return _fits(story, scale, values) and total not in (2 * a, 4 * a, 5 * a)
    if c.STORIES[story].names != c.DAYS or c.STORIES[story].thing not in ("swimmers", "books"):
        return False
    low, high = _series(story, scale, seed)
    place = _two(seed)[0] % 3
    a, b = low[place], high[place]
    if kind == _Hard.SERIES_MORE:
        return a != b and abs(a - b) not in (a, b) and max(*low, *high) <= c.STORIES[story].most
    return sum(low) != sum(high) and max(*low, *high) <= c.STORIES[story].most


def _series(story: int, scale: int, seed: int) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Return two rows of three values each."""
    steps = unlike(story + len(c.STORIES) * seed, 6, 1, _LINES * 2)
    values = tuple(step * scale // 2 for step in steps)
    return values[:3], values[3:]


@register
class BarCharts(Topic):
    """One bar, or the largest; two bars compared or added; a fraction, or two kinds of bar."""

    id = "statistics.bar-charts"
    title = "Bar charts"
    statements = ("statistics.charts",)
    misconceptions = (
        *(m.LINE_BELOW, m.LINE_ABOVE, m.ONE_EACH, m.OTHER_END, m.FIRST_IN_LINE, m.ADDS_FOR_MORE),
        *(m.READS_ONE_OF_TWO, m.TOTAL_OF_ALL, m.SUBTRACTS_TO_ADD, m.PART_TO_REST, m.EACH_ALIKE),
        *(m.OTHER_SERIES, m.BOTH_SERIES, m.LEAVES_OUT_LAST),
        *missing.BAR_MISTAKES,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            kind=(c.VALUE, c.MOST, c.FEWEST),
            story=range(len(c.STORIES)),
            scale=(2, 4, 10, 20),
            seed=range(1, 40),
        ),
        Tier.CORE: Space(
            _core,
            kind=(c.MORE, c.FEWER, c.TWO),
            story=range(len(c.STORIES)),
            scale=(2, 4, 10, 20),
            seed=range(1, 24),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            story=range(len(c.STORIES)),
            scale=(2, 4, 10, 20),
            seed=range(1, 36),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = missing.with_missing_bars(spaces)
    spaces = with_brief(spaces, BRIEF)
    spaces = kinds.with_working_spotted(
        spaces,
        "statistics.bar-charts",
        kinds.working_goes_wrong(
            {
                m.ADDS_FOR_MORE: (e.turned,),
                m.SUBTRACTS_TO_ADD: (e.turned,),
                m.READS_ONE_OF_TWO: (e.cut_short,),
                m.LEAVES_OUT_LAST: (e.left_out,),
                m.PART_TO_REST: (e.everywhere(e.left_out),),
            }
        ),
    )
    spaces = kinds.with_people_asked(spaces, "statistics.bar-charts")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, story, scale, seed = values
        if tier is Tier.CHALLENGE:
            if kind != _Hard.FRACTION:
                return _of_two(kind, story, scale, seed)
            kind = c.FRACTION
        between = 1 if kind in (c.MOST, c.FEWEST) else 2
        told, shown = c.STORIES[story], _values(story, scale, between, seed)
        figure = BarChart(told.names, (Series(shown),), scale, between, told.counts())
        first, second = _two(seed)
        asked = c.asked_of(kind, told, shown, first, second)
        steps, wrongs = asked.steps, asked.wrongs
        if kind == c.VALUE:
            low = shown[first] // scale * scale
            steps = _read(told.names[first : first + 1], shown[first : first + 1], scale)
            wrongs = [(m.LINE_BELOW, low), (m.LINE_ABOVE, low + scale)]
            if scale > 2:
                wrongs.append((m.ONE_EACH, low + 1))
        elif kind in (c.MORE, c.FEWER, c.TWO):
            pair = (first, second)
            names = [told.names[place] for place in pair]
            steps = [*_read(names, [shown[place] for place in pair], scale), *steps]
        elif kind == c.FRACTION:
            steps = [*_read(told.names, shown, scale), *steps]
        text = (f"{told.lead('bar chart')} {asked.text}",)
        return Draft(
            text,
            of_figure(figure, text),
            asked.key,
            asked.form,
            tuple(steps),
            slips(*wrongs, key=asked.key),
            (kind, told.names[first], told.names[second], scale, *shown),
            figure=figure,
        )


def _read(names: Sequence[str], values: Sequence[int], scale: int) -> list[Step]:
    """Return how bars are read that end between two numbers."""
    return [
        Step(
            f"The bar of {in_full(name)} ends halfway between {low} and {low + scale}.",
            t.equals(t.add(t.Int(low), t.Int(scale // 2)), t.Int(value)),
        )
        for name, value in zip(names, values, strict=True)
        if value != (low := value // scale * scale)
    ]


def _of_two(kind: int, story: int, scale: int, seed: int) -> Draft:
    told = c.STORIES[story]
    low, high = _series(story, scale, seed)
    names = ("juniors", "adults") if told.thing == "swimmers" else ("novels", "comics")
    days = told.names[:3]
    counts = f"Number of {told.thing}"
    figure = BarChart(days, (Series(low, names[0]), Series(high, names[1])), scale, 2, counts)
    place = _two(seed)[0] % 3
    day, a, b = in_full(days[place]), low[place], high[place]
    which = 0 if a > b else 1
    if kind == _Hard.SERIES_MORE:
        question = f"How many more {names[which]} than {names[1 - which]} {told.verb} on {day}?"
        large, small = max(a, b), min(a, b)
        key = t.Int(large - small)
        steps = [
            *_read([f"{name} on {day}" for name in names], (a, b), scale),
            Step("Subtract.", t.equals(t.sub(t.Int(large), t.Int(small)), key)),
        ]
        wrongs: c.Wrongs = [(m.ADDS_FOR_MORE, a + b), (m.READS_ONE_OF_TWO, large)]
    else:
        row = (low, high)[seed % 2]
        name = names[seed % 2]
        question = f"How many {name} {told.verb} altogether?"
        key = t.Int(sum(row))
        steps = [
            *_read([f"{name} on {in_full(day)}" for day in days], row, scale),
            Step(f"Add the bars of {name}.", t.equals(t.add(*map(t.Int, row)), key)),
        ]
        wrongs = [
            (m.OTHER_SERIES, sum((low, high)[1 - seed % 2])),
            (m.BOTH_SERIES, sum(low) + sum(high)),
            (m.LEAVES_OUT_LAST, sum(row[:-1])),
        ]
    text = (f"{told.lead('bar chart')} {question}",)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        tuple(steps),
        slips(*wrongs, key=key),
        (kind, day, seed % 2, scale, *low, *high),
        figure=figure,
    )
