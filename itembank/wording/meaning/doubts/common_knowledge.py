"""What everybody knows that a model must not go against: the calendar, posts and cuts, angles.

Common knowledge: the days of a month, five weekdays, fourteen days in a fortnight; one post more
than there are gaps, and one cut fewer than there are pieces.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.units import UNITS
from itembank.wording.meaning.told.tale import late_search
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.question_sentences import questions

_MONTHS = {
    "january": 31, "february": 28, "march": 31, "april": 30, "may": 31, "june": 30, "july": 31,
    "august": 31, "september": 30, "october": 31, "november": 30, "december": 31,
}  # fmt: skip
_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_TRAPS = (
    (r"\bposts?\b.*\bapart\b|\b(?:trees?|posts?|lamps?|poles?|lights?|flags?|stakes?) (?:are |is )?(?:at|every|stand)\b.*\b(?:each|both) ends?\b|\bat each end\b|\bat both ends\b",
     r"\b(?:how many)\b", "there is one more of them than there are gaps between them"),
    (r"\b(?:each|every|one) cut\b", r"\bhow (?:long|many|much)\b", "there is one cut fewer than there are pieces"),
    (r"\bfrom the front\b.*\bfrom the back\b|\bfrom the (?:left|top)\b.*\bfrom the (?:right|bottom)\b", r"\bhow many\b",
     "one of them is counted from both sides"),
    (r"\b(?:driver|teacher|captain|leader|guide) (?:is )?included\b|\bincluding the (?:driver|teacher|captain|leader|guide)\b",
     r"\bhow many\b", "somebody is counted in"),
    (r"\bclock\b.*\b(?:loses|gains)\b", r".", "a clock that goes wrong shows another time"),
)  # fmt: skip


def known_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return the fact that everybody knows and the model goes against, or ``""``."""
    text = " ".join(run if isinstance(run, str) else "…" for run in runs)
    asking = questions(runs)
    words = asking[-1] if asking else ""
    numbers = {part.n for part in model.parts() if isinstance(part, t.Int)}
    for month, days in _MONTHS.items():
        if re.search(rf"\b(?:of|in|during|for|all) {month.capitalize()}\b", text):
            wrong = numbers & {28, 29, 30, 31} - {days, 29 if days == 28 else days}
            if wrong and days not in numbers:
                return f"{month.capitalize()} has {days} days, and the model has {min(wrong)}."
    if (
        late_search(r"\bweekdays?\b|\bmonday to friday\b", text)
        and 7 in numbers
        and 5 not in numbers
    ):
        return "There are five weekdays, and the model counts seven."
    span = re.search(rf"\b({'|'.join(_DAYS)}) to ({'|'.join(_DAYS)})\b", text, re.I)
    if span and 7 in numbers:
        first, last = (_DAYS.index(day.lower()) for day in span.groups())
        days = (last - first) % 7 + 1
        if days not in numbers:
            return f"From {span[1]} to {span[2]} are {days} days, and the model counts seven."
    equal = late_search(r"\b(?:share|split|divide)\w*\b[^.?!]*\bequally\b", text)
    if (
        equal
        and late_search(r"\b(?:each|one|every)\b", words)
        and not (model.divides() or model.inverse)
    ):
        return "The words share something equally, and the model divides nothing."
    profit = late_search(r"\b(?:profit|loss)\b", words) and not late_search(
        r"percentage|per cent", words
    )
    if profit and not (model.subtracts() or model.inverse or model.has(t.Percent)):
        return "A profit is what is taken less what is spent, and the model takes nothing away."
    two_weeks = sum(isinstance(part, t.Int) and part.n == 2 for part in model.parts()) > 1
    if (
        late_search(r"\bfortnights?\b", text)
        and 7 in numbers
        and 14 not in numbers
        and not two_weeks
    ):
        return "A fortnight has 14 days, and the model counts seven."
    for trap, asks, says in _TRAPS:
        if late_search(trap, text) and late_search(asks, words):
            return f"A person has to look: {says}."
    if model.has(t.Int) and late_search(r"\bangles?\b", text):
        if late_search(r"\bstraight line\b", text) and 360 in numbers:
            return "Angles on a straight line add up to 180°, and the model has 360."
        if late_search(r"\b(?:at|around|round|about) a point\b", text) and 180 in numbers:
            return "Angles at a point add up to 360°, and the model has 180."
    inner = late_search(r"\b(?:inside|inner)\b", text) and late_search(
        r"\b(?:outside|outer)\b", text
    )
    if inner and late_search(r"\barea\b", words) and not (model.subtracts() or model.inverse):
        return "What lies between an outer and an inner shape is a difference, and nothing is taken away."
    apart = late_search(r"\bhow far apart\b|\bdistance between\b", words)
    if (
        apart
        and late_search(
            r"\b(?:opposite directions?|towards each other|away from each other)\b", text
        )
        and model.subtracts()
    ):
        return "They move in opposite directions, and the model takes one from the other."
    if apart and late_search(r"\bsame direction\b", text) and not model.subtracts():
        return "They move in the same direction, and the model takes nothing away."
    over_and_under = late_search(r"\babove\b", text) and late_search(r"\bbelow\b", text)
    whole_way = late_search(r"\b(?:from|between|difference|apart)\b", words)
    if over_and_under and whole_way and model.subtracts() and not model.has(t.Neg):
        return "One is above and the other below, so that the way between them is a sum."
    bare = re.search(r"\b(?:is|are|was|were) not ([a-z]+ed)\b", text, re.I)
    asks_bare = bare and late_search(rf"\b{bare[1]}\b", words) and " not " not in words
    adds = isinstance(model.target, t.Sum) and all(op == "+" for op, _ in model.target.rest)
    if bare and asks_bare and adds:
        return f"A part is not {bare[1]}, and the model takes nothing away."
    third = late_search(r"\b(?:third|other|missing|last|fourth|remaining)\b.*\bangle\b", words)
    angles = late_search(r"\btriang|\bquadrilat|\bstraight line|\bpoint\b", text)
    if third and angles and model.has(t.Sum) and not model.inverse and not numbers & {180, 360, 90}:
        return "The angles make a whole together, and the model adds those that are given."
    point = late_search(r"^(?:at )?(?:when|what time)\b(?! will \w+ next)", words)
    lasts = any(
        isinstance(part, t.Quantity) and UNITS[part.unit].dimension == "time"
        for part in t.walk(model.key)
    )
    if point and lasts and late_search(r"\b(?:noon|midnight|o'clock|am|pm)\b|…", text):
        return "The question asks for a time of day, and the key is a length of time."
    slanted = late_search(r"\bdiagonal\b|\bhypotenuse\b", words) or late_search(
        r"\bladder\b.*\b(?:leans|against|rests)\b", text
    )
    if (
        slanted
        and not model.has(t.Power, t.Root)
        and not late_search(r"\bangle\b|\bhow many diagonals\b", words)
    ):
        return "A slanting length needs squares and a root, and the model has none."
    if (
        late_search(r"\bexterior\b", text)
        and late_search(r"\binterior\b", words)
        and 360 in numbers
        and 180 not in numbers
    ):
        return "An interior and an exterior angle make 180° together, and the model has 360."
    return ""
