"""The first road: exact arithmetic and exact substitution, without sympy."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from itertools import pairwise
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
    Solve,
    Subject,
    Summary,
    TrueOrFalse,
    TwoNumbers,
    WhoIsRight,
)
from itembank.items.asks import Sequence as Terms
from itembank.items.asks.of_figure import as_find, is_range, name_read, relations_in
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.value import NotExact, exact, parts
from itembank.proof.claim.finding import Finding, WrongKey, found, ordinal, text, values_node
from itembank.proof.claim.judged import find_faulty_working, find_judged, find_who
from itembank.proof.claim.key_fits import mismatched
from itembank.proof.claim.key_solutions import Misfit, says, value_given
from itembank.proof.claim.printed import unprinted
from itembank.proof.claim.repeats import REPEATS, repeats
from itembank.proof.claim.step_pictures import picture_fault
from itembank.proof.exact.cards import find_faulty, find_odd, find_pairs, find_truth, worth_the_same
from itembank.proof.exact.drawn_answers import find_drawn
from itembank.proof.exact.elimination import answer
from itembank.proof.exact.equivalents import find_equivalent
from itembank.proof.exact.error_intervals import find_interval
from itembank.proof.exact.identity import find_rewritten, find_value
from itembank.proof.exact.integers import find_common, find_nth_term
from itembank.proof.exact.judged_form import form_left_open
from itembank.proof.exact.key_forms import key_form_fault
from itembank.proof.exact.many_answers import find_given
from itembank.proof.exact.members_found import find_members
from itembank.proof.exact.picking import find_picked
from itembank.proof.exact.ranges import find_range
from itembank.proof.exact.roots import find_solutions
from itembank.proof.exact.rounding import find_rounded
from itembank.proof.exact.subject import find_subject
from itembank.proof.exact.sum_and_product import find_two
from itembank.proof.exact.surd import surd
from itembank.wording.tasks.sums.list_sums import as_sum


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


ROAD: Handlers[Callable[[Any, t.Node], Finding]] = Handlers("exact arithmetic")
"""What exact arithmetic makes of each kind of question, and how a key differs from it."""

ROAD.by_kind |= {
    Find: lambda ask, key: _find(ask.target, ask.relations, key),
    Inequality: lambda ask, key: find_range(ask.relation, key),
    Order: lambda ask, key: _order(ask.things, key, ask.detail == "descending"),
    Compare: lambda ask, key: _compare(ask.left, ask.right, key),
    Choose: lambda ask, key: _choose(ask, key),
    Rewrite: lambda ask, key: find_rewritten(ask.target, key),
    Solve: lambda ask, key: find_solutions(ask.relations, key),
    Pick: find_picked,
    Subject: lambda ask, key: find_subject(ask.relation, ask.letter, key),
    Terms: lambda ask, key: find_nth_term(ask.terms, key),
    Common: lambda ask, key: find_common(ask.numbers, ask.detail, key),
    Round: lambda ask, key: find_rounded(ask.target, ask.detail, ask.amount, key, ask.way),
    Give: find_given,
    TwoNumbers: find_two,
    ErrorInterval: find_interval,
    Equivalent: find_equivalent,
    OfFigure: lambda ask, key: _of_figure(ask, key),
    RoundReading: lambda ask, key: _round_reading(ask, key),
    Draw: find_drawn,
    Summary: lambda ask, key: _find(as_sum(ask), (), key),
    TrueOrFalse: find_truth,
    Answered: lambda ask, key: find_judged(ask, key, ROAD),
    WhoIsRight: lambda ask, key: find_who(ask, key, ROAD),
    OddOneOut: find_odd,
    FaultyLine: find_faulty,
    FaultyWorking: lambda ask, key: find_faulty_working(ask, key, ROAD, worth_the_same),
    Match: find_pairs,
    Members: find_members,
}


def _of_figure(ask: OfFigure, key: t.Node) -> Finding:
    if (name := name_read(ask)) is not None:
        return found(name, key, key == name)
    question = as_find(ask)
    if isinstance(question.target, t.Relation) and is_range(question.target):
        return find_range(question.target, key)
    if isinstance(question.target, t.Relation) and isinstance(question.target.first, t.Sym):
        return find_subject(question.target, question.target.first, key)
    if given := relations_in(question.target):
        return find_solutions(given, key)
    return _find(question.target, question.relations, key)


def _round_reading(ask: RoundReading, key: t.Node) -> Finding:
    """Round what the figure's data shows, its letters settled by what its labels say together."""
    question = as_find(ask.of)
    target = question.target
    if question.relations:
        (value,) = answer(target, question.relations)
        target = number_node(value)  # in base units, as a quantity is worth
    return find_rounded(target, ask.detail, ask.amount, key, ask.way)


def _compare(left: t.Node, right: t.Node, key: t.Node) -> Finding:
    a, b = _reals((left, right))
    # The same numbers with the same sign between them: the sides stay as they are printed.
    sign: t.RelationOp = "<" if a < b else ">" if b < a else "="
    ours = t.Relation(left, ((sign, right),))
    return found(ours, key, says(ours, key))


def _choose(ask: Choose, key: t.Node) -> Finding:
    values = _reals([node for _, node in ask.options])
    best = min(values) if ask.detail == "least" else max(values)
    # Of two that are equal neither is the best buy, whatever the key says.
    if values.count(best) != 1:
        raise NotExact("two choices are equally good")
    name = t.Label(ask.options[values.index(best)][0])
    return found(name, key, key == name)


def _find(target: t.Node, relations: tuple[t.Relation, ...], key: t.Node) -> Finding:
    proportional = isinstance(target, t.Ratio)
    try:
        # Most questions are linear, and elimination is the quick way.
        ours = answer(target, relations)
        fault = differ(ours, key, proportional)
    except Misfit as misfit:
        fault = str(misfit)
    except NotExact:
        # Roots, π and letters, in the question or only in the key, take the longer way.
        return find_value(target, relations, key)
    value = key.rest[0][1] if isinstance(key, t.Relation) and key.rest else key
    return Finding(values_node(ours, value, proportional), fault)


def differ(ours: tuple[Fraction, ...], key: t.Node, proportional: bool) -> str:
    """Return a sentence if `key` is not worth what was found, otherwise ``""``."""
    given = parts(value_given(key))
    # In cross products, so that no part is divided by; 0 : 0, which agrees with every ratio,
    # is refused below.
    same = len(given) == len(ours) and (
        all(a * ours[0] == b * given[0] for a, b in zip(given, ours, strict=True))
        if proportional
        else given == ours
    )
    if same and not (proportional and not given[0]):
        return ""
    value = value_given(key)
    mine = text(values_node(ours, value, proportional))
    says = f"it comes to {mine}, the key says {text(value)}"
    if len(given) != len(ours):
        return f"{says}; the answer has {len(ours)} numbers"
    if len(ours) > 1 and not proportional:
        place = next(i for i, (a, b) in enumerate(zip(given, ours, strict=True), 1) if a != b)
        return f"{says}; they first differ at the {ordinal(place)}"
    return says


def _reals(things: Sequence[t.Node]) -> list[Any]:
    """Return numbers that can be compared: rational if they all are."""
    try:
        # Fractions compare far more quickly than surds do.
        return [exact(thing) for thing in things]
    except NotExact:
        return [surd(algebra(thing)) for thing in things]


def _order(things: tuple[t.Node, ...], key: t.Node, descending: bool) -> Finding:
    values = _reals(things)
    places = sorted(range(len(things)), key=values.__getitem__, reverse=descending)
    if any(values[a] == values[b] for a, b in pairwise(places)):
        raise NotExact("two of the numbers to be ordered are equal")
    ours = t.Listing(tuple(things[place] for place in places))
    if ours == key:
        return Finding(ours)
    if not isinstance(key, t.Listing) or len(key.parts) != len(things):
        return found(ours, key, False, f"the answer has {len(things)} numbers")
    # Held by worth and not by writing: a key may give 1/2 for a printed 0.5.
    given = _reals(key.parts)
    wrong = [i for i, place in enumerate(places, start=1) if values[place] != given[i - 1]]
    return found(
        ours, key, not wrong, f"they first differ at the {ordinal(wrong[0])}" if wrong else ""
    )
