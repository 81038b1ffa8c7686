"""Small pieces that wordings are made of, as regular expressions, and how they are put together.

A wording is written with names in angle brackets: ``<M>`` is one piece of mathematics, ``<Ms>``
a list of them, ``<NP>`` and ``<NPs>`` the same with or without a noun before it (*the fraction*
{3/4}), ``<letter>`` a letter, ``<where>`` what is given, ``<pick>`` which of several solutions,
``<THEM>`` a word that points back (*this number*).

>>> from itembank.wording.sentences.prompt import slot
>>> bool(phrase("find the sum of <NPs>").fullmatch(f"Find the sum of {slot(0)} and {slot(1)}"))
True
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from itembank.notation.units import CURRENCY, TOGETHER, UNITS
from itembank.text.late_pattern import late
from itembank.text.needed_letters import Needing
from itembank.wording.sentences.prompt import LETTER_SLOT, SLOT

COUNTS = {
    word: n
    for n, word in enumerate(("one", "two", "three", "four", "five", "six", "seven", "eight"), 1)
}
COUNT = rf"(?:\d{{1,2}}|{SLOT}|{'|'.join(COUNTS)})"


@lru_cache(maxsize=1)
def unit_names() -> dict[str, str]:
    """Return every way to name a unit or a currency in words, folded, with the unit it names."""
    names: dict[str, str] = {}
    for unit, facts in (*UNITS.items(), *CURRENCY.items()):
        for name in (unit, facts.singular, facts.many):
            names[name.casefold()] = unit
    return names


UNIT = "|".join(re.escape(name) for name in sorted(unit_names(), key=len, reverse=True))

# In seconds, in cm: never in second, and a letter alone may be a letter.
UNITS_ASKED = "|".join(
    re.escape(name)
    for name in sorted(
        {n for unit, facts in (*UNITS.items(), *CURRENCY.items()) for n in (unit, facts.many)},
        key=len,
        reverse=True,
    )
    if len(name) > 1
)
TOGETHER_NAMES = (
    "|".join(
        f"{UNITS[big].many} and {UNITS[small].many}"
        for big, smalls in TOGETHER.items()
        for small in smalls
    )
    + "|pounds and pence"
)
"""Two units that an answer may be wanted in at once: hours and minutes."""

_ADJECTIVE = (
    "following|given|simultaneous|linear|quadratic|recurring|terminating|improper|top-heavy|mixed|"
    "proper|algebraic|whole|decimal|single|pair of|set of|list of"
)
_NOUN = (
    "numbers?|fractions?|decimals?|percentages?|ratios?|expressions?|equations?|inequalit(?:y|ies)|"
    "formulae?|formulas|calculations?|amounts?|quantit(?:y|ies)|lengths?|mass(?:es)?|times?|"
    "temperatures?|surds?|integers?|fractional expressions?|values?|measurements?|prices?|"
    "quadratics?|lists?|heights?|weights?|widths?|distances?|speeds?|ages?|scores?|marks?|results?|"
    "years|dates|costs|readings|terms|data|sets?|cards|statements?"
)
_NAMED = rf"(?:(?:(?:the|this|these|each of the|all the|a|an) )?(?:(?:{_ADJECTIVE}) )*(?:{_NOUN}):? |the (?:value|amount|length|mass) of )?"
_AND = r"(?:,? and |, |,)"
_OR = r"(?:,? or |,? and |, |,)"
_LETTER = r"[A-Za-z]"

_PIECES = {
    "M": rf"({SLOT})",
    "Ms": rf"({SLOT}(?:{_AND}{SLOT})*)(?:, ?\.*)?",
    "Either": rf"({SLOT}(?:{_OR}{SLOT})*)",
    "NP": rf"(?:the following:? )?{_NAMED}({SLOT})",
    "NEither": rf"(?:(?:the following|these):? )?{_NAMED}({SLOT}(?:{_OR}(?:the )?{SLOT})*)",
    "NPs": rf"(?:the following:? )?{_NAMED}({SLOT}(?:{_AND}(?:the )?{SLOT})*)(?:, ?\.*)?",
    "letter": rf"(?:the letter )?(?P<letter>{LETTER_SLOT}|{_LETTER}(?![\w']))",
    "where": rf"(?:the following:? )?{_NAMED}(?P<where>{SLOT}(?:{_AND}(?:the )?{SLOT})*)",
    "pick": (
        r"(?P<pick>positive|negative|larger|largest|greater|greatest|bigger|biggest|higher|"
        r"highest|smaller|smallest|lesser|least|lower|lowest)"
    ),
    "THEM": (
        rf"(?:(?:the|this|these|that|those) (?:(?:{_ADJECTIVE}|answer|missing) )*(?:{_NOUN}|answers?|results?)|"
        r"(?:the|your) (?:answer|result|term)|each (?:number|fraction|decimal|amount)|"
        r"it|this|them|these|that|those|each(?: of (?:them|these))?|the following)"
    ),
    "N": COUNT,
    "UNIT": rf"(?:{TOGETHER_NAMES}|{UNIT})",
}
_SOFT = {
    # Ways to say find; each has to be followed by what is to be found.
    "FIND": (
        r"(?:work out|calculate|evaluate|compute|find|determine|give|state|write down|write|"
        r"what is|what's|what are|what was|what were|how much is|how much are|tell me|say)"
    ),
    # The same without how much: how much is 5 more than 3 asks for a difference.
    "NAME": (
        r"(?:work out|calculate|evaluate|compute|find|determine|give|state|write down|write|"
        r"what is|what's|what was|tell me|say)"
    ),
    "VALUE": (
        r"(?:(?:the |an? )?(?:exact |simplified |final |correct )?(?:value|values|answer|answers|result|"
        r"total|calculation|sum)(?: of| to)? )?"
    ),
    "PUT": r"(?:write|express|give|rewrite|put|show|convert|change|turn|reduce|cancel)",
}


@lru_cache(maxsize=1024)
def phrase(wording: str) -> re.Pattern[str]:
    """Return the pattern of a wording; groups are its pieces of mathematics, in order."""
    made = wording
    for name, piece in (*_SOFT.items(), *_PIECES.items()):
        made = made.replace(f"<{name}>", piece)
    return re.compile(made, re.I)


_VERBS = late(r"<(FIND|PUT|NAME)> ")


@lru_cache(maxsize=1024)
def _opening(wording: str) -> tuple[str, re.Pattern[str]]:
    """Return the kind of verb a wording begins with, and a small pattern of what comes next."""
    match = _VERBS.match(wording)
    verbs = match[1] if match else ""
    rest = wording[match.end() :] if match else wording
    depth, end = 0, 0
    for at, char in enumerate(rest):
        if char == "<" and "<" + rest[at + 1 :].partition(">")[0] + ">" in _MACROS:
            break
        depth += (char == "(") - (char == ")")
        if not depth and char == " ":
            end = at
    return verbs, re.compile(rest[:end], re.I)


_MACROS = frozenset(f"<{name}>" for name in (*_SOFT, *_PIECES))


@lru_cache(maxsize=4)
def _verb(kind: str) -> re.Pattern[str]:
    return re.compile(_SOFT[kind] + " ", re.I)


class Openings:
    """Finds the wordings of a list that a sentence begins with; few of them are ever compiled.

    >>> openings = Openings(["<FIND> the sum of <NPs>", "halve <NP>", "<FIND> the mean of <NPs>"])
    >>> list(openings.of("Find the mean of")), list(openings.of("Halve it"))
    ([2], [1])
    """

    def __init__(self, wordings: Iterable[str]) -> None:
        self._wordings = tuple(wordings)
        self._needing = Needing(self._wordings)

    def of(self, sentence: str) -> Iterator[int]:
        """Yield the place in the list of each wording that a sentence begins with, in order."""
        after: dict[str, int | None] = {"": 0}  # where the sentence goes on after a kind of verb
        for place in self._needing.of(sentence):
            verbs, opening = _opening(self._wordings[place])
            if verbs not in after:
                verb = _verb(verbs).match(sentence)
                after[verbs] = verb.end() if verb else None
            start = after[verbs]
            if start is not None and opening.match(sentence, start):
                yield place
