"""Typed answers get the verdict a fair teacher would give."""

from __future__ import annotations

import random
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.items.forms.form_rules import decimal_node, number_node, simplest_node
from itembank.items.item import Find, Item, Misconception, Slip, Tier
from itembank.items.topics.registry import find_item, find_topic, topic_ids
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import cases, drawn, each, whole

x = t.Sym("x")
ADDS = Misconception("made.adds", "adds", "Why add?")


def item(key, form, *wrong):
    slips = tuple(Slip(ADDS, node) for node in wrong)
    return Item("a.b/core/0", "a.b", Tier.CORE, ("?",), Find(key), key, form, (), slips, (), 1, ())


RIGHT = [
    (t.Mixed(1, 7, 9), "mixed", ["1 7/9", " 1 7/9. ", "１ 7/9"]),
    (t.Mixed(1, 1, 2), "simplest", ["1½", "1 1/2"]),
    (t.Dec("1", "", "7"), "decimal", ["1.7̇", "1.7...", "1.777…", "1.77..."]),
    (t.Dec("0", "1", "6"), "decimal", ["0.16̇", "0.1666..."]),
    (t.Dec("0", "", "27"), "decimal", ["0.2727...", "0.2̇7̇"]),
    (t.num(-3), "integer", ["-3", "−3", "–3"]),
    (t.frac(-3, 4), "lowest-terms", ["-3/4", "−3/4"]),
    (t.Ratio((t.Int(3), t.Int(20))), "ratio", ["3 : 20", "3:20", "3 to 20", "3∶20"]),
    (t.equals(x, t.num(5)), "solution", ["x = 5", "5", "5 = x", "X=5", "x=5."]),
    (t.relate(x, "≥", t.num(3)), "inequality", ["x>=3", "x ≥ 3", "3 ≤ x", "3<=x", "X ≥ 3"]),
    (t.Money(t.Dec("4", "50")), "money", ["£4.50", "4.50", "450p", "£ 4.50"]),
    (t.Quantity(t.Dec("4", "5"), "kg"), "quantity", ["4.5 kg", "4.5kg", "4.50 kg", "4.5"]),
    (t.Int(1200), "integer", ["1,200", "1 200", "1200", "١٢٠٠"]),
    (t.Percent(t.Int(40)), "percentage", ["40%", "40 %"]),
    (t.Listing((t.Int(10), t.Int(25))), "amounts", ["10, 25", "10 and 25", "10,25"]),
    (t.Label("Pack B"), "name", ["Pack B", "pack b", '"Pack B"']),
    (t.relate(t.frac(1, 2), "<", t.frac(2, 3)), "sign", ["1/2 < 2/3", "<", "2/3 > 1/2"]),
]


@pytest.mark.parametrize(("key", "form", "typed"), RIGHT)
def test_what_people_type_is_read(key, form, typed):
    for text in typed:
        assert mark(item(key, form), text).verdict is Verdict.RIGHT, text


@pytest.mark.parametrize(
    ("key", "form", "typed", "verdict"),
    [
        (t.frac(1, 2), "lowest-terms", "2/4", Verdict.WRONG_FORM),
        (t.Mixed(1, 7, 9), "mixed", "16/9", Verdict.WRONG_FORM),
        (t.Ratio((t.Int(3), t.Int(20))), "ratio", "6:40", Verdict.WRONG_FORM),
        (t.Percent(t.Int(40)), "percentage", "0.4", Verdict.WRONG_FORM),
        (t.Percent(t.Int(40)), "percentage", "40", Verdict.WRONG_FORM),
        (t.Ratio((t.Int(3), t.Int(20))), "ratio", "20:3", Verdict.WRONG),
        (t.Quantity(t.Int(4), "kg"), "quantity", "4 l", Verdict.WRONG),
        (t.equals(x, t.num(5)), "solution", "y = 5", Verdict.WRONG),
        (t.relate(x, "≥", t.num(3)), "inequality", "x > 3", Verdict.WRONG),
        (t.relate(x, "≥", t.num(3)), "inequality", "x ≤ 3", Verdict.WRONG),
        (t.Listing((t.Int(10), t.Int(25))), "amounts", "25, 10", Verdict.WRONG),
        (t.Int(7), "integer", "seven apples", Verdict.UNREADABLE),
        (t.Int(7), "integer", "", Verdict.UNREADABLE),
        (t.Int(7), "integer", "7/0", Verdict.WRONG),
        (t.Int(7), "integer", "9^9^9^9", Verdict.UNREADABLE),
        (t.Int(7), "integer", "9^(9^9)", Verdict.WRONG),
        (t.Int(7), "integer", "(" * 100, Verdict.UNREADABLE),
        (t.Int(7), "integer", "7" * 10_000_000, Verdict.UNREADABLE),
        (t.Int(7), "integer", "\u202e7\u0000", Verdict.RIGHT),
    ],
)
def test_other_verdicts(key, form, typed, verdict):
    assert mark(item(key, form), typed).verdict is verdict


def test_a_form_that_is_missing_is_named():
    assert "lowest terms" in mark(item(t.frac(1, 2), "lowest-terms"), "2/4").says


def test_a_known_mistake_comes_with_the_teachers_question():
    marked = mark(item(t.frac(5, 6), "simplest", t.frac(2, 5)), "4/10")
    assert marked.verdict is Verdict.KNOWN
    assert marked.misconception is ADDS
    assert marked.says == "Why add?"


@whole
@pytest.mark.parametrize("name", each(topic_ids(), 52, 2))
def test_keys_and_slips_of_every_topic_are_known(name):
    topic, rng = find_topic(name), random.Random(5)
    for tier, space in topic.spaces.items():
        for index in drawn(space, 12, rng):
            one = topic.item(tier, index)
            if one.form == "drawing":  # on paper, and looked at by the teacher
                assert mark(one, line(one.key)).verdict is Verdict.UNREADABLE
                continue
            text = line(one.key)
            spelled = [
                text,
                f"  {text} ",
                f"{text}.",
                f"= {text}" if not isinstance(one.key, t.Label) else text.strip('"'),
                text.replace("-", "−").replace(" : ", ":").replace(", ", ","),
                _full_width(text),
                text.replace(", ", " and ").replace(" : ", " to ").replace(" = ", "="),
            ]
            for typed in spelled:
                assert mark(one, typed).verdict is Verdict.RIGHT, (one.address, typed)
            if isinstance(one.key, t.Relation) and one.key.rest[0][0] == "=":
                assert mark(one, line(one.key.rest[0][1])).verdict is Verdict.RIGHT, one.address
            for slip in one.slips:
                marked = mark(one, line(slip.wrong))
                assert marked.verdict is Verdict.KNOWN, (one.address, line(slip.wrong))


def _full_width(text: str) -> str:
    return "".join(chr(ord(c) + 0xFEE0) if c.isdigit() and c.isascii() else c for c in text)


values = st.fractions(min_value=-50, max_value=50, max_denominator=60)


@settings(max_examples=cases(40, 400))
@given(values, values)
def test_equality_of_value_agrees_with_flint(a, b):
    flint = pytest.importorskip("flint")
    equal = flint.fmpq(a.numerator, a.denominator) == flint.fmpq(b.numerator, b.denominator)
    for spell in (number_node, simplest_node, decimal_node):
        verdict = mark(item(number_node(b), "number"), line(spell(a))).verdict
        assert (verdict in (Verdict.RIGHT, Verdict.WRONG_FORM)) == bool(equal)


@settings(max_examples=cases(60, 600))
@given(st.text(max_size=60), st.sampled_from(["core", "challenge"]))
def test_nothing_typed_raises(text, tier):
    for name in ("ratio.share", "equations.inequalities", "ratio.best-value", "fractions.order"):
        assert mark(find_item(f"{name}/{tier}/3"), text).verdict in Verdict


def test_wrong_values_are_wrong():
    assert mark(item(number_node(Fraction(5, 6)), "number"), "5/7").verdict is Verdict.WRONG
