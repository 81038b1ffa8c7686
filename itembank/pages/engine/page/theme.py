"""Sizes, margins and colours of the pages, in points and as ``#RRGGBB``.

Contrast is the ratio of WCAG 2.2 (relative luminance, definition and success criteria 1.4.3,
1.4.6, 1.4.11). Ours: text 7 : 1 on every paper, quieter text 4.5 : 1, shapes 3 : 1.
"""

from __future__ import annotations

INK = "#14181F"
"""Text, on every paper."""
QUIET = "#4A5260"
"""Text that stands back: lesson line, questions on the answer slide."""
RULE = "#7C8592"
"""Thin lines that separate: 3 : 1 on every paper."""
GRID = "#6B7481"
"""The lines of a grid, which stand back behind what is drawn on it: 3 : 1 on every paper."""
WRITING = QUIET
"""Lines that a pupil writes on."""
ACCENT = "#1F3A5F"
"""Headings and number discs: a deep blue, nearly black in grey."""
WHITE = "#FFFFFF"

PAPERS = {
    "white": "#FFFFFF",
    "cream": "#FBF3DC",
    "blue": "#E1EEF8",
    "green": "#E3F2E1",
    "pink": "#FBE6EA",
    "yellow": "#FCF6C4",
}
"""Paper tints for pupils who read better on colour. Colours suit them in the tray as in print."""

SLIDE = (960.0, 540.0)
"""A 16 : 9 slide."""
A4 = (595.28, 841.89)
"""210 mm × 297 mm (ISO 216)."""

SLIDE_MARGIN = 28.0
SLIDE_QUESTION = (24.0, 36.0)
"""Smallest and largest question text on a slide."""
SLIDE_SMALL = 18.0
"""Smallest text of any kind on a slide."""
NEXT_TASK = (18.0, 24.0)
"""Smallest and largest text on the slide of next tasks."""

PAPER_TEXT = 14.0
PAPER_LEAST = 12.0
LARGE_TEXT = 18.0
"""Nothing is smaller in large print."""
PAPER_MARGIN = 45.0
"""16 mm: inside what any school printer can print."""


def luminance(colour: str) -> float:
    """Return the relative luminance of `colour`, 0 to 1 (WCAG 2.2, "relative luminance").

    >>> luminance("#FFFFFF")
    1.0
    """
    parts = []
    for i in (1, 3, 5):
        value = int(colour[i : i + 2], 16) / 255
        parts.append(value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4)
    red, green, blue = parts
    return round(0.2126 * red + 0.7152 * green + 0.0722 * blue, 10)


def contrast(first: str, other: str) -> float:
    """Return the contrast ratio of two colours, 1 to 21 (WCAG 2.2, "contrast ratio").

    >>> contrast("#000000", "#FFFFFF")
    21.0
    """
    low, high = sorted((luminance(first), luminance(other)))
    return round((high + 0.05) / (low + 0.05), 4)


def tint(colour: str, part: float, paper: str = WHITE) -> str:
    """Return `paper` mixed with `part` (0 to 1) of `colour`.

    >>> tint("#000000", 0.5)
    '#808080'
    """
    mixed = (
        round(int(paper[i : i + 2], 16) * (1 - part) + int(colour[i : i + 2], 16) * part)
        for i in (1, 3, 5)
    )
    return "#" + "".join(f"{value:02X}" for value in mixed)
