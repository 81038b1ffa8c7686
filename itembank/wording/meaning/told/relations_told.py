"""What sentences tell of named amounts: Ann has £7 more than Ben, twice as many buses as coaches.

Every clause that holds a number has to be read as one equation between named amounts; one that
is not read leaves the whole story unread.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction

from itembank.wording.kinds.things_counted import noun_stem
from itembank.wording.meaning.told.relation_wordings import (
    COMPARED,
    HAS_VERB,
    IN_YEARS,
    MORE,
    OPENING,
    SIMPLE,
    SPLIT,
    SUM_OF,
    SUM_OF_MANY,
    THERE_MORE,
    THERE_TIMES,
    TIMES_OF,
    TIMES_SHORT,
    WHICH,
    YEARS_AGO,
)
from itembank.wording.meaning.told.tale import Number, Tale

_SMALL = frozenset(
    ("a", "an", "the", "his", "her", "its", "their", "my", "our", "one", "of", "that", "what", "does", "do", "did")
)  # fmt: skip
_PRONOUNS = frozenset(("he", "she", "it", "they", "which", "who"))
_CONTAINERS = frozenset(("ticket", "bar", "card", "bag", "box", "tin", "pack"))
_IRREGULAR = frozenset(("people", "children", "men", "women", "sheep", "geese", "mice"))
_WORD = {"twice": Fraction(2), "double": Fraction(2), "half": Fraction(1, 2)}


@dataclass(slots=True)
class Relations:
    """Equations between named amounts: {name: factor} comes to a number."""

    rows: list[tuple[dict[str, Fraction], Fraction]] = field(default_factory=list)
    totals: list[Fraction] = field(default_factory=list)
    compared: bool = False


@dataclass(slots=True)
class _State:
    found: Relations
    used: set[str]
    things: set[str]
    subject: str = ""


Reader = Callable[[Tale, re.Match[str], _State], bool]


def relations_told(tale: Tale) -> Relations | None:
    """Return what a story tells of its amounts, or None where a number of it is not read."""
    clauses = _clauses(tale)
    things = {
        noun_stem(match[name].split()[-1])
        for clause in clauses
        for pattern in (THERE_MORE, THERE_TIMES, COMPARED, TIMES_OF)
        if (match := pattern.fullmatch(clause)) and _of_things(match)
        for name in ("a", "b")
        if pattern in (THERE_MORE, THERE_TIMES) or name == "b"
    } | {
        noun_stem((match["thing"] or "").split()[-1])
        for clause in clauses
        for pattern in (COMPARED, TIMES_OF)
        if (match := pattern.fullmatch(clause)) and match["thing"] and _of_things(match)
    }
    state = _State(Relations(), set(), things)
    for clause in clauses:
        numbers = [c for c in clause if c in tale.by_char]
        turns = re.search(r"\b(?:twice|double|half|as (?:many|much|old))\b", clause)
        if not _read_clause(tale, clause, state) and (numbers or turns):
            return None
    if state.used != {n.char for n in tale.numbers if n.char in tale.told}:
        return None
    return state.found


def _clauses(tale: Tale) -> list[str]:
    found: list[str] = []
    for sentence in tale.sentences:
        if sentence.strip() and sentence.strip() in tale.question:
            continue
        parts = SPLIT.split(sentence)
        merged: list[str] = []
        for part in parts:
            # Ann and Ben have £58: the words before ‘and’ say nothing alone.
            if merged and not HAS_VERB.search(merged[-1]):
                merged[-1] += " and " + part
            else:
                merged.append(part)
        found += [OPENING.sub("", part.strip()) for part in merged]
    return found


def _of_things(match: re.Match[str]) -> bool:
    """Whether two kinds of things are compared: as many buses as coaches, not as Ben."""
    groups = match.groupdict()
    if "tail" in groups:
        return True
    words = match["b"].split()
    plural = len(words) == 1 and (
        words[0] in _IRREGULAR or (words[0].endswith("s") and not words[0].endswith(("ss", "'s")))
    )
    return bool(groups.get("thing")) and plural and words[0].islower()


def name_of(words: str, subject: str = "") -> str:
    """Return the name under which an amount is known: the last noun of some words.

    >>> [name_of(words) for words in ("her mother", "Ann", "the coaches", "Ben's sister")]
    ['mother', 'ann', 'coach', 'sister']
    """
    kept = [w for w in re.findall(r"[A-Za-z'-]+", words) if w.lower() not in _SMALL]
    if not kept:
        return ""
    if kept[-1].lower() in _PRONOUNS:
        return subject
    if re.search(r"\b(?:and|or|each|both|than|as)\b", words):
        return ""
    if len(kept) > 1 and noun_stem(kept[-1].lower()) in _CONTAINERS:
        return noun_stem(kept[-2])  # an adult ticket, a child ticket
    return noun_stem(kept[-1])


def _read_clause(tale: Tale, clause: str, state: _State) -> bool:
    for pattern, read in _READS:
        match = pattern.fullmatch(clause)
        if match is not None and read(tale, match, state):
            return True
    return False


def _row(state: _State, value: Fraction, *terms: tuple[str, Fraction | int], used: str) -> bool:
    row: dict[str, Fraction] = {}
    for name, factor in terms:
        if not name:
            return False
        row[name] = row.get(name, Fraction(0)) + Fraction(factor)
    if len(row) != len(terms):
        return False
    state.found.rows.append((row, value))
    state.used |= set(used)
    return True


def _ends(match: re.Match[str], state: _State) -> tuple[str, str]:
    if _of_things(match):
        first = match["a"] if "tail" in match.groupdict() else match["thing"]
        return name_of(first), name_of(match["b"])
    a, b = name_of(match["a"], state.subject), name_of(match["b"], state.subject)
    return a, b


def _compared(tale: Tale, match: re.Match[str], state: _State) -> bool:
    number = tale.get(match, "n")
    a, b = _ends(match, state)
    if number is None or number.measure == "part":
        return False
    sign = 1 if re.fullmatch(MORE, match["way"], re.I) else -1
    state.found.compared = True
    _remember(state, a)
    if number.measure == "percent":
        return _row(state, Fraction(0), (a, 1), (b, -(1 + sign * number.value)), used=number.char)
    return _row(state, sign * _years(number), (a, 1), (b, -1), used=number.char)


def _times(tale: Tale, match: re.Match[str], state: _State) -> bool:
    a, b = _ends(match, state)
    factor, used = _factor(tale, match)
    if factor is None:
        return False
    state.found.compared = True
    _remember(state, a)
    return _row(state, Fraction(0), (a, 1), (b, -factor), used=used)


def _times_short(tale: Tale, match: re.Match[str], state: _State) -> bool:
    before = state.subject
    a = name_of(match["a"], before)
    factor, used = _factor(tale, match)
    if factor is None or not before or a == before:
        return False
    state.found.compared = True
    _remember(state, a)
    return _row(state, Fraction(0), (a, 1), (before, -factor), used=used)


def _which(tale: Tale, match: re.Match[str], state: _State) -> bool:
    a, b = state.subject, name_of(match["b"])
    state.found.compared = True
    if number := tale.get(match, "n"):
        sign = 1 if re.fullmatch(MORE, match["way"], re.I) else -1
        if number.measure in ("part", "percent"):
            return False
        return _row(state, sign * _years(number), (a, 1), (b, -1), used=number.char)
    factor, used = _factor(tale, match)
    return factor is not None and _row(state, Fraction(0), (a, 1), (b, -factor), used=used)


def _factor(tale: Tale, match: re.Match[str]) -> tuple[Fraction | None, str]:
    if match["word"]:
        return _WORD[match["word"].lower()], ""
    number = tale.get(match, "k")
    return (number.value, number.char) if number else (None, "")


def _aged(sign: int) -> Reader:
    def read(tale: Tale, match: re.Match[str], state: _State) -> bool:
        years = tale.get(match, "n") or tale.get(match, "n2")
        age = tale.get(match, "m") or tale.get(match, "m2")
        a = name_of(match["a"] or match["a2"], state.subject)
        if years is None or age is None:
            return False
        _remember(state, a)
        value = _years(age) - sign * _years(years)
        return _row(state, value, (a, 1), used=years.char + age.char)

    return read


def _sum_of(tale: Tale, match: re.Match[str], state: _State) -> bool:
    number = next((n for i in ("m", "m2", "m3", "m4", "m5") if (n := tale.get(match, i))), None)
    if number is None:
        return False
    state.found.totals.append(_years(number))
    state.used.add(number.char)
    return True


def _sum_of_many(tale: Tale, match: re.Match[str], state: _State) -> bool:
    """Read three pens and two rulers cost £2.60: so many of each, and what all come to."""
    whole = tale.get(match, "m")
    terms = []
    used = ""
    for term in re.split(r", and |, | and ", match["terms"]):
        first, _, noun = term.partition(" ")
        number = tale.by_char.get(first)
        terms.append((name_of(noun), number.value if number else Fraction(1)))
        used += number.char if number else ""
    if whole is None or whole.measure in ("part", "percent"):
        return False
    state.found.compared = True
    return _row(state, _years(whole), *terms, used=used + whole.char)


def _simple(tale: Tale, match: re.Match[str], state: _State) -> bool:
    number = tale.get(match, "n")
    if number is None or number.measure in ("part", "percent"):
        return False
    thing = match["thing"].split()
    noun = next((noun_stem(w) for w in thing if noun_stem(w) in state.things), "")
    if not noun and re.match(r"(?:there|they)\b", match["a"], re.I):
        return False
    a = noun or name_of(match["a"], state.subject)
    _remember(state, a)
    return _row(state, _years(number), (a, 1), used=number.char)


def _remember(state: _State, name: str) -> None:
    if name:
        state.subject = name


def _years(number: Number) -> Fraction:
    """Return years as a plain number; twelve months are one."""
    return number.value / 12 if number.measure == "calendar time" else number.value


_READS: tuple[tuple[re.Pattern[str], Reader], ...] = (
    (IN_YEARS, _aged(1)),
    (YEARS_AGO, _aged(-1)),
    (WHICH, _which),
    (THERE_MORE, _compared),
    (THERE_TIMES, _times),
    (COMPARED, _compared),
    (TIMES_OF, _times),
    (TIMES_SHORT, _times_short),
    (SUM_OF_MANY, _sum_of_many),
    (SUM_OF, _sum_of),
    (SIMPLE, _simple),
)
