"""Times of day and lengths of time as pupils type them, for keys that are one.

A dot, or nothing, for the colon (15.25, 1525), *and* between hours and minutes, and the last
unit left out (3h25) are common in English classrooms; no source.
"""

from __future__ import annotations

import re

from itembank.notation import tree as t
from itembank.notation.clock import is_time
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late

_CLOCK = late(
    r"(?:at )?(\d\d?)(?:[.:;h -]|(?<=\d\d))([0-5]\d)(?: ?(?:h|hrs?|hours))?", re.IGNORECASE
)
_WITH_HALF = late(r"(?:at )?(\d\d?)[.:;-]?([0-5]\d)? ?([ap])\.?m\.?", re.IGNORECASE)
_AND = late(r"(?<=[A-Za-z]),? *(?:\band\b|&|,) *(?=\d)", re.IGNORECASE)
_MINUTES_LEFT_OUT = late(r"(\d+ ?(?:h|hrs?|hours?)) ?(\d+)", re.IGNORECASE)
_HOURS = late(r"^(\d{1,2}) ?h(?:rs?|ours?)? ?([0-5]\d)(?: ?m(?:ins?)?)?$", re.IGNORECASE)
_M_FOR_MINUTES = late(r"(\d) ?m$", re.IGNORECASE)
_BARE = late(r"(?:[01]?\d|2[0-4])|\d[0-5]\d")
_COLON = late(r"\d+:\d\d")


def is_length_of_time(key: t.Node) -> bool:
    """Tell whether a key is a length of time, such as 1 h 45 min or 105 min."""
    first = key.parts[0] if isinstance(key, t.MixedUnits) else key
    return isinstance(first, t.Quantity) and UNITS[first.unit].dimension == "time"


def as_time(plain: str, key: t.Node) -> str:
    """Return an answer with what it means as a time written out; any other answer as it is.

    >>> from itembank.notation import parse_written
    >>> key = parse_written("15:25")
    >>> [as_time(text, key) for text in ("15.25", "1525", "3.25pm", "3 pm", "25")]
    ['15:25', '15:25', '3:25 pm', '3 pm', '25']
    >>> as_time("0:30", key), as_time("8:30", key), as_time("8:30", parse_written("09:45"))
    ('00:30', '8:30', '08:30')
    >>> as_time("3 h and 25 min", parse_written("3 h 25 min"))
    '3 h 25 min'
    >>> as_time("3h25", parse_written("205 min")), as_time("205m", parse_written("205 min"))
    ('3h25 min', '205 min')
    """
    # Only for a key that is a time: 15.25 is a decimal everywhere else.
    if is_time(key):
        if found := _WITH_HALF.fullmatch(plain):
            hour, minute, half = found[1], found[2], found[3].lower()
            return f"{hour}:{minute} {half}m" if minute else f"{hour} {half}m"
        if found := _CLOCK.fullmatch(plain):
            # 8:30 for 08:30 leaves out a nought; for 20:30 it may be meant by the other clock.
            nought = len(found[1]) == 1 and (found[1] == "0" or _of_morning(key))
            return f"{'0' if nought else ''}{found[1]}:{found[2]}"
        return plain
    if isinstance(key, t.MixedUnits) or is_length_of_time(key):
        plain = _AND.sub(" ", plain)
    if is_length_of_time(key):
        plain = _M_FOR_MINUTES.sub(r"\1 min", plain)
    if is_length_of_time(key) and (found := _MINUTES_LEFT_OUT.fullmatch(plain)):
        return f"{found[1]}{found[2]} min" if " " not in plain else f"{found[1]} {found[2]} min"
    return plain


def _of_morning(key: t.Node) -> bool:
    return isinstance(key, t.ClockTime) and not key.half and key.hour < 12


def with_minutes(plain: str) -> str:
    """Return hours with minutes that have no unit, or a short one, with it: 1h30 as 1 h 30 min.

    >>> [with_minutes(text) for text in ("1h30", "1 hr 30m", "1h", "30")]
    ['1 h 30 min', '1 h 30 min', '1h', '30']
    """
    return _HOURS.sub(r"\1 h \2 min", plain)


def time_unreadable(plain: str, key: t.Node) -> str:
    """Return why an answer to a time cannot be read, or ``""``: 3:25 is no length, 8 no time.

    >>> from itembank.notation import parse_written
    >>> time_unreadable("3:25", parse_written("3 h 25 min"))
    '3:25 is a time of day: give hours and minutes with their units, as in 2 h 35 min.'
    """
    if is_length_of_time(key) and _COLON.fullmatch(plain):
        return (
            f"{plain} is a time of day: give hours and minutes with their units, as in 2 h 35 min."
        )
    if is_time(key) and _BARE.fullmatch(plain):
        return TIME_IN_FULL
    return ""


TIME_IN_FULL = "A time of day has hours and minutes: write it in full, as in 09:05 or 9:05 am."
