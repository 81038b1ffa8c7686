"""A whole and a stated part of it, and what a percentage of something was and is.

*35 cm of the pole is under the ground: how much is above?* The words about the part stand beside it,
and the question asks for the part or for the rest. *It was 80% full and is 60% full*: a percentage
change is of what there was.
"""

from __future__ import annotations

import re

from itembank.text.late_pattern import late
from itembank.wording.meaning.parts.parts_of import content
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_OF_IT = late(
    rf"({SLOT}) of (?:it|them|these|those|the [a-z]+) (?:is|are|was|were) (?P<what>[^.,;?]+)", re.I
)
_FULL = late(rf"\b(?:was|is) (?:now |only |still )?({SLOT}) (?P<state>full|charged|empty)\b", re.I)
_BY_PERCENT = (
    r"\bby what percentage\b|\bpercentage (?:increase|decrease|change|fall|rise|drop|reduction)\b"
)
_AS_OF = late(
    r"\bthe (?P<a>new|old|sale|reduced|original|first|second|final|normal|usual) (?P<noun>[a-z]+) as a percentage of "
    r"the (?P<b>new|old|sale|reduced|original|first|second|final|normal|usual) (?P=noun)\b",
    re.I,
)
_TO = late(
    rf"({SLOT})(?: [a-z]+){{0,3}} (?:is|was|are|were|has been|went|goes|rises|rose|falls|fell)? ?[a-z ]*?\bto ({SLOT})",
    re.I,
)
_LATER = ("new", "sale", "reduced", "second", "final")


_COUNTED = late(
    rf"\bof (?:the |these )?(?P<whole>{SLOT}) [a-z'-]+,? (?P<part>{SLOT})(?: of them)? (?:are|is|were|was|have|has) (?P<what>[^.,;?]+)|"
    rf"(?P<part2>{SLOT}) of (?:the |these |his |her |its )?(?P<whole2>{SLOT}) [a-z'-]+ (?:are|is|were|was|have|has) (?P<what2>[^.,;?]+)",
    re.I,
)
_REST = r"\b(?:not|left|empty|free|spare|rest|others?|remain\w*|unsold|unused)\b|n't"


def _counted(tale: Tale) -> Reading | None:
    """Return how many are left, or not so, where so many of so many are."""
    match = _COUNTED.search(tale.told)
    if match is None or len(tale.numbers) != 2 or not tale.asks_for(r"^how many\b"):
        return None
    whole = tale.get(match, "whole") or tale.get(match, "whole2")
    part = tale.get(match, "part") or tale.get(match, "part2")
    if whole is None or part is None or not 0 < part.value < whole.value:
        return None
    if whole.measure or part.measure or late_search(_REST, match["what"] or match["what2"]):
        return None
    if late_search(r"\b(?:more|fewer|than|each|altogether)\b", tale.question):
        return None
    if tale.asks_for(_REST):
        return reads("the rest of the whole", whole.value - part.value)
    return None


def beyond_reading(tale: Tale) -> Reading | None:
    """Return a part of a whole that is given as an amount, or the rest of the whole."""
    if counted := _counted(tale):
        return counted
    match = _OF_IT.search(tale.told)
    if match is None or len(tale.numbers) != 2 or tale.of("percent", "part"):
        return None
    part = tale.get(match, 1)
    whole = next((n for n in tale.numbers if n is not part), None)
    if part is None or whole is None or tale.asked(whole) or whole.at > part.at:
        return None
    if part.measure != whole.measure or not 0 < part.value < whole.value:
        return None
    if not tale.asks_for(r"\bhow (?:much|many|long)\b|\bwhat (?:length|mass|amount)\b"):
        return None
    if tale.asks_for(r"\b(?:more|less|fewer|percentage|fraction|ratio|than|each|altogether)\b"):
        return None
    what, asked = content(match["what"]), content(tale.question)
    place = re.search(r"\b(above|below|under|over|in|out|inside|outside|on|off)\b", match["what"])
    where = re.search(r"\b(above|below|under|over|in|out|inside|outside|on|off)\b", tale.question)
    negated = late_search(r"\b(?:not|n't|un\w{4,}|rest|other|others|left)\b|n't", tale.question)
    if late_search(r"\bnot\b|n't", match["what"]):
        return None
    if negated or (place and where and place[1] != where[1]):
        return reads("the rest of the whole", whole.value - part.value)
    if what and what <= asked:
        return reads("the part that the words name", part.value)
    return None


_HOLDS = late(
    rf"\b(?:holds|can hold|has a capacity of) ({SLOT})[^.]*\. (?:It|[Tt]he \w+) is (?:now |only )?({SLOT}) full\b"
)


def holds_reading(tale: Tale) -> Reading | None:
    """Return what there is in something that is part full, or what is still to be added."""
    holds = _HOLDS.search(tale.told)
    if holds is None or len(tale.numbers) != 2:
        return None
    whole, part = tale.get(holds, 1), tale.get(holds, 2)
    if whole and part and part.measure in ("part", "percent"):
        if tale.asks_for(r"\b(?:added|put in|needed|more)\b.*\bfill\b|\bto fill (?:it|the)\b"):
            return reads("what is not there yet", (1 - part.value) * whole.value)
        if tale.asks_for(r"^how (?:much|many)\b.*\b(?:does it hold|(?:are|is) (?:there )?in it)\b"):
            return reads("what is there now", part.value * whole.value)
    return None


_PART_DOES = late(
    rf"({SLOT}) of (?:them|these|those|it|the [a-z]+) (?P<verb>[a-z]+)(?P<what>[^.,;?]*)", re.I
)
_THAT = r"^how (?:many|much) (?:is|are|was|were) (?:that|this|these|those)$"


def that_reading(tale: Tale) -> Reading | None:
    """Return the part that is told of last: *3/4 of them flower. How many is that?*."""
    match, parts = _PART_DOES.search(tale.told), tale.of("part", "percent")
    if match is None or len(parts) != 1 or len(tale.numbers) != 2 or parts[0].char != match[1]:
        return None
    whole = next(n for n in tale.numbers if n is not parts[0])
    if whole.at > parts[0].at or tale.asked(whole) or not 0 < parts[0].value < 1:
        return None
    if late_search(r"\b(?:not|no|all but|except|rest|others?)\b|n't", tale.text):
        return None
    says = content(match["verb"]) & content(tale.question)
    same = says and tale.asks_for(r"^how many\b") and not tale.asks_for(_REST)
    if tale.asks_for(_THAT) or (same and not tale.asks_for(r"\b(?:more|fewer|than|each)\b")):
        return reads("the part that the words name", parts[0].value * whole.value)
    return None


def states_reading(tale: Tale) -> Reading | None:
    """Return a percentage change between two percentages, or one price as a percentage of another."""
    if match := _AS_OF.search(tale.question):
        moved = _TO.search(tale.told)
        if moved is None or len(tale.numbers) != 2:
            return None
        before, after = tale.get(moved, 1), tale.get(moved, 2)
        if before is None or after is None or not before.value or not after.value:
            return None
        later = match["a"].lower() in _LATER
        if later == (match["b"].lower() in _LATER):
            return None
        share = after.value / before.value if later else before.value / after.value
        return reads("a percentage of the one that stands after ‘of’", share)
    found = list(_FULL.finditer(tale.told))
    if len(found) != 2 or len(tale.numbers) != 2 or not tale.asks_for(_BY_PERCENT):
        return None
    first, last = (tale.get(match, 1) for match in found)
    if first is None or last is None or not first.value or found[0]["state"] != found[1]["state"]:
        return None
    return reads(
        "a percentage change is of what was there first",
        abs(first.value - last.value) / first.value,
    )
