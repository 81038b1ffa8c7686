"""Right answers in other spellings are never called wrong, wrong ones never right."""

from __future__ import annotations

import importlib.util
import re
from functools import cache
from itertools import chain, permutations
from pathlib import Path

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from itembank.items.forms.form_rules import number_node
from itembank.items.item import Find, Round, Solve
from itembank.items.topics.registry import topics
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.marking.worth.same_worth import same
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.value import exact
from tests.depth import cases

_spec = importlib.util.spec_from_file_location(
    "questions", Path(__file__).with_name("questions.py")
)
_module = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(_module)
question = _module.question

TOPICS = topics()


@st.composite
def made_items(draw):
    topic = draw(st.sampled_from(TOPICS))
    tier = draw(st.sampled_from(sorted(topic.spaces)))
    return topic.item(tier, draw(st.integers(0, len(topic.spaces[tier]) - 1)))


def solved_number(key):
    """Return the number of a key such as x = 7, or None."""
    match key:
        case t.Relation(t.Sym(), (("=", right),)) if not t.symbols(right):
            return right
    return None


def whole_ratio(key):
    return isinstance(key, t.Ratio) and isinstance(key.parts[0], t.Int)


def plain_number(key):
    number = key.of if isinstance(key, t.Neg) else key
    return isinstance(number, t.Int) or (isinstance(key, t.Frac | t.Mixed) and not t.symbols(key))


@cache
def first_own(topic, tier):
    """Return the first of a tier's own questions; the others are not laid out for it."""
    own = (part for part in topic.spaces[tier].parts if part.kind is None)
    return topic.make(tier, *next(chain.from_iterable(own)))


def tiers_with(*shapes):
    """Return the tiers whose own questions begin with a key of such a shape."""
    return [
        (topic, tier)
        for topic in TOPICS
        for tier in topic.spaces
        if any(shape(first_own(topic, tier).key) for shape in shapes)
    ]


@st.composite
def items_of(draw, tiers):
    topic, tier = draw(st.sampled_from(tiers))
    return topic.item(tier, draw(st.sampled_from(topic.spaces[tier].own)))


NUMBERS = tiers_with(solved_number, plain_number)
LETTERS_OR_RATIOS = tiers_with(solved_number, whole_ratio)


def test_the_tiers_are_of_many_topics():
    assert len({topic.strand for topic, _ in NUMBERS}) > 6
    assert len(LETTERS_OR_RATIOS) > 30


def written(node):
    return node.text if isinstance(node, t.Label) else line(node, pence="p" not in t.symbols(node))


SPELLINGS = [
    lambda text: text,
    lambda text: f"  {text}. ",
    lambda text: f"= {text}",
    lambda text: f"Answer: {text}",
    lambda text: text.replace("×", "*").replace("-", "−"),
    lambda text: re.sub(r"(\d+) (\d+/\d+)", r"\1 and \2", text),
    lambda text: re.sub(r"√(\d+)", r"sqrt(\1)", text),
    lambda text: re.sub(r" ([-+:=<>≤≥]) ", r"\1", text),
    lambda text: text.replace("≤", "<=").replace("≥", ">="),
    lambda text: re.sub(r"\^([23])(?!\d)", lambda found: " ²³"[int(found[1]) - 1], text),
]


@settings(max_examples=cases(75, 800), deadline=None)
@given(made_items(), st.sampled_from(SPELLINGS))
def test_a_key_in_another_spelling_is_right(item, spelling):
    wanted = Verdict.UNREADABLE if item.form == "drawing" else Verdict.RIGHT
    assert mark(item, spelling(written(item.key))).verdict is wanted


@settings(max_examples=cases(40, 400), deadline=None)
@given(items_of(NUMBERS), st.integers(2, 9))
def test_a_chain_or_an_equation_that_ends_in_the_key_is_right(item, n):
    match item.key:
        case t.Relation(t.Sym(name), (("=", right),)) if not t.symbols(right):
            shown = [f"{n}{name} = {line(number_node(n * exact(right)))}", written(item.key)]
            texts = [", ".join(shown), "\n".join(shown), " so ".join(shown)]
            texts.append(f"{line(right)} = {name}")
        case key if plain_number(key):
            before = f"{line(number_node(exact(item.key) - n))} + {n}"
            texts = [f"{before} = {written(item.key)}", f"{before}\n= {written(item.key)}"]
        case _:
            assume(False)
    for text in texts:
        assert mark(item, text).verdict is Verdict.RIGHT, text


@settings(max_examples=cases(60, 600), deadline=None)
@given(made_items())
def test_a_likely_mistake_is_never_right(item):
    for slip in item.slips:
        assert mark(item, written(slip.wrong)).verdict is not Verdict.RIGHT
        if same(slip.wrong, item.key):
            continue
        for first, other in permutations((item.key, slip.wrong)):
            verdict = mark(item, f"{written(first)} or {written(other)}").verdict
            # A root said again is no other answer: x = 5 or x = −4 or x = 5.
            again = isinstance(item.key, t.Either) and answers_in(slip.wrong) <= answers_in(
                item.key
            )
            assert (verdict is Verdict.RIGHT) == again


def answers_in(node):
    return {line(part) for part in (node.parts if isinstance(node, t.Either) else (node,))}


@settings(max_examples=cases(40, 400), deadline=None)
@given(
    items_of(LETTERS_OR_RATIOS),
    st.integers(1, 99),
    st.sampled_from(["{0}, {1}", "{1}, {0}", "{1}\n{0}"]),
)
def test_two_values_for_one_letter_are_not_right(item, n, joined):
    match item.key:
        case t.Relation(t.Sym(name), (("=", right),)) if not t.symbols(right):
            other = f"{name} = {line(number_node(exact(right) + n))}"
            marked = mark(item, joined.format(written(item.key), other))
            assert marked.verdict is not Verdict.RIGHT
        case t.Ratio(parts) if isinstance(parts[0], t.Int):
            assume(n % parts[0].n)
            other = line(t.Ratio((t.Int(parts[0].n + n), *parts[1:])))
            assert mark(item, f"{other} or {written(item.key)}").verdict is not Verdict.RIGHT
        case _:
            assume(False)


PAIR = question(
    "x = 7, y = 3", "roots", "Solve {x + y = 10} and {y = x - 4}.", lambda m: Solve(tuple(m))
)
CHAIN = question("-2 < x ≤ 3", "inequality", "Solve {-4 < 2x ≤ 6}.")
SUBJECT = question("x = y - 7", "subject", "Make {x} the subject of {y = x + 7}.")
TERM = question("4n + 1", "nth-term", "Find the nth term of {5, 9, 13}.")


@pytest.mark.parametrize(
    ("item", "typed"),
    [
        (PAIR, "x = 7, y = 3 or x = 6, y = 3"),
        (PAIR, "x = 6, y = 3\nx = 7, y = 3"),
        (CHAIN, "-1 < x ≤ 3\n-2 < x ≤ 3"),
        (SUBJECT, "x = y - 9, x = y - 7"),
        (TERM, "8n + 1\n4n + 1"),
    ],
)
def test_an_earlier_answer_that_differs_takes_the_answer_back(item, typed):
    assert mark(item, typed).verdict is Verdict.WRONG


@pytest.mark.parametrize(
    ("item", "typed"),
    [
        (PAIR, "y = x - 4, x = 7, y = 3"),
        (SUBJECT, "y - 7 = x\nx = y - 7"),
        (TERM, "4n\n4n + 1"),
        (CHAIN, "x > -2, x ≤ 3\n-2 < x ≤ 3"),
    ],
)
def test_a_step_on_the_way_is_no_other_answer(item, typed):
    assert mark(item, typed).verdict is Verdict.RIGHT


SHARED = question(
    "12, 8",
    "list",
    "Red and white beads are in the ratio {3 : 2}. Share {20}.",
    lambda m: Find(m[0]),
)


@pytest.mark.parametrize(
    ("typed", "verdict"),
    [
        ("red 12, white 8", Verdict.RIGHT),
        ("white 8, red 12", Verdict.RIGHT),
        ("8 white and 12 red", Verdict.RIGHT),
        ("red 8, white 12", Verdict.WRONG),
        ("white 12, red 8", Verdict.WRONG),
        ("red 12, red 8", Verdict.UNREADABLE),
        ("R: 12, W: 8", Verdict.RIGHT),
        ("W: 8, R: 12", Verdict.RIGHT),
        ("R: 8, W: 12", Verdict.WRONG),
    ],
)
def test_amounts_with_their_names_may_stand_in_any_order(typed, verdict):
    assert mark(SHARED, typed).verdict is verdict


@pytest.mark.parametrize(
    ("key", "prompt", "typed", "verdict"),
    [
        ("90", "How many minutes does the drive take?", "1 h 30 min", Verdict.WRONG_FORM),
        ("90", "How many minutes does the drive take?", "1 hour and 20 minutes", Verdict.WRONG),
        ("450", "What does it cost, in pence?", "£4 and 50p", Verdict.WRONG_FORM),
        ("4.50", "How many pounds does it cost?", "£4 and 50p", Verdict.RIGHT),
        ("4.50", "How many pounds does it cost?", "£4 and 5p", Verdict.WRONG),
        ("250", "How long is it, in centimetres?", "2 m and 50 cm", Verdict.WRONG_FORM),
    ],
)
def test_an_amount_in_other_units_than_the_question_names(key, prompt, typed, verdict):
    marked = mark(question(key, "value", prompt), typed)
    assert marked.verdict is verdict
    assert (verdict is Verdict.WRONG_FORM) == marked.says.startswith("Right value: give it in")


PARTS = question("7 : 15 : 3", "ratio", "Combine {7 : 15} and {15 : 3}.", lambda m: Find(m[0]))
FROM_TWO = question("9 : 14", "ratio", "{3 : 4} and {6 : 7}. Find it.", lambda m: Find(m[0]))


def test_a_ratio_of_as_many_parts_is_another_answer_unless_the_question_has_several():
    assert mark(PARTS, "8 : 15 : 3\n7 : 15 : 3").verdict is Verdict.WRONG
    assert mark(PARTS, "7 : 15\n15 : 3\n7 : 15 : 3").verdict is Verdict.RIGHT
    assert mark(FROM_TWO, "9 : 12\n12 : 14\n9 : 14").verdict is Verdict.RIGHT


def test_a_fraction_for_a_rounded_decimal_is_told_the_places():
    rounded = question(
        "0.04",
        "rounded",
        "Round {0.0419} to 1 significant figure.",
        lambda m: Round(m[0], "figures", 1),
    )
    says = mark(rounded, "1/25").says
    assert says == "Right value: give it as a decimal, to 1 significant figure."


@pytest.mark.parametrize("typed", ["57 and 1/7%", "57 & 1/7 %", "57 1/7%"])
def test_a_mixed_number_of_per_cent(typed):
    assert mark(question("57 1/7%", "percentage"), typed).verdict is Verdict.RIGHT


@pytest.mark.parametrize("typed", ["60m^2", "60 m^2", "60m²", "60m2", "60 square metres"])
def test_square_metres_close_up(typed):
    assert mark(question("60 m^2", "quantity"), typed).verdict is Verdict.RIGHT


@pytest.mark.parametrize(
    "answer", ["5 km\u017f", "\u017feven", "5 m\u0131n", "one \u017fixth", "3 \u212ag"]
)
def test_a_letter_that_passes_for_another_is_no_stumbling_block(answer):
    for item in (
        question("7", "integer"),
        question("1/6", "fraction"),
        question("3 kg", "quantity"),
    ):
        assert mark(item, answer).verdict in Verdict
