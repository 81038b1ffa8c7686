"""What everybody knows that a model must not go against: the calendar, posts and cuts, angles.

Common knowledge: the days of a month, five weekdays, fourteen days in a fortnight; one post more
than there are gaps, and one cut fewer than there are pieces.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

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


class _Told(NamedTuple):
    """A story's words, its question, and its model with the whole numbers in it."""

    text: str
    words: str
    model: Modelled
    numbers: frozenset[int]

    def says(self, pattern: str) -> bool:
        return late_search(pattern, self.text)

    def asks(self, pattern: str) -> bool:
        return late_search(pattern, self.words)


def known_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return the fact that everybody knows and the model goes against, or ``""``."""
    asking = questions(runs)
    told = _Told(
        " ".join(run if isinstance(run, str) else "…" for run in runs),
        asking[-1] if asking else "",
        model,
        frozenset(part.n for part in model.parts() if isinstance(part, t.Int)),
    )
    return next((fault for holds in _FACTS if (fault := holds(told))), "")


def _days(told: _Told) -> str:
    numbers = told.numbers
    if told.says(r"\bleap years?\b"):
        for days, usual in ((366, 365), (29, 28)):
            if usual in numbers and days not in numbers:
                whole = "A leap year" if days == 366 else "February of a leap year"
                return f"{whole} has {days} days, and the model has {usual}."
    for month, days in _MONTHS.items():
        if re.search(rf"\b(?:of|in|during|for|all) {month.capitalize()}\b", told.text):
            wrong = numbers & {28, 29, 30, 31} - {days, 29 if days == 28 else days}
            if wrong and days not in numbers:
                return f"{month.capitalize()} has {days} days, and the model has {min(wrong)}."
    if told.says(r"\bweekdays?\b|\bmonday to friday\b") and 7 in numbers and 5 not in numbers:
        return "There are five weekdays, and the model counts seven."
    span = re.search(rf"\b({'|'.join(_DAYS)}) to ({'|'.join(_DAYS)})\b", told.text, re.I)
    if span and 7 in numbers:
        first, last = (_DAYS.index(day.lower()) for day in span.groups())
        days = (last - first) % 7 + 1
        if days not in numbers:
            return f"From {span[1]} to {span[2]} are {days} days, and the model counts seven."
    # 2 × 7 is a fortnight too, but one 2 may well be another number of the story.
    twos = sum(isinstance(part, t.Int) and part.n == 2 for part in told.model.parts())
    if told.says(r"\bfortnights?\b") and 7 in numbers and 14 not in numbers and twos < 2:
        return "A fortnight has 14 days, and the model counts seven."
    return ""


def _shares(told: _Told) -> str:
    model = told.model
    if (
        told.says(r"\b(?:share|split|divide)\w*\b[^.?!]*\bequally\b")
        and told.asks(r"\b(?:each|one|every)\b")
        and not (model.divides() or model.inverse)
    ):
        return "The words share something equally, and the model divides nothing."
    profit = told.asks(r"\b(?:profit|loss)\b") and not told.asks(r"percentage|per cent")
    if profit and not (model.subtracts() or model.inverse or model.has(t.Percent)):
        return "A profit is what is taken less what is spent, and the model takes nothing away."
    return ""


def _trap(told: _Told) -> str:
    for trap, asks, says in _TRAPS:
        if told.says(trap) and told.asks(asks):
            return f"A person has to look: {says}."
    return ""


def _angles(told: _Told) -> str:
    model, numbers = told.model, told.numbers
    if model.has(t.Int) and told.says(r"\bangles?\b"):
        if told.says(r"\bstraight line\b") and 360 in numbers:
            return "Angles on a straight line add up to 180°, and the model has 360."
        if told.says(r"\b(?:at|around|round|about) a point\b") and 180 in numbers:
            return "Angles at a point add up to 360°, and the model has 180."
    third = told.asks(r"\b(?:third|other|missing|last|fourth|remaining)\b.*\bangle\b")
    whole = told.says(r"\btriang|\bquadrilat|\bstraight line|\bpoint\b")
    if third and whole and model.has(t.Sum) and not model.inverse and not numbers & {180, 360, 90}:
        return "The angles make a whole together, and the model adds those that are given."
    pair = told.says(r"\bexterior\b") and told.asks(r"\binterior\b")
    if pair and 360 in numbers and 180 not in numbers:
        return "An interior and an exterior angle make 180° together, and the model has 360."
    return ""


def _shapes(told: _Told) -> str:
    model = told.model
    inner = told.says(r"\b(?:inside|inner)\b") and told.says(r"\b(?:outside|outer)\b")
    if inner and told.asks(r"\barea\b") and not (model.subtracts() or model.inverse):
        return "What lies between an outer and an inner shape is a difference, and nothing is taken away."
    slanted = told.asks(r"\bdiagonal\b|\bhypotenuse\b") or told.says(
        r"\bladder\b.*\b(?:leans|against|rests)\b"
    )
    # With an angle it may be a sine, and diagonals may be counted.
    if (
        slanted
        and not model.has(t.Power, t.Root)
        and not told.asks(r"\bangle\b|\bhow many diagonals\b")
    ):
        return "A slanting length needs squares and a root, and the model has none."
    return ""


def _ways_apart(told: _Told) -> str:
    model = told.model
    apart = told.asks(r"\bhow far apart\b|\bdistance between\b")
    opposite = r"\b(?:opposite directions?|towards each other|away from each other)\b"
    if apart and told.says(opposite) and model.subtracts():
        return "They move in opposite directions, and the model takes one from the other."
    if apart and told.says(r"\bsame direction\b") and not model.subtracts():
        return "They move in the same direction, and the model takes nothing away."
    over_and_under = told.says(r"\babove\b") and told.says(r"\bbelow\b")
    whole_way = told.asks(r"\b(?:from|between|difference|apart)\b")
    # With a minus in the model one of them is below nought already, and −3 is taken away.
    if over_and_under and whole_way and model.subtracts() and not model.has(t.Neg):
        return "One is above and the other below, so that the way between them is a sum."
    return ""


def _not_so(told: _Told) -> str:
    target = told.model.target
    bare = re.search(r"\b(?:is|are|was|were) not ([a-z]+ed)\b", told.text, re.I)
    asks_bare = bare and told.asks(rf"\b{bare[1]}\b") and " not " not in told.words
    adds = isinstance(target, t.Sum) and all(op == "+" for op, _ in target.rest)
    if bare and asks_bare and adds:
        return f"A part is not {bare[1]}, and the model takes nothing away."
    return ""


def _time_of_day(told: _Told) -> str:
    point = told.asks(r"^(?:at )?(?:when|what time)\b(?! will \w+ next)")
    lasts = any(
        isinstance(part, t.Quantity) and UNITS[part.unit].dimension == "time"
        for part in t.walk(told.model.key)
    )
    if point and lasts and told.says(r"\b(?:noon|midnight|o'clock|am|pm)\b|…"):
        return "The question asks for a time of day, and the key is a length of time."
    return ""


_FACTS = (_days, _shares, _trap, _angles, _shapes, _ways_apart, _not_so, _time_of_day)
