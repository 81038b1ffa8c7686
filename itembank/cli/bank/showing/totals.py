"""How many questions of a bank are in which state, in a sentence."""

from __future__ import annotations

from collections import Counter

from itembank.files.faults import join_words
from itembank.text.in_words import counted


def totals(questions: int, proofs: Counter[str], signs: Counter[str], retired: int) -> str:
    """Return how many items are in which state, in a sentence; retired ones are that alone."""
    parts = [f"{proofs[name]:,} {name}" for name in ("proved", "disproved") if proofs[name]]
    if needs := proofs["needs a person"]:
        parts.append(f"{counted(needs, 'needs', 'need')} a person")
    if retired:
        parts.append(f"{retired:,} retired")
    signed = [f"{signs[name]:,} {name}" for name in ("signed", "stale") if signs[name]]
    if questions > retired and not signed:
        signed = ["signed by nobody yet"]
    return (
        "; ".join(
            [
                f"{counted(questions, 'question')}: {join_words(parts)}",
                *filter(None, [join_words(signed)]),
            ]
        )
        + "."
    )
