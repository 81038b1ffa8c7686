"""Whether a tree is a number, and whether anything is left to work out."""

from __future__ import annotations

from itembank.notation import tree as t


def is_number(node: t.Node) -> bool:
    """Whether a tree is one number or a sum to be worked out, with no letter in it.

    >>> is_number(t.Int(3)), is_number(t.Sym("x"))
    (True, False)
    """
    return not isinstance(node, t.Relation | t.Ratio | t.Listing) and not t.symbols(node)


def is_plain(node: t.Node) -> bool:
    """Whether a tree is one number as it stands, so that nothing is left to work out.

    >>> is_plain(t.Int(7)), is_plain(t.Frac(t.Int(28), t.Int(9)))
    (True, True)
    """
    match node:
        case t.Neg(of) | t.Percent(of) | t.Money(of, _) | t.Quantity(of, _):
            return is_plain(of)
        case t.Int() | t.Dec() | t.Mixed() | t.Frac(t.Int(), t.Int()) | t.Blank():
            return True
    return False
