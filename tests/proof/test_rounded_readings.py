"""Answers that are rounded from a figure: proved on both roads, and lies are found out."""

from __future__ import annotations

import dataclasses

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.errors import CheckFailed
from itembank.figures.drawing import Arc
from itembank.figures.figure import KINDS
from itembank.items.asks import RoundReading
from itembank.items.asks.ask_kind import kind_of
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation.parse import parse
from itembank.packs.data.asks import pack_ask, read_ask
from itembank.proof.exact.exact_road import prove_fast
from itembank.proof.measured import measure
from itembank.proof.sympy.sympy_road import prove
from tests.balls import arb

CIRCLE = {"kind": "circle", "radius": "5 cm"}
SECTOR = {"kind": "circle", "radius": "7 cm", "sector": 50}


def asked(prompt, key, figure=CIRCLE):
    fields = {"id": "a-1", "tier": "core", "prompt": prompt, "key": key, "figure": figure}
    return read_item(BankItem(**fields), "a:a-1", "t")


TRUE = [
    ("Work out the area of the circle. Give your answer to 1 decimal place.", "78.5 cm^2", CIRCLE),
    ("Work out the area of the circle to the nearest whole number.", "79 cm^2", CIRCLE),
    ("What is the circumference of the circle, correct to 3 significant figures?", "31.4 cm"),
    ("What is the circumference of the circle, rounded up to the nearest centimetre?", "32 cm"),
    ("Find the area of the sector. Round your answer to 2 decimal places.", "21.38 cm^2", SECTOR),
    ("Work out the length of the arc. Round to 1 decimal place.", "6.1 cm", SECTOR),
]


@pytest.mark.parametrize("row", TRUE)
def test_a_rounded_reading_is_proved_twice_and_a_last_digit_off_by_one_refused(row):
    item = asked(*row)
    assert isinstance(item.ask, RoundReading)
    assert item.form == "rounded"
    prove_fast(item)
    prove(item)
    number, unit = row[1].split()
    last = int(number[-1])
    for off in {last - 1, last + 1} & set(range(10)):
        wrong = dataclasses.replace(item, key=parse(f"{number[:-1]}{off} {unit}"))
        for road in (prove_fast, prove):
            with pytest.raises(CheckFailed):
                road(wrong)


LEGS = {
    "kind": "polygon",
    "corners": [[0, 0], [5, 0], [0, 7]],
    "lettered": True,
    "sides": [["AB", "5 cm"], ["CA", "7 cm"]],
    "right": "A",
}
SLOPE = {
    "kind": "polygon",
    "corners": [[0, 0], [8, 0], [0, "5.6017"]],
    "sides": [["AB", "8 cm"], ["CA", "x"]],
    "angles": [["B", "35°"]],
    "right": "A",
}
TRUE += [
    ("Work out the length of BC. Give your answer to 1 decimal place.", "8.6 cm", LEGS),
    ("Work out the size of angle ABC to the nearest degree.", "54 °", LEGS),
    ("Find the size of angle ACB, correct to 1 decimal place.", "35.5 °", LEGS),
    ("Work out the length {x}. Give your answer to 1 decimal place.", "5.6 cm", SLOPE),
]


def test_a_triangle_that_says_too_much_or_too_little_leaves_the_answer_open():
    """Two sides and an angle are true of no one triangle, where each is rounded by itself."""
    settled = SLOPE | {"lettered": True, "sides": [["AB", "8 cm"]]}
    too_much = settled | {"sides": [["AB", "8 cm"], ["CA", "5.6 cm"]]}
    too_little = settled | {"sides": []}
    text = "Work out the length of BC. Give your answer to 1 decimal place."
    prove_fast(asked(text, "9.8 cm", settled))
    for figure in (too_much, too_little):
        with pytest.raises(NeedsPerson, match="does not show"):
            asked(text, "9.8 cm", figure)


def test_a_triangle_drawn_with_other_sides_is_refused():
    """The long side is drawn 9 cm, where its label and that of the other leg make it 7 cm."""
    wrong = SLOPE | {"corners": [[0, 0], [8, 0], [0, 9]]}
    with pytest.raises(NeedsPerson):
        asked("Work out the length {x}. Give your answer to 1 decimal place.", "5.6 cm", wrong)


@pytest.mark.parametrize(
    ("prompt", "key"),
    [
        ("Work out the area of the circle. Give your answer plus 3.", "25π cm^2"),
        ("Work out the area of the circle. Give your answer to 1 decimal place, doubled.", "157"),
        ("Find the area of the circle to the nearest 5 cm. Round to 1 decimal place.", "78.5 cm^2"),
        ("What is the area of the circle to the nearest centimetre to 1 decimal place?", "79 cm^2"),
        ("What is the circumference to the nearest millimetre of the circle?", "314 mm"),
        # To the nearest millimetre, and yet in centimetres.
        ("What is the circumference of the circle to the nearest millimetre?", "30 cm"),
    ],
)
def test_other_words_about_the_answer_are_left_to_a_person(prompt, key):
    with pytest.raises(NeedsPerson):
        asked(prompt, key)


@pytest.mark.parametrize("road", [prove_fast, prove])
def test_the_words_say_whether_the_answer_is_rounded_and_how(road):
    text = "Work out the area of the circle. Give your answer to 1 decimal place."
    item = asked(text, "78.5 cm^2")
    exact = dataclasses.replace(item, ask=item.ask.of, key=parse("25π cm^2"), form="simplified")
    more = dataclasses.replace(
        item, ask=dataclasses.replace(item.ask, amount=2), key=parse("78.54 cm^2")
    )
    down = dataclasses.replace(item, ask=dataclasses.replace(item.ask, way="down"))
    plain = dataclasses.replace(item, prompt=("Work out the area of the circle.",))
    for lie in (exact, more, down, plain):
        with pytest.raises(CheckFailed):
            road(lie)


def test_a_drawing_that_lies_makes_no_rounded_answer_right(monkeypatch):
    item = asked(*TRUE[0])
    kind = KINDS["circle"]

    def smaller(figure):
        made = kind.drawing(figure)
        marks = [
            dataclasses.replace(mark, radius=mark.radius * 9 / 10)
            if isinstance(mark, Arc) and mark.role == "circle"
            else mark
            for mark in made.marks
        ]
        return dataclasses.replace(made, marks=tuple(marks))

    monkeypatch.setattr(measure, "drawn", smaller)
    for kept in (measure.measured, measure.disagreement):
        kept.cache_clear()
    with pytest.raises(CheckFailed):
        prove(item)
    for kept in (measure.measured, measure.disagreement):
        kept.cache_clear()


def test_it_comes_back_from_a_pack():
    item = asked(*TRUE[2])
    again = read_ask(pack_ask(item), pence=True, figure=item.figure)
    assert again == item.ask
    twin = kind_of(item.ask).twin(item.ask, item.form)
    other = dataclasses.replace(item.ask, amount=2)
    assert kind_of(other).twin(other, item.form) != twin
    assert kind_of(item.ask.of).twin(item.ask.of, item.form) != twin


@pytest.mark.parametrize(
    ("answer", "verdict"),
    [
        ("78.5", Verdict.RIGHT),
        ("78.5 cm²", Verdict.RIGHT),
        ("78.54", Verdict.WRONG_FORM),
        ("78.53982", Verdict.WRONG_FORM),
        ("78.6", Verdict.WRONG),
        ("314.2", Verdict.WRONG),
    ],
)
def test_answers_are_marked_as_rounded_ones(answer, verdict):
    assert mark(asked(*TRUE[0]), answer).verdict is verdict


def test_keys_of_circles_by_a_third_engine():
    """Areas by python-flint's intervals, of circles that are drawn and of parts of them."""
    for tenths in range(23, 99, 4):
        for sector in (0, 50, 110, 230):
            value = arb.pi() * arb(tenths) ** 2 * (sector or 360) / 3600
            tenth = int((value + arb(1) / 2).floor().unique_fmpz())
            shape = "sector" if sector else "circle"
            item = asked(
                f"Work out the area of the {shape}. Give your answer to 1 decimal place.",
                f"{tenth // 10}.{tenth % 10} cm^2",
                {"kind": "circle", "radius": f"{tenths // 10}.{tenths % 10} cm"}
                | ({"sector": sector} if sector else {}),
            )
            prove_fast(item)
            prove(item)
