"""Temperatures that rise and fall, and how much warmer one place is than another."""

from __future__ import annotations

import re

from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_DEGREES = r"(?: ?°C| ?°| degrees(?: celsius)?)?"

_AT_FIRST = late(rf"\b(?:is|was|stands at|stood at|reads|read|shows) ({SLOT}){_DEGREES}", re.I)

_MOVES = late(
    rf"\b(?P<up>ris(?:es|en)|rose|gone up|goes up|went up|increased|increases|warms up)(?: by)? (?P<u>{SLOT})|"
    rf"\b(?P<down>falls?|fell|fallen|drop(?:s|ped)?|gone down|goes down|went down|cools(?: down)?|decreased|decreases)(?: by)? (?P<d>{SLOT})",
    re.I,
)

_WHICH_IS = late(
    rf"({SLOT}){_DEGREES}[^.{{}}]*?(?:, which is|, that is|,) ({SLOT}){_DEGREES} (?P<way>warmer|hotter|higher|colder|cooler|lower) than (?P<then>at \w+|in \w+|on \w+|the \w+|yesterday)",
    re.I,
)

_THE_OTHER = late(
    rf"\b(?:is|was) ({SLOT}){_DEGREES} (?P<way>warmer|hotter|higher|colder|cooler|lower)\b(?! than (?:at|it was))",
    re.I,
)


def temperature_reading(tale: Tale) -> Reading | None:
    """Return a temperature after it moves, or one that is compared with another."""
    if not late_search(r"\b(?:degrees?|temperatures?)\b|°", tale.text + _signs(tale)):
        return None
    if tale.asks_for(r"\b(?:how (?:much|many)|by how|difference|range|rise|fall)\b"):
        return _how_much_warmer(tale)
    if not tale.asks_for(r"\btemperature\b|\bwhat is it now\b|\bhow (?:warm|cold|hot)\b"):
        return None
    if (match := _WHICH_IS.search(tale.told)) and len(tale.numbers) == 2:
        here, by = tale.get(match, 1), tale.get(match, 2)
        if here and by and match["then"].lower() in tale.question.lower():
            up = match["way"].lower() in ("warmer", "hotter", "higher")
            return reads(
                f"it is {match['way']} than what is asked for",
                here.value - by.value if up else here.value + by.value,
            )
        return None
    start = _AT_FIRST.search(tale.told)
    first = tale.get(start, 1) if start else None
    if start is None or first is None:
        return None
    if late_search(r"\bbefore\b|\bat first\b|\boriginal", tale.question):
        return None
    value, count = first.value, 1
    for move in _MOVES.finditer(tale.told, start.end()):
        by = tale.get(move, "u") or tale.get(move, "d")
        if by is None:
            return None
        value += by.value if move["up"] else -by.value
        count += 1
    if count == 1 and (second := _THE_OTHER.search(tale.told, start.end())):
        by = tale.get(second, 1)
        if by is not None and " than " not in tale.told[second.end() : second.end() + 8]:
            up = second["way"].lower() in ("warmer", "hotter", "higher")
            value, count = value + (by.value if up else -by.value), 2
    if count != len(tale.numbers) or count == 1:
        return None
    return reads("the temperature moves as the words say", value)


def _signs(tale: Tale) -> str:
    return " degrees" if tale.of("temperature") else ""


_AT = late(
    rf"({SLOT}){_DEGREES} (?:at|in|on) (?:the )?(?P<where>[A-Za-z]+)|\b(?:at|in|on) (?:the )?(?P<where2>[A-Za-z]+)(?: it)? (?:is|was) ({SLOT})",
    re.I,
)

_WARMER = late(
    r"\bhow (?:much|many degrees) (?P<way>warmer|hotter|higher|colder|cooler|lower) (?:is|was) (?:it (?:at|in|on) )?(?:the )?(?P<a>\w+) than (?:(?:at|in|on) )?(?:the )?(?P<b>\w+)",
    re.I,
)


def _how_much_warmer(tale: Tale) -> Reading | None:
    asked = _WARMER.search(tale.question)
    if asked is None or len(tale.numbers) != 2:
        return None
    found = {}
    for match in _AT.finditer(tale.told):
        number = tale.get(match, 1) or tale.get(match, 4)
        if number is not None:
            found[(match["where"] or match["where2"]).lower()] = number.value
    a, b = (found.get(asked[name].lower()) for name in ("a", "b"))
    if a is None or b is None:
        return None
    return reads("the one temperature less the other", abs(a - b))
