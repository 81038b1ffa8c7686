"""Something made into equal parts: a rope cut into 8 pieces, soil shared between 5 pots."""

from __future__ import annotations

import re

from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_DONE = (
    r"(?:cut|chopped|sawn|broken|shared|split|divided|poured|packed|put|sorted|folded|separated)"
    r"(?: up| out| equally| evenly)?"
)
_EQUAL = late(
    rf"({SLOT})[^.?!]*? (?:is|are|was|were) {_DONE} (?:into|between|among|amongst) ({SLOT})(?: [a-z]+){{1,3}}",
    re.I,
)


def equal_reading(tale: Tale) -> Reading | None:
    """Return what each part has where something is made into equal parts.

    Only where the words say that they are equal, and each of them is asked for.
    """
    match = _EQUAL.search(tale.told)
    if match is None or len(tale.numbers) != 2 or any(map(tale.asked, tale.numbers)):
        return None
    whole, count = tale.get(match, 1), tale.get(match, 2)
    if whole is None or count is None or not count.counts or whole.measure in ("part", "percent"):
        return None
    if not count.value or count.value.denominator != 1:
        return None
    if not late_search(
        r"\b(?:equal(?:ly)?|evenly|identical|same (?:size|length|number|amount))\b", tale.text
    ):
        return None
    if not tale.asks_for(r"^how (?:long|much|many|heavy|big|wide|tall)\b") or not tale.asks_for(
        r"\b(?:each|one|every)\b"
    ):
        return None
    if tale.asks_for(r"\b(?:fraction|percentage|left|more|fewer|less|than|not)\b"):
        return None
    return reads("it is made into equal parts", whole.value / count.value)
