"""Round what is taken from a figure: an area with π in it, a side, an angle, a mean."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, detail, kind_of, register_kind
from itembank.items.asks.layers import Layers
from itembank.items.asks.of_figure import OF_FIGURE, READ_A_PICTURE, OfFigure
from itembank.items.asks.round import Round
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class RoundReading(Ask):
    """Round what `of` takes from a figure, as :class:`Round` rounds a number.

    >>> from itembank.figures.kinds.plane.circle import Circle
    >>> from itembank.items.asks.of_figure import of_figure
    >>> from itembank.notation.parse import parse
    >>> circle = Circle(radius=parse("5 cm"))
    >>> of = of_figure(circle, ("Work out the area of the circle to 1 decimal place.",))
    >>> RoundReading(of, "places", 1).of.readings[0][1].name
    'area'
    """

    of: OfFigure
    detail: Literal["places", "figures", "nearest"]
    amount: int
    way: Literal["nearest", "down", "up"] = "nearest"


ROUNDED: tuple[type[Ask], ...] = (Round, RoundReading)
"""The kinds whose answer is rounded: they have the same `detail`, `amount` and `way`."""


def figure_asked(ask: Ask) -> OfFigure | None:
    """Return what a question takes from a figure, rounded or not; None where it takes nothing."""
    if isinstance(ask, RoundReading):
        return ask.of
    return ask if isinstance(ask, OfFigure) else None


def _store(ask: RoundReading) -> Stored:
    stored = OF_FIGURE.store(ask.of)
    amount = t.Int(ask.amount)
    return replace(stored, target=(*stored.target, amount), detail=ask.detail, way=ask.way)


def _restore(stored: Stored) -> RoundReading:
    *target, amount = stored.target or (None,)
    if not isinstance(amount, t.Int):
        raise t.NotationError("what is read is rounded to a whole number of places")
    way: Any = stored.way
    if way not in ("nearest", "down", "up"):
        raise t.NotationError("what is read is rounded to the nearest, down or up")
    of = OF_FIGURE.restore(replace(stored, target=tuple(target)))
    assert isinstance(of, OfFigure)
    return RoundReading(
        of, detail(stored, "round reading", ("places", "figures", "nearest")), amount.n, way
    )


def _twin(ask: RoundReading, form: str) -> Twin:
    said, row, bag = kind_of(ask.of).twin(ask.of, form)
    return (*said, "rounded", ask.detail, ask.amount, ask.way), row, bag


ROUND_READING = register_kind(
    Kind(
        "round reading",
        RoundReading,
        trees=lambda ask: (ask.of.target,),
        store=_store,
        restore=_restore,
        twin=_twin,
        does="round what a figure shows",
        told=READ_A_PICTURE,
        answerable=True,
        numbers="rounded",
        layers=Layers(
            first_road="itembank.proof.exact.readings_found:find_read_rounded",
            second_road="itembank.proof.sympy.sympy_readings:rounded_reading",
            working="itembank.proof.lines.line_of_value:read_rounded_fault",
            bank="itembank.bank.question.key_form:ROUNDED",
            printed="itembank.proof.claim.printed:rounded_reading_unprinted",
            measuring="itembank.proof.claim.key_fits:rounded_reading_measures",
            forms="itembank.proof.exact.key_forms:ROUNDED",
            marking="itembank.marking.worth.marked_by_kind:ROUND_READING",
            difficulty="itembank.items.measures.difficulty_by_kind:ROUND_READING",
        ),
    )
)
