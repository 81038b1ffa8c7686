"""Runs of text and formulas cut into what is never broken, each measured once in ems."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from html import escape
from typing import NamedTuple, TypeAlias

from itembank.notation.units import UNITS
from itembank.packs.data.pack import Maths, TextRun
from itembank.pages.engine.fonts import ASCENT, DESCENT, face, plain
from itembank.pages.engine.formula import formula
from itembank.pages.engine.formula_layout import Formula

FORMULA_SCALE = 1.0
"""Formulas against the text round them: figures and letters are those of the text face."""


class Strong(NamedTuple):
    """A stretch of bold text."""

    text: str


Piece: TypeAlias = str | TextRun | Strong | Maths


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


class Cluster(NamedTuple):
    """Atoms with no room between them, and whether a space or a new line comes before."""

    atoms: list[Atom]
    width: float
    spaced: bool
    newline: bool


_UNIT_NAMES = "|".join(sorted({re.escape(u.partition("^")[0]) for u in UNITS}, key=len)[::-1])
_GLUE = re.compile(rf"(?<=\d) (?=(?:{_UNIT_NAMES}|pence|pounds?|marks?)(?![A-Za-z]))")
_UNIT_FIRST = re.compile(rf"^ (?=(?:°C|{_UNIT_NAMES}|pence|pounds?)(?![A-Za-z]))")
_LABEL = re.compile(r" (?=[A-Z]:)|(?<=\b[A-Z]:) $")
_LAST = re.compile(r" (?=\d+\.?$)")
_WORDS = re.compile(r"[ \t]+|\n")
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
    >>> as_text("<math><mi>x</mi></math>")
    ''
    """
    if not _ONLY_PLAIN.match(mathml):
        return ""
    text = _TAG.sub("", mathml).replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
    return text.replace("\u2009", "\u00a0")


class Flow:
    """Text and formulas cut into clusters, measured once for every size and width."""

    def __init__(self, runs: str | Iterable[Piece], bold: bool = False) -> None:
        self.clusters: list[Cluster] = []
        self.bold = bold
        self._spaced = False
        self._newline = False
        self._joined = False
        given = [runs] if isinstance(runs, str) else list(runs)
        for place, run in enumerate(given):
            if isinstance(run, Maths):
                self._maths(run)
            elif isinstance(run, Strong):
                self._words(run.text, True)
            else:
                text = run if isinstance(run, str) else run.text
                self._words(_held(text, given[max(place - 1, 0) : place + 2]), bold)

    @property
    def has_formula(self) -> bool:
        """Whether any part is tagged as a formula."""
        return any(atom.maths is not None for c in self.clusters for atom in c.atoms)

    def _add(self, atom: Atom) -> None:
        if self.clusters and self._joined:
            last = self.clusters[-1]
            last.atoms.append(atom)
            self.clusters[-1] = last._replace(width=last.width + atom.width)
        else:
            self.clusters.append(Cluster([atom], atom.width, self._spaced, self._newline))
        self._joined, self._spaced, self._newline = True, False, False

    def _words(self, text: str, bold: bool) -> None:
        text = _GLUE.sub("\u00a0", text)
        if self._joined and self.clusters[-1].atoms[-1].maths is not None:
            text = _UNIT_FIRST.sub("\u00a0", text)
        at = 0
        for gap in _WORDS.finditer(text):
            if gap.start() > at:
                self._word(text[at : gap.start()], bold)
            self._spaced, self._joined = True, False
            self._newline |= gap.group() == "\n"
            at = gap.end()
        if at < len(text):
            self._word(text[at:], bold)

    def _word(self, word: str, bold: bool) -> None:
        weight = face(bold)
        if all(weight.has(c) for c in word):
            self._add(Atom(weight.width(word), ASCENT, DESCENT, word, bold))
            return
        layout = _borrowed(word)
        if layout is None:
            return self._word(plain(word), bold)
        self._add(
            Atom(
                layout.width,
                max(ASCENT, layout.ascent),
                max(DESCENT, layout.descent),
                word,
                bold,
                layout,
            )
        )
        return None

    def _maths(self, maths: Maths) -> None:
        text = as_text(maths.mathml)
        weight = face(self.bold)
        if text and all(weight.has(c) for c in text):
            self._add(Atom(weight.width(text), ASCENT, DESCENT, text, self.bold, None, maths))
        else:
            self._add(formula_atom(formula(maths.mathml), maths, True))


def _held(text: str, around: Sequence[Piece]) -> str:
    """Return words with the spaces made fast at which a line would tear a fact apart.

    Between two formulas those are the two sides of a rate (£1 = €1.10) and of a price (6 for
    £4.26); before one it is what names it (Pack A: 500 g). A number that ends a sentence does
    not stand on a line alone. `around` is the run with its
    neighbours. What is too wide for a line is broken there all the same.
    """
    after = around[-1]
    if not isinstance(after, Maths):
        return _LAST.sub("\u00a0", text)
    price = text == " for " and after.line.startswith("£")
    if isinstance(around[0], Maths) and (text == " = " or price):
        return text.replace(" ", "\u00a0")
    return _LABEL.sub("\u00a0", text)


def formula_atom(layout: Formula, maths: Maths, first: bool) -> Atom:
    """Return a formula, or the `first` or a later piece of one, as it stands among words."""
    k = FORMULA_SCALE
    return Atom(
        layout.width * k, layout.ascent * k, layout.descent * k, "", False, layout, maths, first
    )


@lru_cache(maxsize=256)
def _borrowed(word: str) -> Formula | None:
    """Return `word` set in the mathematics font, or None where that lacks a character too."""
    from itembank.pages.engine.setting import covers

    if not all(covers(c) for c in word):
        return None
    return formula(f"<math><mtext>{escape(word)}</mtext></math>")
