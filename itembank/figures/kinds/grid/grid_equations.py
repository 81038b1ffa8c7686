"""Equations of straight lines, exactly: read from their text, and written as y = mx + c."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from itembank.notation import tree as t
from itembank.notation.linear import linear
from itembank.notation.parse import parse_written


class Straight(NamedTuple):
    """The places where `across` · x + `up` · y + `rest` is nought; not both counts are."""

    across: Fraction
    up: Fraction
    rest: Fraction

    @property
    def slope(self) -> Fraction:
        """Return the gradient; raises ZeroDivisionError for an upright line."""
        return -self.across / self.up

    @property
    def crossing(self) -> Fraction:
        """Return the value of y where x is 0; raises ZeroDivisionError for an upright line."""
        return -self.rest / self.up

    def same(self, other: Straight) -> bool:
        """Tell whether two lines are one."""
        return not self.turn(other) and (
            self.across * other.rest == other.across * self.rest
            and self.up * other.rest == other.up * self.rest
        )

    def turn(self, other: Straight) -> Fraction:
        """Return a number that is nought where two lines are parallel."""
        return self.across * other.up - self.up * other.across

    def at(self, x: Fraction, y: Fraction) -> Fraction:
        """Return what is nought on the line, at a place."""
        return self.across * x + self.up * y + self.rest

    def meets(self, other: Straight) -> tuple[Fraction, Fraction] | None:
        """Return where two lines cross (Cramer's rule), None where they are parallel.

        >>> straight("y = x + 1").meets(straight("x + y = 5"))
        (Fraction(2, 1), Fraction(3, 1))
        """
        turn = self.turn(other)
        if not turn:
            return None
        return (
            (self.up * other.rest - other.up * self.rest) / turn,
            (other.across * self.rest - self.across * other.rest) / turn,
        )


def through(a: tuple[Fraction, Fraction], b: tuple[Fraction, Fraction]) -> Straight:
    """Return the line through two places."""
    across, up = b[1] - a[1], a[0] - b[0]
    return Straight(across, up, -across * a[0] - up * a[1])


@lru_cache(maxsize=256)
def straight(text: str) -> Straight:
    """Return the line that an equation in x and y has; raises NotationError.

    >>> straight("2y = 6x - 1").slope
    Fraction(3, 1)
    """
    node = parse_written(text)
    if not (isinstance(node, t.Relation) and [op for op, _ in node.rest] == ["="]):
        raise t.NotationError("a line is given by one equation")
    left, right = linear(node.first), linear(node.rest[0][1])
    if not {*left, *right} <= {"x", "y", ""}:
        raise t.NotationError("the equation of a line is in x and y")
    across, up, rest = (
        left.get(name, Fraction(0)) - right.get(name, Fraction(0)) for name in ("x", "y", "")
    )
    if not across and not up:
        raise t.NotationError("it is the equation of no line")
    return Straight(across, up, rest)


def fraction_node(value: Fraction) -> t.Node:
    """Return a number as a whole number or a fraction in lowest terms."""
    if value.denominator == 1:
        return t.num(int(value))
    return t.frac(value.numerator, value.denominator)


def equation_node(line: Straight) -> t.Relation:
    """Return the equation of a line as y = mx + c, or as x = k.

    >>> from itembank.notation.line import line
    >>> [line(equation_node(straight(text))) for text in ("2x + y = 5", "3x = 6", "y = 4 + 0")]
    ['y = -2x + 5', 'x = 2', 'y = 4']
    """
    if not line.up:
        return t.equals(t.Sym("x"), fraction_node(-line.rest / line.across))
    slope, rest = line.slope, line.crossing
    x = t.Sym("x")
    if not slope:
        return t.equals(t.Sym("y"), fraction_node(rest))
    size = abs(slope)
    term: t.Node = x if size == 1 else t.juxt(fraction_node(size), x)
    first = term if slope > 0 else t.Neg(term)
    if not rest:
        return t.equals(t.Sym("y"), first)
    last = fraction_node(abs(rest))
    return t.equals(t.Sym("y"), t.add(first, last) if rest > 0 else t.sub(first, last))
