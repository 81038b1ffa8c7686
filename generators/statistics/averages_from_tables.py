"""Mode, median, mean and range from a frequency table.

England's programme of study for key stage 3 (2013) asks pupils to "construct and interpret
frequency tables" and to describe distributions through "appropriate measures of central tendency
(mean, mode, median) and spread" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.statistics import _average_mistakes as m
from generators.statistics._frequencies import STORIES, table_of, table_with_gaps
from generators.statistics._frequencies_asked import ASKED, Ask
from generators.statistics._frequencies_in_brief import BRIEF
from itembank.figures.kinds.table.frequency_table import FrequencyTable
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _support(ask: int, story: int, seed: int) -> bool:
    table = table_with_gaps(story, seed) if ask == Ask.RANGE else table_of(story, 4, seed)
    best = max(table.often)
    if table.often.count(best) > 1:
        return False
    mode = table.values[table.often.index(best)]
    if ask == Ask.MODE:
        return mode not in (best, table.values[-1]) and best != table.values[-1]
    if ask == Ask.RANGE:
        spread, high = best - min(table.often), table.values[-1]
        return spread > 0 and len({spread, high, high - table.values[0]}) == 3
    return table.number not in (4, sum(table.values)) and sum(table.values) != 4


def _core(ask: int, story: int, seed: int) -> bool:
    table = table_of(story, 5, seed)
    if ask == Ask.MEDIAN:
        # An odd number of values, so that one of them stands in the middle.
        median = table.twice_median() // 2
        wrong = {table.values[2], sorted(table.often)[2]}
        return table.number % 2 == 1 and median not in wrong and len(wrong) == 2
    if STORIES[story].thing == "age":
        return False  # ages are not added up
    wrong = {sum(table.values), table.number}
    return table.total not in wrong and len(wrong) == 2


def _challenge(ask: int, story: int, seed: int) -> bool:
    table = table_of(story, 5, seed)
    if ask == Ask.MEDIAN:  # half way between two values
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
        *(m.MEAN_AGAIN, m.STOPS_AT_TOTAL, m.TOTAL_ONLY, m.HALVES_TOTAL),
        *(m.FREQUENCY_FOR_MODE_OF_TABLE, m.LARGEST_VALUE, m.RANGE_OF_FREQUENCIES, m.ADDS_VALUES),
        *(m.COUNTS_COLUMNS, m.MIDDLE_OF_VALUES, m.MEDIAN_OF_FREQUENCIES, m.FREQUENCIES_ALONE),
        *(m.DIVIDES_BY_COLUMNS, m.MEAN_OF_VALUES, m.MEAN_OF_FREQUENCIES, m.LOWER_MIDDLE),
        *(m.UPPER_MIDDLE,),
    )
    prerequisites = ("statistics.mean", "statistics.median", "statistics.mode-and-range")
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            ask=(Ask.MODE, Ask.RANGE, Ask.ALL),
            story=range(len(STORIES)),
            seed=range(1, 45),
        ),
        Tier.CORE: Space(
            _core, ask=(Ask.MEDIAN, Ask.SUM), story=range(len(STORIES)), seed=range(1, 75)
        ),
        Tier.CHALLENGE: Space(
            _challenge, ask=(Ask.MEDIAN, Ask.MEAN), story=range(len(STORIES)), seed=range(1, 150)
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = with_brief(spaces, BRIEF)
    spaces = kinds.with_people_asked(spaces, "statistics.averages-from-tables")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, story, seed = values
        told = STORIES[story]
        table = table_of(story, 4 if tier is Tier.SUPPORT else 5, seed)
        if ask == Ask.RANGE:
            table = table_with_gaps(story, seed)
        figure = FrequencyTable(
            told.heading, tuple(map(t.Int, table.values)), table.often, told.counts
        )
        question, key, steps, wrong = ASKED[ask](table, told)
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
