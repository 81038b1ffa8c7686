"""Running text with formulas in it: broken into lines, measured, then drawn.

    flow = Flow(item.prompt)
    block = measure(flow, width=400, size=28)
    draw(page, block, x=36, top=500)

A line is as high as the tallest thing in it. Text is set ragged right; a number and its unit
stay together; a formula is broken only where it is wider than the column, before an operator
of its outermost row, and shrunk only where even such a piece is too wide.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from contextlib import nullcontext
from typing import NamedTuple, TypeAlias

from itembank.pages.engine.flow import (
    FORMULA_SCALE,
    STOPS,
    Atom,
    Cluster,
    Flow,
    Piece,
    Strong,
    as_text,
    formula_atom,
)
from itembank.pages.engine.fonts import ASCENT, DESCENT, face
from itembank.pages.engine.formula import Level, formula, pieces
from itembank.pages.engine.page import Page
from itembank.pages.engine.picture import draw_picture
from itembank.pages.engine.tagging import Element
from itembank.pages.engine.theme import INK

__all__ = [
    "Atom",
    "Block",
    "Flow",
    "Piece",
    "Strong",
    "after_figure",
    "as_text",
    "draw",
    "measure",
    "one_line",
]

GAP = 0.28
"""Room between the lowest ink of a line and the highest of the next, in ems."""

AXIS = 0.25
"""Height of the middle of a minus and of a fraction's bar above the baseline, in ems."""
OPERATOR_SPACE = 5 / 18
"""Room before an operator that starts a piece of a broken formula, in ems (MathML Core's
``thickmathspace``)."""


Broken: TypeAlias = list[tuple[float, Atom, float]]
"""The atoms of a line, each with where it begins, in ems, and its scale."""


class Placed(NamedTuple):
    """An atom, or words joined into one, at its distance from the left edge in points."""

    x: float
    atom: Atom
    scale: float


class Line:
    """A line: its baseline's distance below the top of the block, its width in points.

    What stands in it is put together when it is first asked for: most lines are only measured,
    to find the size that fits.
    """

    __slots__ = ("_atoms", "_placed", "_size", "_space", "baseline", "width")

    def __init__(
        self, baseline: float, width: float, atoms: Broken, size: float, space: float
    ) -> None:
        self.baseline, self.width = baseline, width
        self._atoms, self._size, self._space = atoms, size, space
        self._placed: list[Placed] | None = None

    @property
    def placed(self) -> list[Placed]:
        """The atoms where they stand, words of one weight joined."""
        if self._placed is None:
            self._placed = _join(self._atoms, self._size, self._space)
        return self._placed

    def moved(self, by: float) -> Line:
        """Return the line so many ems further right."""
        atoms = [(x + by, atom, k) for x, atom, k in self._atoms]
        wide = self.width + by * self._size
        return Line(self.baseline, wide, atoms, self._size, self._space)

    def answered(self) -> Line:
        """Return the line with its figure as it stands with the answer."""
        atoms = [
            (x, atom._replace(picture=atom.other, other=atom.picture) if atom.other else atom, k)
            for x, atom, k in self._atoms
        ]
        return Line(self.baseline, self.width, atoms, self._size, self._space)


class Block(NamedTuple):
    """Text broken into lines: sizes in points. `baseline` is that of the first line.

    `cramped` says that something was too wide for the column and was shrunk or cut.
    """

    size: float
    lines: list[Line]
    width: float
    height: float
    baseline: float
    cramped: bool
    has_formula: bool


LEVELS: tuple[Level, ...] = ("or", "comma", "relation", "operator")


def measure(
    flow: Flow,
    width: float,
    size: float,
    gap: float = GAP,
    pictures: float = 1.0,
    lowest: bool = False,
) -> Block:
    """Break `flow` into lines no wider than `width` points, at `size` points.

    `gap` is the room between the lowest ink of a line and the highest of the next, in ems. Figures
    are set at `pictures` times the size of the words. A figure stands right of its words where that
    is lower and still reads well; to have the `lowest` block, however it reads.
    """
    lines, cramped = _break(flow.clusters, width / size, pictures)
    stacked = _stack(lines, size, face(flow.bold).width(" "), gap)
    below = Block(size, *stacked, cramped, flow.has_formula)
    if len(flow.clusters) > 1 and (last := flow.clusters[-1].atoms[-1]).picture is not None:
        most = len(flow.clusters) if lowest else MOST_BESIDE
        beside = _beside(flow.clusters[:-1], last, flow, (width, size, gap, pictures), most)
        if beside is not None and beside.height < below.height:
            return beside
    return below


PICTURE_GAP = 1.0
"""Room between words and the figure that stands right of them, in ems."""
LEAST_BESIDE = 7.0
"""The least room for words beside a figure, in ems."""
MOST_BESIDE = 5
"""Most lines of words in a narrow column beside a figure: with more, eyes jump back too often."""
EASY_BESIDE = 16.0
"""The room for words beside a figure in which any number of lines reads well, in ems: some 35
characters, the least that printers set running text in (common practice, no source)."""


def _beside(
    words: Sequence[Cluster],
    atom: Atom,
    flow: Flow,
    measures: tuple[float, float, float, float],
    most: int,
) -> Block | None:
    """Return words with their figure to the right of them, or None where there is no room.

    In a narrow column stand no more than `most` lines.
    """
    width, size, gap, scale = measures
    wide, high = atom.width * scale, atom.ascent * scale
    room = width / size - wide - PICTURE_GAP
    if room < LEAST_BESIDE:
        return None
    lines, cramped = _break(words, room)
    if cramped or (room < EASY_BESIDE and len(lines) > most):
        return None
    space = face(flow.bold).width(" ")
    stacked, widest, height, first = _stack(lines, size, space, gap)
    # As near as the longest line lets it stand, so that eyes need not travel.
    x = widest / size + PICTURE_GAP
    picture = Line(high * size, (x + wide) * size, [(x, atom, scale)], size, space)
    tall = max(height, high * size)
    whole = picture.width
    return Block(size, [*stacked, picture], whole, tall, first, False, flow.has_formula)


def after_figure(
    flow: Flow, width: float, size: float, gap: float = GAP, pictures: float = 1.0
) -> tuple[Block, float] | None:
    """Return words with their figure to the left of them, and how high the words alone are.

    None where there is no figure or no room for words beside it.
    """
    last = flow.clusters[-1].atoms[-1]
    if last.picture is None or len(flow.clusters) == 1:
        return None
    wide, high = last.width * pictures, last.ascent * pictures
    room = width / size - wide - PICTURE_GAP
    if room < LEAST_BESIDE:
        return None
    lines, cramped = _break(flow.clusters[:-1], room)
    if cramped:
        return None
    space = face(flow.bold).width(" ")
    stacked, widest, height, first = _stack(lines, size, space, gap)
    by = wide + PICTURE_GAP
    # The words come first all the same for whoever hears or copies them.
    moved = [line.moved(by) for line in stacked]
    figure = Line(high * size, wide * size, [(0.0, last, pictures)], size, space)
    tall = max(height, high * size)
    whole = widest + by * size
    return Block(size, [*moved, figure], whole, tall, first, False, flow.has_formula), height


def _break(
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
            if x + atom.width + stop > room + 1e-6 and current:
                end_line()
            scale = min(1.0, room / atom.width) if atom.width else 1.0
            cramped |= scale < 0.999
            current.append((x, atom, scale))
            x += atom.width * scale
    if current or not lines:
        lines.append(current)
    return lines, cramped


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
                for i, part in enumerate(_cut(atom.maths.mathml, room / FORMULA_SCALE))
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


def _stack(
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
    for number, atoms in enumerate(lines):
        ascent, descent, end = ASCENT, DESCENT, 0.0
        for x, atom, scale in atoms:
            ascent = max(ascent, atom.ascent * scale)
            descent = max(descent, atom.descent * scale)
            end = max(end, x + atom.width * scale)
        y += (between if number else 0.0) + ascent
        if not number:
            first = y
        widest = max(widest, end)
        made.append(Line(y * size, end * size, atoms, size, space))
        y += descent
    return made, widest * size, y * size, first * size


def _is_words(atom: Atom) -> bool:
    return atom.layout is None and atom.maths is None and atom.picture is None


def _join(atoms: Broken, size: float, space: float) -> list[Placed]:
    """Return the line's atoms in points, words of one weight joined by their spaces."""
    out: list[Placed] = []
    said: list[str] = []  # by the last of them, if it is words
    end = 0.0
    for x, atom, scale in atoms:
        gap = x - end > space / 2
        if gap and out:
            space = face(out[-1].atom.bold).width(" ")
        if said:
            if gap:
                said.append(" ")
            if _is_words(atom) and atom.bold == out[-1].atom.bold:
                said.append(atom.text)
                end = x + atom.width * scale
                continue
            out[-1] = _saying(out[-1], said)
        elif out and gap and _is_words(atom):
            atom = atom._replace(text=" " + atom.text)
            x -= space
        elif out and gap and atom.maths is not out[-1].atom.maths:
            # Nothing stands between the pieces of one formula, so that its line reads for all.
            out.append(Placed(end * size, Atom(space, 0, 0, " ", False), 1.0))
        out.append(Placed(x * size, atom, scale))
        said = [atom.text] if _is_words(atom) else []
        end = x + (atom.width * scale if not atom.text.startswith(" ") else atom.width + space)
    if said:
        out[-1] = _saying(out[-1], said)
    return out


def _saying(placed: Placed, said: Sequence[str]) -> Placed:
    return placed._replace(atom=placed.atom._replace(text="".join(said)))


def answered(block: Block) -> Block:
    """Return a block with each figure as it stands with the answer, at the same place."""
    if not any(placed.atom.other for line in block.lines for placed in line.placed):
        return block
    return block._replace(lines=[line.answered() for line in block.lines])


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
            if atom.picture is not None:
                scaled = size * placed.scale
                draw_picture(page, atom.picture, x + placed.x, y, scaled, atom.other, size)
                continue
            if atom.maths is not None:
                _draw_maths(page, placed, x, y, size, colour, formulas)
                continue
            text = atom.text
            if place == len(line.placed) - 1 and not last and atom.layout is None:
                # A line's end is a space to whoever copies or reads the text.
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
    # Pieces of one formula are one element, so that it is read out once and whole.
    if atom.first:
        element = elements[id(maths)] = document.formula(maths)
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
                colour=colour,
            )


def one_line(runs: str | Iterable[Piece], size: float, bold: bool = False) -> Block:
    """Return the runs set on one line, however long."""
    return measure(Flow(runs, bold), 1e6, size)
