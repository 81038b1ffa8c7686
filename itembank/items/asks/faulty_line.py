"""Find the line of a solution that does not follow, and put the solution right."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t

MOST_LINES = 4


@dataclass(frozen=True, slots=True)
class FaultyLine(Ask):
    """Of the `lines` that lead on from `question` one alone does not follow from the one before.

    The key is its name, *line 2*, and what the question comes to: a number or an expression, or
    the solution of an equation.
    """

    question: t.Node
    lines: tuple[t.Node, ...]


def line_name(number: int) -> t.Label:
    """Return the name of a line, numbered from 1.

    >>> line_name(2).text
    'line 2'
    """
    return t.Label(f"line {number}")


def _restore(stored: Stored) -> FaultyLine:
    if not 3 <= len(stored.target) <= MOST_LINES + 1:
        raise t.NotationError(f"a solution with a mistake takes a question and 2 to {MOST_LINES}")
    question, *lines = stored.target
    return FaultyLine(question, tuple(lines))


FAULTY_LINE = register_kind(
    Kind(
        "faulty line",
        FaultyLine,
        trees=lambda ask: (ask.question, *ask.lines),
        store=lambda ask: Stored((ask.question, *ask.lines)),
        restore=_restore,
        twin=lambda ask, form: (("faulty line",), (ask.question, *ask.lines), ()),
        does="find the line with a mistake",
        told="spot the mistake",
        frame=True,
        layers=Layers(
            first_road="itembank.proof.exact.cards:find_faulty",
            second_road="itembank.proof.sympy.sympy_cards:faulty_line",
            working="itembank.proof.lines.line_of_cards:solution_fault",
            bank="itembank.bank.question.key_form:LINE_AND_RESULT",
            printed="itembank.proof.claim.printed:frame_unprinted",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:LINE_AND_RESULT",
            difficulty="itembank.items.measures.difficulty_by_kind:FAULTY_LINE",
        ),
    )
)
