"""A bar, or a row of squares, that is missing: how long it should be."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from generators._scatter import unlike
from generators.statistics import _chart_mistakes as m
from generators.statistics import _charts as c
from itembank.figures.figure import Figure
from itembank.figures.kinds.chart.bar_chart import BarChart, Series
from itembank.figures.kinds.chart.pictogram import Pictogram
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import in_full

BAR_MISTAKES = (
    *(m.SUM_OF_SHOWN, m.TOTAL_FOR_MISSING, m.OTHER_WAY, m.SAME_AS_OTHER, m.DIFFERENCE_ALONE),
)
ROW_MISTAKES = (m.SUM_OF_SHOWN, m.OTHER_WAY, m.SAME_AS_OTHER, m.THINGS_FOR_SQUARES)
_BARS, _ROWS = 4, 3


def _row(count: int, story: int, worth: int, parts: int, most: int, seed: int) -> tuple[int, ...]:
    """Return so many values, each so many parts of what a line or a square is worth."""
    steps = unlike(story + len(c.STORIES) * seed + 5, count, 1, most * parts)
    return tuple(step * worth // parts for step in steps)


def bar_values(story: int, scale: int, seed: int) -> tuple[int, ...]:
    """Return the values of four bars, on the lines of an axis or halfway between two."""
    return _row(_BARS, story, scale, 2, 4, seed)


def row_values(story: int, each: int, seed: int) -> tuple[int, ...]:
    """Return the values of three rows, in whole and half squares."""
    return _row(_ROWS, story, each, 2, 5, seed)


def _fits(story: int, values: tuple[int, ...], at: int) -> bool:
    """Tell whether values are likely, and the one that is missing reaches no further than others.

    So the axis is as long as it has to be.
    """
    rest = [value for place, value in enumerate(values) if place != at]
    return (
        len({*values}) == len(values)
        and max(values) <= c.STORIES[story].most
        and values[at] < max(rest)
        and sum(rest) not in (values[at], 2 * values[at])
    )


def missing_bar_beside(story: int, scale: int, seed: int) -> bool:
    """Tell whether a bar can be asked for by how it differs from the next one."""
    values = bar_values(story, scale, seed)
    at, other = seed % _BARS, (seed + 1) % _BARS
    apart = abs(values[at] - values[other])
    return (
        _fits(story, values, at)
        and max(values) > 2 * scale
        and apart not in (values[at], values[other])
        and values[other] % scale != 0
        and 2 * values[other] > values[at]
    )


def missing_bar_of_total(story: int, scale: int, seed: int) -> bool:
    """Tell whether a bar can be asked for by what all of them come to."""
    values = bar_values(story, scale, seed)
    halfway = sum(value % scale != 0 for value in values)
    return _fits(story, values, seed % _BARS) and max(values) > 2 * scale and halfway > 1


def missing_row_beside(story: int, each: int, seed: int) -> bool:
    """Tell whether a row can be asked for by how it differs from the next one."""
    values = row_values(story, each, seed)
    at, other = seed % _ROWS, (seed + 1) % _ROWS
    return (
        _fits(story, values, at)
        and values[at] % each == 0
        and values[other] % each != 0
        and 2 * values[other] > values[at]
    )


def missing_row_of_total(story: int, each: int, seed: int) -> bool:
    """Tell whether a row can be asked for by what all of them come to."""
    values = row_values(story, each, seed)
    at = seed % _ROWS
    rest = sum(values) - values[at]
    whole = values[at] % each == 0 and rest % each == 0
    return _fits(story, values, at) and whole and rest // each != values[at]


def _shown(values: Sequence[int], at: int) -> tuple[int, ...]:
    return tuple(0 if place == at else value for place, value in enumerate(values))


def missing_bar(topic: Topic, tier: Tier, story: int, scale: int, seed: int) -> Draft:
    """Return the question how far the bar that is missing should reach."""
    told, values = c.STORIES[story], bar_values(story, scale, seed)
    shown = _shown(values, seed % _BARS)
    figure = BarChart(told.names, (Series(shown),), scale, 2, told.counts())
    lead = told.lead("bar chart")
    wanted = "bar", "to which number should it reach"
    return _missing(figure, told, values, (tier, seed), (lead, *wanted), 1)


def missing_row(topic: Topic, tier: Tier, story: int, each: int, seed: int) -> Draft:
    """Return the question how many squares the row that is missing should have."""
    told, values = c.STORIES[story], row_values(story, each, seed)
    told = told._replace(names=told.names[:_ROWS])
    figure = Pictogram(told.names, _shown(values, seed % _ROWS), each, told.thing)
    lead = told.lead("pictogram")
    wanted = "row", "how many squares should it have"
    return _missing(figure, told, values, (tier, seed), (lead, *wanted), each)


_SEEDS = range(1, 61)


def with_missing_bars(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of bar charts with bars to find: beside another, and of a total."""
    kept = {Tier.CORE: missing_bar_beside, Tier.CHALLENGE: missing_bar_of_total}
    axes = {"story": range(len(c.STORIES)), "scale": (2, 4, 10, 20), "seed": _SEEDS}
    return {
        tier: space.also(missing_bar, kept[tier], **axes) if tier in kept else space
        for tier, space in spaces.items()
    }


def with_missing_rows(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of pictograms with rows to find: beside another, and of a total."""
    kept = {Tier.CORE: missing_row_beside, Tier.CHALLENGE: missing_row_of_total}
    axes = {"story": range(len(c.STORIES)), "each": (2, 4, 10, 20), "seed": _SEEDS}
    return {
        tier: space.also(missing_row, kept[tier], **axes) if tier in kept else space
        for tier, space in spaces.items()
    }


def _missing(
    figure: Figure,
    told: c.Story,
    values: Sequence[int],
    which: tuple[Tier, int],
    words: tuple[str, str, str],
    each: int,
) -> Draft:
    tier, seed = which
    lead, word, wanted = words
    at, other = seed % len(values), (seed + 1) % len(values)
    value, beside, total = values[at], values[other], sum(values)
    rest = [each_value for place, each_value in enumerate(values) if place != at]
    names = [in_full(name) for name in told.names]
    asked = f"{lead} The {word} for {names[at]} is missing: {wanted}, if "
    if tier is Tier.CORE:
        way = "more" if value > beside else "fewer"
        gap = abs(value - beside)
        text = prompt(
            f"{asked}it stands for {{n}} {way} {told.thing} than the {word} for {names[other]}?",
            n=t.Int(gap),
        )
        join, back = (t.add, -gap) if way == "more" else (t.sub, gap)
        steps = [
            Step(f"The {word} for {names[other]} stands for {beside}."),
            Step(
                f"For {names[at]} there are {way}.",
                t.equals(join(t.Int(beside), t.Int(gap)), t.Int(value)),
            ),
        ]
        wrongs: c.Wrongs = [(m.OTHER_WAY, beside + back), (m.SAME_AS_OTHER, beside)]
        if each == 1:
            wrongs.append((m.DIFFERENCE_ALONE, gap))
    else:
        text = prompt(f"{asked}there are {{n}} {told.thing} in all?", n=t.Int(total))
        added = t.equals(t.add(*map(t.Int, rest)), t.Int(sum(rest)))
        steps = [
            Step("Add what is drawn already.", added),
            Step(
                "Subtract that from the number of all.",
                t.equals(t.sub(t.Int(total), t.Int(sum(rest))), t.Int(value)),
            ),
        ]
        wrongs = [(m.SUM_OF_SHOWN, sum(rest))]
        if each == 1:
            wrongs.append((m.TOTAL_FOR_MISSING, total))
    if each > 1:
        squares = t.equals(t.divide(t.Int(value), t.Int(each)), t.Int(value // each))
        steps.append(Step(f"A square stands for {each}.", squares))
        wrongs = [(mistake, Fraction(number, each)) for mistake, number in wrongs]  # type: ignore[arg-type]
        wrongs.append((m.THINGS_FOR_SQUARES, value))
    key = t.Int(value // each)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        tuple(steps),
        slips(*wrongs, key=key),
        ("missing", word, tier, names[at], each, *values),
        figure=figure,
    )
