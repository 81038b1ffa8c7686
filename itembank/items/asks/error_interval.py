"""Give every number that rounds, or is truncated, to the one that is printed."""

from __future__ import annotations

from typing import Any, Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, only, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class ErrorInterval(Ask):
    """Give the interval of all numbers that come to `value` where they are rounded as it was.

    It was rounded to `amount` decimal places or significant figures, or to the nearest `amount`,
    halves up; with `way` *down* it was truncated. The number is above 0, and so the interval has
    its lower end and has not its upper one: 3.35 ≤ x < 3.45 for 3.4 to one decimal place (common
    practice in schools, no source).
    """

    letter: t.Node
    value: t.Node
    detail: Literal["places", "figures", "nearest"]
    amount: int
    way: Literal["nearest", "down"] = "nearest"


def _restore(stored: Stored) -> ErrorInterval:
    letter, value, amount = only(stored, 3)
    way: Any = stored.way
    if not isinstance(amount, t.Int) or not isinstance(letter, t.Sym):
        raise t.NotationError("an error interval has a letter and a whole number of places")
    if way not in ("nearest", "down"):
        raise t.NotationError("a number with an error interval was rounded or truncated")
    to = detail(stored, "error-interval", ("places", "figures", "nearest"))
    return ErrorInterval(letter, value, to, amount.n, way)


ERROR_INTERVAL = register_kind(
    Kind(
        "error-interval",
        ErrorInterval,
        trees=lambda ask: (ask.letter, ask.value),
        store=lambda ask: Stored(
            (ask.letter, ask.value, t.Int(ask.amount)), detail=ask.detail, way=ask.way
        ),
        restore=_restore,
        twin=lambda ask, form: (
            ("error-interval", ask.detail, ask.amount, ask.way),
            (ask.value,),
            (),
        ),
        does="give an error interval",
        answerable=True,
        numbers="rounded",
        layers=Layers(
            first_road="itembank.proof.exact.error_intervals:find_interval",
            second_road="itembank.proof.sympy.sympy_error_intervals:error_interval",
            working="itembank.proof.lines.line_of_equations:interval_fault",
            bank="itembank.bank.question.key_form:RANGE",
            printed="itembank.proof.claim.printed:interval_unprinted",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:RANGE",
            difficulty="itembank.items.measures.difficulty_by_kind:ERROR_INTERVAL",
        ),
    )
)
