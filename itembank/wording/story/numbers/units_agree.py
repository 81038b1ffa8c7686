"""Whether the units a story names beside bare numbers are of one size, or its model changes them."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import pairwise

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS, unit_known
from itembank.notation.value import exact
from itembank.text.in_words import with_article
from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import UNIT, UNITS_ASKED, unit_names
from itembank.wording.sentences.prompt import SLOT, index_of, slotted
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.story.numbers.story import Story

_UNIT_AFTER = late(
    rf"({SLOT})[ -]?(?P<unit>{UNIT})(?![\w^])(?: (?:per|an|a|each|every) (?P<per>{UNIT})(?![\w^]))?",
    re.I,
)

_RATE = late(
    rf"{SLOT}(?: \w+){{0,2}}? (?:for )?(?:per|an?|each|every) (?P<per>{UNIT}|month|year)(?![\w^])",
    re.I,
)

_SAID_IN = late(rf"\b(?:in|how many) (?P<unit>{UNITS_ASKED})(?![\w^])", re.I)

_FOR_A = late(r"\bfor (?:an?|the|one|the whole|a whole) (hour|day|week|month|year)\b", re.I)

_SPANS: dict[str, dict[str, int]] = {
    "month": {"year": 12}, "week": {"year": 52, "day": 7}, "day": {"week": 7, "hour": 24, "year": 365},
    "year": {"month": 12, "week": 52},
}  # fmt: skip
"""How many of a span make another, where a story counts by one and asks about the other."""

_FREE = ("day", "week", "month", "year")
"""Spans that stories count by, as *{2} hours on {5} days*: not two units of one amount."""


def units_fault(story: Story) -> str:
    """Return how units named beside bare numbers, or asked for, are not of one size."""
    names = unit_names()
    said = slotted(story.runs)
    named: dict[str, str] = {}
    for match in _UNIT_AFTER.finditer(said.text):
        if _is_bare(said.nodes[index_of(match[1])]):
            found = [match["unit"]] if not match["unit"].lower().startswith(_FREE) else []
            _note(named, [*found, match["per"]])
    rates = [match["per"] for match in _RATE.finditer(said.text)]
    spans = [match[1] for match in _FOR_A.finditer(said.text)]
    counted = [
        word.lower().removesuffix("s")
        for word in re.findall(
            r"\b(days|weeks|months|years|hours)\b", "".join(questions(story.runs))
        )
    ]
    for rate in rates:
        strange = [word for word in counted if word != rate.lower() and rate.lower() in _SPANS]
        if strange and not ({_SPANS[rate.lower()].get(strange[0], 0)} & _factors(story)):
            return (
                f"The amount is for {with_article(rate)}, and the question speaks of {strange[0]}s."
            )
        factor = _SPANS.get(rate.lower(), {}).get(spans[0].lower(), 0) if spans else 0
        if spans and spans[0].lower() != rate.lower() and factor not in _factors(story):
            return (
                f"The amount is for {with_article(rate)}, and the words speak of "
                f"{with_article(spans[0])}: add a model."
            )
    _note(named, rates)
    _note(named, [match["unit"] for match in _SAID_IN.finditer(said.text)] if named else [])
    said_in = {names[match["unit"].casefold()] for match in _SAID_IN.finditer(said.text)}
    if not named and len(said_in) < 2:
        return ""
    _note(named, [unit_known(unit).many for unit in said_in])
    asked = unit_said(story.words)
    if asked:
        for unit in _made_of(asked):
            named.setdefault(unit, unit_known(unit).many)
    by_dimension: dict[str, list[str]] = {}
    for unit in named:
        by_dimension.setdefault(unit_known(unit).dimension, []).append(unit)
    factors = _factors(story)
    modelled = {
        UNITS[part.unit].dimension
        for node in story.used
        for part in t.walk(node)
        if isinstance(part, t.Quantity)
    }
    for name, units in by_dimension.items():
        if name in modelled:
            continue  # the model has units of its own
        sizes = sorted({unit_known(unit).size for unit in units})
        if any(not ({high / low, low / high} & factors) for low, high in pairwise(sizes)):
            first, second = (named[unit] for unit in units[:2])
            return (
                f"{first} and {second} both stand outside {{ }}, and the model does not change one "
                "into the other: put the units in { } with their numbers."
            )
    return ""


def unit_after(runs: Sequence[Run]) -> set[str]:
    """Return the units that stand in words after bare numbers.

    >>> unit_after(("A film lasts ", t.Int(2), " hours."))
    {'h'}
    """
    said, names = slotted(runs), unit_names()
    return {
        names[match["unit"].casefold()]
        for match in _UNIT_AFTER.finditer(said.text)
        if _is_bare(said.nodes[index_of(match[1])])
    }


def _factors(story: Story) -> set[Fraction]:
    """Return the numbers that the model has more often than the prompt prints them.

    The 60 of *{60} km in {30} minutes* is a distance, and changes no minutes to hours.
    """
    printed = _numbers(run for run in story.runs if not isinstance(run, str))
    return set(_numbers(story.used) - printed) | {Fraction(n) for n in story.constants}


def _numbers(nodes: Iterable[t.Node]) -> Counter[Fraction]:
    values = (
        exact(part) for node in nodes for part in t.walk(node) if isinstance(part, t.Int | t.Dec)
    )
    return Counter(values)


def _made_of(unit: str) -> tuple[str, ...]:
    """Return the units that a rate is made of, km and h of km/h; a plain unit alone."""
    parts = tuple(unit.split("/"))
    return parts if all(part in UNITS or part in CURRENCY for part in parts) else (unit,)


def _note(named: dict[str, str], words: Iterable[str | None]) -> None:
    """Add the units that words name, each with its word."""
    names = unit_names()
    for word in filter(None, words):
        unit = names.get(word.casefold())
        if unit:
            named.setdefault(unit, word)


def _is_bare(node: t.Node) -> bool:
    return not any(isinstance(part, t.Quantity | t.Money) for part in t.walk(node))
