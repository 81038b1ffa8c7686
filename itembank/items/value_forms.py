"""The rules for numbers as results: one value, surds, standard form, prime factors, rounded.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from math import gcd

from itembank.items.number_forms import GOOD, amount, lowest_terms, unsigned
from itembank.items.polynomials import whole_content
from itembank.notation.algebra import algebra, square_free
from itembank.notation.mixed_units import carry_fault
from itembank.notation.tree import (
    Bracket,
    ClockTime,
    Dec,
    Frac,
    Int,
    Juxt,
    Mixed,
    MixedUnits,
    Money,
    Node,
    NotationError,
    Percent,
    Power,
    Product,
    Quantity,
    Root,
    Sum,
    walk,
)

LARGEST_PRIME = 10**6
"""Prime factors are known for prime by trial division, so larger ones are refused."""
LARGEST_UNDER_ROOT = 10**9


def value(node: Node) -> str:
    """Allow one finished number in any form, with its unit or without; no calculation.

    >>> from itembank.notation.parse import parse
    >>> [value(parse(text)) for text in ("6/8", "1 3/4", "£4.50", "3√2", "3.2 × 10^4")]
    ['', '', '', '', '']
    >>> value(parse("3 + 4"))
    'it is not worked out'
    """
    node = unsigned(node)
    match node:
        case Money(of, _) | Quantity(of, _) | Percent(of):
            return value(of) if not isinstance(of, Money | Quantity | Percent) else "two signs"
        case MixedUnits():
            return carry_fault(node)
        case Int() | Dec() | Mixed() | ClockTime():
            return GOOD
        case Frac(Int(), Int(bottom)):
            return GOOD if bottom else "it divides by zero"
    if not standard_form(node):
        return GOOD
    return "it is not worked out" if _surd_faults(node, strict=False) else GOOD


def surd(node: Node) -> str:
    """Allow the simplest surd form: square-free roots, a whole denominator, like roots collected.

    A whole number or a fraction in its lowest terms has it too.

    >>> from itembank.notation.parse import parse
    >>> surd(parse("2 + 3√5")), surd(parse("(3√2)/4"))
    ('', '')
    >>> surd(parse("√12")), surd(parse("1/(√2)"))
    ('√12 can be simplified', 'the denominator is not a whole number')
    """
    return _surd_faults(node, strict=True)


def _surd_faults(node: Node, strict: bool) -> str:
    """Return what keeps a tree from being a sum of rational numbers times roots."""
    node = unsigned(node)
    if isinstance(node, Bracket):
        return _surd_faults(node.of, strict)
    if isinstance(node, Frac) and not (isinstance(node.num, Int) and isinstance(node.den, Int)):
        if not isinstance(node.den, Int):
            return "the denominator is not a whole number"
        if node.den.n < 2:
            return "the denominator is not more than 1"
        fault = _surd_faults(node.num, strict)
        return fault or (_cancels(node.num, node.den.n) if strict else GOOD)
    terms = [node.first, *(term for _, term in node.rest)] if isinstance(node, Sum) else [node]
    seen: set[tuple[int, int]] = set()
    for term in terms:
        root, fault = _surd_term(unsigned(term), strict)
        if fault:
            return fault
        if root in seen:
            return "like terms are not collected"
        seen.add(root)
    return GOOD


def _surd_term(node: Node, strict: bool) -> tuple[tuple[int, int], str]:
    """Return the root of a term, as radicand and index, and what is wrong with the term."""
    match node:
        case Int():
            return (1, 1), GOOD
        case Frac(Int(), Int()):
            return (1, 1), lowest_terms(node) if strict else GOOD
        case Root(Int(n), index):
            return (n, index), _radicand(n, index, strict)
        case Juxt((Int(c) | Bracket(Frac(Int(c), Int())), Root(Int(n), index))) if c > 0:
            return (n, index), _radicand(n, index, strict)
        case Frac(top, Int(bottom)) if bottom > 1:
            root, fault = _surd_term(top, strict)
            return root, fault or (_cancels(top, bottom) if strict else GOOD)
    return (0, 0), "it is not a sum of whole numbers times roots"


def _radicand(n: int, index: int, strict: bool) -> str:
    if not 1 < n <= LARGEST_UNDER_ROOT:
        return "the number under the root is not from 2 to a thousand million"
    sign = {2: "√", 3: "∛", 4: "∜"}[index]
    if any(k**index == n for k in (round(n ** (1 / index)),)):
        return f"{sign}{n} is a whole number"
    if not strict:
        return GOOD
    if index == 2:
        simple = square_free(n)[0] == 1
    else:
        simple = all(n % k**index for k in range(2, round(n ** (1 / index)) + 1))
    return GOOD if simple else f"{sign}{n} can be simplified"


def _cancels(top: Node, bottom: int) -> str:
    try:
        content = whole_content(algebra(top).top)
    except NotationError:
        return GOOD
    return "the fraction can be cancelled" if gcd(content, bottom) > 1 else GOOD


def standard_form(node: Node) -> str:
    """Allow a × 10^n with a from 1 up to but not including 10, and n a whole number.

    >>> from itembank.notation.parse import parse
    >>> standard_form(parse("3.2 × 10^-4")), standard_form(parse("32 × 10^3"))
    ('', 'the first number is not at least 1 and less than 10')
    """
    match unsigned(node):
        case Product(
            first, (("×", Power(Int(10), exponent) | Quantity(Power(Int(10), exponent))),)
        ):
            pass
        case _:
            return "it is not a number times a power of 10"
    if not isinstance(unsigned(exponent), Int):
        return "the power of 10 is not a whole number"
    first = unsigned(first)
    digits = (
        first.whole if isinstance(first, Dec) else str(first.n if isinstance(first, Int) else 0)
    )
    if len(digits) != 1 or digits == "0":
        return "the first number is not at least 1 and less than 10"
    return GOOD


def prime_factors(node: Node) -> str:
    """Allow a product of primes, or of powers of different primes.

    >>> from itembank.notation.parse import parse
    >>> [prime_factors(parse(text)) for text in ("2^2 × 3", "2 × 2 × 3", "7")]
    ['', '', '']
    >>> prime_factors(parse("4 × 3"))
    '4 is not a prime number'
    """
    if isinstance(node, Product):
        if any(op != "×" for op, _ in node.rest):
            return "it is not a product"
        factors = [node.first, *(factor for _, factor in node.rest)]
    else:
        factors = [node]
    powers: list[int] = []
    for factor in factors:
        match factor:
            case Int(p):
                pass
            case Power(Int(p), Int(n)) if n > 1:
                powers.append(p)
            case _:
                return "it is not a product of prime numbers"
        if not _prime(p):
            return f"{p if p <= LARGEST_PRIME else 'one of its numbers'} is not a prime number"
    bases = [f.base if isinstance(f, Power) else f for f in factors]
    if powers and len(set(bases)) < len(bases):
        return "a prime stands there twice: write it as one power"
    return GOOD


def _prime(n: int) -> bool:
    return 1 < n <= LARGEST_PRIME and all(n % k for k in range(2, int(n**0.5) + 1))


def rounded(node: Node) -> str:
    """Allow a whole number or a decimal that ends, with its unit or per cent sign.

    >>> from itembank.notation.parse import parse
    >>> rounded(parse("2.50")), rounded(parse("£3.20")), rounded(parse("5/2"))
    ('', '', 'it is not a decimal')
    """
    node = unsigned(node)
    if isinstance(node, Money):
        return amount(node)
    if isinstance(node, Quantity | Percent):
        node = node.of if isinstance(node, Percent) else node.amount
    if isinstance(node, Dec):
        return "a recurring decimal is not rounded" if node.recurring else GOOD
    if isinstance(node, Int) or not standard_form(node):
        return GOOD
    return "it is not a decimal"


def finished_number(node: Node) -> str:
    """Allow what may stand in an expression: a number or a surd with nothing left to cancel."""
    node = unsigned(node)
    match node:
        case Int() | Dec() | ClockTime():
            return GOOD
        case MixedUnits():
            return carry_fault(node)
        case Money(of, _) | Quantity(of, _) | Percent(of):
            return finished_number(of)
        case Mixed(_, top, bottom):
            return GOOD if gcd(top, bottom) == 1 else "a fraction is not in its lowest terms"
        case Frac(Int(), Int()):
            return lowest_terms(node)
    if any(isinstance(part, Root) for part in walk(node)):
        return surd(node)
    return standard_form(node) and "a calculation is left to work out"
