"""A point that is missing on a line graph: at which number it should stand, by what is told."""

from __future__ import annotations

from collections.abc import Mapping

from generators.statistics import _chart_mistakes as m
from generators.statistics._charts import Wrongs
from generators.statistics._line_graphs_in_brief import CHANGE_ALONE
from generators.statistics._points_told import (
    BETWEEN,
    COUNTS_IN_WORDS,
    STORIES,
    TIMES_IN_WORDS,
    ShownStory,
    Told,
    beside,
    can_be_told,
    point_values,
    three_places,
    two_places,
)
from itembank.figures.kinds.chart.line_graph import LineGraph
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

CHANGE_WRONG_WAY = Misconception(
    "statistics.change-wrong-way",
    "adds where it falls, or takes away where it rises",
    "Is the missing point higher or lower than the one it is told by?",
)
NO_CHANGE = Misconception(
    "statistics.no-change-made",
    "draws the point as high as the one it is told by",
    "Are the two alike? What does the question say about them?",
)
ADDS_TIMES = Misconception(
    "statistics.adds-for-times",
    "adds 2 for twice, or 3 for three times",
    "What is twice 10? And twice 50?",
)
TIMES_WRONG_WAY = Misconception(
    "statistics.times-wrong-way",
    "halves where it should double, or doubles where it should halve",
    "Which of the two is the larger? So is the missing point above or below it?",
)
MEAN_FOR_POINT = Misconception(
    "statistics.mean-for-point",
    "gives the mean of all for the one that is missing",
    "If all of them were as high as the mean, what would they come to? What do the others come to?",
)
MEAN_OF_DRAWN = Misconception(
    "statistics.mean-of-drawn",
    "gives the mean of the points that are drawn",
    "Does the mean you were told belong to the drawn points alone, or to all of them?",
)
CHANGE_ONCE = Misconception(
    "statistics.change-once",
    "takes the other change once where it is to be taken twice",
    "How large was the other change? What is twice that?",
)
MISSING_MISTAKES = (
    *(CHANGE_WRONG_WAY, NO_CHANGE, ADDS_TIMES, TIMES_WRONG_WAY, MEAN_FOR_POINT, MEAN_OF_DRAWN),
    *(CHANGE_ONCE, m.SUM_OF_SHOWN, m.TOTAL_FOR_MISSING),
)


def missing_point(topic: Topic, tier: Tier, told: int, story: int, seed: int) -> Draft:
    """Return the question at which number the point that is missing should stand."""
    shown = STORIES[story]
    values, at = point_values(told, story, seed)
    drawn = tuple(0 if place == at else value for place, value in enumerate(values))
    figure = LineGraph(
        tuple(zip(shown.places, drawn, strict=True)),
        shown.scale,
        BETWEEN,
        shown.counts,
        shown.along,
        missing=shown.places[at],
    )
    make = (_by_change, _by_times, _by_times, _by_all, _by_all, _by_like_change)[told]
    said, numbers, steps, wrongs = make(shown, values, told, story, seed)
    text = prompt(
        f"The line graph shows {shown.shows}. The point for {shown.name(at)} is missing: "
        f"at which number should it stand, if {said}?",
        **numbers,
    )
    key = t.Int(values[at])
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        tuple(steps),
        slips(*((mistake, n) for mistake, n in wrongs if not isinstance(n, int) or n > 0), key=key),
        ("point missing", told, story, at, *values),
        figure=figure,
        # *Twice* and *the five days* print no figure.
        constants=(2, 3, len(values)),
    )


_Made = tuple[str, dict[str, t.Node], list[Step], Wrongs]


def _amount(shown: ShownStory, letter: str) -> str:
    return f"{{{letter}}} {shown.unit}".strip()


def _read(shown: ShownStory, place: int, value: int) -> Step:
    """Return how a height is read off the axis."""
    low, over = divmod(value, shown.scale)
    name = shown.name(place)
    if not over:
        return Step(f"Read the graph for {name}: {value}.")
    low *= shown.scale
    half = t.add(t.Int(low), t.Int(shown.scale // 2))
    return Step(
        f"{name}: halfway between {low} and {low + shown.scale}.", t.equals(half, t.Int(value))
    )


def _by_change(
    shown: ShownStory, values: tuple[int, ...], told: int, story: int, seed: int
) -> _Made:
    at, other = beside(story, seed)
    first, second = sorted((at, other))
    rises = values[second] > values[first]
    gap, known, key = abs(values[at] - values[other]), values[other], values[at]
    way = "rose" if rises else "fell"
    said = (
        f"the {shown.what} {way} by {_amount(shown, 'n')} from {shown.name(first)} "
        f"to {shown.name(second)}"
    )
    join = t.add if key > known else t.sub
    later = "Go on" if at == second else "Go back"
    low = known // shown.scale * shown.scale
    steps = [
        _read(shown, other, known),
        Step(
            f"{later} to {shown.name(at)}: it is {'more' if key > known else 'less'} there.",
            t.equals(join(t.Int(known), t.Int(gap)), t.Int(key)),
        ),
    ]
    wrongs: Wrongs = [
        (CHANGE_WRONG_WAY, 2 * known - key),
        (NO_CHANGE, known),
        (CHANGE_ALONE, gap),
        (m.LINE_BELOW_POINT, low + key - known),
    ]
    return said, {"n": t.Int(gap)}, steps, wrongs


def _by_times(
    shown: ShownStory, values: tuple[int, ...], told: int, story: int, seed: int
) -> _Made:
    at, other = two_places(story, seed)
    known, key = values[other], values[at]
    count = 2 + seed // 7 % 2 if told == Told.TIMES else 2
    times = TIMES_IN_WORDS[count] if told == Told.TIMES else "half"
    said = f"the {shown.what} {shown.at(at)} was {times} that {shown.at(other)}"
    if told == Told.TIMES:
        line, back = t.times(t.Int(count), t.Int(known)), (known, count)
        more: Wrongs = [(ADDS_TIMES, known + count)]
        say = f"Multiply by {count}."
    else:
        line, back = t.divide(t.Int(known), t.Int(2)), (known * 2, 1)
        more = []
        say = "Halve it."
    steps = [_read(shown, other, known), Step(say, t.equals(line, t.Int(key)))]
    turned = back[0] // back[1] if back[0] % back[1] == 0 and count == 2 else None
    wrongs: Wrongs = [(TIMES_WRONG_WAY, turned), (NO_CHANGE, known), *more]
    low = known // shown.scale * shown.scale
    misread = low * count if told == Told.TIMES else low // 2
    wrongs.append((m.LINE_BELOW_POINT, misread))
    return said, {}, steps, wrongs


def _by_all(shown: ShownStory, values: tuple[int, ...], told: int, story: int, seed: int) -> _Made:
    at, _ = two_places(story, seed)
    count, total, key = len(values), sum(values), values[at]
    rest = [value for place, value in enumerate(values) if place != at]
    which = f"{shown.where} the {COUNTS_IN_WORDS[count]} {shown.along.casefold()}s"
    known = total // count if told == Told.MEAN else total
    all_ = "mean" if told == Told.MEAN else "total"
    said = f"the {all_} {shown.what} {which} was {_amount(shown, 'n')}"
    added = t.equals(t.add(*map(t.Int, rest)), t.Int(sum(rest)))
    steps = [
        Step("Add what is drawn already.", added),
        Step(
            "Subtract that from the total.",
            t.equals(t.sub(t.Int(total), t.Int(sum(rest))), t.Int(key)),
        ),
    ]
    wrongs: Wrongs = [(m.SUM_OF_SHOWN, sum(rest)), (m.TOTAL_FOR_MISSING, total)]
    if told == Told.MEAN:
        whole = t.equals(t.times(t.Int(count), t.Int(known)), t.Int(total))
        steps.insert(
            0, Step(f"All {COUNTS_IN_WORDS[count]} together come to {count} means.", whole)
        )
        drawn_mean = sum(rest) // (count - 1) if sum(rest) % (count - 1) == 0 else None
        wrongs += [(MEAN_FOR_POINT, known), (MEAN_OF_DRAWN, drawn_mean)]
    return said, {"n": t.Int(known)}, steps, wrongs


def _by_like_change(
    shown: ShownStory, values: tuple[int, ...], told: int, story: int, seed: int
) -> _Made:
    first, second, at = three_places(story, seed)
    a, b, key = (values[place] for place in (first, second, at))
    count, change = 1 + seed // 3 % 2, abs(b - a)
    rises = b > a
    way = "rose" if rises else "fell"
    much = "as much" if count == 1 else "twice as much"
    said = (
        f"the {shown.what} {way} {much} from {shown.name(second)} to {shown.name(at)} as from "
        f"{shown.name(first)} to {shown.name(second)}"
    )
    high, low = max(a, b), min(a, b)
    steps = [
        _read(shown, first, a),
        _read(shown, second, b),
        Step(
            f"From {shown.name(first)} to {shown.name(second)} it {way} by that.",
            t.equals(t.sub(t.Int(high), t.Int(low)), t.Int(change)),
        ),
    ]
    if count == 2:
        twice = t.equals(t.times(t.Int(2), t.Int(change)), t.Int(2 * change))
        steps.append(Step("Take that twice.", twice))
    join = t.add if rises else t.sub
    steps.append(
        Step(
            f"Go on from {shown.name(second)}.",
            t.equals(join(t.Int(b), t.Int(count * change)), t.Int(key)),
        )
    )
    wrongs: Wrongs = [
        (CHANGE_WRONG_WAY, 2 * b - key),
        (CHANGE_ALONE, count * change),
        (NO_CHANGE, b),
    ]
    if count == 2:
        wrongs.append((CHANGE_ONCE, b + (b - a)))
    return said, {}, steps, wrongs


_WAYS = (
    (Tier.SUPPORT, Told.CHANGE, 141),
    (Tier.CORE, Told.TIMES, 16),
    (Tier.CORE, Told.HALF, 16),
    (Tier.CORE, Told.TOTAL, 13),
    (Tier.CHALLENGE, Told.MEAN, 48),
    (Tier.CHALLENGE, Told.AS_MUCH, 201),
)
"""What tells a missing point in each tier, and after how many rows of data it stops."""


def with_missing_points(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of line graphs with points to find, told in harder ways tier by tier."""
    grown = dict(spaces)
    for tier, told, most in _WAYS:
        grown[tier] = grown[tier].also(
            missing_point,
            can_be_told,
            told=(told,),
            story=range(len(STORIES)),
            seed=range(1, most),
        )
    return grown
