"""The trees the other tests are held to: small by construction, and of every kind there is."""

from typing import get_args

import pytest
from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis.strategies import SearchStrategy

from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.mathml import mathml
from tests.depth import each
from tests.notation import trees as shared
from tests.notation.conftest import ROOM, limited
from tests.notation.trees import LARGEST, MOST_IN_ALL, algebra_trees, trees, values


def drawn(strategy, *, count, start=0):
    """Return trees of a strategy; another `start` draws others."""
    found = []
    only_drawn = settings(
        max_examples=count, phases=[Phase.generate], suppress_health_check=list(HealthCheck)
    )
    only_drawn(seed(start)(given(strategy)(lambda node: found.append(node))))()
    return found


def numbers(node):
    """Return the whole numbers that a node itself is written with."""
    match node:
        case t.Int(n):
            return [n]
        case t.Mixed(whole, num, den):
            return [whole, num, den]
        case t.Dec(whole, places, recurring):
            return [int(digits or 0) for digits in (whole, places, recurring)]
    return []


@pytest.mark.parametrize("start", each(range(16), 4))
def test_trees_stay_small_whatever_is_drawn(start):
    for strategy in (trees, algebra_trees, values):
        for node in drawn(strategy, count=20, start=start):
            parts = list(t.walk(node))
            assert len(parts) <= MOST_IN_ALL
            assert all(n <= LARGEST for part in parts for n in numbers(part))
            assert len(line(node, pence=strategy is not algebra_trees)) < 1_000
            assert len(mathml(node)) < 20_000


def test_no_strategy_is_built_of_strategies_level_upon_level():
    """Hypothesis writes a strategy out where it gives up on it, with all that it holds."""
    found = {
        name: strategy
        for name, strategy in vars(shared).items()
        if isinstance(strategy, SearchStrategy)
    }
    assert len(found) > 10
    assert {
        name: size for name, strategy in found.items() if (size := len(repr(strategy))) > 1_000
    } == {}


def test_trees_are_of_every_kind_there_is_and_seldom_trivial():
    found = drawn(trees, count=250)
    assert {type(part) for node in found for part in t.walk(node)} == set(get_args(t.Node))
    assert sum(1 for node in found if len(list(t.walk(node))) > 5) > 125


@pytest.mark.skipif(not limited(), reason="this system cannot bound the memory of a process")
def test_what_would_fill_the_memory_fails_here_instead():
    with pytest.raises(MemoryError):
        bytearray(2 * ROOM)
