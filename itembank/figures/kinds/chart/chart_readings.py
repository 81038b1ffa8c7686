"""What is read from a chart's cells: a value, a total, and the name of the largest or smallest.

A cell is named by its category, or by its category and its series.

>>> cells = {("Bus",): 12, ("Walk",): 8}
>>> chart_read(cells, Reading("total")), chart_read(cells, Reading("largest"))
(Int(n=20), Label(text='Bus'))
"""

from __future__ import annotations

from collections.abc import Mapping

from itembank.figures.figure import FigureError, Reading, not_shown
from itembank.notation import tree as t

Cells = Mapping[tuple[str, ...], int]


def chart_read(cells: Cells, reading: Reading) -> t.Node:
    """Return a reading of a chart; raises FigureError where it does not show it."""
    of = tuple(name.casefold() for name in reading.of)
    if reading.name == "value":
        for cell, value in cells.items():
            if tuple(name.casefold() for name in cell) == of:
                return t.Int(value)
        raise not_shown(reading)
    among = {cell: value for cell, value in cells.items() if _in_series(cell, of)}
    if not among or len(of) > 1:
        raise not_shown(reading)
    if reading.name == "total":
        return t.Int(sum(among.values()))
    if reading.name in ("largest", "smallest") and len({cell[0] for cell in among}) == len(among):
        best = (max if reading.name == "largest" else min)(among.values())
        names = [cell[0] for cell, value in among.items() if value == best]
        if len(names) > 1:
            raise FigureError(
                f"‘{names[0]}’ and ‘{names[1]}’ are equal: neither is the {reading.name}"
            )
        return t.Label(names[0])
    raise not_shown(reading)


def _in_series(cell: tuple[str, ...], of: tuple[str, ...]) -> bool:
    return not of or (len(cell) == 2 and cell[1].casefold() == of[0])


def chart_readings(cells: Cells) -> tuple[Reading, ...]:
    """Return all that can be read from a chart."""
    found = [Reading("value", cell) for cell in cells]
    series: list[tuple[str, ...]] = list(
        dict.fromkeys((cell[1],) for cell in cells if len(cell) == 2)
    )
    found += [Reading("total", of) for of in ((), *series)]
    for which in ("largest", "smallest"):
        for of in series or [()]:
            reading = Reading(which, of)
            try:
                chart_read(cells, reading)
            except FigureError:
                continue
            found.append(reading)
    return tuple(found)
