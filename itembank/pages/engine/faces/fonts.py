"""The text face, embedded as a subset in every PDF.

Its files, and that of the mathematics face of one family with it, are built by
:mod:`itembank.pages.typefaces.build_typefaces`. Characters the face lacks are never shown as an
empty box: :mod:`itembank.pages.engine.text.paragraph` sets them from the mathematics face, and
:func:`plain` is for the few places that cannot.
"""

from __future__ import annotations

from itertools import repeat
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).parents[2] / "typefaces"
MATHS = FOLDER / "BoardMath-Regular.ttf"
REGULAR = "Regular"
BOLD = "Bold"

ASCENT = 0.74
"""Height of the tallest text ink above the baseline, in ems (the face's l and brackets)."""
DESCENT = 0.24
"""Depth of the deepest text ink below the baseline, in ems (g, p, brackets)."""
CAP_HEIGHT = 0.668
"""Height of capitals and digits, in ems (the OS/2 table of the face)."""


class Face:
    """One weight of the text face, with widths in ems."""

    def __init__(self, weight: str) -> None:
        from reportlab.pdfbase.ttfonts import TTFont

        self.name = f"BoardSans-{weight}"
        self.font: Any = TTFont(self.name, str(FOLDER / f"{self.name}.ttf"), asciiReadable=False)
        self._widths: dict[int, float] = {
            code: width / 1000 for code, width in self.font.face.charWidths.items()
        }
        self._widths[0xA0] = self._widths[32]  # ReportLab shows a no-break space as a space
        self._words: dict[str, float] = {}
        self.space = self.width(" ")
        """The width of a space at size 1."""

    def has(self, character: str) -> bool:
        """Tell whether the face has a glyph for `character`."""
        return ord(character) in self._widths

    def width(self, text: str) -> float:
        """Return the width of `text` at size 1."""
        found = self._words.get(text)
        if found is None:
            widths = self._widths
            space = widths[32]
            found = self._words[text] = sum(map(widths.get, map(ord, text), repeat(space)))
        return found

    def codes(self, text: str, document: Any) -> list[tuple[int, bytes]]:
        """Return `text` as the codes of each subset of the font that a line of it needs.

        ReportLab numbers characters as a document comes to use them. Of a line of which each
        has its number already, and all in the first subset, the codes are looked up at once.
        """
        font = self.font
        state = font.state.get(document)
        if state is not None:
            try:
                # ReportLab shows a no-break space as a space.
                codes = map(state.assignments.__getitem__, map(ord, text.replace("\xa0", " ")))
                return [(0, bytes(codes))] if text else []
            except (KeyError, ValueError):  # a new character, or one of a later subset
                pass
        return list(font.splitString(text, document))


_FACES: dict[bool, Face] = {}


def face(bold: bool = False) -> Face:
    """Return the face, loaded on first use."""
    try:
        return _FACES[bold]
    except KeyError:
        found = _FACES[bold] = Face(BOLD if bold else REGULAR)
        return found


_STAND_INS = {"→": "–", "′": "'", "□": "[ ]", "✓": "yes", "\t": " ", "\n": " "}


def plain(text: str) -> str:
    """Return `text` with every character the face lacks replaced by one that it has.

    >>> plain("A → B")
    'A – B'
    """
    regular = face()
    if all(regular.has(c) for c in text):
        return text
    return "".join(c if regular.has(c) else _STAND_INS.get(c, "?") for c in text)
