"""The rule for surds as results: taken out of the root, collected, with a whole denominator."""

from __future__ import annotations

from math import gcd

from itembank.items.forms.number_forms import (
    GOOD,
    NOT_WHOLE,
    ONE_BELOW,
    TWO_MINUSES,
    bare,
    lowest_terms,
    unsigned,
    whole_parts,
)
from itembank.items.forms.polynomials import whole_content
from itembank.notation import tree as t
from itembank.notation.algebra import algebra, square_free

LARGEST_UNDER_ROOT = 10**9


def undivided(top: int, bottom: int) -> str:
    """Return what is left to do in a fraction of whole numbers, or an empty text."""
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
    return surd_faults(node, strict=True)


def surd_faults(node: t.Node, strict: bool) -> str:
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
            fault = surd_faults(node.num, strict)
            # (2 + 4√3)/2 cancels as a whole, though no fraction of whole numbers stands in it.
            return fault or (_cancels(node.num, bottom.n) if strict else GOOD)
        case t.Juxt((factor, t.Bracket(t.Sum() as inside))):
            return _taken_out(factor) or surd_faults(inside, strict) or _all_taken_out(inside)
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
            return (1, 1), lowest_terms(outer) if strict else undivided(*parts)
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
