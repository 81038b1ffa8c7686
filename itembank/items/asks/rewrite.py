"""Write an expression in another way: simplified, expanded, factorised."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, only, register_kind
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Rewrite(Ask):
    """Write `target` in another way without changing its value, whatever its letters are worth."""

    target: t.Node
    detail: Literal["simplify", "expand", "factorise"]


def _restore(stored: Stored) -> Rewrite:
    (target,) = only(stored, 1)
    return Rewrite(target, detail(stored, "rewrite", ("simplify", "expand", "factorise")))


REWRITE = register_kind(
    Kind(
        "rewrite",
        Rewrite,
        trees=lambda ask: (ask.target,),
        store=lambda ask: Stored((ask.target,), detail=ask.detail),
        restore=_restore,
        twin=lambda ask, form: (("rewrite", ask.detail), (ask.target,), ()),
        does="write an expression in another way",
    )
)
