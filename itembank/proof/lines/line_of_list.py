"""The check of a list in the working of a mean, a median, a mode or a range."""

from __future__ import annotations

from collections import Counter

from itembank.items.asks.summary import Summary
from itembank.notation import tree as t
from itembank.notation.value import exact


def row_fault(ask: Summary, line: t.Listing) -> str:
    """Return what is wrong with a list in the working, or ``""``.

    It may be the numbers of the question in another order, or some of them, such as the middle
    two.

    >>> from itembank.notation import parse
    >>> ask = Summary(parse("7, 3, 3, 9").parts, "median")
    >>> [row_fault(ask, parse(line)) for line in ("3, 3, 7, 9", "3, 7", "3, 7, 7")]
    ['', '', 'holds 7 more often than the question']
    """
    left = Counter(map(exact, ask.numbers))
    for part in line.parts:
        value = exact(part)
        if not left[value]:
            return f"holds {value} more often than the question"
        left[value] -= 1
    return ""
