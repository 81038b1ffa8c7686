"""What words ask of a scatter graph, and the names its axes give to what is asked."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from itembank.figures.figure import Asked, FigureError, Reading, Said
from itembank.figures.kinds.chart.chart_names import words_of
from itembank.notation import tree as t
from itembank.notation.units import UNITS

if TYPE_CHECKING:
    from itembank.figures.kinds.chart.scatter_graph import ScatterGraph


UNIT_NAMES = {
    **{"cm": "centimetres", "m": "metres", "km": "kilometres", "mm": "millimetres"},
    **{"g": "grams", "kg": "kilograms", "km/h": "kilometres per hour", "ml": "millilitres"},
}
"""Units that stand in short on an axis, and how they are said."""


def _axis(figure: ScatterGraph, what: str, unit: str | None) -> str:
    """Return which axis shows something, in that unit where one is said."""
    for axis, title in (("x", figure.x_title), ("y", figure.y_title)):
        shown = re.fullmatch(r"(.+?)(?: \((.+)\))?", title)
        if shown and shown[1].casefold() == what.casefold():
            said = (shown[2] or "").casefold()
            if unit and unit.casefold() not in (said, UNIT_NAMES.get(said, said)):
                raise FigureError(f"it does not show the {what} in ‘{unit}’")
            return axis
    raise FigureError(f"it does not show ‘{what}’")


def _two(figure: ScatterGraph, found: re.Match[str]) -> str:
    """Return the axis that is known, where the other one is asked for."""
    known = _axis(figure, found["other"], found["unit"])
    if _axis(figure, found["what"], found["given"]) == known:
        raise FigureError("it asks for what it says")
    return known


def known(name: str) -> Said:
    """Return what a wording asks that names an amount on one axis: a reading of the other."""

    def asks(figure: ScatterGraph, found: re.Match[str]) -> Asked:
        return Asked(t.Sym("r"), (("r", Reading(name, (_two(figure, found), found["n"]))),))

    return asks


_NO_THINGS = frozenset(
    re.findall(r"\w+", "more fewer less dozens hundreds pairs percent axes lines points")
) | {unit.many for unit in UNITS.values()}


def over(figure: ScatterGraph, found: re.Match[str]) -> Asked:
    """Return what a question asks that counts the things beyond an amount."""
    axis = _axis(figure, found["what"], found["unit"])
    if found["who"].casefold() in _NO_THINGS | words_of(f"{figure.x_title} {figure.y_title}"):
        raise FigureError(f"it does not show ‘{found['who']}’")
    part = ("r", Reading(found["way"].casefold(), (axis, found["n"])))
    if "fraction" in found[0].casefold():
        return Asked(t.Frac(t.Sym("r"), t.Sym("n")), (part, ("n", Reading("count"))))
    return Asked(t.Sym("r"), (part,))


N = r"\{?(?P<n>\d{1,5}(?:\.\d{1,2})?)\}?(?: (?P<unit>[a-z/°]+))?"

GIVEN = r"(?:, in (?P<given>[a-z]+(?: per [a-z]+)?),)?"
LINE = "line of best fit"
