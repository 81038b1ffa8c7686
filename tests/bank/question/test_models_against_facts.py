"""A model that goes against what everybody knows of shapes, rates and signs is not proved.

Each pair is one prompt of our own with a right model and a wrong one, worked by hand.
"""

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.proof.judge import judge

ANGLES = "Two angles of a triangle are {50°} and {60°}. What is the third angle?"
FOUR = "Angles of a quadrilateral are {50°}, {60°} and {40°}. What is the other angle?"
TERM = "The nth term of a sequence is {3n + 2}. Which term is {50}?"
EURO = "{£1} is worth {€1.20}. How many euros are worth {£60}?"
TOWN = "A town of {8000} people shrinks by {5%} in a year. How many people live there after it?"
AGE = "Ann is {12} years old. How old was she {5} years ago?"
BANK = (
    "Sam puts {£200} in a bank at {5%} compound interest a year for {2} years. How much is there?"
)
LEAP = "A shop sells {3} cakes each day. How many cakes does it sell in a leap year?"
FEBRUARY = "A shop sells {3} cakes each day. How many cakes does it sell in February?"
LONG = "A shop sells {3} cakes each day. How many does it sell in February of a leap year?"
ROPE = "A rope is {5 m} long. It is cut into {4} equal pieces. How long is each piece?"
PARTS = "A machine makes {5} parts per minute. It runs for {3 h}. How many parts does it make?"
BOXES = "There are {40} pens in each of {3} boxes. How many boxes are there?"
PENS = "There are {40} pens in each of {3} boxes. How many pens are there?"
CASES = "Ann has {24} pencil cases with {3} pencils each. How many pencil cases are there?"
CARS = "There are {3} cars for each van. There are {12} vans. How many cars are there?"
COST = "Notebooks cost {£4.95} each. Estimate the cost of {19} notebooks."


def proved(prompt: str, key: str, model: str, constants: tuple[int, ...], find: str) -> bool:
    item = BankItem(
        id="a-1",
        tier="core",
        prompt=prompt,
        key=key,
        model=[model],
        constants=list(constants),
        find=find or None,
    )
    try:
        return judge(read_item(item, "a:a-1", "t")).state.value == "proved"
    except NeedsPerson:
        return False


@pytest.mark.parametrize(
    ("prompt", "key", "model", "constants", "find"),
    [
        (ANGLES, "70°", "180° - 50° - 60°", (180,), ""),
        (FOUR, "210°", "360° - 50° - 60° - 40°", (360,), ""),
        (TERM, "16", "3n + 2 = 50", (), "n"),
        (EURO, "€72", "£60 ÷ £1 × €1.20", (), ""),
        (TOWN, "7600", "8000 - 5% of 8000", (), ""),
        (AGE, "7", "12 - 5", (), ""),
        (LEAP, "1098", "3 × 366", (366,), ""),
        (FEBRUARY, "84", "3 × 28", (28,), ""),
        (LONG, "87", "3 × 29", (29,), ""),
        (PENS, "120", "3 × 40", (), ""),
        (CARS, "36", "12 × 3", (), ""),
        (ROPE, "1.25 m", "5 m ÷ 4", (), ""),
        (PARTS, "900", "5 × 3 × 60", (60,), ""),
    ],
)
def test_a_right_model_is_proved(
    prompt: str, key: str, model: str, constants: tuple[int, ...], find: str
) -> None:
    assert proved(prompt, key, model, constants, find)


@pytest.mark.parametrize(
    ("prompt", "key", "model", "constants"),
    [
        (ANGLES, "250°", "360° - 50° - 60°", (360,)),
        (FOUR, "30°", "180° - 50° - 60° - 40°", (180,)),
        (TERM, "152", "3 × 50 + 2", (3, 2)),
        (EURO, "€50", "€60 ÷ 1.20", ()),
        (TOWN, "8400", "8000 + 5% of 8000", ()),
        (AGE, "17", "12 + 5", ()),
        (LEAP, "1095", "3 × 365", (365,)),
        (FEBRUARY, "87", "3 × 29", (29,)),
        (LONG, "84", "3 × 28", (28,)),
        (BOXES, "120", "3 × 40", ()),
        (CASES, "72", "24 × 3", ()),
        (ROPE, "125 m", "5 m × 100 ÷ 4", (100,)),
        (PARTS, "360", "5 × 3 × 24", (24,)),
        (BANK, "£220", "£200 + 2 × 5% of £200", ()),
        (COST, "£94.05", "£4.95 × 19", ()),
    ],
)
def test_a_model_against_a_fact_is_not(
    prompt: str, key: str, model: str, constants: tuple[int, ...]
) -> None:
    assert not proved(prompt, key, model, constants, "")
