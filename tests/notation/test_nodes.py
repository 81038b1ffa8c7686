"""Every node of the tree has every face, and each road says what it is worth."""

import dataclasses
import importlib
import pkgutil
import re
from functools import cache
from typing import get_args

import pytest
from hypothesis import given

import itembank
from itembank.notation import algebra, linear, symbolic, value
from itembank.notation import tree as t
from itembank.notation.line import line, shown_line
from itembank.notation.mathml import body, mathml
from itembank.notation.parse import parse_written
from itembank.notation.tree.face import FACES
from itembank.notation.tree.grammar import LEVELS, builder, grammar
from itembank.notation.words import words
from tests.notation.test_trees import drawn
from tests.notation.trees import algebra_trees, trees

KINDS = get_args(t.Node)
NO_VALUE = {t.Label}
"""What is worth nothing, on either road."""
ONLY_ALGEBRA = {t.Sym, t.Blank}
SEVERAL = {t.Relation, t.Ratio, t.Listing, t.Either}
"""What holds several values, so that the first road asks for its parts."""


def test_the_table_holds_the_nodes_that_a_tree_may_be_made_of_and_no_other():
    assert list(FACES) != []
    assert set(FACES) == set(KINDS)
    assert {kind for kind in vars(t).values() if dataclasses.is_dataclass(kind)} == set(KINDS)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
def test_a_node_is_an_immutable_value(kind):
    assert kind.__dataclass_params__.frozen
    assert "__dict__" not in dir(kind)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
def test_a_node_is_read_by_rules_that_the_grammar_has(kind):
    syntax = FACES[kind].syntax
    assert syntax.rules
    for level, way in syntax.rules:
        assert level in LEVELS or level in syntax.build
        built = re.search(r"-> (\w+)", way)
        assert built is None or built[1] in syntax.build
        for sign in re.findall(r"\b[A-Z]{2,}\b", way):
            assert f"\n{sign}" in grammar(True, True)
    assert all(hasattr(builder(), name) for name in syntax.build)


def test_each_road_says_what_every_node_is_worth_or_that_it_is_worth_nothing():
    for table in (value.EXACT, symbolic.SYMPY, linear.LINEAR, algebra.ALGEBRA):
        assert set(table) <= set(KINDS)
    assert set(KINDS) - set(value.EXACT) == NO_VALUE | ONLY_ALGEBRA | SEVERAL
    assert set(KINDS) - set(symbolic.SYMPY) == NO_VALUE
    assert set(linear.LINEAR) >= ONLY_ALGEBRA <= set(algebra.ALGEBRA)


@cache
def samples():
    """Return a node of every kind, drawn at random and found again in each run."""
    found = {}
    for tree in drawn(trees, count=250):
        for part in t.walk(tree):
            found.setdefault(type(part), part)
    return found


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
def test_a_node_can_be_written_said_set_read_and_taken_apart(kind):
    """Drawn trees hold every kind there is: a new one needs a maker in `trees.py`."""
    node = samples()[kind]
    assert parse_written(line(node)) == node
    assert words(node)
    assert mathml(node)
    assert t.rebuilt(node, t.children(node)) == node
    held = [getattr(node, field.name) for field in dataclasses.fields(node)]
    inside = sum(_nodes_in(part) for part in held)
    assert len(t.children(node)) == inside, "a node below is not among its parts"


def _nodes_in(held):
    if isinstance(held, tuple):
        return sum(map(_nodes_in, held))
    return int(type(held) in FACES)


@given(trees)
def test_a_node_of_one_element_sets_one(node):
    from xml.etree import ElementTree

    for part in t.walk(node):
        count = len(list(ElementTree.fromstring(f"<row>{body(part)}</row>")))
        if FACES[type(part)].single:
            assert count == 1


@given(algebra_trees)
def test_a_frame_holds_all_but_the_parts(node):
    for part in t.walk(node):
        below = t.children(part)
        assert t.rebuilt(t.frame(part), below) == part
        assert t.frame(t.frame(part)) == t.frame(part)


@given(trees, algebra_trees)
def test_a_message_can_show_every_tree(one, other):
    """Whatever p is in it, and however little it is well formed."""
    for node in (one, other, t.Sum(one, ()), t.Juxt((t.Int(3), t.Int(4)))):
        assert shown_line(node)
    for node, pence in ((one, True), (other, False)):
        letter = "p" in t.symbols(node)
        assert shown_line(node) == line(node, pence=pence) or pence is letter


def test_a_message_shows_a_line_where_p_is_pence_and_a_letter_in_one():
    both = t.equals(t.Money(t.Int(7), "p"), t.Sym("p"))
    assert shown_line(both) == "7p = p"


def test_a_tree_that_has_no_line_is_shown_in_words():
    assert shown_line(t.Juxt((t.Int(3), t.Int(4)))) == "3 4"
    assert "Juxt" not in shown_line(t.Juxt((t.Sym("o"), t.Sym("f"))))


def test_no_node_is_made_another_by_inheritance():
    """Tables are looked up by a node's own class: a class that inherits from one is in none."""
    for module in pkgutil.walk_packages(itembank.__path__, "itembank."):
        if "__main__" not in module.name and ".migrations" not in module.name:
            importlib.import_module(module.name)
    for kind in FACES:
        assert [sub for sub in kind.__subclasses__() if sub.__module__.startswith("itembank")] == []
