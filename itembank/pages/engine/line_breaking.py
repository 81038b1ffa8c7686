"""Breaks running text into lines no wider than a column, and puts them one below the other.

A formula is broken only where it is wider than the column, before an operator of its outermost
row, and shrunk only where even such a piece is too wide.
"""

from __future__ import annotations

from collections.abc import Sequence

from itembank.pages.engine.breaks import NO_BREAK, is_short
from itembank.pages.engine.flow import FORMULA_SCALE, STOPS, Atom, Cluster, formula_atom
from itembank.pages.engine.fonts import ASCENT, DESCENT, face
from itembank.pages.engine.formula import Level, formula, pieces
from itembank.pages.engine.text_block import Broken, Line

OPERATOR_SPACE = 5 / 18
"""Room before an operator that starts a piece of a broken formula, in ems (MathML Core's
``thickmathspace``)."""

FRACTIONS_APART = 0.3
"""The least room between the ink of two lines with a fraction in each, in ems."""

LEVELS: tuple[Level, ...] = ("or", "comma", "relation", "operator")


def break_lines(
    clusters: Sequence[Cluster], room: float, pictures: float = 1.0
) -> tuple[list[Broken], bool]:
    """Return lines no wider than `room`, in ems, and whether anything had to be set smaller.

    That figures are set at `pictures` times the size of the words does not count.
    """
    lines: list[Broken] = []
    current: Broken = []
    x = 0.0
    cramped = False
    spaces = (face(False).width(" "), face(True).width(" "))

    def end_line() -> None:
        nonlocal current, x
        lines.append(current)
        current, x = [], 0.0

    for cluster in clusters:
        if cluster.newline and current:
            end_line()
        if pictures < 1 and cluster.atoms[-1].picture is not None:
            wide = cluster.width * pictures
            cramped |= wide > room + 1e-6
            current.append((0.0, cluster.atoms[-1], min(pictures, room / cluster.width)))
            x = wide
            continue
        before = spaces[current[-1][1].bold] if cluster.spaced and current else 0.0
        # A little more than the room: sums of floats must not break a line that just fits.
        if x + before + cluster.width > room + 1e-6 and current:
            end_line()
            before = 0.0
        if cluster.width <= room + 1e-6:
            x += before
            for atom in cluster.atoms:
                current.append((x, atom, 1.0))
                x += atom.width
            continue
        x += before
        cramped |= any(a.width > room and a.layout is None for a in cluster.atoms)
        parts = _smaller(cluster.atoms, room)
        for place, atom in enumerate(parts):
            if atom.maths is not None and not atom.first and current:
                x += OPERATOR_SPACE
            after = parts[place + 1] if place + 1 < len(parts) else None
            # A full stop does not begin a line, so there must be room for it after the formula.
            stop = after.width if after and atom.layout and after.text in STOPS else 0.0
            # Nor is the last short word of words that belong together left alone.
            held = _before_short_word(parts, place)
            if (
                x + atom.width + max(stop, held if held + atom.width <= room else 0.0)
                > (room + 1e-6)
                and current
            ):
                end_line()
            scale = min(1.0, room / atom.width) if atom.width else 1.0
            cramped |= scale < 0.999
            current.append((x, atom, scale))
            x += atom.width * scale
    if current or not lines:
        lines.append(current)
    return lines, cramped


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


def stack_lines(
    lines: list[Broken],
    size: float,
    space: float,
    between: float,
) -> tuple[list[Line], float, float, float]:
    """Return the lines, each with its baseline, and what a block says of them."""
    made: list[Line] = []
    y = 0.0
    widest = 0.0
    first = 0.0
    deep = False
    for number, atoms in enumerate(lines):
        ascent, descent, end = ASCENT, DESCENT, 0.0
        for x, atom, scale in atoms:
            ascent = max(ascent, atom.ascent * scale)
            descent = max(descent, atom.descent * scale)
            end = max(end, x + atom.width * scale)
        # A fraction's denominator close above the next one's numerator reads as one fraction.
        gap = max(between, FRACTIONS_APART) if deep and ascent > ASCENT else between
        y += (gap if number else 0.0) + ascent
        deep = descent > DESCENT
        if not number:
            first = y
        widest = max(widest, end)
        made.append(Line(y * size, end * size, atoms, size, space))
        y += descent
    return made, widest * size, y * size, first * size
