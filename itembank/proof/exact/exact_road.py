"""The first road: exact arithmetic and exact substitution, without sympy."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.errors import CheckFailed
from itembank.items.asks import Handlers
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.proof.claim.finding import Finding, WrongKey
from itembank.proof.claim.key_fits import mismatched
from itembank.proof.claim.printed import unprinted
from itembank.proof.claim.repeats import REPEATS, repeats
from itembank.proof.claim.step_pictures import picture_fault
from itembank.proof.exact.judged_form import form_left_open
from itembank.proof.exact.key_forms import key_form_fault


def prove_fast(item: Item) -> None:
    """Prove the key of `item` from what is printed, and check its form.

    Raises
    ------
    WrongKey
        If the answer worked out here and the key differ; the message gives both.
    CheckFailed
        If the key has the wrong form, only repeats the question, or the question is not the
        one printed.
    """
    try:
        fault = unprinted(item) or mismatched(item)
        if not fault:
            first = by_first_road(item)
            fault = form_left_open(item, first.answer) or first.fault
    except t.NotationError as error:
        raise CheckFailed(f"{item.address}: this question cannot be proved: {error}") from error
    if fault:
        raise WrongKey(f"{item.address}: {fault}")
    fault = key_form_fault(item)
    if fault:
        raise CheckFailed(f"{item.address}: the key has the wrong form: {fault}")
    if repeats(item):
        raise CheckFailed(f"{item.address}: {REPEATS}")


def by_first_road(item: Item) -> Finding:
    """Return what exact arithmetic makes of the question, and how the key differs from it.

    Raises
    ------
    NotationError
        If the question, or the key, is past what exact arithmetic can do.
    """
    finding = ROAD.of(item.ask)(item.ask, item.key)
    if not finding.fault and (clause := picture_fault(item)):
        return Finding(finding.answer, clause)
    return finding


ROAD: Handlers[Callable[[Any, t.Node], Finding]] = Handlers("first_road", "exact arithmetic")
"""What exact arithmetic makes of each kind of question, and how a key differs from it."""
