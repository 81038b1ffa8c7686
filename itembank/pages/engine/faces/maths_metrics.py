"""What the mathematics face says of its glyphs: how far they reach, and how mathematics is set.

Read from the tables of the font's file: `glyf` and `loca` (each glyph's box) and MATH (constants,
larger drawings of a sign, and the parts of one that is larger still). The layout of the tables is
that of ISO/IEC 14496-22 (Open Font Format), 5.3 and 6.3.6.

Importing this module imports ReportLab.
"""

from __future__ import annotations

import struct
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, NamedTuple

from itembank.pages.engine.faces.maths_face import font_file

_CONSTANTS = {
    "axis_height": 1,
    "superscript_shift_up": 7,
    "superscript_bottom_min": 9,
    "superscript_baseline_drop_max": 10,
    "numerator_display_shift_up": 29,
    "denominator_display_shift_down": 31,
    "numerator_display_gap_min": 33,
    "fraction_rule": 34,
    "denominator_display_gap_min": 36,
    "overbar_gap": 39,
    "radical_display_gap": 46,
    "radical_rule": 47,
    "radical_kern_before_degree": 49,
    "radical_kern_after_degree": 50,
}
"""The constants used, each by its place among the table's value records."""
_RECORDS = 51
_FIRST_RECORD = 8
"""Where they start: after two percentages and two heights, of two bytes each."""


class Shape(NamedTuple):
    """A glyph, or several that make up one sign, in units of the font."""

    glyphs: tuple[tuple[int, float], ...]
    """Glyphs that leave ink, each with how far it is raised."""
    left: float
    right: float
    low: float
    high: float
    advance: int
    number: int
    """The glyph's number; -1 where it is several."""


class _Piece(NamedTuple):
    glyph: int
    start: int
    end: int
    length: int
    repeats: int


@dataclass(frozen=True)
class Metrics:
    """The face as it is needed to set a formula."""

    units: int
    constants: dict[str, int]
    script_percent: int
    degree_percent: int
    italics: dict[int, int]
    """How far a script stands off a glyph that leans over."""
    overlap: int
    """By how much the parts of a sign overlap at least."""
    larger: dict[int, tuple[tuple[int, int], ...]]
    """Of a glyph that grows: each larger drawing of it, as its height and its number."""
    parts: dict[int, tuple[_Piece, ...]]
    """What a glyph is built of where none of those is large enough."""
    boxes: dict[int, Shape]
    """The shapes that have been asked for."""

    def number(self, character: str) -> int:
        """Return the number of a character's glyph, 0 where there is none."""
        return int(font_file().charToGlyph.get(ord(character), 0))

    def shape(self, glyph: int) -> Shape:
        """Return how a glyph looks."""
        found = self.boxes.get(glyph)
        if found is None:
            found = self.boxes[glyph] = _shape(glyph)
        return found

    def as_tall_as(self, glyph: int, height: float) -> Shape:
        """Return the smallest drawing of a sign that is at least so tall."""
        larger = self.larger.get(glyph)
        if larger is None:
            return self.shape(glyph)
        enough = [(tall, number) for tall, number in larger if tall >= height]
        if enough:
            return self.shape(min(enough)[1])
        if glyph in self.parts:
            return self._built(glyph, height)
        return self.shape(max(larger)[1])

    def about(self, glyph: int, low: float, high: float) -> Shape:
        """Return the smallest drawing of a sign that reaches from `low` to `high`."""
        larger = self.larger.get(glyph)
        if larger is None:
            return self.shape(glyph)
        shapes = [self.shape(number) for _, number in larger]
        for shape in shapes:
            if shape.low <= low and shape.high >= high:
                return shape
        # A sign is built about the axis, so its height is twice the longer of the two reaches.
        if glyph in self.parts and high - low > shapes[-1].high - shapes[-1].low:
            axis = self.constants["axis_height"]
            return self._built(glyph, max(2 * (axis - low), 2 * (high - axis)))
        return shapes[-1]

    def _built(self, glyph: int, height: float) -> Shape:
        """Return a sign of a height, about the axis, from parts that overlap just as needed."""
        parts, repeats = self.parts[glyph], 0
        while True:
            used = [part for part in parts for _ in range(repeats if part.repeats else 1)]
            size = sum(part.length for part in used) - self.overlap * (len(used) - 1)
            if size >= height:
                break
            repeats += 1
        # What is too much is shared out among the overlaps, so that the sign is just as tall.
        over = self.overlap + (size - height) / max(1, len(used) - 1)
        raised, y = [], -height / 2 + self.constants["axis_height"]
        for part in used:
            raised.append((part.glyph, y - self.shape(part.glyph).low))
            y += part.length - over
        shapes = [self.shape(number) for number, _ in raised]
        return Shape(
            tuple(raised),
            min(shape.left for shape in shapes),
            max(shape.right for shape in shapes),
            shapes[0].low + raised[0][1],
            shapes[-1].high + raised[-1][1],
            max(shape.advance for shape in shapes),
            -1,
        )


def _shape(glyph: int) -> Shape:
    file = font_file()
    advance = int(file.hmetrics[glyph][0])
    at, end = _places()[glyph], _places()[glyph + 1]
    # No outline: a space.
    if at == end:
        return Shape((), 0, 0, 0, 0, advance, glyph)
    _, left, low, right, high = struct.unpack_from(">5h", _outlines(), at)
    return Shape(((glyph, 0),), left, right, low, high, advance, glyph)


@lru_cache(maxsize=1)
def _outlines() -> bytes:
    return bytes(font_file().get_table("glyf"))


@lru_cache(maxsize=1)
def _places() -> tuple[int, ...]:
    """Return where each glyph starts in the table of outlines."""
    table, head = font_file().get_table("loca"), font_file().get_table("head")
    # `head` says at 50 how places are held: whole, or halved so that two bytes do.
    if struct.unpack_from(">h", head, 50)[0]:
        return struct.unpack(f">{len(table) // 4}L", table)
    return tuple(2 * place for place in struct.unpack(f">{len(table) // 2}H", table))


@lru_cache(maxsize=1)
def metrics() -> Metrics:
    """Return the mathematics face's, read once."""
    table = bytes(font_file().get_table("MATH"))
    constants_at, info_at, variants_at = struct.unpack_from(">3H", table, 4)
    first = constants_at + _FIRST_RECORD
    values = [value for value, _ in struct.iter_unpack(">hH", table[first : first + 4 * _RECORDS])]
    percent = struct.unpack_from(">h", table, constants_at)[0]
    degree = struct.unpack_from(">h", table, first + 4 * _RECORDS)[0]
    italics = struct.unpack_from(">H", table, info_at)[0]
    overlap, grown_at, _, count, _ = struct.unpack_from(">5H", table, variants_at)
    made_at = struct.unpack_from(f">{count}H", table, variants_at + 10)
    larger: dict[int, tuple[tuple[int, int], ...]] = {}
    parts: dict[int, tuple[_Piece, ...]] = {}
    for glyph, at in zip(_covered(table, variants_at + grown_at), made_at, strict=True):
        start = variants_at + at
        assembly, drawings = struct.unpack_from(">2H", table, start)
        pairs = struct.iter_unpack(">2H", table[start + 4 : start + 4 + 4 * drawings])
        larger[glyph] = tuple((height, number) for number, height in pairs)
        if assembly:
            many = struct.unpack_from(">H", table, start + assembly + 4)[0]
            rows_at = start + assembly + 6
            rows = struct.iter_unpack(">5H", table[rows_at : rows_at + 10 * many])
            parts[glyph] = tuple(_Piece(*row) for row in rows)
    return Metrics(
        int(font_file().unitsPerEm),
        {name: values[place] for name, place in _CONSTANTS.items()},
        percent,
        degree,
        _values(table, info_at + italics) if italics else {},
        overlap,
        larger,
        parts,
        {},
    )


def _values(table: bytes, at: int) -> dict[int, int]:
    """Return a number of each glyph that a list of them has one of."""
    covered, count = struct.unpack_from(">2H", table, at)
    values = struct.iter_unpack(">hH", table[at + 4 : at + 4 + 4 * count])
    glyphs = _covered(table, at + covered)
    return dict(zip(glyphs, (value for value, _ in values), strict=True))


def _covered(table: bytes, at: int) -> list[int]:
    """Return the glyphs of a coverage table, in its order."""
    kind, count = struct.unpack_from(">2H", table, at)
    if kind == 1:
        return list(struct.unpack_from(f">{count}H", table, at + 4))
    found: list[int] = []
    rows: Any = struct.iter_unpack(">3H", table[at + 4 : at + 4 + 6 * count])
    for first, last, _ in rows:
        found.extend(range(first, last + 1))
    return found
