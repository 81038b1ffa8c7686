"""What is known about a key once it was looked at: the words for it, and nothing that finds it."""

from __future__ import annotations

from enum import StrEnum

from itembank.data_class import dataclass


class State(StrEnum):
    """What is known about a key."""

    PROVED = "proved"
    DISPROVED = "disproved"
    NEEDS_PERSON = "needs a person"


@dataclass(frozen=True, slots=True)
class Outcome:
    """What the two roads make of an item.

    `says` is a sentence for a teacher: why the key is disproved or cannot be proved; it is empty
    when the key is proved. `modelled` says that what is proved is a model of the words. `first`
    and `second` are the answers of the exact road and of sympy in line notation, empty where a
    road has none.
    """

    state: State
    says: str = ""
    first: str = ""
    second: str = ""
    modelled: bool = False
