"""The rules for numbers as results: one value, surds, standard form, prime factors, rounded.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from math import gcd

from itembank.items.forms.number_forms import (
    DIVIDES_BY_ZERO,
    GOOD,
    TWO_MINUSES,
    amount,
    bare,
    integer,
    lowest_terms,
    sort_of,
    unsigned,
    whole_parts,
)
from itembank.items.forms.surd_forms import surd, surd_faults, undivided
from itembank.notation import tree as t
from itembank.notation.mixed_units import carry_fault

LARGEST_PRIME = 10**6
"""Prime factors are known for prime by trial division, so larger ones are refused."""


def value(node: t.Node) -> str:
    """Allow one finished number in any form, with its unit or without; no calculation.

    A fraction need not be in its lowest terms, but one that is a whole number is a division
    still to be done.

    >>> from itembank.notation.parse import parse
    >>> [value(parse(text)) for text in ("6/8", "1 3/4", "£4.50", "3√2", "3.2 × 10^4")]
    ['', '', '', '', '']
    >>> value(parse("3 + 4")), value(parse("27/3"))
    ('it is not worked out', 'the division is not done')
    """
    inner = unsigned(node)
    match inner:
        case t.Money(of, _) | t.Quantity(of, _) | t.Percent(of):
            # £5 cm: each is well formed by itself.
            if isinstance(bare(of), t.Money | t.Quantity | t.Percent):
                return "it has two units"
            if isinstance(inner, t.Money) and isinstance(unsigned(of), t.Frac):
                return "a sum of money is not written as a fraction"
            if isinstance(of, t.Dec) and inner == t.Money(of, "£") and len(of.places) == 1:
                return "pounds and pence are not given to two places"
            return value(of)
        case t.MixedUnits():
            return carry_fault(inner)
        case t.Int() | t.Dec() | t.ClockTime():
            return GOOD
        case t.Mixed(_, top, bottom):
            return GOOD if top < bottom else "its fraction part is not a proper fraction"
        case t.Neg():
            return TWO_MINUSES
        case t.Frac():
            parts = whole_parts(node)
            if not isinstance(parts, str):
                return undivided(*parts)
            if parts in (DIVIDES_BY_ZERO, TWO_MINUSES):
                return parts
    # 3.2 × 10⁴ looks like a calculation and is one number.
    if not standard_form(node):
        return GOOD
    return "it is not worked out" if surd_faults(node, strict=False) else GOOD


def standard_form(node: t.Node) -> str:
    """Allow a × 10^n with a from 1 up to but not including 10, and n a whole number.

    >>> from itembank.notation.parse import parse
    >>> standard_form(parse("3.2 × 10^-4")), standard_form(parse("32 × 10^3"))
    ('', 'the first number is not at least 1 and less than 10')
    """
    outer, node = node, unsigned(node)
    match node:
        case t.Product(
            first, (("×", t.Power(t.Int(10), exponent) | t.Quantity(t.Power(t.Int(10), exponent))),)
        ):
            pass
        case _:
            return "it is not a number times a power of 10"
    if integer(exponent):
        return "the power of 10 is not a whole number"
    if isinstance(bare(outer), t.Neg) and isinstance(bare(first), t.Neg):
        return TWO_MINUSES
    first = unsigned(first)
    digits = (
        first.whole if isinstance(first, t.Dec) else str(first.n if isinstance(first, t.Int) else 0)
    )
    # By its digits and not its value: 9.99 is under 10, and 1.0 keeps its zero.
    if len(digits) != 1 or digits == "0":
        return "the first number is not at least 1 and less than 10"
    return GOOD


def prime_factors(node: t.Node) -> str:
    """Allow a product of primes, or of powers of different primes.

    >>> from itembank.notation.parse import parse
    >>> [prime_factors(parse(text)) for text in ("2^2 × 3", "2 × 2 × 3", "7")]
    ['', '', '']
    >>> prime_factors(parse("4 × 3"))
    '4 is not a prime number'
    """
    node = bare(node)
    if isinstance(node, t.Product):
        if any(op != "×" for op, _ in node.rest):
            return "it is not a product"
        factors = [node.first, *(factor for _, factor in node.rest)]
    else:
        factors = [node]
    powers: list[int] = []
    for factor in factors:
        match factor:
            case t.Int(p):
                pass
            case t.Power(t.Int(p), t.Int(n)) if n > 1:
                powers.append(p)
            case _:
                return "it is not a product of prime numbers"
        if not is_prime(p):
            return f"{p if p <= LARGEST_PRIME else 'one of its numbers'} is not a prime number"
    bases = [f.base if isinstance(f, t.Power) else f for f in factors]
    # 2 × 2 × 3 is written out and 2² × 3 in index form; 2² × 2 is half of each.
    if powers and len(set(bases)) < len(bases):
        return "a prime stands there twice: write it as one power"
    return GOOD


def is_prime(n: int) -> bool:
    """Tell whether a number up to :data:`LARGEST_PRIME` is prime; larger ones are refused.

    >>> is_prime(91), is_prime(97)
    (False, True)
    """
    # A number that is not prime has a factor up to its root.
    return 1 < n <= LARGEST_PRIME and all(n % k for k in range(2, int(n**0.5) + 1))


def rounded(node: t.Node) -> str:
    """Allow a whole number or a decimal that ends, with its unit or per cent sign.

    >>> from itembank.notation.parse import parse
    >>> rounded(parse("2.50")), rounded(parse("£3.20")), rounded(parse("5/2"))
    ('', '', 'it is a fraction')
    """
    inner = unsigned(node)
    if isinstance(inner, t.Money):
        return amount(inner)
    if isinstance(inner, t.Quantity | t.Percent):
        node = inner.of if isinstance(inner, t.Percent) else inner.amount
        inner = unsigned(node)
    if isinstance(inner, t.Dec):
        return "a recurring decimal is not rounded" if inner.recurring else GOOD
    if isinstance(inner, t.Int) or not standard_form(node):
        return GOOD
    return TWO_MINUSES if isinstance(inner, t.Neg) else sort_of(node)


def finished_number(node: t.Node) -> str:
    """Allow what may stand in an expression: a number or a surd with nothing left to cancel."""
    inner = unsigned(node)
    match inner:
        case t.Dec(_, places, "") if not places.strip("0"):
            return "a whole number is written with a 0 after the point"
        case t.MixedUnits():
            return carry_fault(inner)
        case t.Int() | t.Dec() | t.ClockTime():
            return GOOD
        case t.Neg():
            return TWO_MINUSES
        case t.Money(of, _) | t.Quantity(of, _) | t.Percent(of):
            return finished_number(of)
        case t.Mixed(_, top, bottom):
            if top >= bottom:
                return "its fraction part is not a proper fraction"
            return GOOD if gcd(top, bottom) == 1 else "a fraction is not in its lowest terms"
        case t.Frac() if not isinstance(whole_parts(node), str):
            return lowest_terms(node)
    if any(isinstance(part, t.Root) for part in t.walk(node)):
        return surd(node)
    return standard_form(node) and "a calculation is left to work out"
