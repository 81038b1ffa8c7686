"""Equations from shapes that are drawn: equal sides and angle sums with expressions.

England's programme of study for key stage 3 (2013) asks pupils to "model situations or
procedures by translating them into algebraic expressions or formulae" and to use linear
equations in one variable (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._corners import at
from generators._turns import by_turns
from generators.equations._balance import balance
from generators.equations._writing import side
from generators.geometry._angles import (
    value_letter,
    value_question,
    whole_number,
)
from generators.geometry._areas import SHOWN_SIDES, asked, length
from generators.geometry._form_mistakes import (
    LENGTH_NOT_LETTER,
    LETTER_FOR_SHAPE,
    LETTERS_ADDED,
    NOT_DIVIDED,
    NUMBER_ADDED,
)
from generators.geometry._form_told import with_equations
from itembank.figures.figure import Figure
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

EQUAL_SIDES = "The sides with a dash are equal."
OPPOSITE_SIDES = "Opposite sides of a rectangle are equal."


def expression(a: int, x: t.Sym, b: int, unit: str) -> t.Node:
    """Return (ax + b) cm as it stands beside a side."""
    inside = side(a, x, b)
    return t.Quantity(t.Bracket(inside) if b else inside, unit)


def isosceles(
    base: int, equal: int, labels: tuple[t.Node, t.Node], base_label: t.Node | None = None
) -> Polygon:
    """Return an isosceles triangle, its equal sides labelled; not drawn accurately."""
    # Drawn a little lower than it is, and the base still on its side of the equal ones.
    high = round(((equal * 100) ** 2 - (base * 50) ** 2) ** 0.5)
    sides = [("BC", labels[0]), ("CA", labels[1])]
    if base_label is not None:
        sides.insert(0, ("AB", base_label))
    return Polygon(
        at((0, 0), (100 * base, 0), (50 * base, high)),
        sides=tuple(sides),
        equal=(("BC", "CA"),),
        accurate=False,
    )


def _rectangle(long: int, wide: int, labels: tuple[t.Node, t.Node]) -> Polygon:
    return Polygon(
        at((0, 0), (long, 0), (long, wide), (0, wide)),
        sides=(("AB", labels[0]), ("CD", labels[1])),
        right="ABCD",
        accurate=False,
    )


def _support(kind: int, a: int, b: int, x: int) -> bool:
    size = a * x + b
    apart = x not in (size - b, size + b) and size not in (x, 2 * x)
    return b != 0 and 6 <= size <= 40 and apart and (a + b + x) % 2 == kind


def _core(kind: int, a: int, b: int, x: int) -> bool:
    c, e = a + 1 + b, _number(a, x)
    d = b * x + x + e
    size = c * x + e
    return b < 3 and d not in (0, e) and 6 <= size <= 50 and x not in (size, d + e)


def _number(a: int, x: int) -> int:
    """Return the number in the second of two expressions."""
    return (-3, 2, -5, 4, 1)[(a + x) % 5]


def _challenge(kind: int, a: int, b: int, x: int) -> bool:
    c = a + 1 + b % 2
    equal = c * x
    base = _base(kind, equal, b)
    return 8 <= equal <= 40 and base >= 5 and x > 2 and base != equal


def _base(kind: int, equal: int, b: int) -> int:
    """Return the base of the triangle, or the width of the rectangle."""
    return equal - 5 + b if kind == 0 else equal // 2 + b


@register
class FormEquations(Topic):
    """Expressions on the sides and in the angles of shapes that are drawn."""

    id = "geometry.form-equations"
    title = "Equations from shapes"
    statements = ("geometry.two-views", "geometry.properties")
    misconceptions = (
        *(LENGTH_NOT_LETTER, LETTER_FOR_SHAPE, NUMBER_ADDED, NOT_DIVIDED, SHOWN_SIDES),
        LETTERS_ADDED,
    )
    prerequisites = ("equations.two-step", "geometry.angles-in-triangles")
    spaces = {
        Tier.SUPPORT: Space(
            _support, kind=(0, 1), a=(1, 2, 3, 4), b=(-4, -3, -2, 1, 2, 3, 5, 7), x=range(3, 13)
        ),
        Tier.CORE: Space(_core, kind=(0, 1), a=(1, 2, 3, 4), b=range(7), x=range(3, 16)),
        Tier.CHALLENGE: Space(_challenge, kind=(0, 1), a=(1, 2, 3, 4), b=range(7), x=range(3, 13)),
    }
    spaces = with_equations(kinds.with_statements(spaces))
    spare = "sides of a plausible length, and letters that are whole numbers"

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, x = values
        if tier is Tier.SUPPORT:
            return one_expression(kind, a, b, x)
        if tier is Tier.CORE:
            return two_expressions(kind, a, b, x)
        return perimeter_wanted(kind, a, b, x)


def one_expression(kind: int, a: int, b: int, value: int) -> Draft:
    """Return equal sides ax + b and a number: of an isosceles triangle (0), or a rectangle."""
    x = value_letter(a, b, value)
    unit = by_turns(("cm", "m"), a + b + value)
    size = a * value + b
    labels = (expression(a, x, b, unit), length(size, unit))
    if value % 2:
        labels = (labels[1], labels[0])
    if kind == 0:
        figure: Figure = isosceles(_wide(size), size, labels)
    else:
        figure = _rectangle(size, max(2, size // 2 - 1), labels)
    steps = [
        Step(EQUAL_SIDES if kind == 0 else OPPOSITE_SIDES, t.equals(side(a, x, b), t.Int(size))),
        *balance(x, a, b, 0, size),
    ]
    wrong: list[Wrong] = [
        (LENGTH_NOT_LETTER, size),
        (NUMBER_ADDED, whole_number(size + b, a)),
        (NOT_DIVIDED, size - b if a > 1 else size + 2 * b if size + 2 * b > 0 else None),
    ]
    return value_question(figure, x, value, steps, wrong, ("one", kind, a, b, value))


def _wide(size: int) -> int:
    return max(4, size * 5 // 4 + (1 if size * 5 // 4 == size else 0))


def two_expressions(kind: int, a: int, b: int, value: int) -> Draft:
    """Return equal sides ax + d and cx: of an isosceles triangle (0), or a rectangle."""
    x = value_letter(a, b, value)
    unit = by_turns(("cm", "m"), a + b + value)
    c, e = a + 1 + b, _number(a, value)
    d = (c - a) * value + e
    size = c * value + e
    labels = (expression(a, x, d, unit), expression(c, x, e, unit))
    if value % 2:
        labels = (labels[1], labels[0])
    if kind == 0:
        figure: Figure = isosceles(_wide(size), size, labels)
    else:
        figure = _rectangle(size, max(2, size // 2 - 1), labels)
    steps = [
        Step(
            EQUAL_SIDES if kind == 0 else OPPOSITE_SIDES,
            t.equals(side(a, x, d), side(c, x, e)),
        ),
        *balance(x, a, d, c, e),
    ]
    wrong: list[Wrong] = [
        (LENGTH_NOT_LETTER, size),
        (NOT_DIVIDED, d - e if c - a > 1 else None),
        (NUMBER_ADDED, whole_number(d + e, c - a)),
        (LETTERS_ADDED, Fraction(d - e, a + c)),
    ]
    return value_question(figure, x, value, steps, wrong, ("two", kind, a, b, value))


def perimeter_wanted(kind: int, a: int, b: int, value: int) -> Draft:
    """Return equal sides ax + d and cx, with another side given; the perimeter is asked for."""
    x = value_letter(a, b, value)
    unit = by_turns(("cm", "m"), a + b + value)
    c = a + 1 + b % 2
    d = (c - a) * value
    size = c * value
    base = _base(kind, size, b)
    labels = (expression(a, x, d, unit), expression(c, x, 0, unit))
    other = length(base, unit)
    if kind == 0:
        figure = isosceles(base, size, labels, other)
        name, total = "triangle", base + 2 * size
        parts = [length(size, unit), length(size, unit), other]
    else:
        figure = Polygon(
            at((0, 0), (size, 0), (size, base), (0, base)),
            sides=(("AB", labels[0]), ("CD", labels[1]), ("BC", other)),
            right="ABCD",
            accurate=False,
        )
        name, total = "rectangle", 2 * (base + size)
        parts = [length(size, unit), other, length(size, unit), other]
    text = (asked("perimeter", name, value),)
    key = length(total, unit)
    steps = [
        Step(EQUAL_SIDES if kind == 0 else OPPOSITE_SIDES, t.equals(side(a, x, d), side(c, x))),
        *balance(x, a, d, c, 0),
        Step(
            f"Substitute {x.name} = {value} to find the side.",
            t.equals(t.times(t.Int(c), length(value, unit)), length(size, unit)),
        ),
        Step("Add all the sides.", t.equals(t.add(*parts), key)),
    ]
    wrong: list[Wrong] = [
        (LETTER_FOR_SHAPE, length(value, unit)),
        (LENGTH_NOT_LETTER, length(size, unit)),
        (SHOWN_SIDES, length(base + size, unit)),
    ]
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "quantity",
        tuple(steps),
        slips(*wrong, key=key),
        ("perimeter", kind, a, b, value),
        figure=figure,
    )
