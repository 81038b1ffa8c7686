"""How close two questions look: near copies, stories told again, answers that repeat."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridShape
from itembank.items.asks import kind_of
from itembank.items.item import Find, Item, Tier, prompt
from itembank.items.measures.closeness import (
    TOLD_AGAIN,
    alike_running,
    closeness,
    ends_alike,
    same_answer,
)
from itembank.items.measures.looks import look, structure
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.notation import tree as t
from itembank.notation.parse import parse

SACK = "A sack holds {a} of compost and the gardener uses {b} of it. How much is left?"
TANK = "A tank at the depot is filled with {a} of water; {b} runs out by night. What remains?"


def asking(words: str, key: str = "7", **maths: object) -> Item:
    runs = prompt(words, **maths)  # type: ignore[arg-type]
    tier = Tier.CORE
    return Item("x/core/0", "x", tier, runs, Find(t.Sym("x")), parse(key), "", (), (), (), 1, ())


def sack(a: int, b: int) -> Item:
    return asking(SACK, a=t.Quantity(t.Int(a), "kg"), b=t.Quantity(t.Int(b), "kg"))


def near(one: Item, other: Item) -> float:
    return closeness(look(one), look(other))


def test_one_story_with_one_number_changed_is_a_near_copy():
    assert near(sack(20, 6), sack(30, 6)) == 1
    assert near(sack(20, 6), sack(30, 11)) == TOLD_AGAIN


def test_another_story_is_not_close_however_alike_the_numbers():
    tank = asking(TANK, a=t.Quantity(t.Int(20), "kg"), b=t.Quantity(t.Int(6), "kg"))
    assert near(sack(20, 6), tank) == 0


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        ("3x + 5 = 20", "3x + 5 = 26", 1),
        ("3x + 5 = 20", "3y + 5 = 26", 1),
        ("3x + 5 = 20", "4x + 5 = 25", 0),
        ("3x + 5 = 20", "3x - 5 = 20", 0),
        ("2/3 + 1/5", "2/3 + 4/5", 1),
        ("2/3 + 1/5", "1/3 + 4/5", 0),
    ],
)
def test_bare_mathematics_is_close_where_one_number_differs(one, other, expected):
    first, second = (asking("Work out {e}.", e=parse(text)) for text in (one, other))
    assert near(first, second) == expected


def test_a_question_of_one_number_is_never_a_near_copy():
    first, second = (asking("Work out {e}.", e=parse(text)) for text in ("√64", "√81"))
    assert near(first, second) == 0


@pytest.mark.parametrize(
    ("keys", "running"),
    [
        (["10 : 15 : 18", "20 : 15 : 18", "25 : 15 : 18"], 1),
        (["10 : 15 : 18", "20 : 15 : 18", "25 : 12 : 18"], 0),
        (["5 : 4", "3 : 4", "7 : 4", "9 : 4"], 2),
        (["2 1/3", "4 1/3", "5 1/3"], 1),
        (["12", "22", "32"], 0),
        (["x = 2", "x = 2", "x = 2"], 0),
    ],
)
def test_answers_that_end_alike_three_times_running(keys, running):
    assert alike_running([look(asking("Q", key)) for key in keys]) == running


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [("x = 3", "3", True), ("£2", "2 kg", True), ("x = 3", "x = -3", False), ("1/2", "2/4", False)],
)
def test_one_answer_is_one_whatever_stands_before_or_behind_it(one, other, same):
    assert same_answer(look(asking("Q", one)), look(asking("Q", other))) is same


def test_an_option_to_name_is_not_a_repeated_answer_but_three_running_are():
    packs = [look(asking("Q", '"Pack A"'))] * 3
    assert not same_answer(packs[0], packs[1])
    assert alike_running(packs) == 1


@st.composite
def items(draw: st.DrawFn) -> tuple[Tier, int, str]:
    """Draw where an item stands: its tier, its number, which the tier has, and its topic."""
    name, tier = draw(st.sampled_from(topic_ids())), draw(st.sampled_from(list(Tier)))
    return tier, draw(st.integers(0, len(find_topic(name).spaces[tier]) - 1)), name


def made(tier: Tier, index: int, name: str) -> Item:
    return find_topic(name).item(tier, index)


@given(items(), items())
def test_closeness_is_symmetric_and_greatest_with_itself(one, other):
    first, second = look(made(*one)), look(made(*other))
    assert closeness(first, second) == closeness(second, first)
    assert ends_alike(first, second) == ends_alike(second, first)
    assert 0 <= closeness(first, second) <= 1
    if first.words or len(first.numbers) > 1:
        assert closeness(first, first) == 1


@given(items())
def test_structure_is_of_question_form_and_working_alone(which):
    item = made(*which)
    assert structure(replace(item, address="y", topic="y", prompt=("Q",))) == structure(item)
    assert structure(replace(item, form="other")) != structure(item)
    assert structure(replace(item, steps=item.steps[:-1])) != structure(item)


def on_grid(*corners: tuple[int, int], key: str = "0") -> Item:
    places = tuple((t.num(x), t.num(y)) for x, y in corners)
    figure = CoordinateGrid(-6, 6, -5, 5, shapes=(GridShape(places, "P"),))
    asked = asking("How many lines of symmetry does shape P have?", key)
    return replace(asked, figure=figure)


def test_a_shape_moved_to_another_place_of_its_grid_is_a_near_copy():
    shape = ((-5, 0), (-5, 3), (-3, 4), (-3, 1))
    moved = tuple((x + 1, y - 2) for x, y in shape)
    assert near(on_grid(*shape), on_grid(*moved)) == 1.0
    stretched = ((-5, 0), (-5, 3), (-1, 4), (-1, 1))
    assert near(on_grid(*shape), on_grid(*stretched)) == 0.0
    assert near(on_grid(*shape), on_grid(*moved, key="2")) == 0.0


@pytest.mark.parametrize("name", ["measures.maps", "geometry.pythagoras", "number.factor-pairs"])
def test_a_question_with_answers_to_judge_tells_the_story_of_the_plain_one(name):
    """*Mei says the answer is*, *True or false?*: such words are in it whatever is asked."""
    topic, tier = find_topic(name), Tier.SUPPORT
    space = topic.spaces[tier]
    plain = {space[index]: index for index in range(len(space))}
    pairs = [
        (topic.item(tier, index), topic.item(tier, plain[values[1]]))
        for values, index in plain.items()
        if len(values) == 2 and values[1] in plain
    ]
    assert len(pairs) > 50
    assert all(near(judged, asked) == TOLD_AGAIN for judged, asked in pairs)


def test_an_instruction_tells_no_story_because_its_answers_are_to_be_judged():
    topic, tier = find_topic("equations.substitution"), Tier.SUPPORT
    items = [topic.item(tier, index) for index in range(len(topic.spaces[tier]))]
    judged = [item for item in items if kind_of(item.ask).judges]
    assert judged
    assert not any(look(item).words for item in judged)
