"""How much room a label takes, at most: known before any page is drawn.

A figure places its labels without a typesetter, by widths of the text face (Atkinson
Hyperlegible; the bold weight and its mathematics are a little wider). What is said here is an
upper bound; a test holds every label that a page sets to it.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from itembank.notation import tree as t
from itembank.notation.line import shown_line

UP, DOWN = Fraction(74, 100), Fraction(24, 100)
"""How far letters and figures reach above and below the line they stand on, in ems."""

_WIDTHS = {
    "'.,:;`": 27,
    "!lij()|[]{} tf": 36,
    '"-r°/\\_1I': 46,
    "*yvzxsk–c7J?aeuLgdbpqnhoFT2<>^~": 60,
    "354689E+=÷−×£VπYSPZRBXA0≤≥≠$K": 68,
    "w#CDNHUGOQ&": 77,
}
"""Widths of signs in hundredths of an em."""
_WIDTH = {sign: width for signs, width in _WIDTHS.items() for sign in signs}
_WIDEST = 92
"""Of m, M, W, % and @, and of any sign that is not in the table."""

_BAR = Fraction(134, 100)
"""How far a fraction reaches above the line; 0.66 below it."""
_BELOW = Fraction(66, 100)


class Room(NamedTuple):
    """The width of a label and how far it reaches above and below its line, in ems."""

    width: Fraction
    up: Fraction
    down: Fraction

    @property
    def height(self) -> Fraction:
        """How high it is."""
        return self.up + self.down


def text_width(text: str) -> Fraction:
    """Return the most room that a row of signs takes, in ems.

    >>> float(text_width("12"))
    1.06
    """
    return Fraction(_hundredths(text), 100)


def _hundredths(text: str) -> int:
    return sum([_WIDTH.get(sign, _WIDEST) for sign in text])


@lru_cache(maxsize=4096)
def room(content: str | t.Node, bold: bool = False) -> Room:
    """Return the most room that a label takes.

    >>> from itembank.notation.tree import frac
    >>> float(room(frac(3, 4)).height), float(room("A").width)
    (2.0, 0.68)
    """
    if isinstance(content, str):
        # The bold weight is at most a tenth wider.
        return Room(text_width(content) * (Fraction(11, 10) if bold else 1), UP, DOWN)
    width = _width(content)
    tall = any(isinstance(part, t.Frac | t.Mixed) for part in t.walk(content))
    if tall:
        return Room(width, _BAR, _BELOW)
    raised = any(isinstance(part, t.Power | t.Root) for part in t.walk(content))
    return Room(width, UP + (Fraction(1, 5) if raised else 0), DOWN + (Fraction(5, 100)))


def _width(node: t.Node) -> Fraction:
    if isinstance(node, t.Frac):
        return max(_width(node.num), _width(node.den)) + Fraction(1, 10)
    if isinstance(node, t.Mixed):
        fraction = t.frac(node.num, node.den)
        return _width(t.Int(node.whole)) + _width(fraction) + Fraction(1, 10)
    if isinstance(node, t.Sym):
        # A letter of mathematics stands in italics; capitals, m and w are the widest.
        return Fraction(95 if node.name.isupper() or node.name in "mw" else 70, 100)
    written = shown_line(node)
    if isinstance(node, t.ClockTime):
        return text_width(written)  # it is set as words are: its colon has no room beside it
    signs = sum(written.count(sign) for sign in "+−=×÷<>:-")
    letters = sum(sign.isalpha() for sign in written)
    # Letters of mathematics are italic and a little wider; signs have room on both sides.
    # Figures of 10 000 and more stand in groups of three, with a space between.
    spaces = sum((len(run) - 1) // 3 for run in re.findall(r"\d{5,}", written))
    more = 40 * signs + 2 * spaces * _WIDTH[" "] + 25 * letters
    return Fraction(2 * _hundredths(written) + more, 200)
