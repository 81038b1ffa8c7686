"""Straight lines for questions: as equations, and drawn through places where squares meet."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators.graphs._grids import Spot
from itembank.figures.kinds.grid.coordinate_grid import GridLine
from itembank.figures.kinds.grid.grid_equations import Straight, equation_node
from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t

X, Y = t.Sym("x"), t.Sym("y")
Edges = tuple[int, int, int, int]


def equation(slope: Fraction | int, rest: Fraction | int) -> t.Relation:
    """Return y = mx + c.

    >>> from itembank.notation.line import line
    >>> line(equation(Fraction(-1, 2), 3))
    'y = -(1/2)x + 3'
    """
    return equation_node(Straight(Fraction(slope), Fraction(-1), Fraction(rest)))


def right_side(slope: Fraction | int, rest: Fraction | int) -> t.Node:
    """Return mx + c."""
    return equation(slope, rest).rest[0][1]


def spots(slope: Fraction, rest: Fraction | int, edges: Edges) -> list[Spot]:
    """Return the places of a grid where a line meets corners of squares, from left to right.

    >>> spots(Fraction(3, 2), 1, (-3, 3, -4, 4))
    [(-2, -2), (0, 1), (2, 4)]
    """
    left, right, bottom, top = edges
    # In whole numbers: y is (rise · x + start) over `run`.
    run = slope.denominator * rest.denominator
    rise, start = slope.numerator * rest.denominator, rest.numerator * slope.denominator
    found = []
    for x in range(left, right + 1):
        y, over = divmod(rise * x + start, run)
        if not over and bottom <= y <= top:
            found.append((x, y))
    return found


def drawn(slope: Fraction, rest: Fraction | int, edges: Edges, name: str = "") -> GridLine:
    """Return a line of a grid, through the first and the last corner of squares that it meets."""
    first, *_, last = spots(slope, rest, edges)
    return GridLine(_nodes(first), _nodes(last), name)


def segment(a: Spot, b: Spot, name: str = "") -> GridLine:
    """Return the part of a line between two places."""
    return GridLine(_nodes(a), _nodes(b), name, segment=True)


def _nodes(spot: Spot) -> tuple[t.Node, t.Node]:
    return t.num(spot[0]), t.num(spot[1])


def slope_node(slope: Fraction | int) -> t.Node:
    """Return a gradient as a whole number or a fraction in lowest terms."""
    return number_node(slope)


def signed(value: int) -> t.Node:
    """Return a number as it stands after an operation: a negative one in brackets."""
    return t.num(value) if value >= 0 else t.Bracket(t.num(value))


def quotient(rise: int, run: int) -> t.Node:
    """Return how far up over how far along, cancelled in the same line where it can be.

    >>> from itembank.notation.line import line
    >>> line(quotient(4, 2)), line(quotient(-1, 3)), line(quotient(-3, -6))
    ('4/2 = 2', '-1/3', '3/6 = 1/2')
    """
    top, bottom = (-rise, -run) if run < 0 else (rise, run)
    whole = t.frac(top, bottom)
    if gcd(top, bottom) == 1 and bottom > 1:
        return whole
    return t.equals(whole, slope_node(Fraction(rise, run)))


def said(value: Fraction | int) -> str:
    """Return a number in words of working, with a real minus sign.

    >>> said(Fraction(-1, 2))
    '−1/2'
    """
    return str(value).replace("-", "−")
