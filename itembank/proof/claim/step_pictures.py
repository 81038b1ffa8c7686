"""Pictures beside lines of working: each has to show what its line says.

A balance shows an equation, pan by pan; points on a number line a list in order, up or down; jumps
on one the number at which they end; every other picture has a reading that is the number the line
comes to. The first road reads the picture's data, the second measures what is drawn; `shown_by`
gets either.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from itembank.figures.figure import Figure, FigureError, Reading, fault, kind_of, read, relations_on
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.value import exact

Reader = Callable[[Figure, Reading], t.Node]
Equations = Callable[[Figure], tuple[t.Relation, ...]]


def picture_fault(item: Item) -> str:
    """Return how a picture of the working says something else than its line, as a clause.

    >>> from itembank.items.topics.registry import find_item
    >>> picture_fault(find_item("fractions.of-quantity/support/5"))
    ''
    """
    for number, step in enumerate(item.steps, start=1):
        if step.figure is None:
            continue
        if clause := fault(step.figure):
            return f"the picture of step {number} is faulty: {clause}"
        if step.maths is None or not shown_by(step.figure, step.maths, read, _equations):
            return f"the picture of step {number} does not show what its line says"
    return ""


def _equations(figure: Figure) -> tuple[t.Relation, ...]:
    return relations_on(figure)


def shown_by(figure: Figure, line: t.Node, reader: Reader, equations: Equations) -> bool:
    """Tell whether a picture shows a line, by what is read from it or measured on it."""
    if t.symbols(line):
        return isinstance(line, t.Relation) and any(
            _same_equation(line, shown) for shown in equations(figure)
        )
    readings = kind_of(figure).readings(figure)
    if isinstance(line, t.Listing):
        numbers = [reader(figure, reading) for reading in readings if reading.name == "number"]
        rising = sorted(map(exact, numbers))
        return [exact(part) for part in line.parts] in (rising, rising[::-1])
    end = line.rest[-1][1] if isinstance(line, t.Relation) else line
    ends = [reading for reading in readings if reading.name == "jump end"]
    # Where there are jumps, it is where the last of them lands that counts.
    for reading in ends[-1:] or readings:
        shown = reader(figure, reading)
        if not isinstance(shown, t.Label | t.Relation | t.Listing) and exact(shown) == exact(end):
            return True
    return False


def _same_equation(line: t.Relation, shown: t.Relation) -> bool:
    """Tell whether two equations in one letter have the same sides, in one order or the other.

    Each side is of degree one, so two places settle it; a third is a check on that.
    """
    letters = t.symbols(line) | t.symbols(shown)
    if len(letters) != 1 or [len(line.rest), len(shown.rest)] != [1, 1]:
        return False
    (name,) = letters

    def sides(relation: t.Relation) -> list[list[Fraction]]:
        both = (relation.first, relation.rest[0][1])
        return [
            [exact(t.replaced(side, {t.Sym(name): t.Int(at)})) for at in (1, 2, 5)] for side in both
        ]

    try:
        ours, theirs = sides(line), sides(shown)
    except (t.NotationError, FigureError):
        return False
    return ours in (theirs, theirs[::-1])
