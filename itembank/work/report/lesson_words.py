"""The words in which recording and deciding speak of a lesson's results."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from itembank.records.reports.decision import Decision


def bands_line(decision: Decision) -> str:
    """Return the number of pupils in each band, in one line; empty where that is not known."""
    return ", ".join(f"{group.name} {group.pupils}" for group in decision.groups)


def asked_line(decision: Decision) -> str:
    """Return which questions were not asked, and what the scores are then out of; or nothing."""
    from itembank.records.entries.questions_asked import not_asked_said

    said = []
    if decision.not_asked:
        missing = not_asked_said(decision.not_asked)
        said.append(f"{missing} The starter counts out of {decision.out_of}.")
    if decision.unlike:
        said.append(
            "Some pupils were asked fewer questions than others: each is in the band of the marks "
            "that they could have, and bands are shown out of the most."
        )
    return " ".join(said)


def overall_line(decision: Decision) -> str:
    """Return the advice on the whole starter in one line; empty without results."""
    if decision.overall is None:
        return ""
    return f"Overall: {decision.overall.words}. {decision.overall.why}"
