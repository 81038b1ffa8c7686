"""Wrong answers are told apart: one answer of two mistakes is never put down to one of them."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from itembank.items.forms.form_rules import number_node
from itembank.items.item import Misconception, Slip
from itembank.items.topics.registry import find_item
from itembank.items.wrong_answers import causes, either, slips, told_apart
from itembank.marking.mark import mark
from itembank.notation import tree as t
from itembank.notation.line import line

IDS = st.from_regex(r"(?:[a-d]{1,2}\.)?[a-d]{1,2}(?:-[a-d])?(?:\.[0-9a-f]{4})?", fullmatch=True)


def mistake(name, ask="Why?"):
    return Misconception(name, f"does {name}", ask)


@given(st.lists(IDS, min_size=1, max_size=4))
def test_an_id_of_several_names_each_of_them(names):
    found = either(*map(mistake, names))
    assert list(causes(found.id)) == list(dict.fromkeys(names))
    assert all(f"does {name}" in found.name for name in names)


@given(st.lists(st.tuples(IDS, st.integers(0, 4)), max_size=6))
def test_no_answer_stands_twice_and_no_mistake_is_lost(pairs):
    given_slips = [Slip(mistake(name), t.Int(n)) for name, n in pairs]
    found = told_apart(given_slips)
    assert [slip.wrong for slip in found] == list(dict.fromkeys(t.Int(n) for _, n in pairs))
    assert {(cause, slip.wrong) for slip in found for cause in causes(slip.misconception.id)} == {
        (name, t.Int(n)) for name, n in pairs
    }


def test_a_mistake_with_an_answer_of_its_own_stays_as_it_is():
    slip = Slip(Misconception("m.one", "does this", "Why this?"), t.Int(1))
    assert told_apart([slip, Slip(mistake("m.other"), t.Int(2))])[0] == slip


def test_a_question_both_mistakes_ask_is_asked_once():
    assert either(mistake("m.one"), mistake("m.other")).ask == "Why?"


def test_numbers_are_written_and_what_shows_nothing_is_left_out():
    one, other, third = map(mistake, ("m.a", "m.b", "m.c"))
    found = slips((one, Fraction(6, 4)), (other, None), (third, t.Label("A")))
    assert [line(slip.wrong) for slip in found] == ["1 1/2", '"A"']
    found = slips((one, Fraction(6, 4)), write=number_node)
    assert [line(slip.wrong) for slip in found] == ["3/2"]


def test_only_a_key_that_is_named_keeps_a_mistake_out():
    wrongs = ((mistake("m.a"), 3), (mistake("m.b"), 4))
    assert [slip.wrong for slip in slips(*wrongs)] == [t.Int(3), t.Int(4)]
    assert [slip.wrong for slip in slips(*wrongs, key=t.Int(3))] == [t.Int(4)]


def test_marking_names_both_mistakes_of_one_answer():
    # −2(1 − x) and the like: half a bracket multiplied, and a lost sign, meet in one answer.
    item = find_item("equations.brackets/challenge/1860")
    slip = next(slip for slip in item.slips if len(causes(slip.misconception.id)) == 2)
    marked = mark(item, line(slip.wrong))
    assert marked.misconception is not None
    assert "multiplies only the first term" in marked.misconception.name
    assert "sign of the last term wrong" in marked.misconception.name
    assert causes(marked.misconception.id) == (
        "equations.first-term-only",
        "equations.bracket-sign",
    )
