"""A bar chart: how many of each kind, one series of bars or two side by side."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.figures.figure import (
    Figure,
    FigureError,
    FigureKind,
    Reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.chart.bars_of_chart import bar_chart_drawing, chart_room
from itembank.figures.kinds.chart.chart_axis import name_fault, scale_fault, step_words
from itembank.figures.kinds.chart.chart_names import Shown, folded
from itembank.figures.kinds.chart.chart_wordings import SORTS, counts_wording
from itembank.figures.kinds.chart.missing_asked import BAR, Missing, missing_wordings
from itembank.notation import tree as t

MOST_BARS = 12


@dataclass(frozen=True, slots=True)
class Series:
    """One row of bars: a name for the legend, and a value for each category."""

    values: tuple[int, ...]
    name: str = ""


@dataclass(frozen=True, slots=True)
class BarChart(Figure):
    """Bars over named categories. The axis is numbered in steps of `scale`, each cut in `between`.

    Every value stands on a line of the axis, so that it can be read exactly.

    >>> BarChart(("Mon", "Tue"), (Series((12, 8)),), 4, counts="Trays").between
    1
    """

    categories: tuple[str, ...]
    series: tuple[Series, ...]
    scale: int
    between: int = 1
    counts: str = ""
    title: str = ""


def _fault(figure: BarChart) -> str:
    if not 2 <= len(figure.categories) <= MOST_BARS:
        return f"it may have 2 to {MOST_BARS} categories"
    if not 1 <= len(figure.series) <= 2:
        return "it has one series of bars, or two"
    if found := name_fault(figure.categories, "categories"):
        return found
    if len(figure.series) == 2 and (
        found := name_fault(tuple(row.name for row in figure.series), "series")
    ):
        return found
    for row in figure.series:
        if len(row.values) != len(figure.categories):
            return "a series has a value for each category"
    values = [value for row in figure.series for value in row.values]
    return scale_fault(values, figure.scale, figure.between) or chart_room(figure)


def _row(figure: BarChart, name: str) -> Series | None:
    if not name:
        return figure.series[0] if len(figure.series) == 1 else None
    return next((r for r in figure.series if folded(r.name) == folded(name)), None)


def _read(figure: BarChart, reading: Reading) -> t.Node:
    names = [folded(name) for name in figure.categories]
    category, series = (*reading.of, "", "")[:2]
    if reading.name == "value" and folded(category) in names:
        row = _row(figure, series)
        if row is not None:
            return t.Int(row.values[names.index(folded(category))])
    if reading.name == "total":
        if (row := _row(figure, category)) is not None:
            return t.Int(sum(row.values))
        if not category:
            return t.Int(sum(sum(row.values) for row in figure.series))
    if reading.name in ("largest", "smallest") and (row := _row(figure, category)) is not None:
        best = max(row.values) if reading.name == "largest" else min(row.values)
        if row.values.count(best) == 1:
            return t.Label(figure.categories[row.values.index(best)])
    raise not_shown(reading)


def _readings(figure: BarChart) -> tuple[Reading, ...]:
    found = [Reading("total")]
    for row in figure.series:
        own = (row.name,) if len(figure.series) > 1 else ()
        found += [Reading("value", (name, *own)) for name in figure.categories]
        found += [Reading("total", own)] if own else []
        for name, best in (("largest", max(row.values)), ("smallest", min(row.values))):
            if row.values.count(best) == 1:
                found.append(Reading(name, own))
    return tuple(found)


def _words(figure: BarChart) -> str:
    said = f"A bar chart of {figure.title}" if figure.title else "A bar chart"
    out = [f"{said} has bars for {', '.join(figure.categories)}."]
    top = max(value for row in figure.series for value in row.values)
    high = -(-top // figure.scale) * figure.scale
    counts = f" shows {figure.counts} and" if figure.counts else ""
    cut = f", with {figure.between} equal steps from one number to the next"
    out.append(
        f"The axis{counts} is numbered from 0 to {high} in steps of {figure.scale}"
        f"{cut if figure.between > 1 else ''}."
    )
    for row in figure.series:
        of = f" for {row.name}" if len(figure.series) > 1 else ""
        for name, value in zip(figure.categories, row.values, strict=True):
            if not value:
                # Of nothing no bar is drawn, and so it is of one that a question calls missing.
                out.append(f"No bar is drawn for {name}{of}.")
                continue
            reach = step_words(value, figure.scale, figure.between)
            out.append(f"The bar of {name}{of} ends {reach}.")
    return " ".join(out)


def _printed(figure: BarChart) -> tuple[t.Node, ...]:
    top = max(value for row in figure.series for value in row.values)
    numbers = [t.Int(n) for n in range(0, top + figure.scale, figure.scale)]
    names = [*figure.categories, *(row.name for row in figure.series if row.name)]
    return (*numbers, *map(t.Label, names))


def _shown(figure: BarChart) -> Shown:
    series = tuple(row.name for row in figure.series) if len(figure.series) > 1 else ()
    counted = figure.counts or figure.title
    return Shown(figure.categories, series, counted, figure.title, SORTS)


def _missing(figure: BarChart) -> Missing:
    if len(figure.series) > 1:
        raise FigureError("of two series it is not said which bar is missing")
    return Missing(figure.categories, figure.counts or figure.title)


BAR_CHART = register_figure(
    FigureKind(
        "bar chart",
        BarChart,
        fault=_fault,
        drawing=bar_chart_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        wordings=(*missing_wordings(BAR, _missing), counts_wording(_shown)),
    )
)
