"""Find the highest common factor or the lowest common multiple."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Common(Ask):
    """Find the highest common factor or the lowest common multiple of whole numbers."""

    numbers: tuple[t.Node, ...]
    detail: Literal["hcf", "lcm"]


def _restore(stored: Stored) -> Common:
    return Common(stored.target, detail(stored, "common", ("hcf", "lcm")))


COMMON = register_kind(
    Kind(
        "common",
        Common,
        trees=lambda ask: ask.numbers,
        store=lambda ask: Stored(ask.numbers, detail=ask.detail),
        restore=_restore,
        twin=lambda ask, form: (("common", ask.detail), (), ask.numbers),
        does="find a common factor or multiple",
        answerable=True,
        numbers="factored",
        layers=Layers(
            first_road="itembank.proof.exact.integers:find_common",
            second_road="itembank.proof.sympy.sympy_integers:common",
            working="itembank.proof.lines.line_of_terms:common_fault",
            bank="itembank.bank.question.key_form:COMMON",
            marking="itembank.marking.worth.marked_by_kind:COMMON",
            trying="itembank.marking.telling.tried:common_tried",
            difficulty="itembank.items.measures.difficulty_by_kind:COMMON",
            tasks=(
                ("hcf", "itembank.bank.question.tasks.task_asks:hcf"),
                ("lcm", "itembank.bank.question.tasks.task_asks:lcm"),
            ),
        ),
    )
)
