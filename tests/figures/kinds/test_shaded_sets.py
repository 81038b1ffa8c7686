"""Shaded sets: De Morgan's laws, sets of Python by the words alone, planted lies, wrong answers."""

from __future__ import annotations

import dataclasses
from fractions import Fraction
from itertools import combinations

import pytest

from itembank.errors import CheckFailed
from itembank.figures.drawing import Point
from itembank.figures.figure import FigureError, Reading, drawn, fault, read, words
from itembank.figures.kinds.sets.shaded_sets import REGIONS, ShadedSets
from itembank.items.asks.draw_on import to_draw
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation.value import exact
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.measured.measure import measured, measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds
from tests.figures.lies import changed, found_out, moved, places, swapped

EVERY = [dark for count in range(5) for dark in combinations(REGIONS, count)]
A, B = {"A only", "both sets"}, {"B only", "both sets"}
SETS = {
    # What each set holds, by Python's own sets: the universe has one element in each region.
    "A": A,
    "B": B,
    "A ∩ B": A & B,
    "A ∪ B": A | B,
    "A ∩ B′": A - B,
    "A′ ∩ B": B - A,
    "(A ∪ B)′": {"neither set"},
    "A′": {"B only", "neither set"},
}


def told(figure: ShadedSets) -> set[str]:
    """Return which regions are shaded, from the words alone."""
    _, _, dark = words(figure).partition("Shaded is what is in ")
    return {*dark.rstrip(".").split(" and what is in ")} - {""}


@holds(TOLD, "shaded sets")
def test_pythons_sets_count_the_same_regions_in_every_way_to_shade():
    for dark in EVERY:
        figure = ShadedSets("A", "B", dark)
        for name, held in SETS.items():
            for way in (read, measured):
                assert exact(way(figure, Reading("shaded", (name,)))) == len(held & told(figure))
                left = {"A only", "both sets", "B only", "neither set"} - held - told(figure)
                assert exact(way(figure, Reading("left", (name,)))) == len(left)


@pytest.mark.parametrize(
    ("one", "other"),
    # De Morgan's laws (1847, from memory), and that a set and its complement part everything.
    [("(A ∪ B)′", "A′ ∩ B′"), ("(A ∩ B)′", "A′ ∪ B′"), ("(A ∩ B′)′", "A′ ∪ B")],
)
def test_de_morgans_laws(one, other):
    for figure in (ShadedSets("A", "B", dark) for dark in EVERY):
        for way in (read, measured):
            for name in ("shaded", "left"):
                assert way(figure, Reading(name, (one,))) == way(figure, Reading(name, (other,)))


LEFT = ShadedSets("A", "B", ("first", "neither"))


@holds(LIED, "shaded sets")
def test_drawings_that_lie_are_found_out():
    assert not found_out(LEFT, drawn(LEFT))
    (at, *_) = places(drawn(LEFT), "shaded")
    mark = drawn(LEFT).marks[at]
    half = dataclasses.replace(mark, points=(*mark.points[:20], Point(0, 0)))
    for lie in (
        swapped(LEFT, "name"),
        moved(LEFT, "shaded", Fraction(2), Fraction(0)),
        moved(LEFT, "set", Fraction(1), Fraction(0)),
        changed(drawn(LEFT), at, None),
        changed(drawn(LEFT), at, dataclasses.replace(mark, fill="none")),
        changed(drawn(LEFT), at, half),
    ):
        assert found_out(LEFT, lie)


def test_every_measurement_of_random_figures_knows_its_letters():
    for figure in examples("shaded sets", 30):
        for name in (figure.first, figure.second):
            reading = Reading("shaded", (name,))
            assert read(figure, reading) == measuring(figure).measure(drawn(figure), reading)


def items() -> list[Item]:
    """Return the questions that are answered by shading."""
    topic = find_topic("probability.sets")
    firsts = ((tier, part) for tier in Tier for part in topic.spaces[tier].part_indices if part)
    shading = [(tier, part) for tier, part in firsts if topic.item(tier, part[0]).key_figure]
    return [topic.item(tier, at) for tier, part in shading for at in part]


def value(text: str, first: str, second: str) -> set[str]:
    """Return the regions of a set in symbols, by Python's own sets."""
    every = {*REGIONS}
    names = {first: {"first", "both"}, second: {"second", "both"}}

    def single(part: str) -> set[str]:
        if part.endswith("′"):
            return every - single(part[:-1])
        return joined(part[1:-1]) if part.startswith("(") else names[part]

    def joined(part: str) -> set[str]:
        for sign in "∩∪":
            before, found, after = part.partition(f" {sign} ")
            if found and before.count("(") == before.count(")"):
                a, b = single(before), single(after)
                return a & b if sign == "∩" else a | b
        return single(part)

    return joined(text)


def test_the_topic_shades_what_pythons_sets_do():
    found = items()
    assert len(found) == 60
    for item in found:
        (sets,) = (run.text for run in item.prompt if not isinstance(run, str))
        shown = item.key_figure
        assert {*shown.shaded} == value(sets, shown.first, shown.second), item.address


def test_a_wrong_shading_is_not_proved():
    for item in items()[::7]:
        wrong = tuple(r for r in REGIONS if r not in item.key_figure.shaded)
        for dark in (wrong, item.key_figure.shaded[1:], REGIONS):
            if {*dark} == {*item.key_figure.shaded}:
                continue
            shown = dataclasses.replace(item.key_figure, shaded=dark)
            ask = dataclasses.replace(item.ask, shown=shown)
            lie = dataclasses.replace(item, ask=ask, key_figure=shown)
            for prove in (prove_fast, prove_symbolic):
                with pytest.raises(CheckFailed):
                    prove(lie)


@pytest.mark.parametrize(
    "prompt", ["Shade {A ∩ C} in the diagram.", "Shade {A ∩ B} not in the diagram.", "Shade A B."]
)
def test_what_is_no_set_of_it_is_not_to_be_shaded(prompt):
    with pytest.raises(FigureError):
        to_draw(ShadedSets("A", "B"), (prompt,))


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (ShadedSets("A", "A"), "one name"),
        (ShadedSets("a", "B"), "capital letters"),
        (ShadedSets("A", "B", ("middle",)), "no region"),
        (ShadedSets("A", "B", ("both", "both")), "twice"),
    ],
)
def test_what_contradicts_itself_is_refused(figure, said):
    assert said in fault(figure)
