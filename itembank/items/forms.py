"""The forms a key may have to take, and what is missing when it does not.

Each form is a name, a phrase for people, and a rule. :func:`form_fault` says in words what
keeps a tree from having a form; marking uses the same rule on typed answers.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import gcd

from itembank.notation.tree import (
    Dec,
    Frac,
    Int,
    Label,
    Listing,
    Mixed,
    Money,
    Neg,
    Node,
    Percent,
    Quantity,
    Ratio,
    Relation,
    Sym,
)
from itembank.notation.value import exact

Rule = Callable[[Node], str]
GOOD = ""


def _unsigned(node: Node) -> Node:
    return node.of if isinstance(node, Neg) else node


def _integer(node: Node) -> str:
    return GOOD if isinstance(_unsigned(node), Int) else "it is not a whole number"


def _cancelled(top: Node, bottom: Node) -> str:
    if not (isinstance(top, Int) and isinstance(bottom, Int)):
        return "its top and bottom are not whole numbers"
    if gcd(top.n, bottom.n) != 1:
        return "the fraction is not in its lowest terms"
    return "the denominator is 1" if bottom.n == 1 else GOOD


def _lowest_terms(node: Node) -> str:
    node = _unsigned(node)
    if isinstance(node, Frac):
        return _cancelled(node.num, node.den)
    return "it is not a fraction"


def _number(node: Node) -> str:
    # A whole number, or a proper or improper fraction in lowest terms.
    return GOOD if not _integer(node) else _lowest_terms(node)


def _improper(node: Node) -> str:
    fault = _lowest_terms(node)
    if not fault and abs(exact(node)) < 1:
        return "the fraction is not improper"
    return fault


def _mixed(node: Node) -> str:
    node = _unsigned(node)
    if not isinstance(node, Mixed):
        return "it is not a mixed number"
    if not 0 < node.num < node.den or node.whole < 1:
        return "its fraction part is not a proper fraction"
    return _cancelled(Int(node.num), Int(node.den))


def _simplest(node: Node) -> str:
    # A whole number, a proper fraction in lowest terms, or a mixed number.
    node = _unsigned(node)
    if isinstance(node, Mixed):
        return _mixed(node)
    if isinstance(node, Frac):
        return _lowest_terms(node) or ("it is improper" if exact(node) > 1 else GOOD)
    return _integer(node)


def _fraction(node: Node) -> str:
    node = _unsigned(node)
    whole = isinstance(node, Frac) and isinstance(node.num, Int) and isinstance(node.den, Int)
    return GOOD if whole else "it is not a fraction of whole numbers"


def _decimal(node: Node) -> str:
    node = _unsigned(node)
    if isinstance(node, Int):
        return GOOD
    if not isinstance(node, Dec):
        return "it is not a decimal"
    return "it ends in a 0 that is not needed" if _loose_zero(node) else GOOD


def _loose_zero(node: Dec) -> bool:
    return not node.recurring and (not node.places or node.places.endswith("0"))


def _percentage(node: Node) -> str:
    node = _unsigned(node)
    if not isinstance(node, Percent):
        return "it is not a percentage"
    return _decimal(node.of) and _simplest(node.of)


def _ratio(node: Node) -> str:
    if not isinstance(node, Ratio):
        return "it is not a ratio"
    if not all(isinstance(part, Int) and part.n > 0 for part in node.parts):
        return "its parts are not whole numbers"
    return (
        GOOD
        if gcd(*(part.n for part in node.parts if isinstance(part, Int))) == 1
        else ("the ratio is not in its simplest form")
    )


def _one_to_n(node: Node) -> str:
    fits = isinstance(node, Ratio) and len(node.parts) == 2 and node.parts[0] == Int(1)
    return GOOD if fits else "the first part is not 1"


def _n_to_one(node: Node) -> str:
    fits = isinstance(node, Ratio) and len(node.parts) == 2 and node.parts[1] == Int(1)
    return GOOD if fits else "the second part is not 1"


def _money(node: Node) -> str:
    if not isinstance(node, Money):
        return "it is not a sum of money"
    if node.sign == "p":
        return _integer(node.amount)
    amount = node.amount
    if isinstance(amount, Int):
        return GOOD
    two = isinstance(amount, Dec) and len(amount.places) == 2 and not amount.recurring
    return GOOD if two else "pounds and pence are not given to two places"


def _quantity(node: Node) -> str:
    if not isinstance(node, Quantity):
        return "the unit is missing"
    return _decimal(node.amount) and _simplest(node.amount)


def _amount(node: Node) -> str:
    # Money, a quantity with its unit, or a plain number.
    if isinstance(node, Money):
        return _money(node)
    if isinstance(node, Quantity):
        return _quantity(node)
    return _decimal(node) and _simplest(node)


def _solution(node: Node) -> str:
    if not (isinstance(node, Relation) and len(node.rest) == 1 and isinstance(node.first, Sym)):
        return "it is not a letter, a sign and a number"
    op, right = node.rest[0]
    if op != "=":
        return "the sign is not ="
    return _number(right) and _amount(right)


def _inequality(node: Node) -> str:
    if not (isinstance(node, Relation) and len(node.rest) == 1 and isinstance(node.first, Sym)):
        return "it is not a letter, a sign and a number"
    op, right = node.rest[0]
    if op not in ("<", ">", "≤", "≥"):
        return "the sign is not an inequality sign"
    return _number(right) and _amount(right)


def _list(node: Node) -> str:
    return GOOD if isinstance(node, Listing) else "it is not a list"


def _amounts(node: Node) -> str:
    if not isinstance(node, Listing):
        return "it is not a list of amounts"
    return next((fault for fault in map(_amount, node.parts) if fault), GOOD)


def _sign(node: Node) -> str:
    fits = isinstance(node, Relation) and node.rest[0][0] in ("<", ">", "=")
    return GOOD if fits else "it is not two numbers with a sign between"


def _name(node: Node) -> str:
    return GOOD if isinstance(node, Label) else "it does not name one of the choices"


FORMS: dict[str, tuple[str, Rule]] = {
    "integer": ("a whole number", _integer),
    "number": ("a whole number or a fraction in its lowest terms", _number),
    "fraction": ("a fraction", _fraction),
    "lowest-terms": ("a fraction in its lowest terms", _lowest_terms),
    "improper": ("an improper fraction in its lowest terms", _improper),
    "mixed": ("a mixed number, its fraction in lowest terms", _mixed),
    "simplest": ("the simplest form: improper fractions as mixed numbers", _simplest),
    "decimal": ("a decimal", _decimal),
    "percentage": ("a percentage", _percentage),
    "ratio": ("a ratio of whole numbers in its simplest form", _ratio),
    "one-to-n": ("a ratio in the form 1 : n", _one_to_n),
    "n-to-one": ("a ratio in the form n : 1", _n_to_one),
    "money": ("a sum of money", _money),
    "quantity": ("a quantity with its unit", _quantity),
    "amount": ("an amount", _amount),
    "solution": ("the letter, an equals sign and its value", _solution),
    "inequality": ("the letter, an inequality sign and a number", _inequality),
    "list": ("a list in order", _list),
    "amounts": ("an amount for each", _amounts),
    "sign": ("two numbers with <, > or = between them", _sign),
    "name": ("the name of one of the choices", _name),
}


def form_words(form: str) -> str:
    """Return the phrase for a form.

    >>> form_words("ratio")
    'a ratio of whole numbers in its simplest form'
    """
    return FORMS[form][0]


def form_fault(form: str, node: Node) -> str:
    """Return what keeps `node` from having `form`, or an empty string.

    >>> form_fault("lowest-terms", Frac(Int(2), Int(4)))
    'the fraction is not in its lowest terms'
    >>> form_fault("lowest-terms", Frac(Int(1), Int(2)))
    ''
    """
    return FORMS[form][1](node)


# Builders: a rational number as a tree of a given form.


def number_node(value: Fraction | int) -> Node:
    """Return a whole number or a fraction (improper if need be) in lowest terms.

    >>> number_node(Fraction(-6, 4))
    Neg(of=Frac(num=Int(n=3), den=Int(n=2)))
    """
    top, bottom = abs(value.numerator), value.denominator
    node: Node = Int(top) if bottom == 1 else Frac(Int(top), Int(bottom))
    return Neg(node) if value < 0 else node


def simplest_node(value: Fraction | int) -> Node:
    """Return a whole number, a proper fraction or a mixed number in lowest terms.

    >>> simplest_node(Fraction(11, 4))
    Mixed(whole=2, num=3, den=4)
    """
    whole, top = divmod(abs(value.numerator), value.denominator)
    if not top or not whole:
        return number_node(value)
    node = Mixed(whole, top, value.denominator)
    return Neg(node) if value < 0 else node


def decimal_node(value: Fraction | int) -> Node:
    """Return a decimal, recurring where it does not terminate.

    The recurring block starts at the first remainder of the long division that comes again.

    >>> decimal_node(Fraction(1, 6))
    Dec(whole='0', places='1', recurring='6')
    >>> decimal_node(Fraction(3, 4))
    Dec(whole='0', places='75', recurring='')
    """
    whole, remainder = divmod(abs(value.numerator), value.denominator)
    digits, seen = "", {}
    while remainder and remainder not in seen:
        seen[remainder] = len(digits)
        digit, remainder = divmod(remainder * 10, value.denominator)
        digits += str(digit)
    cut = seen[remainder] if remainder else len(digits)
    node: Node = Dec(str(whole), digits[:cut], digits[cut:]) if digits else Int(whole)
    return Neg(node) if value < 0 else node


def money_node(pounds: Fraction | int) -> Money:
    """Return pounds, with pence to two places where there are any.

    >>> money_node(Fraction(9, 2))
    Money(amount=Dec(whole='4', places='50', recurring=''), sign='£')
    """
    whole, pence = divmod(int(pounds * 100), 100)
    return Money(Dec(str(whole), f"{pence:02d}")) if pence else Money(Int(whole))
