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
    r"(?:at )?(\d\d?)(?: ?[.:;] ?|[h -]|(?<=\d\d))([0-5]\d)(?::00)?(?: ?(?:h|hrs?|hours))?",
    re.IGNORECASE,
)
_WITH_HALF = late(
    r"(?:at )?(\d\d?)(?:(?: ?[.:;] ?|[- ])?([0-5]\d)(?::00)?)? ?([ap])\.?m\.?", re.IGNORECASE
)
_SECONDS = late(r"\d\d?:[0-5]\d:[0-5]\d(?: ?[ap]\.?m\.?)?", re.IGNORECASE)
# Words for numbers are digits by now: half past eight is 1/2 past 8.
_PAST = late(
    r"(?:at |about )*(?P<part>1/2|1/4|[1-9]|[1-5]\d)(?: ?min)?[ -](?P<side>past|after|to|before)"
    r"[ -](?P<hour>1[0-2]|[1-9])(?: ?o['’]? ?clock)?"
    r"(?P<when> ?[ap]\.?m\.?| in the (?:morning|afternoon|evening)| at night)?",
    re.IGNORECASE,
)
_OCLOCK = late(
    r"(?:at |about )*(?P<hour>1[0-2]|[1-9])(?:[.:](?P<minute>[0-5]\d))?(?:(?P<full> ?o['’]? ?clock)"
    r"(?P<when> ?[ap]\.?m\.?| in the (?:morning|afternoon|evening)| at night)?"
    r"|(?P<then> in the (?:morning|afternoon|evening)| at night))",
    re.IGNORECASE,
)
_NOON = late(r"(?:at )?(?:12 )?(?:(?P<noon>noon|mid-?day)|mid-?night)", re.IGNORECASE)
_AND = late(r"(?<=[A-Za-z]),? *(?:\band\b|&|,) *(?=\d)", re.IGNORECASE)
_MINUTES_LEFT_OUT = late(r"(\d+ ?(?:h|hrs?|hours?)) ?(\d+)", re.IGNORECASE)
_HOURS = late(r"^(\d{1,2}) ?h(?:rs?|ours?)? ?([0-5]\d)(?: ?m(?:ins?)?)?$", re.IGNORECASE)
_M_FOR_MINUTES = late(r"(\d) ?m$", re.IGNORECASE)
_BARE = late(r"(?:[01]?\d|2[0-4])|\d[0-5]\d")
_COLON = late(r"\d+:\d\d(?::\d\d)?")


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
        plain = in_words(plain, key)
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


def in_words(plain: str, key: t.Node) -> str:
    """Return a time told in words as a time of the clock; any other answer as it is.

    One that may be of the morning or of the evening is taken for the morning where the key is
    of it, as 8:30 is, and stays in words else.

    >>> from itembank.notation import parse_written
    >>> morning, evening = parse_written("08:30"), parse_written("20:30")
    >>> in_words("1/2 past 8", morning), in_words("1/2 past 8", evening)
    ('08:30', '1/2 past 8')
    >>> in_words("1/4 to 9 pm", evening), in_words("8 o'clock in the evening", evening)
    ('8:45 pm', '8:00 pm')
    >>> in_words("5 to 12 pm", evening), in_words("noon", evening), in_words("midnight", evening)
    ('5 to 12 pm', '12:00', '00:00')
    """
    if found := _NOON.fullmatch(plain):
        return "12:00" if found["noon"] else "00:00"
    if found := _PAST.fullmatch(plain):
        part, before = found["part"], found["side"].lower() in ("to", "before")
        minutes = {"1/2": 30, "1/4": 15}.get(part) or int(part)
        when = (found["when"] or "").lower()
    elif found := _OCLOCK.fullmatch(plain):
        part, before, minutes = "", False, int(found["minute"] or 0)
        when = (found["when"] or found["then"] or "").lower()
    else:
        return plain
    # Nobody says half to nine; 5 to 12 pm and 12 at night have their half of the day in doubt.
    hour, odd = int(found["hour"]), before and part == "1/2"
    spoken = "in the" in when or "night" in when
    if odd or (hour == 12 and (spoken or (before and when))) or not _fits_half(hour, when):
        return plain
    if before:
        hour, minutes = hour - 1 or 12, 60 - minutes
    if when:
        half = "am" if (when.strip()[0] == "a" and not spoken) or "morning" in when else "pm"
        return f"{hour}:{minutes:02d} {half}"
    if hour == 12 and isinstance(key, t.ClockTime) and key.hour == 12 and not key.half:
        return f"12:{minutes:02d}"
    return f"{hour:02d}:{minutes:02d}" if _of_morning(key) and hour < 12 else plain


def _fits_half(hour: int, when: str) -> bool:
    """Tell whether the hour is one of that part of the day: 3 at night is of the morning."""
    hours = {"afternoon": range(1, 7), "evening": range(4, 12), "night": range(7, 12)}
    return all(hour in allowed for word, allowed in hours.items() if word in when)


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
    if not is_time(key):
        return ""
    if _BARE.fullmatch(plain):
        return TIME_IN_FULL
    if _SECONDS.fullmatch(plain):
        return NO_SECONDS
    return WHICH_HALF if _PAST.fullmatch(plain) or _OCLOCK.fullmatch(plain) else ""


NO_SECONDS = "A time of day has hours and minutes here: leave the seconds out."
WHICH_HALF = "That time comes twice a day: write am or pm after it, or as 09:05 or 21:05."
TIME_IN_FULL = "A time of day has hours and minutes: write it in full, as in 09:05 or 9:05 am."
