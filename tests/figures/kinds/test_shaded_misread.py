"""Sets to be shaded: words that ask for other regions are not read, no wrong region is proved."""

import dataclasses
from itertools import combinations

import pytest

from itembank.figures.figure import FigureError
from itembank.figures.kinds.sets.shaded_sets import REGIONS, ShadedSets
from itembank.items.asks.draw_on import Draw, drawn_on, key_of
from itembank.items.item import prompt
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.proof.judge import judge
from itembank.proof.outcome import State

SETS = {
    "A ∩ B": ("both",),
    "A ∪ B": ("first", "both", "second"),
    "A": ("first", "both"),
    "A′": ("second", "neither"),
    "(A ∪ B)′": ("neither",),
    "A ∩ B′": ("first",),
}
PLAIN = "Shade {s} in the Venn diagram."
MISREAD = (
    "Shade everything except {s} in the Venn diagram.",
    "Shade what is not in {s}.",
    "Shade the complement of {s}.",
    "Do not shade {s}.",
    "Shade {s} or neither.",
    "Shade {s} and its complement.",
    "Shade {s} but not both.",
    "Shade only part of {s}.",
    "Shade all but {s}.",
    "Leave {s} unshaded.",
    "Shade the smaller of {s} and its complement.",
    "Shade {s} in the other diagram.",
    "Cross out {s}.",
    "Shade {s} as well as B.",
    "Shade A, then {s}.",
    "Shade {s} on a diagram without B.",
    "Shade the union of {s} with B.",
    "Shade half of {s}.",
    "Shade {s}. Then shade the rest.",
    "Shade {s}. Rub out B.",
    "The Venn diagram shows the complements of A and B. Shade {s}.",
    "The names in the diagram are swapped. Shade {s}.",
    "The diagram shows A inside B. Shade {s}.",
    "Here is a Venn diagram with A and B the wrong way round. Shade {s}.",
    "The Venn diagram shows disjoint sets. Shade {s}.",
    "Shade the regions outside {s}.",
    "Shade {s} with the circles left white.",
    "Shade what {s} leaves.",
    "Shade {s} or both.",
)


@pytest.fixture(scope="module")
def question():
    """Return any generated question that asks to shade a set."""
    topic = find_topic("probability.sets")
    for tier, space in topic.spaces.items():
        for part in space.part_indices:
            item = topic.item(tier, next(iter(part)))
            if isinstance(item.ask, Draw) and isinstance(item.ask.figure, ShadedSets):
                return item
    raise AssertionError("no topic asks to shade a set")


def proved(question, words, sets, regions):
    runs = prompt(words, s=t.Label(sets))
    try:
        ask = drawn_on(ShadedSets("A", "B"), ShadedSets("A", "B", regions), runs)
    except FigureError:
        return False
    item = dataclasses.replace(
        question,
        prompt=runs,
        ask=ask,
        key=key_of(ask),
        figure=ask.figure,
        key_figure=ask.shown,
    )
    return judge(item).state is State.PROVED


@pytest.mark.parametrize("words", MISREAD)
def test_words_that_ask_for_other_regions_are_not_proved(question, words):
    assert not [sets for sets, regions in SETS.items() if proved(question, words, sets, regions)]


@pytest.mark.parametrize("sets", SETS)
def test_of_all_regions_one_choice_is_proved(question, sets):
    every = [some for count in range(5) for some in combinations(REGIONS, count)]
    right = [regions for regions in every if proved(question, PLAIN, sets, regions)]
    assert [{*regions} for regions in right] == [{*SETS[sets]}]
