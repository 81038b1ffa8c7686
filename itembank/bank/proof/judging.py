"""Judges many items, so that none of them can hold up the others.

An item whose proof goes on without end, or ends the process it runs in, is left to a person, and
the rest go on.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

from itembank.processes.lost import Lost
from itembank.processes.work_place import Place, Progress, ThisMachine, all_or_lost
from itembank.proof.outcome import Outcome, State

T = TypeVar("T")

FEW = 6
"""So few items are judged in this process: starting others would take longer."""
LONGEST = 30.0
"""Seconds that the proof of one item may take before it is left to a person."""
CUT_OFF = "Its proof"
BROKE_OFF = "The proof broke off"


def judge_all(
    items: Sequence[T],
    how: Callable[[T], Outcome],
    report: Progress | None = None,
    place: Place | None = None,
    longest: float = LONGEST,
) -> list[Outcome]:
    """Return the outcome of every item, in their order.

    Parameters
    ----------
    items
        What is to be judged: items, or what `how` makes them of; each is judged once.
    how
        What judges one of them. It should raise nothing.
    report
        Called after each item with (items judged, items in all).
    place
        Where they are judged; default, on as many processes of this machine as it has cores.
    longest
        Seconds that one item may take; after that it needs a person.
    """
    found = all_or_lost(
        place or ThisMachine(), how, items, report, longest=longest, few=FEW, loads=["sympy"]
    )
    return [
        Outcome(State.NEEDS_PERSON, f"{CUT_OFF} {outcome.why}.")
        if isinstance(outcome, Lost)
        else outcome
        for outcome in found
    ]


def was_cut_off(outcome: Outcome) -> bool:
    """Tell whether a proof was not brought to its end, so that another try may find more.

    >>> was_cut_off(Outcome(State.NEEDS_PERSON, "Its proof took longer than 30 s."))
    True
    >>> was_cut_off(Outcome(State.PROVED))
    False
    """
    return outcome.says.startswith((f"{CUT_OFF} ended ", f"{CUT_OFF} took ", BROKE_OFF))
