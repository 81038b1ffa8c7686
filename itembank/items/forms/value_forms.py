"""The rules for numbers as results: one value, surds, standard form, prime factors, rounded.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from math import gcd

from itembank.items.forms.number_forms import (
    DIVIDES_BY_ZERO,
    GOOD,
    NOT_WHOLE,
    ONE_BELOW,
    TWO_MINUSES,
    amount,
    bare,
    integer,
    lowest_terms,
    sort_of,
    unsigned,
    whole_parts,
)
from itembank.items.forms.polynomials import whole_content
from itembank.notation import tree as t
from itembank.notation.algebra import algebra, square_free
from itembank.notation.mixed_units import carry_fault

LARGEST_PRIME = 10**6
"""Prime factors are known for prime by trial division, so larger ones are refused."""
LARGEST_UNDER_ROOT = 10**9


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
                return _undivided(*parts)
            if parts in (DIVIDES_BY_ZERO, TWO_MINUSES):
                return parts
    # 3.2 × 10⁴ looks like a calculation and is one number.
    if not standard_form(node):
        return GOOD
    return "it is not worked out" if _surd_faults(node, strict=False) else GOOD


def _undivided(top: int, bottom: int) -> str:
    if bottom == 1:
        return ONE_BELOW
    return GOOD if top % bottom else "the division is not done"


def surd(node: t.Node) -> str:
    """Allow the simplest surd form: square-free roots, a whole denominator, like roots collected.

    A whole number or a fraction in its lowest terms has it too, and so does a sum of surds with
    its common factor taken out.

    >>> from itembank.notation.parse import parse
    >>> [surd(parse(text)) for text in ("2 + 3√5", "(3√2)/4", "2(1 + √3)", "5(√3 - 1)/2")]
    ['', '', '', '']
    >>> surd(parse("√12")), surd(parse("1/(√2)"))
    ('√12 can be simplified', 'the denominator is not a whole number')
    """
    return _surd_faults(node, strict=True)


def _surd_faults(node: t.Node, strict: bool) -> str:
    """Return what keeps a tree from being a sum of rational numbers times roots."""
    outer, node = node, unsigned(node)
    match node:
        case t.Neg():
            return TWO_MINUSES
        case t.Frac() if isinstance(parts := whole_parts(outer), str):
            bottom = bare(node.den)
            if parts != NOT_WHOLE:
                return parts
            if not isinstance(bottom, t.Int):
                return "the denominator is not a whole number"
            # Nothing may be left below the bar that could be left out.
            if bottom.n < 2:
                return "the denominator is not more than 1"
            fault = _surd_faults(node.num, strict)
            # (2 + 4√3)/2 cancels as a whole, though no fraction of whole numbers stands in it.
            return fault or (_cancels(node.num, bottom.n) if strict else GOOD)
        case t.Juxt((factor, t.Bracket(t.Sum() as inside))):
            return _taken_out(factor) or _surd_faults(inside, strict) or _all_taken_out(inside)
    terms = [node.first, *(term for _, term in node.rest)] if isinstance(node, t.Sum) else [node]
    if any(isinstance(bare(term), t.Neg) for term in terms[1:]):
        return "two signs stand together"
    seen: set[tuple[int, int]] = set()
    for term in terms if isinstance(node, t.Sum) else [outer]:
        root, fault = _surd_term(term, strict)
        if fault:
            return fault
        # Different roots cannot be put together: they are independent over the rationals.
        if root in seen:
            return "like terms are not collected"
        seen.add(root)
    return GOOD


def _taken_out(factor: t.Node) -> str:
    """Return what keeps a number from standing in front of a bracket as its common factor."""
    match factor:
        case t.Int(n) if n > 1:
            return GOOD
        case t.Bracket(t.Frac() as of):
            return lowest_terms(of)
    return "a bracket is left to multiply out"


def _all_taken_out(inside: t.Sum) -> str:
    content = whole_content(algebra(inside).top)
    return "the bracket has a common factor left" if content > 1 else GOOD


def _surd_term(node: t.Node, strict: bool) -> tuple[tuple[int, int], str]:
    """Return the root of a term, as radicand and index, and what is wrong with the term."""
    outer, node = node, unsigned(node)
    match node:
        case t.Int():
            return (1, 1), GOOD
        case t.Frac() if not isinstance(parts := whole_parts(outer), str):
            return (1, 1), lowest_terms(outer) if strict else _undivided(*parts)
        case t.Root(t.Int(n), index):
            return (n, index), _radicand(n, index, strict)
        case t.Juxt(
            (t.Int(c) | t.Bracket(t.Frac(t.Int(c), t.Int())) as factor, t.Root(t.Int(n), index))
        ) | t.Product(
            t.Int(c) | t.Frac(t.Int(c), t.Int()) as factor, (("×", t.Root(t.Int(n), index)),)
        ) if c > 0 and factor != t.Int(1):
            cancelled = not strict or isinstance(factor, t.Int) or not lowest_terms(bare(factor))
            fault = GOOD if cancelled else "the fraction is not in its lowest terms"
            return (n, index), fault or _radicand(n, index, strict)
        case t.Frac(top, t.Int(bottom)) if bottom > 1:
            root, fault = _surd_term(top, strict)
            return root, fault or (_cancels(top, bottom) if strict else GOOD)
    return (0, 0), "it is not a sum of whole numbers times roots"


def _radicand(n: int, index: int, strict: bool) -> str:
    if not 1 < n <= LARGEST_UNDER_ROOT:
        return "the number under the root is not from 2 to a thousand million"
    sign = {2: "√", 3: "∛", 4: "∜"}[index]
    # Up to a thousand million a float is near enough to round to the root, and this checks it.
    if any(k**index == n for k in (round(n ** (1 / index)),)):
        return f"{sign}{n} is a whole number"
    if not strict:
        return GOOD
    if index == 2:
        # A square factor comes out of a square root, a cube factor out of a cube root.
        simple = square_free(n)[0] == 1
    else:
        simple = all(n % k**index for k in range(2, round(n ** (1 / index)) + 1))
    return GOOD if simple else f"{sign}{n} can be simplified"


def _cancels(top: t.Node, bottom: int) -> str:
    try:
        content = whole_content(algebra(top).top)
    except t.NotationError:
        return GOOD
    return "the fraction can be cancelled" if gcd(content, bottom) > 1 else GOOD


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
