"""What a question about a chart of counts has to keep to, beyond its words being known ones.

*How many pupils are there in 7M* is no question about a chart of books, nor *How many trays were
sold* about one of trays made; and the *tallest* plant is not the one of which most were sold.

>>> held_to("trays", "", "how many trays were sold on <0>")
>>> held_to("books", "", "how many pupils are there in <0>")
Traceback (most recent call last):
...
itembank.figures.figure.FigureError: it does not count ‘pupils’
"""

from __future__ import annotations

import re

from itembank.figures.figure import FigureError
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late

PEOPLE = frozenset(("people", "pupils", "children", "pupil", "person", "child"))
"""What anybody who is counted may be called."""
COUNTED_PEOPLE = PEOPLE | frozenset(
    re.findall(
        r"\w+",
        "members swimmers visitors passengers adults juniors seniors boys girls players teachers "
        "students readers families customers voters runners walkers cyclists riders drivers "
        "guests workers friends men women teenagers beginners learners persons",
    )
)
"""Who may be meant by *people* where a title calls them so."""
_GENERAL = frozenset(("number", "frequency", "value", "count", "total", "of", "the", "how", "many"))
_DONE = (
    {"lent", "borrowed", "read"},
    {"mended", "repaired"},
    {"sold", "sell", "bought"},
    {"came", "come", "travel", "travelled", "visited"},
    {"chose", "choose", "chosen", "like", "liked", "said"},
    {"made", "make", "makes"},
    {"needed", "need"},
    {"kept", "keep"},
    *({word} for word in ("picked", "planted", "served", "counted", "used", "drawn", "parked")),
    *({word} for word in ("collected", "caught", "watched", "cooked", "asked", "returned")),
    *({word} for word in ("baked", "grown", "ordered", "delivered", "eaten", "won", "given")),
)
"""What may be done to what is counted; the words of one set say the same."""
_LACKING = frozenset(
    re.findall(
        r"\w+",
        "absent returned lost thrown wasted unsold broken late stolen spoilt damaged empty",
    )
)
"""Words of a title that a question about it has to say as well."""
_SCALED = late(r"\b(thousand|hundred|million|dozen|percent|percentage|mean|average)s?\b|%")
_SIZES = "largest|greatest|highest|tallest|longest|biggest|smallest|lowest|least|shortest"
_SIZED = "number|amount|total|count|frequency|value|bar|row|sector|slice|angle|point"


def held_to(counted: str, title: str, question: str) -> None:
    """Hold a question, in small letters and with its names as numbers, to what a figure counts.

    Raises
    ------
    FigureError
        If it asks for something else than the figure shows, or may be taken so.
    """
    told, asked = f"{counted} {title}".casefold(), {*re.findall(r"[a-z]+", question)}
    shown = {*re.findall(r"[a-z’]+", told)}
    counts = {*re.findall(r"[a-z’]+", counted.casefold())}
    if not counts <= _GENERAL and not shown & COUNTED_PEOPLE and (strange := asked & PEOPLE):
        raise FigureError(f"it does not count ‘{min(strange)}’")
    if word := done_apart(shown, asked):
        raise FigureError(f"it shows what is ‘{word}’, and the question does not say so")
    for first, second in re.findall(r"([a-z]+) (?:and|or) ([a-z]+)", told):
        if (first in asked) != (second in asked):
            raise FigureError(f"it shows ‘{first}’ and ‘{second}’ together")
    _hold_scale(told, question)
    _hold_size(counts - _GENERAL, question)


def done_apart(shown: set[str], asked: set[str]) -> str:
    """Return what was done to what is shown, where a question asks of something else, or ``""``.

    >>> done_apart({"trays", "made"}, {"trays", "sold"}), done_apart({"lent"}, {"borrowed"})
    ('made', '')
    """
    known, wanted = ([words for words in _DONE if words & some] for some in (shown, asked))
    if known and wanted and not any(words in known for words in wanted):
        return min(known[0] & shown)
    if wanted and (apart := [words for words in known if words not in wanted]):
        return min(apart[0] & shown)  # ordered and sold, and asked of one alone
    return min(shown & _LACKING - asked, default="")


def scaled(title: str) -> str:
    """Return the word by which a title says that its numbers are thousands, shares or means.

    >>> scaled("Visitors (thousands)"), scaled("Visitors")
    ('thousand', '')
    """
    found = _SCALED.search(title.casefold())
    return (found[1] or "%") if found else ""


def unit_names(unit: str) -> frozenset[str]:
    """Return what a unit may be called that a title shows, in small letters.

    >>> sorted(unit_names("cm"))
    ['centimetre', 'centimetres', 'cm']
    >>> "degrees" in unit_names("°C")
    True
    """
    names = {unit.casefold()}
    for symbol, facts in UNITS.items():
        known = {symbol.casefold(), facts.singular.casefold(), facts.many.casefold()}
        if unit.casefold() in known:
            names |= known
    return frozenset(names | ({"degree", "degrees"} if "°" in unit else set()))


def _hold_scale(told: str, question: str) -> None:
    """Refuse a count where a title says that its numbers are thousands, or shares, or means."""
    if not (word := scaled(told)) or question.startswith("which"):
        return
    if word not in ("thousand", "hundred", "million", "dozen") or word not in question:
        raise FigureError(f"it shows numbers of another kind: ‘{word}’")


def _hold_size(counts: set[str], question: str) -> None:
    """Refuse *the largest* where it does not say the largest what."""
    if not (size := re.search(rf"\b(?:{_SIZES})\b", question)):
        return
    counted = "|".join([*map(re.escape, sorted(counts)), "them"])
    nouns = f"{_SIZED}|{counted}"
    number = rf"(?:total )?(?:number|amount) of (?:{counted})"
    said = (
        rf"\b(?:{_SIZES}) (?:{nouns})\b",
        rf"\bwhich (?:bar|row|sector|slice|point) (?:is|was) (?:the )?(?:{_SIZES})\b",
        rf"\bthe {number} (?:(?:is|was) )?(?:the )?(?:{_SIZES})\b",
        rf"\b(?:{_SIZES}) {number}\b",
        rf"\bthe (?:{nouns}) (?:the )?(?:{_SIZES})\b",
        rf"\bthe (?:{nouns}) (?:is|was) (?:the )?(?:{_SIZES})\b",
    )
    if not any(re.search(pattern, question) for pattern in said):
        raise FigureError(f"it is not said the ‘{size[0]}’ what")
