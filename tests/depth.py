"""How much a test looks at: a part on every run, the whole before a change is taken.

`make test` runs every test on a part of what it could be run on, chosen once and for all, so that
a commit passes or fails for what it changed. `make whole`, which continuous integration runs after
it, runs the tests marked here on all there is: every topic, page, width and block of addresses.
`make explore` runs all tests on all there is, and on random cases that are new each time.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, TypeVar

import pytest
from hypothesis import settings
from hypothesis.errors import InvalidArgument

if TYPE_CHECKING:
    from itembank.items.topics.space import Space

T = TypeVar("T")

# The profile is chosen before any test is collected, and stays. (Inside a test that draws cases,
# the default settings are those of that test.)
_profile = settings.default
try:
    WHOLE = _profile is not settings.get_profile("same")
except InvalidArgument:  # a program that draws cases without pytest, such as tests.selfmark.fuzz
    WHOLE = True
NEW: bool = not _profile.derandomize

whole = pytest.mark.whole
"""Marks a test that takes a part in `make test`, and all there is in `make whole`."""

only_whole = pytest.mark.only_whole
"""Marks a test that `make test` leaves to `make whole`: a fast test there sees the usual fault."""


def cases(few: int, many: int, whole: int | None = None) -> int:
    """Return `few` in `make test`, which draws the same cases each time, `many` for new ones.

    Drawn again, the same cases find nothing new. What the few are for is to fail where something
    that held is broken, so there are as many as meet every shape of what is drawn several times.
    A test that is marked as `whole` may take a number of its own there.
    """
    if NEW:
        return many
    return few if whole is None or not WHOLE else whole


def some(values: Iterable[T], count: int) -> list[T]:
    """Return `count` of the values, the first, the last and evenly between; all in `make whole`.

    It is for a test that goes through them itself, and is marked as `whole`.
    """
    values = list(values)
    return values if WHOLE else spread(values, count)


def each(values: Iterable[object], count: int, offset: int = 0) -> list[object]:
    """Return parameters of a test, of which `make test` runs `count` and `make whole` the others.

    An `offset` chooses others between the first and the last: tests that ask different things of
    one list share it out, so that each of it is met by a test on every run.
    """
    values = list(values)
    taken = _places(len(values), count, offset)
    return [value if at in taken else left(value) for at, value in enumerate(values)]


def drawn(space: Space, count: int, chance: random.Random) -> list[int]:
    """Return the indices of `count` questions of a tier; in `make test` of one of each part.

    The parts of a space ask different things, and a fault is mostly of one of them.
    """
    if WHOLE:
        return chance.sample(range(len(space)), min(count, len(space)))
    return [chance.choice(part) for part in space.part_indices if part]


def left(*values: object) -> object:
    """Return a parameter, or several of one case, that `make test` leaves to `make whole`."""
    if len(values) == 1 and isinstance(values[0], tuple):
        (values,) = values
    return pytest.param(*values, marks=only_whole)


def spread(values: Sequence[T], count: int, offset: int = 0) -> list[T]:
    """Return `count` values, the first and the last among them, evenly spread between.

    >>> spread(range(100), 5)
    [0, 25, 50, 74, 99]
    >>> spread(range(100), 5, 3)
    [0, 28, 53, 77, 99]
    >>> spread("abc", 5)
    ['a', 'b', 'c']
    """
    return [values[place] for place in sorted(_places(len(values), count, offset))]


def _places(size: int, count: int, offset: int) -> set[int]:
    last = size - 1
    if last < count:
        return set(range(size))
    inner = (round(n * last / (count - 1)) - 1 + offset for n in range(1, count - 1))
    return {0, last} | {1 + place % (last - 1) for place in inner}
