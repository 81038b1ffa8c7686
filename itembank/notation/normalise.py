"""Typed or pasted text brought to the plain characters that the grammar knows.

Compatibility characters (full-width digits, mathematical italics, units in one square) are
opened by Unicode's NFKC (Unicode Standard Annex #15); digits of any script become 0–9.
Names in quotation marks are left as they are.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from functools import lru_cache

from itembank.notation.tree.line_signs import DOT, GLUED_NAMES
from itembank.text.late_pattern import late

_SAME = {
    **dict.fromkeys("−–—‒‐‑﹣", "-"),
    **dict.fromkeys("*·⋅∙✕✖", "×"),
    **dict.fromkeys("⁄∕", "/"),
    **dict.fromkeys("º˚", "°"),
    "➗": "÷",
    "∶": ":",
    "⩽": "≤",
    "⩾": "≥",
    "?": "□",
    "˙": DOT,
    "\u2064": " ",
}
_RELATIONS = {"<": "≤", ">": "≥", "!": "≠"}
_RAISED = {**dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789", strict=True)), "⁻": "-", "ⁿ": "n"}
_QUOTES = {'"': '"', "“": "”"}
_GLUED = late(GLUED_NAMES)
# Characters that stay what they are, with single spaces between them; no <= and its like.
_STAYS = r"(?:[0-9A-Za-z()+\-/^.,:;%'×÷√π£≤≥≠]|=(?<![<>!]=)|[<>](?!=))+"
_PLAIN = late(f"{_STAYS}(?: {_STAYS})*")


class Plain:
    """Plain text under way, with the offset in the typed text that each character came from."""

    def __init__(self) -> None:
        self.chars: list[str] = []
        self.origins: list[int] = []

    def put(self, text: str, origin: int) -> None:
        """Add `text`, running spaces together."""
        for char in text:
            if char == " " and self.last() in (" ", ""):
                continue
            self.chars.append(char)
            self.origins.append(origin)

    def last(self) -> str:
        """Return the character added last, or nothing at the start."""
        return self.chars[-1] if self.chars else ""

    def open_before_digits(self, origin: int) -> None:
        """Put an opening bracket before the run of digits and spaces at the end."""
        at = len(self.chars)
        # 1½x is (1 1/2)x: the whole number before belongs to the fraction.
        while at and (self.chars[at - 1].isdigit() or self.chars[at - 1] in "/ "):
            at -= 1
        while at < len(self.chars) and self.chars[at] == " ":
            at += 1
        self.chars.insert(at, "(")
        self.origins.insert(at, origin)


@lru_cache(maxsize=1 << 12)
def normalise(text: str) -> tuple[str, Sequence[int]]:
    """Return `text` in plain characters, and for each of them its offset in `text`.

    >>> normalise("1½ − ３x²")[0]
    '1 1/2 - 3x^2'
    >>> normalise("½x ≥ 2⁻¹")[0]
    '(1/2)x ≥ 2^(-1)'
    """
    # Nearly every line: to look at each character by itself would cost most of reading it.
    if _PLAIN.fullmatch(text):
        return text, range(len(text))
    return one_by_one(text)


def one_by_one(text: str) -> tuple[str, Sequence[int]]:
    """Return what :func:`normalise` does, looking at each character by itself.

    >>> one_by_one("3x")
    ('3x', (0, 1))
    """
    plain = Plain()
    at = 0
    while at < len(text):
        at = _take(text, at, plain)
    if plain.last() == " ":
        plain.chars.pop()
        plain.origins.pop()
    return "".join(plain.chars), tuple(plain.origins)


def _take(text: str, at: int, plain: Plain) -> int:
    """Move what stands at offset `at` into `plain`; return the offset after it."""
    char = text[at]
    if char in _QUOTES:
        # A name is shown as it was typed, so nothing in it is changed.
        end = text.find(_QUOTES[char], at + 1)
        if end < 0:
            plain.put('"', at)
            return at + 1
        # Not through put(): spaces inside a name are kept.
        plain.chars += ['"', *text[at + 1 : end], '"']
        plain.origins += range(at, end + 1)
        return end + 1
    if char in _RAISED:
        end = at
        while end < len(text) and text[end] in _RAISED:
            end += 1
        raised = "".join(_RAISED[c] for c in text[at:end])
        # A minus in an exponent has to be held together: 2⁻¹.
        plain.put(f"^({raised})" if "-" in raised else f"^{raised}", at)
        return end
    if char == "_":
        plain.put("□", at)
        while at < len(text) and text[at] == "_":
            at += 1
        return at
    # Only close up: in 3 < = 4 something was left out.
    if char == "=" and plain.last() in _RELATIONS and text[at - 1] in _RELATIONS:
        plain.chars[-1] = _RELATIONS[plain.last()]
        return at + 1
    kind, *codes = unicodedata.decomposition(char).split() or [""]
    if kind == "<fraction>":
        _take_fraction("".join(chr(int(code, 16)) for code in codes), text, at, plain)
        return at + 1
    for part in _SAME.get(char) or unicodedata.normalize("NFKC", char):
        digit = unicodedata.decimal(part, None)
        if digit is not None:
            plain.put(str(digit), at)
        elif part.isspace():
            plain.put(" ", at)
        # Characters of format are seen by nobody (a soft hyphen, a mark of direction), and come in
        # with what is copied from web pages.
        elif unicodedata.category(part) != "Cf":
            plain.put(_SAME.get(part, part), at)
    return at + 1


def _take_fraction(fraction: str, text: str, at: int, plain: Plain) -> None:
    """Move a one-character fraction into `plain`, grouped where a letter or bracket follows."""
    # 1½ is one and a half, never eleven halves.
    if plain.last().isdigit():
        plain.put(" ", at)
    plain.put(fraction.replace("⁄", "/"), at)
    after = text[at + 1 : at + 2]
    if (after.isalpha() and not _GLUED.match(text, at + 1)) or after == "(":
        plain.open_before_digits(at)
        plain.put(")", at)
