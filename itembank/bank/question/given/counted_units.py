"""Units in the braces and units in the words: how many of one there are in an amount."""

from __future__ import annotations

from contextlib import suppress

from itembank.bank.question.given.maths import Maths
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.notation import tree as t
from itembank.notation.clock import times_in
from itembank.notation.units import CURRENCY
from itembank.proof.claim.dimensions import dimension
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.story.numbers.units_agree import unit_after
from itembank.wording.tasks.answers.written_how import (
    asks_how_many,
    nearest_coin,
)


def counted_as_number(args: list[t.Node], words: str, key: t.Node) -> t.Node | None:
    """Return *how many minutes are in {2.5 h}* as 2.5 h ÷ 1 min, where the key is a bare number."""
    unit = unit_said(words)
    bare = not _has_unit(key)
    if not (unit and bare and len(args) == 1 and asks_how_many(words)):
        return None
    lasts = isinstance(args[0], t.Sum) and times_in(args[0]) == 0
    if not (_has_unit(args[0]) or lasts):
        return None
    # £200 ÷ £15 is a number already: it counts the weeks themselves.
    with suppress(t.NotationError):
        measures = dimension(args[0])
        if not measures:
            return None
        if unit == "°" and "temperature" in measures:
            unit = "°C"  # how many degrees warmer
    single: t.Node = t.Money(t.Int(1), unit) if unit in CURRENCY else t.Quantity(t.Int(1), unit)
    return t.Product(args[0], (("÷", single),))


def _has_unit(node: t.Node) -> bool:
    return any(isinstance(part, t.Quantity | t.Money) for part in t.walk(node))


def units_inside(maths: Maths, args: list[t.Node], words: str, task: str) -> None:
    """Raise NeedsPerson where a unit is asked for and the number's own stands outside its braces.

    *A film lasts {2} hours. How many seconds is that?* has two seconds in its braces.
    """
    if any(_has_unit(node) or isinstance(node, t.ClockTime) for node in args):
        return
    asked = unit_said(words) or nearest_coin(words)
    if not asked:
        return
    if task not in ("convert", "round", "work-out"):
        return
    if unit_after(maths.runs) != {asked}:
        raise NeedsPerson(
            "The question asks for another unit than its braces hold: write the unit in the braces "
            "with its number, as {2 h}."
        )
