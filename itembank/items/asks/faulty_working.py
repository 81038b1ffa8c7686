"""Find the line of somebody's working that is wrong, and answer the question it is about."""

from __future__ import annotations

from dataclasses import replace

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, kind_of, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class FaultyWorking(Ask):
    """Of the `lines` that somebody writes to answer `of` one alone is wrong.

    The first is worth the answer, and each after it what the line before is worth, but for one.
    The key is the name of that line and the answer, in the `form` that the question asks for.
    """

    of: Ask
    lines: tuple[t.Node, ...]
    form: str


def _store(ask: FaultyWorking) -> Stored:
    return replace(kind_of(ask.of).store(ask.of), answers=ask.lines, form=ask.form)


def _restore(stored: Stored) -> Ask:
    # In a file it stands under the name of the kind that is answered (:mod:`.packs.data.asks`).
    raise t.NotationError("there is no question that is answered")


def _twin(ask: FaultyWorking, form: str) -> Twin:
    kind, row, bag = kind_of(ask.of).twin(ask.of, ask.form)
    return (*kind, "faulty working"), (*row, *ask.lines), bag


FAULTY_WORKING = register_kind(
    Kind(
        "faulty working",
        FaultyWorking,
        trees=lambda ask: (*kind_of(ask.of).trees(ask.of), *ask.lines),
        store=_store,
        restore=_restore,
        twin=_twin,
        does="find the line with a mistake",
        relations=True,
        filed=False,
        told="spot the mistake",
        judges=True,
        numbers="factored",
        layers=Layers(
            first_road="itembank.proof.exact.answers_judged:judge_working",
            second_road="itembank.proof.sympy.sympy_judged:faulty_working",
            working="itembank.proof.lines.line_rules:inner_fault",
            bank="itembank.bank.question.key_form:LINE_OF_WORKING",
            printed="itembank.proof.claim.printed:working_unprinted",
            repeating="itembank.proof.claim.repeats:working_repeats",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:LINE_AND_RESULT",
            difficulty="itembank.items.measures.difficulty_by_kind:JUDGED",
            later="itembank.items.measures.later_content:working_content",
        ),
    )
)
