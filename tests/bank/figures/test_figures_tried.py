"""Questions about figures that were written to be misread, and plain ones of teachers.

Every row of ``figures_misread.tsv`` is a figure, a prompt, the key that a hasty reading comes to,
and what may be said of it: proved (P), disproved (D), left to a person (N). Most change what is
asked by a word: a running total, every second pattern, a prism with a hole, sold *by* Tuesday.
"""

import csv
from pathlib import Path

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import NeedsPerson, read_item
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from tests.bank.figures import test_figures_misread as known
from tests.depth import some, whole

_GRID = {"kind": "coordinate grid", "bottom": -5, "top": 5}
_AFTER_RED = [{"outcome": "red", "chance": "4/7"}, {"outcome": "blue", "chance": "3/7"}]
_AFTER_BLUE = [{"outcome": "red", "chance": "5/7"}, {"outcome": "blue", "chance": "2/7"}]
FIGURES = {
    **{name: value for name, value in vars(known).items() if name.isupper()},
    "DAYS": {**known.BARS, "counts": "Visitors"},
    "TABLE": {
        "kind": "two-way table",
        "rows": ["7M", "8K"],
        "columns": ["girls", "boys"],
        "cells": [[14, 16, 30], [15, 13, 28], [29, 29, 58]],
    },
    "PICTO": {
        "kind": "pictogram",
        "categories": ["Monday", "Tuesday"],
        "values": [8, 10],
        "each": 4,
        "what": "trays",
    },
    "PATTERN": {"kind": "growing pattern", "first": 2, "more": 3},
    "WITHOUT": {
        "kind": "tree diagram",
        "branches": [
            {"outcome": "red", "chance": "5/8", "then": _AFTER_RED},
            {"outcome": "blue", "chance": "3/8", "then": _AFTER_BLUE},
        ],
    },
    "PRISM": {
        "kind": "prism",
        "end": "triangle",
        "width": "4 cm",
        "height": "3 cm",
        "length": "10 cm",
        "slope": "5 cm",
    },
    "CUBOID": {
        "kind": "prism",
        "end": "rectangle",
        "width": "4 cm",
        "height": "3 cm",
        "length": "10 cm",
    },
    "GRID": {
        **_GRID,
        "left": -7,
        "right": 7,
        "points": [["A", 5, -3]],
        "shapes": [
            {"name": "P", "corners": [[1, 1], [3, 1], [1, 2]]},
            {"name": "Q", "corners": [[-3, 1], [1, 1], [-3, 3]]},
        ],
    },
    "REFL": {
        **_GRID,
        "left": -6,
        "right": 6,
        "points": [["A", 4, -2]],
        "shapes": [
            {"name": "P", "corners": [[1, 1], [4, 1], [1, 3]]},
            {"name": "Q", "corners": [[-1, 1], [-4, 1], [-1, 3]]},
            {"name": "R", "corners": [[-1, -1], [-4, -1], [-1, -3]]},
        ],
    },
    "BEST": {**known.PLANTS, "best": [[0, 5], [12, 35]]},
    "BACK": {"kind": "function machine", "does": known.MACHINE["does"], "output": 23},
}
LETTERS = {State.PROVED: "P", State.DISPROVED: "D", State.NEEDS_PERSON: "N"}


def rows():
    with (Path(__file__).parent / "figures_misread.tsv").open(encoding="utf-8", newline="") as file:
        yield from csv.reader(file, delimiter="\t", quoting=csv.QUOTE_NONE)


def verdict(name, prompt, key):
    item = BankItem(id="a-1", tier="core", prompt=prompt, key=key, figure=FIGURES[name])
    try:
        return LETTERS[judge(read_item(item, "try:a-1", "number.try")).state]
    except NeedsPerson:
        return "N"


@whole
@pytest.mark.parametrize("name", sorted({name for name, *_ in rows()}))
def test_no_more_is_said_of_a_figure_than_is_true(name):
    tried = [row for row in rows() if row[0] == name]
    judged = [(*row, verdict(*row[:3])) for row in some(tried, 12)]
    assert judged
    assert [row for row in judged if row[4] not in row[3]] == []


def test_what_is_told_is_held_to_what_a_chart_counts():
    sentences = ("the trays sold on a stall", "the plants sold", "the running total of trays")
    asked = "The bar chart shows {}. How many trays were sold on Tue?"
    assert [verdict("BARS", asked.format(told), "8") for told in sentences] == ["P", "N", "N"]
