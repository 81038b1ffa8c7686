"""Round a number."""

from __future__ import annotations

from typing import Any, Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, only, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Round(Ask):
    """Round `target` to `amount` decimal places or significant figures, or to the nearest `amount`.

    Halves are rounded away from zero (common practice in schools, no source). With `way` *down*
    the digits after the last that is kept are dropped, so that a number is truncated; *up* goes
    to the next one away from zero where anything was dropped.
    """

    target: t.Node
    detail: Literal["places", "figures", "nearest"]
    amount: int
    way: Literal["nearest", "down", "up"] = "nearest"


def _restore(stored: Stored) -> Round:
    target, amount = only(stored, 2)
    if not isinstance(amount, t.Int):
        raise t.NotationError("a number is rounded to a whole number of places")
    way: Any = stored.way
    if way not in ("nearest", "down", "up"):
        raise t.NotationError("a number is rounded to the nearest, down or up")
    return Round(target, detail(stored, "round", ("places", "figures", "nearest")), amount.n, way)


ROUND = register_kind(
    Kind(
        "round",
        Round,
        trees=lambda ask: (ask.target,),
        store=lambda ask: Stored((ask.target, t.Int(ask.amount)), detail=ask.detail, way=ask.way),
        restore=_restore,
        twin=lambda ask, form: (
            ("round", ask.detail, ask.amount, ask.way),
            (ask.target,),
            (),
        ),
        does="round",
        told="round",
        answerable=True,
        numbers="rounded",
        layers=Layers(
            first_road="itembank.proof.exact.rounding:find_rounded",
            second_road="itembank.proof.sympy.sympy_integers:rounded",
            working="itembank.proof.lines.line_of_value:rounded_fault",
            bank="itembank.bank.question.key_form:ROUNDED",
            measuring="itembank.proof.claim.key_fits:rounding_measures",
            repeating="itembank.proof.claim.repeats:rounding_repeats",
            forms="itembank.proof.exact.key_forms:ROUNDED",
            marking="itembank.marking.worth.marked_by_kind:ROUND",
            difficulty="itembank.items.measures.difficulty_by_kind:ROUND",
            tasks=(("round", "itembank.bank.question.tasks.task_asks:round_number"),),
        ),
    )
)
