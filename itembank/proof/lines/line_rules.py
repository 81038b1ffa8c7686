"""What a line of working has to satisfy, one rule for each kind of question.

Each rule returns what is wrong with a line, ``""`` if it is right, and raises NotExact where a
line is neither right nor wrong as far as can be told.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.items.asks import Answered, Ask, FaultyWorking, Handlers, Pick, WhoIsRight, kind_of
from itembank.notation import tree as t
from itembank.proof.exact.reckoning.truth import true


def line_fault(ask: Ask, line: t.Node) -> str:
    """Return what is wrong with a line of working for a question, or ``""``.

    Raises:
        NotationError: the line cannot be checked.

    >>> from itembank.notation import parse
    >>> from itembank.items.asks import Rewrite
    >>> line_fault(Rewrite(parse("2(x + 3)"), "expand"), parse("2x + 3"))
    'is worth something else'
    """
    if isinstance(line, t.Relation) and not t.symbols(line) - {"π"}:
        return "" if true(line) else "is not true"
    several = isinstance(line, t.Listing) and all(isinstance(p, t.Relation) for p in line.parts)
    if isinstance(line, t.Listing) and several and not kind_of(ask).together:
        return next((fault for part in line.parts if (fault := line_fault(ask, part))), "")
    return RULES.of(ask)(ask, line)


RULES: Handlers[Callable[[Any, t.Node], str]] = Handlers("working", "the check of working")
"""What is wrong with a line of working, for each kind of question; raises as :func:`line_fault`."""


def inner_fault(ask: Answered | FaultyWorking | Pick | WhoIsRight, line: t.Node) -> str:
    """Return what is wrong with a line for the question that this one has inside it, or ``""``.

    Raises:
        NotationError: the line cannot be checked.
    """
    return line_fault(ask.of, line)
