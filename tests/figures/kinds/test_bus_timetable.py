"""Timetables: read from their words alone, wordings, faults, and the lies they are caught in."""

from __future__ import annotations

import re
from datetime import datetime, timedelta

import pytest

from itembank.figures.drawing import Text
from itembank.figures.figure import FigureError, Reading, drawn, fault, kind_of, read, words
from itembank.figures.kinds.table.bus_timetable import Timetable
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line, shown_line
from itembank.notation.parse import parse, parse_written
from itembank.proof.measured.measure import as_measured, measured
from tests.depth import cases, whole
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds
from tests.figures.lies import found_out, moved, relabelled, swapped, without


def _answer(name: str, pairs: list[tuple[str, str]], at: str) -> str:
    """Return the answer by comparing texts: times written alike stand in the order of the day."""
    if name == "time":
        return dict(pairs)[at]
    if name == "latest":
        return max(left for left, there in pairs if there <= at)
    soonest = min(pair for pair in pairs if pair[0] > at)
    return soonest[name == "arrival"]


def clock(text: str) -> t.Node:
    return parse_written(text)


def table(**stops: str) -> Timetable:
    """Return a timetable from its rows as they are printed."""
    return Timetable(
        tuple(
            (name.replace("_", " "), tuple(None if at == "-" else clock(at) for at in row.split()))
            for name, row in stops.items()
        )
    )


BUSES = table(
    Depot="08:15 09:20 10:40",
    Mill_Lane="08:27 - 10:52",
    Market="08:41 09:40 11:04",
    Pool="08:55 09:56 11:20",
)


def _told(text: str) -> dict[str, list[str | None]]:
    """Return the rows that words tell, times as by the 24-hour clock."""
    rows = {}
    for name, held in re.findall(r"(?:^|\. )([A-Z][\w ]*): ([^.]+)", text):
        rows[name] = []
        for word in held.split(", "):
            shown = word.removeprefix("the time ").replace("oh ", "").replace("hundred", "00")
            rows[name].append(
                None if word == "no stop" else "{:02d}:{:02d}".format(*map(int, shown.split()))
            )
    return rows


@whole
@holds(TOLD, "bus timetable")
def test_every_reading_is_told_by_the_words_alone():
    tried, count = 0, cases(20, 60, 60)
    for figure in examples("bus timetable", count, seed=5):
        rows = _told(words(figure))
        for reading in kind_of(figure).readings(figure):
            start, end = reading.of[::2] if reading.name == "time" else reading.of[:2]
            at = reading.of[1 if reading.name == "time" else 2]
            pairs = [(a, b) for a, b in zip(rows[start], rows[end], strict=True) if a and b]
            assert line(read(figure, reading)) == line(measured(figure, reading))
            assert line(read(figure, reading)) == _answer(reading.name, pairs, at)
            tried += 1
    assert tried > 400 / 60 * count


@pytest.mark.parametrize(
    ("prompt", "value"),
    [
        ("At what time does the {08:15} bus from Depot arrive at Pool?", "08:55"),
        ("What time does the {09:20} bus from the depot get to the market?", "09:40"),
        ("How long does the {08:41} bus from Market take to get to Pool?", "14 min"),
        ("What is the latest time you can leave Depot by bus to be at Pool by {10:30}?", "09:20"),
        (
            "What is the latest time you can leave Mill Lane by bus to be at Pool by {9 "
            "am}?",
            "08:27",
        ),
        (
            "What is the latest time that you can leave Depot by bus to be at Pool by {9:56 "
            "am}?",
            "09:20",
        ),
        (
            "If you get to Depot at {09:05}, how long do you wait for the next bus to "
            "Market?",
            "15 min",
        ),
        (
            "If you get to Depot at {09:05}, how long do you wait for the next bus to Mill "
            "Lane?",
            "95 min",
        ),
        (
            "If you come to Depot at {9:05 am} and take the next bus, what time do you reach "
            "Pool?",
            "09:56",
        ),
        (
            "If you get to Depot at {09:05} and take the next bus, how long is it from then until "
            "you arrive at Pool?",
            "51 min",
        ),
        (
            "The {08:15} bus from Depot is {9 min} late all the way, so at what time does it "
            "reach Pool?",
            "09:04",
        ),
        (
            "If it takes you {8 min} to walk to Market, what is the latest time you can leave home "
            "to be at Pool by {11:30}?",
            "10:56",
        ),
    ],
)  # fmt: skip
def test_ways_to_ask(prompt, value):
    from itembank.notation.value import exact

    runs = tuple(
        clock(run) if ":" in run else parse(run) if n % 2 else run
        for n, run in enumerate(re.split(r"[{}]", prompt))
    )
    ask = of_figure(BUSES, runs)
    day = 24 * 3600
    wanted = exact(clock(value) if ":" in value else parse(value))
    for target in (as_find(ask).target, as_measured(ask).target):
        assert _seconds(target) % day == wanted, shown_line(target)


def _seconds(node: t.Node) -> int:
    """Return what a sum of times comes to, by the standard library's calendar."""
    total = timedelta()
    for sign, part in [("+", node)] if not isinstance(node, t.Sum) else [
        ("+", node.first), *node.rest
    ]:  # fmt: skip
        text = line(part)
        if ":" in text:
            shown = datetime.strptime(text, "%I:%M %p" if "m" in text else "%H:%M")
            span = timedelta(hours=shown.hour, minutes=shown.minute)
        else:
            span = timedelta(minutes=int(text.removesuffix(" min")))
        total += span if sign == "+" else -span
    return int(total.total_seconds())


@pytest.mark.parametrize(
    ("prompt", "said"),
    [
        ("At what time does the {08:16} bus from Depot arrive at Pool?", "no such bus"),
        ("At what time does the {09:20} bus from Depot arrive at Mill Lane?", "no such bus"),
        ("At what time does the {08:55} bus from Pool arrive at Depot?", "the other way"),
        ("At what time does the {08:15} bus from Depot arrive at Harbour?", "does not show"),
        ("If you get to Depot at {09:20}, how long do you wait for the next bus to Pool?", "which"),
        (
            "If you get to Depot at {11:20}, how long do you wait for the next bus to "
            "Pool?",
            "no such",
        ),
        ("At what time does the {08:15} bus from Depot not arrive at Pool?", "understood|show"),
        ("At what time does no {08:15} bus from Depot arrive at Pool?", "understood"),
        (
            "What is the latest time you can leave Depot by bike to be at Pool by "
            "{10:30}?",
            "underst",
        ),
        ("How long does the {08:15} bus from Depot stop at Market?", "understood"),
    ],
)  # fmt: skip
def test_what_it_does_not_show_is_refused(prompt, said):
    runs = tuple(clock(run) if n % 2 else run for n, run in enumerate(re.split(r"[{}]", prompt)))
    with pytest.raises(FigureError, match=said):
        of_figure(BUSES, runs)


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (table(Depot="08:15"), "2 to 8 stops"),
        (table(Depot="08:15", Pool=""), "each stop has a time"),
        (table(Depot="08:15", Pool="08:15"), "later to each stop"),
        (table(Depot="08:15 08:10", Pool="08:30 08:40"), "at Depot they do not"),
        (table(Depot="08:15 08:20", Pool="08:50 08:40"), "at Pool they do not"),
        (table(Depot="08:15 -", Pool="08:50 08:55"), "two stops or more"),
        (table(Depot="08:15 " * 9, Pool="08:50 " * 9), "1 to 6 buses"),
        (Timetable((("Depot", (t.Int(8),)), ("Pool", (t.Int(9),)))), "24-hour clock"),
        (
            Timetable((("Park", (t.ClockTime(8, 5, "am"),)), ("Pool", (t.ClockTime(9, 5, "am"),)))),
            "24-hour clock",
        ),
        (Timetable((("Park", (t.ClockTime(25, 5),)), ("Pool", (t.ClockTime(26, 5),)))), "to 23:59"),
    ],
)
def test_a_timetable_that_no_bus_could_keep_is_refused(figure, said):
    assert said in fault(figure)


LIES = {
    "a time is changed": lambda: relabelled(BUSES, "cell", clock("08:56"), 9),
    "two stops have each other's names": lambda: swapped(BUSES, "head", 1, 2),
    "a time is missing": lambda: without(BUSES, "cell", 5),
    "a bus stops where it goes past": lambda: relabelled(BUSES, "cell", clock("09:30"), 4),
    "a bus goes past where it stops": lambda: relabelled(BUSES, "cell", "–", 3),
    "a line is missing": lambda: without(BUSES, "column line", 2),
    "a line has moved": lambda: moved(BUSES, "row line", 0, -1, 2),
}


@pytest.mark.parametrize("lie", LIES)
@holds(LIED, "bus timetable")
def test_a_planted_lie_is_found_out(lie):
    assert not found_out(BUSES, drawn(BUSES))
    assert found_out(BUSES, LIES[lie]())


def test_only_the_stops_are_in_bold():
    bold = [mark.content for mark in drawn(BUSES).marks if isinstance(mark, Text) and mark.bold]
    assert bold == ["Depot", "Mill Lane", "Market", "Pool"]


def test_a_bus_that_goes_past_is_no_next_bus():
    asked = Reading("next", ("Mill Lane", "Pool", "08:30"))
    assert line(read(BUSES, asked)) == line(measured(BUSES, asked)) == "10:52"
