"""The rules for expressions with letters: finished, simplified, expanded, factorised.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from math import gcd

from itembank.items.forms.number_forms import GOOD, TWO_MINUSES, bare
from itembank.items.forms.polynomials import (
    common_letters,
    proportional,
    share_a_factor,
    whole_content,
)
from itembank.items.forms.value_forms import finished_number
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import Quotient

LIKE_TERMS = "like terms are not collected"
CANCELS = "a fraction can be cancelled"


def expression(node: t.Node) -> str:
    """Allow any finished expression: like terms collected, number fractions cancelled.

    Brackets may be left, and algebraic fractions side by side.

    >>> from itembank.notation.parse import parse
    >>> [expression(parse(text)) for text in ("9/(2y)", "(-4x)/5", "3(x + 1)", "2x + 3y")]
    ['', '', '', '']
    >>> expression(parse("2x + 3x")), expression(parse("(2x + 4)/6"))
    ('like terms are not collected', 'a fraction can be cancelled')
    """
    if isinstance(node, t.Relation | t.Ratio | t.Listing | t.Either | t.Label):
        return "it is not an expression"
    if not t.symbols(node):
        return finished_number(node)
    match node:
        case t.Sym() | t.Blank():
            return GOOD
        case t.Neg(of) | t.Bracket(of) | t.Percent(of) | t.Root(of, _):
            if isinstance(node, t.Neg) and isinstance(bare(of), t.Neg):
                return TWO_MINUSES
            return expression(of)
        case t.Money(amount, _) | t.Quantity(amount, _):
            return expression(amount)
        case t.Power(base, exponent):
            if isinstance(base, t.Bracket) and not isinstance(base.of, t.Sum):
                return "a bracket of one term is left raised to a power"
            if exponent in (t.Int(0), t.Int(1)):
                return "a power of 0 or 1 is left"
            return expression(base) or expression(exponent)
        case t.Juxt(factors):
            return side_by_side(factors)
        case t.Frac(top, bottom):
            return _fraction(top, bottom)
        case t.Sum():
            return _sum(node)
        case t.Product(_, rest):
            if any(op == "÷" for op, _ in rest):
                return "a division is not written as a fraction"
            return "a product is not multiplied out"
    below = t.children(node)
    if not below or not t.is_expression(node):
        return "it is not an expression"
    return next(filter(None, map(expression, below)), GOOD)


def side_by_side(factors: tuple[t.Node, ...]) -> str:
    """Allow factors without signs between them: a number first, each letter once, as in 3xy."""
    letters: Counter[str] = Counter()
    roots = 0
    for place, factor in enumerate(factors):
        inner = bare(factor)
        if isinstance(inner, t.Neg):
            return "a minus sign stands inside the product"
        roots += isinstance(inner, t.Root) and not t.symbols(inner)
        if not t.symbols(factor) and not isinstance(inner, t.Root | t.Sum):
            if place:
                return "two numbers are left to multiply"
            # 1x is x, and 0x is 0.
            if isinstance(inner, t.Int) and inner.n < 2:
                return f"a factor {inner.n} is left"
        elif isinstance(factor, t.Bracket) and not isinstance(inner, t.Sum):
            return "a bracket is not needed"
        fault = expression(factor)
        if fault:
            return fault
        base = bare(factor.base) if isinstance(factor, t.Power) else inner
        if isinstance(base, t.Sym):
            letters[base.name] += 1
    if any(times > 1 for times in letters.values()):
        return "a letter stands twice in one product"
    return "two roots are left to multiply" if roots > 1 else GOOD


def _fraction(top: t.Node, bottom: t.Node) -> str:
    fault = expression(top) or expression(bottom)
    if fault:
        return fault
    if bare(bottom) == t.Int(1):
        return "the denominator is 1"
    if isinstance(bare(bottom), t.Neg):
        return "the minus sign stands in the denominator"
    parts = [part for side in (top, bottom) for part in t.walk(side)]
    if any(isinstance(part, t.Frac) for part in parts):
        return "a fraction stands inside a fraction"
    if any(isinstance(part, t.Power) and isinstance(bare(part.exponent), t.Neg) for part in parts):
        return "a negative power is left in a fraction"
    try:
        above, below = algebra(top).top, algebra(bottom).top
    except t.NotationError:
        # Past what algebra takes, say a root of a letter: only what is plainly the same is told.
        return CANCELS if bare(top) == bare(bottom) else GOOD
    if not below:
        return "it divides by zero"
    if not above:
        return "a fraction that is 0 is left"
    # A decimal that a formula divides by may stay, but not a calculation with one.
    contents = whole_content(above), whole_content(below)
    if 0 in contents:
        numbers = t.symbols(bottom) or abs(next(iter(above.values()))) == 1 or len(above) > 1
        return GOOD if numbers else "a division is left to do"
    if gcd(*contents) != 1:
        return CANCELS
    common = common_letters(above) & common_letters(below)
    return CANCELS if common else GOOD


def _terms(node: t.Sum) -> Iterator[t.Node]:
    yield node.first
    yield from (term for _, term in node.rest)


def _sum(node: t.Sum) -> str:
    if any(isinstance(bare(term), t.Neg) for _, term in node.rest):
        return "two signs stand together"
    seen: list[Quotient] = []
    bodies: set[t.Node] = set()
    for term in _terms(node):
        fault = expression(term)
        if fault:
            return fault
        if term == t.Int(0):
            return "a term 0 is left"
        try:
            quotient = algebra(term)
        except t.NotationError:
            body = _body(term)
            if body in bodies:
                return LIKE_TERMS
            bodies.add(body)
            continue
        # Terms are alike where one is a number times the other, whatever either looks like.
        if any(proportional(quotient, earlier) for earlier in seen):
            return LIKE_TERMS
        seen.append(quotient)
    return GOOD


def _body(term: t.Node) -> t.Node:
    """Return a term without the number in front of it, or under it."""
    match bare(term):
        case t.Neg(of):
            return _body(of)
        case t.Frac(top, t.Int()):
            return _body(top)
        case t.Juxt(
            (t.Int() | t.Dec() | t.Mixed() | t.Bracket(t.Frac(t.Int(), t.Int())), *rest)
        ) if rest:
            return rest[0] if len(rest) == 1 else t.Juxt(tuple(rest))
    return bare(term)


def simplified(node: t.Node) -> str:
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
    for part in t.walk(node):
        if isinstance(part, t.Sum):
            if any(_multiplied(term) for term in _terms(part)):
                return "a bracket is left to multiply out"
            if sum(_divided_by_letters(term) for term in _terms(part)) > 1:
                return "fractions are left to put over one denominator"
        elif isinstance(part, t.Frac):
            try:
                above, below = algebra(part.num).top, algebra(part.den).top
            except t.NotationError:
                continue
            # A factor of several terms, which no look at numbers and letters would show.
            if share_a_factor(above, below):
                return CANCELS
    return GOOD


def _divided_by_letters(term: t.Node) -> bool:
    term = bare(term)
    term = bare(term.of) if isinstance(term, t.Neg) else term
    return isinstance(term, t.Frac) and bool(t.symbols(term.den))


def single_fraction(node: t.Node) -> str:
    """Allow one fraction that is in its simplest form, or what is left where it cancels whole.

    >>> from itembank.notation.parse import parse
    >>> single_fraction(parse("(x + y)/(xy)")), single_fraction(parse("1/x + 1/y"))
    ('', 'it is not a single fraction')
    """
    inner = bare(node)
    inner = bare(inner.of) if isinstance(inner, t.Neg) else inner
    fractions = [part for part in t.walk(node) if isinstance(part, t.Frac)]
    if fractions != ([inner] if isinstance(inner, t.Frac) else []):
        return "it is not a single fraction"
    return simplified(node)


def expanded(node: t.Node) -> str:
    """Allow an expression with no bracket multiplied or raised to a power, like terms collected.

    >>> from itembank.notation.parse import parse
    >>> expanded(parse("x^2 + 5x + 6")), expanded(parse("x(x + 5) + 6"))
    ('', 'a bracket is left to multiply out')
    """
    node = bare(node)
    if any(_multiplied(part) for part in t.walk(node)):
        return "a bracket is left to multiply out"
    return expression(node)


def _multiplied(node: t.Node) -> bool:
    """Tell whether `node` is a bracket of several terms, multiplied or raised to a power."""
    match node:
        case t.Bracket(t.Sum()) | t.Power(t.Bracket(t.Sum()), _):
            return True
        case t.Neg(of):
            return _multiplied(of)
        case t.Juxt(factors):
            return any(map(_multiplied, factors))
        case t.Frac(num=t.Juxt() | t.Power() as top):
            return _multiplied(top)
    return False
