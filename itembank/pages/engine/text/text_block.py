"""Text that is broken into lines: what stands where, at which size.

What stands in a line is put together when it is first asked for: most lines are only measured.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple, TypeAlias

from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.text.flow import Atom

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


def answered(block: Block) -> Block:
    """Return a block with each figure as it stands with the answer, at the same place."""
    if not any(placed.atom.other for line in block.lines for placed in line.placed):
        return block
    return block._replace(lines=[line.answered() for line in block.lines])


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
            space = face(out[-1].atom.bold).space
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
