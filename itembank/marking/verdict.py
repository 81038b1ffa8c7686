"""What a typed answer is worth, and what is told of it."""

from __future__ import annotations

from enum import StrEnum

from itembank.data_class import dataclass
from itembank.items.item import Misconception


class Verdict(StrEnum):
    """What an answer is worth."""

    RIGHT = "right"
    WRONG_FORM = "right value, wrong form"
    KNOWN = "known wrong method"
    WRONG = "wrong"
    UNREADABLE = "unreadable"


@dataclass(frozen=True, slots=True)
class Marked:
    """A verdict, with the sentence that goes with it and the misconception it shows."""

    verdict: Verdict
    says: str = ""
    misconception: Misconception | None = None
