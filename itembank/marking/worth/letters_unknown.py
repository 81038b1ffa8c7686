"""The letters of an answer that stand for something unknown."""

from __future__ import annotations

from itembank.notation import tree as t

PI = "π"


def unknown_letters(node: t.Node) -> frozenset[str]:
    """Return the letters of `node` that stand for a number to find: π is a number already.

    >>> from itembank.notation.parse import parse
    >>> [sorted(unknown_letters(parse(text))) for text in ("2πr", "26π ÷ π", "x + 3")]
    [['r'], [], ['x']]
    """
    return t.symbols(node) - {PI}
