"""How it is asked what is missing on a chart: a bar, or a row, of which nothing is drawn yet.

*The bar for Tuesday is missing: to which number should it reach, if there are 40 trays in all?*

>>> from itembank.figures.kinds.chart.bar_chart import BarChart, Series
>>> chart = BarChart(("Mon", "Tue", "Wed"), (Series((8, 0, 12)),), 4, counts="Number of trays")
>>> asks = missing_wordings(BAR, lambda figure: Missing(figure.categories, figure.counts))
>>> asked = "to which number should it reach, if there are {30} trays in all"
>>> found = re.fullmatch(asks[0].pattern, f"the bar for Tue is missing: {asked}")
>>> from itembank.notation.line import line
>>> line(asks[0].asks(chart, found).target)
'30 - r'
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, NamedTuple

from itembank.figures.figure import Asked, FigureError, Reading, Wording, read
from itembank.figures.kinds.chart.chart_names import folded, words_of
from itembank.notation import tree as t
from itembank.notation.value import exact

BAR = "bar", r"to which number (?:on the axis )?should it reach"
ROW = "row", r"how many squares should it have"


class Missing(NamedTuple):
    """What a chart names and counts, and how many of them one square of it stands for."""

    names: tuple[str, ...]
    counted: str
    each: int = 1


def missing_wordings(
    drawn: tuple[str, str], shown: Callable[[Any], Missing]
) -> tuple[Wording, Wording]:
    """Return the wordings for one bar or row that is missing: of a total, and beside another."""
    word, wanted = drawn
    head = rf"the {word} for (?P<name>[\w –’'-]{{1,14}}) is missing: {wanted},? if "

    def squares(figure: Any, many: t.Node) -> t.Node:
        each = shown(figure).each
        if each == 1:
            return many
        return t.divide(t.Bracket(many) if isinstance(many, t.Sum) else many, t.Int(each))

    def of_total(figure: Any, found: re.Match[str]) -> Asked:
        _named(figure, found, shown(figure))
        many = t.sub(t.Int(int(found["number"])), t.Sym("r"))
        if int(found["number"]) < exact(read(figure, Reading("total"))):
            raise FigureError(f"there are more than {found['number']} without the {word}")
        return Asked(squares(figure, many), (("r", Reading("total")),))

    def beside(figure: Any, found: re.Match[str]) -> Asked:
        name = _named(figure, found, shown(figure))
        compared = _category(found["other"], shown(figure))
        if compared == name:
            raise FigureError(f"the {word} for {name} is compared with itself")
        there = exact(read(figure, Reading("value", (compared,))))
        if found["way"].casefold() == "fewer" and int(found["number"]) > there:
            raise FigureError(f"there are fewer than {found['number']} for {compared}")
        join = t.add if found["way"].casefold() == "more" else t.sub
        many = join(t.Sym("r"), t.Int(int(found["number"])))
        return Asked(squares(figure, many), (("r", Reading("value", (compared,))),))

    number, what = r"\{(?P<number>\d{1,6})\}", r"(?P<what>[a-z]+)"
    return (
        Wording(rf"{head}there are {number} {what} in all", of_total),
        Wording(
            rf"{head}it stands for {number} (?P<way>more|fewer) {what} than the {word} for "
            r"(?P<other>[\w –’'-]{1,14})",
            beside,
        ),
    )


def _category(said: str, shown: Missing) -> str:
    for name in shown.names:
        if folded(name) == folded(said):
            return name
    raise FigureError(f"it shows nothing for ‘{said}’")


def _named(figure: Any, found: re.Match[str], shown: Missing) -> str:
    """Return the category of which nothing is drawn, as the words say.

    Raises
    ------
    FigureError
        If something is drawn for it, or the words count something else.
    """
    name = _category(found["name"], shown)
    if found["what"].casefold() not in words_of(shown.counted):
        raise FigureError(f"it does not count ‘{found['what']}’")
    if exact(read(figure, Reading("value", (name,)))) != 0:
        raise FigureError(f"what is drawn for {name} is not missing")
    return name
