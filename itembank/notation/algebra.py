"""The algebra face: a tree as an exact quotient of polynomials, square roots and all.

Two trees say the same, whatever their letters are worth, exactly when their quotients agree
(:mod:`.quotients`). This is part of the first road, so it does without sympy.

>>> from itembank.notation.parse import parse
>>> algebra(parse("(x + 3)(x - 3)")) == algebra(parse("x^2 - 9"))
True
>>> algebra(parse("√12 + √27")) == algebra(parse("5√3"))
True
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from itembank.notation import tree as t
from itembank.notation.quotients import (
    LARGEST_DEGREE,
    OVER_ONE,
    Quotient,
    letter,
    number,
    rational,
)
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import LARGEST_BITS, NotExact, decimal_value, exact, worth

LARGEST_RADICAND = 10**9
"""The largest number whose square factors are looked for, by trial division."""


def algebra(node: t.Node, known: Mapping[str, Quotient] | None = None) -> Quotient:
    """Return `node` as a quotient of polynomials, the letters in `known` replaced.

    Raises:
        NotExact: it holds a root of a letter or of a root, a cube root that does not come
            out, a letter in an exponent, a relation, a list or a name; it divides by zero;
            or it goes past the limits of this module.

    >>> from itembank.notation.parse import parse
    >>> algebra(parse("(x^2 - 1)/(x - 1)")) == algebra(parse("x + 1"))
    True
    >>> algebra(parse("2x + 1"), {"x": number(3)}) == number(7)
    True
    """
    form = ALGEBRA.get(type(node))
    return form(node, known or {}) if form else number(worth(node))


def _power(base: Quotient, exponent: Fraction) -> Quotient:
    # The root first, so that the numbers stay small: 8^(2/3) is 2^2.
    if exponent.denominator in (2, 3, 4):
        root = _root(base, exponent.denominator)
        return _power(root, Fraction(exponent.numerator))
    if exponent.denominator != 1 or abs(exponent) > LARGEST_DEGREE:
        raise NotExact(f"the exponent {exponent} is not one that can be worked out exactly")
    if exponent < 0:
        return number(1) / _power(base, -exponent)
    bits = max(
        (
            max(c.numerator.bit_length(), c.denominator.bit_length())
            for side in (base.top, base.bottom)
            for c in side.values()
        ),
        default=0,
    )
    # So many binary digits the power has at most, which is known before it is worked out.
    if bits * exponent > LARGEST_BITS:
        raise NotExact("this power is too large")
    if not exponent:
        return number(1)
    total = base
    for _ in range(exponent.numerator - 1):
        total = total * base
    return total


def _cancels(value: Quotient) -> bool:
    try:
        rational(value)
    except NotExact:
        return False
    return True


def _root(of: Quotient, index: int) -> Quotient:
    """Return a root: a square root of any rational number, other roots where they come out."""
    # π may cancel, as where the area of a circle is so many times π.
    if of.letters() and (of.letters() != {"π"} or not _cancels(of)):
        raise NotExact("a letter stands under a root")
    value = rational(of)
    if value < 0 and index % 2 == 0:
        raise NotExact("a negative number has no such root")
    if index != 2:
        try:
            return number(exact(t.Root(_tree(value), index)))
        except NotExact:
            # ∜4 is √2, though it is no rational number.
            if index == 4:
                return _root(_root(of, 2), 2)
            raise
    # √(a/b) is √(ab)/b.
    inside = value.numerator * value.denominator
    # To look for square factors of a long number takes long; here only a whole root counts.
    if inside > LARGEST_RADICAND:
        return number(exact(t.Root(_tree(value), 2)))
    outside, inside = square_free(inside)
    coefficient = Fraction(outside, value.denominator)
    return Quotient({((), inside): coefficient} if value else {}, OVER_ONE)


def _tree(value: Fraction) -> t.Node:
    node: t.Node = t.Frac(t.Int(abs(value.numerator)), t.Int(value.denominator))
    return t.Neg(node) if value < 0 else node


def square_free(n: int) -> tuple[int, int]:
    """Return a and b with n = a² × b and b divisible by no square.

    >>> square_free(72), square_free(7), square_free(0)
    ((6, 2), (1, 7), (0, 1))
    """
    if n == 0:
        return 0, 1
    outside, inside, p = 1, 1, 2
    while p * p <= n:
        times = 0
        while n % p == 0:
            n //= p
            times += 1
        # Each pair of a prime comes out of the root as one; an odd one stays inside.
        outside *= p ** (times // 2)
        inside *= p ** (times % 2)
        p += 1 if p == 2 else 2
    return outside, inside * n


Known = Mapping[str, Quotient]


def _sum(node: t.Sum, known: Known) -> Quotient:
    total = algebra(node.first, known)
    for op, term in node.rest:
        value = algebra(term, known)
        total = total + value if op == "+" else total - value
    return total


def _quotient(node: t.Product, known: Known) -> Quotient:
    total = algebra(node.first, known)
    for op, factor in node.rest:
        value = algebra(factor, known)
        total = total / value if op == "÷" else total * value
    return total


def _side_by_side(node: t.Juxt, known: Known) -> Quotient:
    total = algebra(node.factors[0], known)
    for factor in node.factors[1:]:
        total = total * algebra(factor, known)
    return total


def _raised(node: t.Power, known: Known) -> Quotient:
    power = algebra(node.exponent, known)
    if power.letters():
        raise NotExact("a letter stands in an exponent")
    return _power(algebra(node.base, known), rational(power))


ALGEBRA: dict[type, Callable[[Any, Known], Quotient]] = {
    t.Sym: lambda node, known: known[node.name] if node.name in known else letter(node.name),
    t.Blank: lambda node, known: known["□"] if "□" in known else letter("□"),
    t.Int: lambda node, known: number(node.n),
    t.Dec: lambda node, known: number(decimal_value(node)),
    t.Neg: lambda node, known: -algebra(node.of, known),
    t.Bracket: lambda node, known: algebra(node.of, known),
    t.Frac: lambda node, known: algebra(node.num, known) / algebra(node.den, known),
    t.Percent: lambda node, known: algebra(node.of, known) / number(100),
    t.Money: lambda node, known: algebra(node.amount, known) * number(CURRENCY[node.sign].size),
    t.Quantity: lambda node, known: algebra(node.amount, known) * number(UNITS[node.unit].size),
    t.Sum: _sum,
    t.Product: _quotient,
    t.Juxt: _side_by_side,
    t.Power: _raised,
    t.Root: lambda node, known: _root(algebra(node.of, known), node.index),
}
"""How each kind of node is made of its letters, where it may hold some; else it is a number."""
