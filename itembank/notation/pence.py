"""Whether p after a number is pence, or a letter that stands for a number.

3p is threepence in a price list and three times p in an equation. Where p stands by itself it
is a letter; it is one too where pence would be added to, or set equal to, bare numbers, where
pence would be multiplied by pence, and beside other letters (3p + 2q) where nothing else is
money. An unknown price beside pence stays: x + 20p = 65p has an amount of pence on its other side.
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
    >>> [p_is_letter([parse(text)]) for text in ("3p + 2q", "2p × 3p", "x + 20p = 65p", "5p × 4")]
    [True, True, False, False]
    >>> p_is_letter([parse("100 - 65 = 35p")])  # a line of working that leaves out a sign
    False
    >>> p_is_letter([parse("25p ÷ 300p = 25/300")])
    False
    """
    read = list(nodes)
    if any("p" in symbols(node) or any(map(_clashes, walk(node))) for node in read):
        return True
    if any(isinstance(part, Money) and part.sign != "p" for node in read for part in walk(node)):
        return False
    return any(_among_letters(part, node) for node in read for part in walk(node))


def _among_letters(node: Node, line: Node) -> bool:
    """Tell whether pence are added to letters, and no side of the line is money by itself."""
    if not isinstance(node, Sum | Product):
        return False
    terms = children(node)
    letters = frozenset[str]().union(*map(symbols, terms)) - {"□"}
    if not letters or not any(_kind(term) == "pence" for term in terms):
        return False
    if isinstance(node, Product):
        return "q" in letters
    sides = children(line) if isinstance(line, Relation) else ()
    # q is the letter that goes with p; nobody calls a price q beside pence.
    return "q" in letters or not any(_kind(side) == "pence" for side in sides)


def _clashes(node: Node) -> bool:
    if isinstance(node, Product) and all(op != "÷" for op, _ in node.rest):
        return sum(_kind(part) == "pence" for part in children(node)) > 1
    if not isinstance(node, Sum | Relation):
        return False
    sides = children(node)
    # Nobody adds up fractions with pence over a bar: 4p/11 + 3p/11.
    if any(isinstance(_bare(side), Frac) and _kind(side) == "pence" for side in sides):
        return True
    if {_kind(side) for side in sides} >= {"pence", "bare"}:
        # 100 − 65 = 35p leaves out a sign, and is a line of working that pupils do write.
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
        case Product(first, rest):
            kinds = [_kind(first), *(_kind(part) for _, part in rest)]
            if not {*kinds} <= {"pence", "bare"}:
                return ""
            # Pence divided by pence are a number: 25p ÷ 300p = 25/300.
            signs = [1, *(-1 if op == "÷" else 1 for op, _ in rest)]
            power = sum(s for s, kind in zip(signs, kinds, strict=True) if kind == "pence")
            return {0: "bare", 1: "pence"}.get(power, "")
        case Sum():
            kinds = [_kind(part) for part in children(node)]
            if {*kinds} == {"bare"}:
                return "bare"
            return "pence" if "pence" in kinds and {*kinds} <= {"pence", "bare"} else ""
    return ""
