"""The rules for powers: one power, powers of different bases, products written out, no roots.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from itembank.items.forms.letter_forms import simplified
from itembank.items.forms.number_forms import GOOD, bare, integer, lowest_terms
from itembank.items.forms.value_forms import LARGEST_PRIME, is_prime
from itembank.notation import tree as t

NOT_A_PRODUCT = "it is not a product"


def power(node: t.Node) -> str:
    """Allow one power of a number or a letter, which is not itself a power.

    >>> from itembank.notation.parse import parse
    >>> [power(parse(text)) for text in ("5^6", "x^-2", "(2/3)^4", "(-2)^3")]
    ['', '', '', '']
    >>> power(parse("(5^3)^2")), power(parse("2^3 × 2^4"))
    ('a power stands inside a power', 'the powers are not put together')
    """
    node = bare(node)
    match node:
        case t.Neg(of) if not isinstance(bare(of), t.Neg):
            return power(of)
        case t.Product() | t.Juxt():
            return "the powers are not put together"
        case t.Frac(top, bottom) if any(isinstance(bare(side), t.Power) for side in (top, bottom)):
            return "the powers are not put together"
        case t.Power(base, exponent):
            base, exponent = bare(base), bare(exponent)
            if isinstance(base, t.Power):
                return "a power stands inside a power"
            return _base(base) or _exponent(exponent)
    return "it is not a power"


def _base(base: t.Node) -> str:
    inner = bare(base.of) if isinstance(base, t.Neg) else base
    if isinstance(inner, t.Int | t.Dec | t.Sym):
        return GOOD
    if isinstance(inner, t.Frac):
        letters = isinstance(bare(inner.num), t.Sym) or isinstance(bare(inner.den), t.Sym)
        return simplified(inner) if letters else lowest_terms(inner)
    return "the base of the power is not one number or letter"


def _exponent(exponent: t.Node) -> str:
    # x¹ is x and x⁰ is 1: the last step of the laws of indices is left.
    if exponent in (t.Int(0), t.Int(1)):
        return "a power of 0 or 1 is left"
    if not integer(exponent) or isinstance(exponent, t.Sym):
        return GOOD
    inner = bare(exponent.of) if isinstance(exponent, t.Neg) else exponent
    return lowest_terms(exponent) if isinstance(inner, t.Frac) else "the power is not worked out"


def product(node: t.Node) -> str:
    """Allow a product written out: two or more numbers or letters, without a power.

    >>> from itembank.notation.parse import parse
    >>> [product(parse(text)) for text in ("5 × 5 × 5", "x × x × y", "xxy", "(-2) × (-2)")]
    ['', '', '', '']
    >>> product(parse("5^2 × 5")), product(parse("125"))
    ('a power is left to write out', 'it is not a product')
    """
    factors = factors_of(node)
    if isinstance(factors, str):
        return factors
    if any(isinstance(bare(factor), t.Power) for factor in factors):
        return NOT_A_PRODUCT if len(factors) < 2 else "a power is left to write out"
    if len(factors) < 2:
        return NOT_A_PRODUCT
    for factor in factors:
        inner = bare(factor)
        inner = bare(inner.of) if isinstance(inner, t.Neg) else inner
        if not isinstance(inner, t.Int | t.Dec | t.Sym | t.Frac):
            return "its factors are not all single numbers or letters"
        if isinstance(inner, t.Frac) and (fault := lowest_terms(inner)):
            return fault
        if inner == t.Int(1):
            return "a factor 1 is left"
    return GOOD


def factors_of(node: t.Node) -> tuple[t.Node, ...] | str:
    """Return the factors of a product, or what keeps a tree from being one."""
    node = bare(node)
    match node:
        case t.Product(first, rest):
            if any(op != "×" for op, _ in rest):
                return NOT_A_PRODUCT
            sides = (first, *(factor for _, factor in rest))
            return tuple(f for side in sides for f in _inner_factors(side))
        case t.Juxt(factors):
            return factors
    return (node,)


def _inner_factors(node: t.Node) -> tuple[t.Node, ...]:
    return node.factors if isinstance(node, t.Juxt) else (node,)


def powers(node: t.Node) -> str:
    """Allow a product in index notation: powers of different numbers or letters, each once.

    >>> from itembank.notation.parse import parse
    >>> [powers(parse(text)) for text in ("2^3 × 3^2", "a^2b", "5^4", "2^3 × 7")]
    ['', '', '', '']
    >>> powers(parse("2 × 2 × 3"))
    '2 stands there twice: write it as one power'
    """
    from itembank.notation.line import shown_line

    inner = bare(node)
    factors = factors_of(inner.of if isinstance(inner, t.Neg) else inner)
    if isinstance(factors, str):
        return factors
    seen: set[t.Node] = set()
    for factor in factors:
        factor = bare(factor)
        base = bare(factor.base) if isinstance(factor, t.Power) else factor
        if isinstance(factor, t.Power):
            if fault := power(factor):
                return fault
        elif _base(base):
            return "it is not a product of powers"
        # Whatever power of 1 stands there, it says nothing.
        if base == t.Int(1):
            return "a factor 1 is left"
        if base in seen:
            return f"{shown_line(base)} stands there twice: write it as one power"
        seen.add(base)
    return GOOD


def prime_powers(node: t.Node) -> str:
    """Allow a product of powers of different primes, in index notation.

    >>> from itembank.notation.parse import parse
    >>> prime_powers(parse("2^2 × 3")), prime_powers(parse("2 × 2 × 3"))
    ('', '2 stands there twice: write it as one power')
    >>> prime_powers(parse("4^2 × 3"))
    '4 is not a prime number'
    """
    factors = factors_of(node)
    if isinstance(factors, str):
        return factors
    for factor in factors:
        factor = bare(factor)
        base = bare(factor.base) if isinstance(factor, t.Power) else factor
        if not isinstance(base, t.Int) or isinstance(node, t.Juxt):
            return "it is not a product of prime numbers"
        if not is_prime(base.n):
            named = base.n if base.n <= LARGEST_PRIME else "one of its numbers"
            return f"{named} is not a prime number"
        if isinstance(factor, t.Power) and not (
            isinstance(bare(factor.exponent), t.Int)
            and bare(factor.exponent) not in (t.Int(0), t.Int(1))
        ):
            return "its powers are not whole numbers from 2 up"
    return powers(node)


def positive_indices(node: t.Node) -> str:
    """Allow an expression in its simplest form without a negative power.

    >>> from itembank.notation.parse import parse
    >>> positive_indices(parse("3/x^2")), positive_indices(parse("3x^-2"))
    ('', 'a negative power is left')
    """
    for part in t.walk(node):
        if isinstance(part, t.Power) and isinstance(bare(part.exponent), t.Neg):
            return "a negative power is left"
    return simplified(node)
