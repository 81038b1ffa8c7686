"""Transformations on a coordinate grid, exactly: said in words, done to places, found from shapes.

>>> move("a reflection in the line y = x").of((Fraction(3), Fraction(-2)))
(Fraction(-2, 1), Fraction(3, 1))
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import lru_cache
from typing import TypeAlias

from itembank.data_class import dataclass
from itembank.figures.figure import FigureError
from itembank.figures.kinds.grid.grid_equations import Straight, straight, through
from itembank.notation import tree as t
from itembank.notation.parse import parse_written
from itembank.notation.value import exact

Place: TypeAlias = tuple[Fraction, Fraction]

_COUNT = r"\{?(?:\d{1,3})\}?"
_AT = r"(?:the origin|\{?\([^{}()]{1,20}\)\}?)"
TRANSLATION = (
    rf"(?:a )?translation of {_COUNT} squares? (?:left|right|up|down)"
    rf"(?: and {_COUNT} squares? (?:up|down))?"
)
REFLECTION = r"(?:a )?reflection in (?:the \{?[xy]\}?-axis|the line \{?[xy] = [^{}]{1,12}\}?)"
ROTATION = (
    r"(?:a )?rotation of \{?(?:90|180|270)°\}?(?: (?:clockwise|anticlockwise))? "
    rf"about {_AT}"
)
ENLARGEMENT = (
    rf"(?:an )?enlargement by scale factor \{{?[-−\d/]{{1,6}}\}}?,? (?:with )?centre {_AT}"
)
MOVE = rf"(?:{TRANSLATION}|{REFLECTION}|{ROTATION}|{ENLARGEMENT})"
"""How a transformation is said, for patterns of whole questions."""


@dataclass(frozen=True, slots=True)
class Move:
    """(x, y) goes to (ax + by + e, cx + dy + f)."""

    a: Fraction
    b: Fraction
    c: Fraction
    d: Fraction
    e: Fraction
    f: Fraction

    def of(self, place: Place) -> Place:
        """Return where a place goes."""
        x, y = place
        return self.a * x + self.b * y + self.e, self.c * x + self.d * y + self.f

    def back(self) -> Move:
        """Return the move that takes every image back (Cramer's rule); its factor is not 0."""
        size = self.a * self.d - self.b * self.c
        a, b, c, d = self.d / size, -self.b / size, -self.c / size, self.a / size
        return Move(a, b, c, d, -(a * self.e + b * self.f), -(c * self.e + d * self.f))


def _about(centre: Place, a: int | Fraction, b: int, c: int, d: int | Fraction) -> Move:
    """Return a move that keeps a centre where it is."""
    x, y = centre
    p, q, r, s = (Fraction(value) for value in (a, b, c, d))
    return Move(p, q, r, s, x - (p * x + q * y), y - (r * x + s * y))


def reflection(line: Straight) -> Move:
    """Return the reflection in a line (by the projection on its normal)."""
    p, q, r = line
    size = p * p + q * q
    return Move(
        1 - 2 * p * p / size,
        -2 * p * q / size,
        -2 * p * q / size,
        1 - 2 * q * q / size,
        -2 * p * r / size,
        -2 * q * r / size,
    )


def quarter_turns(count: int, centre: Place) -> Move:
    """Return a rotation by quarter turns anticlockwise about a centre."""
    a, c = ((1, 0), (0, 1), (-1, 0), (0, -1))[count % 4]
    return _about(centre, a, -c, c, a)


def hold_to_squares(steps: tuple[int, int], *moves: str) -> None:
    """Hold moves to the squares of a grid, each so many units across and up.

    Raises
    ------
    FigureError
        If a move counts squares that are no units, or turns squares that are no squares.

    >>> hold_to_squares((1, 1), "translation of 3 squares left")
    """
    for text in map(str.casefold, moves):
        if "squares" in text or "square " in text:
            if steps != (1, 1):
                raise FigureError("a square of its grid is not one unit each way")
        elif steps[0] != steps[1]:
            raise FigureError("its axes have scales of their own")


@lru_cache(maxsize=256)
def move(text: str) -> Move:
    """Return the move that words say; raises NotationError."""
    bare = re.sub(r"[{}]", "", text.casefold()).replace("−", "-").strip()
    numbers = [int(digits) for digits in re.findall(r"(\d+) squares?", bare)]
    if "translation" in bare:
        ways = dict.fromkeys(("left", "right", "up", "down"), 0)
        ways_said = re.findall(r"squares? (\w+)", bare)
        if len(ways_said) == 2 and ways_said[0] not in ("left", "right"):
            raise t.NotationError("a translation goes across and up or down, each once")
        ways |= dict(zip(ways_said, numbers, strict=True))
        zero, unit = Fraction(0), Fraction(1)
        across, up = ways["right"] - ways["left"], ways["up"] - ways["down"]
        return Move(unit, zero, zero, unit, Fraction(across), Fraction(up))
    if "reflection" in bare:
        axes = {"x-axis": "y = 0", "y-axis": "x = 0"}
        said = bare.partition("in the ")[2].removeprefix("line ")
        return reflection(straight(axes.get(said, said)))
    centre = _centre(bare)
    if "rotation" in bare:
        found = re.search(r"(\d+)°", bare)
        turns = int(found[1]) // 90 if found else 0
        if turns != 2 and "clockwise" not in bare:
            raise t.NotationError("a rotation goes clockwise or anticlockwise")
        clockwise = "anticlockwise" not in bare
        return quarter_turns(-turns if clockwise else turns, centre)
    found = re.search(r"factor ([-\d/]+)", bare)
    factor = exact(parse_written(found[1])) if found else Fraction(0)
    if not factor:
        raise t.NotationError("a scale factor is not 0")
    return _about(centre, factor, 0, 0, factor)


def _centre(text: str) -> Place:
    found = re.search(r"\(.*\)", text)
    if found is None:
        return Fraction(0), Fraction(0)
    node = parse_written(found[0])
    if not isinstance(node, t.Listing) or len(node.parts) != 2:
        raise t.NotationError("a centre has two coordinates")
    return exact(node.parts[0]), exact(node.parts[1])


Corners: TypeAlias = Sequence[Place]


def orders(corners: Corners) -> Iterator[list[Place]]:
    """Yield the corners from each of them on, both ways round."""
    for row in (list(corners), list(corners)[::-1]):
        for start in range(len(row)):
            yield row[start:] + row[:start]


def _single(found: list[Move]) -> Move:
    if len(set(found)) != 1:
        raise t.NotationError("it does not show which transformation takes the one to the other")
    return found[0]


def translation_to(first: Corners, second: Corners) -> Move:
    """Return the translation that takes a shape to another; raises NotationError."""
    zero, unit = Fraction(0), Fraction(1)
    moves = [
        Move(unit, zero, zero, unit, q[0] - p[0], q[1] - p[1])
        for p, q in ((min(first), min(second)),)
    ]
    return _single([tried for tried in moves if _takes(tried, first, second)])


def mirror_of(first: Corners, second: Corners) -> Straight:
    """Return the line in which a shape is reflected to another; raises NotationError."""
    found: dict[Move, Straight] = {}
    for order in orders(second):
        pairs = [(p, q) for p, q in zip(first, order, strict=True) if p != q]
        if pairs:
            (a, b), (c, d) = pairs[0]
            middle = ((a + c) / 2, (b + d) / 2)
            line = through(middle, (middle[0] + d - b, middle[1] - (c - a)))
            made = reflection(line)
            if _in_order(made, first, order):
                found[made] = line
    return found[_single(list(found))]


def rotation_to(first: Corners, second: Corners) -> Place:
    """Return the centre of the rotation that takes a shape to another; raises NotationError."""
    found: dict[Move, Place] = {}
    for order in orders(second):
        (a, b), (c, d) = first[0], order[0]
        for turns in (1, 2, 3):
            # The centre stands still: c = x + R(a − x), solved for x.
            cos, sin = ((0, 1), (-1, 0), (0, -1))[turns - 1]
            u, v = c - (cos * a - sin * b), d - (sin * a + cos * b)
            size = (1 - cos) ** 2 + sin**2
            centre = (
                Fraction((1 - cos) * u - sin * v) / size,
                Fraction(sin * u + (1 - cos) * v) / size,
            )
            made = quarter_turns(turns, centre)
            if _in_order(made, first, order):
                found[made] = centre
    return found[_single(list(found))]


def enlargement_to(first: Corners, second: Corners) -> tuple[Fraction, Place]:
    """Return factor and centre of the enlargement of a shape to another; raises NotationError."""
    found: dict[Move, tuple[Fraction, Place]] = {}
    for order in orders(second):
        (a, b), (c, d) = first[0], first[1]
        (e, f), (g, h) = order[0], order[1]
        factor = (g - e) / (c - a) if c != a else (h - f) / (d - b)
        if factor in (0, 1):
            continue
        centre = ((e - factor * a) / (1 - factor), (f - factor * b) / (1 - factor))
        made = _about(centre, factor, 0, 0, factor)
        if _in_order(made, first, order):
            found[made] = (factor, centre)
    return found[_single(list(found))]


def _takes(made: Move, first: Corners, second: Corners) -> bool:
    return sorted(map(made.of, first)) == sorted(second)


def _in_order(made: Move, first: Corners, second: Corners) -> bool:
    alike = len(first) == len(second)
    return alike and all(made.of(p) == q for p, q in zip(first, second, strict=True))
