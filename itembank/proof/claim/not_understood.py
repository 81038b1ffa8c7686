"""What of a question goes beyond what the roads can work with, in words for a teacher."""

from __future__ import annotations

from itembank.items.asks import Ask, asked
from itembank.notation import tree as t
from itembank.notation.line import shown_line

IN_EXPONENT = "a letter stands in an exponent"
UNDER_ROOT = "a letter stands under a root"
BELOW_BAR = "a letter stands below a fraction bar or after ÷"
NO_WAY = "there is no way here to work out mathematics of this kind"


def not_understood(ask: Ask) -> str:
    """Return where a question could not be worked out, and what stands there that may be why.

    >>> from itembank.items.asks import Solve
    >>> from itembank.notation.parse import parse
    >>> not_understood(Solve((parse("2^x = 8"),)))
    '2^x = 8: a letter stands in an exponent'
    """
    try:
        nodes = asked(ask)
    except t.NotationError:
        return NO_WAY
    for fits, why in _REASONS:
        for node in nodes:
            if any(map(fits, t.walk(node))):
                return f"{shown_line(node)}: {why}"
    return f"{shown_line(nodes[0])}: {NO_WAY}" if nodes else NO_WAY


def _in_exponent(node: t.Node) -> bool:
    return isinstance(node, t.Power) and bool(t.symbols(node.exponent))


def _under_root(node: t.Node) -> bool:
    if isinstance(node, t.Root):
        return bool(t.symbols(node.of))
    return (
        isinstance(node, t.Power)
        and bool(t.symbols(node.base))
        and any(isinstance(part, t.Frac | t.Dec) for part in t.walk(node.exponent))
    )


def _below_bar(node: t.Node) -> bool:
    if isinstance(node, t.Frac):
        return bool(t.symbols(node.den))
    return isinstance(node, t.Product) and any(
        op == "÷" and t.symbols(factor) for op, factor in node.rest
    )


_REASONS = ((_in_exponent, IN_EXPONENT), (_under_root, UNDER_ROOT), (_below_bar, BELOW_BAR))
