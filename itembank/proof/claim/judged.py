"""Whether an answer that somebody gives to a question is right, by either road.

The road finds what the question comes to; what it says of the answer, as of a key, tells.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.items.asks import (
    Ask,
    Common,
    ErrorInterval,
    Find,
    Give,
    Handlers,
    Rewrite,
    Round,
    Sequence,
    Summary,
)
from itembank.items.asks.answered import Answered
from itembank.items.asks.true_or_false import FALSE, TRUE
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found

ANSWERABLE: tuple[type[Ask], ...] = (
    Find,
    Round,
    Common,
    Sequence,
    ErrorInterval,
    Rewrite,
    Give,
    Summary,
)
"""The kinds whose answer is one thing, right or wrong: half of a list would be neither."""


def find_judged(
    ask: Answered, key: t.Node, road: Handlers[Callable[[Any, t.Node], Finding]]
) -> Finding:
    """Return whether the answer is right, and whether the key says so.

    Raises
    ------
    NotExact
        If the question is of another kind, its answer has parts, or the road cannot settle it.
    """
    if not isinstance(ask.of, ANSWERABLE) or isinstance(ask.answer, t.Listing | t.Either):
        raise NotExact("whether such an answer is right is not one thing")
    wrong = road.of(ask.of)(ask.of, ask.answer).fault
    name = t.Label(FALSE if wrong else TRUE)
    return found(name, key, key == name)
