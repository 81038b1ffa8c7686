"""What the words of a prompt ask binds the key, whatever the task of the file says."""

from pathlib import Path

import pytest

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import as_item, form_of
from itembank.bank.question.asking import NeedsPerson, ask_of
from itembank.bank.question.given.maths import UnreadableMaths, read_maths
from itembank.proof.judge import judge
from itembank.proof.outcome import State


def item(prompt, key, **rest):
    return BankItem(id="a-1", tier="core", prompt=prompt, key=key, **rest)


def state(prompt, key, **rest):
    entry = Entry(item(prompt, key, **rest), "number.try", "try", Path("number.try.toml"), 1)
    try:
        return judge(as_item(entry)).state
    except NeedsPerson:
        return State.NEEDS_PERSON


@pytest.mark.parametrize(
    ("prompt", "right", "wrong"),
    [
        ("Change {3.5 kg} to grams.", "3500 g", "3.5 kg"),
        ("How many centimetres are there in {2.4 m}?", "240 cm", "2.4 m"),
        ("Write {0.4} as a percentage.", "40%", "0.4"),
        ("Write {45000} in standard form.", "4.5 × 10^4", "45 × 10^3"),
        ("Write {2 3/4} as an improper fraction.", "11/4", "2 3/4"),
        ("Find the nth term of {3, 7, 11, 15}.", "4n - 1", "4n + 1"),
        ("Find the highest common factor of {12, 18}.", "6", "36"),
        ("Find the LCM of {12} and {18}.", "36", "6"),
        ("Write {60} as a product of its prime factors.", "2^2 × 3 × 5", "4 × 15"),
        ("Put these in order, smallest first: {0.5, 2/5, 45%}", "2/5, 45%, 0.5", "0.5, 45%, 2/5"),
        ("Share {£60} in the ratio {2 : 3}.", "£24, £36", "£36, £24"),
        ("Round {3.456} to {2} decimal places.", "3.46", "3.45"),
        ("Work out {1/4 + 1/4}. Give your answer in its lowest terms.", "1/2", "2/4"),
    ],
)
def test_the_words_say_what_the_file_leaves_out(prompt, right, wrong):
    prompt = prompt.replace("{2} decimal", "2 decimal")
    assert state(prompt, right) is State.PROVED
    assert state(prompt, wrong) is State.DISPROVED


@pytest.mark.parametrize(
    ("prompt", "task", "key"),
    [
        ("Find the HCF of {12, 18}.", "lcm", "36"),
        ("Expand {2(x + 3)}.", "factorise", "2(x + 3)"),
        ("Factorise {2x + 6}.", "simplify", "2x + 6"),
        ("Expand and simplify {2(x + 3) + x}.", "simplify", "3x + 6"),
        ("Find the nth term of {3, 7, 11, 15}.", "order", "3, 7, 11, 15"),
    ],
)
def test_a_task_at_odds_with_the_words_is_not_taken_on_trust(prompt, task, key):
    assert state(prompt, key, task=task) is State.NEEDS_PERSON


def test_words_that_name_a_step_on_the_way_do_not_clash():
    asked = item("Factorise, and so solve {x^2 - 5x + 6 = 0}.", "x = 2 or x = 3", task="solve")
    assert type(ask_of(asked, read_maths(asked))).__name__ == "Solve"
    rounded = item("Work out {20 ÷ 8}, and round it only at the end.", "2.5", task="work-out")
    assert form_of(rounded, read_maths(rounded)) == "value"


def test_a_list_without_words_for_it_needs_a_person():
    assert state("Look at {3, 7, 11}.", "3, 7, 11") is State.NEEDS_PERSON


@pytest.mark.parametrize("text", ["45,000", "1,200 + 300", "45 000"])
def test_digits_in_groups_are_not_taken_for_a_list(text):
    with pytest.raises(UnreadableMaths, match="two ways"):
        read_maths(item(f"Work out {{{text}}}.", "1"))
    assert read_maths(item("Order {1, 200}.", "1, 200")).key.parts


@pytest.mark.parametrize(
    ("prompt", "right", "wrong"),
    [
        ("Solve {3p = 12}.", "p = 4", "p = 36"),
        ("Solve {100 - 16 = 4p - 10p - p}.", "-12", "12"),
        ("Simplify {2p + 3p}.", "5p", "6p"),
        ("{(p + 11)(p - 4)}", "p^2 + 7p - 44", "p^2 - 7p - 44"),
        ("Factorise {6p + 9}.", "3(2p + 3)", "3(2p + 9)"),
    ],
)
def test_the_letter_p_is_no_obstacle(prompt, right, wrong):
    assert state(prompt, right) is State.PROVED
    assert state(prompt, wrong) is State.DISPROVED


@pytest.mark.parametrize(
    ("prompt", "right", "wrong"),
    [
        ("Work out {5 ÷ 3}. Give your answer to 1 decimal place.", "1.7", "5/3"),
        ("Work out {£5 ÷ 3}. Give your answer correct to the nearest penny.", "£1.67", "£5/3"),
        ("Calculate {√50} to 3 s.f.", "7.07", "7.071"),
        ("Work out {12 kg ÷ 7} to the nearest gram.", "1714 g", "12/7 kg"),
        ("Write {45678} to the nearest thousand.", "46000", "45678"),
        ("Write {5/8} as a percentage to the nearest whole number.", "63%", "62.5%"),
        ("Change {7/20} into a percentage.", "35%", "0.35"),
        ("Convert {7/20} to a decimal.", "0.35", "35%"),
        ("Change {11/4} to a mixed number.", "2 3/4", "11/4"),
        ("Remove the brackets: {-2(x - 3)}.", "-2x + 6", "2(3 - x)"),
        ("Rationalise the denominator of {6/(√3)}.", "2√3", "(6√3)/3"),
        ("Write {5 : 8} in the form 1 : n.", "1 : 1.6", "5 : 8"),
        ("Write down the prime factorisation of {84}.", "2^2 × 3 × 7", "4 × 21"),
        ("Solve {x + y = 5, x - y = 1}.", "x = 3, y = 2", "x = 2, y = 3"),
        ("Here {a + b = 60} and {a = 2b}. Find b.", "b = 20", "b = 40"),
        ("Simplify {2(3p + 4)}.", "6p + 8", "6p + 4"),
        ("Solve {3p = 12}.", "4", "36"),
        ("Simplify {(4p)/11 + (3p)/11}.", "(7p)/11", "(7p)/22"),
        ("Simplify {-3/8}.", "-0.375", "-0.38"),
        ("Estimate {48 × 21} by rounding each number to 1 significant figure.", "1000", "1008"),
        ("Simplify {(23/6)/(-1)}.", "-3 5/6", "-3 1/6"),
    ],
)
def test_a_rounding_a_form_and_a_letter_in_the_words_bind_the_key(prompt, right, wrong):
    assert state(prompt, right) is State.PROVED
    assert state(prompt, wrong) is State.DISPROVED


@pytest.mark.parametrize(
    ("prompt", "key"),
    [
        ("Solve {3x = 7}. Give your answer to 1 decimal place.", "x = 7/3"),
        ("Solve {3x = 7}. Give your answer as a mixed number.", "x = 7/3"),
        ("Estimate {48 × 21}.", "1000"),
        ("Find y if {2x + 1 = 9}.", "4"),
    ],
)
def test_words_that_are_not_worked_out_leave_the_key_to_a_person(prompt, key):
    assert state(prompt, key) is State.NEEDS_PERSON


def test_all_the_way_round_is_no_rounding():
    prompt = "An edge runs all the way round it: a bed of {196} square metres. How long is it?"
    assert state(prompt, "56", model=("4 × √196",), constants=(4,)) is State.PROVED
