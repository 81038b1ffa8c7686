"""The banks that ship: every key proved, every line of working held, every mistake known.

The Larkhythe bank shows each state an item can be in.
"""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest

from itembank.bank.model.bank import Bank, Entry
from itembank.bank.proof.prove import judge_entry, prove_bank
from itembank.bank.proof.signoff import Signing
from itembank.bank.question.as_item import as_item
from itembank.bank.read.load import read_bank
from itembank.items.item import Item, Round
from itembank.items.topics.registry import topic_ids
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import line
from itembank.proof.lines.steps import step_fault
from itembank.proof.outcome import State

BANKS = Path(__file__).parents[2] / "banks"


@pytest.fixture(scope="module")
def shared() -> Bank:
    return read_bank(BANKS / "key-stage-3")


@pytest.fixture(scope="module")
def later() -> Bank:
    return read_bank(BANKS / "key-stage-4")


@pytest.fixture(scope="module", params=["key-stage-3", "key-stage-4"])
def either(request: pytest.FixtureRequest) -> Bank:
    return read_bank(BANKS / request.param)


@pytest.fixture(scope="module")
def larkhythe() -> Bank:
    return read_bank(BANKS / "larkhythe" / "questions")


def entries(bank: Bank) -> list[Entry]:
    return [entry for topic in bank.topics for entry in topic.entries]


READ: dict[str, Item] = {}
"""Each question as it was read once, by its address."""


def read_once(entry: Entry) -> Item:
    if entry.address not in READ:
        READ[entry.address] = as_item(entry)
    return READ[entry.address]


def items(bank: Bank) -> list[Item]:
    return [read_once(entry) for entry in entries(bank)]


def test_the_shared_bank_is_as_large_as_it_says(shared: Bank) -> None:
    written = Counter(entry.topic for entry in entries(shared))
    assert written.total() >= 300
    assert len(written) >= 30
    for topic in written:
        assert {e.item.tier for e in entries(shared) if e.topic == topic} == {
            "support",
            "core",
            "challenge",
        }, topic


def test_every_shared_key_is_proved(either: Bank) -> None:
    found = [(e.item.id, judge_entry(e)) for e in entries(either)]
    assert [(id, o.says) for id, o in found if o.state is not State.PROVED] == []


def test_every_line_of_working_holds(either: Bank) -> None:
    faults = [(item.address, step_fault(item)) for item in items(either)]
    assert [(address, fault) for address, fault in faults if fault] == []


def test_every_answer_is_marked_as_what_it_is(shared: Bank, later: Bank, larkhythe: Bank) -> None:
    unprovable = {"garden-4"}
    every = items(shared) + items(later)
    every += [read_once(e) for e in entries(larkhythe) if e.item.id not in unprovable]
    wrong = []
    for item in every:
        if mark(item, line(item.key)).verdict is not Verdict.RIGHT:
            wrong.append((item.address, line(item.key)))
        for slip in item.slips:
            found = mark(item, line(slip.wrong)).misconception
            if found is None or found.id != slip.misconception.id:
                wrong.append((item.address, line(slip.wrong)))
    assert wrong == []


def test_every_item_says_where_a_mistake_comes_from(either: Bank) -> None:
    bare = [e.item.id for e in entries(either) if not e.item.misconceptions or not e.item.working]
    assert bare == []


def plain(text: str) -> str:
    for sign, typed in (("−", "-"), ("²", "^2"), ("³", "^3")):
        text = text.replace(sign, typed)
    return text


def holds(text: str, number: str, after: str = r"[\w/]|\.\d") -> bool:
    """Tell whether a number or an expression stands in a text, and is no part of a longer one."""
    return re.search(rf"(?<![\w.^/-]){re.escape(number)}(?!{after})", text) is not None


def test_no_question_to_ask_tells_the_answer(either: Bank) -> None:
    told = []
    for item in items(either):
        # Which of two numbers it is nearer to is the question a rounded number is asked by.
        if isinstance(item.ask, Round):
            continue
        printed = plain("".join(run if isinstance(run, str) else line(run) for run in item.prompt))
        for part in plain(line(item.key)).split(" or "):
            key = part.rpartition("= ")[2]
            told += [
                (item.address, slip.misconception.ask)
                for slip in item.slips
                if holds(plain(slip.misconception.ask), key)
                and not holds(printed + " " + plain(line(slip.wrong)), key, r"\d|\.\d")
            ]
    assert told == []


def test_a_minus_in_words_is_a_minus_sign(either: Bank) -> None:
    said = [
        text
        for item in items(either)
        for text in (
            *(step.say for step in item.steps),
            *(word for s in item.slips for word in (s.misconception.name, s.misconception.ask)),
        )
    ]
    hyphens = re.compile(r"(?<![\w.])-(?=[\d(a-z])|(?<=[\w)]) - (?=[\w(])|\^\d")
    assert [text for text in said if hyphens.search(text)] == []


def test_no_question_stands_twice_in_the_shared_banks(shared: Bank, later: Bank) -> None:
    both = items(shared) + items(later)
    seen = Counter(item.twin for item in both)
    assert [item.address for item in both if seen[item.twin] > 1] == []
    assert len({entry.item.id for bank in (shared, later) for entry in entries(bank)}) == len(both)


def test_banks_cover_topics_that_are_generated_and_topics_that_are_not(shared: Bank) -> None:
    generated = {topic.id for topic in shared.topics} & set(topic_ids())
    assert generated
    assert {topic.id for topic in shared.topics} - generated


def test_larkhythe_shows_every_state(larkhythe: Bank) -> None:
    found = {state.entry.item.id: state for state in prove_bank(larkhythe) if state.entry}
    assert [id for id, state in found.items() if not state.proved] == ["garden-4"]
    assert found["garden-4"].outcome.state is State.NEEDS_PERSON
    signing = {id: state.sign.state for id, state in found.items()}
    assert [id for id, state in signing.items() if state is Signing.STALE] == ["depot-3"]
    assert sum(state is Signing.SIGNED for state in signing.values()) >= 5
    assert Signing.UNSIGNED in signing.values()
    assert [id for id, state in found.items() if state.retired] == ["pool-5"]


def test_larkhythe_holds_a_twin_at_home_and_one_abroad(shared: Bank, larkhythe: Bank) -> None:
    at_home = {e.item.id: read_once(e).twin for e in entries(larkhythe) if e.item.id != "garden-4"}
    abroad = {e.item.id: read_once(e).twin for e in entries(shared)}
    assert at_home["depot-1"] == at_home["depot-2"]
    assert at_home["pool-1"] == abroad["k3-share-01"]


def test_the_shared_banks_claim_nothing_that_nobody_did(either: Bank) -> None:
    """No writer, day or reviewer is named, since there is none to name."""
    for entry in entries(either):
        assert (entry.item.author, entry.item.created) == (None, None), entry.item.id
        assert entry.item.source == "written for this project", entry.item.id
    assert either.authors == {}
    assert not (either.folder / "signoffs.toml").exists()


def test_every_bank_that_ships_is_under_the_licence_of_the_project(
    shared: Bank, later: Bank, larkhythe: Bank
) -> None:
    lines = (BANKS.parent / "LICENSE").read_text(encoding="utf-8").splitlines()
    name = lines[0].removesuffix(" License")
    (who,) = [line.split(" ", 3)[3] for line in lines if line.startswith("Copyright (c)")]
    terms = f"{name}, granted by {who[0].upper()}{who[1:]}"
    assert {bank.terms for bank in (shared, later, larkhythe)} == {terms}


def test_the_demo_bank_says_that_its_people_are_invented(larkhythe: Bank) -> None:
    head = (larkhythe.folder / "bank.toml").read_text(encoding="utf-8").split("name =")[0]
    assert "is invented, and so are these authors, the days" in head
