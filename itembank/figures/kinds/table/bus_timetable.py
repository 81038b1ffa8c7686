"""A printed timetable: a row for each stop, a column for each bus, times by the 24-hour clock."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from itembank.data_class import dataclass
from itembank.figures.figure import (
    Figure,
    FigureError,
    FigureKind,
    Reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.chart.chart_names import folded, names_fault
from itembank.figures.kinds.table.bus_timetable_wordings import WORDINGS, clock_in
from itembank.figures.kinds.table.table_cells import NARROW, table_drawing, table_width
from itembank.notation import tree as t
from itembank.notation.clock import clock_seconds
from itembank.notation.words import words as said

MOST_BUSES = 6
WIDEST_TABLE = Fraction(33, 2)
NO_STOP = "–"
"""What stands where a bus goes past without a stop (common practice of printed timetables)."""


@dataclass(frozen=True, slots=True)
class Timetable(Figure):
    """Stops in the order of the journey, each with the time of every bus; None where one goes past.

    >>> Timetable((("Depot", (t.ClockTime(8, 15),)), ("Pool", (t.ClockTime(8, 40),)))).stops[0][0]
    'Depot'
    """

    stops: tuple[tuple[str, tuple[t.Node | None, ...]], ...]


def _fault(figure: Timetable) -> str:
    if found := names_fault([name for name, _ in figure.stops], "stop"):
        return found
    count = len(figure.stops[0][1])
    if not 1 <= count <= MOST_BUSES:
        return f"it may have 1 to {MOST_BUSES} buses"
    for name, times in figure.stops:
        if len(times) != count:
            return f"each stop has a time for each bus, or nothing: {name} has not"
        for time in times:
            if time is None:
                continue
            if not isinstance(time, t.ClockTime) or time.half or time.minute is None:
                return "its times are by the 24-hour clock, as 08:15"
            if not (0 <= time.hour < 24 and 0 <= time.minute < 60):
                return "its times are from 00:00 to 23:59"
    for bus in _buses(figure):
        if len(bus) < 2:
            return "each bus has two stops or more"
        if any(a >= b for a, b in pairwise(bus.values())):
            return "each bus comes later to each stop than to the one before, on the same day"
    for name, times in figure.stops:
        along = [_minutes(time) for time in times if time is not None]
        if any(a >= b for a, b in pairwise(along)):
            return f"the buses stand in the order of their times: at {name} they do not"
    if table_width(_shown(figure), NARROW) > WIDEST_TABLE:
        return "its names and times take too much room: shorten the names, or leave out a bus"
    return ""


def _minutes(time: t.Node) -> int:
    if not isinstance(time, t.ClockTime):
        raise FigureError("it has no time there")
    return clock_seconds(time) // 60


def _buses(figure: Timetable) -> list[dict[str, int]]:
    """Return for each bus the minutes after midnight at each stop that it makes, in order."""
    columns = zip(*(times for _, times in figure.stops), strict=True)
    names = [folded(name) for name, _ in figure.stops]
    return [
        {name: _minutes(time) for name, time in zip(names, column, strict=True) if time is not None}
        for column in columns
    ]


def _shown(figure: Timetable) -> list[list[str | t.Node | None]]:
    return [
        [name, *(NO_STOP if time is None else time for time in times)]
        for name, times in figure.stops
    ]


def _read(figure: Timetable, reading: Reading) -> t.Node:
    """Return the time that is asked for.

    ``time``: when the bus of a time at one stop is at another. ``latest``: when the last bus
    leaves a stop that is at another by a time. ``next``: when the first bus from a time on leaves
    a stop for another, and ``arrival``: when it is there.
    """
    try:
        start, second, third = reading.of
    except ValueError:
        raise not_shown(reading) from None
    end, told = (third, second) if reading.name == "time" else (second, third)
    start, end = folded(start), folded(end)
    names = [folded(name) for name, _ in figure.stops]
    if start not in names or end not in names:
        raise not_shown(reading)
    if names.index(start) >= names.index(end):
        raise FigureError("its buses go the other way")
    at = _minutes(clock_in(told))
    buses = [bus for bus in _buses(figure) if start in bus and end in bus]
    found: list[int] = []
    if reading.name == "time":
        found = [bus[end] for bus in buses if bus[start] == at]
    elif reading.name == "latest":
        found = [bus[start] for bus in buses if bus[end] <= at][-1:]
    elif reading.name in ("next", "arrival"):
        if any(bus[start] == at for bus in buses):
            raise FigureError("a bus leaves at that very time, so that it is not clear which")
        later = [bus for bus in buses if bus[start] > at][:1]
        found = [bus[start if reading.name == "next" else end] for bus in later]
    else:
        raise not_shown(reading)
    if not found:
        raise FigureError(f"it has no such bus from {start} to {end}: {told}")
    return t.ClockTime(*divmod(found[0], 60))


def _readings(figure: Timetable) -> tuple[Reading, ...]:
    """Return what holds between two stops: at every time, and a minute after and before it.

    So no bus can stand in a drawing that the data has not.
    """
    names = [name for name, _ in figure.stops]
    found: list[Reading] = []
    for place, start in enumerate(names):
        for end in names[place + 1 :]:
            pairs = [
                (bus[folded(start)], bus[folded(end)])
                for bus in _buses(figure)
                if folded(start) in bus and folded(end) in bus
            ]
            leaving = [left for left, _ in pairs]
            found += [Reading("time", (start, _clock(left), end)) for left in leaving]
            for _, there in pairs:
                found.append(Reading("latest", (start, end, _clock(there))))
            for _, there in pairs[1:]:
                found.append(Reading("latest", (start, end, _clock(there - 1))))
            # After the last there is no bus to wait for.
            moments = {left - 1 for left in leaving if left} | {left + 1 for left in leaving[:-1]}
            for at in sorted(moments - {*leaving}):
                found.append(Reading("next", (start, end, _clock(at))))
                found.append(Reading("arrival", (start, end, _clock(at))))
    return tuple(found)


def _clock(minutes: int) -> str:
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def _words(figure: Timetable) -> str:
    out = ["A timetable has a row for each stop and a column for each bus."]
    for name, times in figure.stops:
        shown = ["no stop" if time is None else said(time) for time in times]
        out.append(f"{name}: {', '.join(shown)}.")
    return " ".join(out)


TIMETABLE = register_figure(
    FigureKind(
        "bus timetable",
        Timetable,
        fault=_fault,
        bears={"stops": (t.ClockTime,)},
        drawing=lambda figure: table_drawing(_shown(figure), False, NARROW),
        words=_words,
        printed=lambda figure: tuple(
            time for _, times in figure.stops for time in times if time is not None
        ),
        readings=_readings,
        read=_read,
        wordings=WORDINGS,
    )
)
