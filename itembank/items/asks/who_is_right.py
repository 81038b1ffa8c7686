"""Say who of several people gives the right answer to a question."""

from __future__ import annotations

from dataclasses import replace

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, kind_of, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class WhoIsRight(Ask):
    """Of the `answers` to the question `of`, each with who gives it, one alone is right.

    The key is the name of who gives it; right is what has the `form` that `of` asks for too.
    """

    of: Ask
    answers: tuple[tuple[str, t.Node], ...]
    form: str


def _store(ask: WhoIsRight) -> Stored:
    return replace(
        kind_of(ask.of).store(ask.of),
        answers=tuple(node for _, node in ask.answers),
        labels=tuple(name for name, _ in ask.answers),
        form=ask.form,
    )


def _restore(stored: Stored) -> Ask:
    # In a file it stands under the name of the kind that is answered.
    raise t.NotationError("there is no question that is answered")


def _twin(ask: WhoIsRight, form: str) -> Twin:
    kind, row, bag = kind_of(ask.of).twin(ask.of, ask.form)
    return (*kind, "who is right"), row, (*bag, *(node for _, node in ask.answers))


WHO_IS_RIGHT = register_kind(
    Kind(
        "who is right",
        WhoIsRight,
        trees=lambda ask: (*kind_of(ask.of).trees(ask.of), *(node for _, node in ask.answers)),
        store=_store,
        restore=_restore,
        twin=_twin,
        does="say whose answer is right",
        relations=True,
        filed=False,
        told="who is right",
        judges=True,
        wrong_answers=1,
        numbers="factored",
        layers=Layers(
            first_road="itembank.proof.exact.answers_judged:judge_answers",
            second_road="itembank.proof.sympy.sympy_judged:who",
            working="itembank.proof.lines.line_rules:inner_fault",
            bank="itembank.bank.question.key_form:NAME_OF_SOLVER",
            printed="itembank.proof.claim.printed:answers_unprinted",
            repeating="itembank.proof.claim.repeats:answers_repeat",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:WHO_IS_RIGHT",
            difficulty="itembank.items.measures.difficulty_by_kind:JUDGED",
            later="itembank.items.measures.later_content:who_content",
        ),
    )
)
