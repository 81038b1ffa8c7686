"""Runs of text and formulas cut into what is never broken, each measured once in ems."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from html import escape, unescape
from typing import Any, NamedTuple, TypeAlias

from itembank.packs.data.pack_item import Maths, Picture, TextRun
from itembank.pages.engine.faces.fonts import ASCENT, DESCENT, face, plain
from itembank.pages.engine.maths.formula import formula, least_script
from itembank.pages.engine.maths.formula_layout import Formula
from itembank.pages.engine.text.breaks import NO_BREAK, held_runs

FORMULA_SCALE = 1.0
"""Formulas against the text round them: figures and letters are those of the text face."""


class Strong(NamedTuple):
    """A stretch of bold text."""

    text: str


class Pair(NamedTuple):
    """A figure as it is asked about and as it stands with the answer: each has the room of both.

    So the slide of answers shows it at the place where the starter has it.
    """

    asked: Picture
    answered: Picture


Piece: TypeAlias = str | TextRun | Strong | Maths | Picture | Pair


class Atom(NamedTuple):
    """Something that is never broken: a word or a formula. Measures are in ems."""

    width: float
    ascent: float
    descent: float
    text: str
    bold: bool
    layout: Formula | None = None
    maths: Maths | None = None
    first: bool = True
    picture: Picture | None = None
    other: Picture | None = None


class Cluster(NamedTuple):
    """Atoms with no room between them, and whether a space or a new line comes before."""

    atoms: list[Atom]
    width: float
    spaced: bool
    newline: bool


STOPS = frozenset(".,?!;:)")
STOP_ROOM = 0.08
"""Room between a fraction and the stop after it, in ems."""
_ENDS_IN_FRACTION = re.compile(r"</mfrac>(?:</mrow>)*</math>$")
_WORDS = re.compile(r"[ \t]+|\n")
_HELD = re.compile(f"[^{NO_BREAK}]*{NO_BREAK}|[^{NO_BREAK}]+")
_TAG = re.compile(r"<[^>]*>")
_ONLY_PLAIN = re.compile(
    r"^<math[^>]*>(?:</?mrow>|<mn>[0-9.,\u2009]+</mn>|<mtext>[^<□]*</mtext>"
    r'|<mo form="prefix">−</mo>)+</math>$'
)


@lru_cache(maxsize=4096)
def as_text(mathml: str) -> str:
    """Return plain numbers, money, units and names as text, and "" for real formulas.

    >>> as_text("<math><mtext>£</mtext><mn>3.50</mn></math>")
    '£3.50'
    >>> as_text("<math><mtext>Amy&#x27;s</mtext></math>"), as_text("<math><mi>x</mi></math>")
    ("Amy's", '')
    """
    if not _ONLY_PLAIN.match(mathml):
        return ""
    # Tags first: a name may hold a < of its own, written as &lt;.
    return unescape(_TAG.sub("", mathml)).replace("\u2009", "\u00a0")


_CUT: dict[tuple[object, ...], tuple[list[Cluster], dict[object, list[Any]]]] = {}
"""What texts were cut into, by their runs and by how small the powers in them may be, and the lines
that they were broken into."""
MOST_KEPT = 4096


class Flow:
    """Text and formulas cut into clusters, measured once for every size and width."""

    def __init__(self, runs: str | Iterable[Piece], bold: bool = False) -> None:
        given = [runs] if isinstance(runs, str) else list(runs)
        self.bold = bold
        self.has_formula = any(isinstance(run, Maths) for run in given)
        """Whether any part is tagged as a formula."""
        self._spaced = False
        self._newline = False
        self._joined = False
        # One text stands on several pages: a question on the slide, in the notes, in its answers.
        key = (bold, least_script(), *map(_said, given))
        found = _CUT.get(key)
        self.clusters: list[Cluster]
        self.kept: dict[object, list[Any]]
        """Lines that it was broken into (:mod:`.line_breaking`)."""
        if found is not None:
            self.clusters, self.kept = found
            return
        self.clusters, self.kept = [], {}
        words = held_runs([_plain_words(run) for run in given])
        for run, text in zip(given, words, strict=True):
            if isinstance(run, Picture):
                self._picture(run, None)
            elif isinstance(run, Pair):
                self._picture(*run)
            elif isinstance(run, Maths):
                self._maths(run)
            else:
                self._words(text, True if isinstance(run, Strong) else bold)
        # Emptied, not pruned: a pack fills it in seconds again, and it need not keep an order.
        if len(_CUT) >= MOST_KEPT:
            _CUT.clear()
        _CUT[key] = self.clusters, self.kept

    def _add(self, atom: Atom) -> None:
        if self.clusters and self._joined:
            atoms, width, spaced, newline = self.clusters[-1]
            atoms.append(atom)
            self.clusters[-1] = Cluster(atoms, width + atom.width, spaced, newline)
        else:
            self.clusters.append(Cluster([atom], atom.width, self._spaced, self._newline))
        self._joined, self._spaced, self._newline = True, False, False

    def _words(self, text: str, bold: bool) -> None:
        at = 0
        for gap in _WORDS.finditer(text):
            if gap.start() > at:
                self._held_words(text[at : gap.start()], bold)
            self._spaced, self._joined = True, False
            self._newline |= gap.group() == "\n"
            at = gap.end()
        if at < len(text):
            self._held_words(text[at:], bold)

    def _held_words(self, words: str, bold: bool) -> None:
        """Add words that stand on one line, each an atom: where none is wide enough, they part."""
        if NO_BREAK not in words:
            self._word(words, bold)
            return
        for part in _HELD.findall(words):
            self._word(part, bold)

    def _word(self, word: str, bold: bool) -> None:
        if self._joined and word[0] in STOPS:
            self._room_for_stop()
        self._add(_word_atom(word, bold))

    def _room_for_stop(self) -> None:
        """Leave room after a fraction: a full stop at its bar looks like part of it."""
        last = self.clusters[-1]
        atom = last.atoms[-1]
        if atom.maths is not None and _ENDS_IN_FRACTION.search(atom.maths.mathml):
            last.atoms[-1] = atom._replace(width=atom.width + STOP_ROOM)
            self.clusters[-1] = last._replace(width=last.width + STOP_ROOM)

    def _picture(self, picture: Picture, other: Picture | None) -> None:
        """Add a figure, which stands on a line of its own."""
        self._newline, self._joined = True, False
        self._add(picture_atom(picture, other))
        self._newline, self._joined = True, False

    def _maths(self, maths: Maths) -> None:
        text = as_text(maths.mathml)
        weight = face(self.bold)
        # In the text's own weight, so that a bold question has bold numbers.
        if text and all(map(weight.has, text)):
            self._add(Atom(weight.width(text), ASCENT, DESCENT, text, self.bold, None, maths))
        else:
            self._add(formula_atom(formula(maths.mathml), maths, True))


def _said(run: Piece) -> object:
    """Return what tells one run from another: a name for its kind, and what it holds."""
    if isinstance(run, str):
        return run
    if isinstance(run, Maths):
        return ("maths", run.mathml, run.line, run.words)
    if isinstance(run, Picture):
        return ("picture", written(run))
    if isinstance(run, Pair):
        return ("pair", written(run.asked), written(run.answered))
    return ("strong" if isinstance(run, Strong) else "text", run.text)


_WRITTEN: dict[int, tuple[Picture, str]] = {}


def written(picture: Picture) -> str:
    """Return a figure as the pack's file holds it; it is asked for wherever the figure stands."""
    known = _WRITTEN.get(id(picture))
    if known is not None and known[0] is picture:
        return known[1]
    if len(_WRITTEN) > 512:
        _WRITTEN.clear()
    text = picture.model_dump_json()
    _WRITTEN[id(picture)] = picture, text
    return text


@lru_cache(maxsize=4096)
def _word_atom(word: str, bold: bool) -> Atom:
    """Return a word in the text face, or in the mathematics face where that lacks a sign."""
    weight = face(bold)
    if all(map(weight.has, word)):
        return Atom(weight.width(word), ASCENT, DESCENT, word, bold)
    layout = _borrowed(word)
    if layout is None:
        return _word_atom(plain(word), bold)
    ascent, descent = max(ASCENT, layout.ascent), max(DESCENT, layout.descent)
    return Atom(layout.width, ascent, descent, word, bold, layout)


def _plain_words(run: Piece) -> str | Maths:
    """Return a run's words, whatever their weight; a formula stays one."""
    if isinstance(run, Picture | Pair):
        return ""
    return run if isinstance(run, str | Maths) else run.text


def picture_atom(picture: Picture, other: Picture | None = None) -> Atom:
    """Return a figure as it stands on a line of its own: all of it above the line's foot."""
    from itembank.pages.engine.text.picture import MARGIN, edges

    made = edges(picture, other)
    width, height = float(made.width) + 2 * MARGIN, float(made.height) + 2 * MARGIN
    return Atom(width, height, 0.0, "", False, picture=picture, other=other)


def formula_atom(layout: Formula, maths: Maths, first: bool) -> Atom:
    """Return a formula, or the `first` or a later piece of one, as it stands among words."""
    k = FORMULA_SCALE
    return Atom(
        layout.width * k, layout.ascent * k, layout.descent * k, "", False, layout, maths, first
    )


@lru_cache(maxsize=256)
def _borrowed(word: str) -> Formula | None:
    """Return `word` set in the mathematics font, or None where that lacks a character too."""
    from itembank.pages.engine.maths.setting import covers

    if not all(covers(c) for c in word):
        return None
    return formula(f"<math><mtext>{escape(word)}</mtext></math>")
