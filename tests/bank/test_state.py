"""The state of every item: what is unproved is never called proved, nor put into a pack."""

import datetime
import itertools

import pytest

from itembank.bank.model.signed import SignOff
from itembank.bank.proof.prove import judge_entry, prove_bank
from itembank.bank.proof.signing import sign
from itembank.bank.proof.signoff import Signing, SignState
from itembank.bank.proof.state import EntryState
from itembank.bank.read.load import read_bank
from itembank.proof.outcome import Outcome, State
from tests.bank.bankfolder import item, make_bank

DAY = datetime.date(2026, 9, 14)
TOPIC = "fractions.add-unlike"
GONE = {"retired": "2026-10-01", "retired_because": '"too easy"'}
ITEMS = (
    item("right-1")
    + item("right-2", "Work out {1/2 + 1/3}.", "5/6")
    + item("wrong-1", "Work out {1/2 + 1/5}.", "2/7")
    + item("tale-1", "How many lengths make a mile in our pool?", "64")
    + item("old-1", "Work out {1/3 + 1/4}.", "7/12", **GONE)
)


@pytest.fixture
def bank(tmp_path):
    return make_bank(tmp_path / "bank", {TOPIC: ITEMS})


def states(bank, **more):
    return {state.address.partition(":")[2]: state for state in prove_bank(bank, **more)}


def test_every_item_has_its_state(bank):
    found = states(bank)
    assert {id: state.word for id, state in found.items()} == {
        "right-1": "proved",
        "right-2": "proved",
        "wrong-1": "disproved",
        "tale-1": "needs a person",
        "old-1": "retired",
    }
    assert found["old-1"].says == "retired on 1 October 2026: too easy; proved; not signed"
    assert found["tale-1"].says.startswith("needs a person: ")


def test_the_order_is_that_of_the_files(bank):
    assert [state.entry for state in prove_bank(bank)] == list(bank.entries())


def test_signed_items(bank):
    sign(bank, ["right-1", "tale-1"], "HT", DAY)
    found = states(bank)
    assert found["right-1"].word == "proved, signed"
    assert found["right-1"].says == "proved; signed by HT on 14 September 2026"
    assert found["tale-1"].word == "signed, not proved"
    assert not found["tale-1"].proved
    assert "needs a person" in found["tale-1"].says


def test_a_stale_sign_off_shows_what_changed(bank):
    sign(bank, ["right-1"], "HT", DAY)
    path = bank.folder / f"{TOPIC}.toml"
    path.write_text(path.read_text().replace("Work out {3/4", "Find {3/4"), encoding="utf-8")
    state = states(read_bank(bank.folder))["right-1"]
    assert state.word == "proved, stale"
    assert "changed since: prompt: was ‘Work out {3/4 + 1/6}.’" in state.says
    assert state.usable()
    assert not state.usable(signed_only=True)
    assert "stale" in state.why_not(signed_only=True)


def test_only_what_is_proved_and_in_use_may_go_into_a_pack(bank):
    sign(bank, ["right-1", "tale-1"], "HT", DAY)
    found = states(bank)
    assert {id for id, state in found.items() if state.usable()} == {"right-1", "right-2"}
    assert {id for id, state in found.items() if state.usable(signed_only=True)} == {"right-1"}
    assert found["old-1"].why_not() == "retired on 1 October 2026: too easy"
    assert found["right-2"].why_not(signed_only=True) == "not signed"


OUTCOMES = [Outcome(state, "why") for state in State]
SIGNS = [
    SignState(signing, (SignOff("a-1", "HT", DAY, "c"),) if signing != "unsigned" else ())
    for signing in Signing
]
RETIRED = [None, (DAY, "dull")]


@pytest.mark.parametrize(
    ("outcome", "sign_", "gone"), list(itertools.product(OUTCOMES, SIGNS, RETIRED))
)
def test_what_is_not_proved_is_never_called_so(outcome, sign_, gone):
    state = EntryState("larkhythe:a-1", TOPIC, None, outcome, sign_, gone)
    called = any(
        part == "proved" for part in (*state.word.split(", "), *state.outcome_says.split(": "))
    )
    assert state.proved == (outcome.state is State.PROVED)
    assert not called or state.proved
    for only in (False, True):
        assert state.usable(only) == (
            state.proved and gone is None and (sign_.state is Signing.SIGNED or not only)
        )
        assert bool(state.why_not(only)) == (not state.usable(only))


def test_a_hand_written_item_without_mathematics_needs_a_person(bank):
    outcome = judge_entry(bank.find("tale-1"))
    assert outcome.state is State.NEEDS_PERSON
    assert outcome.says


def test_generated_items_are_proved_where_asked_and_told_once(tmp_path):
    text = ITEMS + (
        f'[[generated]]\ntier = "core"\ncount = 3\nseed = 2\n\n'
        f'[[pinned]]\naddress = "{TOPIC}/core/7"\n\n[[pinned]]\naddress = "{TOPIC}/core/7"\n'
    )
    bank = make_bank(tmp_path / "bank", {TOPIC: text})
    assert len(prove_bank(bank)) == 5
    made = [state for state in prove_bank(bank, generated=True) if state.entry is None]
    assert len(made) == 4
    assert all(state.proved and state.usable() for state in made)
    assert all(not state.usable(signed_only=True) for state in made)


def test_retired_items_may_be_left_out(bank):
    assert "old-1" not in states(bank, retired=False)


def test_progress_reaches_the_end(bank):
    seen = []
    prove_bank(bank, lambda done, total: seen.append((done, total)))
    assert seen[-1] == (5, 5)
