"""Whether p after a number is pence, or a letter that stands for a number.

3p is threepence in a price list and three times p in an equation. Where p stands by itself it
is a letter; it is one too where pence would be added to, or set equal to, bare numbers.
"""

from __future__ import annotations

from collections.abc import Iterable

from itembank.notation.tree import (
    Bracket,
    Dec,
    Frac,
    Int,
    Mixed,
    Money,
    Neg,
    Node,
    Product,
    Relation,
    Sum,
    children,
    symbols,
    walk,
)


def p_is_letter(nodes: Iterable[Node]) -> bool:
    """Tell whether p can only be a letter in lines that were read with p for pence.

    >>> from itembank.notation.parse import parse
    >>> [p_is_letter([parse(text)]) for text in ("p = 4", "3p = 12", "6p + 9", "3p + 40p")]
    [True, True, True, False]
    >>> p_is_letter([parse("100 - 65 = 35p")])  # a line of working that leaves out a sign
    False
    """
    return any("p" in symbols(node) or any(map(_clashes, walk(node))) for node in nodes)


def _clashes(node: Node) -> bool:
    if not isinstance(node, Sum | Relation):
        return False
    sides = children(node)
    # Nobody adds up fractions with pence over a bar: 4p/11 + 3p/11.
    if any(isinstance(_bare(side), Frac) and _kind(side) == "pence" for side in sides):
        return True
    if {_kind(side) for side in sides} >= {"pence", "bare"}:
        worked_out = isinstance(node, Relation) and isinstance(sides[0], Sum | Product)
        return not (worked_out and _kind(sides[0]) == "bare" and isinstance(sides[-1], Money))
    return False


def _bare(node: Node) -> Node:
    return _bare(node.of) if isinstance(node, Neg | Bracket) else node


def _kind(node: Node) -> str:
    match node:
        case Money(_, "p"):
            return "pence"
        case Int() | Dec() | Mixed():
            return "bare"
        case Neg(of) | Bracket(of):
            return _kind(of)
        case Frac(top, bottom):
            return _kind(top) if _kind(bottom) == "bare" else ""
        case Sum() | Product():
            kinds = {_kind(part) for part in children(node)}
            if kinds == {"bare"}:
                return "bare"
            return "pence" if "pence" in kinds and kinds <= {"pence", "bare"} else ""
    return ""
