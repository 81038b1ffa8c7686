"""The second road: sympy, from the printed tree by its symbolic face only.

Each kind of question names what finds its answer, in a module that imports sympy.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.errors import CheckFailed
from itembank.items.asks import Handlers
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, WrongKey
from itembank.proof.claim.key_fits import mismatched
from itembank.proof.claim.not_understood import not_understood
from itembank.proof.claim.printed import unprinted
from itembank.proof.measured.step_pictures_measured import measured_picture_fault


def prove(item: Item) -> None:
    """Prove the key of `item` with sympy.

    Raises
    ------
    WrongKey
        If sympy's answer and the key differ; the message gives both.
    CheckFailed
        If sympy cannot settle the question.
    """
    try:
        fault = unprinted(item) or mismatched(item) or by_second_road(item).fault
    except t.NotationError as error:
        raise CheckFailed(f"{item.address}: this question cannot be proved: {error}") from error
    if fault:
        raise WrongKey(f"{item.address}: {fault}")


def by_second_road(item: Item) -> Finding:
    """Return what sympy makes of the question, and how the key differs from it.

    Raises
    ------
    NotationError
        If sympy cannot settle it.
    """
    find = ROAD.of(item.ask)
    try:
        finding = find(item.ask, item.key)
        if not finding.fault and (clause := measured_picture_fault(item)):
            return Finding(finding.answer, clause)
        return finding
    except t.NotationError:
        raise
    except Exception as error:  # sympy has many, and their words are for programmers
        raise NotExact(
            f"the second road does not get through {not_understood(item.ask)}"
        ) from error


ROAD: Handlers[Callable[[Any, t.Node], Finding]] = Handlers("second_road", "sympy")
"""What sympy makes of each kind of question, and how a key differs from it."""
