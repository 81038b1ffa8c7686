"""The second road: sympy, from the printed tree by its symbolic face only.

Importing this module imports sympy.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable
from typing import Any

from itembank.errors import CheckFailed
from itembank.items.asks import (
    Answered,
    Choose,
    Common,
    Compare,
    Draw,
    Equivalent,
    ErrorInterval,
    FaultyLine,
    FaultyWorking,
    Find,
    Give,
    Handlers,
    Inequality,
    Match,
    Members,
    OddOneOut,
    OfFigure,
    Order,
    Pick,
    Rewrite,
    Round,
    RoundReading,
    Sequence,
    Solve,
    Subject,
    Summary,
    TrueOrFalse,
    TwoNumbers,
    WhoIsRight,
)
from itembank.items.asks.of_figure import is_range, relations_in
from itembank.items.asks.round_reading import figure_asked
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, WrongKey, found, ordinal
from itembank.proof.claim.judged import find_faulty_working, find_judged, find_who
from itembank.proof.claim.key_fits import mismatched
from itembank.proof.claim.key_solutions import Misfit, says, value_given
from itembank.proof.claim.not_understood import not_understood
from itembank.proof.claim.printed import unprinted
from itembank.proof.measured.drawn_answers_measured import measure_drawn
from itembank.proof.measured.measure import as_measured, disagreement, measured_name
from itembank.proof.measured.step_pictures_measured import measured_picture_fault
from itembank.proof.sympy.sympy_algebra import rewritten, subject
from itembank.proof.sympy.sympy_cards import faulty_line, odd_one_out, pairs, same, truth
from itembank.proof.sympy.sympy_equivalents import equivalent
from itembank.proof.sympy.sympy_error_intervals import error_interval
from itembank.proof.sympy.sympy_giving import given
from itembank.proof.sympy.sympy_integers import common, nth_term, rounded, rounded_value
from itembank.proof.sympy.sympy_members import members
from itembank.proof.sympy.sympy_solving import inequality, picked, settled, solutions
from itembank.proof.sympy.sympy_summaries import summary
from itembank.proof.sympy.sympy_text import sympy_text
from itembank.proof.sympy.sympy_two_numbers import two_numbers
from itembank.proof.sympy.sympy_zero import is_zero


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
    try:
        finding = ROAD.of(item.ask)(item.ask, item.key)
        if not finding.fault and (clause := measured_picture_fault(item)):
            return Finding(finding.answer, clause)
        return finding
    except t.NotationError:
        raise
    except Exception as error:  # sympy has many, and their words are for programmers
        raise NotExact(
            f"the second road does not get through {not_understood(item.ask)}"
        ) from error


ROAD: Handlers[Callable[[Any, t.Node], Finding]] = Handlers("sympy")
"""What sympy makes of each kind of question, and how a key differs from it."""

ROAD.by_kind |= {
    Find: lambda ask, key: _find(ask.target, ask.relations, key),
    Inequality: lambda ask, key: inequality(ask.relation, key),
    Order: lambda ask, key: _order(ask.things, key, ask.detail == "descending"),
    Compare: lambda ask, key: _compare(ask.left, ask.right, key),
    Choose: lambda ask, key: _choose(ask.options, key, 1 if ask.detail == "least" else -1),
    Rewrite: lambda ask, key: rewritten(ask.target, key),
    Solve: lambda ask, key: solutions(ask.relations, key),
    Pick: picked,
    Subject: lambda ask, key: subject(ask.relation, ask.letter, key),
    Sequence: lambda ask, key: nth_term(ask.terms, key),
    Common: lambda ask, key: common(ask.numbers, ask.detail, key),
    Round: lambda ask, key: rounded(ask.target, ask.detail, ask.amount, key, ask.way),
    Give: given,
    TwoNumbers: two_numbers,
    ErrorInterval: error_interval,
    Equivalent: equivalent,
    OfFigure: lambda ask, key: _of_figure(ask, key),
    RoundReading: lambda ask, key: _round_reading(ask, key),
    Draw: measure_drawn,
    Summary: summary,
    TrueOrFalse: truth,
    Answered: lambda ask, key: _judged(ask, key),
    WhoIsRight: lambda ask, key: find_who(ask, key, ROAD),
    OddOneOut: odd_one_out,
    FaultyLine: faulty_line,
    FaultyWorking: lambda ask, key: _faulty_working(ask, key),
    Match: pairs,
    Members: members,
}


def _of_figure(ask: OfFigure, key: t.Node) -> Finding:
    if parting := disagreement(ask.figure):
        return Finding("", parting)
    if (name := measured_name(ask)) is not None:
        return found(name, key, key == name)
    question = as_measured(ask)
    if isinstance(question.target, t.Relation) and is_range(question.target):
        return inequality(question.target, key)
    if isinstance(question.target, t.Relation) and isinstance(question.target.first, t.Sym):
        return subject(question.target, question.target.first, key)
    if given := relations_in(question.target):
        return solutions(given, key)
    return _find(question.target, question.relations, key)


def _round_reading(ask: RoundReading, key: t.Node) -> Finding:
    if parting := disagreement(ask.of.figure):
        return Finding("", parting)
    question = as_measured(ask.of)
    (value,) = _pieces(question.target)
    if question.relations:
        (value,) = settled([value], question.relations, False)
    return rounded_value(value, ask.detail, ask.amount, key, ask.way)


def _judged(ask: Answered, key: t.Node) -> Finding:
    of = figure_asked(ask.of)
    if of is not None and (parting := disagreement(of.figure)):
        return Finding("", parting)  # a drawing that lies makes no answer wrong
    return find_judged(ask, key, ROAD)


def _faulty_working(ask: FaultyWorking, key: t.Node) -> Finding:
    if isinstance(ask.of, OfFigure) and (parting := disagreement(ask.of.figure)):
        return Finding("", parting)
    return find_faulty_working(ask, key, ROAD, same)


def _compare(left: t.Node, right: t.Node, key: t.Node) -> Finding:
    gap = to_sympy(left) - to_sympy(right)
    sign: t.RelationOp = "<" if gap.is_negative else ">" if gap.is_positive else "="
    ours = t.Relation(left, ((sign, right),))
    return found(ours, key, says(ours, key))


def _find(target: t.Node, relations: tuple[t.Relation, ...], key: t.Node) -> Finding:
    proportional = isinstance(target, t.Ratio)
    wanted = _pieces(target)
    if relations:
        wanted = settled(wanted, relations, proportional)
    ours = sympy_text(wanted, proportional)
    try:
        value = value_given(key)
        if isinstance(value, t.Either):
            raise Misfit("the question has one answer")
    except Misfit as error:
        return found(ours, key, False, str(error))
    given = _pieces(value)
    if len(wanted) != len(given):
        return found(ours, key, False, f"the answer has {len(wanted)} numbers")
    # is_finite is None where sympy cannot tell, as for a letter; only a plain no is refused.
    if not all(value.is_finite is not False for value in [*wanted, *given]):
        raise NotExact("this divides by zero")
    for place, (mine, theirs) in enumerate(zip(wanted, given, strict=True), start=1):
        # Proportional: the cross product with the first part agrees, and nothing is zero.
        gap = mine * given[0] - wanted[0] * theirs if proportional else mine - theirs
        if not is_zero(gap) or (proportional and is_zero(given[0])):
            at = f"they first differ at the {ordinal(place)}" if len(wanted) > 1 else ""
            return found(ours, key, False, at)
    return Finding(ours)


def _pieces(node: t.Node) -> list[Any]:
    value = to_sympy(node)
    return value if isinstance(value, list) else [value]


def _order(things: tuple[t.Node, ...], key: t.Node, descending: bool) -> Finding:
    values = [to_sympy(thing) for thing in things]
    if not isinstance(key, t.Listing) or len(key.parts) != len(things):
        return found("", key, False, f"the answer has {len(things)} numbers")
    given = [to_sympy(part) for part in key.parts]
    left = list(values)
    for place, value in enumerate(given, start=1):
        # Each printed number may be used once, however it is written in the key.
        same = next((root for root in left if is_zero(root - value)), None)
        if same is None:
            return found("", key, False, f"its {ordinal(place)} number is not in the question")
        left.remove(same)
    low_first = given[::-1] if descending else given
    for place, (a, b) in enumerate(itertools.pairwise(low_first), start=1):
        if not (b - a).is_positive:
            at = len(given) - place if descending else place
            return found("", key, False, f"the key is not in order after its {ordinal(at)} number")
    return Finding(key)


def _choose(options: tuple[tuple[str, t.Node], ...], key: t.Node, side: int) -> Finding:
    worth = {name: to_sympy(node) for name, node in options}
    best = [
        name
        for name, value in worth.items()
        if all(
            (side * (amount - value)).is_positive
            for rival, amount in worth.items()
            if rival != name
        )
    ]
    if len(best) != 1:
        raise NotExact("two choices are equally good")
    ours = t.Label(best[0])
    return found(ours, key, key == ours)
