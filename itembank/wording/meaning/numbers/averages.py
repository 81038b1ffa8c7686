"""Means, totals and ranges: worked out from the numbers that are listed or spoken of."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Number, Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_MEAN_OF = late(
    rf"\b(?:mean|average)(?: [a-z]+){{0,2}} of (?:the |his |her )?(?P<n>{SLOT}) [^.,;]*?\b(?:is|was|are|=) (?P<mean>{SLOT})|"
    rf"(?P<n2>{SLOT}) (?:numbers|[a-z]+) have a mean(?: [a-z]+){{0,2}} of (?P<mean2>{SLOT})",
    re.I,
)
_ADDED = late(
    rf"\b(?:another|a|an|one more|a new|a (?:fourth|fifth|sixth|seventh))\b(?: [\w-]+){{0,4}}? ({SLOT})[^.]*\b(?:joins?|is added|are added|is put|comes|added)\b|"
    rf"\bone more [a-z]+, ({SLOT}), is added\b|"
    rf"\b(?:joins?|is added|adds)[^.]*?({SLOT})",
    re.I,
)
_NEW_MEAN = late(
    rf"\b(?:another|one more|a (?:fourth|fifth|sixth|seventh|new)) [a-z]+ is added,? (?:and )?the (?:new )?mean (?:is|becomes) (?:now )?({SLOT})",
    re.I,
)
_LISTED = late(rf"{SLOT}(?:, {SLOT})+,? and {SLOT}|{SLOT}(?:, {SLOT})*,? (?:and )?{SLOT}")


def average_reading(tale: Tale) -> Reading | None:
    """Return the mean, the total or the range that a story asks for by its words."""
    return _next_score(tale) or _of_list(tale) or _of_mean(tale)


def _next_score(tale: Tale) -> Reading | None:
    """Return what comes next so that the mean of all of them is what is asked for."""
    mean = re.search(rf"\b(?:mean|average)(?: \w+){{0,2}} of ({SLOT})", tale.question, re.I)
    if (
        mean is None
        or mean[1] not in tale.by_char
        or not tale.asks_for(r"\b(?:next|another|fourth|fifth|sixth|last)\b")
    ):
        return None
    scores = [n for n in tale.numbers if not tale.asked(n) and not n.in_words]
    counts = [n for n in tale.numbers if n.in_words]
    if len(scores) < 2 or any(n.value != len(scores) for n in counts if not tale.asked(n)):
        return None
    if late_search(r"\bmean\b", tale.told):
        return None
    total = tale.by_char[mean[1]].value * (len(scores) + 1)
    return reads("the next one counts too", total - sum((n.value for n in scores), Fraction(0)))


def _of_list(tale: Tale) -> Reading | None:
    lists = [m for m in _LISTED.finditer(tale.told) if len(re.findall(SLOT, m[0])) > 1]
    if len(lists) != 1:
        return None
    listed = [tale.by_char.get(c) for c in re.findall(SLOT, lists[0][0])]
    numbers = [n for n in listed if n is not None]
    others = [n for n in tale.numbers if n not in numbers]
    if len(numbers) != len(listed) or any(
        not n.in_words or n.value != len(numbers) for n in others
    ):
        return None
    if late_search(r"\bmean\b|\bside\b|\bof (?:them|the numbers)\b", tale.told):
        return None
    values = [n.value for n in numbers]
    if tale.asks_for(
        r"^(?:what|find|work out|calculate|give|state)\b.*\b(?:mean|average)\b(?! speed)"
    ):
        return reads(
            "the mean is the total of them all by how many there are",
            sum(values, Fraction(0)) / len(values),
        )
    if tale.asks_for(r"^(?:what|find|work out|calculate|give|state)\b.*\brange\b"):
        return reads("the range is the largest less the smallest", max(values) - min(values))
    return None


def _of_mean(tale: Tale) -> Reading | None:
    match = _MEAN_OF.search(tale.told)
    if match is None:
        return None
    count, mean = (
        tale.get(match, a) or tale.get(match, b) for a, b in (("n", "n2"), ("mean", "mean2"))
    )
    if count is None or mean is None or count.value < 2 or count.value.denominator != 1:
        return None
    rest = [n for n in tale.numbers if n not in (count, mean)]
    total = count.value * mean.value
    if not rest:
        if tale.asks_for(r"\b(?:total|sum|altogether|add up|in all)\b"):
            return reads("the total is the mean for each of them", total)
        return None
    known = [n for n in rest if not n.in_words]
    asks_it = r"\bwhat (?:is|was) (?:the|this|that) (?:new |added |extra )?(?:number|score|mark)\b"
    if len(rest) == 1 and tale.asks_for(asks_it):
        now = _NEW_MEAN.search(tale.told)
        if now is not None and tale.get(now, 1) is rest[0]:
            return reads("one more counts now", (count.value + 1) * rest[0].value - total)
    if len(known) == 1 and (added := _ADDED.search(tale.told)) and known[0].char in added[0]:
        new = (total + known[0].value) / (count.value + 1)
        if tale.asks_for(r"\bby how much\b|\bhow much (?:does|has)\b.*\b(?:mean|average)\b"):
            return reads("the change of the mean", abs(new - mean.value))
        if tale.asks_for(r"\b(?:mean|average)\b"):
            return reads("the total of all by how many there are now", new)
        return None
    return _missing(tale, known, rest, count, mean, total)


def _missing(
    tale: Tale,
    known: list[Number],
    rest: list[Number],
    count: Number,
    mean: Number,
    total: Fraction,
) -> Reading | None:
    if any(n.value != len(known) for n in rest if n.in_words) or late_search(
        r"\b(?:joins?|added|leaves?|removed)\b", tale.told
    ):
        return None
    left = total - sum((n.value for n in known), Fraction(0))
    if tale.asks_for(r"\bmean of (?:those|these|the) (?:two|three|four|\S)\b"):
        return reads(
            "the mean of those that are named",
            sum((n.value for n in known), Fraction(0)) / len(known),
        )
    if len(known) == count.value - 1 and tale.asks_for(
        r"\b(?:other|third|fourth|fifth|sixth|last|missing|remaining)\b"
    ):
        return reads("what is left of the total", left)
    return None
