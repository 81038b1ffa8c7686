"""What a prompt's mathematics and its task become: the question that is proved."""

import datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.bank import Entry
from itembank.bank.model.content import content_hash_of, printed, record_hash_of
from itembank.bank.model.fields import BankItem
from itembank.bank.proof.prove import judge_entry
from itembank.bank.question import asking
from itembank.bank.question.as_item import as_item, form_of
from itembank.bank.question.asking import NeedsPerson
from itembank.bank.question.maths import UnreadableMaths, read_maths
from itembank.items.item import (
    Choose,
    Common,
    Compare,
    Find,
    Inequality,
    Misconception,
    Order,
    Rewrite,
    Round,
    Sequence,
    Slip,
    Solve,
    Step,
    Subject,
    Tier,
)
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.proof.outcome import State
from itembank.wording.sentences.sizes import order_said
from itembank.wording.tasks.answer_phrases import rounding


def item(said, answer="1", **more):
    fields = {"id": "a-1", "tier": "core", "prompt": said, "key": answer}
    return BankItem.model_validate(fields | more)


def read(prompt, key="1", **more):
    return as_item(Entry(item(prompt, key, **more), "ratio.share", "larkhythe", "x.toml", 1))


A, B = t.Sym("a"), t.Sym("b")


@pytest.mark.parametrize(
    ("task", "prompt", "ask", "form"),
    [
        ("work-out", "Work out {3/4 + 1/6}.", Find(parse("3/4 + 1/6")), "value"),
        (
            "work-out",
            "Work out {3x + 2} when {x = 5}.",
            Find(parse("3x + 2"), (parse("x = 5"),)),
            "value",
        ),
        (
            "work-out",
            "When {x = 5, y = 2}, work out {xy}.",
            Find(parse("xy"), (parse("x = 5"), parse("y = 2"))),
            "value",
        ),
        (
            "work-out",
            "Find the number: {3/4 = □/12}.",
            Find(t.Blank(), (parse("3/4 = □/12"),)),
            "value",
        ),
        ("work-out", "Work out {2x + 3x}.", Rewrite(parse("2x + 3x"), "simplify"), "simplified"),
        ("simplify", "Simplify {2x + 3x}.", Rewrite(parse("2x + 3x"), "simplify"), "simplified"),
        ("simplify", "Simplify {8/12}.", Find(parse("8/12")), "lowest-terms"),
        ("simplify", "Simplify {12/4}.", Find(parse("12/4")), "integer"),
        ("simplify", "Simplify {12 : 18}.", Find(parse("12 : 18")), "ratio"),
        ("simplify", "Simplify {√12 + √27}.", Find(parse("√12 + √27")), "surd"),
        ("expand", "Expand {3(x + 2)}.", Rewrite(parse("3(x + 2)"), "expand"), "expanded"),
        ("factorise", "Factorise {3x + 6}.", Rewrite(parse("3x + 6"), "factorise"), "factorised"),
        ("solve", "Solve {2x = 6}.", Solve((parse("2x = 6"),)), "value"),
        (
            "solve",
            "Solve {x + y = 7} and {x - y = 3}.",
            Solve((parse("x + y = 7"), parse("x - y = 3"))),
            "value",
        ),
        ("solve", "Solve {2x < 6}.", Inequality(parse("2x < 6")), "inequality"),
        ("solve", "Solve {1 < 2x ≤ 6}.", Inequality(parse("1 < 2x ≤ 6")), "inequality"),
        (
            "make-subject",
            "Make {x} the subject of {y = 3x + 2}.",
            Subject(parse("y = 3x + 2"), t.Sym("x")),
            "subject",
        ),
        (
            "make-subject",
            "Make t the subject of {v = u + at}.",
            Subject(parse("v = u + at"), t.Sym("t")),
            "subject",
        ),
        (
            "share",
            "Share {£60} in the ratio {2 : 3}.",
            Find(t.Listing((A, B)), (parse("a + b = £60"), parse("a : b = 2 : 3"))),
            "amounts",
        ),
        (
            "order",
            "Write {1/2}, {0.4} and {45%} in order, smallest first.",
            Order((parse("1/2"), parse("0.4"), parse("45%")), "ascending"),
            "list",
        ),
        (
            "order",
            "Put in order, largest first: {3, -2, 0}.",
            Order(parse("3, -2, 0").parts, "descending"),
            "list",
        ),
        ("compare", "Which sign: {2/3} or {3/5}?", Compare(parse("2/3"), parse("3/5")), "sign"),
        ("convert", "Write {3/8} as a decimal.", Find(parse("3/8")), "decimal"),
        ("convert", "Write {7/4} as a mixed number.", Find(parse("7/4")), "mixed"),
        (
            "nth-term",
            "Give the nth term of {5, 8, 11}, …",
            Sequence(parse("5, 8, 11").parts),
            "nth-term",
        ),
        (
            "hcf",
            "Find the HCF of {12} and {18}.",
            Common((parse("12"), parse("18")), "hcf"),
            "integer",
        ),
        ("lcm", "Find the LCM of {4, 6, 9}.", Common(parse("4, 6, 9").parts, "lcm"), "integer"),
        ("prime-factors", "Write {60} as a product of primes.", Find(parse("60")), "prime-factors"),
        (
            "round",
            "Round {3.456} to 2 decimal places.",
            Round(parse("3.456"), "places", 2),
            "rounded",
        ),
        (
            "round",
            "Round {3456} to {1} significant figure.",
            Round(parse("3456"), "figures", 1),
            "rounded",
        ),
        (None, "Solve {2x = 6}.", Solve((parse("2x = 6"),)), "value"),
        (None, "Simplify {2x + 3x}.", Rewrite(parse("2x + 3x"), "simplify"), "simplified"),
        (None, "Work out {2 + 3}.", Find(parse("2 + 3")), "value"),
        (None, "{6/11 - s/11}", Rewrite(parse("6/11 - s/11"), "simplify"), "simplified"),
        (None, "Work out {28/9}.", Find(parse("28/9")), "value"),
        (None, "Simplify {28/8}.", Find(parse("28/8")), "lowest-terms"),
        ("work-out", "Work out {28/9}.", Find(parse("28/9")), "value"),
        (None, "Expand {2(x + 3)}.", Rewrite(parse("2(x + 3)"), "expand"), "expanded"),
        (None, "Simplify {4 : 6}.", Find(parse("4 : 6")), "ratio"),
    ],
)
def test_what_a_task_asks(task, prompt, ask, form):
    found = read(prompt, **({} if task is None else {"task": task}))
    assert (found.ask, found.form) == (ask, form)


@pytest.mark.parametrize(
    ("prompt", "key", "form"),
    [
        ("Simplify {28/8}.", "3 1/2", "mixed"),
        ("Simplify {0.8/2}.", "0.4", "decimal"),
        # No simplified fraction is a decimal: such a key is disproved for its form.
        ("Simplify {2/5}.", "0.4", "lowest-terms"),
        ("Solve {2x = 6}.", "3", "value"),
        ("Solve {2x = 6}.", "x = 3", "roots"),
    ],
)
def test_a_form_that_is_not_stated_is_one_that_such_a_key_can_have(prompt, key, form):
    assert read(prompt, key).form == form


def test_a_model_takes_the_place_of_the_words():
    words = "A bed takes {60} plants, {2} red to {3} white. How many are white?"
    found = read(words, "36", model=["a : b = 2 : 3", "a + b = 60"], find="b")
    assert found.ask == Find(B, (parse("a : b = 2 : 3"), parse("a + b = 60")))
    words = "Of {40} swimmers, {3/5} dive. How many dive?"
    assert read(words, "24", model=["3/5 × 40"]).ask == Find(parse("3/5 × 40"))
    words = "I think of a number, multiply it by {3} and add {2}. I get {17}. What is it?"
    assert read(words, "5", model=["3x + 2 = 17"], task="work-out").ask == Find(
        t.Sym("x"), (parse("3x + 2 = 17"),)
    )


def test_choosing_an_option():
    options = {"Pack A": "£3/5", "Pack B": "£4/7"}
    found = read(
        "Pack A: {5} for {£3}. Pack B: {7} for {£4}. Which is better value?",
        "Pack B",
        options=options,
        choose="least",
        task="choose",
        misconceptions=[{"id": "m", "name": "n", "wrong": "Pack A", "ask": "Why?"}],
    )
    assert found.ask == Choose(tuple((k, parse(v)) for k, v in options.items()), "least")
    assert (found.key, found.form, found.slips[0].wrong) == (
        t.Label("Pack B"),
        "name",
        t.Label("Pack A"),
    )


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


def test_the_rest_of_an_item():
    found = read(
        "Work out {3/4 + 1/6}, please.",
        "11/12",
        form="lowest-terms",
        marks=2,
        constants=[180],
        working=[["Add", "9/12 + 2/12 = 11/12"], "Look at it"],
        misconceptions=[{"id": "m", "name": "adds across", "wrong": "4/10", "ask": "Is it?"}],
    )
    assert (found.address, found.topic, found.tier) == ("larkhythe:a-1", "ratio.share", Tier.CORE)
    assert found.prompt == ("Work out ", parse("3/4 + 1/6"), ", please.")
    assert (found.form, found.marks, found.constants) == ("lowest-terms", 2, (180,))
    assert found.steps == (Step("Add", parse("9/12 + 2/12 = 11/12")), Step("Look at it"))
    assert found.slips == (Slip(Misconception("m", "adds across", "Is it?"), parse("4/10")),)


def test_two_mistakes_with_one_answer_are_said_together():
    rows = [
        {"id": "tops", "name": "adds across", "wrong": "4/10", "ask": "Is it?"},
        {"id": "half", "name": "stops half way", "wrong": "9/12", "ask": "Is that all?"},
        {"id": "parts", "name": "adds the parts", "wrong": "0.4", "ask": "Which parts?"},
    ]
    found = read("Work out {3/4 + 1/6}.", "11/12", misconceptions=rows)
    assert [(slip.misconception.id, slip.misconception.name) for slip in found.slips] == [
        ("tops+parts", "adds across, or adds the parts"),
        ("half", "stops half way"),
    ]


def test_mistakes_of_form_alone_are_told_apart_by_how_they_are_written():
    rows = [
        {"id": "twos", "name": "cancels by 2 only", "wrong": "6/12", "ask": "And 3?"},
        {"id": "threes", "name": "cancels by 3 only", "wrong": "4/8", "ask": "And 2?"},
    ]
    text = "Write {12/24} as a fraction in its simplest form."
    found = read(text, "1/2", form="lowest-terms", misconceptions=rows)
    assert [slip.misconception.id for slip in found.slips] == ["twos", "threes"]


def test_the_same_question_in_disguise_is_a_twin():
    one, other = read("Work out {3/4 + 1/6}.", "11/12"), read("Find {1/6 + 3/4}.", "11/12")
    assert one.twin == other.twin != read("Find {1/6 + 3/5}.", "11/12").twin


def test_p_is_a_letter_in_every_line_or_pence_in_every_line():
    letters = read_maths(item("Solve {4p - 12 = p}.", "p = 4", working=[["Take p", "3p = 12"]]))
    assert letters.working == (parse("3p = 12", pence=False),)
    pence = read_maths(item("Work out {30p + 25p}.", "55p"))
    assert pence.key == parse("55p") != parse("55p", pence=False)


def test_every_unreadable_line_is_told():
    with pytest.raises(UnreadableMaths) as caught:
        read_maths(item("Work out {1 +} and {2}.", "3/", model=["= 1"], working=[["a", "1 1"]]))
    assert [fault.field for fault in caught.value.faults] == [
        ("prompt",),
        ("model",),
        ("key",),
        ("working", 0, 1),
    ]


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("to 2 decimal places", ("places", 2)),
        ("to one decimal place", ("places", 1)),
        ("to 1 d.p.", ("places", 1)),
        ("to 3 dp", ("places", 3)),
        ("to 1 significant figure", ("figures", 1)),
        ("to two significant figures", ("figures", 2)),
        ("to 2 s.f.", ("figures", 2)),
        ("to the nearest 10", ("nearest", 10)),
        ("to the nearest 1,000", ("nearest", 1000)),
        ("to the nearest 10 000", ("nearest", 10000)),
        ("to the nearest whole number", ("nearest", 1)),
        ("to the nearest ten thousand", ("nearest", 10_000)),
        ("to the nearest tenth", ("places", 1)),
        ("to the nearest penny", ("places", 2)),
        ("to 2 decimal places, or 2 significant figures", None),
        ("to some decimal places", None),
        ("the nearest bus", None),
    ],
)
def test_what_words_round_to(words, found):
    assert rounding(words) == found


def test_words_that_ask_for_both_orders_ask_for_none():
    assert order_said("smallest first, then largest first") is None


TEXT = st.sampled_from(["1", "2", "x = 1", "1 + 1"])
CHANGES = st.fixed_dictionaries(
    {},
    optional={
        "prompt": st.sampled_from(["Find {1}.", "Find {2}."]),
        "key": TEXT,
        "tier": st.sampled_from(["core", "support"]),
        "marks": st.integers(1, 3),
        "form": st.sampled_from(["value", "integer"]),
        "working": st.lists(st.tuples(TEXT, TEXT), max_size=2),
        "constants": st.lists(st.integers(0, 3), max_size=2),
        "author": st.sampled_from(["HT", "NT"]),
        "source": TEXT,
        "misconceptions": st.lists(
            st.fixed_dictionaries({"id": st.just("m"), "name": TEXT, "wrong": TEXT, "ask": TEXT}),
            max_size=1,
        ),
    },
)


@given(CHANGES, CHANGES)
def test_two_contents_have_one_hash_exactly_when_they_print_the_same(first, second):
    one, other = item("Find {3}.", **first), item("Find {3}.", **second)
    same = printed(one) == printed(other)
    assert (content_hash_of(one, "a.b") == content_hash_of(other, "a.b")) is same
    assert (record_hash_of(one, "a.b") == record_hash_of(other, "a.b")) is same


def test_history_is_no_content():
    plain = item("Find {3}.")
    day = {"retired": datetime.date(2026, 11, 1), "retired_because": "too easy"}
    retired = item("Find {3}.", **day)
    assert content_hash_of(plain, "a.b") == content_hash_of(retired, "a.b")
    assert record_hash_of(plain, "a.b") == record_hash_of(retired, "a.b")
    assert content_hash_of(plain, "a.b") != content_hash_of(plain, "a.c")
    other = plain.model_copy(update={"id": "a-2"})
    assert record_hash_of(plain, "a.b") != record_hash_of(other, "a.b")


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
