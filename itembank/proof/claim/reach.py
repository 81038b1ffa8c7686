"""What the proof takes on: questions whose mathematics stays small when it is worked out.

A line of a few characters can stand for more than a machine can hold: 9^(9^9) has 369 million
digits, (a + b + c + d + e + f)^64 some ten million terms. So a question is measured before
either road begins, by a bound that follows from its tree alone, and one that is out of reach is
left to a person. What school asks is far inside: equations of the fourth degree, numbers in
standard form, powers up to the sixty-fourth.
"""

from __future__ import annotations

from itertools import chain
from math import ceil, comb, prod

from itembank.data_class import dataclass
from itembank.items.asks import asked, kind_of
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.value import LARGEST_BITS, LARGEST_EXPONENT, NotExact, exact

MOST_TERMS = 3_000
"""The terms a part may have, multiplied out, before any of them are gathered."""
HIGHEST = 12
"""The degree up to which an equation in one letter is solved."""
HIGHEST_OF_SEVERAL = 6
"""The degree up to which an equation in several letters is."""
MOST_ROOTS = 16
"""The root signs a question may have: each may double what there is to tell apart."""
LONGEST_FACTORED = 18
"""The digits of the longest number that is taken apart into primes."""
LONGEST_ROUNDED = 60
"""The digits of the longest number that is rounded."""


LONGEST = {"factored": LONGEST_FACTORED, "rounded": LONGEST_ROUNDED}
"""The digits of the longest number, by what a kind of question does with it."""


class _TooLarge(Exception):
    """A part of the question is out of reach; the message says which way."""


@dataclass(frozen=True, slots=True)
class _Size:
    """A bound on a tree multiplied out: binary digits, terms, degree over and under the line."""

    bits: int = 1
    terms: int = 1
    top: int = 0
    bottom: int = 0


_NUMBER = _Size()
_LETTER = _Size(top=1)


def out_of_reach(item: Item) -> str:
    """Return why the question or its key is too much to work out, or ``""``.

    >>> from itembank.items.item import Find, Tier
    >>> from itembank.notation import parse
    >>> def asks(text):
    ...     target = parse(text)
    ...     return Item(
    ...         "larkhythe:a", "powers", Tier.CORE, ("Work out ", target, "."), Find(target),
    ...         parse("8"), "integer", (), (), (), 1, (),
    ...     )
    >>> out_of_reach(asks("2^3")), out_of_reach(asks("9^(9^9)"))
    ('', 'this is too much to work out: an exponent is larger than 64')
    """
    nodes = (*asked(item.ask), item.key)
    try:
        for node in nodes:
            _measured(node)
            if isinstance(node, t.Relation):
                _solved(node)
        if sum(isinstance(part, t.Root) for node in nodes for part in t.walk(node)) > MOST_ROOTS:
            raise _TooLarge(f"it has more than {MOST_ROOTS} roots")
        if longest := LONGEST.get(kind_of(item.ask).numbers):
            _no_longer(nodes, longest)
    except _TooLarge as reason:
        return f"this is too much to work out: {reason}"
    return ""


def _measured(node: t.Node) -> _Size:
    """Return a bound on the size of a tree, or refuse it."""
    size = _size(node)
    if size.bits > 2 * LARGEST_BITS:
        raise _TooLarge("a number in it is too long")
    if size.terms > MOST_TERMS:
        raise _TooLarge("it has too many terms when it is multiplied out")
    return size


def _size(node: t.Node) -> _Size:
    match node:
        case t.Int(n):
            return _Size(n.bit_length())
        case t.Dec(whole, places, recurring):
            # A decimal digit is less than four binary ones.
            return _Size(4 * len(whole + places + recurring))
        case t.Mixed(whole_number, n, d):
            return _Size(whole_number.bit_length() + n.bit_length() + d.bit_length())
        case t.Sym() | t.Blank():
            return _LETTER
        case t.Frac(num, den):
            return _product([_measured(num), _turned(_measured(den))])
        case t.Juxt(factors):
            return _product([_measured(factor) for factor in factors])
        case t.Product(first, rest):
            sizes = [_measured(first)]
            for op, factor in rest:
                sizes.append(_turned(_measured(factor)) if op == "÷" else _measured(factor))
            return _product(sizes)
        case t.Power(base, exponent):
            return _power(_measured(base), exponent)
    return _sum([_measured(part) for part in t.children(node)])


def _turned(size: _Size) -> _Size:
    return _Size(size.bits, size.terms, size.bottom, size.top)


def _product(sizes: list[_Size]) -> _Size:
    return _Size(
        sum(size.bits for size in sizes),
        prod(size.terms for size in sizes),
        sum(size.top for size in sizes),
        sum(size.bottom for size in sizes),
    )


def _sum(sizes: list[_Size]) -> _Size:
    """Return the size of parts brought over one denominator; also of what only holds parts."""
    if not sizes:
        return _NUMBER
    # Over the product of all the denominators; what they share only makes it less.
    bottom = sum(size.bottom for size in sizes)
    return _Size(
        sum(size.bits for size in sizes),
        sum(size.terms for size in sizes),
        max(size.top - size.bottom for size in sizes) + bottom,
        bottom,
    )


def _power(base: _Size, exponent: t.Node) -> _Size:
    size = _measured(exponent)
    if size.top or size.bottom:
        return _sum([base, size])  # sympy leaves a letter in an exponent as it is
    try:
        times = abs(exact(exponent))
    except NotExact:
        # A root, or a power past what is worked out exactly: the number of its digits says.
        times = exact(t.Int(2)) ** min(size.bits, 99)
    if times > LARGEST_EXPONENT:
        raise _TooLarge(f"an exponent is larger than {LARGEST_EXPONENT}")
    whole = ceil(times)
    return _Size(
        base.bits * whole,
        # So many terms has the nth power of a sum of k terms: the ways to choose n of k, with
        # repeats (multinomial theorem).
        comb(base.terms + whole - 1, whole) if base.terms > 1 else 1,
        base.top * whole,
        base.bottom * whole,
    )


def _solved(relation: t.Relation) -> None:
    """Refuse an equation or inequality of too high a degree."""
    letters = len(t.symbols(relation) - {"π"})
    highest = HIGHEST if letters < 2 else HIGHEST_OF_SEVERAL
    degree = _sum([_measured(side) for side in (relation.first, *(n for _, n in relation.rest))])
    if letters and degree.top > highest:
        raise _TooLarge(f"its degree is more than {highest}")


def _no_longer(nodes: tuple[t.Node, ...], most: int) -> None:
    parts = chain.from_iterable(map(t.walk, nodes))
    # A decimal digit is a little less than 10/3 binary ones (log₂ 10 = 3.32…).
    if any(_size(part).bits > most * 10 / 3 for part in parts if not t.children(part)):
        raise _TooLarge(f"it has a number of more than {most} digits")
