"""Builders of the sums for a list of numbers: its mean, its median, its mode and its range."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

from itembank.items.asks.summary import Summary, SummaryName
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.wording.tasks.sums.sums import Built, NotBuilt, alike, less, several, total


def mean(*nodes: t.Node) -> Built:
    """Return the sum of a list over how many there are."""
    parts = several(nodes)
    return t.Product(t.Bracket(total(*parts)[0]), (("÷", t.Int(len(parts))),)), (len(parts),)


def median(*nodes: t.Node) -> Built:
    """Return the middle value; in brackets, since it is found, and no question over again."""
    parts = sorted(alike(several(nodes)), key=exact)
    middle = len(parts) // 2
    if len(parts) % 2:
        return t.Bracket(parts[middle]), ()
    return halfway(parts[middle - 1], parts[middle])


def mode(*nodes: t.Node) -> Built:
    """Return the one value there is most often; a list with two modes, or none, has no answer."""
    parts = alike(several(nodes))
    often = Counter(exact(part) for part in parts).most_common(2)
    if often[0][1] == 1 or (len(often) > 1 and often[0][1] == often[1][1]):
        raise NotBuilt("No value, or more than one, stands in the list most often.")
    return t.Bracket(next(part for part in parts if exact(part) == often[0][0])), ()


def halfway(a: t.Node, b: t.Node) -> Built:
    """Return the mean of two numbers."""
    if isinstance(a, t.ClockTime) or t.symbols(a) or t.symbols(b):
        raise NotBuilt("Half way is between two numbers.")
    return t.Product(t.Bracket(total(a, b)[0]), (("÷", t.Int(2)),)), (2,)


def spread(*nodes: t.Node) -> Built:
    """Return the range, the greatest of a list less the least."""
    parts = sorted(several(nodes), key=exact)
    return less(parts[-1], parts[0])


BUILDERS: dict[SummaryName, Callable[..., Built]] = {
    "mean": mean,
    "median": median,
    "mode": mode,
    "range": spread,
}
"""What builds the sum of each summary."""


def as_sum(ask: Summary) -> t.Node:
    """Return what is to be worked out for a summary of a list.

    Raises
    ------
    NotationError
        If its numbers are of different kinds, or have no mode.

    >>> from itembank.notation import line, parse
    >>> line(as_sum(Summary(parse("3, 9, 5, 6").parts, "median")))
    '(5 + 6) ÷ 2'
    """
    return BUILDERS[ask.detail](*ask.numbers)[0]


def summary_of(build: Callable[..., Built], nodes: tuple[t.Node, ...]) -> Summary | None:
    """Return the summary that a builder works out of some pieces of mathematics, or None."""
    for name, builder in BUILDERS.items():
        if builder is build:
            return Summary(several(nodes), name)
    return None
