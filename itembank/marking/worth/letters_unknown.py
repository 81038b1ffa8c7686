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


def is_expression(node: t.Node) -> bool:
    """Tell whether a key is an expression with letters, and no equation or inequality.

    >>> from itembank.notation.parse import parse
    >>> [is_expression(parse(text)) for text in ("x - 2", "x = 2", "24π", "2")]
    [True, False, False, False]
    """
    related = any(isinstance(part, t.Relation) for part in t.walk(node))
    return bool(unknown_letters(node)) and not related
