"""Mode, median, mean and range from a frequency table.

England's programme of study for key stage 3 (2013) asks pupils to "construct and interpret
frequency tables" and to describe distributions through "appropriate measures of central tendency
(mean, mode, median) and spread" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

from generators._scatter import unlike
from generators.statistics import _average_mistakes as m
from itembank.figures.kinds.frequency_table import FrequencyTable
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


class _Story(NamedTuple):
    heading: str
    counts: str
    lead: str
    thing: str
    first: int


_STORIES = (
    _Story("Goals", "Matches", "The table shows a club’s goals in its matches.", "goals", 0),
    _Story("Minutes", "Trips", "The table shows how late a bus was on its trips.", "minutes", 0),
    _Story("Flowers", "Plants", "The table shows the flowers on some plants.", "flowers", 1),
    _Story("Books", "Readers", "The table shows the books that readers borrow.", "books", 1),
    _Story("Age", "Members", "The table shows the ages of a club’s members.", "age", 11),
    _Story("Repairs", "Bikes", "The table shows the repairs that bikes needed.", "repairs", 0),
    _Story("Eggs", "Nests", "The table shows the eggs in the nests of hens.", "eggs", 1),
)  # fmt: skip


class _Table(NamedTuple):
    """The values and their frequencies."""

    values: tuple[int, ...]
    often: tuple[int, ...]

    @property
    def number(self) -> int:
        return sum(self.often)

    @property
    def total(self) -> int:
        return sum(v * f for v, f in zip(self.values, self.often, strict=True))

    def in_place(self, place: int) -> int:
        """Return the value at a place of the ordered list, counted from 1."""
        for value, count in zip(self.values, self.often, strict=True):
            place -= count
            if place <= 0:
                return value
        raise ValueError("the place is beyond the list")

    def twice_median(self) -> int:
        return self.in_place((self.number + 1) // 2) + self.in_place(self.number // 2 + 1)


def _table(story: int, size: int, seed: int) -> _Table:
    first = _STORIES[story].first
    return _Table(
        tuple(range(first, first + size)), unlike(story + len(_STORIES) * seed, size, 1, 9)
    )


class _Ask:
    """What is asked of a table."""

    MODE, RANGE, ALL, MEDIAN, SUM, MEAN = range(6)


def _gaps(story: int, seed: int) -> _Table:
    """Return a table whose values go up in steps of one to three: its range is to be found."""
    plain = _table(story, 4, seed)
    values = [plain.values[0]]
    for step in unlike(seed, 3, 1, 3):
        values.append(values[-1] + step)
    return _Table(tuple(values), plain.often)


def _support(ask: int, story: int, seed: int) -> bool:
    table = _gaps(story, seed) if ask == _Ask.RANGE else _table(story, 4, seed)
    best = max(table.often)
    if table.often.count(best) > 1:
        return False
    mode = table.values[table.often.index(best)]
    if ask == _Ask.MODE:
        return mode not in (best, table.values[-1]) and best != table.values[-1]
    if ask == _Ask.RANGE:
        spread, high = best - min(table.often), table.values[-1]
        return spread > 0 and len({spread, high, high - table.values[0]}) == 3
    return table.number not in (4, sum(table.values)) and sum(table.values) != 4


def _core(ask: int, story: int, seed: int) -> bool:
    table = _table(story, 5, seed)
    if ask == _Ask.MEDIAN:
        # An odd number of values, so that one of them stands in the middle.
        median = table.twice_median() // 2
        wrong = {table.values[2], sorted(table.often)[2]}
        return table.number % 2 == 1 and median not in wrong and len(wrong) == 2
    if _STORIES[story].thing == "age":
        return False  # ages are not added up
    wrong = {sum(table.values), table.number}
    return table.total not in wrong and len(wrong) == 2


def _challenge(ask: int, story: int, seed: int) -> bool:
    table = _table(story, 5, seed)
    if ask == _Ask.MEDIAN:  # half way between two values
        twice = table.twice_median()
        return table.number % 2 == 0 and twice % 2 == 1
    mean = Fraction(table.total, table.number)
    if (mean * 100).denominator != 1:
        return False
    wrong = {
        Fraction(table.total, 5),
        Fraction(table.number, 5),
        Fraction(sum(table.values), 5),
    }
    return mean not in wrong and len(wrong) == 3


@register
class AveragesFromTables(Topic):
    """The mode and the range of a table; the median and the total; the mean."""

    id = "statistics.averages-from-tables"
    title = "Averages from frequency tables"
    statements = (
        "statistics.averages",
        "statistics.charts",
    )
    misconceptions = (
        *(m.FREQUENCY_FOR_MODE_OF_TABLE, m.LARGEST_VALUE, m.RANGE_OF_FREQUENCIES, m.ADDS_VALUES),
        *(m.COUNTS_COLUMNS, m.MIDDLE_OF_VALUES, m.MEDIAN_OF_FREQUENCIES, m.FREQUENCIES_ALONE),
        *(m.DIVIDES_BY_COLUMNS, m.MEAN_OF_VALUES, m.MEAN_OF_FREQUENCIES, m.LOWER_MIDDLE),
        *(m.UPPER_MIDDLE,),
    )
    prerequisites = ("statistics.mean", "statistics.median", "statistics.mode-and-range")
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            ask=(_Ask.MODE, _Ask.RANGE, _Ask.ALL),
            story=range(len(_STORIES)),
            seed=range(1, 45),
        ),
        Tier.CORE: Space(
            _core, ask=(_Ask.MEDIAN, _Ask.SUM), story=range(len(_STORIES)), seed=range(1, 75)
        ),
        Tier.CHALLENGE: Space(
            _challenge, ask=(_Ask.MEDIAN, _Ask.MEAN), story=range(len(_STORIES)), seed=range(1, 150)
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, story, seed = values
        told = _STORIES[story]
        table = _table(story, 4 if tier is Tier.SUPPORT else 5, seed)
        if ask == _Ask.RANGE:
            table = _gaps(story, seed)
        figure = FrequencyTable(
            told.heading, tuple(map(t.Int, table.values)), table.often, told.counts
        )
        question, key, steps, wrong = _BUILD[ask](table, told)
        text = prompt(f"{told.lead} {question}")
        node = decimal_node(key)
        return Draft(
            text,
            of_figure(figure, text),
            node,
            "integer" if Fraction(key).denominator == 1 else "decimal",
            tuple(steps),
            slips(*wrong, write=decimal_node, key=node),
            (ask, table),
            figure=figure,
        )


_Made = tuple[str, int | Fraction, list[Step], list[tuple[Any, int | Fraction | None]]]


def _mode(table: _Table, told: _Story) -> _Made:
    best = max(table.often)
    mode = table.values[table.often.index(best)]
    step = Step(f"The largest frequency is {best}. It belongs to this value.", t.Int(mode))
    wrong: list[tuple[Any, int | Fraction | None]] = [
        (m.FREQUENCY_FOR_MODE_OF_TABLE, best),
        (m.LARGEST_VALUE, table.values[-1]),
    ]
    return "Find the mode.", mode, [step], wrong


def _range(table: _Table, told: _Story) -> _Made:
    low, high = table.values[0], table.values[-1]
    line = t.equals(t.sub(t.Int(high), t.Int(low)), t.Int(high - low))
    step = Step("Subtract the smallest value from the largest.", line)
    return (
        "Find the range.",
        high - low,
        [step],
        [
            (m.RANGE_OF_FREQUENCIES, max(table.often) - min(table.often)),
            (m.LARGEST_VALUE, high),
        ],
    )


def _all(table: _Table, told: _Story) -> _Made:
    line = t.equals(t.add(*map(t.Int, table.often)), t.Int(table.number))
    step = Step("Add the frequencies.", line)
    return (
        f"How many {told.counts.lower()} are there altogether?",
        table.number,
        [step],
        [(m.ADDS_VALUES, sum(table.values)), (m.COUNTS_COLUMNS, len(table.values))],
    )


def _median(table: _Table, told: _Story) -> _Made:
    count, twice = table.number, table.twice_median()
    adds = Step("Add the frequencies.", t.equals(t.add(*map(t.Int, table.often)), t.Int(count)))
    wrong: list[tuple[Any, int | Fraction | None]] = [
        (m.MIDDLE_OF_VALUES, Fraction(table.values[0] + table.values[-1], 2)),
        (m.MEDIAN_OF_FREQUENCIES, _middle(table.often)),
    ]
    if count % 2:
        place = (count + 1) // 2
        steps = [
            adds,
            Step(
                f"The middle one of {count} is number {place}. Count along to it.",
                t.Int(twice // 2),
            ),
        ]
        return "Find the median.", twice // 2, steps, wrong
    low, high = table.in_place(count // 2), table.in_place(count // 2 + 1)
    steps = [
        adds,
        Step(
            f"Numbers {count // 2} and {count // 2 + 1} are in the middle: {low} and {high}.",
            t.equals(
                t.divide(t.Bracket(t.add(t.Int(low), t.Int(high))), t.Int(2)),
                decimal_node(Fraction(twice, 2)),
            ),
        ),
    ]
    wrong = [(m.LOWER_MIDDLE, low), (m.UPPER_MIDDLE, high), *wrong]
    return "Find the median.", Fraction(twice, 2), steps, wrong


def _middle(numbers: tuple[int, ...]) -> Fraction:
    inner = sorted(numbers)
    return Fraction(inner[(len(inner) - 1) // 2] + inner[len(inner) // 2], 2)


def _products(table: _Table) -> t.Node:
    return t.add(
        *(t.times(t.Int(v), t.Int(f)) for v, f in zip(table.values, table.often, strict=True))
    )


def _sum(table: _Table, told: _Story) -> _Made:
    step = Step(
        "Multiply each value by its frequency, and add.",
        t.equals(_products(table), t.Int(table.total)),
    )
    return (
        f"Find the total number of {told.thing}.",
        table.total,
        [step],
        [(m.ADDS_VALUES, sum(table.values)), (m.FREQUENCIES_ALONE, table.number)],
    )


def _mean(table: _Table, told: _Story) -> _Made:
    size, mean = len(table.values), Fraction(table.total, table.number)
    of = "age" if told.thing == "age" else f"number of {told.thing}"
    steps = [
        Step(
            "Multiply each value by its frequency, and add.",
            t.equals(_products(table), t.Int(table.total)),
        ),
        Step(
            "Add the frequencies.",
            t.equals(t.add(*map(t.Int, table.often)), t.Int(table.number)),
        ),
        Step(
            "Divide.",
            t.equals(t.divide(t.Int(table.total), t.Int(table.number)), decimal_node(mean)),
        ),
    ]
    wrong: list[tuple[Any, int | Fraction | None]] = [
        (m.DIVIDES_BY_COLUMNS, _ends(Fraction(table.total, size))),
        (m.MEAN_OF_VALUES, _ends(Fraction(sum(table.values), size))),
        (m.MEAN_OF_FREQUENCIES, _ends(Fraction(table.number, size))),
    ]
    return f"Find the mean {of}.", mean, steps, wrong


def _ends(number: Fraction) -> Fraction | None:
    """Return a number whose decimal has at most two places, else None."""
    return number if (number * 100).denominator == 1 else None


_BUILD = {
    _Ask.MODE: _mode,
    _Ask.RANGE: _range,
    _Ask.ALL: _all,
    _Ask.MEDIAN: _median,
    _Ask.SUM: _sum,
    _Ask.MEAN: _mean,
}
