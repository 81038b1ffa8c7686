"""Pictures beside lines of working: one that says something else than its line is found out."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generators._jumps import MOST, jump_line
from generators._line_in_order import in_decimals
from generators.equations._pans import on_pans
from itembank.figures.figure import FigureError, Reading, drawn, fault, read, words
from itembank.figures.figure_data import from_data, to_data
from itembank.figures.kinds.number.balance import Balance
from itembank.figures.kinds.number.bar_model import Bar, BarModel, Box
from itembank.figures.kinds.number.number_line import Jump, NumberLine
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_item, find_topic
from itembank.notation import tree as t
from itembank.notation.parse import parse
from itembank.notation.value import exact
from itembank.proof.exact.exact_road import by_first_road
from itembank.proof.judge import judge
from itembank.proof.lines.steps import step_fault
from itembank.proof.outcome import State
from itembank.proof.sympy.sympy_road import by_second_road
from tests.depth import cases, whole

NEGATIVES = find_topic("number.negatives-add")
TAUGHT = (
    *("number.negatives-add", "equations.balances", "ratio.share", "fractions.of-quantity"),
    *("equations.one-step", "equations.two-step", "equations.both-sides"),
)


def with_picture(name: str, tier: Tier = Tier.SUPPORT) -> Item:
    topic = find_topic(name)
    items = (topic.item(tier, index) for index in range(len(topic.spaces[tier])))
    return next(item for item in items if any(step.figure for step in item.steps))


def redrawn(item: Item, change: Any) -> Item:
    """Return an item with another picture beside the same line."""
    steps = tuple(
        step if step.figure is None else replace(step, figure=change(step.figure, step.maths))
        for step in item.steps
    )
    return replace(item, steps=steps)


def _jump_on(figure: NumberLine, line: t.Node) -> NumberLine:
    (jump,) = figure.jumps
    away = 1 if jump.end < figure.steps else -1
    far = abs(jump.end + away - jump.start)
    return replace(figure, numbered=(), jumps=(Jump(jump.start, jump.end + away, t.Int(far)),))


def _heavier(figure: Balance, line: t.Node) -> Balance:
    return Balance((*figure.left, t.Int(1)), figure.right)


def _longer(figure: BarModel, line: t.Node) -> BarModel:
    first, *rest = figure.bars
    return replace(figure, bars=(replace(first, boxes=(*first.boxes, Box())), *rest))


LIES = (
    ("number.negatives-add", _jump_on),
    ("equations.balances", _heavier),
    ("ratio.share", _longer),
    ("fractions.of-quantity", _longer),
)


@pytest.mark.parametrize(("name", "change"), LIES)
def test_a_picture_that_says_something_else_is_found_by_each_road(name: str, change: Any) -> None:
    item = with_picture(name)
    assert judge(item).state is State.PROVED
    lying = redrawn(item, change)
    assert fault(next(step.figure for step in lying.steps if step.figure)) == ""
    assert "picture of step" in by_first_road(lying).fault
    assert "picture of step" in by_second_road(lying).fault
    assert "picture of step" in step_fault(lying)
    assert judge(lying).state is State.DISPROVED


EACH = cases(10, 60, 60)
"""Questions of each tier."""


@whole
@pytest.mark.parametrize("name", TAUGHT)
def test_the_pictures_of_a_topic_show_what_its_lines_say(name: str) -> None:
    topic, seen = find_topic(name), 0
    for tier, space in topic.spaces.items():
        for index in random.Random(name).sample(range(len(space)), min(len(space), EACH)):
            item = topic.item(tier, index)
            if any(step.figure for step in item.steps):
                seen += 1
                assert step_fault(item) == ""
                assert by_second_road(item).fault == ""
    assert seen > EACH // 2


@given(start=st.integers(-40, 40), change=st.integers(-40, 40))
def test_a_jump_line_starts_and_ends_where_it_says(start: int, change: int) -> None:
    line = jump_line(start, change)
    if line is None:
        assert change == 0 or abs(change) > MOST - 12
        return
    (jump,) = line.jumps
    first = exact(line.first)
    assert (first + jump.start, first + jump.end) == (start, start + change)
    assert {jump.start, jump.end} <= {*line.numbered}
    assert fault(line) == ""


@given(a=st.integers(1, 5), b=st.integers(0, 30), x=st.integers(1, 9))
def test_pans_show_the_two_sides_of_an_equation(a: int, b: int, x: int) -> None:
    letter = t.Sym("x")
    many = letter if a == 1 else t.juxt(t.Int(a), letter)
    left = t.add(many, t.Int(b)) if b else many
    shown = on_pans(t.equals(left, t.Int(a * x + b)))
    if shown is None:
        pans = (letter,) * a + (t.Int(b),) * bool(b)
        with pytest.raises(FigureError, match="there is room for"):
            drawn(Balance(pans, (t.Int(a * x + b),)))
        return
    assert shown.left.count(letter) == a
    assert sum(exact(block) for block in shown.left if block != letter) == b
    assert shown.right == (t.Int(a * x + b),)


@given(
    start=st.integers(-400, 400),
    gaps=st.lists(st.integers(3, 9), min_size=2, max_size=4),
    places=st.integers(1, 2),
    chance=st.randoms(),
)
def test_letters_of_a_line_point_to_the_numbers_of_a_list(
    start: int, gaps: list[int], places: int, chance: random.Random
) -> None:
    numbers = [Fraction(start + sum(gaps[:k]), 10**places) for k in range(len(gaps) + 1)]
    chance.shuffle(numbers)
    figure = in_decimals(numbers, decimal_node)
    if figure is None:
        assert sum(gaps) > 15
        return
    assert fault(figure) == ""
    shown = [exact(read(figure, Reading("number", (letter,)))) for letter, _ in figure.points]
    assert shown == numbers
    assert [letter for letter, _ in figure.points] == [*"ABCDE"[: len(numbers)]]


@pytest.mark.parametrize("turn", [1, -1])
def test_a_line_shows_a_list_that_rises_or_falls_and_no_other(turn: int) -> None:
    item = with_picture("number.order-decimals")
    *before, last = item.steps
    parts = sorted(last.maths.parts, key=exact)[::turn]

    def fault_of(*parts: t.Node) -> str:
        step = replace(last, maths=t.Listing(parts))
        return step_fault(replace(item, steps=(*before, step)))

    assert fault_of(*parts) == ""
    assert "picture of step" in fault_of(parts[1], parts[0], *parts[2:])
    assert "picture of step" in fault_of(*parts[:-1])


def test_no_balance_weighs_less_than_nothing() -> None:
    """x + 12 = 5 has the pans of a balance, and no block x that could stand there."""
    for name in ("equations.one-step", "equations.negative-solutions", "equations.both-sides"):
        topic = find_topic(name)
        for tier, space in topic.spaces.items():
            for index in random.Random(name).sample(range(len(space)), 80):
                item = topic.item(tier, index)
                pictured = any(isinstance(step.figure, Balance) for step in item.steps)
                if pictured and isinstance(item.key, t.Relation):
                    assert exact(item.key.rest[0][1]) > 0, item.address


@pytest.mark.parametrize(
    ("start", "end", "label", "said"),
    [
        (2, 6, "5", "the jump from -3 to 1 is labelled 5"),
        (2, 6, "-4", "the jump from -3 to 1 is labelled -4"),
        (6, 2, "3", "the jump from 1 to -3 is labelled 3"),
        (2, 6, "0.4", "labelled 0.4"),
    ],
)
def test_a_jump_whose_label_lies_is_refused(start: int, end: int, label: str, said: str) -> None:
    line = NumberLine(t.num(-5), t.num(5), 10, (5,), jumps=(Jump(start, end, parse(label)),))
    assert said in fault(line)
    with pytest.raises(FigureError, match="the jump from"):
        from_data(to_data(line))


@pytest.mark.parametrize(
    ("start", "end", "label"), [(2, 6, "4"), (6, 2, "4"), (6, 2, "-4"), (2, 6, "x")]
)
def test_a_jump_whose_label_is_true_or_asked_for_is_drawn(start: int, end: int, label: str) -> None:
    line = NumberLine(t.num(-5), t.num(5), 10, (5,), jumps=(Jump(start, end, parse(label)),))
    assert fault(line) == ""
    assert f"from step {start} to step {end}" in words(line)


def test_a_share_is_drawn_with_its_parts() -> None:
    item = find_item("ratio.share/support/3")
    figures = [step.figure for step in item.steps if isinstance(step.figure, BarModel)]
    for figure in figures:
        assert figure.total is not None
        parts = sum(len(bar.boxes) for bar in figure.bars)
        line = next(step.maths for step in item.steps if step.figure is figure)
        assert isinstance(line, t.Relation)
        assert exact(line.rest[-1][1]) * parts == exact(figure.total)
        assert all(isinstance(bar, Bar) for bar in figure.bars)
        assert Fraction(parts).denominator == 1
