"""The unit that the words of a question ask for: a key in another unit is not its answer.

*Change 3.5 kg to grams* is not answered by 3.5 kg, though nothing is worth more.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import NamedTuple

from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, TOGETHER, UNITS, unit_known
from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import unit_names

_NAMES = unit_names()
# "How many in the box" asks for no inches.
_LITTLE = frozenset({"in", "st", "pt"})
# A lone m, g or l among words may be a letter or a label, so units of one letter are spelt out.
_UNIT_NAMES = [
    name
    for name in sorted(_NAMES, key=len, reverse=True)
    if len(name) > 1 and name[0].isalpha() and name not in _LITTLE
]
_UNIT = "|".join(map(re.escape, _UNIT_NAMES))
# In hours and minutes: in no one unit.
_ASKED = late(
    rf"\b(?:in|to|into|how many) ({_UNIT})(?![\w^]| per | and (?:{_UNIT})\b)", re.IGNORECASE
)


_NEAREST = late(rf"\bto the nearest ({_UNIT})(?![\w^])", re.IGNORECASE, needs="to the nearest ")
_WITHOUT = late(r"\bwithout (?:the |its |any |a )?units?\b|\bno units?\b", re.IGNORECASE)


@lru_cache(maxsize=1024)
def unit_said(words: str) -> str:
    """Return the unit in which the words ask for the answer, or ``""`` for none or several.

    >>> unit_said("Change 3.5 kg to grams."), unit_said("What is the speed in metres per second?")
    ('g', 'm/s')
    >>> [unit_said(words) for words in ("In cm or in km.", "In a box.", "In hours and minutes.")]
    ['', '', '']
    """
    found = {_NAMES[match[1].casefold()] for match in _ASKED.finditer(words)}
    # A sum of money to the nearest penny, or pound, may be given in pounds.
    nearest = {_NAMES[match[1].casefold()] for match in _NEAREST.finditer(words)}
    found |= nearest - CURRENCY.keys()
    return found.pop() if len(found) == 1 else ""


def several_units(words: str) -> bool:
    """Tell whether the words ask for the answer in units of which only one can be meant.

    >>> several_units("Change 240 cm to metres in centimetres."), several_units("In hours or in minutes.")
    (True, True)
    >>> several_units("Change 130 min to hours and minutes.")
    False
    """
    found = {_NAMES[match[1].casefold()] for match in _ASKED.finditer(words)}
    return len(found) > 1 and not _TOGETHER.search(words)


_PAIRS = {
    f"{UNITS[big].many} and {UNITS[small].many}": (big, small)
    for big, smalls in TOGETHER.items()
    for small in smalls
} | {"pounds and pence": ("£", "p")}
_TOGETHER = late(rf"\b(?:in|to|into|how many) ({'|'.join(_PAIRS)})\b", re.IGNORECASE)


class _Asked(NamedTuple):
    """What words ask of units: two at once, none at all, one. Read once for all a topic's items."""

    pair: str
    without: bool
    unit: str


@lru_cache(maxsize=1024)
def _asked(words: str) -> _Asked:
    pair = _TOGETHER.search(words)
    return _Asked(pair[1] if pair else "", bool(_WITHOUT.search(words)), unit_said(words))


def _not_together(key: t.Node, pair: str) -> str:
    """Return how a key is not in the two units that the words ask for at once, or ``""``."""
    big, small = _PAIRS[pair.casefold()]
    value = key.rest[-1][1] if isinstance(key, t.Relation) else key
    match value:
        case t.MixedUnits(parts) if tuple(part.unit for part in parts) == (big, small):
            return ""
        case t.Quantity(t.Int(), unit) if unit == big:
            return ""
        case t.Money(_, "£") if big == "£":
            return ""
    return f"the question asks for {pair}, the key is not in both"


_TWO = late(rf"\b(?:in|to|into|how many) ({_UNIT}) and ({_UNIT})(?![\w^])", re.IGNORECASE)


def one_of_two_units(key: t.Node, words: str) -> str:
    """Return the two units that the words ask for at once where the key has one, or ``""``.

    2 h is 2 hours and 0 minutes, and 120 min may or may not do for *minutes and seconds*: a
    person decides.

    >>> one_of_two_units(t.Quantity(t.Int(120), "min"), "Change it to minutes and seconds.")
    'minutes and seconds'
    """
    value = key.rest[-1][1] if isinstance(key, t.Relation) else key
    asked = _TWO.search(words)
    if asked is None or not isinstance(value, t.Quantity):
        return ""
    if (pair := _asked(words).pair) and _not_together(key, pair):
        return ""  # 155 min is not in hours and minutes
    units = {_NAMES[asked[1].casefold()], _NAMES[asked[2].casefold()]}
    return f"{asked[1]} and {asked[2]}" if value.unit in units else ""


def other_unit(key: t.Node, words: str) -> str:
    """Return what is wrong where the words name a unit and the key has another, or ``""``.

    >>> from itembank.notation.tree import Int
    >>> other_unit(t.Quantity(Int(3), "kg"), "Change it to grams.")
    'the question asks for grams, the key is in kilograms'
    >>> other_unit(t.Quantity(Int(155), "min"), "Give the time in hours and minutes.")
    'the question asks for hours and minutes, the key is not in both'
    """
    asked = _asked(words)
    if asked.pair and (fault := _not_together(key, asked.pair)):
        return fault
    wanted = asked.unit
    if not wanted and not asked.without:
        return ""
    used = {
        part.unit if isinstance(part, t.Quantity) else part.sign
        for part in t.walk(key)
        if isinstance(part, t.Quantity | t.Money)
    }
    if asked.without and used:
        return "the question asks for the answer without units, and the key has one"
    if not wanted or not used or used == {wanted}:
        return ""
    facts = {**UNITS, **CURRENCY}
    names = " and ".join(sorted(facts[unit].many for unit in used))
    if names == facts[wanted].many:
        return ""  # pounds are money or a mass
    return f"the question asks for {facts[wanted].many}, the key is in {names}"


_NAMED = late(rf"\b({_UNIT})(?![\w^])", re.IGNORECASE)


_FIRST = frozenset(re.split(r"\W", name, maxsplit=1)[0] for name in _UNIT_NAMES)
"""The first word of each unit: none of it stands where this does not."""


def _may_name_a_unit(words: str) -> bool:
    """Tell whether a unit may stand among words: to look for each of them takes long.

    Letters that are none of ASCII may fold in more ways than one, so there they are looked for.
    """
    return not words.isascii() or not _FIRST.isdisjoint(re.findall(r"\w+", words.casefold()))


@lru_cache(maxsize=1024)
def kinds_in_words(words: str) -> frozenset[str]:
    """Return what the units among the words measure: their base dimensions.

    >>> sorted(kinds_in_words("How many hours does the bus need for the kilometres?"))
    ['length', 'time']
    """
    found: set[str] = set()
    for match in _NAMED.finditer(words) if _may_name_a_unit(words) else ():
        unit = _NAMES[match[1].casefold()]
        name = unit_known(unit).dimension
        found |= {"speed": {"length", "time"}, "area": {"length"}, "volume": {"length"}}.get(
            name, {name}
        )
    if re.search(r"\bangles?\b|\bdegrees?\b", words, re.IGNORECASE):
        found.add("angle")
    return frozenset(found)
