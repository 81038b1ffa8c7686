"""The sign of a band: a shape with its letter inside, known without its colour.

Each shape is a frame in the band's colour round a white plate that holds the letter, so that
the letter is dark on white whatever the colour, on a grey print too. The frames are our own
drawing, told apart by their outline at 6 mm on a sheet and at 12 dots on a screen.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from itembank.data_class import dataclass
from itembank.packs.data.pack import Band
from itembank.pages.engine.faces.fonts import CAP_HEIGHT, face, plain
from itembank.pages.engine.page.page import Page, Point
from itembank.pages.engine.page.theme import INK, WHITE
from itembank.planning.bands.band_signs import ShapeName

LINE = 0.06
"""Width of the outline as a share of the sign, so that a copy in black and white keeps it."""
_INSIDE = 0.72
"""The plate against its shape, where it is the shape made smaller."""


@dataclass(frozen=True, slots=True)
class Outline:
    """A sign's corners within the unit square: its frame, its plate, and where the letter is.

    `middle` is the middle of the letter and `height` its height, in the same measure.
    """

    frame: tuple[Point, ...]
    plate: tuple[Point, ...]
    middle: Point
    height: float


def _round(
    centre: Point, radius: float, start: float, end: float, *, steps: int = 24
) -> list[Point]:
    """Return points along an arc, its ends included; angles in degrees, anticlockwise."""
    turns = (math.radians(start + (end - start) * k / steps) for k in range(steps + 1))
    x, y = centre
    return [(x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns]


def _within(corners: Sequence[Point], centre: Point, height: float, lift: float = 0.0) -> Outline:
    """Return a shape whose plate is the shape itself, smaller about `centre`."""
    x, y = centre
    inner = tuple((x + _INSIDE * (px - x), y + _INSIDE * (py - y)) for px, py in corners)
    return Outline(tuple(corners), inner, (x, y + lift), height)


def _box(left: float, low: float, right: float, high: float) -> list[Point]:
    return [(left, low), (right, low), (right, high), (left, high)]


def _house() -> Outline:
    eaves, wall = 0.5, 0.13
    roof = [(1 - 0.02, eaves), (0.5, 0.98), (0.02, eaves)]
    frame = [(wall, eaves), (wall, 0.03), (1 - wall, 0.03), (1 - wall, eaves), *roof]
    return Outline(tuple(frame), tuple(_box(0.27, 0.15, 0.73, 0.6)), (0.5, 0.375), 0.38)


def _ring() -> Outline:
    frame, plate = (_round((0.5, 0.5), radius, 0, 360, steps=48)[:-1] for radius in (0.47, 0.32))
    return Outline(tuple(frame), tuple(plate), (0.5, 0.5), 0.4)


def _book() -> Outline:
    """Return an open book, seen from the front: two pages that rise from the fold."""

    def page(low: float, high: float, outer: float, fold: float) -> list[Point]:
        """Return the edge of both pages, from left to right, by its height along the way."""
        half = [(0.0, outer), (0.25, high), (0.6, high - 0.01), (1.0, fold)]
        return [(low + (0.5 - low) * t, y) for t, y in half]

    top = page(0.02, 0.87, 0.82, 0.72)
    bottom = page(0.02, 0.2, 0.14, 0.05)
    mirrored = [[(1 - x, y) for x, y in reversed(edge)] for edge in (top, bottom)]
    upper, lower = top + mirrored[0][1:], bottom + mirrored[1][1:]
    return Outline(
        (*upper, *reversed(lower)), tuple(_box(0.24, 0.26, 0.76, 0.68)), (0.5, 0.47), 0.36
    )


def _arch() -> Outline:
    """Return a gateway: two posts under a round top, open below."""
    outer = _round((0.5, 0.54), 0.45, 0, 180)
    inner = _round((0.5, 0.54), 0.28, 180, 0)
    frame = [(0.95, 0.03), *outer, (0.05, 0.03), (0.22, 0.03), *inner, (0.78, 0.03)]
    plate = [(0.78, 0.03), *reversed(inner), (0.22, 0.03)]
    return Outline(tuple(frame), tuple(plate), (0.5, 0.4), 0.4)


def _leaf() -> Outline:
    """Return a leaf on the slant: pointed at two corners, round at the others."""

    def edge(low: float, high: float, round_: float) -> list[Point]:
        left = _round((low + round_, high - round_), round_, 180, 90)
        right = _round((high - round_, low + round_), round_, 0, -90)
        return [(low, low), *left, (high, high), *right]

    return Outline(tuple(edge(0.04, 0.96, 0.72)), tuple(edge(0.2, 0.8, 0.42)), (0.5, 0.5), 0.36)


def _triangle() -> Outline:
    return _within([(0.0, 0.02), (1.0, 0.02), (0.5, 0.98)], (0.5, 0.34), 0.3, lift=-0.04)


def _circle() -> Outline:
    return _within(_round((0.5, 0.5), 0.48, 0, 360, steps=48)[:-1], (0.5, 0.5), 0.43)


def _square() -> Outline:
    return _within(_box(0.06, 0.06, 0.94, 0.94), (0.5, 0.5), 0.48)


def _diamond() -> Outline:
    return _within([(0.5, 0.0), (1.0, 0.5), (0.5, 1.0), (0.0, 0.5)], (0.5, 0.5), 0.31)


def _pentagon() -> Outline:
    return _within(_round((0.5, 0.47), 0.52, 90, 378, steps=4), (0.5, 0.47), 0.39)


_DRAWN: dict[ShapeName, Callable[[], Outline]] = {
    "house": _house,
    "ring": _ring,
    "arch": _arch,
    "book": _book,
    "leaf": _leaf,
    "triangle": _triangle,
    "circle": _circle,
    "square": _square,
    "diamond": _diamond,
    "pentagon": _pentagon,
}


def outline(shape: ShapeName) -> Outline:
    """Return how a shape is drawn, within the unit square.

    >>> outline("square").frame[0]
    (0.06, 0.06)
    """
    return _DRAWN[shape]()


def describe(band: Band) -> str:
    """Return what the sign looks like, in words.

    >>> from itembank.planning.bands.bands import default_scheme
    >>> describe(default_scheme().bands(8)[0])
    'blue house with the letter R'
    """
    return f"{band.colour_name} {band.shape} with the letter {band.letter}"


def sign(page: Page, band: Band, x: float, y: float, size: float) -> None:
    """Draw a band's sign in the square of side `size` whose bottom left corner is (x, y)."""
    drawn = outline(band.shape)

    def placed(corners: Sequence[Point]) -> list[Point]:
        return [(x + px * size, y + py * size) for px, py in corners]

    with page.figure(describe(band), (x, y, x + size, y + size)):
        line = max(1.0, LINE * size)
        # First under the frame, since that of the arch is open below.
        page.polygon(placed(drawn.plate), fill=WHITE)
        page.polygon(placed(drawn.frame), fill=band.colour, stroke=INK, line=line)
        if band.shape != "arch":  # its frame leaves the plate open
            page.polygon(placed(drawn.plate), fill=WHITE)
        letter = plain(band.letter)
        text_size = letter_size(band.shape, letter) * size
        middle_x, middle_y = (x + drawn.middle[0] * size, y + drawn.middle[1] * size)
        page.text(
            middle_x,
            middle_y - CAP_HEIGHT * text_size / 2,
            letter,
            text_size,
            bold=True,
            align="centre",
        )


def least_side(band: Band, letter: float) -> float:
    """Return the side of the least sign whose letter is set at `letter` points."""
    return letter / letter_size(band.shape, plain(band.letter))


def letter_size(shape: ShapeName, letter: str) -> float:
    """Return the type size of a sign's letter, or two of them, where the sign's side is 1.

    >>> letter_size("ring", "S") > letter_size("ring", "WW")
    True
    """
    height = outline(shape).height
    # By its height, or by its width where it is wider than high: W and two letters.
    return min(height / CAP_HEIGHT, height / face(True).width(letter))


def interval(band: Band) -> str:
    """Return the band's scores as printed, with an en dash.

    >>> from itembank.planning.bands.bands import default_scheme
    >>> [interval(band) for band in default_scheme().bands(5)]
    ['0–2', '3–4', '5']
    """
    if band.lowest == band.highest:
        return str(band.lowest)
    return f"{band.lowest}–{band.highest}"
