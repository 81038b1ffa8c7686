"""Keys of the algebra strand found a third way: from the printed words, in python-flint."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from itembank.items.item import Item
from itembank.notation import line
from tests.generators.key_reader import sample
from tests.generators.letter_values import same


def terms_of(text: str) -> int:
    """Return how many terms an expression without brackets has."""
    assert "(" not in re.sub(r"\(\d+/\d+\)", "", text), text
    return len(re.findall(r" [+-] ", text)) + 1


def in_brackets(text: str) -> list[str]:
    return re.findall(r"\(([^()]*)\)", text)


def collect_terms(item: Item, text: str) -> str:
    key = line(item.key)
    assert terms_of(key) <= 2
    if found := re.fullmatch(r"Simplify (.*)\.", text):
        return found[1]
    if found := re.fullmatch(r"Which expression do you add to (.*) to get (.*)\? Give .*", text):
        return f"{found[2]} - ({found[1]})"
    if "perimeter in" in text:
        long, wide = in_brackets(text)
        return f"2 × ({long}) + 2 × ({wide})"
    whole, one, other = in_brackets(text)
    assert "third" in text
    return f"{whole} - ({one}) - ({other})"


def expand_one_bracket(item: Item, text: str) -> str:
    assert "(" not in line(item.key)
    if found := re.fullmatch(r"Expand(?: and simplify)? (.*)\.", text):
        return found[1]
    if found := re.search(r"(?:Each|has|holds).* \((.*?)\) .* (?:in|on) (\d+) ", text):
        return f"{found[2]} × ({found[1]})"
    sizes = re.findall(r"(\d+) metres? wide and \((.*?)\) metres long", text)
    whole, *hole = (f"{wide} × ({long})" for wide, long in sizes)
    assert ("rest" in text) == bool(hole)
    return " - ".join([whole, *hole])


def expand_two_brackets(item: Item, text: str) -> str:
    assert "(" not in line(item.key)
    if found := re.fullmatch(r"Expand and simplify (.*)\.", text):
        return found[1]
    long, wide = in_brackets(text)
    hole = re.search(r" It is (\w) metres long and (\d+) metres? wide", text)
    taken = f" - {hole[1]} × {hole[2]}" if hole else ""
    assert ("rest" in text) == bool(hole)
    return f"({long}) × ({wide}){taken}"


WORKED_OUT: dict[str, Callable[[Item, str], str]] = {
    "algebra.collect-terms": collect_terms,
    "algebra.expand-one-bracket": expand_one_bracket,
    "algebra.expand-two-brackets": expand_two_brackets,
}
"""What the printed words ask, as one expression that the key has to be worth."""


@pytest.mark.parametrize("name", WORKED_OUT)
def test_keys_are_worth_what_is_printed(name: str) -> None:
    for item, text in sample(name):
        asked = WORKED_OUT[name](item, text)
        assert same(asked, line(item.key)), (item.address, text, line(item.key))
        for slip in item.slips:
            assert not same(asked, line(slip.wrong)), (item.address, text, line(slip.wrong))
