"""How a tree diagram is drawn: branches to the right, names at their tips, chances on them."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from itembank.figures.drawing import Drawing, Mark, Point, Stroke, Text, drawing
from itembank.figures.label_room import room

if TYPE_CHECKING:
    from itembank.figures.kinds.chance.tree_diagram import Branch, TreeDiagram, Twig

_BESIDE = Fraction(1, 4)
_ALONG = (Fraction(13, 20), Fraction(3, 4), Fraction(4, 5))
"""How far along its branch a probability may stand: farther along, branches are more apart."""
_APART = Fraction(3, 10)
"""How far two probabilities are apart, so that nobody takes the foot of one fraction and the head
of the next for a fraction of their own."""


def _along(step: Fraction, tall: Fraction) -> Fraction:
    """Return how far along probabilities stand: no farther than they have to for their room.

    Of a branch enough is seen behind them then, and not a dot that looks like a decimal point.
    """
    return next((value for value in _ALONG if step * value - tall >= _APART), _ALONG[-1])


def tree_drawing(figure: TreeDiagram) -> Drawing:
    """Return what is drawn of a tree diagram."""
    chances = [c.chance for _, branches in figure.sets for c in branches if c.chance is not None]
    tall = max([room(chance).height for chance in chances], default=Fraction(1))
    # Where their probabilities stand, two branches are apart by a part of the step.
    total = sum(len(branch.then) or 1 for branch in figure.branches)
    step = min(Fraction(4, 3) * (tall + Fraction(3, 4)), Fraction(9) / (total - 1))
    step = max(Fraction(3, 2), Fraction(4, 3) * tall + Fraction(1, 10), step)
    along = _along(step, tall)
    names = [room(twig.outcome).width for _, some in figure.sets for twig in some]
    across = max(Fraction(7, 2), min(Fraction(5), Fraction(15, 2) - max(names)))
    marks: list[Mark] = []
    chances_on: list[Text] = []
    leaves = [len(branch.then) or 1 for branch in figure.branches]
    first_at = []
    row = Fraction(0)
    for count in leaves:
        first_at.append(-(row + Fraction(count - 1, 2)) * step)
        row += count
    middle = -Fraction(total - 1, 2) * step
    wide = max(room(branch.outcome).width for branch in figure.branches)
    for branch, y in zip(figure.branches, first_at, strict=True):
        tip = Point(across, y)
        _branch(marks, chances_on, (Point(Fraction(0), middle), tip), branch, along)
        start = Point(across + 2 * _BESIDE + wide, y)
        top = y + Fraction(len(branch.then) - 1, 2) * step
        for place, twig in enumerate(branch.then):
            ends = start, Point(start.x + across, top - place * step)
            _branch(marks, chances_on, ends, twig, along)
    # After all strokes, so that each stands on paper.
    return drawing([*marks, *chances_on])


def _branch(
    marks: list[Mark],
    chances: list[Text],
    ends: tuple[Point, Point],
    branch: Branch | Twig,
    along: Fraction,
) -> None:
    start, tip = ends
    marks.append(Stroke(ends, "branch"))
    marks.append(Text(Point(tip.x + _BESIDE, tip.y), branch.outcome, "left", role="outcome"))
    if branch.chance is not None:
        place = Point(start.x + (tip.x - start.x) * along, start.y + (tip.y - start.y) * along)
        chances.append(Text(place, branch.chance, role="chance", paper=True))
