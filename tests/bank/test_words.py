"""What the words of a prompt ask binds the key, whatever the task of the file says."""

from pathlib import Path

import pytest

from itembank.bank.asking import NeedsPerson, ask_of
from itembank.bank.load import Entry
from itembank.bank.maths import UnreadableMaths, read_maths
from itembank.bank.model import BankItem
from itembank.bank.reading import as_item, form_of
from itembank.checking.outcome import State, judge


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
