"""A prompt as text with slots: one character for each piece of mathematics, so that words show.

>>> from itembank.notation.tree import Int
>>> said = slotted(("Round ", Int(348), " to the nearest ten. Show your working."))
>>> [sentence.replace(slot(0), "{0}") for sentence in sentences(said.text)]
['Round {0} to the nearest ten', 'Show your working']
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence

from itembank.data_class import dataclass
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late

FIRST_SLOT, FIRST_LETTER, MOST_SLOTS = 0xE000, 0xF000, 0x800
"""Slots are characters of Unicode's private use area, which no prompt may hold."""
# Slots have no case, and to fold them makes a pattern that ignores case ten times dearer to compile.
SLOT = "(?-i:[\ue000-\uf8ff])"
LETTER_SLOT = "(?-i:[\uf000-\uf8ff])"
"""A slot that holds a letter alone."""


@dataclass(frozen=True, slots=True)
class Slotted:
    """A prompt's words, each piece of its mathematics one character, and the pieces."""

    text: str
    nodes: tuple[t.Node, ...]


def slot(index: int, letter: bool = False) -> str:
    """Return the character that stands for the piece of mathematics number `index`."""
    return chr((FIRST_LETTER if letter else FIRST_SLOT) + index % MOST_SLOTS)


def index_of(char: str) -> int:
    """Return which piece of mathematics a slot stands for.

    >>> index_of(slot(3)), index_of(slot(3, letter=True))
    (3, 3)
    """
    return (ord(char) - FIRST_SLOT) % MOST_SLOTS


def slotted(runs: Sequence[Run]) -> Slotted:
    """Return a prompt with a slot for each piece of its mathematics, its spaces evened out."""
    nodes: list[t.Node] = []
    pieces: list[str] = []
    for run in runs:
        if isinstance(run, str):
            pieces.append(_plain(run))
        else:
            pieces.append(slot(len(nodes), isinstance(run, t.Sym)))
            nodes.append(run)
    return Slotted(" ".join("".join(pieces).split()), tuple(nodes))


_LIKE = str.maketrans(
    {"’": "'", "‘": "'", "“": '"', "”": '"', "…": "...", "\u00ad": "", "\u2011": "-"}
)


def _plain(words: str) -> str:
    """Return words with one spelling for each sign; letters and digits as they were."""
    if words.isascii():
        return words  # no sign in it has another spelling
    return unicodedata.normalize("NFC", words).translate(_LIKE)


_SHORT = (
    (re.compile(r"\b(d|s)\.\s?(p|f)\.(?=\s+[A-Z])"), r"\1\2."),
    (re.compile(r"\b(d|s)\.\s?(p|f)\b\.?(?=[\s,;?!)]|$)", re.I), r"\1\2"),
    (re.compile(r"\b(e)\.g\.|\b(i)\.e\.", re.I), "for example"),
    (re.compile(r"\b([ap])\.m\.", re.I), r"\1m"),
)
_MAYBE_SHORT = re.compile(r"\b[dseiap]\.\s?[pfgem]", re.I)
"""How each of these begins: most prompts hold none, and are looked through once."""
_END = late(r"(?<=[.?!;])\s+(?=[^\s])|(?<=[.?!;])$")


def _in_full(text: str) -> str:
    """Return a text without full stops that end no sentence."""
    if _MAYBE_SHORT.search(text):
        for pattern, full in _SHORT:
            text = pattern.sub(full, text)
    return text


def sentences(text: str) -> list[str]:
    """Return the sentences of a slotted prompt, their full stops and question marks off.

    >>> sentences("Work it out. Give it to 1 d.p. or less? Yes")
    ['Work it out', 'Give it to 1 dp or less', 'Yes']
    """
    found = (piece.strip().rstrip(".?!;").strip() for piece in _END.split(_in_full(text)))
    return [piece for piece in found if piece]


def asks_with_mark(text: str) -> list[str]:
    """Return the sentences that end in a question mark.

    >>> asks_with_mark("It is late. Who asks? Nobody.")
    ['Who asks']
    """
    pieces = [piece.strip() for piece in _END.split(_in_full(text))]
    return [piece.rstrip(".?!; ") for piece in pieces if piece.endswith("?")]
