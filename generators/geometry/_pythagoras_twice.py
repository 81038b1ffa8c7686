"""Pythagoras’ theorem within a longer question: ladders, diagonals, areas."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.geometry._calculator import PLACE, amount, root_of
from generators.geometry._pythagoras_mistakes import (
    ADDED,
    DIAGONAL_AS_SIDE,
    NO_ROOT,
    NOT_HALVED,
    SAVED_NOT_ASKED,
    SIDE_AS_HEIGHT,
    SIDES_SUBTRACTED,
    STOPS_AT_SIDE,
    SUBTRACTED,
)
from generators.geometry._right_triangles import triple_of
from generators.geometry._squares_of_sides import (
    TWO,
    difference_of_squares,
    root_of_difference,
    root_of_sum,
    squared,
    subtract_steps,
    sum_of_squares,
)
from itembank.items.item import Draft, Find, Round, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_LEANING = ("ladder", "plank", "pole")


_FIELDS = ("field", "park", "playground", "car park")


def ladder(a: int, b: int, _: int) -> Draft:
    """Return the question how far up a wall a ladder reaches, in tenths of a metre."""
    long, foot = Fraction(a, 10), Fraction(b, 10)
    longest, other = amount(long, "m"), amount(foot, "m")
    square = long * long - foot * foot
    value = root_of(square)
    return Draft(
        prompt(
            f"A {by_turns(_LEANING, a + b)} {{c}} long leans against a wall. "
            "Its foot is {a} away from the wall. How high up the wall does it reach? "
            f"{PLACE.said('m')}",
            c=longest,
            a=other,
        ),
        Round(root_of_difference(longest, other), "places", 1),
        PLACE.node(value, "m"),
        "rounded",
        (
            Step("It makes a right-angled triangle with the wall, and is its longest side."),
            Step(
                "Subtract the squares.",
                t.equals(difference_of_squares(longest, other), amount(square, "m^2")),
            ),
            Step("Take the square root.", t.Root(amount(square, "m^2"))),
            *PLACE.steps(value, "m"),
        ),
        slips(
            (ADDED, PLACE.node(root_of(long * long + foot * foot), "m")),
            (SIDES_SUBTRACTED, PLACE.node(long - foot, "m")),
            (NO_ROOT, PLACE.node(square, "m")),
        ),
        ("ladder", a, b),
        constants=(2,),
    )


def across_a_field(a: int, b: int, _: int) -> Draft:
    """Return the question how much shorter the way across a field is."""
    first, second = amount(b, "m"), amount(a, "m")
    square = Fraction(a * a + b * b)
    way = root_of(square)
    value = a + b - way
    both = t.add(first, second)
    return Draft(
        prompt(
            f"A {by_turns(_FIELDS, a + b)} is a rectangle {{b}} long and {{a}} wide. You can "
            "walk along two sides, or straight across from corner to corner. How many metres "
            f"shorter is the way across? {PLACE.said('m')}",
            b=first,
            a=second,
        ),
        Round(t.sub(t.Bracket(both), root_of_sum(first, second)), "places", 1),
        PLACE.node(value, "m"),
        "rounded",
        (
            Step("Along two sides.", t.equals(both, amount(a + b, "m"))),
            Step(
                "Pythagoras gives the square of the way across.",
                t.equals(sum_of_squares(first, second), amount(square, "m^2")),
            ),
            Step(
                "Subtract its square root.",
                t.sub(amount(a + b, "m"), t.Root(amount(square, "m^2"))),
            ),
            *PLACE.steps(value, "m"),
        ),
        slips(
            (SAVED_NOT_ASKED, PLACE.node(way, "m")),
            (SUBTRACTED, PLACE.node(a + b - root_of(Fraction(b * b - a * a)), "m")),
        ),
        ("across", a, b),
        constants=(2,),
    )


def area_of_rectangle(index: int, which: int, k: int) -> Draft:
    """Return the question for the area of a rectangle from its diagonal and a side."""
    triple = triple_of(index, k)
    known, side, c = triple[which], triple[1 - which], triple[2]
    longest, other, found = (amount(n, "cm") for n in (c, known, side))
    key = amount(known * side, "cm^2")
    return Draft(
        prompt(
            "The diagonal of a rectangle is {c} long. One side is {a} long. "
            "Work out the area of the rectangle.",
            c=longest,
            a=other,
        ),
        Find(t.times(other, root_of_difference(longest, other))),
        key,
        "quantity",
        (
            *subtract_steps(longest, other, side * side, "cm", found),
            Step("Multiply the two sides.", t.equals(t.times(other, found), key)),
        ),
        slips(
            (STOPS_AT_SIDE, amount(side, "cm^2")),
            (SIDES_SUBTRACTED, amount(known * (c - known), "cm^2")),
            (DIAGONAL_AS_SIDE, amount(known * c, "cm^2")),
        ),
        ("rectangle", known, c),
        constants=(2,),
    )


def area_of_isosceles(index: int, which: int, k: int) -> Draft:
    """Return the question for the area of an isosceles triangle from its sides."""
    triple = triple_of(index, k)
    half, high, c = triple[which], triple[1 - which], triple[2]
    equal, base, found = amount(c, "cm"), amount(2 * half, "cm"), amount(high, "cm")
    half_base, key = amount(half, "cm"), amount(half * high, "cm^2")
    halved = t.Frac(base, TWO)
    height = t.Root(t.sub(squared(equal), squared(halved)))
    return Draft(
        prompt(
            "An isosceles triangle has two sides of {c} and a base of {b}. Work out its area.",
            c=equal,
            b=base,
        ),
        Find(t.times(t.frac(1, 2), base, height)),
        key,
        "quantity",
        (
            Step("The height cuts the base in half.", t.equals(t.divide(base, TWO), half_base)),
            *subtract_steps(equal, half_base, high * high, "cm", found),
            Step(
                "The area is half of base times height.",
                t.equals(t.times(t.frac(1, 2), base, found), key),
            ),
        ),
        slips(
            (SIDE_AS_HEIGHT, amount(half * c, "cm^2")),
            (STOPS_AT_SIDE, amount(high, "cm^2")),
            (NOT_HALVED, amount(2 * half * high, "cm^2")),
        ),
        ("isosceles", half, c),
        constants=(1, 2),
    )
