"""One of several solutions or shares: the positive one, the larger."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal, TypeAlias

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, kind_of, register_kind
from itembank.items.asks.find_value import Find
from itembank.items.asks.layers import Layers
from itembank.items.asks.solve import Solve
from itembank.notation import tree as t

Which: TypeAlias = Literal["largest", "smallest", "positive", "negative"]
"""One of several solutions or shares."""


@dataclass(frozen=True, slots=True)
class Pick(Ask):
    """Of the solutions of `of`, or of the parts of its target, give only the one that is named.

    *The positive solution*, *the larger share*: the key is that one, alone.
    """

    of: Find | Solve
    which: Which


def _store(ask: Pick) -> Stored:
    return replace(kind_of(ask.of).store(ask.of), pick=ask.which)


def _restore(stored: Stored) -> Ask:
    # In a file it stands under the name of the kind it picks from (:func:`.data.from_data`).
    raise t.NotationError("there is nothing to pick from")


def _twin(ask: Pick, form: str) -> Twin:
    kind, row, bag = kind_of(ask.of).twin(ask.of, form)
    return (*kind, ask.which), row, bag


PICK = register_kind(
    Kind(
        "pick",
        Pick,
        trees=lambda ask: kind_of(ask.of).trees(ask.of),
        store=_store,
        restore=_restore,
        twin=_twin,
        does="pick one of several answers",
        filed=False,
        answerable=True,
        layers=Layers(
            first_road="itembank.proof.exact.picking:find_picked",
            second_road="itembank.proof.sympy.sympy_solving:picked",
            working="itembank.proof.lines.line_rules:inner_fault",
            bank="itembank.bank.question.key_form:PICKED",
            repeating="itembank.proof.claim.repeats:pick_repeats",
        ),
    )
)
