"""Tree diagrams: branches that come to 1, ways along them, the lies they are caught in."""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import replace
from fractions import Fraction
from itertools import combinations

import pytest

from itembank.figures.drawing import Stroke, Text, text_box
from itembank.figures.figure import FigureError, Reading, drawn, fault, read, words
from itembank.figures.figure_data import from_data
from itembank.figures.kinds.chance.tree_diagram import Branch, TreeDiagram, Twig
from itembank.items.asks.of_figure import as_find, asked_in, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import NotExact, exact
from itembank.notation.words import words as said
from itembank.proof.measured.measure import as_measured, disagreement, measured, measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds


def tree(first: str, after_red: str, after_blue: str) -> TreeDiagram:
    """Return a tree of red and blue, from texts such as '1/3 2/3' or '0.4 -'."""

    def pair(text: str):
        return [None if part == "-" else parse(part) for part in text.split()]

    twigs = [tuple(map(Twig, ("red", "blue"), pair(text))) for text in (after_red, after_blue)]
    return TreeDiagram(tuple(map(Branch, ("red", "blue"), pair(first), twigs)))


# Five red and three blue counters, two taken without putting back.
COUNTERS = tree("5/8 3/8", "4/7 3/7", "5/7 2/7")


def test_two_counters_without_putting_back():
    """C(5, 2)/C(8, 2) is 10/28, by the rule for combinations (from memory)."""
    both = Reading("probability", ("red", "red"))
    assert exact(read(COUNTERS, both)) == Fraction(10, 28)
    assert line(measured(COUNTERS, both)) == line(t.frac(5, 14))
    mixed = of_figure(COUNTERS, ("What is the probability of one red and one blue?",))
    for found in (as_find(mixed), as_measured(mixed)):
        assert exact(found.target) == Fraction(15, 28)


def from_words(text: str) -> dict[str, dict[str, str | None]]:
    """Rebuild the branches from what is said alone: after what, which outcome, how probable."""
    found: dict[str, dict[str, str | None]] = {}
    for after, told in re.findall(
        r"(?:After ([a-z ]+)|First|shows one event): ([^.]*(?:\.(?=\S)[^.]*)*)\.(?= |$)", text
    ):
        branches = found.setdefault(after, {})
        for word in told.split("; "):
            name, chance = re.fullmatch(
                r"(.+) has (?:a branch with no probability|the probability (.+))", word
            ).groups()
            branches[name] = chance
    return found


@holds(TOLD, "tree diagram")
def test_all_branches_are_known_from_the_words_alone():
    for figure in examples("tree diagram", 40):
        assert from_words(words(figure)) == {
            after: {
                branch.outcome: None if branch.chance is None else said(branch.chance)
                for branch in branches
            }
            for after, branches in (
                ("", figure.branches),
                *((b.outcome, b.then) for b in figure.branches if b.then),
            )
        }


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (tree("1/2 1/3", "1/2 1/2", "1/2 1/2"), "the first branches come to 5/6, not to 1"),
        (tree("1/2 1/2", "0.5 0.6", "1/2 1/2"), "the branches after red come to 11/10, not to 1"),
        (tree("- -", "1/2 1/2", "1/2 1/2"), "leave out more than one"),
        (tree("1 -", "1/2 1/2", "1/2 1/2"), "leave nothing"),
        (tree("3/2 -", "1/2 1/2", "1/2 1/2"), "between 0 and 1"),
        (tree("x -", "1/2 1/2", "1/2 1/2"), "to be numbers"),
        (TreeDiagram((Branch("a", t.Int(1)),)), "there may be 2 to 3"),
        (TreeDiagram(tuple(Branch(str(n)) for n in range(10**5))), "there may be 2 to 3"),
        (TreeDiagram((Branch("Red", parse("0.5")), Branch("red", parse("0.5")))), "one name"),
        (TreeDiagram((Branch("red" * 9, parse("0.5")), Branch("b"))), "at most 10 letters"),
        (
            replace(
                COUNTERS, branches=(replace(COUNTERS.branches[0], then=()), COUNTERS.branches[1])
            ),
            "some branches are followed",
        ),
    ],
)
def test_a_tree_that_contradicts_itself_is_refused(figure, said):
    assert re.search(said, fault(figure))


def test_the_missing_probability():
    figure = tree("0.3 -", "0.5 0.5", "0.2 0.8")
    assert line(read(figure, Reading("missing"))) == "0.7"
    assert line(measured(figure, Reading("missing"))) == "7/10"
    assert line(read(figure, Reading("probability", ("blue", "red")))) == "0.14"
    with pytest.raises(FigureError):
        read(COUNTERS, Reading("missing"))


@pytest.mark.parametrize("kind", ["swapped", "changed", "lost", "renamed"])
@holds(LIED, "tree diagram")
def test_a_drawing_that_lies_is_found_out(kind):
    assert disagreement(COUNTERS) == ""
    made = drawn(COUNTERS)
    marks = list(made.marks)
    chances = [n for n, mark in enumerate(marks) if mark.role == "chance"]
    first, last = chances[0], chances[-1]
    if kind == "swapped":
        a, b = marks[first], marks[last]
        marks[first], marks[last] = (
            replace(a, content=b.content),
            replace(b, content=a.content),
        )
    elif kind == "changed":
        marks[first] = replace(marks[first], content=t.frac(1, 8))
    elif kind == "lost":
        del marks[chances[1] : chances[2] + 1]
    else:
        names = [n for n, m in enumerate(marks) if isinstance(m, Text) and m.role == "outcome"]
        marks[names[0]] = replace(marks[names[0]], content="green")
    lie = replace(made, marks=tuple(marks))
    reading = Reading("probability", ("red", "red"))
    with suppress(NotExact):
        found = measuring(COUNTERS).measure(lie, reading)
        assert exact(found) != exact(read(COUNTERS, reading))


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("What is the probability that both are red?", "5/14"),
        ("Find the probability of two reds.", "5/14"),
        ("Work out the probability of red then blue.", "15/56"),
        ("What is the probability of one red and one blue, in any order?", "15/28"),
        ("What is the probability that the first is blue?", "3/8"),
        ("What is the probability that the first is blue and the second is red?", "15/56"),
    ],
)
def test_ways_to_ask(text, value):
    assert exact(as_find(of_figure(COUNTERS, (text,))).target) == exact(parse(value))


def test_what_is_on_no_branch_is_not_read():
    with pytest.raises(FigureError, match="no branch"):
        asked_in(COUNTERS, ("What is the probability that both are green?",))


def test_a_tree_in_a_file():
    figure = from_data(
        {
            "kind": "tree diagram",
            "branches": [{"outcome": "win", "chance": "0.4"}, {"outcome": "lose"}],
        }
    )
    assert line(read(figure, Reading("probability", ("lose",)))) == "0.6"


def test_fractions_on_branches_are_apart_and_no_stub_looks_like_a_point() -> None:
    """A fraction ends well over the next; of a branch more than a dot is seen behind a decimal."""
    stubs = []
    for figure in examples("tree diagram", 80, 8):
        made = drawn(figure)
        chances = [text_box(mark) for mark in made.of("chance") if isinstance(mark, Text)]
        decimals = [
            text_box(mark)
            for mark in made.of("chance")
            if isinstance(mark, Text)
            and isinstance(mark.content, t.Dec)
            and len(figure.branches) == 2
        ]
        for one, other in combinations(chances, 2):
            if one.left < other.right and other.left < one.right:
                assert not one.meets(other, Fraction(29, 100)), figure
        for mark in made.of("branch"):
            assert isinstance(mark, Stroke)
            (a, b), (c, d) = mark.points
            for box in decimals:
                if (
                    a < box.left < c
                    and box.bottom < b + (d - b) * (box.right - a) / (c - a) < box.top
                ):
                    stubs.append(c - box.right)
    assert stubs
    assert min(stubs) > Fraction(1, 4)
