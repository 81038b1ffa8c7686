"""The words that may stand in a sentence which only says what a figure shows.

No proof reads such a sentence, so that a word in it that nobody looked at may change everything:
*The chart shows the running total of trays*, *Here is a prism with a hole*. It has the figure's own
words, and those of this list, which say where things are, who has them and what is done to them;
where it has another one, a person decides.

>>> strange_word("the trays sold on a stall", "Trays: Monday 12, Tuesday 8.")
''
>>> strange_word("the running total of trays", "Trays: Monday 12, Tuesday 8.")
'running'
"""

from __future__ import annotations

import re

from itembank.figures.kinds.chart.chart_held import COUNTED_PEOPLE, PEOPLE
from itembank.notation.units import UNITS
from itembank.text.in_words import DAYS, in_full
from itembank.text.plain_words import PLAIN

_AT_A_PLACE = re.compile(r"\b(?:in|on|at|from) an? ([\w’'-]+)$")
"""How a sentence may end in a word that is not listed: *at a lido*. It says where, and no more."""
_DAYS = {day.casefold() for day in DAYS}
_IN_NO_NAME = re.compile(
    r"(?<=[\w,] )(?:Of|To|In|And|For|On|At|By|With|Each|Is|Are|Shows?|Gives?|Describes?)\b",
)
"""Words that have a capital only where each word has one, or all letters are large."""
_ANYBODY = PEOPLE | {"member", "members"}
_NO_PLACE = frozenset(
    re.findall(
        r"\w+",
        "sample sale morning afternoon evening night moment minute second third fifth tenth row "
        "ratio rush hurry way square cube sum total pack packet bundle dozen pair group mirror "
        "drought survey guess test dream loop circle spiral go draw tie slope curve angle tilt",
    )
)


def strange_word(told: str, shown: str) -> str:
    """Return a word of what is told beside a question that is not known to be plain, or ``""``.

    `shown` is what the figure says of itself. Names with a capital may stand anywhere; a word all
    of whose letters are large is none, but said aloud.

    >>> strange_word("the beads sold at a lido", "Beads: red 3.")
    ''
    >>> strange_word("the beads of Ann", "Beads"), strange_word("the MEAN beads", "Beads")
    ('', 'MEAN')
    >>> strange_word("the teachers", "Pupils")
    'teachers'
    """
    own = {form for word in _words(shown) for form in _forms(word)}
    if "sum" in own:
        own |= {"total", "totals"}
    people = own & COUNTED_PEOPLE
    ending = _AT_A_PLACE.search(told)
    place = ending[1] if ending and ending[1].casefold() not in _NO_PLACE else ""
    word: str
    for word in re.findall(r"[^\W\d_][\w’'-]*", re.sub(r"\{[a-z]\}", " ", told)):
        plain = word.casefold().removesuffix("’s").removesuffix("'s").strip("’'-")
        if word.capitalize() in DAYS and {in_full(name).casefold() for name in own} & _DAYS:
            return word  # one of its days, and not what all of it is about
        named = word[0].isupper() and (len(word) < 3 or not word.isupper())
        if named or plain in own or plain in PLAIN or word == place:
            continue
        if _is_unit(plain):
            continue  # whether the figure bears that unit is asked elsewhere
        if {plain, f"{plain}s"} & COUNTED_PEOPLE and (not people or plain in _ANYBODY):
            continue
        if plain == "noon" and "temperature" in own and "at noon" in told:
            continue  # what is sold at noon is not all that is sold
        return word
    return ""


def is_headline(sentence: str) -> bool:
    """Tell whether each word of a sentence has a capital, so that in it capitals make no names.

    >>> is_headline("The Graph Shows The Mean Height"), is_headline("The graph shows Ann")
    (True, False)
    """
    return _IN_NO_NAME.search(sentence) is not None


_HEAD = re.compile(
    r"\b(?:shows?|gives?|describes?|(?:is|are) (?:for|of|about)) (?:the |some |a |an )?"
    r"(?:(?:total )?number of (?:the )?)?(?P<head>[^\W\d_][\w’'-]*)"
    r"(?: (?:of|that) (?:the |all )?(?P<of>[\w’'-]+))?",
    re.IGNORECASE,
)
_SORTS = frozenset(("colour", "colours", "kind", "kinds", "sort", "sorts", "type", "types"))


def other_head(told: str, counts: str) -> str:
    """Return what a sentence says a chart shows where that is not what the chart counts, or ``""``.

    >>> other_head("The chart shows the plants sold", "Trays")
    'plants'
    >>> other_head("The chart shows the trays sold", "Trays")
    ''
    """
    found = _HEAD.search(told)
    counted = {form for word in _words(counts) for form in _forms(word)}
    if found is None or not counted or _words(found["head"]) <= {"how", "what", "which"}:
        return ""
    head, of = found["head"].casefold(), (found["of"] or "").casefold()
    people = counted & COUNTED_PEOPLE
    if head in counted or (people and head in _ANYBODY):
        return ""
    chosen = f" that {of}" in told.casefold() and (of in counted or (people and of in _ANYBODY))
    return "" if chosen or (head in _SORTS and of in counted) else head


def _is_unit(word: str) -> bool:
    return word in _UNITS


_UNITS = {name for unit in UNITS.values() for name in (unit.singular, unit.many)}


def _words(text: str) -> set[str]:
    return {*re.findall(r"[a-z’'-]+", f"{text} {in_full(text)}".casefold())}


def _forms(word: str) -> tuple[str, ...]:
    return word, f"{word}s", f"{word}es", word.removesuffix("s")
