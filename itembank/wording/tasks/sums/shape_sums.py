"""Builders of what words ask of a named shape: each makes the tree to be worked out from its sizes.

The formulas are those of England's programme of study for key stage 3 (2013; from memory). A size
that is no length, or lengths in two kinds of unit as printed and bare, build nothing.
"""

from __future__ import annotations

from collections.abc import Callable

from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.wording.tasks.sums.sums import Built, NotBuilt, as_part, kind, less

DEGREES = "°"


def sizes(*nodes: t.Node, of: str = "length") -> tuple[t.Node, ...]:
    """Return sizes that are all of one kind or all bare numbers, and more than nothing.

    >>> from itembank.notation.parse import parse
    >>> sizes(parse("6 cm"), parse("1/2 m"))[0] == parse("6 cm")
    True
    """
    kinds = {kind(node) for node in nodes}
    if len(kinds) > 1 or not kinds <= {of, ""}:
        raise NotBuilt(f"This takes sizes that are all of one kind: each a {of}, or a number.")
    for node in nodes:
        if isinstance(node, t.Relation | t.Listing | t.Ratio | t.ClockTime) or t.symbols(node):
            raise NotBuilt("This is worked out with numbers and amounts only.")
        if exact(node) <= 0:
            raise NotBuilt("A size is more than nothing.")
    return nodes


def times(first: t.Node, *rest: t.Node) -> t.Node:
    """Return a product of trees."""
    return t.Product(as_part(first), tuple(("×", as_part(node)) for node in rest))


def _halved(node: t.Node) -> t.Node:
    return t.Product(as_part(node), (("÷", t.Int(2)),))


def _sum(first: t.Node, *rest: t.Node) -> t.Node:
    return t.Sum(as_part(first), tuple(("+", as_part(node)) for node in rest))


def rectangle_area(a: t.Node, b: t.Node) -> Built:
    """Return length times width, or base times perpendicular height of a parallelogram."""
    return times(*sizes(a, b)), ()


def rectangle_perimeter(a: t.Node, b: t.Node) -> Built:
    """Return twice the sum of length and width."""
    return times(t.Int(2), _sum(*sizes(a, b))), (2,)


def square_area(a: t.Node) -> Built:
    """Return a side times itself."""
    return times(*sizes(a, a)), ()


def regular_perimeter(sides: int) -> Callable[[t.Node], Built]:
    """Return what adds up so many equal sides."""
    return lambda a: (times(t.Int(sides), *sizes(a)), (sides,))


def triangle_area(base: t.Node, height: t.Node) -> Built:
    """Return half of base times perpendicular height."""
    return _halved(times(*sizes(base, height))), (2,)


def trapezium_area(a: t.Node, b: t.Node, height: t.Node) -> Built:
    """Return half the sum of the parallel sides, times the height between them."""
    a, b, height = sizes(a, b, height)
    return _halved(times(t.Bracket(_sum(a, b)), height)), (2,)


def circle_area(radius: t.Node) -> Built:
    """Return π times the radius squared."""
    return times(t.Sym("π"), *sizes(radius, radius)), ()


def circle_area_across(diameter: t.Node) -> Built:
    """Return π times the diameter squared, over 4."""
    made = times(t.Sym("π"), *sizes(diameter, diameter))
    return t.Product(as_part(made), (("÷", t.Int(4)),)), (4,)


def circumference(radius: t.Node) -> Built:
    """Return 2π times the radius."""
    return times(t.Int(2), t.Sym("π"), *sizes(radius)), (2,)


def circumference_across(diameter: t.Node) -> Built:
    """Return π times the diameter."""
    return times(t.Sym("π"), *sizes(diameter)), ()


def cuboid_volume(a: t.Node, b: t.Node, c: t.Node) -> Built:
    """Return length times width times height."""
    return times(*sizes(a, b, c)), ()


def cuboid_surface(a: t.Node, b: t.Node, c: t.Node) -> Built:
    """Return twice the sum of the areas of three faces that meet."""
    a, b, c = sizes(a, b, c)
    return times(t.Int(2), t.Bracket(_sum(times(a, b), times(b, c), times(a, c)))), (2,)


def cube_volume(a: t.Node) -> Built:
    """Return an edge times itself, twice over."""
    return times(*sizes(a, a, a)), ()


def cube_surface(a: t.Node) -> Built:
    """Return six times the area of a face."""
    return times(t.Int(6), *sizes(a, a)), (6,)


def cylinder_volume(radius: t.Node, height: t.Node) -> Built:
    """Return the area of the base times the height."""
    radius, height = sizes(radius, height)
    return times(t.Sym("π"), radius, radius, height), ()


def cylinder_volume_across(diameter: t.Node, height: t.Node) -> Built:
    """Return the area of the base, from its diameter, times the height."""
    diameter, height = sizes(diameter, height)
    made = times(t.Sym("π"), diameter, diameter, height)
    return t.Product(as_part(made), (("÷", t.Int(4)),)), (4,)


def hypotenuse(a: t.Node, b: t.Node) -> Built:
    """Return the root of the sum of the squares of the two shorter sides (Euclid I.47)."""
    a, b = sizes(a, b)
    return t.Root(_sum(times(a, a), times(b, b)), 2), ()


def shorter_side(longest: t.Node, a: t.Node) -> Built:
    """Return the third side of a right-angled triangle from its hypotenuse and another side."""
    longest, a = sizes(longest, a)
    if exact(longest) <= exact(a):
        raise NotBuilt("The hypotenuse is the longest side.")
    return t.Root(t.Sum(times(longest, longest), (("-", t.Bracket(times(a, a))),)), 2), ()


def left_of(whole: int) -> Callable[..., Built]:
    """Return what is left of so many degrees when angles are taken away (Euclid I.13, I.32)."""

    def build(*angles: t.Node) -> Built:
        if any(kind(angle) != "angle" for angle in angles):
            raise NotBuilt("Angles are in degrees, as {50°}.")
        sizes(*angles, of="angle")
        if sum(map(exact, angles)) >= exact(t.Quantity(t.Int(whole), DEGREES)):
            raise NotBuilt("Nothing is left for another angle.")
        return less(t.Quantity(t.Int(whole), DEGREES), _sum(*angles))[0], (whole,)

    return build
