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
    Inequality,
    OfFigure,
    Pick,
    Rewrite,
    Round,
    RoundReading,
    Sequence,
    Solve,
    Subject,
    Summary,
    WhoIsRight,
)
from itembank.items.asks.answer_given import Answered
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
    OfFigure,
    RoundReading,
    Pick,
    Inequality,
    Subject,
    Solve,
)
"""The kinds whose answer is one thing, right or wrong: half of a list would be neither."""


WHOLE: tuple[type[Ask], ...] = (OfFigure, Solve)
"""The kinds whose answer may be a point or a solution: that has parts, and is right as a whole."""


def _as_many(ours: t.Node | str, answer: t.Node) -> bool:
    """Tell whether an answer has the parts that were found, each of the same letter or number."""
    return isinstance(ours, str) or _sort(ours) == _sort(answer)


def _sort(answer: t.Node) -> object:
    match answer:
        case t.Listing(parts) | t.Either(parts):
            return (type(answer), *map(_sort, parts))
        case t.Relation(t.Sym(name), (("=", _),)):
            return name
    return "value"


Road = Handlers[Callable[[Any, t.Node], Finding]]
"""What a road makes of each kind of question, and how a key differs from it."""


def find_judged(ask: Answered, key: t.Node, road: Road) -> Finding:
    """Return whether the answer is right, and whether the key says so.

    Raises
    ------
    NotExact
        If the question is of another kind, its answer has parts, or the road cannot settle it.
    """
    name = t.Label(TRUE if _right(ask.of, ask.answer, road) else FALSE)
    return found(name, key, key == name)


def find_who(ask: WhoIsRight, key: t.Node, road: Road) -> Finding:
    """Return who gives the right answer, and whether the key says so.

    Raises
    ------
    NotExact
        If nobody does or more than one, and as for one answer.
    """
    names = [name for name, answer in ask.answers if _right(ask.of, answer, road)]
    if len(names) != 1:
        raise NotExact(f"{len(names)} of the answers are right, and not one")
    name = t.Label(names[0])
    return found(name, key, key == name)


def _right(of: Ask, answer: t.Node, road: Road) -> bool:
    if not isinstance(of, ANSWERABLE):
        raise NotExact("whether such an answer is right is not one thing")
    made = road.of(of)(of, answer)
    several = isinstance(answer, t.Listing | t.Either)
    if several and not (isinstance(of, WHOLE) and _as_many(made.answer, answer)):
        raise NotExact("whether such an answer is right is not one thing")
    return not made.fault
