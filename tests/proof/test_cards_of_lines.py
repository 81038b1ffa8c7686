"""Cards that are equations of lines, or rules and the terms of sequences: held by both roads."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.items.asks import Match, OddOneOut
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.exact.cards import find_odd, find_pairs, worth_the_same
from itembank.proof.sympy.sympy_cards import odd_one_out, pairs, same
from itembank.wording.tasks.other_kinds.kinds_said import KindUnread, kind_said

ROADS = (worth_the_same, same)
NUMBERS = st.integers(-9, 9)


def side(x: int, y: int, rest: int) -> str:
    """Return a side of an equation: terms that are nothing are left out."""
    terms = [f"{number} * {letter}" for number, letter in ((x, "x"), (y, "y")) if number]
    return " + ".join([*terms, str(rest)]).replace("+ -", "- ") or "0"


@given(NUMBERS, NUMBERS.filter(bool), NUMBERS, NUMBERS, NUMBERS, NUMBERS, st.sampled_from([-3, 2]))
def test_an_equation_is_of_the_same_line_whatever_is_added_and_multiplied(a, b, c, p, q, r, by):
    # ax + by + c = 0, with px + qy + r added to both sides of a multiple of it; no term is nothing.
    if 0 in (a, c, p, q, r) or not all((by * a + p, by * b + q, by * c + r)):
        return
    plain = parse(f"{side(a, b, c)} = 0")
    other = parse(f"{side(by * a + p, by * b + q, by * c + r)} = {side(p, q, r)}")
    apart = parse(f"{side(a, b, c + 1)} = 0")
    for road in ROADS:
        assert road(plain, other)
        assert not road(plain, apart)


@given(NUMBERS.filter(bool), NUMBERS.filter(bool), st.integers(0, 3), st.integers(3, 6))
def test_a_rule_is_worth_its_first_terms_and_not_those_from_another_place(d, b, square, count):
    rule = parse(f"{d} * n + {b} + {square} * n^2".replace("+ -", "- "))
    terms = [d * n + b + square * n * n for n in range(count + 1)]
    right, late = (t.Listing(tuple(map(t.num, part))) for part in (terms[1:], terms[:-1]))
    for road in ROADS:
        assert road(rule, right)
        assert road(rule, late) == (terms[1:] == terms[:-1])


@pytest.mark.parametrize(
    ("standard", "slope_form"),
    [
        # Worked in OpenStax, Elementary Algebra, chapter 4, on slope and intercept (from memory).
        ("x + 2y = 6", "y = -(1/2)x + 3"),
        ("4x - 3y = 12", "y = (4/3)x - 4"),
        # The line through (3, 0) and (0, 4), by its intercepts: a classroom standard, no source.
        ("x/3 + y/4 = 1", "y = 4 - (4/3)x"),
    ],
)
def test_published_rearrangements_to_the_standard_form(standard: str, slope_form: str) -> None:
    wrong = parse(slope_form.replace("y =", "y = 1 +"))
    for road in ROADS:
        assert road(parse(standard), parse(slope_form))
        assert not road(parse(standard), wrong)


@pytest.mark.parametrize(
    ("rule", "terms"),
    [
        ("n^2", "1, 4, 9, 16"),
        ("n(n + 1)/2", "1, 3, 6, 10, 15"),  # triangular numbers: a classical formula
        ("2n - 1", "1, 3, 5, 7"),
        ("2^n", "2, 4, 8, 16"),
    ],
)
def test_classical_rules_and_their_first_terms(rule: str, terms: str) -> None:
    for road in ROADS:
        assert road(parse(rule), parse(terms))


@pytest.mark.parametrize(
    ("first", "other"),
    [
        ("y = x^2", "y = x"),
        ("x * y = 4", "y = x"),
        ("n", "1, 2"),
        ("1, 2, 3", "1, 2, 3, 4"),
        ("m + 1", "2, 3, 4"),
        ("7", "7, 7, 7"),
    ],
)
def test_what_is_no_line_and_no_rule_is_held_by_neither_road(first: str, other: str) -> None:
    for road in ROADS:
        with pytest.raises(NotExact):
            road(parse(first), parse(other))


def test_pairs_and_the_odd_one_are_found_by_both_roads_and_other_keys_are_not() -> None:
    ask = Match(
        (parse("3n + 2"), parse("2n + 3"), parse("3n - 2")),
        (parse("5, 7, 9"), parse("2, 5, 8"), parse("5, 8, 11"), parse("1, 4, 7")),
    )
    right, wrong = '"A–R", "B–P", "C–S"', '"A–Q", "B–P", "C–S"'
    for road in (find_pairs, pairs):
        assert road(ask, parse(right)).fault == ""
        assert road(ask, parse(wrong)).fault
    odd = OddOneOut(tuple(map(parse, ("2y = 4x + 6", "y - 2x = 3", "y = 3x + 2", "y = 2x + 3"))))
    for road in (find_odd, odd_one_out):
        assert road(odd, t.Label("C")).fault == ""
        assert road(odd, t.Label("D")).fault


def test_lines_are_equivalent_and_have_no_one_solution() -> None:
    cards = [parse(text) for text in ("2y = 4x + 6", "y = 2x + 3", "y = 3x + 2")]
    runs = ("(A) ", cards[0], "; (B) ", cards[1], "; (C) ", cards[2], ".")
    lead = "Two of these {}. Which is the odd one out? "
    assert kind_said((lead.format("are equivalent") + runs[0], *runs[1:])) == OddOneOut((*cards,))
    with pytest.raises(KindUnread):
        kind_said((lead.format("have the same value") + runs[0], *runs[1:]))


def test_expressions_in_x_and_y_are_no_lines() -> None:
    cards = [parse(text) for text in ("14x + 7xy", "7x(2 + y)", "7x(2 + 7xy)")]
    runs = ("(A) ", cards[0], "; (B) ", cards[1], "; (C) ", cards[2], ".")
    lead = "Two of these are equivalent. Which is the odd one out? "
    assert kind_said((lead + runs[0], *runs[1:])) == OddOneOut((*cards,))
    with pytest.raises(KindUnread):  # an equation among expressions
        kind_said((lead + runs[0], cards[0], "; (B) ", cards[1], "; (C) ", parse("y = 2x"), "."))


def test_a_fraction_of_a_term_is_worked_out_exactly() -> None:
    rule, terms = parse("n/3 + 1/2"), parse("5/6, 7/6, 3/2")
    assert [road(rule, terms) for road in ROADS] == [True, True]
