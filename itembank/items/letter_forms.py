"""The rules for expressions with letters: finished, simplified, expanded, factorised.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from math import gcd

from itembank.items.number_forms import GOOD
from itembank.items.polynomials import common_letters, share_a_factor, splits, whole_content
from itembank.items.value_forms import finished_number
from itembank.notation.algebra import UNIT, algebra
from itembank.notation.tree import (
    Blank,
    Bracket,
    Frac,
    Int,
    Juxt,
    Money,
    Neg,
    Node,
    NotationError,
    Percent,
    Power,
    Product,
    Quantity,
    Root,
    Sum,
    Sym,
    symbols,
    walk,
)

LIKE_TERMS = "like terms are not collected"
CANCELS = "a fraction can be cancelled"


def expression(node: Node) -> str:
    """Allow any finished expression: like terms collected, number fractions cancelled.

    Brackets may be left, and algebraic fractions side by side.

    >>> from itembank.notation.parse import parse
    >>> [expression(parse(text)) for text in ("9/(2y)", "(-4x)/5", "3(x + 1)", "2x + 3y")]
    ['', '', '', '']
    >>> expression(parse("2x + 3x")), expression(parse("(2x + 4)/6"))
    ('like terms are not collected', 'a fraction can be cancelled')
    """
    if not symbols(node):
        return finished_number(node)
    match node:
        case Sym() | Blank():
            return GOOD
        case Neg(of) | Bracket(of) | Percent(of) | Root(of, _):
            if isinstance(node, Neg) and isinstance(of, Neg):
                return "two minus signs stand together"
            return expression(of)
        case Money(amount, _) | Quantity(amount, _):
            return expression(amount)
        case Power(base, exponent):
            if isinstance(base, Bracket) and not isinstance(base.of, Sum):
                return "a bracket of one term is left raised to a power"
            if exponent in (Int(0), Int(1)):
                return "a power of 0 or 1 is left"
            return expression(base) or expression(exponent)
        case Juxt(factors):
            return _juxt(factors)
        case Frac(top, bottom):
            return _fraction(top, bottom)
        case Sum():
            return _sum(node)
        case Product(_, rest):
            if any(op == "÷" for op, _ in rest):
                return "a division is not written as a fraction"
            return "a product is not multiplied out"
    return "it is not an expression"


def _juxt(factors: tuple[Node, ...]) -> str:
    letters: Counter[str] = Counter()
    for place, factor in enumerate(factors):
        inner = factor.of if isinstance(factor, Bracket) else factor
        if not symbols(factor) and not isinstance(inner, Root | Sum):
            if place:
                return "two numbers are left to multiply"
            if isinstance(inner, Int) and inner.n < 2:
                return f"a factor {inner.n} is left"
        elif isinstance(factor, Bracket) and not isinstance(inner, Sum):
            return "a bracket is not needed"
        fault = expression(factor)
        if fault:
            return fault
        base = factor.base if isinstance(factor, Power) else factor
        if isinstance(base, Sym):
            letters[base.name] += 1
    if any(times > 1 for times in letters.values()):
        return "a letter stands twice in one product"
    return GOOD


def _fraction(top: Node, bottom: Node) -> str:
    fault = expression(top) or expression(bottom)
    if fault:
        return fault
    if bottom == Int(1):
        return "the denominator is 1"
    if any(isinstance(part, Frac) for side in (top, bottom) for part in walk(side)):
        return "a fraction stands inside a fraction"
    try:
        above, below = algebra(top).top, algebra(bottom).top
    except NotationError:
        return GOOD
    if not below:
        return "it divides by zero"
    if gcd(whole_content(above), whole_content(below)) != 1:
        return CANCELS
    common = common_letters(above) & common_letters(below)
    return CANCELS if common else GOOD


def _terms(node: Sum) -> Iterator[Node]:
    yield node.first
    yield from (term for _, term in node.rest)


def _sum(node: Sum) -> str:
    if any(isinstance(term, Neg) for _, term in node.rest):
        return "two signs stand together"
    seen = set()
    for term in _terms(node):
        fault = expression(term)
        if fault:
            return fault
        if term == Int(0):
            return "a term 0 is left"
        try:
            quotient = algebra(term)
        except NotationError:
            continue
        # Like terms have one term over one term, with the same letters, exponents and roots.
        if len(quotient.top) == len(quotient.bottom) == 1:
            kind = (*quotient.top, *quotient.bottom)
            if kind in seen:
                return LIKE_TERMS
            seen.add(kind)
    return GOOD


def simplified(node: Node) -> str:
    """Allow one finished expression in which nothing is left to multiply out, collect or cancel.

    A product of brackets may stand alone, but not as a term beside others.

    >>> from itembank.notation.parse import parse
    >>> [simplified(parse(text)) for text in ("5x + 10", "5(x + 2)", "-x/y", "(x - 8)/19")]
    ['', '', '', '']
    >>> simplified(parse("3(x + 2) + y")), simplified(parse("(x^2 - 1)/(x - 1)"))
    ('a bracket is left to multiply out', 'a fraction can be cancelled')
    """
    fault = expression(node)
    if fault:
        return fault
    for part in walk(node):
        if isinstance(part, Sum):
            if any(_multiplied(term) for term in _terms(part)):
                return "a bracket is left to multiply out"
        elif isinstance(part, Frac):
            try:
                above, below = algebra(part.num).top, algebra(part.den).top
            except NotationError:
                continue
            if share_a_factor(above, below):
                return CANCELS
    return GOOD


def expanded(node: Node) -> str:
    """Allow an expression with no bracket multiplied or raised to a power, like terms collected.

    >>> from itembank.notation.parse import parse
    >>> expanded(parse("x^2 + 5x + 6")), expanded(parse("x(x + 5) + 6"))
    ('', 'a bracket is left to multiply out')
    """
    if any(_multiplied(part) for part in walk(node)):
        return "a bracket is left to multiply out"
    return expression(node)


def _multiplied(node: Node) -> bool:
    """Tell whether `node` is a bracket of several terms, multiplied or raised to a power."""
    match node:
        case Bracket(Sum()) | Power(Bracket(Sum()), _):
            return True
        case Neg(of):
            return _multiplied(of)
        case Juxt(factors):
            return any(map(_multiplied, factors))
        case Frac(num=Juxt() | Power() as top):
            return _multiplied(top)
    return False


def factorised(node: Node) -> str:
    """Allow a product of factors that have no common factor left and do not split further.

    Looked for are common numbers and letters, and two factors of the second degree (also in
    x² or in two letters, as x² − y²), over the rational numbers.

    >>> from itembank.notation.parse import parse
    >>> [factorised(parse(text)) for text in ("(x + 1)(x - 4)", "(x + 3)^2", "x^2(y - 1)")]
    ['', '', '']
    >>> factorised(parse("2(2x + 4)")), factorised(parse("2(x^2 - 9)"))
    ('2x + 4 has a common factor left', 'x^2 - 9 can be factorised further')
    """
    from itembank.notation.line import line

    node = node.of if isinstance(node, Neg) else node
    match node:
        case Juxt(factors):
            pass
        case Power(Bracket(), Int(n)) if n > 1:
            factors = (node,)
        case _:
            return "it is not a product of factors"
    fault = _juxt(factors)
    if fault:
        return fault
    for factor in factors:
        base = factor.base if isinstance(factor, Power) else factor
        if not isinstance(base, Bracket) or not isinstance(base.of, Sum):
            continue
        try:
            quotient = algebra(base.of)
        except NotationError:
            continue
        if quotient.bottom != {UNIT: 1}:
            return f"{line(base.of)} still holds a fraction"
        content = whole_content(quotient.top)
        if content != 1 or common_letters(quotient.top):
            return f"{line(base.of)} has a common factor left"
        if splits(quotient.top):
            return f"{line(base.of)} can be factorised further"
    return GOOD
