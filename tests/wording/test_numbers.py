"""Numbers, signs and quantities among the words of a prompt are seen."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.notation import tree as t
from itembank.wording.sentences.numbers_said import (
    CARDINALS,
    counting_words,
    numbers_said,
    strange_signs,
)
from itembank.wording.sentences.prompt import index_of, sentences, slot, slotted


@pytest.mark.parametrize(
    ("words", "values"),
    [
        ("He buys 12 and then 3.5 more.", [12, Fraction(7, 2)]),
        ("Half of the rest and a quarter of that.", [Fraction(1, 2), Fraction(1, 4)]),
        ("Twice as many, three times as long.", [2, 3]),
        ("A third of the bed; the third bed.", [Fraction(1, 3)]),
        ("Give it to 2 decimal places, or to the nearest 10.", []),
        ("to three significant figures", []),
        ("The two halls cost the same.", []),
        ("They start before six.", []),
        ("Six start before it.", [6]),
        ("Write it in the form 1 : n.", []),
        ("a dozen eggs", [12]),
        ("The 4th term", [4]),
    ],
)
def test_numbers_outside_braces(words, values):
    assert [said.value for said in numbers_said(words)] == values


@given(st.sampled_from(sorted(CARDINALS.keys() - {"one"})), st.sampled_from(["", "of them "]))
def test_every_number_word_is_seen_wherever_it_stands(word, more):
    assert counting_words(f"There are {word} {more}left.") == word
    assert any(said.text == word for said in numbers_said(f"There are {word} {more}left."))


@given(st.integers(0, 10**6))
def test_every_figure_is_seen(number):
    assert numbers_said(f"It takes {number} more.")[0].value == number


def test_pairs_count_only_where_single_ones_are_asked_for():
    assert numbers_said("He buys some pairs of caps. What does he pay?") == []
    assert [said.value for said in numbers_said("He has a pair of caps. How many caps?")] == [2]


@pytest.mark.parametrize("sign", list("+×÷=<>≤≥√^%£€$°*/"))
def test_a_sign_outside_braces_is_seen(sign):
    assert sign in strange_signs(f"Work out {slot(0)} {sign} {slot(1)}")


@pytest.mark.parametrize("minus", ["-", "−", "–"])
def test_a_minus_outside_braces_is_seen_and_a_hyphen_is_none(minus):
    assert strange_signs(f"Work out 10 {minus} {slot(0)}")
    assert strange_signs(f"Work out {slot(0)} {minus} {slot(1)}")
    assert not strange_signs(f"A well{minus}kept bed holds a {slot(0)}-litre tank")


@given(st.lists(st.one_of(st.text(" abc", max_size=5), st.sampled_from([t.Int(3), t.Sym("x")]))))
def test_each_piece_of_mathematics_has_a_slot_of_its_own(runs):
    said = slotted(runs)
    nodes = [run for run in runs if not isinstance(run, str)]
    assert list(said.nodes) == nodes
    found = [index_of(char) for char in said.text if ord(char) >= ord(slot(0))]
    assert found == list(range(len(nodes)))


def test_sentences_end_where_teachers_end_them():
    said = "Round it to 1 d.p. Is it 3.5 kg? Yes, e.g. at 9 a.m.; then stop!"
    assert sentences(said) == [
        "Round it to 1 dp",
        "Is it 3.5 kg",
        "Yes, for example at 9 am",
        "then stop",
    ]
