"""Figures that are answers: what the words ask is held to what is drawn, by both roads."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from itembank.figures.figure import words
from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridLine, GridShape
from itembank.figures.kinds.number.line_span import Span
from itembank.figures.kinds.number.number_line import NumberLine
from itembank.figures.kinds.number.shaded_shape import ShadedShape
from itembank.items.asks import Draw
from itembank.items.asks.draw_on import drawn_on, key_of
from itembank.items.item import Item, Tier, prompt
from itembank.items.topics.registry import topics
from itembank.items.topics.space_part import is_other_kind
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.proof.exact.exact_road import by_first_road
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from itembank.proof.sympy.sympy_road import by_second_road
from tests.depth import cases, whole


def asked(text: tuple[Any, ...], figure: Any, shown: Any) -> Item:
    ask = drawn_on(figure, shown, text)
    return Item(
        "larkhythe:a", "graphs", Tier.CORE, text, ask, key_of(ask), "drawing", (), (), (), 1, (),
        figure=figure, key_figure=shown,
    )  # fmt: skip


GRID = CoordinateGrid(-4, 4, -4, 4, points=(("A", t.num(1), t.num(1)),))
PLOT = prompt("Plot the point {at} and label it P.", at=parse("(2, -1)"))
LINE = prompt("Draw the line {e} and label it L.", e=parse("y = 2x - 1"))
SHAPED = CoordinateGrid(
    -6, 6, -5, 5,
    shapes=(GridShape(((t.num(1), t.num(1)), (t.num(3), t.num(1)), (t.num(1), t.num(2))), "A"),),
)  # fmt: skip
REFLECT = prompt(
    "Draw the image of shape A after a reflection in the {y}-axis and label it B.", y=t.Sym("y")
)
RULER = NumberLine(t.num(-5), t.num(5), 10, (5,))
MARK = prompt("Mark the number {n} on the number line with the letter P.", n=t.num(-3))
SHOW = prompt("Show the inequality {e} on the number line.", e=parse("-2 < x ≤ 3"))
BAR = ShadedShape("rectangle", 2, 4, ())
SHADE = prompt("Shade {f} of the rectangle.", f=t.frac(3, 4))


def points(*placed: tuple[str, int, int]) -> CoordinateGrid:
    return replace(GRID, points=tuple((name, t.num(x), t.num(y)) for name, x, y in placed))


def with_point(x: int, y: int, name: str = "P") -> CoordinateGrid:
    return points(("A", 1, 1), (name, x, y))


def with_line(*ends: tuple[int, int], name: str = "L") -> CoordinateGrid:
    (a, b), (c, d) = ends
    return replace(GRID, lines=(GridLine((t.num(a), t.num(b)), (t.num(c), t.num(d)), name),))


def with_shape(*corners: tuple[int, int], name: str = "B") -> CoordinateGrid:
    placed = tuple((t.num(x), t.num(y)) for x, y in corners)
    return replace(SHAPED, shapes=(*SHAPED.shapes, GridShape(placed, name)))


RIGHT = {
    "a point": asked(PLOT, GRID, with_point(2, -1)),
    "a line": asked(LINE, GRID, with_line((0, -1), (2, 3))),
    "an image": asked(REFLECT, SHAPED, with_shape((-1, 1), (-3, 1), (-1, 2))),
    "the image from another corner": asked(REFLECT, SHAPED, with_shape((-1, 2), (-1, 1), (-3, 1))),
    "a number": asked(MARK, RULER, replace(RULER, points=(("P", 2),))),
    "a range": asked(SHOW, RULER, replace(RULER, span=Span(3, 8, high_counts=True))),
    "parts": asked(SHADE, BAR, replace(BAR, shaded=(0, 1, 2, 4, 5, 7))),
}
LIES = {
    "a point elsewhere": asked(PLOT, GRID, with_point(-1, 2)),
    "a point with another letter": asked(PLOT, GRID, with_point(2, -1, "Q")),
    "a second point": asked(PLOT, GRID, points(("A", 1, 1), ("P", 2, -1), ("Q", -3, -2))),
    "a given point that moved": asked(PLOT, GRID, points(("A", 1, 2), ("P", 2, -1))),
    "a given point that is gone": asked(PLOT, GRID, points(("P", 2, -1))),
    "another grid": asked(PLOT, GRID, replace(with_point(2, -1), right=5)),
    "a line besides": asked(
        PLOT, GRID, replace(with_line((0, 0), (1, 1)), points=with_point(2, -1).points)
    ),
    "nothing drawn": asked(PLOT, GRID, GRID),
    "a line with another gradient": asked(LINE, GRID, with_line((0, -1), (1, 2))),
    "a line with another crossing": asked(LINE, GRID, with_line((0, 1), (1, 3))),
    "a reflection in the other axis": asked(REFLECT, SHAPED, with_shape((1, -1), (3, -1), (1, -2))),
    "an image turned over": asked(REFLECT, SHAPED, with_shape((-1, 1), (-3, 1), (-3, 2))),
    "a number on the other side": asked(MARK, RULER, replace(RULER, points=(("P", 8),))),
    "an end that counts": asked(SHOW, RULER, replace(RULER, span=Span(3, 8, True, True))),
    "a range too far": asked(SHOW, RULER, replace(RULER, span=Span(3, 9, high_counts=True))),
    "a part too few": asked(SHADE, BAR, replace(BAR, shaded=(0, 1, 2, 4, 5))),
    "the other part": asked(SHADE, BAR, replace(BAR, shaded=(0, 1))),
}  # fmt: skip


@pytest.mark.parametrize("name", RIGHT)
def test_a_figure_that_shows_what_is_asked_is_proved(name: str) -> None:
    found = judge(RIGHT[name])
    assert found.state is State.PROVED, found


@pytest.mark.parametrize("name", LIES)
def test_each_road_alone_finds_a_figure_that_lies(name: str) -> None:
    for road in (by_first_road, by_second_road):
        try:
            fault = road(LIES[name]).fault
        except t.NotationError as error:
            fault = str(error)
        assert fault, road
    assert judge(LIES[name]).state is not State.PROVED


@pytest.mark.parametrize(
    "text",
    [
        "Plot the point {at} twice and label it P.",
        "Plot the point {at} and do not label it P.",
        "Plot the point {at}.",
        "Plot the points {at} and label it P.",
        "What are the coordinates of A? Plot the point {at} and label it P.",
    ],
)
def test_words_that_say_something_else_leave_it_to_a_person(text: str) -> None:
    item = replace(RIGHT["a point"], prompt=prompt(text, at=parse("(2, -1)")))
    assert judge(item).state is State.NEEDS_PERSON


def test_a_figure_that_no_words_ask_for_is_refused() -> None:
    plain = prompt("What are the coordinates of A?")
    from itembank.items.asks.of_figure import of_figure

    item = replace(
        RIGHT["a point"],
        prompt=plain,
        ask=of_figure(GRID, plain),
        key=parse("(1, 1)"),
        form="point",
    )
    assert judge(item).state is not State.PROVED
    assert judge(replace(item, key_figure=None)).state is State.PROVED


def test_what_is_typed_is_never_marked() -> None:
    for item in RIGHT.values():
        for typed in ("as drawn", line(item.key), "(2, -1)", "yes", "3"):
            assert mark(item, typed).verdict is Verdict.UNREADABLE


DRAWN = cases(6, 90, 30)
"""Questions of each part of a tier that asks for drawings."""


def drawn_items() -> Iterator[Item]:
    for topic in topics():
        for tier, space in topic.spaces.items():
            # Each part asks for one thing, and a part of drawings for drawings alone.
            for part in space.part_indices:
                if not part or not is_other_kind(space[part[0]]):
                    continue
                if not isinstance(topic.item(tier, part[0]).ask, Draw):
                    continue
                chance = random.Random(f"{topic.id}/{tier}/{part[0]}")
                for index in chance.sample(part, min(DRAWN, len(part))):
                    yield topic.item(tier, index)


@whole
def test_the_answers_are_found_again_from_the_words_of_both_figures() -> None:
    """Reads the prompt and what is said of the figures, by regular expressions alone."""
    seen: dict[str, int] = {}
    for item in drawn_items():
        assert item.figure is not None
        assert item.key_figure is not None
        text = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
        given, shown = words(item.figure), words(item.key_figure)
        name = next(name for name in FOUND if text.startswith(name))
        FOUND[name](text, given, shown)
        seen[name] = seen.get(name, 0) + 1
    assert set(seen) == set(FOUND)
    assert sum(seen.values()) > 2 * DRAWN


def _plotted(text: str, given: str, shown: str) -> None:
    (x, y) = map(int, re.findall(r"\((-?\d+), (-?\d+)\)", text)[0])
    added = shown.removeprefix(given)
    assert added != shown
    across = re.search(r"P is (\d+) squares? (left|right)", added)
    up = re.search(r"(\d+) squares? (up|down)", added)
    assert (int(across[1]) if across else 0) == abs(x)
    assert (int(up[1]) if up else 0) == abs(y)
    assert not across or not x or (across[2] == "right") == (x > 0)
    assert not up or not y or (up[2] == "up") == (y > 0)


def _shaded(text: str, given: str, shown: str) -> None:
    top, bottom = map(int, re.findall(r"(\d+)/(\d+)", text)[0])
    rows, each = re.findall(r"divided into (?:(\d+) rows of )?(\d+) equal parts", shown)[0]
    dark = re.findall(r"(\d+) of the parts (?:is|are) shaded", shown)
    assert "None of the parts is shaded" in given
    assert Fraction(int(dark[0]), int(rows or 1) * int(each)) == Fraction(top, bottom)


def _sets_shaded(text: str, given: str, shown: str) -> None:
    """Work the set out by Python's own sets of the four regions."""
    first, second = re.findall(r"has two sets, (\w) and (\w),", given)[0]
    both, neither = "in both sets", "in neither set"
    held = {name: {f"in {name} only", both} for name in (first, second)}
    regions = {neither}.union(*held.values())
    said = re.findall(r'"(.+)"', text)[0]
    other = said.endswith(")′")
    parts = [
        regions - held[part[0]] if part.endswith("′") else held[part[0]]
        for part in re.split(r" [∩∪] ", said[1:-2] if other else said)
    ]
    made = set.intersection(*parts) if "∩" in said else set.union(*parts)
    assert "Nothing is shaded." in given
    dark = re.findall(rf"in \w only|{both}|{neither}", shown.partition("Shaded")[2])
    assert {*dark} == (regions - made if other else made)


def _ranged(text: str, given: str, shown: str) -> None:
    first, last, steps = re.findall(
        r"goes from (.+?) to (.+?) in (\d+) equal steps", shown.replace("negative ", "-")
    )[0]
    size = Fraction(int(last) - int(first), int(steps))
    circles = re.findall(r"(filled|open) circle (\d+) steps?", shown)
    numbers = [int(first) + size * int(at) for _, at in circles]
    said = [int(n) for n in re.findall(r"-?\d+", text)]
    assert sorted(numbers) == sorted(said)
    signs = re.findall(r"[<>≤≥]", text)
    assert [kind == "filled" for kind, _ in circles] == [sign in "≤≥" for sign in signs]
    if len(signs) == 1:
        assert ("to the right" in shown) == (signs[0] in ">≥")
    assert "circle" not in given


def _lined(text: str, given: str, shown: str) -> None:
    assert "line" not in given
    assert re.search(r"line L", shown)


def _moved(text: str, given: str, shown: str) -> None:
    assert "shape B" not in given
    assert shown.startswith(given[:-1])
    corners = re.findall(r"(\d+) squares? (left|right) and (\d+) squares? (up|down)", shown)
    assert len(corners) >= 6
    assert len(corners) % 2 == 0
    half = len(corners) // 2
    places = [
        ((1 if way == "right" else -1) * int(n), (1 if up == "up" else -1) * int(m))
        for n, way, m, up in corners
    ]
    before, after = places[:half], places[half:]
    if "translation" in text:
        shifts = {(u - x, v - y) for (x, y), (u, v) in zip(before, after, strict=True)}
        wanted = {"left": 0, "right": 0, "up": 0, "down": 0}
        wanted |= {way: int(n) for n, way in re.findall(r"(\d+) squares? (\w+)", text)}
        assert shifts == {(wanted["right"] - wanted["left"], wanted["up"] - wanted["down"])}
    elif mirror := re.search(r"the line ([xy]) = (-?\d+)", text):
        at = "xy".index(mirror[1])
        assert all(
            p[at] + q[at] == 2 * int(mirror[2]) and p[1 - at] == q[1 - at]
            for p, q in zip(before, after, strict=True)
        )
    elif axis := re.search(r"the ([xy])-axis", text):
        at = "yx".index(axis[1])
        assert all(
            p[at] == -q[at] and p[1 - at] == q[1 - at] for p, q in zip(before, after, strict=True)
        )


FOUND = {
    "Plot": _plotted,
    'Shade "': _sets_shaded,
    "Shade": _shaded,
    "Show": _ranged,
    "Draw the line": _lined,
    "Draw the image": _moved,
}
