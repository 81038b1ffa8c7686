"""What is said of a coordinate grid: where things are, by squares from a place that is known."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from itembank.figures.kinds.grid.grid_places import Place, corners_of, line_ends, off, places

if TYPE_CHECKING:
    from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid


def grid_words(figure: CoordinateGrid) -> str:
    """Return all that a pupil who cannot see a grid needs, and no coordinates."""
    out = [
        f"A grid has x from {figure.left} to {figure.right} and y from {figure.bottom} to "
        f"{figure.top}.".replace("-", "minus ")
    ]
    steps = (figure.x_step, figure.y_step)
    if steps != (1, 1):
        out.append(f"A square is {steps[0]} wide and {steps[1]} high.")
    if figure.x_title:
        out.append(f"Along it stands {figure.x_title}, and up it {figure.y_title}.")
    origin = not off(figure, (Fraction(0), Fraction(0)))
    start = (0, 0) if origin else (figure.left, figure.bottom)
    known = "the origin" if origin else "the bottom left corner"
    for name, place in places(figure).items():
        out.append(f"The point {name} is {from_start(place, start, steps)} from {known}.")
    # Where a place is counted from is said once for all of a row, and not of each place: a path
    # would else be heard as one leg after another.
    counted = f", each counted from {known}"
    for line in figure.lines:
        kind = "segment" if line.segment else "straight line"
        name = f" {line.name}" if line.name else ""
        first, last = (from_start(end, start, steps) for end in line_ends(line))
        between = "ends at" if line.segment else "goes through"
        out.append(f"A {kind}{name} {between} two places{counted}: {first}; {last}.")
    for shape in figure.shapes:
        name = f" {shape.name}" if shape.name else ""
        kind = ("dashed " if shape.dashed else "") + ("shape" if shape.closed else "path")
        ways = "; ".join(from_start(corner, start, steps) for corner in corners_of(shape))
        back = "; and back to the first" if shape.closed else ""
        out.append(f"A {kind}{name} goes through these places in order{counted}: {ways}{back}.")
    return " ".join(out)


def from_start(place: Place, start: tuple[int, int], steps: tuple[int, int]) -> str:
    """Return how to come to a place by squares.

    >>> from_start((Fraction(3), Fraction(-5, 2)), (0, 0), (1, 1))
    '3 squares right and 2 and a half squares down'
    >>> from_start((Fraction(0), Fraction(0)), (0, 0), (1, 1))
    '0 squares right and 0 squares up'
    """
    across = (place[0] - start[0]) / steps[0]
    up = (place[1] - start[1]) / steps[1]
    sideways = f"{_squares(abs(across))} {'left' if across < 0 else 'right'}"
    upright = f"{_squares(abs(up))} {'down' if up < 0 else 'up'}"
    return f"{sideways} and {upright}"


def _squares(count: Fraction) -> str:
    whole, rest = divmod(count, 1)
    if not rest:
        return "1 square" if whole == 1 else f"{whole} squares"
    return f"{whole} and a half squares" if whole else "half a square"
