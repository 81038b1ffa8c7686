"""Breaks running text into lines no wider than a column, and puts them one below the other.

A formula is broken only where it is wider than the column, before an operator of its outermost
row, and shrunk only where even such a piece is too wide.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from itembank.pages.engine.faces.fonts import ASCENT, DESCENT, face
from itembank.pages.engine.maths.formula import Level, formula, pieces
from itembank.pages.engine.text.breaks import NO_BREAK, is_short
from itembank.pages.engine.text.flow import FORMULA_SCALE, STOPS, Atom, Cluster, Flow, formula_atom
from itembank.pages.engine.text.text_block import Block, Broken, Line

OPERATOR_SPACE = 5 / 18
"""Room before an operator that starts a piece of a broken formula, in ems (MathML Core's
``thickmathspace``)."""

FRACTIONS_APART = 0.3
"""The least room between the ink of two lines with a fraction in each, in ems."""

LEVELS: tuple[Level, ...] = ("or", "comma", "relation", "operator")


MORE = 1e-6
"""A little more than the room: sums of floats must not break a line that just fits."""


class Lines:
    """Lines of a text, and in which rooms it is broken into these.

    That is where the room and :data:`MORE` are `least` or more, and less than `most`, in ems.
    `cramped` tells whether anything had to be set smaller.
    """

    __slots__ = ("_made", "_stacks", "broken", "cramped", "least", "most")

    def __init__(self, broken: list[Broken], cramped: bool, least: float, most: float) -> None:
        self.broken, self.cramped, self.least, self.most = broken, cramped, least, most
        self._stacks: dict[float, Stack] = {}
        self._made: dict[tuple[float, float], Block] = {}

    def block(self, flow: Flow, size: float, between: float) -> Block:
        """Return the lines as a block of a flow, the one that was broken into them, in points.

        A text is tried in many widths at one size, and in most of them its lines are the same:
        they are put together once.
        """
        found = self._made.get((size, between))
        if found is None:
            stack = self._stacks.get(between)
            if stack is None:
                stack = self._stacks[between] = stack_lines(self.broken, between)
            space = face(flow.bold).space
            lines = [
                Line(y * size, end * size, atoms, size, space) for y, end, atoms in stack.lines
            ]
            whole = (stack.widest * size, stack.height * size, stack.first * size)
            found = Block(size, lines, *whole, self.cramped, flow.has_formula)
            self._made[size, between] = found
        return found


def lines_of(flow: Flow, room: float, pictures: float = 1.0, *, words: bool = False) -> Lines:
    """Return the lines of a text as :func:`break_lines` does; or of its `words` without a figure.

    Most of the widths in which a text is tried break it at the same places.
    """
    kept: list[Lines] = flow.kept.setdefault((pictures, words), [])
    slack = room + MORE
    for lines in kept:
        if lines.least <= slack < lines.most:
            return lines
    lines = break_lines(flow.clusters[:-1] if words else flow.clusters, room, pictures)
    # What had to be cut or made smaller hangs on the room, and is kept for no other.
    if lines.least <= slack:
        kept.append(lines)
    return lines


def break_lines(clusters: Sequence[Cluster], room: float, pictures: float = 1.0) -> Lines:
    """Return lines no wider than `room`, in ems.

    That figures are set at `pictures` times the size of the words does not make them cramped.
    """
    lines: list[Broken] = []
    current: Broken = []
    x = 0.0
    cramped = False
    slack = room + MORE
    least, most = 0.0, math.inf
    spaces = (face(False).space, face(True).space)

    def end_line() -> None:
        nonlocal current, x
        lines.append(current)
        current, x = [], 0.0

    for atoms, width, spaced, newline in clusters:
        if newline and current:
            end_line()
        if pictures < 1 and atoms[-1].picture is not None:
            wide = width * pictures
            cramped |= wide > slack
            current.append((0.0, atoms[-1], min(pictures, room / width)))
            x = wide
            # In a room as narrow as this its scale depends on the room.
            least = max(least, wide + 2 * MORE)
            continue
        before = spaces[current[-1][1].bold] if spaced and current else 0.0
        end = x + before + width
        if current and end > slack:
            if end < most:
                most = end
            end_line()
            before = 0.0
            end = width
        if width <= slack:
            if end > least:
                least = end
            x += before
            for atom in atoms:
                current.append((x, atom, 1.0))
                x += atom.width
            continue
        least = math.inf
        x += before
        cramped |= any(a.width > room and a.layout is None for a in atoms)
        parts = _smaller(atoms, room)
        for place, atom in enumerate(parts):
            if atom.maths is not None and not atom.first and current:
                x += OPERATOR_SPACE
            after = parts[place + 1] if place + 1 < len(parts) else None
            # A full stop does not begin a line, so there must be room for it after the formula.
            stop = after.width if after and atom.layout and after.text in STOPS else 0.0
            # Nor is the last short word of words that belong together left alone.
            held = _before_short_word(parts, place)
            stop = max(stop, held if atom.width + held <= room else 0.0)
            if x + atom.width + stop > slack and current:
                end_line()
            scale = min(1.0, room / atom.width) if atom.width else 1.0
            cramped |= scale < 0.999
            current.append((x, atom, scale))
            x += atom.width * scale
    if current or not lines:
        lines.append(current)
    return Lines(lines, cramped, least, most)


def _before_short_word(parts: Sequence[Atom], place: int) -> float:
    """Return how wide the last word of a cluster is where it is the next one and short, or 0."""
    last = parts[-1]
    if place != len(parts) - 2 or last.layout is not None or last.picture is not None:
        return 0.0
    if place and parts[place - 1].text[:1].isdigit():  # 12 kg heavy: the number keeps its unit
        return 0.0
    return last.width if parts[place].text.endswith(NO_BREAK) and is_short(last.text) else 0.0


def _smaller(atoms: Sequence[Atom], room: float) -> list[Atom]:
    """Return the atoms of a cluster that is too wide, cut where they may be."""
    out: list[Atom] = []
    for place, atom in enumerate(atoms):
        stop = next((after.width for after in atoms[place + 1 :][:1] if after.text in STOPS), 0.0)
        whole = atom.picture is not None or (atom.layout is None and atom.width <= room)
        if atom.width + stop <= room or whole:
            out.append(atom)
        elif atom.maths is not None and atom.layout is not None:
            out.extend(
                formula_atom(formula(part), atom.maths, i == 0)
                for i, part in enumerate(_cut(atom.maths.mathml, (room - stop) / FORMULA_SCALE))
            )
        elif atom.layout is None:
            out.extend(_chopped(atom, room))
        else:
            out.append(atom)
    return out


def _cut(mathml: str, room: float, levels: Sequence[Level] = LEVELS) -> list[str]:
    """Return a wide formula cut where it reads best: between alternatives, else at commas.

    A part that is still too wide is cut at its relations, and at other operators where it must
    be.
    """
    level, *lower = levels
    out: list[str] = []
    for part in pieces(mathml, level):
        fits = not lower or formula(part).width <= room
        out.extend([part] if fits else _cut(part, room, lower))
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


class Stack(NamedTuple):
    """Lines one below the other, in ems: the baseline and the end of each, and its atoms."""

    lines: list[tuple[float, float, Broken]]
    widest: float
    height: float
    first: float
    """The first line's baseline."""


def stack_lines(broken: list[Broken], between: float) -> Stack:
    """Return lines with so much room between the ink of one and the next, in ems."""
    made: list[tuple[float, float, Broken]] = []
    y = 0.0
    widest = 0.0
    first = 0.0
    deep = False
    for number, atoms in enumerate(broken):
        ascent, descent, end = ASCENT, DESCENT, 0.0
        # Compared, and not by max(): a pack has tens of thousands of words here.
        for x, atom, scale in atoms:
            width, up, down = atom.width, atom.ascent, atom.descent
            if scale != 1.0:
                width, up, down = width * scale, up * scale, down * scale
            if up > ascent:
                ascent = up
            if down > descent:
                descent = down
            if x + width > end:
                end = x + width
        # A fraction's denominator close above the next one's numerator reads as one fraction.
        gap = max(between, FRACTIONS_APART) if deep and ascent > ASCENT else between
        y += (gap if number else 0.0) + ascent
        deep = descent > DESCENT
        if not number:
            first = y
        widest = max(widest, end)
        made.append((y, end, atoms))
        y += descent
    return Stack(made, widest, y, first)
