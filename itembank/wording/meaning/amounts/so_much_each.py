"""What starts at one amount and changes by so much each time: a fare, a plant, a tank, savings.

*£30 and then £20 for each hour*, *35 cm tall, grows 4 cm each week*, *£2 for the first hour and £1.50
for each extra hour*: what there is after so many, or after how many there is so much.
"""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.notation.units import UNITS, unit_known
from itembank.text.late_pattern import late
from itembank.wording.kinds.things_counted import noun_stem
from itembank.wording.meaning.told.tale import Number, Reading, Tale, late_search, reads
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import SLOT

_RATE = late(
    rf"(?P<by>{SLOT})(?: (?!and\b|for the\b)[a-z]+){{0,3}}? (?:for |in |with |on )?(?:each|every|per|an?) (?P<extra>(?:extra|further|additional|other|more) )?(?P<unit>[a-z]+)|"
    rf"\b(?:each|every) (?P<unit2>[a-z]+),? (?:[a-z]+ ){{1,4}}(?P<by2>{SLOT})",
    re.I,
)
_FIRST = late(rf"({SLOT}) for (?:the|its) first (?:(?P<k>{SLOT}) )?(?P<unit>[a-z]+)", re.I)
_DOWN = late(
    r"\b(?:burns?|burned|leaks?|leaked|los(?:es?|t|ing)|uses?|used|drains?|falls?|fell|shrinks?|drops?|spends?|"
    r"takes?|eats?|drinks?|down|pays? back|pays? off|decreas\w*|reduc\w*|melts?|empties|sells?|gives?|withdraws?|"
    r"comes? out|runs? out|flows? out|evaporates?|sinks?|descends?|less)\b",
    re.I,
)
_UP = late(
    r"\b(?:grows?|grew|gains?|saves?|plus|and|charges?|charged|costs?|adds?|added|rises?|increas\w*|stretches|climbs?|"
    r"puts?|fills?|earns?|pays? in|collects?|gets?|extra|ascends?)\b",
    re.I,
)
_HOW_MANY = r"\b(?:how many|how long|when|after how)\b"
_HOW_MUCH = r"\b(?:cost|costs|charge|charges|charged|pay|pays|paid|bill|price|fare|tall|long|high|deep|left|have|has|had|temperature|total|altogether|remain\w*|height|length|depth|is there|are there)\b"
_OTHER = r"\b(?:each|more|extra|percent\w*|fraction|average|mean|ratio|difference|change|than|twice|half|first)\b"


def each_reading(tale: Tale) -> Reading | None:
    """Return what a story of a start and of so much each time comes to by its words."""
    if tale.of("percent", "part") or tale.asks_for(_OTHER):
        return None
    if late_search(r"\b(?:twice|half|free|off|offer|if|until then|stops?|also|both)\b", tale.told):
        return None
    rates = [m for m in _RATE.finditer(tale.told) if (m["by"] or m["by2"]) in tale.by_char]
    if len(rates) == 2 and late_search(r"\b(?:in|for) (?:one|a|the first) month\b", tale.text):
        # £8 a month plus 5p a minute, for one month: what is for the month counts once.
        rates = [m for m in rates if (m["unit"] or m["unit2"]).lower() != "month"]
    if len(rates) != 1:
        return None
    (rate,) = rates
    by = tale.get(rate, "by") or tale.get(rate, "by2")
    unit = rate["unit"] or rate["unit2"]
    if by is None or by.value <= 0:
        return None
    rest = [n for n in tale.numbers if n is not by]
    first = _FIRST.search(tale.told)
    of_first = Fraction(0)
    if first is not None:
        if noun_stem(first["unit"]) != noun_stem(unit):
            return None
        few = tale.get(first, "k")
        of_first = few.value / unit_size(unit) if few else Fraction(1)
        rest = [n for n in rest if n is not few]
        if not rate["extra"]:
            return None
    elif rate["extra"]:
        return None
    if len(rest) != 2:
        return None
    counts = [n for n in rest if _counts(n, unit)]
    amounts = [n for n in rest if n.measure == by.measure and n not in counts]
    if by.counts and len(amounts) != 2 - len(counts):
        return None
    sign = _sign(tale, by, first is not None)
    if not sign or any(late_search(r"\b(?:per|each|every)\b", n.after) for n in amounts):
        return None
    if len(counts) == 1 and len(amounts) == 1 and tale.asks_for(_HOW_MUCH):
        (count,), (start,) = counts, amounts
        if start.at > by.at and first is None and not tale.asked(count):
            return None
        how_many = tale.asks_for(r"\bhow (?:many|long)\b(?! (?:is|will it be)\b)")
        of_time = r"\b(?:hours|minutes|days|weeks|months|years)\b(?!.*\bafter\b|.*\bin\b)"
        if how_many and tale.asks_for(of_time):
            return None
        times = count.value / unit_size(unit) - of_first
        return reads(
            "what there is at the start counts once", start.value + sign * times * by.value
        )
    if len(amounts) == 2 and tale.asks_for(_HOW_MANY) and not counts:
        times = abs(amounts[0].value - amounts[1].value) / by.value + of_first
        return reads("what there is at the start counts once", times, times * unit_size(unit))
    return None


def unit_size(unit: str) -> Fraction:
    """Return how much one of a unit is in base units; 1 for what is no unit.

    >>> unit_size("minute"), unit_size("pupil")
    (Fraction(60, 1), Fraction(1, 1))
    """
    name = unit_names().get(unit.casefold())
    return Fraction(unit_known(name).size) if name else Fraction(1)


def _counts(number: Number, unit: str) -> bool:
    """Whether a number says how many of a unit there are, or of the things a rate is for."""
    name = unit_names().get(unit.casefold())
    if name:
        return number.measure == UNITS[name].dimension
    words = [noun_stem(w) for w in number.after.split()[:3]]
    return number.counts and noun_stem(unit) in words


def _sign(tale: Tale, by: Number, charge: bool) -> int:
    """Return 1 where a rate adds to the start, −1 where it takes away, or 0."""
    if charge or (
        by.measure == "money" and late_search(r"\b(?:charg\w*|costs?|plus|fee|fare)\b", tale.told)
    ):
        return 1
    sentence = tale.sentence_of(by)
    clause = next((part for part in re.split(r",|;| but ", sentence) if by.char in part), sentence)
    near = clause[: clause.find(by.char)] + " " + by.after
    if _DOWN.search(near):
        return -1
    return 1 if _UP.search(near) else 0
