"""The rules for the forms that numbers, amounts and ratios take.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from math import gcd

from itembank.notation.mixed_units import carry_fault
from itembank.notation.tree import (
    Dec,
    Frac,
    Int,
    Mixed,
    MixedUnits,
    Money,
    Neg,
    Node,
    Percent,
    Quantity,
    Ratio,
)
from itembank.notation.value import exact

GOOD = ""


def unsigned(node: Node) -> Node:
    """Return `node` without its prefix minus."""
    return node.of if isinstance(node, Neg) else node


def integer(node: Node) -> str:
    """Say what keeps a tree from being a whole number, perhaps negative."""
    return GOOD if isinstance(unsigned(node), Int) else "it is not a whole number"


def _cancelled(top: Node, bottom: Node) -> str:
    if not (isinstance(top, Int) and isinstance(bottom, Int)):
        return "its top and bottom are not whole numbers"
    if not bottom.n:
        return "it divides by zero"
    if gcd(top.n, bottom.n) != 1:
        return "the fraction is not in its lowest terms"
    return "the denominator is 1" if bottom.n == 1 else GOOD


def lowest_terms(node: Node) -> str:
    """Say what keeps a tree from being a fraction in its lowest terms."""
    node = unsigned(node)
    if isinstance(node, Frac):
        return _cancelled(node.num, node.den)
    return "it is not a fraction"


def number(node: Node) -> str:
    """Say what keeps a tree from being a whole number or a fraction in its lowest terms."""
    return GOOD if not integer(node) else lowest_terms(node)


def improper(node: Node) -> str:
    """Say what keeps a tree from being an improper fraction in its lowest terms."""
    fault = lowest_terms(node)
    if not fault and abs(exact(node)) < 1:
        return "the fraction is not improper"
    return fault


def mixed(node: Node) -> str:
    """Say what keeps a tree from being a mixed number, its fraction in lowest terms."""
    node = unsigned(node)
    if not isinstance(node, Mixed):
        return "it is not a mixed number"
    if not 0 < node.num < node.den or node.whole < 1:
        return "its fraction part is not a proper fraction"
    return _cancelled(Int(node.num), Int(node.den))


def simplest(node: Node) -> str:
    """Allow a whole number, a proper fraction in lowest terms, or a mixed number."""
    node = unsigned(node)
    if isinstance(node, Mixed):
        return mixed(node)
    if isinstance(node, Frac):
        return lowest_terms(node) or ("it is improper" if exact(node) > 1 else GOOD)
    return integer(node)


def fraction(node: Node) -> str:
    """Say what keeps a tree from being a fraction of whole numbers."""
    node = unsigned(node)
    whole = (
        isinstance(node, Frac)
        and isinstance(node.num, Int)
        and isinstance(node.den, Int)
        and node.den.n != 0
    )
    return GOOD if whole else "it is not a fraction of whole numbers"


def decimal(node: Node) -> str:
    """Say what keeps a tree from being a decimal without needless zeros."""
    node = unsigned(node)
    if isinstance(node, Int):
        return GOOD
    if not isinstance(node, Dec):
        return "it is not a decimal"
    return "it ends in a 0 that is not needed" if _loose_zero(node) else GOOD


def _loose_zero(node: Dec) -> bool:
    return not node.recurring and (not node.places or node.places.endswith("0"))


def percentage(node: Node) -> str:
    """Say what keeps a tree from being a percentage."""
    node = unsigned(node)
    if not isinstance(node, Percent):
        return "it is not a percentage"
    return decimal(node.of) and simplest(node.of)


def ratio(node: Node) -> str:
    """Say what keeps a tree from being a ratio of whole numbers in its simplest form."""
    if not isinstance(node, Ratio):
        return "it is not a ratio"
    if not all(isinstance(part, Int) and part.n > 0 for part in node.parts):
        return "its parts are not whole numbers"
    return (
        GOOD
        if gcd(*(part.n for part in node.parts if isinstance(part, Int))) == 1
        else ("the ratio is not in its simplest form")
    )


def one_to_n(node: Node) -> str:
    """Say what keeps a tree from being a ratio 1 : n."""
    fits = isinstance(node, Ratio) and len(node.parts) == 2 and node.parts[0] == Int(1)
    return GOOD if fits else "the first part is not 1"


def n_to_one(node: Node) -> str:
    """Say what keeps a tree from being a ratio n : 1."""
    fits = isinstance(node, Ratio) and len(node.parts) == 2 and node.parts[1] == Int(1)
    return GOOD if fits else "the second part is not 1"


def money(node: Node) -> str:
    """Say what keeps a tree from being a sum of money, whole or to two places."""
    if not isinstance(node, Money):
        return "it is not a sum of money"
    if node.sign == "p":
        return integer(node.amount)
    amount = node.amount
    if isinstance(amount, Int):
        return GOOD
    two = isinstance(amount, Dec) and len(amount.places) == 2 and not amount.recurring
    return GOOD if two else "pounds and pence are not given to two places"


def quantity(node: Node) -> str:
    """Say what keeps a tree from being a quantity with its unit."""
    if isinstance(node, MixedUnits):
        return carry_fault(node)
    if not isinstance(node, Quantity):
        return "the unit is missing"
    return decimal(node.amount) and simplest(node.amount)


def amount(node: Node) -> str:
    """Allow money, a quantity with its unit, or a plain number."""
    if isinstance(node, Money):
        return money(node)
    if isinstance(node, Quantity | MixedUnits):
        return quantity(node)
    return decimal(node) and simplest(node)
