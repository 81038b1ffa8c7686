"""Means, medians, modes and ranges: two roads from the list, and words that are read whole."""

from __future__ import annotations

import random
import statistics
from fractions import Fraction

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.asking import ask_of
from itembank.bank.question.given.maths import read_maths
from itembank.errors import CheckFailed
from itembank.items.asks import Round, Summary, kind_of
from itembank.items.asks.summary import SUMMARIES
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Item, Tier, prompt
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.claim.finding import WrongKey
from itembank.proof.exact.exact_road import by_first_road
from itembank.proof.sympy.sympy_road import by_second_road

OTHER_ENGINE = {
    "mean": statistics.mean,
    "median": statistics.median,
    "mode": statistics.mode,
    "range": lambda values: max(values) - min(values),
}


def item(words: str, row: t.Node, detail: str, key: t.Node) -> Item:
    assert isinstance(row, t.Listing)
    ask = Summary(row.parts, detail)  # type: ignore[arg-type]
    return Item(
        "test.list/core/0", "test.list", Tier.CORE, prompt(words, row=row), ask, key, "value",
        (), (), (), 1, (),
    )  # fmt: skip


def lists(count: int) -> list[list[Fraction]]:
    rng = random.Random(19)
    made = []
    while len(made) < count:
        tenth = rng.choice((1, 10))
        row = [Fraction(rng.randint(-30, 40), tenth) for _ in range(rng.randint(3, 9))]
        made.append(row)
    return made


def test_both_roads_agree_with_a_library_of_statistics() -> None:
    asked = 0
    for row in lists(60):
        listed = t.Listing(tuple(map(number_node, row)))
        for name in SUMMARIES:
            if name == "mode" and len(statistics.multimode(row)) > 1:
                continue
            right = Fraction(OTHER_ENGINE[name](row))
            question = item(f"Find the {name} of {{row}}.", listed, name, number_node(right))
            prove_fast(question)
            prove_symbolic(question)
            wrong = item(question.prompt[0] + "{row}.", listed, name, number_node(right + 1))  # type: ignore[operator]
            assert by_first_road(wrong).fault
            assert by_second_road(wrong).fault
            asked += 1
    assert asked > 180


@pytest.mark.parametrize("row", ["3, 3, 5, 5, 8", "3, 4, 5"])
def test_a_list_with_two_modes_or_none_has_no_answer(row: str) -> None:
    question = item("Find the mode of {row}.", parse(row), "mode", t.Int(3))
    for road in (by_first_road, by_second_road):
        with pytest.raises(t.NotationError):
            road(question)
    with pytest.raises(NotExact):
        by_second_road(question)


@pytest.mark.parametrize(
    ("words", "detail"),
    [
        ("Find the mean of {row}.", "median"),
        ("Find the median of {row}.", "mean"),
        ("Find the range of {row}.", "mode"),
        ("Find {row}.", "mean"),
        ("Find the mean of {row} without the largest.", "mean"),
        ("Find the mean of {row} and double it.", "mean"),
        ("Find the mean of {row}. Find the median of {row}.", "mean"),
        ("The ages of six swimmers are {row}. Find the mean age.", "mean"),
        ("Do not find the mean of {row}.", "mean"),
        ("Which number is in {row}?", "mode"),
    ],
)
def test_words_that_ask_for_something_else_are_no_proof(words: str, detail: str) -> None:
    row = parse("4, 4, 7, 9, 11")
    key = {"mean": 7, "median": 7, "mode": 4, "range": 7}[detail]
    with pytest.raises((WrongKey, CheckFailed)):
        prove_fast(item(words, row, detail, t.Int(key)))


@pytest.mark.parametrize(
    ("words", "detail"),
    [
        ("Work out the mean of {row}.", "mean"),
        ("The ages of five swimmers are {row}. Find the median age.", "median"),
        ("Here are some numbers: {row}. What is the range?", "range"),
        ("Find the mode of {row}.", "mode"),
    ],
)
def test_words_are_read_in_a_topic_and_in_a_bank_alike(words: str, detail: str) -> None:
    row = parse("4, 4, 7, 9, 11")
    key = {"mean": 7, "median": 7, "mode": 4, "range": 7}[detail]
    question = item(words, row, detail, t.Int(key))
    prove_fast(question)
    text = words.replace("{row}", "{4, 4, 7, 9, 11}")
    written = BankItem(id="a-1", tier=Tier.CORE, prompt=text, key=str(key))
    assert ask_of(written, read_maths(written)) == question.ask


def test_a_mean_that_is_rounded_is_rounded() -> None:
    text = "Find the mean of {4, 4, 5}. Give your answer to 1 decimal place."
    written = BankItem(id="a-1", tier=Tier.CORE, prompt=text, key="4.3")
    assert isinstance(ask_of(written, read_maths(written)), Round)


def test_a_summary_comes_back_from_its_data() -> None:
    ask = Summary(parse("4, 4, 5").parts, "mode")  # type: ignore[union-attr]
    kind = kind_of(ask)
    assert kind.restore(kind.store(ask)) == ask
    with pytest.raises(t.NotationError):
        kind.restore(kind.store(Summary((t.Int(4),), "mean")))
