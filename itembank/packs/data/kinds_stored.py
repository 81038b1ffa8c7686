"""The kinds of the questions that a pack holds, told from its data without reading mathematics."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from typing import Any

from itembank.items.asks.ask_kind import KINDS
from itembank.items.measures.kind_told import MISSING


def kind_stored(item: Mapping[str, Any]) -> str:
    """Return what a teacher calls the kind of a question of a pack; empty where it is a plain one.

    Plain ones are worked out or told as a story: most are, and those on a page for a change are
    of other kinds.

    >>> kind_stored({"ask": {"kind": "true or false", "target": ["1/2 = 2/4"]}})
    'true or false'
    >>> kind_stored({"ask": {"kind": "find", "target": ["□"]}})
    'missing number'
    >>> kind_stored({"ask": {"kind": "find", "target": ["1/2 + 1/3"]}})
    ''
    """
    ask = item["ask"]
    if ask["kind"] == "find" and list(ask["target"]) == ["□"]:
        return MISSING
    kind = KINDS.get(ask["kind"])
    return kind.told if kind is not None else ""


def kinds_counted(items: Iterable[Mapping[str, Any]]) -> dict[str, int]:
    """Return how many questions there are of each kind that is not plain, as they come."""
    return dict(Counter(kind for item in items if (kind := kind_stored(item))))


def kinds_line(counts: Mapping[str, int]) -> str:
    """Return kinds with their numbers in one line.

    >>> kinds_line({"true or false": 2, "match pairs": 1})
    'true or false × 2, match pairs'
    """
    return ", ".join(kind if n == 1 else f"{kind} × {n}" for kind, n in counts.items())
