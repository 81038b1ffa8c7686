"""The value face: what a tree is worth, in exact rational arithmetic.

Three questions are answered here, each without sympy, so that every item can be
checked as it is made:

* :func:`exact` — the rational value of a tree with no letters in it;
* :func:`linear` — a tree as a linear form in its letters, exact coefficients;
* :func:`parts` — the values of the parts of a ratio or a list.

Quantities and money are worth their size in the base unit of their dimension
(:mod:`itembank.notation.units`), so 40 cm and 0.4 m are worth the same.

>>> from itembank.notation.tree import add, frac
>>> exact(add(frac(1, 2), frac(1, 3)))
Fraction(5, 6)
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from itembank.notation.clock import DAY, NEXT_DAY, clock_seconds, times_in
from itembank.notation.tree import (
    Blank,
    Bracket,
    ClockTime,
    Dec,
    Frac,
    Int,
    Juxt,
    Listing,
    Mixed,
    MixedUnits,
    Money,
    Neg,
    Node,
    NotationError,
    Percent,
    Power,
    Product,
    Quantity,
    Ratio,
    Relation,
    Root,
    Sum,
    Sym,
    symbols,
)
from itembank.notation.units import CURRENCY, UNITS

Linear = dict[str, Fraction]
"""A linear form: the coefficient of each letter, the constant under the empty string."""

ONE = Fraction(1)
ZERO = Fraction(0)
# A pupil's question never needs more; typed text must not make us compute 9^9^9.
LARGEST_EXPONENT = 64
LARGEST_BITS = 8_192
"""The most binary digits a power may come to, so that towers of powers stay small."""


class NotExact(NotationError):
    """The tree has no exact value of the kind asked for (a letter, a surd, a name)."""


def exact(node: Node) -> Fraction:
    """Return the exact rational value of `node`.

    Raises
    ------
    NotExact
        If the tree holds a letter, an irrational root, a ratio, a list or a relation, or
        divides by zero.

    >>> from itembank.notation.tree import Dec, Mixed, Percent, Int
    >>> exact(Mixed(2, 3, 4)), exact(Dec("0", "1", "6")), exact(Percent(Int(40)))
    (Fraction(11, 4), Fraction(1, 6), Fraction(2, 5))
    """
    match node:
        case Int(n):
            return Fraction(n)
        case Frac(top, bottom):
            return _over(exact(top), exact(bottom))
        case Mixed(whole, top, bottom):
            return whole + _over(Fraction(top), Fraction(bottom))
        case Neg(of):
            return -exact(of)
        case Sum(first, rest):
            total = exact(first)
            for op, term in rest:
                total = total + exact(term) if op == "+" else total - exact(term)
            return total if times_in(node) is None else _of_the_day(total, times_in(node))
        case Product(first, rest):
            total = exact(first)
            for pop, factor in rest:
                total = _over(total, exact(factor)) if pop == "÷" else total * exact(factor)
            return total
        case Juxt(factors):
            total = ONE
            for factor in factors:
                total *= exact(factor)
            return total
        case Bracket(of):
            return exact(of)
        case Dec():
            return decimal_value(node)
        case Percent(of):
            return exact(of) / 100
        case Money(amount, sign):
            return exact(amount) * CURRENCY[sign].size
        case Quantity(amount, unit):
            return exact(amount) * UNITS[unit].size
        case MixedUnits(quantities):
            return sum(map(exact, quantities), ZERO)
        case ClockTime():
            return Fraction(clock_seconds(node))
        case Power(base, exponent):
            return _power(exact(base), exact(exponent))
        case Root(of, index):
            return _root(exact(of), index)
    raise NotExact(f"{type(node).__name__} has no value of its own")


def decimal_value(node: Dec) -> Fraction:
    """Return the value of a decimal; a recurring block of n digits is worth block/(10^n − 1).

    >>> decimal_value(Dec("1", "", "7"))
    Fraction(16, 9)
    """
    scale = 10 ** len(node.places)
    value = Fraction(int(node.whole + node.places), scale)
    if node.recurring:
        value += Fraction(int(node.recurring), (10 ** len(node.recurring) - 1) * scale)
    return value


def parts(node: Node) -> tuple[Fraction, ...]:
    """Return the values of the parts of a ratio or list, or the one value of anything else.

    >>> from itembank.notation.tree import ratio
    >>> parts(ratio(Int(3), Int(20)))
    (Fraction(3, 1), Fraction(20, 1))
    """
    if isinstance(node, Ratio | Listing):
        return tuple(exact(part) for part in node.parts)
    return (exact(node),)


def linear(node: Node, known: dict[str, Fraction] | None = None) -> Linear:
    """Return `node` as a linear form in its letters, `known` letters replaced by values.

    Raises
    ------
    NotExact
        If the tree is not linear in the letters that are left.

    >>> from itembank.notation.tree import juxt, num, sub
    >>> linear(sub(juxt(num(3), Sym("x")), num(4)))
    {'x': Fraction(3, 1), '': Fraction(-4, 1)}
    """
    known = known or {}
    match node:
        case Sym(name):
            return {"": known[name]} if name in known else {name: ONE}
        case Blank():
            return {"": known["□"]} if "□" in known else {"□": ONE}
        case Neg(of):
            return {name: -c for name, c in linear(of, known).items()}
        case Bracket(of):
            return linear(of, known)
        case Sum(first, rest):
            if times_in(node) is not None and not symbols(node):
                return {"": exact(node)}
            total = dict(linear(first, known))
            for op, term in rest:
                for name, c in linear(term, known).items():
                    total[name] = total.get(name, ZERO) + (c if op == "+" else -c)
            return total
        case Frac(top, bottom):
            return _divide(linear(top, known), linear(bottom, known))
        case Juxt(factors):
            product: Linear = {"": ONE}
            for factor in factors:
                product = _multiply(product, linear(factor, known))
            return product
        case Product(first, rest):
            product = linear(first, known)
            for pop, factor in rest:
                form = linear(factor, known)
                product = _divide(product, form) if pop == "÷" else _multiply(product, form)
            return product
        case Percent(of):
            return {name: c / 100 for name, c in linear(of, known).items()}
        case Money(amount, sign):
            size = CURRENCY[sign].size
            return {name: c * size for name, c in linear(amount, known).items()}
        case Quantity(amount, unit):
            size = UNITS[unit].size
            return {name: c * size for name, c in linear(amount, known).items()}
        case MixedUnits(quantities):
            return linear(Sum(quantities[0], tuple(("+", q) for q in quantities[1:])), known)
        case Power(base, exponent):
            bottom_form = linear(base, known)
            if set(bottom_form) <= {""}:
                return {"": _power(bottom_form.get("", ZERO), exact(exponent))}
            if exact(exponent) == 1:
                return bottom_form
            raise NotExact("a power of a letter is not linear")
    return {"": exact(node)}


def constant(form: Linear) -> Fraction:
    """Return the constant of a linear form in which every letter has coefficient zero."""
    if any(c for name, c in form.items() if name):
        raise NotExact("a letter is left over")
    return form.get("", ZERO)


def sides(node: Relation) -> list[tuple[Node, str, Node]]:
    """Return a relation as its neighbouring pairs of sides, each with its sign.

    >>> from itembank.notation.tree import equals
    >>> sides(equals(Int(1), Int(2), Int(3)))
    [(Int(n=1), '=', Int(n=2)), (Int(n=2), '=', Int(n=3))]
    """
    left, pairs = node.first, []
    for op, right in node.rest:
        pairs.append((left, str(op), right))
        left = right
    return pairs


def _over(top: Fraction, bottom: Fraction) -> Fraction:
    if not bottom:
        raise NotExact("this divides by zero")
    return top / bottom


def _of_the_day(total: Fraction, times: int | None) -> Fraction:
    """Return a sum with times of day in it: a time goes round, a length of time may not."""
    if times == 1:
        return total % DAY
    if total < 0:
        raise NotExact(NEXT_DAY)
    return total


def _power(base: Fraction, exponent: Fraction) -> Fraction:
    if exponent.denominator != 1 or abs(exponent) > LARGEST_EXPONENT:
        raise NotExact(f"the exponent {exponent} is not a whole number up to {LARGEST_EXPONENT}")
    if (
        max(base.numerator.bit_length(), base.denominator.bit_length()) * abs(exponent)
        > LARGEST_BITS
    ):
        raise NotExact("this power is too large")
    if exponent < 0 and not base:
        raise NotExact("this divides by zero")
    return Fraction(base**exponent.numerator)


def _root(of: Fraction, index: int) -> Fraction:
    def whole_root(n: int) -> int:
        if n.bit_length() > LARGEST_BITS:
            raise NotExact("this root is of too large a number")
        guess = round(n ** (1 / index)) if n < 10**15 else _floor_root(n, index)
        if guess**index != n:
            raise NotExact("this root is not a rational number")
        return guess

    if of < 0 and index % 2 == 0:
        raise NotExact("a negative number has no such root")
    sign = -1 if of < 0 else 1
    return Fraction(sign * whole_root(abs(of.numerator)), whole_root(of.denominator))


def _floor_root(n: int, index: int) -> int:
    if index in (2, 4):
        return isqrt(n) if index == 2 else isqrt(isqrt(n))
    if not n:
        return 0
    # Newton's method from above, where the steps only ever fall until the root is reached.
    guess = 1 << (n.bit_length() // index + 1)
    while True:
        better = ((index - 1) * guess + n // guess ** (index - 1)) // index
        if better >= guess:
            return guess
        guess = better


def _multiply(a: Linear, b: Linear) -> Linear:
    if not any(name for name in b):
        c = b.get("", ZERO)
        return {name: v * c for name, v in a.items()}
    if not any(name for name in a):
        c = a.get("", ZERO)
        return {name: v * c for name, v in b.items()}
    raise NotExact("letters are multiplied together")


def _divide(a: Linear, b: Linear) -> Linear:
    if any(c for name, c in b.items() if name):
        raise NotExact("a letter stands in a denominator")
    bottom = b.get("", ZERO)
    return {name: _over(v, bottom) for name, v in a.items()}
