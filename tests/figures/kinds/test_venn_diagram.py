"""Venn diagrams: regions that come to the total, wordings, and the lies they are caught in."""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import replace
from fractions import Fraction

import pytest

from itembank.figures.drawing import text_box
from itembank.figures.figure import FigureError, Reading, drawn, fault, read, words
from itembank.figures.kinds.sets.venn_diagram import VennDiagram
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import as_measured, disagreement, measured, measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds

CLUB = VennDiagram("French", "Spanish", (12,), (5,), (8,), (3,), total=28)


def test_two_sets_by_inclusion_and_exclusion():
    """n(A or B) = n(A) + n(B) − n(A and B), a textbook's rule (from memory)."""
    for figure in examples("Venn diagram", 30):
        number, other, both, either = (
            read(figure, reading).n
            for reading in (
                Reading("in", (figure.first,)),
                Reading("in", (figure.second,)),
                Reading("both"),
                Reading("either"),
            )
        )
        assert either == number + other - both
        assert line(measured(figure, Reading("either"))) == str(either)


@holds(TOLD, "Venn diagram")
def test_all_regions_are_known_from_the_words_alone():
    for figure in examples("Venn diagram", 40):
        text = words(figure)
        found = re.findall(r"In [A-Za-z ]+: ([^.]+)\.", text)
        held = [[] if each.startswith("no ") else each.split(", ") for each in found]
        total = re.search(r"The total is (\d+)", text)
        if "members themselves" in text:
            counts = [len(each) for each in held]
        else:
            known = sum(int(each[0]) for each in held if each)
            counts = [int(each[0]) if each else int(total[1]) - known for each in held]
        assert [
            read(figure, reading).n
            for reading in (
                Reading("only in", (figure.first,)),
                Reading("both"),
                Reading("only in", (figure.second,)),
                Reading("neither"),
            )
        ] == counts


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"total": 30}, "its regions come to 28, and the total is 30"),
        ({"both": (), "total": None}, "nothing gives"),
        ({"both": (), "neither": ()}, "nothing gives"),
        ({"both": (), "total": 20}, "come to 23, and the total is 20"),
        ({"both": (5, 6)}, "may hold one number"),
        ({"second": "french"}, "one name"),
        ({"both": (-1,)}, "between 0 and 999"),
        ({"both": (100,), "members": True}, "between -99 and 99."),
        ({"first": "F" * 30}, "at most 10 letters"),
        ({"first": "Swimmming", "second": "Mammmmmmal"}, "do not fit side by side"),
        ({"first": "{}"}, "letters or words"),
        ({"members": True, "both": (12,), "total": None}, "12 stands in it twice"),
        ({"members": True, "both": tuple(range(10**5))}, "at most 3 members"),
    ],
)
def test_a_diagram_that_contradicts_itself_is_refused(change, said):
    assert said in f"{fault(replace(CLUB, **change))}."


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("How many pupils study French?", 17),
        ("How many pupils study both French and Spanish?", 5),
        ("How many study French or Spanish or both?", 25),
        ("How many pupils do not study Spanish?", 15),
        ("How many study only Spanish?", 8),
        ("How many pupils study French only?", 12),
        ("How many pupils study neither French nor Spanish?", 3),
        ("How many are in neither set?", 3),
        ("How many are in both sets?", 5),
        ("How many pupils are there in total?", 28),
    ],
)
def test_ways_to_ask(text, value):
    ask = of_figure(CLUB, (text,))
    assert as_find(ask).target == as_measured(ask).target == t.Int(value)


@pytest.mark.parametrize(
    "text", ["How many pupils study German?", "How many study only French and Spanish?"]
)
def test_what_it_does_not_show_is_refused(text):
    with pytest.raises(FigureError):
        of_figure(CLUB, (text,))


@pytest.mark.parametrize("kind", ["moved", "changed", "circle", "total", "name"])
@holds(LIED, "Venn diagram")
def test_a_drawing_that_lies_is_found_out(kind):
    assert disagreement(CLUB) == ""
    made = drawn(CLUB)
    marks = list(made.marks)
    role = {"circle": "set", "total": "total", "name": "name"}.get(kind, "number")
    place = next(n for n, mark in enumerate(marks) if mark.role == role)
    mark = marks[place]
    marks[place] = {
        "moved": lambda: replace(mark, at=mark.at._replace(x=marks[place + 3].at.x)),
        "changed": lambda: replace(mark, content=t.Int(13)),
        "circle": lambda: replace(mark, centre=mark.centre._replace(x=mark.centre.x + 2)),
        "total": lambda: replace(mark, content="Total 29"),
        "name": lambda: replace(mark, content="German"),
    }[kind]()
    reading = Reading("in", ("French",))
    with suppress(NotExact):
        found = measuring(CLUB).measure(replace(made, marks=tuple(marks)), reading)
        assert line(found) != line(read(CLUB, reading))


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        ("What is the probability that the pupil studies French?", "17/28"),
        ("What is the probability that a pupil studies both French and Spanish?", "5/28"),
        ("Find the probability that the pupil studies French or Spanish, or both.", "25/28"),
        ("What is the probability that this pupil does not study Spanish?", "15/28"),
        ("Work out the probability that the pupil is in neither set.", "3/28"),
        ("What is the probability that the pupil studies French alone and sings?", None),
        ("What is the probability that the pupil studies Latin?", None),
        ("What is the probability that the pupil studies French or Spanish?", None),
        ("What is the probability that the pupil sings French?", None),
        ("What is the probability that two pupils study French?", None),
    ],
)
def test_the_probability_of_one_chosen_at_random(question, answer):
    figure = VennDiagram("French", "Spanish", (12,), (5,), (8,), (3,))
    prompt = (f"A pupil is chosen at random. {question}",)
    if answer is None:
        with pytest.raises(FigureError):
            of_figure(figure, prompt)
        return
    ask = of_figure(figure, prompt)
    for found in (as_find(ask), as_measured(ask)):
        assert line(found.target) == answer


LETTERED = [figure for figure in examples("Venn diagram", 60) if figure.first == "A"]


@pytest.mark.parametrize(
    ("one", "other"),
    # De Morgan's laws (Formal Logic, 1847), and that a set and its complement are all: from memory.
    [("(A ∪ B)′", "A′ ∩ B′"), ("(A ∩ B)′", "A′ ∪ B′"), ("A ∩ B", "(A′ ∪ B′)′")],
)
def test_de_morgans_laws_by_both_roads(one, other):
    for figure in LETTERED:
        found = [read(figure, Reading("count", (sets,))) for sets in (one, other)]
        found += [measured(figure, Reading("count", (sets,))) for sets in (one, other)]
        assert len({line(node) for node in found}) == 1


def test_a_set_and_its_complement_are_everything():
    for figure in LETTERED:
        for sets in ("A", "A ∩ B", "A′ ∪ B"):
            rest = "A′" if sets == "A" else f"({sets})′"
            counts = [measured(figure, Reading("count", (text,))).n for text in (sets, rest)]
            assert sum(counts) == read(figure, Reading("total")).n


@pytest.mark.parametrize(
    "words_of_it",
    [
        "What is n(A ∩ C)?",
        "What is n(A ∩ B ∩ A)?",
        "What is n(A − B)?",
        "What is n(A ∩)?",
        "List the members of A ∩ B that are even.",
        "List the members of ∅.",
        "What is P(A | B)?",
        "How many are not in n(A ∪ B)?",
    ],
)
def test_a_set_that_is_not_understood_is_refused(words_of_it):
    figure = VennDiagram("A", "B", (1, 2), (3, 4), (5,), (6,), members=True)
    with pytest.raises(FigureError):
        of_figure(figure, (words_of_it,))


def test_a_member_in_the_wrong_circle_is_found_out():
    figure = VennDiagram("A", "B", (1, 2), (3, 4), (5,), (6,), members=True)
    lie = replace(figure, both=(3, 2), first_only=(1, 4))
    found = measuring(figure).measure(drawn(lie), Reading("members", ("A ∩ B",)))
    assert line(found) == "2, 3" != line(read(figure, Reading("members", ("A ∩ B",))))


@pytest.mark.parametrize("names", [("gymnastics", "football"), ("football", "swimming"), "AB"])
def test_the_names_of_two_sets_stand_apart(names):
    made = drawn(replace(CLUB, first=names[0], second=names[1]))
    one, other = (text_box(mark) for mark in made.of("name"))
    assert not one.meets(other, Fraction(1, 3))
    assert other.right < made.right
