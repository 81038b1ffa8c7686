"""Keys on inverse proportion and rates found a third way: from the printed words."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from flint import fmpq

from itembank.items.item import Item
from itembank.notation import line
from itembank.notation import tree as t
from tests.generators.key_reader import exact, numbers, sample


def inverse(item: Item, text: str) -> str | fmpq:
    if "proportional" in text:
        first, other, second = numbers(text)
        return first * other / second
    if "stop" in text:
        # Unit jobs: each one at work does 1 a unit of time.
        many, time, passed, gone = numbers(text)
        left = many * time - many * passed
        return left / (many - gone)
    if "How many more" in text:
        many, time, less = numbers(text)
        return next(fmpq(k) for k in range(1, 200) if (many + k) * less == many * time)
    if "How many hours" in text and "lorry" in text:
        time, many, second = numbers(text)
    else:
        many, time, second = numbers(text)
    return next(fmpq(k) for k in range(1, 2000) if k * second == many * time)


READERS: dict[str, Callable[[Item, str], str | fmpq]] = {
    "ratio.inverse-proportion": inverse,
}


@pytest.mark.parametrize("name", READERS)
def test_keys_are_found_again_from_what_is_printed(name: str) -> None:
    for item, text in sample(name):
        found = READERS[name](item, text)
        key = item.key.text if isinstance(item.key, t.Label) else line(item.key)
        said = key if isinstance(found, str) else exact(key)
        assert said == found, (item.address, text, key)
