"""Statements that give the answer to a question: right and wrong verdicts, by both roads."""

from __future__ import annotations

import random
import statistics
from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest

from itembank.errors import CheckFailed
from itembank.items.asks import Answered, OfFigure, Summary
from itembank.items.item import Item, Tier, prompt
from itembank.items.topics.registry import find_topic, topics
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.packs.data.asks import pack_ask, read_ask
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from itembank.proof.sympy import sympy_judged
from tests.depth import some, whole
from tests.other_kinds import made_by

TRUE, FALSE = t.Label("true"), t.Label("false")


@cache
def stated(count: int = 6) -> list[Item]:
    """Return some statements of every topic that makes them."""
    found = []
    for topic in topics():
        for tier, space in topic.spaces.items():
            there = made_by(space, lambda make: make.__qualname__ == "stated_answer")
            chosen = random.Random(topic.id).sample(there, min(count, len(there)))
            found += [topic.item(tier, n) for n in chosen]
    return found


def turned(item: Item) -> Item:
    return replace(item, key=TRUE if item.key == FALSE else FALSE)


def test_many_topics_state_answers_and_half_of_them_are_right() -> None:
    assert len({item.topic for item in stated()}) >= 60
    keys = [item.key for item in stated()]
    assert 0.4 <= keys.count(TRUE) / len(keys) <= 0.6


@whole
def test_the_other_verdict_is_found_out_by_both_roads() -> None:
    for item in some(stated(), 60):
        prove_fast(item)
        with pytest.raises(CheckFailed):
            prove_fast(turned(item))
    for item in some(stated()[::9], 10):
        prove_symbolic(item)
        with pytest.raises(CheckFailed):
            prove_symbolic(turned(item))


def test_a_statement_is_true_just_where_it_gives_the_key_of_the_topics_own_question() -> None:
    """Held to the topic's own keys, which other tests find again by other engines."""
    for item in stated():
        assert isinstance(item.ask, Answered)
        topic = find_topic(item.topic)
        point = topic.spaces[item.tier][int(item.address.rpartition("/")[2])][1]
        key = topic.make(item.tier, *point).key
        # The value of x is 3, where the key of the question is x = 3.
        value = key.rest[-1][1] if isinstance(key, t.Relation) else key
        assert (item.ask.answer in (key, value)) == (item.key == TRUE), item.address


def test_a_statement_goes_into_a_pack_and_comes_back() -> None:
    for item in stated():
        ask = pack_ask(item)
        if "p" not in str(ask.target) + str(ask.answers):  # a letter p, which is no pence
            assert read_ask(ask, pence=True, figure=item.figure) == item.ask, item.address


ROW = parse("3, 9, 5")
assert isinstance(ROW, t.Listing)


@pytest.mark.parametrize(
    ("words", "answer", "state"),
    [
        ("True or false? The median of {row} is {a}.", "5", State.PROVED),
        ("True or false? The median of {row} is {a}.", "9", State.DISPROVED),
        ("True or false? The mean of {row} is {a}.", "5", State.NEEDS_PERSON),
        ("True or false? Twice the median of {row} is {a}.", "5", State.NEEDS_PERSON),
        ("True or false? The median of {row} and 7 is {a}.", "5", State.NEEDS_PERSON),
        ("Add 1 to each. True or false? The median of {row} is {a}.", "5", State.NEEDS_PERSON),
        ("True or false? The median of {row} is {a}.", "5, 9", State.NEEDS_PERSON),
        ("True or false? The median of {row} is {a}.", "x = 5", State.NEEDS_PERSON),
    ],
)
def test_what_a_statement_says_is_held_to_its_words(words: str, answer: str, state: State) -> None:
    given = parse(answer)
    made = Item(
        "test.stated/core/0", "test.stated", Tier.CORE, prompt(words, row=ROW, a=given),
        Answered(Summary(ROW.parts, "median"), given, "value"), TRUE, "true-or-false",
        (), (), (), 1, (),
    )  # fmt: skip
    assert judge(made).state is state


def test_a_drawing_that_lies_makes_no_statement_false(monkeypatch: pytest.MonkeyPatch) -> None:
    found = next(
        item
        for item in stated()
        if isinstance(item.ask, Answered) and isinstance(item.ask.of, OfFigure)
    )
    assert judge(found).state is State.PROVED
    monkeypatch.setattr(
        sympy_judged, "disagreement", lambda figure: "it is drawn as something else"
    )
    for item in (found, turned(found)):
        assert judge(item).state is not State.PROVED


def test_medians_and_means_that_are_stated_are_found_again_by_python() -> None:
    counted = 0
    for item in stated():
        assert isinstance(item.ask, Answered)
        if isinstance(item.ask.of, Summary) and item.ask.of.detail in ("mean", "median"):
            row = [Fraction(line(node)) for node in item.ask.of.numbers]
            value = getattr(statistics, item.ask.of.detail)(row)
            assert (Fraction(line(item.ask.answer)) == value) == (item.key == TRUE), item.address
            counted += 1
    assert counted >= 20
