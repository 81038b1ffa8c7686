"""Write an expression in another way: simplified, expanded, factorised."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, only, register_kind
from itembank.items.asks.layers import Layers
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
        answerable=True,
        layers=Layers(
            first_road="itembank.proof.exact.identity:find_rewritten",
            second_road="itembank.proof.sympy.sympy_algebra:rewritten",
            working="itembank.proof.lines.line_of_value:rewritten_fault",
            bank="itembank.bank.question.key_form:REWRITTEN",
            repeating="itembank.proof.claim.repeats:rewriting_repeats",
            forms="itembank.proof.exact.key_forms:REWRITTEN",
            marking="itembank.marking.worth.marked_by_kind:REWRITE",
            difficulty="itembank.items.measures.difficulty_by_kind:REWRITE",
            later="itembank.items.measures.later_content:rewriting_content",
            tasks=(
                ("simplify", "itembank.bank.question.tasks.letter_tasks:simplify"),
                ("expand", "itembank.bank.question.tasks.letter_tasks:expand"),
                ("factorise", "itembank.bank.question.tasks.letter_tasks:factorise"),
            ),
        ),
    )
)
