"""Say whether an answer that is given to a question is right."""

from __future__ import annotations

from dataclasses import replace

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, kind_of, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Answered(Ask):
    """Say whether somebody's `answer` to `of`, in the `form` that it asks for, is right.

    The key is the name *true* or *false*; the reason is said aloud.
    """

    of: Ask
    answer: t.Node
    form: str


def _store(ask: Answered) -> Stored:
    return replace(kind_of(ask.of).store(ask.of), answers=(ask.answer,), form=ask.form)


def _restore(stored: Stored) -> Ask:
    # In a file it stands under the name of the kind that is answered (:mod:`.packs.data.asks`).
    raise t.NotationError("there is no question that is answered")


def _twin(ask: Answered, form: str) -> Twin:
    kind, row, bag = kind_of(ask.of).twin(ask.of, ask.form)
    return (*kind, "answered"), (*row, ask.answer), bag


ANSWERED = register_kind(
    Kind(
        "answered",
        Answered,
        trees=lambda ask: (*kind_of(ask.of).trees(ask.of), ask.answer),
        store=_store,
        restore=_restore,
        twin=_twin,
        does="say whether an answer is right",
        relations=True,
        filed=False,
        told="true or false",
        judges=True,
        wrong_answers=1,
        numbers="factored",
        layers=Layers(
            first_road="itembank.proof.exact.answers_judged:judge_answer",
            second_road="itembank.proof.sympy.sympy_judged:judged",
            working="itembank.proof.lines.line_rules:inner_fault",
            bank="itembank.bank.question.key_form:TRUTH_OF_ANSWER",
            printed="itembank.proof.claim.printed:answers_unprinted",
            repeating="itembank.proof.claim.repeats:answer_repeats",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:TRUTH",
            difficulty="itembank.items.measures.difficulty_by_kind:JUDGED",
            later="itembank.items.measures.later_content:answered_content",
        ),
    )
)
