"""Times of day and lengths of time as they are written, from minutes; and what they are told of."""

from __future__ import annotations

from typing import NamedTuple

from itembank.notation import tree as t

DAY = 24 * 60
"""The minutes of a day."""
NOON = 12 * 60


def clock(minutes: int, halves: bool = False) -> t.ClockTime:
    """Return the time so many minutes after midnight, by the 24-hour or the 12-hour clock.

    >>> from itembank.notation.line import line
    >>> line(clock(875)), line(clock(875, True)), line(clock(DAY + 5))
    ('14:35', '2:35 pm', '00:05')
    """
    hour, minute = divmod(minutes % DAY, 60)
    if not halves:
        return t.ClockTime(hour, minute)
    return t.ClockTime((hour - 1) % 12 + 1, minute, "pm" if hour >= 12 else "am")


def at_24(minutes: int) -> str:
    """Return a time of day as a sentence tells it, by the 24-hour clock.

    >>> at_24(545), at_24(DAY + 5)
    ('09:05', '00:05')
    """
    return f"{minutes // 60 % 24:02d}:{minutes % 60:02d}"


def length(minutes: int) -> t.Node:
    """Return a length of time in hours and minutes, as far as there are any.

    >>> from itembank.notation.line import line
    >>> line(length(45)), line(length(125)), line(length(180))
    ('45 min', '2 h 5 min', '3 h')
    """
    hours, rest = divmod(minutes, 60)
    if not hours:
        return t.Quantity(t.Int(rest), "min")
    if not rest:
        return t.Quantity(t.Int(hours), "h")
    return t.MixedUnits((t.Quantity(t.Int(hours), "h"), t.Quantity(t.Int(rest), "min")))


class Event(NamedTuple):
    """Something that begins, lasts and ends: the sentences for each, and the questions.

    `first` and `last` are the hours between which it is likely to begin, `longest` the minutes it
    lasts at most (plausible, no source).
    """

    begins: str
    ends: str
    lasts: str
    lasted: str
    both: str
    when_over: str
    when_begun: str
    how_long: str
    first: int
    last: int
    longest: int


def _ride(who: str, start: str, end: str, longest: int, first: int = 6, last: int = 23) -> Event:
    return Event(
        f"{who} leaves {start} at {{a}}. ",
        f"{who} arrives at {end} at {{b}}. ",
        "The journey takes {d}. ",
        "The journey took {d}. ",
        f"{who} leaves {start} at {{a}} and arrives at {end} at {{b}}. ",
        "At what time does it arrive?",
        "At what time did it leave?",
        "How long does the journey take?",
        first,
        last,
        longest,
    )


def _meeting(what: str, longest: int, first: int = 8, last: int = 20) -> Event:
    return Event(
        f"{what} starts at {{a}}. ",
        f"{what} ends at {{b}}. ",
        "It lasts {d}. ",
        "It lasted {d}. ",
        f"{what} starts at {{a}} and ends at {{b}}. ",
        "At what time does it end?",
        "At what time did it start?",
        "How long does it last?",
        first,
        last,
        longest,
    )


EVENTS = (
    _ride("A bus", "the depot", "the pool", 90),
    _ride("A coach", "the depot", "the coast", 360),
    _ride("A van", "the market garden", "the market", 180, 4, 20),
    _ride("A train", "the junction", "the city", 360),
    _ride("A ferry", "the harbour", "the island", 420),
    _ride("A group of walkers", "the station", "the farm", 300, 8, 15),
    _meeting("A swimming lesson", 75),
    _meeting("A gala", 300, 9, 19),
    _meeting("A concert", 180, 12, 22),
    _meeting("A film", 180, 10, 22),
    _meeting("A night shift at the depot", 600, 18, 23),
    _meeting("A plant sale", 420, 8, 15),
    _meeting("A rehearsal", 150),
)
