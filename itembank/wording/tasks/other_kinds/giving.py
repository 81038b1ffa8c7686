"""Questions that any of many answers will do for: *write a fraction between* {1/3} *and* {1/2}.

A sentence is read from left to right: how many numbers, what they are called, and clause by
clause what they have to be. What is not a clause known here is left unread, so that no condition
is ever dropped.

>>> from itembank.wording.sentences.prompt import slot
>>> said = giving(f"Write an odd multiple of {slot(0)} that is less than {slot(1)}")
>>> [(fact.name, fact.slots) for fact in said.facts]
[('odd', ()), ('multiple', (0,)), ('<', (1,))]
>>> giving(f"Write the multiple of {slot(0)}") is None
True
"""

from __future__ import annotations

import re
from functools import lru_cache

from itembank.data_class import dataclass
from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import phrase
from itembank.wording.sentences.prompt import SLOT, index_of
from itembank.wording.tasks.other_kinds.giving_wordings import (
    ADJECTIVE,
    BETWEEN,
    COMPARED,
    EQUAL,
    FACTOR,
    FACTOR_PAIR,
    FIRST,
    FROM,
    GIVEN,
    HOLDS,
    KIND,
    MAKING,
    MULTIPLE,
    NEXT,
    NUMBERS,
    ONE,
    OTHER,
    PAIR,
    SIGNS,
    SOLUTION,
    TWO,
    UNLIKE,
    VALUE,
    VERB,
)


@dataclass(frozen=True, slots=True)
class Fact:
    """One thing that each number has to be, or that two have to make together.

    `name` is a condition (*even*, *multiple*), a sign (<), *between*, *from* (both ends count),
    *equal*, *two* or *three* (of so many digits), *sum*, *product* or *difference* (with a
    `sign`), or *holds*, of a relation that is printed. `slots` are places in the prompt's
    mathematics.
    """

    name: str
    slots: tuple[int, ...] = ()
    sign: str = "="


@dataclass(frozen=True, slots=True)
class Giving:
    """A sentence that asks for one answer of many, as far as it is read.

    `numbers` says how many are asked for; `what` is what the words call them (*fraction*,
    *whole*; *pair* of a pair of factors); `letter` the letter whose value it is, a slot or the
    letter itself; `end` is where the words go on that are not read here.
    """

    numbers: int
    what: str
    facts: tuple[Fact, ...]
    slots: tuple[int, ...]
    letter: str
    end: int


class _Scan:
    """A sentence and how far it is read."""

    def __init__(self, text: str) -> None:
        self.text, self.at = text, 0

    def take(self, *wordings: str) -> re.Match[str] | None:
        """Return how the first wording that fits goes on from here, and go on after it."""
        for wording in wordings:
            if match := _to_a_word_end(wording).match(self.text, self.at):
                self.at = match.end()
                return match
        return None


@lru_cache(maxsize=256)
def _to_a_word_end(wording: str) -> re.Pattern[str]:
    return phrase(rf"(?:{wording})(?!\w)")


_SLOT = late(SLOT)
_MAY_BE = late(rf"\b{VERB} (?:any|an|a|one|two|2)\b", re.I)


def may_be_giving(prompt: str) -> bool:
    """Tell whether some sentence of a prompt may be one for :func:`giving`; quick.

    >>> may_be_giving("Now write down a number."), may_be_giving("Work out a sum.")
    (True, False)
    """
    return _MAY_BE.search(prompt) is not None


def giving(sentence: str) -> Giving | None:
    """Return a sentence read as one that asks for any of many answers; None where it is not one.

    Whether it is read to its last word is for the caller to see from `end`.
    """
    scan, facts = _Scan(sentence), list[Fact]()
    if match := phrase(GIVEN).match(sentence):
        scan.at = match.end()
        facts.append(_holds(match))
    if not scan.take(VERB):
        return None
    pair = bool(scan.take(PAIR))
    numbers = 2 if pair or scan.take(TWO) else 1
    if numbers == 1 and not scan.take(ONE):
        return None
    if numbers == 1 and (match := scan.take(FACTOR_PAIR)):
        found: _Noun | None = ("pair", 2, "", _factor_pair(match))
    else:
        facts += _adjectives(scan)
        found = _noun(scan, numbers, pair)
        if found is None and facts and facts[-1] == Fact("prime"):
            found = ("number", numbers, "", [])  # a prime between 20 and 30
    if found is None:
        return None
    what, numbers, letter, more = found
    facts += more
    wordings: tuple[str, ...] = FIRST
    while (clause := _clause(scan, wordings, numbers)) is not None:
        facts += clause
        wordings = NEXT
    slots = tuple(index_of(char) for char in _SLOT.findall(sentence[: scan.at]))
    return Giving(numbers, what, tuple(facts), slots, letter, scan.at)


def _adjectives(scan: _Scan) -> list[Fact]:
    facts = []
    while match := scan.take(ADJECTIVE):
        if match["kind"]:
            facts.append(Fact(match["kind"].lower()))
        elif match["unlike"]:
            facts.append(Fact("different"))
        elif match["digits"]:
            facts.append(Fact({"2": "two", "3": "three"}.get(match["digits"], match["digits"])))
    return facts


_Noun = tuple[str, int, str, list[Fact]]


def _noun(scan: _Scan, numbers: int, pair: bool) -> _Noun | None:
    """Return what numbers are called, how many there are, their letter, and what that says."""
    if numbers == 1 and (match := scan.take(VALUE)):
        return "whole" if match["whole"] else "number", 1, match["letter"], []
    if numbers == 1 and (match := scan.take(SOLUTION)):
        return "whole" if match["whole"] else "number", 1, "", [_holds(match)]
    for name, wording in NUMBERS.items():
        if scan.take(wording):
            return name, numbers, "", []
    for name, wordings in (("multiple", MULTIPLE[:1]), ("factor", FACTOR)):
        if match := scan.take(*(f" {wording}" for wording in wordings)):
            if numbers == 2 and match["other"] and not match["both"]:
                return None  # two multiples of 3 and 5: of both, or one of each?
            if pair and name == "factor" and not match["other"]:
                return "pair", 2, "", _factor_pair(match)
            return "number", numbers, "", _each(name, match)
    if scan.take(r" primes?"):
        return "number", numbers, "", [Fact("prime")]
    return None


def _factor_pair(match: re.Match[str]) -> list[Fact]:
    return [Fact("product", (index_of(match["each"]),)), Fact("whole"), Fact("positive")]


def _each(name: str, match: re.Match[str]) -> list[Fact]:
    said = match.groupdict()
    slots = [said["each"], said.get("other")]
    return [Fact(name, (index_of(char),)) for char in slots if char]


def _holds(match: re.Match[str]) -> Fact:
    return Fact("holds", (index_of(match["holds"]),))


def _clause(scan: _Scan, wordings: tuple[str, ...], numbers: int) -> list[Fact] | None:
    """Return what the next clause says; None, and nothing read, where there is none."""
    start = scan.at
    for wording in wordings:
        # The words that lead up to a clause end in a space.
        match = phrase(wording).match(scan.text, start)
        if not match or not match[0]:
            continue
        scan.at = match.end()
        if (facts := _said(scan, numbers)) is not None:
            return facts
    scan.at = start
    return None


def _said(scan: _Scan, numbers: int) -> list[Fact] | None:
    if match := scan.take(BETWEEN, FROM):
        closed = "between" not in match[0].lower() or "inclusive" in (match["ends"] or "").lower()
        ends = (index_of(match["low"]), index_of(match["high"]))
        return [Fact("from" if closed else "between", ends)]
    for sign, words in SIGNS.items():
        if match := scan.take(rf"(?:{words}) (?P<each>{SLOT})"):
            return _each(sign, match)
    if match := scan.take(*MULTIPLE):
        return _each("multiple", match)
    if match := scan.take(*FACTOR):
        return _each("factor", match)
    if match := scan.take(OTHER):
        return _each("≠", match)
    if match := scan.take(EQUAL):
        return _each("equal", match)
    if match := scan.take(*HOLDS):
        return [_holds(match)]
    if match := scan.take(*KIND):
        kind = match["kind"].lower()
        return [Fact("whole" if kind == "integer" else kind)]
    if numbers == 2:
        return _together(scan)
    return None


def _together(scan: _Scan) -> list[Fact] | None:
    """Return what two numbers have to make, by their sum, their product or their difference."""
    if scan.take(UNLIKE):
        return [Fact("different")]
    start = scan.at
    for words, name in MAKING:
        for sign, than in COMPARED.items():
            scan.at = start
            match = scan.take(rf"(?:{words}){f' (?:{than})' if than else ''} (?P<each>{SLOT})")
            if match:
                said = name or match["what"].lower().replace("total", "sum")
                return [Fact(said, (index_of(match["each"]),), sign)]
    scan.at = start
    return None
