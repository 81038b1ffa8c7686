"""Running text with formulas in it: broken into lines, measured, then drawn.

    flow = Flow(item.prompt)
    block = measure(flow, width=400, size=28)
    draw(page, block, x=36, top=500)

A line is as high as the tallest thing in it. Text is set ragged right; a number and its unit
stay together; a formula is broken only where it is wider than the column, before an operator
of its outermost row, and shrunk only where even such a piece is too wide.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from contextlib import nullcontext
from functools import lru_cache
from html import escape
from typing import NamedTuple, TypeAlias

from itembank.notation.units import UNITS
from itembank.packs.model import Maths, TextRun

from .fonts import ASCENT, DESCENT, face, plain
from .formula import formula, pieces
from .layout import Formula
from .page import Page
from .tagging import Element
from .theme import INK

GAP = 0.28
"""Room between the lowest ink of a line and the highest of the next, in ems."""
FORMULA_SCALE = 1.06
"""Formulas against the text round them: STIX Two looks small beside Atkinson Hyperlegible."""

OPERATOR_SPACE = 5 / 18
"""Room before an operator that starts a piece of a broken formula, in ems (MathML Core's
``thickmathspace``)."""


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


class Placed(NamedTuple):
    """An atom, or words joined into one, at its distance from the left edge in points."""

    x: float
    atom: Atom
    scale: float


class Line(NamedTuple):
    """A line: its baseline's distance below the top of the block, and what stands in it."""

    baseline: float
    placed: list[Placed]
    width: float


class Block(NamedTuple):
    """Text broken into lines: sizes in points. `baseline` is that of the first line.

    `cramped` says that something was too wide for the column and was shrunk or cut. `tail` is
    where the room kept at the end starts: its left edge and its baseline below the top.
    """

    size: float
    lines: list[Line]
    width: float
    height: float
    baseline: float
    cramped: bool
    has_formula: bool
    tail: tuple[float, float] | None = None


_UNIT_NAMES = "|".join(sorted({re.escape(u.partition("^")[0]) for u in UNITS}, key=len)[::-1])
_GLUE = re.compile(rf"(?<=\d) (?=(?:{_UNIT_NAMES}|pence|pounds?|marks?)(?![A-Za-z]))")
_UNIT_FIRST = re.compile(rf"^ (?=(?:°C|{_UNIT_NAMES}|pence|pounds?)(?![A-Za-z]))")
_WORDS = re.compile(r"[ \t]+|\n")
_STOPS = frozenset({".", ",", "?", "!", ";", ":", ")"})
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
        for run in [runs] if isinstance(runs, str) else runs:
            if isinstance(run, Maths):
                self._maths(run)
            elif isinstance(run, Strong):
                self._words(run.text, True)
            else:
                self._words(run if isinstance(run, str) else run.text, bold)

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
            self._add(_formula_atom(formula(maths.mathml), maths, True))


def _formula_atom(layout: Formula, maths: Maths, first: bool) -> Atom:
    k = FORMULA_SCALE
    return Atom(
        layout.width * k, layout.ascent * k, layout.descent * k, "", False, layout, maths, first
    )


@lru_cache(maxsize=256)
def _borrowed(word: str) -> Formula | None:
    """Return `word` set in the mathematics font, or None where that lacks a character too."""
    from .setting import covers

    if not all(covers(c) for c in word):
        return None
    return formula(f"<math><mtext>{escape(word)}</mtext></math>")


TAIL_GAP = 0.4
"""Room between the last word and the room kept after it, in ems."""
TAIL_RISE = 0.22
"""How far the room kept may rise into the gap above its line, in ems.

What is higher hangs lower instead, so that the lines of words stay evenly spaced.
"""


def measure(flow: Flow, width: float, size: float, tail: Atom | None = None) -> Block:
    """Break `flow` into lines no wider than `width` points, at `size` points.

    `tail` keeps room for something drawn later, after the last word or on a line below.
    """
    space = face(flow.bold).width(" ")
    room = width / size
    lines: list[list[tuple[float, Atom, float]]] = []
    current: list[tuple[float, Atom, float]] = []
    x = 0.0
    cramped = False

    def end_line() -> None:
        nonlocal current, x
        lines.append(current)
        current, x = [], 0.0

    for cluster in flow.clusters:
        if cluster.newline and current:
            end_line()
        gap = face(current[-1][1].bold).width(" ") if cluster.spaced and current else 0.0
        if x + gap + cluster.width > room + 1e-6 and current:
            end_line()
            gap = 0.0
        if cluster.width <= room + 1e-6:
            x += gap
            for atom in cluster.atoms:
                current.append((x, atom, 1.0))
                x += atom.width
            continue
        x += gap
        cramped |= any(a.width > room and a.layout is None for a in cluster.atoms)
        parts = _smaller(cluster.atoms, room)
        for place, atom in enumerate(parts):
            if atom.maths is not None and not atom.first and current:
                x += OPERATOR_SPACE
            after = parts[place + 1] if place + 1 < len(parts) else None
            stop = after.width if after and atom.layout and after.text in _STOPS else 0.0
            if x + atom.width + stop > room + 1e-6 and current:
                end_line()
            scale = min(1.0, room / atom.width) if atom.width else 1.0
            cramped |= scale < 0.999
            current.append((x, atom, scale))
            x += atom.width * scale
    if tail is not None:
        if current and x + TAIL_GAP + tail.width > room + 1e-6:
            end_line()
        current.append((x + TAIL_GAP if current else 0.0, tail, 1.0))
    if current or not lines:
        lines.append(current)
    block = _stack(lines, size, space, tail)
    return block._replace(cramped=cramped, has_formula=flow.has_formula)


def _smaller(atoms: Sequence[Atom], room: float) -> list[Atom]:
    """Return the atoms of a cluster that is too wide, cut where they may be."""
    out: list[Atom] = []
    for place, atom in enumerate(atoms):
        stop = next((after.width for after in atoms[place + 1 :][:1] if after.text in _STOPS), 0.0)
        if atom.width + stop <= room or (atom.layout is None and atom.width <= room):
            out.append(atom)
        elif atom.maths is not None and atom.layout is not None:
            out.extend(
                _formula_atom(formula(part), atom.maths, i == 0)
                for i, part in enumerate(_cut(atom.maths.mathml, room / FORMULA_SCALE))
            )
        elif atom.layout is None:
            out.extend(_chopped(atom, room))
        else:
            out.append(atom)
    return out


def _cut(mathml: str, room: float) -> list[str]:
    """Return a wide formula cut at its relations, and at other operators where it must be."""
    out: list[str] = []
    for part in pieces(mathml, relations_only=True):
        if formula(part).width <= room:
            out.append(part)
        else:
            out.extend(pieces(part))
    return out


def _chopped(atom: Atom, room: float) -> list[Atom]:
    """Return a word too long for any line, cut where each line is full."""
    weight = face(atom.bold)
    parts: list[Atom] = []
    part = ""
    for character in atom.text:
        if part and weight.width(part + character) > room:
            parts.append(atom._replace(width=weight.width(part), text=part, first=not parts))
            part = ""
        part += character
    parts.append(atom._replace(width=weight.width(part), text=part, first=not parts))
    return parts


def _stack(
    lines: list[list[tuple[float, Atom, float]]],
    size: float,
    space: float,
    tail: Atom | None,
) -> Block:
    """Give each line its baseline and join its words."""
    made: list[Line] = []
    y = 0.0
    widest = 0.0
    first = 0.0
    spot: tuple[float, float] | None = None
    for number, atoms in enumerate(lines):
        # Room kept after words on a later line must not push that line down: it hangs lower.
        drop = 0.0
        if tail is not None and number and len(atoms) > 1 and atoms[-1][1] is tail:
            most = max([ASCENT, *(atom.ascent * scale for _, atom, scale in atoms[:-1])])
            drop = max(0.0, tail.ascent - most - TAIL_RISE)
            low = tail._replace(ascent=most, descent=tail.descent + drop)
            atoms = [*atoms[:-1], (atoms[-1][0], low, 1.0)]
            tail = low
        ascent = max([ASCENT, *(atom.ascent * scale for _, atom, scale in atoms)])
        descent = max([DESCENT, *(atom.descent * scale for _, atom, scale in atoms)])
        y += (GAP if number else 0.0) + ascent
        if not number:
            first = y
        end = max((x + atom.width * scale for x, atom, scale in atoms), default=0.0)
        widest = max(widest, end)
        if atoms and atoms[-1][1] is tail:
            spot = (atoms[-1][0] * size, (y + drop) * size)
            atoms = atoms[:-1]
        made.append(Line(y * size, _join(atoms, size, space), end * size))
        y += descent
    return Block(size, made, widest * size, y * size, first * size, False, False, spot)


def _is_words(atom: Atom) -> bool:
    return atom.layout is None and atom.maths is None


def _join(atoms: list[tuple[float, Atom, float]], size: float, space: float) -> list[Placed]:
    """Return the line's atoms in points, words of one weight joined by their spaces."""
    out: list[Placed] = []
    end = 0.0
    for x, atom, scale in atoms:
        gap = x - end > space / 2
        if gap and out:
            space = face(out[-1].atom.bold).width(" ")
        if out and _is_words(out[-1].atom):
            last = out[-1]
            text = last.atom.text + (" " if gap else "")
            if _is_words(atom) and atom.bold == last.atom.bold:
                text += atom.text
                out[-1] = last._replace(atom=last.atom._replace(text=text))
                end = x + atom.width * scale
                continue
            out[-1] = last._replace(atom=last.atom._replace(text=text))
        elif out and gap and _is_words(atom):
            atom = atom._replace(text=" " + atom.text)
            x -= space
        elif out and gap:
            out.append(Placed(end * size, Atom(space, 0, 0, " ", False), 1.0))
        out.append(Placed(x * size, atom, scale))
        end = x + (atom.width * scale if not atom.text.startswith(" ") else atom.width + space)
    return out


def draw(page: Page, block: Block, x: float, top: float, *, colour: str = INK) -> None:
    """Draw a block from its top left corner, inside the element that is open.

    Words go straight into that element, or into a ``Span`` where formulas stand among them,
    so that the tags are in reading order.
    """
    document = page.document
    size = block.size
    formulas: dict[int, Element] = {}
    for number, line in enumerate(block.lines):
        last = number == len(block.lines) - 1
        y = top - line.baseline
        for place, placed in enumerate(line.placed):
            atom = placed.atom
            if atom.maths is not None:
                _draw_maths(page, placed, x, y, size, colour, formulas)
                continue
            text = atom.text
            if place == len(line.placed) - 1 and not last and atom.layout is None:
                text += " "
            with document.tag("Span") if block.has_formula else nullcontext():
                if atom.layout is not None:
                    page.borrowed(x + placed.x, y, atom.layout, size * placed.scale, text, colour)
                else:
                    page.text(x + placed.x, y, text, size, bold=atom.bold, colour=colour)


def _draw_maths(
    page: Page,
    placed: Placed,
    x: float,
    y: float,
    size: float,
    colour: str,
    elements: dict[int, Element],
) -> None:
    """Draw a formula, or a later piece of one into the element of its first."""
    atom = placed.atom
    maths = atom.maths
    assert maths is not None
    document = page.document
    if atom.first:
        element = elements[id(maths)] = Element("Formula", document.current, alt=maths.words)
        element.actual = maths.line
    else:
        element = elements[id(maths)]
    with document.back_in(element):
        if atom.layout is None:
            page.formula_text(
                x + placed.x, y, atom.text, size * placed.scale, bold=atom.bold, colour=colour
            )
        else:
            page.formula(
                x + placed.x,
                y,
                atom.layout,
                size * FORMULA_SCALE * placed.scale,
                line=maths.line,
                words=maths.words,
                colour=colour,
                read=atom.first,
            )


def one_line(runs: str | Iterable[Piece], size: float, bold: bool = False) -> Block:
    """Return the runs set on one line, however long."""
    return measure(Flow(runs, bold), 1e6, size)
