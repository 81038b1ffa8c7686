"""Find the highest common factor or the lowest common multiple."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, register_kind
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
    )
)
