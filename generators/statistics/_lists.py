"""Lists of data: the stories they come from, and how they stand in a line of working."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generators._turns import by_turns
from itembank.items.asks.summary import Summary, SummaryName
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Run, prompt
from itembank.notation import tree as t

# The words, and the least and greatest number that is likely there (plausible, no source).
_STORIES = (
    ("Find the {s} of {row}.", 0, 10_000),
    ("A bus was late by these numbers of minutes: {row}. Find the {s}.", 0, 30),
    ("The ages of the swimmers in a race are {row}. Find the {s}.", 7, 18),
    ("A gardener counts the flowers on different plants: {row}. Find the {s}.", 0, 40),
    ("Here are some numbers: {row}. Work out the {s}.", 0, 10_000),
    ("Swimmers count the lengths they swim: {row}. Find the {s}.", 4, 80),
    ("A school kitchen serves these numbers of salads on different days: {row}. "
     "Find the {s}.", 6, 90),
    ("A library lends these numbers of books on different days: {row}. Find the {s}.", 5, 90),
    ("A bike workshop mends these numbers of bikes on different days: {row}. "
     "Find the {s}.", 0, 20),
)  # fmt: skip


def row(numbers: Sequence[int | Fraction]) -> t.Listing:
    """Return a list as it is printed."""
    return t.Listing(tuple(map(decimal_node, numbers)))


def listed(numbers: Sequence[int], name: SummaryName, turn: int) -> tuple[tuple[Run, ...], Summary]:
    """Return the words for a list of data and what they ask; `turn` chooses among the stories.

    >>> words, ask = listed((4, 4, 7), "mean", 0)
    >>> words[0], ask.detail
    ('Find the mean of ', 'mean')
    """
    fitting = [
        words for words, low, high in _STORIES if low <= min(numbers) and max(numbers) <= high
    ]
    shown = row(numbers)
    words = by_turns(fitting, turn).replace("{s}", name)
    return prompt(words, row=shown), Summary(shown.parts, name)


def and_list(name: str, count: int) -> str:
    """Return places for so many numbers in a sentence, the last after *and*.

    >>> and_list("r", 3)
    '{r0}, {r1} and {r2}'
    """
    places = [f"{{{name}{place}}}" for place in range(count)]
    return " and ".join((", ".join(places[:-1]), places[-1]))


def total(numbers: Sequence[int]) -> t.Node:
    """Return the sum of a list, as it is written out."""
    return t.add(*map(t.num, numbers))


def twice_median(numbers: Sequence[int]) -> int:
    """Return twice the median of a list, as a whole number.

    >>> twice_median((5, 1, 4)), twice_median((1, 4, 5, 9))
    (8, 9)
    """
    inner = sorted(numbers)
    return inner[(len(inner) - 1) // 2] + inner[len(inner) // 2]
