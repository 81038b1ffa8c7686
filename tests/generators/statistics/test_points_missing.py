"""Points that are missing on line graphs: keys and mistakes from what is said and shown, by z3."""

from __future__ import annotations

import random
import re
import statistics
from fractions import Fraction
from functools import cache
from itertools import islice

import pytest
import z3

from itembank.figures.figure import FigureError, words
from itembank.figures.kinds.chart.line_graph import LineGraph
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.measured.measure import as_measured
from tests.depth import cases, whole
from tests.figures.kinds.test_line_graph import rebuilt
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import each_mistake
from tests.other_kinds import made_by

TOPIC = "statistics.line-graphs"
MANY = cases(40, 120, 120)
TIMES = {"half": Fraction(1, 2), "twice": 2, "three times": 3, "as much": 1, "twice as much": 2}
NUMBERS = {"four": 4, "five": 5}


@cache
def asked(tier: Tier) -> list[Item]:
    topic = find_topic(TOPIC)
    at = made_by(topic.spaces[tier])
    found = (topic.item(tier, k) for k in random.Random(tier.value).sample(at, len(at)))
    return list(islice((item for item in found if " is missing: " in text_of(item)), MANY))


def name(said: str) -> str:
    """Return the name on the graph that a name in a sentence is of."""
    return said if said[0].isdigit() or said in ("May", "June", "July") else said[:3]


class Told:
    """What a question says, and what its graph shows, read anew."""

    def __init__(self, item: Item) -> None:
        self.text = text_of(item)
        self.shown = rebuilt(words(item.figure))
        self.missing = name(re.search(r"The point for (\S+) is missing", self.text)[1])
        (gone,) = re.findall(r"No point is drawn at (.+?)\.", words(item.figure))
        assert gone == self.missing
        assert gone not in self.shown

    def number(self) -> int:
        return int(re.search(r"(?: by| was) (\d+)", self.text)[1])

    def way(self) -> int:
        return 1 if " rose " in self.text else -1

    def places(self) -> list[str]:
        """Return the places that are named after *if*, in order."""
        said = self.text.partition(", if ")[2]
        found = re.findall(r"\d\d:\d\d|\b(?:[A-Z][a-z]+)\b", said)
        return [name(each) for each in found]

    def times(self) -> Fraction:
        found = re.search(r"twice as much|as much|half|twice|three times", self.text)
        return Fraction(TIMES[found[0]])

    def known(self) -> Fraction:
        """Return the height of the point that it is told by: for a change, of its start."""
        other = self.places()[0 if "as much" in self.text else -1]
        if other == self.missing:
            other = self.places()[0]
        return self.shown[other]


@cache
def solved(told: Told) -> Fraction:
    """Return where the point stands: the only height for which all that is said holds."""
    point, solver = z3.Real("point"), z3.Solver()
    at = {place: z3.Q(v.numerator, v.denominator) for place, v in told.shown.items()}
    at[told.missing] = point
    places = told.places()
    if found := re.search(r"(mean|total) .* the (four|five) \w+ was", told.text):
        count = NUMBERS[found[2]]
        assert count == len(at)
        whole = told.number() * (count if found[1] == "mean" else 1)
        solver.add(z3.Sum(list(at.values())) == whole)
    elif "as much" in told.text:
        first, last, before, after = (at[place] for place in places)
        times = z3.Q(told.times().numerator, told.times().denominator)
        solver.add(last - first == times * (after - before))
        solver.add(told.way() * (after - before) > 0)
    elif " from " in told.text:
        first, last = (at[place] for place in places)
        solver.add(last - first == told.way() * told.number())
    else:
        first, last = (at[place] for place in places)
        solver.add(first == z3.Q(told.times().numerator, told.times().denominator) * last)
    assert solver.check() == z3.sat
    value = solver.model()[point].as_fraction()
    solver.add(point != z3.Q(value.numerator, value.denominator))
    assert solver.check() == z3.unsat
    return Fraction(value)


@whole
@pytest.mark.parametrize("tier", Tier)
def test_z3_finds_the_key(tier: Tier) -> None:
    items = asked(tier)
    assert len(items) > MANY / 3
    for item in items:
        assert solved(Told(item)) == exact(item.key), item.address


def mean_of_drawn(told: Told) -> Fraction:
    return Fraction(statistics.mean(told.shown.values()))


def line_below(told: Told, item: Item) -> Fraction:
    """Return what comes of reading the numbered line below the point that it is told by."""
    low = told.known() // item.figure.scale * item.figure.scale
    if " by " in told.text:
        return low + solved(told) - told.known()
    return low * told.times()


WAYS = {
    "change-wrong-way": lambda told, item: 2 * told.known() - solved(told),
    "no-change-made": lambda told, item: told.known(),
    "change-alone": lambda told, item: abs(solved(told) - told.known()),
    "line-below-point": line_below,
    "adds-for-times": lambda told, item: told.known() + told.times(),
    "times-wrong-way": lambda told, item: told.known() / told.times(),
    "mean-for-point": lambda told, item: told.number(),
    "mean-of-drawn": lambda told, item: mean_of_drawn(told),
    "change-once": lambda told, item: told.known() + (solved(told) - told.known()) / 2,
    "sum-of-shown": lambda told, item: sum(told.shown.values()),
    "total-for-missing": lambda told, item: sum(told.shown.values()) + solved(told),
}


@whole
def test_mistakes_lead_where_they_are_said_to() -> None:
    met = set()
    for item in [item for tier in Tier for item in asked(tier)]:
        told = Told(item)
        for slip in each_mistake(item):
            mistake = slip.misconception.id.removeprefix("statistics.")
            met.add(mistake)
            assert WAYS[mistake](told, item) == exact(slip.wrong), (item.address, mistake)
    assert met == set(WAYS)


DAYS = (("Mon", 6), ("Tue", 0), ("Wed", 10), ("Thu", 12))
GRAPH = LineGraph(DAYS, 4, 2, "Depth (cm)", "Day", missing="Tue")
COUNT = LineGraph(DAYS, 4, 2, "Visitors", "Day", missing="Tue")
HEAD = "The point for Tuesday is missing: at which number should it stand, if "


@pytest.mark.parametrize(
    ("figure", "told", "number", "value"),
    [
        (GRAPH, "the depth rose by {n} cm from Monday to Tuesday", 4, 10),
        (GRAPH, "the depth fell by {n} cm from Tuesday to Wednesday", 2, 12),
        (GRAPH, "the depth on Tuesday was twice that on Monday", None, 12),
        (GRAPH, "the depth on Tuesday was half that on Thursday", None, 6),
        (GRAPH, "the depth on Thursday was twice that on Tuesday", None, 6),
        (GRAPH, "the depth on Thursday was half that on Tuesday", None, None),  # at 24
        (GRAPH, "the mean depth on the four days was {n} cm", 8, 4),
        (COUNT, "the total number of visitors on the four days was {n}", 32, 4),
        (GRAPH, "the total depth on the four days was {n} cm", 32, None),
        (COUNT, "the total number of trays on the four days was {n}", 32, None),
        (GRAPH, "the mean depth on the five days was {n} cm", 8, None),
        (GRAPH, "the mean depth at the four times was {n} cm", 8, None),
        (GRAPH, "the depth rose by {n} mm from Monday to Tuesday", 4, None),
        (GRAPH, "the depth rose by {n} cm from Tuesday to Monday", 4, None),
        (GRAPH, "the depth rose by {n} cm from Monday to Wednesday", 4, None),
        (GRAPH, "the depth on Thursday was twice that on Monday", None, None),
        (GRAPH, "the depth on Tuesday was twice that on Tuesday", None, None),
        (GRAPH, "the depth did not rise by {n} cm from Monday to Tuesday", 4, None),
        (GRAPH, "the price rose by {n} cm from Monday to Tuesday", 4, None),
        (GRAPH, "the depth rose by {n} cm from Monday to Tuesday", 5, None),  # on no line
        (GRAPH, "the depth rose by {n} cm from Monday to Tuesday", 8, None),  # above the axis
        (GRAPH, "the depth fell by {n} cm from Monday to Tuesday", 8, None),  # below it
        (GRAPH, "the depth rose as much from Monday to Tuesday as from Wednesday to Thursday",
         None, 8),
        (GRAPH, "the depth rose twice as much from Monday to Tuesday as from Wednesday to Thursday",
         None, 10),
        (GRAPH, "the depth fell as much from Monday to Tuesday as from Wednesday to Thursday",
         None, None),
    ],
)  # fmt: skip
def test_both_roads_read_where_it_stands_or_none_does(figure, told, number, value) -> None:
    before, mark, after = f"{HEAD}{told}?".partition("{n}")
    prompt = (before, t.Int(number), after) if mark else (before,)
    if value is None:
        with pytest.raises(FigureError):
            of_figure(figure, prompt)
        return
    ask = of_figure(figure, prompt)
    assert exact(as_find(ask).target) == exact(as_measured(ask).target) == value


@pytest.mark.parametrize(
    "question",
    [
        HEAD.replace("Tuesday", "Monday") + "the depth on Monday was half that on Thursday?",
        "What was the depth on Tuesday?",
        "On which day was the depth greatest?",  # the missing point could be the highest
        "On which day was the depth {10} cm?",
        "By how much did the depth rise from Monday to Tuesday?",
    ],
)
def test_nothing_else_is_told_of_a_point_that_is_missing(question: str) -> None:
    with pytest.raises(FigureError):
        of_figure(GRAPH, (question,))


@pytest.mark.parametrize("missing", ["Fri", "Mon"])
def test_the_missing_point_is_a_place_without_a_number(missing: str) -> None:
    with pytest.raises(FigureError, match="with 0 for its number"):
        words(LineGraph(DAYS, 4, 2, "Depth (cm)", "Day", missing=missing))
