"""Number puzzles: I think of a number, consecutive numbers, two numbers by sum and difference."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import UNCLEAR, Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_STEP = late(
    rf"(?:\b(?P<add>add(?:s|ed|ing)?|plus|(?:is )?increased by) (?:another )?(?P<a>{SLOT})|"
    rf"\b(?P<sub>subtract(?:s|ed|ing)?|tak(?:e|es|ing)(?: away| off)?|minus|(?:is )?decreased by) (?P<s>{SLOT})|"
    rf"\b(?P<mul>(?:it is |is )?multipl(?:y|ies|ied|ying)(?: it| this| that| the (?:result|answer))? by|times(?: it)?(?: by)?) (?P<m>{SLOT})|"
    rf"\b(?P<div>(?:is )?divid(?:e|es|ed|ing)(?: it| this| that| the (?:result|answer))? by) (?P<d>{SLOT})|"
    rf"(?P<a2>{SLOT}) (?:is|are) (?:then )?added|(?P<s2>{SLOT}) (?:is|are) (?:then )?(?:subtracted|taken away)|"
    rf"\b(?:is )?(?:taken away|taken|subtracted) from (?P<r>{SLOT})|\bsubtracts? (?:it|this|that|the (?:result|answer)|a number) from (?P<r2>{SLOT})|"
    r"\b(?P<two>double[sd]?|doubling|twice)|\b(?P<half>halve[sd]?|halving)|\b(?P<three>treble[sd]?|triple[sd]?))",
    re.I,
)
_STARTS = late(
    rf"(?={SLOT} is (?:added to|taken away from|subtracted from) a number)|"
    r"\b(?:I|\w+) (?:(?:thinks?|am thinking|is thinking) of|starts? with|chooses?|picks?|takes) a number|\b(?:a|my) number is (?=multiplied|divided|doubled|halved|trebled|added|taken|subtracted)|"
    r"\b(?:I|\w+) (?=(?:doubles?|halves?|subtracts?|adds?|multipl(?:y|ies)|divides?) (?:a number|\S+ (?:from|to) a number))|"
    r"\b(?=when (?:a number|\S+ is (?:added|subtracted)))",
    re.I,
)
_RESULT = late(
    rf"\b(?:(?:the|my|her|his|their) (?:answer|result)|the total|I get|to get|and gets?|gives?|giving|gets|(?:and|it) (?:equals|is)|the answer) (?:is |was |now )?({SLOT})",
    re.I,
)
_THE_NUMBER = r"\b(?:my|the|his|her|your|this|that|what) (?:starting |original |first )?number\b|\b\w+'s number\b|\bnumber did \w+ (?:start|begin|think|choose|pick)|^what is it$"


def puzzle_reading(tale: Tale) -> Reading | None:
    """Return the number that a puzzle asks for by its words."""
    return _thought_of(tale) or _times_itself(tale) or _consecutive(tale) or _two_numbers(tale)


def _thought_of(tale: Tale) -> Reading | None:
    start, result = _STARTS.search(tale.told), None
    if start is None:
        return None
    for match in _RESULT.finditer(tale.told):
        result = match
    end = tale.get(result, 1) if result else None
    if result is None or end is None or result.start() < start.start():
        return None
    steps = _steps(tale, tale.told[start.end() : result.start()])
    used = sum(n.char in tale.told for n in tale.numbers)
    if not steps or used != 1 + sum(char != "" for char, _, _ in steps):
        return None
    taken_from = {char for char, op, _ in steps if op == "r"}
    if late_search(
        r"\b(?:square|cube|root|same|more than|less than|itself|reverse|digits?|the result from)\b",
        tale.told,
    ) or any(
        match[1] not in taken_from for match in re.finditer(rf"\bfrom ({SLOT})", tale.told, re.I)
    ):
        return None
    slope, constant = Fraction(1), Fraction(0)
    for _, op, value in steps:
        if op == "r":  # it is taken away from 20
            slope, constant = -slope, value - constant
        elif op in "+-":
            constant += value if op == "+" else -value
        elif value == 0:
            return None
        else:
            factor = value if op == "×" else 1 / value
            slope, constant = slope * factor, constant * factor
    number = (end.value - constant) / slope
    asked = _steps(tale, tale.question)
    if asked:
        value = number
        for _, op, by in asked:
            value = {"+": value + by, "-": value - by, "×": value * by, "r": by - value}.get(
                op, value / by if by else value
            )
        return reads("the steps of the question are done to the number as well", value)
    if tale.asks_for(_THE_NUMBER) or tale.asks_for(r"\bthink of\b|\bthinking of\b"):
        return reads("the steps are done in the order in which they are told", number)
    return None


def _steps(tale: Tale, words: str) -> list[tuple[str, str, Fraction]]:
    found = []
    for match in _STEP.finditer(words):
        groups = match.groupdict()
        op, name = next(
            (op, name)
            for op, name in (
                ("r", "r"), ("r", "r2"), ("+", "a"), ("+", "a2"), ("-", "s"), ("-", "s2"), ("×", "m"), ("÷", "d"),
                ("×2", "two"), ("÷2", "half"), ("×3", "three"),
            )
            if groups[name]
        )  # fmt: skip
        if len(op) == 2:
            found.append(("", op[0], Fraction(op[1])))
        elif groups[name] in tale.by_char:
            found.append((groups[name], op, tale.by_char[groups[name]].value))
    # 9 is subtracted from twice a number: the number is doubled first.
    if re.search(
        r"\b(?:from|to) (?:twice|double|half|three times) (?:a|the|my) number\b", words, re.I
    ):
        found.reverse()
    return found


_RUN = late(
    rf"({SLOT})? ?consecutive (?P<kind>whole|even|odd|positive|natural)? ?(?:whole )?(?:numbers|integers|multiples of ({SLOT}))[^.]*?"
    rf"\b(?:add up to|adds up to|have a (?:sum|total) of|sum to|total|is|sum of|make) ({SLOT})",
    re.I,
)


def _consecutive(tale: Tale) -> Reading | None:
    match = _RUN.search(tale.text)
    if match is None:
        return None
    count, total = tale.get(match, 1), tale.get(match, 4)
    if count is None or total is None or count.value.denominator != 1 or not 1 < count.value < 30:
        return None
    kind = (match["kind"] or "").lower()
    multiple = tale.get(match, 3)
    step = multiple.value if multiple else Fraction(2 if kind in ("even", "odd") else 1)
    n = count.value
    first = (total.value - step * n * (n - 1) / 2) / n
    if (
        first.denominator != 1
        or (kind == "even" and first % 2)
        or (kind == "odd" and first % 2 == 0)
    ):
        return Reading(UNCLEAR, f"there are no such {kind or 'whole'} numbers")
    last = first + step * (n - 1)
    if tale.asks_for(r"\b(?:smallest|least|lowest|first)\b"):
        return reads("the smallest of them", first)
    if tale.asks_for(r"\b(?:largest|greatest|biggest|highest|last)\b"):
        return reads("the largest of them", last)
    if tale.asks_for(r"\b(?:middle|second)\b") and n == 3:
        return reads("the middle one of them", first + step)
    return None


_TIMES_ITSELF = late(
    rf"(?:\b(?P<word>twice|double)|({SLOT}) times) (?:a|the|my) number is ({SLOT}) (?P<way>more|greater|less) than (?:the|that|my|this) number\b",
    re.I,
)


def _times_itself(tale: Tale) -> Reading | None:
    """Return the number that grows by so much when it is multiplied."""
    match = _TIMES_ITSELF.search(tale.told)
    if match is None:
        return None
    factor, gap = tale.get(match, 2), tale.get(match, 3)
    k = factor.value if factor else Fraction(2)
    if gap is None or k == 1 or len(tale.numbers) != (2 if factor else 1):
        return None
    if not tale.asks_for(_THE_NUMBER):
        return None
    by = -gap.value if match["way"].lower() == "less" else gap.value
    return reads("so many times the number is so much more than it", by / (k - 1))


_SUM = late(
    rf"\b(?:sum|total) of (?:the )?(?:{SLOT} )?numbers is ({SLOT})|\badd up to ({SLOT})|"
    rf"\b(?:sum|total) (?:is|of) ({SLOT})(?! numbers)",
    re.I,
)
_DIFFERENCE = late(
    rf"\bdifference(?: between (?:them|the (?:two )?numbers))? (?:is|of) ({SLOT})", re.I
)


def _two_numbers(tale: Tale) -> Reading | None:
    if not late_search(r"\bnumbers\b", tale.text):
        return None
    total, gap = _SUM.search(tale.told), _DIFFERENCE.search(tale.told)
    if total is None or gap is None:
        return None
    whole = tale.get(total, 1) or tale.get(total, 2) or tale.get(total, 3)
    less = tale.get(gap, 1)
    if whole is None or less is None:
        return None
    if tale.asks_for(r"\b(?:larger|greater|bigger|largest)\b"):
        return reads("the larger of the two", (whole.value + less.value) / 2)
    if tale.asks_for(r"\b(?:smaller|lesser|smallest)\b"):
        return reads("the smaller of the two", (whole.value - less.value) / 2)
    return None
