"""A shape on the drawing of a grid by itself: its corners are reflected and turned by sympy."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.notation.value import NotExact

Corners = list[Any]


def _middle(corners: Corners) -> Any:
    return sympy.Point(*(sum(c[k] for c in corners) / len(corners) for k in (0, 1)))


def _sides(corners: Corners) -> set[frozenset[Any]]:
    return {frozenset((corners[k - 1], corners[k])) for k in range(len(corners))}


def reflected(point: Any, line: Any) -> Any:
    """Return a point's image in a line: as far behind it as the point stands before it.

    sympy's own `Point.reflect` turns the line first and simplifies an arctangent each time.

    >>> reflected(sympy.Point(1, 0), sympy.Line(sympy.Point(0, 0), sympy.Point(1, 1)))
    Point2D(0, 1)
    """
    return 2 * line.projection(point) - point


def mirrors(corners: Corners) -> list[Any]:
    """Return the lines of symmetry: they go through the middle of all corners.

    The first corner that is not the middle stays in its place or goes to another one, and the
    line is then known; it is kept where every side comes to be a side.
    """
    middle = _middle(corners)
    first = next(corner for corner in corners if corner != middle)
    found = []
    for image in corners:
        if image == first:
            line = sympy.Line(middle, first)
        elif image.distance(middle) == first.distance(middle):
            line = sympy.Segment(first, image).perpendicular_bisector()
        else:
            continue
        if _sides([reflected(corner, line) for corner in corners]) == _sides(corners):
            found.append(line)
    return found


def order_of_turns(corners: Corners) -> int:
    """Return how often a shape falls on itself in a full turn about its middle."""
    middle = _middle(corners)
    count = 0
    for way in ((1, 0), (0, 1), (-1, 0), (0, -1)):
        # Corners where squares meet have no other turn than quarters (no regular polygon but the
        # square has all its corners on a square lattice; from memory).
        turned = [
            sympy.Point(
                middle.x + way[0] * (c.x - middle.x) - way[1] * (c.y - middle.y),
                middle.y + way[1] * (c.x - middle.x) + way[0] * (c.y - middle.y),
            )
            for c in corners
        ]
        count += _sides(turned) == _sides(corners)
    return count


def only_mirror(corners: Corners) -> Any:
    """Return the one line of symmetry; raises NotExact where there is not one."""
    found = mirrors(corners)
    if len(found) != 1:
        raise NotExact("the shape has not one line of symmetry")
    return found[0]


# From the name that says most to the one that says least; in a row neither says more.
_RANKS = (
    ("square", "equilateral"),
    ("rectangle", "rhombus"),
    ("parallelogram", "isosceles trapezium"),
    ("trapezium", "kite", "isosceles", "scalene"),
    ("acute-angled", "right-angled", "obtuse-angled"),
)


def fits(name: str, corners: Corners) -> bool:
    """Tell whether a name fits a shape: of a quadrilateral, by its diagonals alone."""
    if len(corners) == 3:
        return _fits_three(name, corners)
    a, b, c, d = corners
    if len({*corners}) < 4 or any(
        sympy.Point.is_collinear(*(p for p in corners if p != left)) for left in corners
    ):
        return False
    first, second = sympy.Segment(a, c), sympy.Segment(b, d)
    if not first.intersection(second):
        return False  # a corner points in, or sides cross
    halved = first.midpoint == second.midpoint
    equal, across = first.length == second.length, first.is_perpendicular(second)
    level = [
        sympy.Line(p, q).is_parallel(sympy.Line(r, s))
        for p, q, r, s in ((a, b, c, d), (b, c, d, a))
    ]
    kite = across and (first.midpoint in sympy.Line(b, d) or second.midpoint in sympy.Line(a, c))
    found = {
        "square": halved and equal and across,
        "rectangle": halved and equal,
        "rhombus": halved and across,
        "parallelogram": halved,
        "isosceles trapezium": any(level) and equal,
        "trapezium": any(level),
        "kite": kite,
    }
    return bool(found.get(name, False))


def _fits_three(name: str, corners: Corners) -> bool:
    triangle = sympy.Triangle(*corners)
    if not isinstance(triangle, sympy.Triangle):
        return False
    largest = max(float(angle.evalf()) for angle in triangle.angles.values())
    right = triangle.is_right()
    found = {
        "equilateral": triangle.is_equilateral(),
        "isosceles": triangle.is_isosceles(),
        "scalene": triangle.is_scalene(),
        "right-angled": right,
        "obtuse-angled": not right and largest > float(sympy.pi / 2),
        "acute-angled": not right and largest < float(sympy.pi / 2),
    }
    return bool(found.get(name, False))


def best_fitting(corners: Corners, offered: tuple[str, ...]) -> str:
    """Return the name of some that says most of those that fit; raises NotExact."""
    for rank in _RANKS:
        found = [name for name in offered if name in rank and fits(name, corners)]
        if len(found) > 1:
            break
        if found:
            # Whatever else fits has to say less of it, not another thing.
            others = [name for name in offered if name != found[0] and fits(name, corners)]
            if any(name.endswith("-angled") or name == "kite" for name in others) and (
                found[0] not in ("square", "rhombus")
            ):
                break
            return found[0]
    raise NotExact("no name of those fits best")


def making(name: str, three: Corners, offered: dict[str, Any]) -> str:
    """Return the letter of the one point that makes a shape with three others; raises NotExact."""
    found, near = [], []
    for letter, at in offered.items():
        # Of four corners each may be the one across from the last.
        rounds = [[three[(k + 1) % 3], three[k], three[(k + 2) % 3], at] for k in range(3)]
        if any(fits(name, corners) for corners in rounds):
            found.append(letter)
        elif name == "kite" and any(map(_mirrored, rounds)):
            near.append(letter)
    if len(found) != 1 or near:
        raise NotExact("no single point makes such a shape")
    return found[0]


def _mirrored(corners: Corners) -> bool:
    """Tell whether two corners across from each other are mirror images in the line of the rest."""
    a, b, c, d = corners
    if len({*corners}) < 4:
        return False
    return any(
        p != q
        and r != s
        and sympy.Line(p, q).is_perpendicular(sympy.Line(r, s))
        and sympy.Segment(r, s).midpoint in sympy.Line(p, q)
        for p, q, r, s in ((a, c, b, d), (b, d, a, c))
    )


def point_where(points: dict[str, Any], letters: str, conditions: tuple[str, ...]) -> str:
    """Return the one point of some that lies where conditions say, by sympy's distances."""
    found = [
        letter
        for letter in letters
        if all(_lies(points[letter], points, condition.split()) for condition in conditions)
    ]
    if len(found) != 1:
        raise NotExact("not one of the points lies there")
    return found[0]


def _lies(point: Any, points: dict[str, Any], condition: list[str]) -> bool:
    if condition[0] == "within":
        return bool(point.distance(points[condition[2]]) < sympy.Integer(condition[1]))
    first, second = (point.distance(points[name]) for name in condition[-2:])
    return bool(first < second) if condition[0] == "nearer" else bool(first.equals(second))
