"""The outcome of proving one item: proved, disproved, or left to a person.

A pack stops at the first key that is not proved; a bank wants to hear about every one of its
items. So :func:`judge` answers for any item and raises nothing.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from itembank.checking import prove_fast, prove_symbolic
from itembank.checking.finding import WrongKey
from itembank.errors import CheckFailed
from itembank.items.item import Item


class State(StrEnum):
    """What is known about a key."""

    PROVED = "proved"
    DISPROVED = "disproved"
    NEEDS_PERSON = "needs a person"


@dataclass(frozen=True, slots=True)
class Outcome:
    """What the two roads make of an item.

    `says` is a sentence for a teacher: why the key is disproved or cannot be proved; it is
    empty when the key is proved. `first` and `second` are the answers of the exact road and of
    sympy in line notation, empty where a road has none.
    """

    state: State
    says: str = ""
    first: str = ""
    second: str = ""


def judge(item: Item) -> Outcome:
    """Return what both roads make of the key of `item`; never raises.

    >>> from itembank.items.item import Find, Tier
    >>> from itembank.notation import parse
    >>> target = parse("3/4 + 1/6")
    >>> def asked(key):
    ...     return Item(
    ...         "fernhill:a", "fractions", Tier.CORE, ("Work out ", target, "."), Find(target),
    ...         parse(key), "lowest-terms", (), (), (), 1, (),
    ...     )
    >>> judge(asked("11/12")).state
    <State.PROVED: 'proved'>
    >>> judge(asked("4/10")).state
    <State.DISPROVED: 'disproved'>
    """
    for prove in (prove_fast, prove_symbolic):
        try:
            prove(item)
        except WrongKey as error:
            return Outcome(State.DISPROVED, str(error))
        except CheckFailed as error:
            return Outcome(State.NEEDS_PERSON, str(error))
        except Exception as error:
            return Outcome(State.NEEDS_PERSON, f"the proof went wrong: {error}")
    return Outcome(State.PROVED)
