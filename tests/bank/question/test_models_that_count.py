"""A model that comes to a bare number: what its key may be, and what is left to a person.

The prompts and their answers are our own, worked by hand.
"""

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.proof.judge import judge

PEN = "A pen costs {£3}. How much do {4} pens cost?"
SAVES = "Sam saves {£4} a week. How many weeks will it take to save {£30}?"
TAP = "A tap gives {3 litres} a minute. How many minutes will it take to fill {50 litres}?"
TRIP = "A coach goes {90 km} at {60 km/h}. How many hours does it take?"


ROPE = "Round {3.4567 m} to the nearest centimetre."


def state(prompt: str, key: str, model: str = "") -> str:
    item = BankItem(id="a-1", tier="core", prompt=prompt, key=key, model=[model] if model else [])
    try:
        return judge(read_item(item, "a:a-1", "t")).state.value
    except NeedsPerson:
        return "needs a person"


@pytest.mark.parametrize(
    ("prompt", "key", "model", "expected"),
    [
        (PEN, "£12", "£3 × 4", "proved"),
        (PEN, "£12", "3 × 4", "proved"),
        (PEN, "£13", "3 × 4", "disproved"),
        (PEN, "12p", "3 × 4", "needs a person"),
        (SAVES, "8", "£30 ÷ £4", "proved"),
        (SAVES, "7", "£30 ÷ £4", "disproved"),
        (TRIP, "1.5", "90 km ÷ 60 km/h", "proved"),
        (TRIP, "2", "90 km ÷ 60 km/h", "disproved"),
        (TAP, "50/3", "50 litres ÷ 3 litres", "proved"),
        # A whole number beside it may count whole minutes: who set it has to say.
        (TAP, "17", "50 litres ÷ 3 litres", "needs a person"),
        (TAP, "20", "50 litres ÷ 3 litres", "disproved"),
    ],
)
def test_what_is_counted(prompt: str, key: str, model: str, expected: str) -> None:
    assert state(prompt, key, model) == expected


def test_rounding_to_a_unit_that_the_key_is_not_in_is_left_to_a_person() -> None:
    assert state(ROPE, "346 cm") == "proved"
    assert state(ROPE, "345 cm") == "disproved"
    assert state(ROPE, "3.46 m") == "needs a person"
