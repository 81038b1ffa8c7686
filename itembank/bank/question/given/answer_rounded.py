"""Questions whose answer is rounded, where the words say so."""

from __future__ import annotations

from contextlib import suppress

from itembank.bank.question.given.maths import Maths
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.items.asks.of_figure import as_find
from itembank.items.item import Ask, Find, OfFigure, Pick, Round, RoundReading, Solve
from itembank.notation import tree as t
from itembank.notation.units import UNITS
from itembank.notation.value import exact
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.tasks.answers.answer_phrases import (
    nearest_unit,
    rounding,
    rounding_way,
    says_rough,
    says_rounded,
)


def rounded(ask: Ask, maths: Maths, words: str) -> Ask:
    """Return the question with its answer rounded, where the words say so."""
    made = _with_rounding(ask, maths, words)
    if isinstance(made, Round):
        _same_unit(maths.key, nearest_unit(words))
    return made


def rounded_reading(ask: OfFigure, maths: Maths, words: str) -> Ask:
    """Return a question about a figure with its answer rounded, where the words say so.

    Raises
    ------
    NeedsPerson
        If the words speak of rounding in another way, or what is read is no number.
    """
    if not says_rounded(words):
        return ask
    found, way = rounding(words), rounding_way(words)
    if found is None or way is None:
        raise NeedsPerson("The words speak of rounding in a way that is not worked out here.")
    if isinstance(as_find(ask).target, t.Listing | t.Ratio | t.Relation | t.Label):
        raise NeedsPerson("Only a number is rounded here.")
    if _whole_in_another_unit(maths.key, nearest_unit(words)):
        raise NeedsPerson(
            f"The words round to the nearest {nearest_unit(words)}: give the key in that unit."
        )
    return RoundReading(ask, *found, way)


def _same_unit(key: t.Node, name: str) -> None:
    # To the nearest centimetre may be given as 3.46 m, but is worked out here in centimetres.
    if _whole_in_another_unit(key, name):
        raise NeedsPerson(f"The words round to the nearest {name}: give the key in that unit.")


def _whole_in_another_unit(key: t.Node, name: str) -> bool:
    unit = unit_names().get(name.casefold(), "")
    if unit not in UNITS or not isinstance(key, t.Quantity) or key.unit == unit:
        return False
    with suppress(t.NotationError):
        return (exact(key) / UNITS[unit].size).denominator == 1
    return False


def _with_rounding(ask: Ask, maths: Maths, words: str) -> Ask:
    if isinstance(ask, Round) or not (says_rounded(words) or says_rough(words)):
        return ask
    if says_rough(words):
        if maths.model:
            return ask
        raise NeedsPerson("The words ask for an estimate or a bound: add a model of what is meant.")
    if not isinstance(ask, Find | Solve | Pick):
        return ask
    found, way = rounding(words), rounding_way(words)
    if not isinstance(ask, Find) or ask.relations or found is None or way is None:
        raise NeedsPerson("The words speak of rounding in a way that is not worked out here.")
    if isinstance(ask.target, t.Listing | t.Ratio) or t.symbols(ask.target) - {"π"}:
        raise NeedsPerson("Only a number is rounded here.")
    if "penny" in words and isinstance(maths.key, t.Money) and maths.key.sign == "p":
        raise NeedsPerson("Give a key to the nearest penny in pounds, as £0.45.")
    return Round(ask.target, *found, way)
