"""A line graph for conversions: how it is asked about, and what is read from it."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from itembank.figures.figure import FigureError, Wording, asks_reading
from itembank.figures.kinds.grid.grid_equations import through
from itembank.figures.kinds.grid.grid_places import in_halves, line_ends, number_at, off
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid


def converted(figure: CoordinateGrid, of: tuple[str, ...]) -> t.Node:
    """Return an amount of one axis in what the other axis shows, by the line that is drawn.

    Raises
    ------
    FigureError
        If the axes show other things, or it is not read where squares or their halves meet.
    """
    amount, source, target = Fraction(of[0]), of[1].casefold(), of[2].casefold()
    titles = [figure.x_title.casefold(), figure.y_title.casefold()]
    if source == target or {source, target} != {*titles} or len(figure.lines) != 1:
        raise FigureError(f"it does not show {of[1]} and {of[2]}")
    drawn = through(*line_ends(figure.lines[0]))
    if source == titles[0]:
        at = (amount, drawn.slope * amount + drawn.crossing)
    else:
        at = ((amount - drawn.crossing) / drawn.slope, amount)
    if not off(figure, at) and not in_halves(figure, at):
        raise FigureError("it is not read where squares, or halves of them, meet")
    # Beyond the grid only in proportion, where the line starts from nought for nought.
    if off(figure, at) and drawn.crossing:
        raise FigureError("it does not go as far as that")
    return number_at(at[1] if source == titles[0] else at[0])


CONVERSION_WORDINGS = (
    Wording(
        r"how many (?P<target>[a-z]+(?: [a-z]+)?) (?:is|are) "
        r"\{?(?P<amount>\d{1,6}(?:\.\d{1,3})?)\}? (?P<source>[a-z]+(?: [a-z]+)?)",
        asks_reading("converted", "amount", "source", "target"),
    ),
)
