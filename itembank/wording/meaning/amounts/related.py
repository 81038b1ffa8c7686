"""Amounts that a story relates to each other, worked out from its sentences alone.

*Ann has £24, which is £7 more than Ben has*; *twice as many buses as coaches*; *in 3 years Ben will
be 20*: each is an equation, and what the question asks for follows from them or does not.
"""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late
from itembank.wording.kinds.things_counted import noun_stem
from itembank.wording.meaning.told.relation_wordings import LESS, MORE, TOGETHER
from itembank.wording.meaning.told.relations_told import relations_told
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_NOT_READ = late(
    r"\b(?:each|left|change|percent\w*|fraction|ratio|ratios|mean|average|spends?|gives?|then|if|when|"
    r"perimeter|area|volume|width|length|rectangle|triangle|angles?|per|every|an hour|a day|a week|"
    r"consecutive|next|remain\w*|after)\b",
    re.I,
)
_IN_YEARS = late(rf"\bin (?P<n>{SLOT}) years?(?:'? time)?\b|\bin (?P<m>{SLOT}) years'", re.I)
_AGO = late(rf"(?P<n>{SLOT}) years? ago\b", re.I)


def related_reading(tale: Tale) -> Reading | None:
    """Return what a story of amounts that are compared comes to by its words."""
    if _NOT_READ.search(tale.text) or len(tale.numbers) < 1:
        return None
    told = relations_told(tale)
    if told is None or not told.compared:
        return None
    names = sorted({name for row, _ in told.rows for name in row})
    if not 2 <= len(names) <= 5 or len(told.totals) > 1:
        return None
    rows = [*told.rows, *((dict.fromkeys(names, Fraction(1)), total) for total in told.totals)]
    worth = solved(names, rows)
    if worth is None or any(value < 0 for value in worth.values()):
        return None
    return _asked(tale, worth)


def solved(
    names: list[str], rows: list[tuple[dict[str, Fraction], Fraction]]
) -> dict[str, Fraction] | None:
    """Return what each name is worth, or None where the equations leave it open or clash.

    >>> one, two = Fraction(1), Fraction(2)
    >>> solved(["a", "b"], [({"a": one, "b": one}, Fraction(9)), ({"a": one, "b": -two}, Fraction(0))])
    {'a': Fraction(6, 1), 'b': Fraction(3, 1)}
    """
    table = [[row.get(name, Fraction(0)) for name in names] + [value] for row, value in rows]
    for column in range(len(names)):
        pivot = next((i for i in range(column, len(table)) if table[i][column]), None)
        if pivot is None:
            return None
        table[column], table[pivot] = table[pivot], table[column]
        head = table[column][column]
        table[column] = [value / head for value in table[column]]
        for i, line in enumerate(table):
            if i != column and line[column]:
                factor = line[column]
                table[i] = [v - factor * w for v, w in zip(line, table[column], strict=True)]
    if any(line[-1] for line in table[len(names) :]):
        return None
    return {name: table[i][-1] for i, name in enumerate(names)}


def _asked(tale: Tale, worth: dict[str, Fraction]) -> Reading | None:
    question = re.sub(SLOT, " ", tale.question)
    words = [noun_stem(word) for word in re.findall(r"[A-Za-z'-]+", question)]
    named = [name for name in worth if name in words]
    numbers = [n for n in tale.numbers if tale.asked(n)]
    if late_search(rf"\b(?:{MORE}|{LESS})\b", question) and late_search(r"\bthan\b", question):
        if len(named) != 2 or numbers:
            return None
        low, high = sorted(worth[name] for name in named)
        return reads("the difference of what the two come to", high - low)
    if late_search(
        rf"\b(?:{MORE}|{LESS}|difference|twice|half|times|cost of (?!an? |one |the )|not)\b",
        question,
    ):
        return None
    shift = Fraction(0)
    if numbers:
        later, ago = _IN_YEARS.search(tale.question), _AGO.search(tale.question)
        moved = later or ago
        number = moved and (tale.get(moved, "n") or (tale.get(moved, "m") if later else None))
        if not number or len(numbers) != 1:
            return None
        shift = number.value / 12 if number.measure == "calendar time" else number.value
        shift = shift if later else -shift
    if late_search(rf"\b(?:{TOGETHER}|total|sum|both|do they have)\b", question):
        if named and set(named) != set(worth):
            return None
        return reads("all of them together", sum(worth.values(), Fraction(0)) + shift * len(worth))
    if len(named) != 1:
        return None
    return reads(f"what the words say of ‘{named[0]}’", worth[named[0]] + shift)
