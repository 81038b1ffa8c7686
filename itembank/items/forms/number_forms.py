"""The rules for the forms that numbers, amounts and ratios take.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from math import gcd

from itembank.notation import tree as t
from itembank.notation.mixed_units import carry_fault
from itembank.notation.value import exact

GOOD = ""
TWO_MINUSES = "two minus signs make a plus"
ONE_BELOW = "the denominator is 1"
NOT_LOWEST = "the fraction is not in its lowest terms"
NOT_WHOLE = "its numerator and denominator are not both whole numbers"
DIVIDES_BY_ZERO = "it divides by zero"


def bare(node: t.Node) -> t.Node:
    """Return `node` without the brackets around the whole of it.

    >>> bare(t.Bracket(t.Bracket(t.Int(3))))
    Int(n=3)
    """
    while isinstance(node, t.Bracket):
        node = node.of
    return node


def unsigned(node: t.Node) -> t.Node:
    """Return `node` without its prefix minus, and without brackets around the whole of it.

    >>> unsigned(t.Neg(t.Bracket(t.Frac(t.Int(3), t.Int(4)))))
    Frac(num=Int(n=3), den=Int(n=4))
    """
    node = bare(node)
    return bare(node.of) if isinstance(node, t.Neg) else node


def sort_of(node: t.Node) -> str:
    """Say what sort of number a tree is, as the reason why it is not another.

    >>> sort_of(t.Mixed(2, 1, 3)), sort_of(t.Dec("0", "5"))
    ('it is a mixed number', 'it is a decimal')
    """
    match unsigned(node):
        case t.Int():
            return "it is a whole number"
        case t.Dec():
            return "it is a decimal"
        case t.Mixed():
            return "it is a mixed number"
        case t.Frac():
            return "it is a fraction"
        case t.Percent():
            return "it is a percentage"
        case t.Money():
            return "it is a sum of money"
        case t.Quantity():
            return "it has a unit"
        case t.Ratio():
            return "it is a ratio"
        case of if t.is_operation(of) and not t.symbols(node):
            rooted = any(isinstance(part, t.Root) for part in t.walk(node))
            return "it has a root in it" if rooted else "it is not worked out"
    return "it has a letter in it" if t.symbols(node) else "it is not a number"


def integer(node: t.Node) -> str:
    """Say what keeps a tree from being a whole number, perhaps negative."""
    if isinstance(unsigned(node), t.Neg):
        return TWO_MINUSES
    return GOOD if isinstance(unsigned(node), t.Int) else "it is not a whole number"


def whole_parts(node: t.Node) -> tuple[int, int] | str:
    """Return the numerator and the denominator of a fraction of whole numbers, or what is wrong.

    One minus sign may stand, in front of the fraction or of its numerator.

    >>> from itembank.notation.parse import parse
    >>> [whole_parts(parse(text)) for text in ("-3/4", "(-3)/4", "3/(-4)")]
    [(-3, 4), (-3, 4), 'the minus sign stands in the denominator']
    """
    inner = unsigned(node)
    if not isinstance(inner, t.Frac):
        return TWO_MINUSES if isinstance(inner, t.Neg) else sort_of(node)
    top, bottom = bare(inner.num), bare(inner.den)
    # A minus is right in front of the bar or of the top. Below the bar it is left to move, and two
    # of them are left to cancel.
    signs = [isinstance(part, t.Neg) for part in (bare(node), top, bottom)]
    above, below = unsigned(top), unsigned(bottom)
    if not (isinstance(above, t.Int) and isinstance(below, t.Int)):
        return NOT_WHOLE
    if not below.n:
        return DIVIDES_BY_ZERO
    if sum(signs) > 1:
        return TWO_MINUSES
    if signs[2]:
        return "the minus sign stands in the denominator"
    return (-above.n if any(signs) else above.n), below.n


def lowest_terms(node: t.Node) -> str:
    """Say what keeps a tree from being a fraction in its lowest terms.

    >>> from itembank.notation.parse import parse
    >>> [lowest_terms(parse(text)) for text in ("(-3)/4", "6/8", "2 1/3")]
    ['', 'the fraction is not in its lowest terms', 'it is a mixed number']
    """
    parts = whole_parts(node)
    if isinstance(parts, str):
        return parts
    if gcd(*parts) != 1:
        return NOT_LOWEST
    # 5/1 has nothing to cancel, and is a whole number all the same.
    return ONE_BELOW if parts[1] == 1 else GOOD


def number(node: t.Node) -> str:
    """Say what keeps a tree from being a whole number or a fraction in its lowest terms."""
    return GOOD if not integer(node) else lowest_terms(node)


def improper(node: t.Node) -> str:
    """Say what keeps a tree from being an improper fraction in its lowest terms."""
    fault = lowest_terms(node)
    if not fault and abs(exact(node)) < 1:
        return "its numerator is smaller than its denominator"
    return fault


def mixed(node: t.Node) -> str:
    """Say what keeps a tree from being a mixed number, its fraction in lowest terms."""
    node = unsigned(node)
    if not isinstance(node, t.Mixed):
        return sort_of(node)
    # 2 5/4 is a 3 not yet carried over, and 2 4/4 is 3.
    if not 0 < node.num < node.den or node.whole < 1:
        return "its fraction part is not a proper fraction"
    return lowest_terms(t.Frac(t.Int(node.num), t.Int(node.den)))


def simplest(node: t.Node) -> str:
    """Allow a whole number, a proper fraction in lowest terms, or a mixed number."""
    inner = unsigned(node)
    if isinstance(inner, t.Mixed):
        return mixed(inner)
    if isinstance(inner, t.Frac):
        if fault := lowest_terms(node):
            return fault
        return "it is an improper fraction" if abs(exact(inner)) > 1 else GOOD
    return integer(node) and (TWO_MINUSES if isinstance(inner, t.Neg) else sort_of(node))


def fraction(node: t.Node) -> str:
    """Say what keeps a tree from being a fraction of whole numbers."""
    parts = whole_parts(node)
    return parts if isinstance(parts, str) else GOOD


def decimal(node: t.Node) -> str:
    """Say what keeps a tree from being a decimal without needless zeros."""
    inner = unsigned(node)
    if isinstance(inner, t.Int):
        return GOOD
    if not isinstance(inner, t.Dec):
        return TWO_MINUSES if isinstance(inner, t.Neg) else sort_of(node)
    return "it ends in a 0 that is not needed" if _loose_zero(inner) else GOOD


def _loose_zero(node: t.Dec) -> bool:
    # Behind a recurring block no zero is loose: it comes again.
    return not node.recurring and (not node.places or node.places.endswith("0"))


def _finished(node: t.Node) -> str:
    """Allow a decimal, a whole number, a proper fraction in lowest terms, or a mixed number."""
    return decimal(node) if isinstance(unsigned(node), t.Dec) else simplest(node)


def percentage(node: t.Node) -> str:
    """Say what keeps a tree from being a percentage."""
    node = unsigned(node)
    if not isinstance(node, t.Percent):
        return sort_of(node)
    return _finished(node.of)


def ratio(node: t.Node) -> str:
    """Say what keeps a tree from being a ratio of whole numbers in its simplest form."""
    node = bare(node)
    if not isinstance(node, t.Ratio):
        return "it is not a ratio"
    parts = [bare(part) for part in node.parts]
    sizes = [part.n for part in parts if isinstance(part, t.Int) and part.n > 0]
    if len(sizes) != len(parts):
        return "its parts are not all whole numbers"
    return GOOD if gcd(*sizes) == 1 else "the ratio is not in its simplest form"


def one_to_n(node: t.Node) -> str:
    """Say what keeps a tree from being a ratio 1 : n, with n worked out.

    >>> from itembank.notation.parse import parse
    >>> [one_to_n(parse(text)) for text in ("1 : 2.5", "1 : 5/2", "2 : 5")]
    ['', '', 'the first part is not 1']
    >>> one_to_n(parse("1 : 10/4"))
    'the fraction is not in its lowest terms'
    """
    return _to_one(node, 0)


def n_to_one(node: t.Node) -> str:
    """Say what keeps a tree from being a ratio n : 1, with n worked out."""
    return _to_one(node, 1)


def _to_one(node: t.Node, place: int) -> str:
    node = bare(node)
    if not isinstance(node, t.Ratio) or len(node.parts) != 2:
        return "it is not a ratio of two parts"
    if bare(node.parts[place]) != t.Int(1):
        return f"the {('first', 'second')[place]} part is not 1"
    partner = bare(node.parts[1 - place])
    # An improper fraction too: here 1 : 5/2 is as good as 1 : 2.5 and 1 : 2 1/2.
    return lowest_terms(partner) if isinstance(partner, t.Frac) else _finished(partner)


def money(node: t.Node) -> str:
    """Say what keeps a tree from being a sum of money, whole or to two places."""
    node = unsigned(node)
    if not isinstance(node, t.Money):
        return "it is not a sum of money"
    if node.sign == "p":
        return integer(node.amount)
    amount = node.amount
    if isinstance(amount, t.Int):
        return GOOD
    two = isinstance(amount, t.Dec) and len(amount.places) == 2 and not amount.recurring
    return GOOD if two else "pounds and pence are not given to two places"


def quantity(node: t.Node) -> str:
    """Say what keeps a tree from being a quantity with its unit."""
    node = unsigned(node)
    if isinstance(node, t.MixedUnits):
        return carry_fault(node)
    return _finished(node.amount) if isinstance(node, t.Quantity) else "the unit is missing"


def amount(node: t.Node) -> str:
    """Allow money, a quantity with its unit, or a plain number."""
    match unsigned(node):
        case t.Money():
            return money(node)
        case t.Quantity() | t.MixedUnits():
            return quantity(node)
    return _finished(node)
