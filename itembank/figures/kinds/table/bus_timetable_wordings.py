"""The ways to ask about a timetable, and what each asks for."""

from __future__ import annotations

import re

from itembank.figures.figure import Asked, Figure, FigureError, Reading, Wording
from itembank.notation import tree as t

_STOP = r"(?:the )?(?P<{}>[A-Za-z0-9][A-Za-z0-9 ’'-]{{0,13}}?)"
_A, _B = _STOP.format("a"), _STOP.format("b")
_TIME = r"\{(?P<at>\d\d?:\d\d(?: [ap]m)?|\d\d? [ap]m)\}"
_SPAN = r"\{(?P<span>\d{1,2}) min\}"
_AT = "(?:at )?what time"
_COME = rf"if you (?:get|come) to {_A} at {_TIME}"

_CLOCK = re.compile(r"(\d\d?)(?::(\d\d))?(?: ([ap]m))?")


def clock_in(text: str) -> t.ClockTime:
    """Return the time of day that a text says, by the 24-hour or the 12-hour clock.

    Raises
    ------
    FigureError
        If it is none.

    >>> clock_in("08:15"), clock_in("2:30 pm")
    (ClockTime(hour=8, minute=15, half=''), ClockTime(hour=2, minute=30, half='pm'))
    """
    found = _CLOCK.fullmatch(text)
    if found is None or not (found[2] or found[3]):
        raise FigureError(f"‘{text}’ is no time of day")
    minute = None if found[2] is None else int(found[2])
    return t.ClockTime(int(found[1]), minute, found[3] or "")  # type: ignore[arg-type]


def _time(figure: Figure, found: re.Match[str]) -> Asked:
    return Asked(t.Sym("r"), (("r", Reading("time", (found["a"], found["at"], found["b"]))),))


def _late(figure: Figure, found: re.Match[str]) -> Asked:
    what = _time(figure, found)
    return Asked(t.add(what.target, _span(found)), what.readings)


def _span(found: re.Match[str]) -> t.Quantity:
    return t.Quantity(t.Int(int(found["span"])), "min")


def _takes(figure: Figure, found: re.Match[str]) -> Asked:
    return Asked(t.sub(t.Sym("r"), clock_in(found["at"])), _time(figure, found).readings)


def _by(name: str, found: re.Match[str]) -> tuple[tuple[str, Reading], ...]:
    return (("r", Reading(name, (found["a"], found["b"], found["at"]))),)


def _latest(figure: Figure, found: re.Match[str]) -> Asked:
    return Asked(t.Sym("r"), _by("latest", found))


def _latest_from_home(figure: Figure, found: re.Match[str]) -> Asked:
    return Asked(t.sub(t.Sym("r"), _span(found)), _by("latest", found))


def _wait(figure: Figure, found: re.Match[str]) -> Asked:
    return Asked(t.sub(t.Sym("r"), clock_in(found["at"])), _by("next", found))


def _arrival(figure: Figure, found: re.Match[str]) -> Asked:
    return Asked(t.Sym("r"), _by("arrival", found))


def _until_there(figure: Figure, found: re.Match[str]) -> Asked:
    return Asked(t.sub(t.Sym("r"), clock_in(found["at"])), _by("arrival", found))


WORDINGS = (
    Wording(
        rf"{_AT} does the {_TIME} bus from {_A} (?:arrive at|get to|reach) {_B}",
        _time,
    ),
    Wording(rf"how long does the {_TIME} bus from {_A} take to (?:get to|reach) {_B}", _takes),
    Wording(
        rf"what is the latest time (?:that )?you can leave {_A} by bus to be at {_B} by {_TIME}",
        _latest,
    ),
    Wording(rf"{_COME}, how long do you wait for the next bus to {_B}", _wait),
    Wording(
        rf"{_COME} and take the next bus, {_AT} do you (?:arrive at|get to|reach) {_B}", _arrival
    ),
    Wording(
        rf"{_COME} and take the next bus, how long is it from then until you "
        rf"(?:arrive at|get to|reach) {_B}",
        _until_there,
    ),
    Wording(
        rf"the {_TIME} bus from {_A} is {_SPAN} late all the way, so {_AT} does it "
        rf"(?:arrive at|get to|reach) {_B}",
        _late,
    ),
    Wording(
        rf"if it takes you {_SPAN} to walk to {_A}, what is the latest time (?:that )?you can "
        rf"leave home to be at {_B} by {_TIME}",
        _latest_from_home,
    ),
)
"""Each with a time of day, and names of two stops."""
