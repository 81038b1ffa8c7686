"""Kinds of numbers: read from the words, carried through a model, held to the question.

The stories are our own; each wrong model comes to another kind of thing than is asked for.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.notation import parse
from itembank.notation.units import UNITS
from itembank.proof.judge import judge
from itembank.wording.kinds.kind import PLAIN, of_thing, of_unit, settled, unknown
from itembank.wording.kinds.kind_asked import kind_fault
from itembank.wording.kinds.things_counted import noun_stem, plural

BELT = "A belt moves {24} crates in {8} minutes. How many crates does it move in an hour?"
VAN = (
    "A van uses {6} litres for every {80} kilometres. How many kilometres does it go on {9} litres?"
)
TRAY = "{6} trays of plants cost {£9} each. How much do {10} trays cost?"
WAGE = (
    "A firm pays {£11} an hour to each of its {5} painters for {4} hours. "
    "How much does each painter get?"
)
TURF = "A lawn is {9 m} by {4 m}. Turf costs {£3} for each square metre. What does the turf cost?"
PUMP = "A pump moves {90} litres in {15} minutes. How many litres is that in each second?"
EGGS = "{12} eggs fill {2} boxes. How many eggs fill {5} boxes?"


def verdict(prompt: str, key: str, model: str, constants: tuple[int, ...] = ()) -> str:
    item = BankItem(
        id="a-1", tier="core", prompt=prompt, key=key, model=[model], constants=list(constants)
    )
    try:
        return judge(read_item(item, "a:a-1", "t")).state.value
    except NeedsPerson as error:
        return str(error)


@pytest.mark.parametrize(
    ("prompt", "key", "model", "constants"),
    [
        (BELT, "180", "24 ÷ 8 × 60", (60,)),
        (VAN, "120", "80 ÷ 6 × 9", ()),
        (TRAY, "£90", "£9 × 10", ()),
        (WAGE, "£44", "£11 × 4", ()),
        (TURF, "£108", "9 × 4 × £3", ()),
        (PUMP, "0.1", "90 ÷ 15 ÷ 60", (60,)),
        (EGGS, "30", "12 ÷ 2 × 5", ()),
    ],
)
def test_a_model_that_comes_to_what_is_asked_is_not_stopped(
    prompt: str, key: str, model: str, constants: tuple[int, ...]
) -> None:
    says = verdict(prompt, key, model, constants)
    assert "gives" not in says
    assert "change of units" not in says


@pytest.mark.parametrize(
    ("prompt", "key", "model", "constants", "says"),
    [
        (BELT, "3", "24 ÷ 8", (), "a change of units"),
        (VAN, "27/40", "6 ÷ 80 × 9", (), "asks for how many kilometres|asks for kilometres"),
        (TRAY, "£15", "£9 ÷ 6 × 10", (), "money for each tray"),
        (WAGE, "£220", "£11 × 5 × 4", (), "finds all together"),
        (TURF, "£78", "2 × (9 + 4) × £3", (2,), "gives"),
        (PUMP, "6", "90 ÷ 15", (), "a change of units"),
        (EGGS, "5/6", "2 ÷ 12 × 5", (), "for each egg"),
    ],
)
def test_a_model_that_comes_to_something_else_is_left_to_a_person(
    prompt: str, key: str, model: str, constants: tuple[int, ...], says: str
) -> None:
    found = verdict(prompt, key, model, constants)
    assert any(word in found for word in says.split("|")), found


KINDS = st.sampled_from([of_unit(unit) for unit in UNITS] + [of_thing("egg"), PLAIN])


@given(KINDS, KINDS)
def test_a_quotient_undoes_a_product(a, b):
    assert a.times(b).over(b) == a
    assert a.over(a) == PLAIN


@given(KINDS, st.integers(1, 3))
def test_what_is_not_known_is_found_from_what_must_be_alike(kind, n):
    letter = unknown("x")
    assert settled(letter.raised(n), [letter.over(kind)]) == kind.raised(n)


@pytest.mark.parametrize(
    ("single", "many"),
    [
        ("egg", "eggs"), ("box", "boxes"), ("class", "classes"), ("bus", "buses"),
        ("house", "houses"), ("blouse", "blouses"), ("vase", "vases"), ("cactus", "cactuses"),
        ("cookie", "cookies"), ("pie", "pies"), ("baby", "babies"), ("key", "keys"),
        ("hero", "heroes"), ("mango", "mangoes"), ("shoe", "shoes"), ("photo", "photos"),
        ("wolf", "wolves"), ("glove", "gloves"), ("quiz", "quizzes"), ("prize", "prizes"),
        ("lens", "lenses"), ("gas", "gases"), ("case", "cases"), ("child", "children"),
        ("tooth", "teeth"), ("watch", "watches"), ("axe", "axes"), ("giraffe", "giraffes"),
        ("knife", "knives"), ("people", "people"), ("potato", "potatoes"),
    ],
)  # fmt: skip
def test_one_thing_and_many_have_one_stem(single: str, many: str) -> None:
    assert (noun_stem(single), noun_stem(many), plural(single)) == (single, single, many)


@pytest.mark.parametrize("things", ["houses", "cookies", "heroes", "pencil cases"])
def test_what_is_counted_is_named_as_it_is_spelt(things: str) -> None:
    stem = {"houses": "house", "cookies": "cookie", "heroes": "hero"}.get(things, "case")
    asked = f"There are {{12}} {things} in {{2}} rooms. How many {things} are in {{5}} rooms?"
    assert verdict(asked, "5/6", "2 ÷ 12 × 5") == (
        f"The model gives rooms squared for each {stem}; the question asks for how many {things}."
    )


def test_the_thing_of_which_all_are_found_is_named_as_many() -> None:
    asked = "Each box holds {6} eggs. There are {4} boxes. How many eggs are in each box?"
    assert "one of the boxs" not in verdict(asked, "24", "6 × 4")


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ("What is the area of the lawn?", "The question asks for an area, and the key is none."),
        ("What length is the lawn?", "The question asks for a length, and the key is none."),
    ],
)
def test_the_article_of_what_is_asked_is_right(asked: str, says: str) -> None:
    assert kind_fault(parse("5 kg"), asked, prints_money=False) == says
