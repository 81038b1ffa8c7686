"""Questions that ask how many of things that come whole, and which way their number is rounded."""

from __future__ import annotations

import re
from typing import Literal, NamedTuple

from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import SLOT

_UP = late(
    r"\b(?:needed|needs?|required|requires?|must|at least|minimum|fewest|least|will it take|"
    r"does it take)\b",
    re.I,
)
_DOWN = late(
    r"\bhow many (?:full|complete|whole)\b|\b(?:can|could|maximum|at most|afford|fits?|last)\b",
    re.I,
)
_HOW_MANY = late(rf"\bhow many (?:full |complete |whole )?(?:{SLOT}[ -]?)?(?:\w+ )?(\w+)", re.I)
# Whole days and weeks are needed to save; a journey may well take a part of one.
_TAKES = late(r"\bhow many (?:days|weeks|months)\b.*\b(?:needs?|to save)\b", re.I)
_WHOLE = late(r"\bhow many (?:full|complete|whole)\b", re.I)


class HowMany(NamedTuple):
    """What a question *how many* says of its number.

    `way` is the way to the next whole number, empty where the words do not say it or say both;
    `measure` tells that what is counted is a unit, which may be broken, such as weeks; `whole`
    that it is counted whole all the same.
    """

    way: Literal["up", "down", ""]
    measure: bool
    whole: bool


def how_many_whole(question: str) -> HowMany | None:
    """Return what a question *how many* says of its number; None where it asks for another thing.

    >>> how_many_whole("How many buses are needed?")
    HowMany(way='up', measure=False, whole=False)
    >>> how_many_whole("How many full weeks can it last?")
    HowMany(way='down', measure=True, whole=True)
    """
    named = _HOW_MANY.search(question)
    if named is None:
        return None
    up, down = bool(_UP.search(question)), bool(_DOWN.search(question))
    whole = _TAKES.search(question) or _WHOLE.search(question) or re.search(SLOT, named[0])
    names = unit_names()
    measure = any(word.casefold() in names for word in re.findall(r"\w+", named[0]))
    return HowMany("" if up == down else "up" if up else "down", measure, bool(whole))
