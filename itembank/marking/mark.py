"""The verdict on a typed answer: right, right in another form, a known mistake, or wrong.

No text raises, and none costs much: text past the limits of :mod:`.typed` is refused before it
is looked at, and arithmetic is bounded before it begins (:mod:`.worth`).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from itembank.items.item import Item, Misconception
from itembank.marking.form import asked_for, completed, form_of, rounding_fault, unrounded
from itembank.marking.policy import policy
from itembank.marking.same import missing, same
from itembank.marking.tidy import alike, tidy
from itembank.marking.typed import Unreadable, read_answer, setting
from itembank.marking.worth import says_the_same
from itembank.notation.tree import Either, Node, NotationError, Percent, Relation, Sym


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


def mark(item: Item, answer: str) -> Marked:
    """Return the verdict on a typed answer. Never raises, whatever was typed.

    >>> from itembank.items.registry import find_item
    >>> item = find_item("fractions.improper-mixed/core/0")
    >>> from itembank.notation.line import line
    >>> mark(item, line(item.key)).verdict
    <Verdict.RIGHT: 'right'>
    """
    try:
        typed = read_answer(answer, setting(item))
    except Unreadable as error:
        return Marked(Verdict.UNREADABLE, str(error))
    try:
        return _verdict(item, typed)
    except (NotationError, RecursionError, OverflowError):
        # An answer that arithmetic cannot follow is not worth what any key is worth.
        return Marked(Verdict.WRONG)


def _verdict(item: Item, typed: Node) -> Marked:
    how = policy(item)
    given = tidy(typed)
    if same(given, item.key, how.within, how.ordered):
        fault = form_of(item, how, typed, given)
        if not fault:
            return Marked(Verdict.RIGHT)
        return _known(item, given, exactly=True) or Marked(
            Verdict.WRONG_FORM, f"The value is right. {asked_for(item, how, fault)}"
        )
    known = _known(item, given, exactly=False)
    if known:
        return known
    if unrounded(how, given, item.key):
        fault = rounding_fault(how, given, item.key) or "it is not rounded"
        return Marked(Verdict.WRONG_FORM, f"The value is right. {asked_for(item, how, fault)}")
    if isinstance(item.key, Percent) and same(given, item.key.of):
        return Marked(Verdict.WRONG_FORM, "The number is right. The per cent sign is missing.")
    return Marked(Verdict.WRONG, _hint(item, given))


def _known(item: Item, given: Node, exactly: bool) -> Marked | None:
    """Return the misconception an answer shows: by its value, or `exactly` as it is written.

    A mistake of form alone, such as cancelling too little, is worth the same as the key; only
    what is written tells it from other forms.
    """
    for slip in item.slips:
        wrong = tidy(slip.wrong)
        if alike(completed(given, wrong), wrong) if exactly else same(given, wrong):
            return Marked(Verdict.KNOWN, slip.misconception.ask, slip.misconception)
    return None


def _hint(item: Item, given: Node) -> str:
    """Return what may be said of a wrong answer that has something right about it."""
    key = item.key
    if isinstance(key, Either):
        left = missing(given, key)
        if left > 0:
            more = "Another answer is" if left == 1 else f"{left} more answers are"
            return f"What is given is right. {more} missing."
    if (
        isinstance(key, Relation)
        and isinstance(key.first, Sym)
        and isinstance(given, Relation)
        and says_the_same(given, key)
    ):
        return f"That is true, but {key.first.name} does not stand alone on one side."
    return ""
