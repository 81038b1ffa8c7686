"""Stories read a second time, by their words alone: what they come to, and when nothing is said.

The stories and their answers are our own, worked by hand.
"""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.maths import read_maths
from itembank.wording.meaning.second_reading import READERS, read_again, second_reading_fault
from itembank.wording.meaning.told.tale import Tale


def values(prompt: str) -> set[Fraction]:
    """Return every value that a reader finds in a story; base units."""
    item = BankItem(id="a-1", tier="core", prompt=prompt, key="1")
    tale = Tale(read_maths(item).runs)
    readings = [reader(tale) for reader in READERS]
    return {value for reading in readings if reading is not None for value in reading.values}


@pytest.mark.parametrize(
    ("prompt", "value"),
    [
        ("A fare of {£5} goes up by {20%}. What is the new fare?", 6),
        ("A fare goes up by {20%} to {£6}. What was it before?", 5),
        ("Jo owes {£20}. She pays back {£5} and borrows {£3}. How much does she owe now?", 18),
        ("Jo owes {£20}. She paid back {£5} and borrowed {£3}. How much does she owe now?", 18),
        ("Jo owes {£20}. She paid back {£5} and then spent {£3}. How much does she owe now?", 18),
        ("Jo has {£20} and no debt. She spent {£3}. How much does she have now?", 17),
        ("Jo has {£20} and owes Al nothing. She earned {£3}. How much does she have now?", 23),
        ("Al owes Jo money. Jo has {£20}. She spent {£3}. How much does she have now?", 17),
        ("Her debt stands at {£20}. She borrowed {£3}. How much does she owe now?", 23),
        ("A hat costs {£30}. It is reduced by {10%}. How much is saved?", 3),
        ("{1/4} of the {20} boats are red. How many boats are not red?", 15),
        ("{4} pens cost {£3}. What do {10} pens cost?", Fraction(15, 2)),
        ("{4} men dig a pit in {6} days. How many days would {8} men take?", 3 * 86_400),
        ("A tram goes {30 km} in {45 min}. What is its average speed?", Fraction(100, 9)),
        (
            "A map has a scale of {1 : 500}. A path is {3 cm} on the map. How long is it really?",
            15,
        ),
        ("Ann and Ben share {£40} in the ratio {3 : 5}. How much does Ben get?", 25),
        ("The nth term of a sequence is {4n - 1}. What is the {6}th term?", 23),
        ("The nth term of a sequence is {4n - 1}. Which term is {39}?", 10),
        ("A sequence starts at {2} and goes up by {5} each time. What is the {4}th term?", 17),
        ("I think of a number, add {3} and double it. The answer is {20}. What is my number?", 7),
        ("Three consecutive numbers add up to {33}. What is the largest?", 12),
        ("Eve is {9}. How old will she be in {6} years?", 15),
        ("It is {-2} degrees. It falls by {5} degrees. What is the temperature now?", -7),
        ("A lawn is {6 m} long and {4 m} wide. What is its perimeter?", 20),
        ("The mean of {5} numbers is {8}. What is their total?", 40),
        ("Jo buys {3} mugs at {£4} each and pays with {£20}. How much change does she get?", 8),
        ("A play starts at {19:30} and lasts {90 min}. When does it end?", 75_600),
        (
            "Tea is {2} parts milk to {5} parts water. How much milk is in {14} litres of tea?",
            Fraction(4, 1000),
        ),
    ],
)
def test_a_story_of_a_common_shape_comes_to_its_answer(prompt: str, value: Fraction) -> None:
    assert values(prompt) == {Fraction(value)}


@pytest.mark.parametrize(
    "prompt",
    [
        "A shop sells {12} pens and {30} books. How many things does it sell?",
        "A price of {£40} changes by {10%}. What is the new price?",
        "Two clubs play {6} games. How many goals are there?",
        "A garden has {3} beds. Each has a different shape. What is the area of the second?",
    ],
)
def test_a_story_that_is_not_known_whole_says_nothing(prompt: str) -> None:
    assert values(prompt) == set()


@given(st.integers(1, 900), st.integers(1, 90))
def test_a_price_before_a_rise_is_the_price_that_rose(pounds: int, percent: int) -> None:
    (after,) = values(f"A fee of {{£{pounds}}} rises by {{{percent}%}}. What is the new fee?")
    assert after == pounds * (1 + Fraction(percent, 100))
    if (after * 100).denominator == 1:
        shown = f"{float(after):.2f}"
        assert values(f"A fee rises by {{{percent}%}} to {{£{shown}}}. What was the old fee?") == {
            Fraction(pounds)
        }


@given(st.integers(2, 40), st.integers(2, 12), st.integers(1, 40))
def test_a_term_stands_in_the_place_that_is_found_for_it(start: int, step: int, place: int) -> None:
    rule = f"The nth term of a sequence is {{{step}n + {start}}}."
    (term,) = values(f"{rule} What is the {{{place}}}th term?")
    assert values(f"{rule} Which term is equal to {{{term}}}?") == {Fraction(place)}


@pytest.mark.parametrize(
    "prompt",
    [
        "All prices are reduced by {100%}. A bag costs {£10} in the sale. What did it cost before?",
        "A bus goes {9 km} in {0 h} and back in {0 h}. What is its average speed?",
        "Ann and Ben share {£40} in the ratio {0 : 0}. How much does Ben get?",
    ],
)
def test_a_story_with_a_nought_to_divide_by_is_not_known(prompt: str) -> None:
    runs = read_maths(BankItem(id="a-1", tier="core", prompt=prompt, key="1")).runs
    assert "another way" not in second_reading_fault(runs, frozenset({Fraction(1)}))
    assert not read_again(runs, frozenset({Fraction(1)}))
