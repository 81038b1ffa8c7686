"""Where a place of a grid is, said by squares from a place that is known."""

from __future__ import annotations

from fractions import Fraction

_Place = tuple[Fraction, Fraction]


def from_start(place: _Place, start: tuple[int, int], steps: tuple[int, int]) -> str:
    """Return how to come to a place by squares, up to *from*, *of* or nothing.

    >>> from_start((Fraction(3), Fraction(-5, 2)), (0, 0), (1, 1))
    '3 squares right and 2 and a half squares down from'
    >>> from_start((Fraction(0), Fraction(0)), (0, 0), (1, 1))
    '0 squares right and 0 squares up from'
    """
    across = (place[0] - start[0]) / steps[0]
    up = (place[1] - start[1]) / steps[1]
    sideways = f"{_squares(abs(across))} {'left' if across < 0 else 'right'}"
    upright = f"{_squares(abs(up))} {'down' if up < 0 else 'up'}"
    return f"{sideways} and {upright} from"


def _squares(count: Fraction) -> str:
    whole, rest = divmod(count, 1)
    if not rest:
        return "1 square" if whole == 1 else f"{whole} squares"
    return f"{whole} and a half squares" if whole else "half a square"
