"""What a prompt's mathematics and its task become: the question that is proved."""

import pytest

from itembank.bank.question.given.maths import read_maths
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
from itembank.wording.sentences.sizes import order_said
from itembank.wording.tasks.answers.answer_phrases import rounding
from tests.bank.question.prompts_read import item, read

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
