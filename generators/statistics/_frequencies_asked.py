"""What is asked of a frequency table: mode, range, number, median, total and mean."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.statistics import _average_mistakes as m
from generators.statistics._frequencies import Story, Table
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Step
from itembank.notation import tree as t


class Ask:
    """What is asked of a table."""

    MODE, RANGE, ALL, MEDIAN, SUM, MEAN = range(6)


_Made = tuple[str, int | Fraction, list[Step], list[tuple[Any, int | Fraction | None]]]


def _mode(table: Table, told: Story) -> _Made:
    best = max(table.often)
    mode = table.values[table.often.index(best)]
    step = Step(f"The largest frequency is {best}. It belongs to this value.", t.Int(mode))
    wrong: list[tuple[Any, int | Fraction | None]] = [
        (m.FREQUENCY_FOR_MODE_OF_TABLE, best),
        (m.LARGEST_VALUE, table.values[-1]),
    ]
    return "Find the mode.", mode, [step], wrong


def _range(table: Table, told: Story) -> _Made:
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


def _all(table: Table, told: Story) -> _Made:
    line = t.equals(t.add(*map(t.Int, table.often)), t.Int(table.number))
    step = Step("Add the frequencies.", line)
    return (
        f"How many {told.counts.lower()} are there altogether?",
        table.number,
        [step],
        [(m.ADDS_VALUES, sum(table.values)), (m.COUNTS_COLUMNS, len(table.values))],
    )


def _median(table: Table, told: Story) -> _Made:
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


def _products(table: Table) -> t.Node:
    return t.add(
        *(t.times(t.Int(v), t.Int(f)) for v, f in zip(table.values, table.often, strict=True))
    )


def _sum(table: Table, told: Story) -> _Made:
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


def _mean(table: Table, told: Story) -> _Made:
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


ASKED = {
    Ask.MODE: _mode,
    Ask.RANGE: _range,
    Ask.ALL: _all,
    Ask.MEDIAN: _median,
    Ask.SUM: _sum,
    Ask.MEAN: _mean,
}
