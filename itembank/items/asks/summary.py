"""Find the mean, the median, the mode or the range of a list of numbers."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Nodes, Stored, detail, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t

SummaryName = Literal["mean", "median", "mode", "range"]
SUMMARIES: tuple[SummaryName, ...] = ("mean", "median", "mode", "range")


@dataclass(frozen=True, slots=True)
class Summary(Ask):
    """Find one number that sums a list up; `numbers` are in the order in which they are printed.

    The *mean* is the total over how many there are, the *median* the middle one in order of size
    (half way between the two middle ones of an even number), the *mode* the one there is most
    often, the *range* the largest less the smallest. A list with two modes, or none, has no
    answer.
    """

    numbers: Nodes
    detail: SummaryName


def _restore(stored: Stored) -> Summary:
    if len(stored.target) < 2:
        raise t.NotationError("a mean, median, mode or range is of two numbers or more")
    return Summary(stored.target, detail(stored, "summary", SUMMARIES))


SUMMARY = register_kind(
    Kind(
        "summary",
        Summary,
        trees=lambda ask: ask.numbers,
        store=lambda ask: Stored(ask.numbers, detail=ask.detail),
        restore=_restore,
        twin=lambda ask, form: (("summary", ask.detail), (), ask.numbers),
        does="find a mean, a median, a mode or a range",
        answerable=True,
        layers=Layers(
            first_road="itembank.proof.exact.values_found:find_summary",
            second_road="itembank.proof.sympy.sympy_summaries:summary",
            working="itembank.proof.lines.line_of_value:summary_fault",
            bank="itembank.bank.question.key_form:SUMMARY",
            printed="itembank.proof.claim.printed:summary_unprinted",
            measuring="itembank.proof.claim.key_fits:summary_measures",
            forms="itembank.proof.exact.key_forms:IN_WORDS",
            difficulty="itembank.items.measures.difficulty_by_kind:SUMMARY",
        ),
    )
)
