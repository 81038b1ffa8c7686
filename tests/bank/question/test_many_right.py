"""Questions of a bank that many answers are right for: what is proved, and what is not.

Every outcome was judged by hand. No condition of the words may be dropped: where one is not
understood, a person decides.
"""

from pathlib import Path

import pytest

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.proof.prove import judge_entry
from itembank.bank.question.as_item import as_item
from itembank.bank.question.twins import twins
from itembank.bank.read.item_checks import checked_maths
from itembank.items.asks import kind_of
from itembank.marking.mark import mark
from itembank.proof.outcome import State


def entry(prompt: str, key: str, id: str = "a-1", **rest: object) -> Entry:
    item = BankItem.model_validate({"id": id, "tier": "core", "prompt": prompt, "key": key, **rest})
    return Entry(item, "number.try", "try", Path("number.try.toml"), 1)


RIGHT = [
    ("Write a fraction between {1/3} and {1/2}.", "2/5"),
    ("Write a fraction between {1/2} and {1/3}.", "4/10"),
    ("Write down a pair of factors of {24}.", "4, 6"),
    ("Write down a factor pair of {36}.", "6, 6"),
    ("Write a multiple of {6} between {40} and {50}", "48"),
    ("Give a prime number between {20} and {30}", "29"),
    ("Write a decimal between {0.3} and {0.31}", "0.305"),
    ("Write an even number greater than {7}", "8"),
    ("Write an odd multiple of {5} that is less than {50}.", "35"),
    ("Write a number that is both a multiple of {3} and a square number.", "36"),
    ("Write two different prime numbers that add up to {20}.", "3, 17"),
    ("Give an example of a square number that is even.", "16"),
    ("Write a two-digit multiple of {7}.", "98"),
    ("Write down an integer value of {n} that satisfies {-2 < n <= 3}.", "3"),
    ("Given that {x > 3}, write down a possible value of {x}.", "3.5"),
    ("Write a number between {-1} and {0}.", "-0.5"),
    ("Write a common multiple of {4} and {6}.", "24"),
    ("Write a factor of {24} other than {1} and {24}.", "8"),
    ("Write a number between {3} and {8} inclusive.", "8"),
    ("Write a whole number from {3} to {8}.", "3"),
    ("Write two numbers with a difference of {7}.", "3, 10"),
    ("Write two numbers with a product of less than {7}.", "2, 3"),
    ("Write a number {5} less than {12}.", "7"),
]
RIGHT += [
    ("Write a fraction equivalent to {2/3}.", "4/6"),
    ("Write down a fraction that is equal to {0.5}.", "1/2"),
    ("Give a fraction which is equivalent to {6/8}.", "3/4"),
]
WRONG = [
    ("Write a fraction between {1/3} and {1/2}.", "7/12"),
    ("Write a fraction between {1/3} and {1/2}.", "1/2"),
    ("Write a fraction between {1/3} and {1/2}.", "0.4"),
    ("Write a fraction between {1/3} and {1/2}. Give your answer in its simplest form.", "4/10"),
    ("Write down a pair of factors of {24}.", "4, 8"),
    ("Write down a pair of factors of {24}.", "2, 3"),
    ("Write down a pair of factors of {24}.", "2.4, 10"),
    ("Write down a pair of factors of {24}.", "-4, -6"),
    ("Write down a pair of factors of {24}.", "2, 3, 4"),
    ("Write a multiple of {6} between {40} and {50}", "45"),
    ("Write a multiple of {6} between {42} and {60}", "42"),
    ("Give a prime number between {20} and {30}", "27"),
    ("Give a prime number between {20} and {30}", "31"),
    ("Give a prime number less than {10}", "1"),
    ("Write an even number greater than {7}", "7"),
    ("Write an even number greater than {7}", "9"),
    ("Write a decimal between {0.3} and {0.31}", "0.31"),
    ("Write a whole number between {3} and {8} exclusive.", "8"),
    ("Write a number that is less than or equal to {5}.", "6"),
    ("Write a number that is at least {5} and at most {9}.", "10"),
    ("Write two different numbers whose sum is {10}.", "5, 5"),
    ("Write two factors of {24}, both greater than {3}.", "3, 8"),
    ("Write two multiples of {7} between {20} and {50}.", "21, 21"),
    ("Write a number that is a multiple of {3} and a factor of {24}.", "9"),
    ("Write a number that is divisible by both {4} and {6}.", "6"),
    ("Write an integer that is greater than {2} but less than {6}.", "4.5"),
    ("Write down a value of {x} for which {2x + 1 > 7}.", "3"),
    ("Write a two-digit square number.", "9"),
    ("Write a negative number greater than {-5}.", "-6"),
    ("Write a percentage between {1/4} and {1/3}.", "20%"),
    ("Write all the multiples of {6} between {40} and {50}.", "42"),
    ("Write a prime number between {24} and {28}.", "25"),
    ("Write a number between {3} and {4} as a fraction.", "3.5"),
]
WRONG += [
    ("Write a fraction equivalent to {2/3}.", "3/4"),
    ("Write a fraction equivalent to {2/3}.", "4/6, 6/9"),
    ("Write a fraction equivalent to {2/3}.", "2 × 2/6"),
    ("Write a fraction equivalent to {4/2}.", "2"),
    ("Write a fraction equivalent to {1/2}.", "0.5"),
]
LEFT_TO_A_PERSON = [
    ("Write a decimal between {0.3} and {0.31}", "61/200"),
    ("Write a fraction between {1/3} and {1/2} with an odd denominator.", "2/5"),
    ("Write a fraction between {1/3} and {1/2} whose denominator is {24}.", "2/5"),
    ("Write a fraction with a denominator of {5} between {1/3} and {1/2}.", "5/12"),
    ("Write a unit fraction between {1/3} and {1/7}.", "2/9"),
    ("Write a decimal with two decimal places between {0.3} and {0.4}.", "0.355"),
    ("Write a decimal between {0.3} and {0.4} to 2 decimal places.", "0.355"),
    ("Write a number between {3} and {4} correct to {1} decimal place.", "3.55"),
    ("Write an even number that is not a multiple of {4}.", "8"),
    ("Write a multiple of {6} that is not even.", "12"),
    ("Write a number between {20} and {30} that isn't prime.", "23"),
    ("Write a number that is neither prime nor a multiple of {3}.", "8"),
    ("Write a multiple of {4} or {6} less than {20}.", "18"),
    ("Write two consecutive numbers that add up to {15}.", "5, 10"),
    ("Write two numbers, one odd and one even, that add up to {15}.", "7, 8"),
    ("Write three numbers with a sum of {10}.", "2, 3, 5"),
    ("Write two numbers whose sum is {10} and whose product is as large as possible.", "4, 6"),
    ("Write two numbers that add up to {10}, the larger one first.", "4, 6"),
    ("Write two fractions that add up to {1}.", "0.5, 0.25"),
    ("Write two multiples of {3} and {5}.", "3, 5"),
    ("Write a number closer to {3} than to {4}.", "3.9"),
    ("Write a number halfway between {3} and {4}.", "3.2"),
    ("Write a number exactly between {3} and {4}.", "3.2"),
    ("Write a number less than {5} more than {7}.", "11"),
    ("Write a number greater than {3} squared.", "5"),
    ("Write a number greater than {50%} of {20}.", "8"),
    ("Write a length between {3 cm} and {4 cm}.", "3.5 cm"),
    ("Write a number between {3 cm} and {4 cm}.", "3.5"),
    ("Write a number between {3} and {4} metres.", "3.5"),
    ("Write a price between {£3} and {£4}.", "£3.50"),
    ("Mo has {24} sweets. Write a factor of {24}.", "6"),
    ("A bus takes {30} to {40} minutes. Write a possible time.", "35"),
    ("Write a number between {3} and {4}. It is a multiple of {0.5}.", "3.2"),
    ("Write the multiple of {6} between {40} and {50}.", "42"),
    ("Write a number.", "7"),
    ("Write a number between {3} and {3}.", "3"),
    ("Write a value of {x} for which {x + y > 7}.", "8"),
    ("Given that {x > 3}, write down a possible value of {y}.", "5"),
    ("Write a multiple of {6} less than {10}.", "0"),
    ("Write a whole number less than {3}.", "-1"),
    ("Write a square number less than {10}.", "0"),
    ("Write two numbers whose sum is {10}.", "5, 5"),
    ("Write a fraction between {1/3} and {1/2} using the digits {2} and {5}.", "2/5"),
    ("Write a fraction between {1/3} and {1/2} and explain why.", "2/5"),
    ("Write a fraction between {1/3} and {1/2}, then double it.", "4/5"),
    ("Write an odd number. Double it.", "7"),
    ("Write a multiple of 6 between 40 and 50.", "42"),
]
LEFT_TO_A_PERSON += [
    ("Write a fraction equivalent to {2/3} with a denominator of {12}.", "4/6"),
    ("Write a fraction equivalent to {2/3} that is greater than {1/2}.", "4/6"),
    ("Write a fraction equivalent to {2/3} in its simplest form.", "4/6"),
    ("Write a fraction not equivalent to {2/3}.", "4/6"),
    ("Write two fractions equivalent to {2/3}.", "4/6, 6/9"),
    ("Write a fraction equivalent to {2/3} of {9}.", "4/6"),
    ("Write a fraction equivalent to {0}.", "0/3"),
    ("Write a decimal equal to {1/2}.", "0.5"),
    ("Write a fraction between {1/3} and {1/2} equivalent to {4/10}.", "2/5"),
    ("Write an expression equivalent to {2(x + 3)}.", "2x + 6"),
    ("Write a ratio equivalent to {2 : 3}.", "4 : 6"),
]

TWO = [
    ("Write two numbers whose sum is {10} and product is {24}.", "4, 6", State.PROVED),
    ("Find two numbers with a sum of {10} and a product of {24}.", "6, 4", State.PROVED),
    ("Write two numbers that add up to {1} and multiply to make {-6}.", "-2, 3", State.PROVED),
    ("Write two whole numbers whose sum is {5} and whose product is {6}.", "2, 3", State.PROVED),
    ("Write two numbers whose sum is {10} and product is {24}.", "3, 7", State.DISPROVED),
    ("Write two numbers whose sum is {10} and product is {24}.", "2, 12", State.DISPROVED),
    ("Write two numbers whose sum is {10} and product is {25}.", "5, 5", State.NEEDS_PERSON),
    ("Write two numbers whose sum is {10} and product is {26}.", "4, 6", State.NEEDS_PERSON),
    (
        "Write two whole numbers whose sum is {2.5} and product is {1}.",
        "2, 0.5",
        State.NEEDS_PERSON,
    ),
    ("Write two prime numbers whose sum is {10} and product is {24}.", "4, 6", State.DISPROVED),
    (
        "Write two numbers whose sum is {10} and product is {24} or less.",
        "4, 6",
        State.NEEDS_PERSON,
    ),
]


@pytest.mark.parametrize(("prompt", "key", "state"), TWO)
def test_two_numbers_with_a_sum_and_a_product_are_the_only_ones(
    prompt: str, key: str, state: State
) -> None:
    assert judge_entry(entry(prompt, key)).state is state


def test_they_are_marked_in_any_order_and_are_no_example() -> None:
    item = as_item(entry("Write two numbers whose sum is {10} and product is {24}.", "4, 6"))
    kind = kind_of(item.ask)
    assert not kind.many
    assert kind.restore(kind.store(item.ask)) == item.ask
    verdicts = [mark(item, text).verdict.value for text in ("6 and 4", "4, 6", "3, 7", "4, 4")]
    assert verdicts == ["right", "right", "wrong", "wrong"]


def test_a_model_makes_no_one_answer_of_many() -> None:
    made = entry("Write a number that is less than {20}.", "19", model=["20 - 1"], constants=[1])
    assert kind_of(as_item(made).ask).many


@pytest.mark.parametrize(("prompt", "key"), RIGHT)
def test_an_example_that_has_the_property_is_proved(prompt: str, key: str) -> None:
    outcome = judge_entry(entry(prompt, key))
    assert outcome.state is State.PROVED, outcome


@pytest.mark.parametrize(("prompt", "key"), WRONG)
def test_an_example_that_lacks_it_is_disproved(prompt: str, key: str) -> None:
    outcome = judge_entry(entry(prompt, key))
    assert outcome.state is State.DISPROVED, outcome


@pytest.mark.parametrize(("prompt", "key"), LEFT_TO_A_PERSON)
def test_what_is_not_understood_is_left_to_a_person(prompt: str, key: str) -> None:
    outcome = judge_entry(entry(prompt, key))
    assert outcome.state is State.NEEDS_PERSON, outcome


def test_the_fault_says_which_condition_fails() -> None:
    says = judge_entry(entry("Write a fraction between {1/3} and {1/2}.", "7/12")).says
    assert "7/12 is not between 1/3 and 1/2: it is more than 1/2" in says


@pytest.mark.parametrize(
    ("prompt", "key", "answer", "verdict", "says"),
    [
        ("Write a fraction between {1/3} and {1/2}.", "2/5", "5/12", "right", ""),
        (
            "Write a fraction between {1/3} and {1/2}.",
            "2/5",
            "0.4",
            "right value, wrong form",
            "Right value: give it as a fraction.",
        ),
        ("Write a pair of factors of {24}.", "4, 6", "8 and 3", "right", ""),
        ("Write a pair of factors of {24}.", "4, 6", "4, 8", "wrong", "4 × 8 is 32, not 24."),
        ("Write a prime number less than {30}.", "29", "21", "wrong", "21 is not a prime number."),
        (
            "Write a two-digit multiple of {7}.",
            "14",
            "105",
            "wrong",
            "105 is not from 10 to 99: it is more than 99.",
        ),
        (
            "Write a factor of {24} other than {1} and {24}.",
            "8",
            "1",
            "wrong",
            "The answer has to be another number than 1.",
        ),
    ],
)
def test_answers_are_marked_by_the_property(
    prompt: str, key: str, answer: str, verdict: str, says: str
) -> None:
    marked = mark(as_item(entry(prompt, key)), answer)
    assert (marked.verdict.value, marked.says) == (verdict, says)


def test_it_is_a_question_with_many_right_answers() -> None:
    item = as_item(entry("Give a prime number between {20} and {30}.", "23"))
    assert kind_of(item.ask).many


@pytest.mark.parametrize(
    ("answer", "verdict", "says"),
    [
        ("6/9", "right", ""),
        ("2/3 = 8/12", "right", ""),
        ("3/4", "wrong", "3/4 is not equal to 2/3."),
        ("2/3", "wrong", "2/3 is the number in the question."),
    ],
)
def test_an_equivalent_fraction_is_any_other_that_is_worth_as_much(
    answer: str, verdict: str, says: str
) -> None:
    item = as_item(entry("Write a fraction equivalent to {2/3}.", "4/6"))
    kind = kind_of(item.ask)
    assert kind.many
    assert kind.restore(kind.store(item.ask)) == item.ask
    marked = mark(item, answer)
    assert (marked.verdict.value, marked.says) == (verdict, says)


def test_a_fraction_is_not_equivalent_by_being_the_same() -> None:
    outcome = judge_entry(entry("Write a fraction equivalent to {2/3}.", "2/3"))
    assert outcome.state is not State.PROVED


def test_twins_are_those_with_the_same_property() -> None:
    one = entry("Write a fraction between {1/3} and {1/2}.", "2/5", "a-1")
    other = entry("Give a fraction that lies between {1/2} and {1/3}.", "5/12", "a-2")
    decimal = entry("Write a decimal between {1/3} and {1/2}.", "0.4", "a-3")
    closed = entry("Write a fraction between {1/3} and {1/2} inclusive.", "0.4", "a-4")
    assert twins([one, other, decimal, closed]) == [("try:a-1", "try:a-2")]


@pytest.mark.parametrize(
    ("wrong", "may_be_right"),
    # √2 cannot be decided by exact fractions, so it is not known to be wrong.
    [("5/12", True), ("5/6", False), ("1/2", False), ("0.4", False), ("√2", True)],
)
def test_a_mistake_has_to_lack_the_property(wrong: str, may_be_right: bool) -> None:
    slip = {"id": "mid", "name": "gives the middle", "ask": "Is it?", "wrong": wrong}
    made = entry("Write a fraction between {1/3} and {1/2}.", "2/5", misconceptions=[slip]).item
    faults = [fault for fault in checked_maths(made)[1] if fault.field[0] == "misconceptions"]
    assert bool(faults) is may_be_right
