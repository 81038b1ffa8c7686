"""Prices that rise and fall by a percentage: before, after, the change, and what it is of."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.notation.units import UNITS
from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import UNCLEAR, Number, Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_UP = late(
    r"\b(?:ris(?:e|es|en|ing)|rose|increas\w*|(?:go|goes|gone|went|going|put) up|up by|rais(?:e|es|ed)|gain\w*|"
    r"grow\w*|grew|profit|more|vat|tax|tip|service charge|interest|appreciat\w*|higher|dearer)\b",
    re.I,
)
_DOWN = late(
    r"\b(?:fall\w*|fell|drop\w*|decreas\w*|reduc\w*|discount\w*|off|los(?:e|es|t|ing|s)|cut|cheaper|"
    r"less|lower|shrink\w*|shrank|depreciat\w*|down|deduct\w*|fewer|in (?:a|the) sale)\b",
    re.I,
)
_TO_PART = late(rf"\b(?:to|only|pays?) ({SLOT})(?: of (?:this|that|it|its|the|what)\b)", re.I)
_IS_AFTER = late(
    r"\b(?:now|after|afterwards|in (?:a|the) sale|(?:sale|reduced|new|final) (?:price|pay|salary|cost|fare)|"
    r"includ\w+|inclusive|with (?:the )?(?:tax|vat|discount))\b",
    re.I,
)
_IS_BEFORE = late(
    r"\b(?:was|were|before|original\w*|old|normal\w*|usual\w*|full price|last year|without|excluding|plus|"
    r"at first|starts?|bought for|new for)\b",
    re.I,
)
_ASKS_BEFORE = (
    r"\b(?:before|of the (?:meal|food)|original\w*|old|at first|to (?:start|begin) with|normal\w*|usual\w*|full price|last year|"
    r"without (?:vat|tax|the)|excluding|when it is not|not in (?:a|the) sale)\b"
)
_ASKS_CHANGE = (
    r"\b(?:how much|what) (?:is|was|does|do|did|will|would|money)\b.*\b(?:sav(?:e|es|ed|ing)|reduction|discount|profit|"
    r"vat|tip|taken off|added|knocked off)\b(?! price)|\bby how (?:much|many)\b|\bhow much (?:tax|vat|interest|profit|money is saved|less|more)\b|"
    r"\b(?:work out|find|calculate|what is) the (?:reduction|discount|saving|increase|decrease|rise|profit|vat|tip|tax|interest)\b"
)
_ASKS_AFTER = (
    r"\b(?:new|now|after|sale price|in (?:the|a) sale|final|total|pay|pays|costs?|worth|this year|with|price|end|"
    r"population|value|in the account|how many|altogether|left|have|bill)\b"
)
_WITH_TAX = r"\b(?:with|including|excluding|without|before|after) (?:the )?(?:vat|tax|tip|discount|interest)\b"
_IS_CHANGE = r"(?:cheaper|dearer|less|more|off|is saved|is taken off)\b"
_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


_IS_CHANGED = (
    r"^ (?:is|are|was|were|has been|gets?) (?:reduced|discounted|increased|cut|raised|decreased)\b"
)


def percentage_reading(tale: Tale) -> Reading | None:
    """Return what a story of percentages comes to by its words."""
    return _change_asked(tale) or _changed(tale)


def _changed(tale: Tale) -> Reading | None:
    percents = tale.of("percent")
    if not 1 <= len(percents) <= 2 or any(tale.asked(percent) for percent in percents):
        return None
    others = [n for n in tale.numbers if n not in percents]
    years = [n for n in others if n.measure in ("calendar time", "time")]
    amounts = [n for n in others if n not in years]
    if len(amounts) > 1 or len(years) > 1 or (years and len(percents) > 1):
        return None
    factor, additive = _factor(tale, percents, years)
    if factor is None:
        return None
    if not amounts:
        asks = r"\bpercentage (?:increase|decrease|change|rise|fall|profit|loss)\b"
        if len(percents) == 2 and tale.asks_for(asks):
            return reads("one change after the other, each of what is there then", abs(factor - 1))
        return None
    (amount,) = amounts
    after = _is_after(tale, amount, percents[-1])
    if after is None or tale.asked(amount):
        return None
    if additive and after:
        return None
    before = amount.value / factor if after else amount.value
    end = before * factor
    where = "after" if after else "before"
    says = f"the amount given is the one {where} the change"
    if tale.asks_for(r"\bpercentage\b|\bfraction\b"):
        return None
    if re.match(_IS_CHANGE, amount.after, re.I):
        if len(percents) > 1 or years:
            return None
        before, says = amount.value / percents[0].value, "the amount given is the change itself"
        end = before * factor
    if tale.asks_for(_ASKS_BEFORE):
        return reads(f"{says}, and what was there before is asked for", before)
    if late_search(_ASKS_CHANGE, re.sub(_WITH_TAX, "", tale.question, flags=re.I)):
        if tale.asks_for(
            r"\b(?:pay|cost|costs|price)\b(?!.*\b(?:by how|less|more|reduction|discount|profit)\b)"
        ):
            return None
        return reads(f"{says}, and the change alone is asked for", abs(end - before))
    if tale.asks_for(_ASKS_AFTER):
        return reads(f"{says}, and what is there after it is asked for", end)
    return None


def _factor(
    tale: Tale, percents: list[Number], years: list[Number]
) -> tuple[Fraction | None, bool]:
    """Return what the changes multiply an amount by, and whether one is of the first amount."""
    if late_search(r"\bhalf-year|\bmonthly\b|\bevery half|\bquarter", tale.text):
        return None, False
    factor, additive = Fraction(1), False
    for percent in percents:
        if any(percent.char == match[1] for match in _TO_PART.finditer(tale.text)):
            factor *= percent.value
            continue
        sign = _direction(tale, percent)
        if not sign:
            return None, False
        if late_search(r"^of the (?:first|original|old|starting)\b", percent.after):
            factor, additive = factor + sign * percent.value, True
            continue
        step = 1 + sign * percent.value
        if years:
            count = _years(tale, percent, years[0])
            if count is None:
                return None, False
            simple = late_search(r"\bsimple interest\b", tale.text)
            compound = late_search(r"\bcompound\b", tale.text)
            if not (simple or compound) and late_search(r"\binterest\b", tale.text):
                return None, False
            step = 1 + sign * percent.value * count if simple else step**count
        elif late_search(r"\binterest\b", tale.text):
            return None, False
        factor *= step
    return factor, additive


def _years(tale: Tale, percent: Number, years: Number) -> int | None:
    """Return how many times a change goes on, where it is said for each year, or each hour."""
    sentence = tale.sentence_of(percent)
    each = re.search(
        r"\b(?:each|every|per|a|an) (year|month|week|day|hour|minute)\b", sentence, re.I
    )
    unit = each[1].lower() if each else ""
    if not unit and late_search(r"\byearly\b|\bannual", sentence):
        unit = "year"
    if not unit:
        return None
    facts = UNITS[{"hour": "h", "minute": "min"}.get(unit, unit)]
    count = years.value / facts.size
    like = years.measure == facts.dimension
    return int(count) if like and count.denominator == 1 and 0 < count <= 20 else None


def _direction(tale: Tale, percent: Number) -> int:
    """Return 1 where the words near a percentage raise something, −1 where they lower it, or 0."""
    end = percent.at + 1
    near = tale.text[max(0, percent.at - 60) : percent.at] + " # " + tale.text[end : end + 40]
    before, after = near.split(" # ", 1)
    before = re.split(r"[.;?!]", before)[-1]
    after = re.split(rf"[.;?!]|{SLOT}", after)[0]
    part = ("of the", "of them", "of its", "of his", "of her", "of a number")
    at_first = late_search(r"of the (?:first|original|old|starting)", after)
    if after.lower().startswith(part) and not at_first:
        return 0
    last = re.split(rf"{SLOT}| and | then ", before)[-1]
    for words in (after.split(" and ")[0], last, before):
        up, down = bool(_UP.search(words)), bool(_DOWN.search(words))
        if up != down:
            return 1 if up else -1
        if up and down:
            return 0
    up, down = bool(_UP.search(tale.told)), bool(_DOWN.search(tale.told))
    return 0 if up == down else 1 if up else -1


def _is_after(tale: Tale, amount: Number, percent: Number) -> bool | None:
    """Whether an amount is what is there after the change; None where the words leave it open."""
    between = tale.text[percent.at + 1 : amount.at]
    if 0 < amount.at - percent.at < 12 and late_search(r"^ to $", between):
        return True
    sentence = tale.sentence_of(amount)
    clause = sentence if percent.char in sentence else tale.clause_of(amount)
    first = sentence.find(amount.char)
    opening = sentence[: first if first > 0 else 0]
    after = bool(_IS_AFTER.search(clause)) or late_search(r"^(?:after|with|including)\b", opening)
    if late_search(r"\bbefore (?:the|it|a)\b", clause):
        return False
    if late_search(_IS_CHANGED, sentence[first + 1 :]):
        return False  # in a sale, a coat costing £85 is reduced by 20%
    before = bool(_IS_BEFORE.search(clause))
    if after and before:
        tail = sentence[first + 1 :]
        if late_search(r"\bbought for\b|\bplus\b", clause):
            return None
        return (
            None
            if not late_search(r"\binclud|\bnow\b|\bin (?:the|a) sale\b", tail + opening)
            else True
        )
    return after


_FROM_TO = late(rf"\bfrom ({SLOT})(?: [a-z]+)? to ({SLOT})", re.I)


def _change_asked(tale: Tale) -> Reading | None:
    """Return the percentage change, or one amount as a percentage of another."""
    change = tale.asks_for(
        r"\bpercentage (?:increase|decrease|change|profit|loss|rise|fall|reduction|gain)\b|\bby what percentage\b|"
        r"\bwhat percentage (?:did|does|has|have|was|is) (?:it|they|the \w+) (?:rise|fall|go|gone|increase|decrease|drop|reduced)|"
        r"\bwhat percentage (?:is|was|does \w+|did \w+|do \w+) (?:saved|save|lost|taken off|off)\b"
    )
    of_old = re.search(
        r"\bwhat percentage of the (old|first|original|new|second|normal|usual|full|sale|reduced|final) .*\b(old|new|first|second|original|sale|reduced|final|normal|usual|full)\b",
        tale.question,
        re.I,
    )
    if not (change or of_old) or tale.of("percent"):
        return None
    amounts = [
        n for n in tale.numbers if n.measure not in ("time", "calendar time") and not n.in_words
    ]
    if len(amounts) != 2:
        return None
    first, second = amounts
    if (found := _FROM_TO.search(tale.text)) and tale.by_char.get(found[1]) is not None:
        first, second = tale.by_char[found[1]], tale.by_char.get(found[2], second)
    if first.value <= 0 or second.value <= 0:
        return None
    if of_old:
        top, bottom = (
            (second, first)
            if of_old[1].lower() not in ("new", "second", "sale", "reduced", "final")
            else (first, second)
        )
        return reads("a part of the amount that stands after ‘of’", top.value / bottom.value)
    if re.search(rf"\bby {re.escape(second.char)} from {re.escape(first.char)}", tale.text):
        return None
    if late_search(rf"\bby {re.escape(second.char)}", tale.told):
        return reads("what it changes by is of what was there first", second.value / first.value)
    if late_search(
        rf"\b(?:by|(?:profit|loss|rise|fall|increase|decrease|discount|reduction|gain|saving) of) {re.escape(first.char)}",
        tale.text,
    ):
        return None
    if (
        late_search(r"\bwas\b", tale.clause_of(second))
        and late_search(r"\bis (?:now )?", tale.clause_of(first))
        and not late_search(r"\bnow\b", tale.clause_of(second))
    ):
        first, second = second, first
    days = [
        next((i for i, day in enumerate(_DAYS) if day in tale.sentence_of(n).lower()), None)
        for n in (first, second)
    ]
    if days[0] is not None and days[1] is not None and days[0] > days[1]:
        return Reading(UNCLEAR, "the words leave open which of the two came first")
    return reads(
        "a percentage change is of what was there first",
        abs(second.value - first.value) / first.value,
    )
