"""A word in capitals says what it says in small letters: *the MOST likely*, *the FIRST 10 minutes*.

Teachers write so what pupils are not to overlook. No word of a question that is understood, set in
capitals, may change what is asked; where it is not understood then, a person decides.
"""

import re

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import NeedsPerson, read_item
from itembank.figures.figure import FigureError, read
from itembank.figures.figure_data import from_data
from itembank.items.asks.of_figure import asked_in
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from tests.bank.figures import test_figures_misread as known
from tests.bank.figures.test_figures_tried import FIGURES, rows
from tests.depth import some, whole

PLAIN = [(figure, prompt) for figure, prompt, _ in known.PLAIN]
TRIED = [(FIGURES[name], prompt) for name, prompt, _, said in rows() if said == "P"]


def asked(figure, prompt):
    """Return what is asked and what it comes to, None where the words are not understood."""
    try:
        found = asked_in(figure, (prompt,))
    except FigureError:
        return None
    return found.target, tuple(read(figure, reading) for _, reading in found.readings)


def in_capitals(prompt):
    for word in re.finditer(r"[a-z]{2,}", prompt):
        yield prompt[: word.start()] + word[0].upper() + prompt[word.end() :]


@whole
def test_no_word_in_capitals_changes_what_is_asked():
    tried = 0
    for data, prompt in some([*PLAIN, *TRIED], 24):
        figure = from_data(data)
        if (plain := asked(figure, prompt)) is None:
            continue
        for louder in in_capitals(prompt):
            tried += 1
            assert asked(figure, louder) in (plain, None), louder
    assert tried > 50


REFUSED = [
    *known.MISREAD,
    *((FIGURES[name], prompt, key) for name, prompt, key, said in rows() if said[0] == "D"),
]
# What is in braces keeps its letters, and a lone x is a capital in no word.
BESIDE = [row for row in REFUSED if ". " in row[1] and not re.search(r"\{| x\b", row[1])]


@whole
def test_no_word_in_capitals_proves_what_was_not():
    tried = [
        (figure, louder, key)
        for figure, prompt, key in some(REFUSED, 40)
        for louder in in_capitals(prompt)
    ]
    assert [row for row in tried if verdict(*row) is State.PROVED] == []
    assert len(tried) > 100


@whole
@pytest.mark.parametrize("louder", [str.upper, str.title])
def test_no_capitals_hide_what_is_told_beside_a_question(louder):
    tried = some(BESIDE, 60)
    proved = [p for fig, p, key in tried if verdict(fig, louder(p), key) is State.PROVED]
    assert proved == []
    assert len(tried) > 30


@pytest.mark.parametrize(
    ("figure", "prompt", "key"),
    [
        (
            known.BARS,
            "The bar chart shows trays sold in a ROW. How many trays were sold on Tue?",
            "8",
        ),
        (
            known.TREE,
            "A ball is taken from a BAG, and then another from a bag. "
            "What is the probability that both are red?",
            "25/64",
        ),
    ],
)
def test_a_place_in_capitals_is_the_same_place(figure, prompt, key):
    assert verdict(figure, prompt, key) is not State.PROVED


@pytest.mark.parametrize("word", ["mean", "expected", "cumulative"])
def test_a_word_that_is_said_aloud_is_no_name(word):
    told = f"The graph shows the {word.upper()} height. What was the height on Tue?"
    assert verdict(known.TALL, told, "120") is State.NEEDS_PERSON
    assert verdict(known.TALL, told.replace(word.upper(), "PE"), "120") is State.PROVED


JOURNEY = {
    **known.BUSES,
    "shapes": [{"name": "", "corners": [[0, 0], [10, 4], [20, 4], [40, 16]], "closed": False}],
}


def verdict(figure, prompt, key):
    item = BankItem(id="a-1", tier="core", prompt=prompt, key=key, figure=figure)
    try:
        return judge(read_item(item, "loud:a-1", "number.try")).state
    except NeedsPerson:
        return State.NEEDS_PERSON


@pytest.mark.parametrize("most", ["most", "MOST", "Most"])
def test_the_most_likely_outcome_is_the_one_that_is_most_likely(most):
    prompt = f"Which colour is {most} likely?"
    assert verdict(known.CHANCES, prompt, '"blue"') is State.PROVED
    assert verdict(known.CHANCES, prompt, '"red"') is State.DISPROVED


@pytest.mark.parametrize("first", ["first", "FIRST"])
def test_the_first_minutes_of_a_journey_are_not_its_last(first):
    prompt = f"What is the speed of the bus, in kilometres per hour, in the {first} {{10}} minutes?"
    assert verdict(JOURNEY, prompt, "24") is State.PROVED
    assert verdict(JOURNEY, prompt, "36") is State.DISPROVED


def test_the_place_and_the_units_of_a_journey_may_stand_in_capitals():
    prompt = "How many KILOMETRES from the DEPOT is the bus after {10} MINUTES?"
    assert verdict(JOURNEY, prompt, "4") is State.PROVED


def test_squares_that_are_no_units_are_refused_in_capitals_too():
    prompt = (
        "What are the coordinates of the image of A after a translation of 3 {} left and 1 {} up?"
    )
    for squares in ("squares", "SQUARES"):
        for key in ("(3, -4)", "(-1, -2)", "(2, -3)"):
            found = verdict(known.TWOS, prompt.format(squares, squares), key)
            assert found is State.NEEDS_PERSON
