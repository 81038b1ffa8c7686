"""What a hand-written question about a figure asks its answer to be, beside what is read.

A figure that bears a bare number says nothing of its unit, so that *in metres* changes it in a way
that nobody can check; and *what percentage* is not answered by a fraction.
"""

from __future__ import annotations

import re

from itembank.bank.question.given.maths import Maths, words_of
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.figures.figure import kind_of, read, words
from itembank.items.asks.of_figure import OF_ANSWER, OfFigure
from itembank.items.forms.number_forms import unsigned
from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import exact_or_none
from itembank.text.in_words import with_article
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.tasks.answers.answer_phrases import (
    number_kind_asked,
    says_as_decimal,
    says_rounded,
)

_KINDS: tuple[tuple[str, tuple[type[t.Node], ...]], ...] = (
    ("decimal", (t.Dec, t.Int)),
    ("percentage", (t.Percent,)),
    ("mixed number", (t.Mixed,)),
    ("improper fraction", (t.Frac,)),
)
_STOP = re.compile(r"(?<=[.?!])\s+")
_SIZED = (t.Quantity, t.Money, t.MixedUnits, t.ClockTime, t.Percent)


def hold_reading(asked: OfFigure, maths: Maths) -> None:
    """Hold a key to the kind of number, and the words to the unit, that a figure can answer.

    Raises
    ------
    NeedsPerson
        If the key is another kind of number than is asked for, if the words ask for a unit of which
        the figure says nothing, or if a reading may be taken in two ways.
    """
    said = words_of(maths)
    for _, reading in asked.readings:
        if doubt := kind_of(asked.figure).doubtful(asked.figure, reading):
            raise NeedsPerson(f"{doubt[:1].upper()}{doubt[1:]}.")
    _hold_order(asked, maths.key)
    if kind := number_kind_asked(said):
        _hold_kind(kind, maths.key, exact=not says_rounded(said) or says_as_decimal(said))
    for sentence in _STOP.split(said):
        bare = sentence.rstrip(".?! ")
        unit = unit_said(bare) if OF_ANSWER.fullmatch(bare) else ""
        if unit not in ("", "°") and not _sized(asked) and not _borne(asked, unit):
            raise NeedsPerson(f"Its words ask for {_name(unit)}, and the figure says none.")


def _hold_order(asked: OfFigure, key: t.Node) -> None:
    """Ask for the members of a set, or the numbers of a range, from the smallest on."""
    if not isinstance(key, t.Listing) or not any(
        reading.name in kind_of(asked.figure).sets | {"integers"} for _, reading in asked.readings
    ):
        return
    numbers = [exact_or_none(part) for part in key.parts]
    known = [number for number in numbers if number is not None]
    if len(known) == len(numbers) and known != sorted(known):
        raise NeedsPerson("Write the numbers of the key from the smallest on.")


def _hold_kind(kind: str, key: t.Node, exact: bool) -> None:
    if kind == "fraction":
        if not exact:
            raise NeedsPerson("The words ask for a fraction, and to round it.")
    elif not isinstance(unsigned(key), dict(_KINDS)[kind]):
        raise NeedsPerson(f"The question asks for {with_article(kind)}, and the key is none.")


def _sized(asked: OfFigure) -> bool:
    """Tell whether what is read bears a unit of its own."""
    found = [asked.target, *(read(asked.figure, reading) for _, reading in asked.readings)]
    if t.symbols(asked.target) and not asked.readings:
        return False
    return any(isinstance(part, _SIZED) for node in found for part in t.walk(node))


def _borne(asked: OfFigure, unit: str) -> bool:
    shown = words(asked.figure)
    facts = UNITS.get(unit) or CURRENCY[unit]
    return any(
        re.search(rf"(?<![A-Za-z]){re.escape(name)}(?![A-Za-z])", shown)
        for name in (unit, facts.singular, facts.many)
    )


def _name(unit: str) -> str:
    return (UNITS.get(unit) or CURRENCY[unit]).many
