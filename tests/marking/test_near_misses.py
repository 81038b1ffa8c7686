"""What stands around an answer changes no verdict, and what changes the answer does.

Numbers of questions, times told in words, coordinates by name, decimals with dots, signs beside
a choice: for questions of every topic, so that each is mended as a kind.
"""

from __future__ import annotations

import importlib.util
from fractions import Fraction
from pathlib import Path

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from itembank.items.asks import Choose, Round
from itembank.items.item import Find, Item, Tier
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.notation.value import exact_or_none
from tests.depth import cases
from tests.marking.test_sound import items_of, made_items, tiers_with, written

_spec = importlib.util.spec_from_file_location(
    "questions", Path(__file__).with_name("questions.py")
)
_module = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(_module)
question = _module.question

PARTS = ("a) ", "b)", "(c) ", "1) ", "Q3: ", "q 4) ", "Question 2. ", "Ans. ")
POINTS = tiers_with(lambda key: isinstance(key, t.Listing) and not t.symbols(key))
NAMES = tiers_with(lambda key: isinstance(key, t.Label))


@settings(max_examples=cases(75, 800), deadline=None)
@given(made_items(), st.sampled_from(PARTS))
def test_the_number_of_the_question_changes_no_verdict(item, part):
    # A line or a pair begins with a number or letter of its own; (c) c may be a product.
    assume(not marking_of(item.ask).reads and item.form != "drawing")
    letters = {letter.casefold() for run in (item.key, *item.prompt) if not isinstance(run, str)
               for letter in t.symbols(run)}  # fmt: skip
    assume(not letters & {"q", "c"})
    key = written(item.key)
    assume(not (isinstance(item.key, t.Label) and part == "Ans. " and key[0].islower()))
    for slip in item.slips[:1]:
        wrong = written(slip.wrong)
        assert mark(item, part + wrong).verdict is mark(item, wrong).verdict
    assert mark(item, part + key).verdict is Verdict.RIGHT


@settings(max_examples=cases(40, 400), deadline=None)
@given(items_of(POINTS))
def test_coordinates_by_name_are_each_held_to_their_own(item):
    assume(item.form == "point" and len(set(item.key.parts)) == len(item.key.parts) == 2)
    first, other = map(written, item.key.parts)
    assert mark(item, f"y = {other}, x = {first}").verdict is Verdict.RIGHT
    assert mark(item, f"x = {first}, y = {other}").verdict is Verdict.RIGHT
    for text in (f"y = {first}, x = {other}", f"x = {other}, y = {first}"):
        assert mark(item, text).verdict in (Verdict.WRONG, Verdict.KNOWN), text


SIGNS = ("-{}", "√{}", "1/{}", "2 × {}", "{} + 1", "{}/2", "{} × 3", "{}-1", "{} - 1", "{} ÷ 4")


@settings(max_examples=cases(60, 600), deadline=None)
@given(items_of(NAMES), st.sampled_from(SIGNS))
def test_a_choice_with_a_sign_beside_it_is_no_answer(item, sign):
    assume(isinstance(item.key, t.Label) and item.key.text.replace(" ", "").isalpha())
    assert mark(item, sign.format(item.key.text)).verdict is not Verdict.RIGHT


HOURS = ("", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
         "eleven", "twelve")  # fmt: skip


def in_words(minutes: int) -> str:
    """Return a time after midnight as people say it, with am or pm."""
    hour, past = divmod(minutes, 60)
    half = "am" if hour < 12 else "pm"
    if not past:
        return f"{HOURS[(hour - 1) % 12 + 1]} o'clock {half}"
    if past > 30:
        hour, past, side = hour + 1, 60 - past, "to"
    else:
        side = "past"
    said = {15: "quarter", 30: "half"}.get(past, f"{past} minutes")
    return f"{said} {side} {HOURS[(hour - 1) % 12 + 1]} {half}"


def at(minutes: int) -> Item:
    key = t.ClockTime(*divmod(minutes, 60))
    return Item("made:time", "made.time", Tier.CORE, ("When is it?",), Find(key), key, "value",
                (), (), (), 1, (), ())  # fmt: skip


@settings(max_examples=cases(150, 1000), deadline=None)
@given(st.integers(0, 1439), st.integers(0, 1439))
def test_a_time_in_words_is_that_time_and_no_other(minutes, other):
    said = in_words(minutes)
    # 5 to 12 pm may be a slip for the morning.
    doubtful = " to twelve" in said
    assert mark(at(minutes), said).verdict is (Verdict.UNREADABLE if doubtful else Verdict.RIGHT), (
        said
    )
    if other != minutes:
        assert mark(at(other), said).verdict is not Verdict.RIGHT
        assert mark(at(other), said[:-3]).verdict is not Verdict.RIGHT or (
            other % 720 == minutes % 720
        )


@settings(max_examples=cases(150, 1000), deadline=None)
@given(
    st.integers(1, 98), st.integers(2, 99), st.integers(1, 6), st.sampled_from(["..", "...", "…"])
)
def test_a_decimal_cut_off_with_dots_is_never_called_wrong(top, bottom, places, dots):
    worth = Fraction(top, bottom)
    key = f"{worth.numerator}/{worth.denominator}"
    item = question(key, "number", "Work out {1 + 1}.", accept=("any-form",))
    assert exact_or_none(item.key) == worth
    cut = f"{int(worth)}.{int(worth % 1 * 10**places):0{places}d}"
    verdict = mark(item, cut + dots).verdict
    block = any(cut[-size:] == cut[-2 * size : -size] for size in range(1, places // 2 + 1))
    if not (block and dots != ".."):
        assert verdict not in (Verdict.WRONG, Verdict.KNOWN), cut + dots
    # A digit further away it is another number, however it goes on.
    far = f"{int(worth) + 1}.{cut.partition('.')[2]}{dots}"
    assert mark(item, far).verdict is not Verdict.RIGHT


MODIFIERS = (
    "≠ {}", "!= {}", "not {}", "twice {}", "{} twice", "-{}", "2{}", "±{}", "half of {}",
    "{} or 99", "{}\n99", "99\n{}", "{}, 99", "more than {}", "at least {}", "{} squared",
    "between {} and 99", "{} r 1", "1/({})", "it isn't {}", "99 not {}", "{} 99",
)  # fmt: skip


@settings(max_examples=cases(100, 1500), deadline=None)
@given(made_items(), st.sampled_from(MODIFIERS))
def test_what_changes_an_answer_makes_it_another(item, modifier):
    key = item.key
    assume(not isinstance(key, t.Label) and not marking_of(item.ask).reads)
    assume(item.form != "drawing" and marking_of(item.ask).unmet is None)
    # Minus 0 and twice 0 are 0, and ±3 is what a root of 9 may be; x = 3 twice is a double root.
    assume(not any(part == t.Int(0) for part in t.walk(key)))
    assume(modifier != "{} twice" or not marking_of(item.ask).repeated)
    assume(not (modifier == "±{}" and isinstance(key, t.Either)))
    marked = mark(item, modifier.format(written(key)))
    assert marked.verdict is not Verdict.RIGHT, (item.address, modifier, marked)


def test_one_number_said_to_be_another_is_no_rounding():
    item = question("2.50", "rounded", "Round {2.499} to 2 decimal places.",
                    lambda maths: Round(maths[0], "places", 2))  # fmt: skip
    assert mark(item, "2.499 = 2.50").verdict is Verdict.RIGHT
    for text in ("7 = 2.50", "2.6 = 2.50"):
        assert mark(item, text).verdict is Verdict.WRONG
        assert mark(item, text).says == f"{text} is not true: the two sides are not worth the same."


def test_a_sign_beside_a_choice_is_told():
    prompt = "Which is best? Pack A: {300} g for {2}. Pack B: {200} g for {3}."
    item = question('"Pack A"', "name", prompt, lambda maths: Choose(
        (("Pack A", maths[1]), ("Pack B", maths[3])), "least"))  # fmt: skip
    marked = mark(item, "-A")
    assert marked.verdict is Verdict.UNREADABLE
    assert marked.says == "A sign stands beside the choice: give the name of the choice alone."
    assert mark(item, "A - it costs less").verdict is Verdict.RIGHT
