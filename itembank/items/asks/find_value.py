"""Work something out: a sum, or an expression whose letters are given or settled."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, only, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t

NUMBER_FORMS = frozenset({"value", "number", "fraction", "lowest-terms", "improper", "mixed"})
NUMBER_FORMS |= {"simplest", "integer", "solution", "roots", "amount", "quantity", "money"}
"""Forms that say how the answer to a calculation is written, not which question it is."""


@dataclass(frozen=True, slots=True)
class Find(Ask):
    """Work out `target`, given that every relation holds.

    With no relations the target is worked out as it stands. With relations the letters
    (or the empty box) are unknowns; the target is an expression, a ratio or a list in them.
    """

    target: t.Node
    relations: tuple[t.Relation, ...] = ()


def _twin(ask: Find, form: str) -> Twin:
    calculation = ask.relations or any(map(t.is_operation, t.walk(ask.target)))
    said = "number" if calculation and form in NUMBER_FORMS else form
    return ("find", said), (ask.target,), ask.relations


def _restore(stored: Stored) -> Find:
    return Find(only(stored, 1)[0], stored.relations)


FIND = register_kind(
    Kind(
        "find",
        Find,
        trees=lambda ask: (ask.target, *ask.relations),
        store=lambda ask: Stored((ask.target,), ask.relations),
        restore=_restore,
        twin=_twin,
        does="work something out",
        relations=True,
        model=lambda ask: ask.relations,
        answerable=True,
        layers=Layers(
            first_road="itembank.proof.exact.values_found:find_worth",
            second_road="itembank.proof.sympy.sympy_worth:worth",
            working="itembank.proof.lines.line_of_value:worth_fault",
            bank="itembank.bank.question.key_form:FOUND",
            fitting="itembank.proof.claim.key_fits:another_letter",
            measuring="itembank.proof.claim.key_fits:found_measures",
            repeating="itembank.proof.claim.repeats:found_repeats",
            forms="itembank.proof.exact.key_forms:FOUND",
            worth="itembank.proof.likely_mistakes:found_worth",
            marking="itembank.marking.worth.marked_by_kind:FIND",
            difficulty="itembank.items.measures.difficulty_by_kind:FIND",
            later="itembank.items.measures.later_content:finding_content",
            tasks=(
                ("work-out", "itembank.bank.question.tasks.task_asks:work_out"),
                ("missing", "itembank.bank.question.tasks.task_asks:missing"),
                ("share", "itembank.bank.question.tasks.task_asks:share"),
                ("convert", "itembank.bank.question.tasks.task_asks:convert"),
                ("prime-factors", "itembank.bank.question.tasks.task_asks:prime_factors"),
            ),
        ),
    )
)
