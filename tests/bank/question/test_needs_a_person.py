"""What cannot be proved needs a person, and says why."""

from pathlib import Path

import pytest

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.proof.prove import judge_entry
from itembank.bank.question import asking
from itembank.bank.question.as_item import form_of
from itembank.bank.question.asking import NeedsPerson
from itembank.bank.question.given.maths import UnreadableMaths, read_maths
from itembank.items.item import (
    Solve,
)
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.proof.outcome import State
from tests.bank.question.prompts_read import item, read


@pytest.mark.parametrize(
    ("prompt", "more", "said"),
    [
        ("How many buses run?", {}, "no mathematics"),
        ("A bus holds {48}. How many do two hold?", {}, "‘two’ is not understood"),
        ("What is {48}?", {}, "nothing to work out"),
        ("Paint is mixed {2 : 3}. How much is red?", {}, "How much is red.* is not understood"),
        ("A side is {x + 3} long. How far is it round?", {}, "How far .* is not understood"),
        ("Work out {1/2} by {60}.", {"task": "work-out"}, "by …’ is not understood"),
        ("Solve {2x + 1}.", {"task": "solve"}, "an equation or an inequality"),
        ("Solve {1 + 1 = 2}.", {"task": "solve"}, "a letter in it"),
        ("Solve {x < 2} and {x > 1}.", {"task": "solve"}, "Several inequalities"),
        ("Solve {2x + 3 = 11} and {x^2 = 16}.", {}, "apart or together"),
        ("Expand {x = 2}.", {"task": "expand"}, "takes an expression"),
        ("Write in order {1, 2, 3}.", {"task": "order"}, "smallest first"),
        ("Write {1} in order, smallest first.", {"task": "order"}, "takes a list"),
        ("Compare {1, 2, 3}.", {"task": "compare"}, "is not understood"),
        ("Change {3/8}.", {"task": "convert"}, "what to convert to"),
        ("Round {3.456}.", {"task": "round"}, "what to round to"),
        (
            "Round {3.4} to 1 decimal place or 1 significant figure.",
            {"task": "round"},
            "or 1 significant figure’ stands outside",
        ),
        ("Find the nth term of {1, 2}.", {"task": "nth-term"}, "at least three terms"),
        ("Rearrange {y = x + 1}.", {"task": "make-subject"}, "is not understood"),
        ("Share {£60}.", {"task": "share"}, "one amount and one ratio"),
        ("{3} buses, {1} red. How many?", {"model": ["a + b = 3", "a = 1"]}, "needs"),
        ("{1} bus?", {"model": ["a + b", "a = 1"], "find": "a"}, "every line of the model is"),
        ("{1} bus and {2} go by.", {"model": ["1 + 2"]}, "end with a question"),
    ],
)
def test_what_cannot_be_proved_needs_a_person(prompt, more, said):
    asked = item(prompt, **more)
    if said == "needs":
        # Two equations in two letters are solved for both unless it is said what is asked for.
        assert isinstance(read(prompt, **more).ask, Solve)
        said, more = "which letter", more | {"task": "work-out"}
        asked = item(prompt, **more)
    with pytest.raises(NeedsPerson, match=said):
        read(prompt, **more)
    assert read_maths(asked).key == parse("1")  # it still prints
    assert form_of(asked, read_maths(asked))


def test_every_unreadable_line_is_told():
    with pytest.raises(UnreadableMaths) as caught:
        read_maths(item("Work out {1 +} and {2}.", "3/", model=["= 1"], working=[["a", "1 1"]]))
    assert [fault.field for fault in caught.value.faults] == [
        ("prompt",),
        ("model",),
        ("key",),
        ("working", 0, 1),
    ]


def test_a_proof_says_whether_it_rests_on_a_model():
    def outcome(prompt, key, **more):
        return judge_entry(Entry(item(prompt, key, **more), "a.b", "larkhythe", Path("x.toml"), 1))

    words = "Of {40} swimmers, {3/5} dive. How many dive?"
    assert outcome(words, "24", model=["3/5 × 40"]).modelled
    assert outcome("Two clubs share {£40} in the ratio {3 : 5}.", "£15, £25", task="share").modelled
    # A model beside words that are understood whole is not needed: the words are proved.
    assert not outcome("Increase {60} by {10%}.", "66", model=["60 + 10% of 60"]).modelled
    assert not outcome("Solve {2x = 6}.", "x = 3", task="solve").modelled


def test_a_scale_that_is_asked_for_is_not_read_as_one():
    asked = BankItem(
        id="map-1",
        tier="core",
        prompt="A bus route is really {2.6 km} long. On a map it is {13 cm} long. Write the scale "
        "of the map in the form {1 : n}.",
        key="1 : 20000",
        model=("13 cm : 2.6 km",),
        form="one-to-n",
    )
    wrong = asked.model_copy(update={"key": "1 : 2000"})
    found = [
        judge_entry(Entry(item, "ratio.scale", "larkhythe", Path("ratio.scale.toml"), 1)).state
        for item in (asked, wrong)
    ]
    assert found == [State.PROVED, State.DISPROVED]


def test_whatever_cannot_be_worked_out_needs_a_person(monkeypatch):
    def fail(_):
        raise t.NotationError("Sym has no value of its own")

    monkeypatch.setattr(asking, "read_prompt", fail)
    item = BankItem(id="a-1", tier="core", prompt="Work out {1 + 1}.", key="2")
    with pytest.raises(NeedsPerson, match="could not be worked out"):
        asking.question_of(item, read_maths(item))
