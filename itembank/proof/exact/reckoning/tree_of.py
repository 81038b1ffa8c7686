"""Writes what the exact road has worked out as a tree: polynomials and their quotients."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, lcm

from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t
from itembank.notation.quotients import UNIT, Monomial, Polynomial, Quotient
from itembank.notation.value import NotExact, Rational, over
from itembank.proof.exact.reckoning.surd import surd, surd_node
from itembank.proof.exact.reckoning.univariate import Coefficients, coefficients, common, remainder


def quotient_node(value: Quotient) -> t.Node:
    """Return a quotient of polynomials as a tree, cancelled where that is easy.

    >>> from itembank.notation import line, parse
    >>> from itembank.notation.algebra import algebra
    >>> def shown(text):
    ...     return line(quotient_node(algebra(parse(text))))
    >>> shown("(x + 2)(3 - x)"), shown("(x^2 - 1)/(2x - 2)"), shown("6/(4y)"), shown("1/√2")
    ('-x^2 + x + 6', '(x + 1)/2', '3/(2y)', '(√2)/2')
    """
    # Without letters it is a number, for which roots are taken out of the bottom as well.
    if not value.letters():
        return surd_node(surd(value))
    top, bottom = _cancelled(value)
    if set(bottom) == {UNIT}:
        scale = Fraction(bottom[UNIT])
        # A sum with fractions in it reads better over one bar.
        if len(top) == 1 or all((c / scale).denominator == 1 for c in top.values()):
            return polynomial_node({m: c / scale for m, c in top.items()})
    scale = Fraction(
        gcd(*(c.numerator for side in (top, bottom) for c in side.values())),
        lcm(*(c.denominator for side in (top, bottom) for c in side.values())),
    )
    # As it is written by hand: the bottom begins without a minus.
    if bottom[_ordered(bottom)[0]] < 0:
        scale = -scale
    above = polynomial_node({m: c / scale for m, c in top.items()})
    return t.Frac(above, polynomial_node({m: c / scale for m, c in bottom.items()}))


def _cancelled(value: Quotient) -> tuple[Polynomial, Polynomial]:
    """Return top and bottom without the letters, or in one letter the factors, they share."""
    letters = value.letters()
    if len(letters) == 1 and set(value.bottom) != {UNIT}:
        (letter,) = letters
        try:
            p, q = coefficients(value.top, letter), coefficients(value.bottom, letter)
            shared = common(p, q)
            p, q = remainder(p, shared)[0], remainder(q, shared)[0]
            return _polynomial(p, letter), _polynomial(q, letter)
        except NotExact:
            return value.top, value.bottom
    shared_powers = {
        name: min(
            dict(powers).get(name, 0) for side in (value.top, value.bottom) for powers, _ in side
        )
        for name in letters
    }
    top, bottom = (
        {_divided(m, shared_powers): c for m, c in side.items()}
        for side in (value.top, value.bottom)
    )
    # Factors in several letters are not looked for, but that one side is a multiple of the other
    # is seen at once.
    if len(top) == len(bottom) and set(top) == set(bottom):
        (first, c), *_ = bottom.items()
        ratio = over(top[first], c)
        if all(top[m] == ratio * d for m, d in bottom.items()):
            return {UNIT: ratio}, {UNIT: Fraction(1)}
    return top, bottom


def _polynomial(p: Coefficients, letter: str) -> Polynomial:
    out: Polynomial = {}
    for k, number in enumerate(p):
        for root, c in number.terms:
            out[((letter, k),) if k else (), root] = c
    return out


def _divided(monomial: Monomial, by: dict[str, int]) -> Monomial:
    powers, root = monomial
    return tuple((name, n - by[name]) for name, n in powers if n > by[name]), root


def polynomial_node(polynomial: Polynomial) -> t.Node:
    """Return a polynomial as a sum of terms, the highest powers first.

    >>> from itembank.notation.algebra import algebra
    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> line(polynomial_node(algebra(parse("(x + 1)(x - 2)"), {}).top))
    'x^2 - x - 2'
    """
    terms = [_term(monomial, polynomial[monomial]) for monomial in _ordered(polynomial)]
    if all(sum(n for _, n in powers) <= 1 for powers, _ in polynomial):
        terms.sort(key=lambda term: isinstance(term, t.Neg))  # v − u rather than −u + v
    if not terms:
        return t.Int(0)
    rest: list[tuple[t.SumOp, t.Node]] = [
        ("-", term.of) if isinstance(term, t.Neg) else ("+", term) for term in terms[1:]
    ]
    return t.Sum(terms[0], tuple(rest)) if rest else terms[0]


def _ordered(polynomial: Polynomial) -> list[Monomial]:
    def place(monomial: Monomial) -> tuple[object, ...]:
        powers, root = monomial
        return -sum(n for _, n in powers), [(name, -n) for name, n in powers], root

    return sorted(polynomial, key=place)


def _term(monomial: Monomial, c: Rational) -> t.Node:
    size = number_node(-c if c < 0 else c)
    body = monomial_factors(monomial)
    if not body:
        node = size
    elif size == t.Int(1):
        node = body[0] if len(body) == 1 else t.Juxt(tuple(body))
    elif isinstance(size, t.Frac) and not monomial[0]:
        top = t.Juxt((size.num, *body)) if size.num != t.Int(1) else body[0]
        node = t.Frac(top, size.den)
    else:
        node = t.Juxt((size, *body))
    return t.Neg(node) if c < 0 else node


def monomial_factors(monomial: Monomial) -> list[t.Node]:
    """Return the root and the letters of a monomial as factors."""
    powers, root = monomial
    factors: list[t.Node] = [] if root == 1 else [t.Root(t.Int(root))]
    factors += [t.Sym(name) if n == 1 else t.Power(t.Sym(name), t.Int(n)) for name, n in powers]
    return factors


def parting(ours: Quotient, theirs: Quotient) -> str:
    """Return where two different expressions first differ: at a term, or in their letters.

    >>> from itembank.notation import parse
    >>> from itembank.notation.algebra import algebra
    >>> parting(algebra(parse("(x + 1)(x + 2)")), algebra(parse("x^2 + 2x + 2")))
    'they first differ at the term in x: 3 against 2'
    """
    from itembank.proof.claim.finding import text

    # A letter too many says more than the term it stands in.
    strange = sorted(theirs.letters() - ours.letters())
    if strange:
        return f"the key has {strange[0]} in it, the question has not"
    if set(ours.bottom) | set(theirs.bottom) != {UNIT}:
        return ""
    a, b = ours.bottom[UNIT], theirs.bottom[UNIT]
    both: Polynomial = dict.fromkeys([*ours.top, *theirs.top], 0)
    for monomial in _ordered(both):
        mine, given = over(ours.top.get(monomial, 0), a), over(theirs.top.get(monomial, 0), b)
        if mine != given:
            body = monomial_factors(monomial)
            name = text(body[0] if len(body) == 1 else t.Juxt(tuple(body))) if body else ""
            place = f"the term in {name}" if name else "the number on its own"
            return f"they first differ at {place}: {text(number_node(mine))} against " + text(
                number_node(given)
            )
    return ""
