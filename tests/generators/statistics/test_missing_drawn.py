"""Bars and rows that are missing: keys and mistakes from what is said and printed, by z3."""

from __future__ import annotations

import random
import re
from fractions import Fraction
from functools import cache

import pytest
import z3

from itembank.figures.figure import FigureError, words
from itembank.figures.kinds.chart.bar_chart import BarChart, Series
from itembank.figures.kinds.chart.pictogram import Pictogram
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.measured.measure import as_measured
from tests.depth import cases, whole
from tests.figures.test_told_in_words import bars, pictogram
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import each_mistake
from tests.other_kinds import made_by

TOPICS = ("statistics.bar-charts", "statistics.pictograms")
MANY = cases(40, 120, 120)


@cache
def asked(name: str, tier: Tier) -> list[Item]:
    topic, space = find_topic(name), find_topic(name).spaces[tier]
    at = made_by(space)
    chosen = random.Random(name).sample(at, min(len(at), 3 * MANY))
    found = [topic.item(tier, k) for k in chosen]
    return [item for item in found if " is missing: " in text_of(item)][:MANY]


CASES = [(name, tier) for name in TOPICS for tier in (Tier.CORE, Tier.CHALLENGE)]


def day(name: str) -> str:
    return name[:3] if name.endswith("day") else name


def shown(item: Item) -> dict[str, Fraction]:
    said = words(item.figure)
    return {name: v for (name,), v in (bars if "bar" in said else pictogram)(said).items()}


def each(item: Item) -> int:
    found = re.search(r"one square stands for (\d+)", words(item.figure))
    return int(found[1]) if found else 1


@cache
def solved(item: Item) -> Fraction:
    """Return what is missing: the only number for which all that is said holds."""
    text, values = text_of(item), shown(item)
    name = day(re.search(r"(?:bar|row) for (\w+) is missing", text)[1])
    assert values[name] == 0, item.address
    missing, solver = z3.Real("missing"), z3.Solver()
    rows = {other: z3.Q(v.numerator, v.denominator) for other, v in values.items()}
    rows[name] = missing
    if found := re.search(r"there are (\d+) \w+ in all", text):
        solver.add(z3.Sum(list(rows.values())) == int(found[1]))
    else:
        many, way, other = re.search(
            r"stands for (\d+) (more|fewer) \w+ than the (?:bar|row) for (\w+)\?", text
        ).groups()
        sign = 1 if way == "more" else -1
        solver.add(missing - rows[day(other)] == sign * int(many))
    assert solver.check() == z3.sat
    value = solver.model()[missing].as_fraction()
    solver.add(missing != z3.Q(value.numerator, value.denominator))
    assert solver.check() == z3.unsat
    return Fraction(value)


@whole
@pytest.mark.parametrize(("name", "tier"), CASES)
def test_z3_finds_the_key(name: str, tier: Tier) -> None:
    items = asked(name, tier)
    assert len(items) > MANY / 2
    for item in items:
        assert solved(item) / each(item) == exact(item.key), item.address


def number(item: Item) -> int:
    return int(re.search(r"(?:there are|stands for) (\d+)", text_of(item))[1])


def other(item: Item) -> Fraction:
    return shown(item)[day(re.search(r"than the (?:bar|row) for (\w+)", text_of(item))[1])]


WAYS = {
    "sum-of-shown": lambda item: sum(shown(item).values()) / each(item),
    "total-for-missing": number,
    "more-for-fewer": lambda item: (2 * other(item) - solved(item)) / each(item),
    "same-as-other": lambda item: other(item) / each(item),
    "difference-alone": number,
    "things-for-squares": solved,
}


@whole
def test_mistakes_lead_where_they_are_said_to() -> None:
    met = set()
    for item in [item for case in CASES for item in asked(*case)]:
        for slip in each_mistake(item):
            name = slip.misconception.id.removeprefix("statistics.")
            met.add(name)
            assert WAYS[name](item) == exact(slip.wrong), (item.address, name)
    assert met == set(WAYS)


CHART = BarChart(("Mon", "Tue", "Wed"), (Series((8, 0, 12)),), 4, counts="Number of trays")
ROWS = Pictogram(("Mon", "Tue", "Wed"), (8, 0, 12), 4, "trays")
TO = "to which number should it reach, if"
SQUARES = "how many squares should it have, if"


@pytest.mark.parametrize(
    ("figure", "words_", "number_", "value"),
    [
        (CHART, f"The bar for Tuesday is missing: {TO} there are {{n}} trays in all?", 30, 10),
        (
            CHART,
            f"The bar for Tue is missing: {TO} it stands for {{n}} fewer trays than the bar for "
            "Wednesday?",
            8,
            4,
        ),
        (ROWS, f"The row for Tuesday is missing: {SQUARES} there are {{n}} trays in all?", 30, 2.5),
        (
            ROWS,
            f"The row for Tue is missing: {SQUARES} it stands for {{n}} more trays than the row "
            "for Mon?",
            2,
            2.5,
        ),
    ],
)
def test_both_roads_read_what_is_missing(figure, words_, number_, value):
    before, _, after = words_.partition("{n}")
    ask = of_figure(figure, (before, t.Int(number_), after))
    assert exact(as_find(ask).target) == exact(as_measured(ask).target) == value


@pytest.mark.parametrize(
    ("figure", "words_"),
    [
        (CHART, f"The bar for Monday is missing: {TO} there are {{n}} trays in all?"),  # it is not
        (CHART, f"The bar for Friday is missing: {TO} there are {{n}} trays in all?"),
        (CHART, f"The bar for Tuesday is missing: {TO} there are {{n}} boxes in all?"),
        (CHART, f"The row for Tuesday is missing: {SQUARES} there are {{n}} trays in all?"),
        (CHART, f"The bar for Tue is missing: {TO} it stands for {{n}} more trays than the bar for "
                "Tuesday?"),
        (CHART, f"The bar for Tuesday is missing: {TO} there are not {{n}} trays in all?"),
        (CHART, f"The bar for Tue is missing: {TO} it stands for {{n}} fewer trays than the bar "
                "for Monday?"),  # it would stand for less than none
        (ROWS, f"The row for Wed is missing: {SQUARES} there are {{n}} trays in all?"),
    ],
)  # fmt: skip
def test_what_is_not_missing_is_not_asked_for(figure, words_):
    before, _, after = words_.partition("{n}")
    with pytest.raises(FigureError):
        of_figure(figure, (before, t.Int(30), after))
