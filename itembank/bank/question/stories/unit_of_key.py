"""The unit of a key where the model has none: *{80} m long and {50} m wide*, 80 × 50, 4000 m^2.

A bare number of a model counts as metres, kilograms and pounds, so a key in another unit would be
compared with the wrong number. The words beside the braces may say which unit is meant.
"""

from __future__ import annotations

from dataclasses import replace

from itembank.bank.question.given.maths import Maths
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.items.item import Ask, Find
from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS, unit_known
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.story.numbers.units_agree import unit_after

_MEASURES = (t.Quantity, t.Money, t.MixedUnits, t.ClockTime)


def with_unit_of_key(ask: Ask, maths: Maths, used: tuple[t.Node, ...]) -> Ask:
    """Return the question with its answer in the key's unit, where only words say the unit.

    Raises:
        NeedsPerson: the words do not say that the numbers are in the key's unit.
    """
    if any(isinstance(part, _MEASURES) for node in used for part in t.walk(node)):
        return ask
    units = {_unit(part) for part in t.walk(maths.key) if isinstance(part, t.Quantity | t.Money)}
    if not units:
        return ask
    if len(units) > 1 or not isinstance(ask, Find):
        raise NeedsPerson(_says(*units))
    (unit,) = units
    beside = unit_after(maths.runs)
    words = "".join(run for run in maths.runs if isinstance(run, str))
    inside = {
        _unit(part)
        for run in maths.runs
        if not isinstance(run, str)
        for part in t.walk(run)
        if isinstance(part, t.Quantity | t.Money)
    }
    needed = _made_of(unit)
    others = {
        u for u in beside | inside if unit_known(u).dimension in map(_dimension, needed)
    } - needed
    if others or not (needed <= beside | inside or (unit_said(words) == unit and needed & beside)):
        raise NeedsPerson(_says(unit))
    single: t.Node = t.Money(t.Int(1), unit) if unit in CURRENCY else t.Quantity(t.Int(1), unit)
    target = ask.target if isinstance(ask.target, t.Sym | t.Int) else t.Bracket(ask.target)
    return replace(ask, target=t.Product(target, (("×", single),)))


def _made_of(unit: str) -> set[str]:
    """Return the units that the numbers of a model have to be in: m for m^2, km and h for km/h."""
    base = unit.partition("^")[0]
    if base != unit and base in UNITS:
        return {base}
    parts = unit.split("/")
    if unit == "mph":
        parts = [*[name for name in ("mile", "mi", "miles") if name in UNITS][:1], "h"]
    return set(parts) if all(part in UNITS for part in parts) else {unit}


def _unit(part: t.Quantity | t.Money) -> str:
    return part.unit if isinstance(part, t.Quantity) else part.sign


def _dimension(unit: str) -> str:
    return unit_known(unit).dimension


def _says(*units: str) -> str:
    names = " and ".join(sorted(unit_known(unit).many for unit in units))
    return (
        f"The key is in {names}, and the model has no units: write the units in the model as the "
        "prompt has them, or give the key as a bare number."
    )
