"""Finds, in the mathematics of a question, content that only key stage 4 asks for.

What a generator makes is declared by its topic; a question that a person wrote says nothing of
its year unless its author does. Some content can be told from the question itself, and that is
what is looked for here: what is not found may still be hard, but no statement of a later
programme of study names it (:mod:`itembank.items.measures.years`).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import isqrt
from typing import Any

from itembank.items.asks import (
    Answered,
    FaultyWorking,
    Find,
    Give,
    Handlers,
    Inequality,
    Rewrite,
    Sequence,
    Solve,
    WhoIsRight,
)
from itembank.items.forms.polynomials import splits
from itembank.items.item import Item
from itembank.items.measures.years import (
    COMPOUND_INTEREST,
    COMPOUND_UNITS,
    FACTORISING_QUADRATICS,
    INEQUALITIES,
    QUADRATIC_EQUATIONS,
    QUADRATIC_SEQUENCES,
    RECURRING_DECIMALS,
    SIMULTANEOUS_EQUATIONS,
    STANDARD_FORM_SUMS,
    SURDS,
    Content,
)
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.value import exact


def later_content(item: Item) -> Content | None:
    """Return the content of key stage 4 that a question is, or None where none is found.

    >>> from itembank.items.topics.registry import find_item
    >>> str(later_content(find_item("equations.inequalities/core/7")))
    'solving inequalities'
    >>> later_content(find_item("equations.two-step/core/7")) is None
    True
    """
    return LATER.of(item.ask)(item.ask, item)


LATER: Handlers[Callable[[Any, Item], Content | None]] = Handlers(
    "later", "years", otherwise=lambda ask, item: None
)
"""Which content of key stage 4 each kind of question may be."""


def inequality_content(ask: Inequality, item: Item) -> Content | None:
    """Return that an inequality is solved."""
    return INEQUALITIES


def solving_content(ask: Solve, item: Item) -> Content | None:
    """Return which equations of later years are solved, if they are such."""
    return _solving(ask.relations)


def sequence_content(ask: Sequence, item: Item) -> Content | None:
    """Return that a sequence is quadratic, if it is."""
    return QUADRATIC_SEQUENCES if _degree(item.key) > 1 else None


def rewriting_content(ask: Rewrite, item: Item) -> Content | None:
    """Return that a quadratic is factorised, or surds are simplified, if it is so."""
    return _rewriting(item, ask.target, ask.detail)


def finding_content(ask: Find, item: Item) -> Content | None:
    """Return what of later years is worked out, if anything is."""
    return _finding(item, ask.target, ask.relations)


def answered_content(ask: Answered, item: Item) -> Content | None:
    """Return what the question is whose answer is judged."""
    return later_content(replace(item, ask=ask.of, key=ask.answer))


def who_content(ask: WhoIsRight, item: Item) -> Content | None:
    """Return what the question is whose answers are judged."""
    return later_content(replace(item, ask=ask.of, key=_given(ask, item.key)))


def working_content(ask: FaultyWorking, item: Item) -> Content | None:
    """Return what the question is whose working is judged."""
    return later_content(replace(item, ask=ask.of, key=_result(item.key)))


def given_content(ask: Give, item: Item) -> Content | None:
    """Return that an inequality that is printed has to hold, if it has to."""
    return INEQUALITIES if _prints_relation(item) else None


def _result(key: t.Node) -> t.Node:
    """Return the answer that stands beside the name of a line."""
    return key.parts[-1] if isinstance(key, t.Listing) else key


def _given(ask: WhoIsRight, key: t.Node) -> t.Node:
    """Return the answer that the key names."""
    return next((node for name, node in ask.answers if key == t.Label(name)), key)


def _prints_relation(item: Item) -> bool:
    """Tell whether an answer has to satisfy a relation that is printed, as -3 < 2n ≤ 7.

    That a number is *between 3 and 7*, said in words, is no inequality to be solved.
    """
    return any(isinstance(run, t.Relation) and t.symbols(run) for run in item.prompt)


def _rewriting(item: Item, target: t.Node, detail: str) -> Content | None:
    if detail == "factorise" and _splits(target):
        return FACTORISING_QUADRATICS
    return SURDS if _has_surd(target) or _has_surd(item.key) else None


def _solving(relations: tuple[t.Relation, ...]) -> Content | None:
    letters = {name for relation in relations for name in t.symbols(relation)}
    if len(letters) > 1:
        return SIMULTANEOUS_EQUATIONS
    sides = [side for relation in relations for side in _sides(relation)]
    return QUADRATIC_EQUATIONS if any(_degree(side) > 1 for side in sides) else None


def _finding(item: Item, target: t.Node, relations: tuple[t.Relation, ...]) -> Content | None:
    if any("compound interest" in run for run in item.prompt if isinstance(run, str)):
        return COMPOUND_INTEREST
    if relations:  # a letter's value, or a problem in words: what stands there is its own affair
        return None
    if _has_surd(target) or _has_surd(item.key):
        return SURDS
    if _recurs(target) or _recurs(item.key):
        return RECURRING_DECIMALS
    if item.form == "standard-form" and _calculates(target):
        return STANDARD_FORM_SUMS
    if isinstance(target, t.Quantity) and isinstance(item.key, t.Quantity):
        units = {target.unit, item.key.unit}
        return COMPOUND_UNITS if len(units) > 1 and all("/" in unit for unit in units) else None
    return None


def _recurs(node: t.Node) -> bool:
    return any(isinstance(part, t.Dec) and part.recurring for part in t.walk(node))


def _of_ten(node: t.Node) -> bool:
    return isinstance(node, t.Power) and node.base == t.Int(10)


def _calculates(target: t.Node) -> bool:
    """Tell whether there is more to do than to write one number in standard form.

    >>> from itembank.notation.parse import parse
    >>> texts = ("47 × 10^3", "10^4", "3/4000", "(3 × 10^4)^2", "2 × 10^3 × 6", "10^5 + 10^4")
    >>> [_calculates(parse(text)) for text in texts]
    [False, False, False, True, True, True]
    """
    tens = sum(map(_of_ten, t.walk(target)))
    one_number = _of_ten(target) or (isinstance(target, t.Product) and len(target.rest) == 1)
    return tens > 1 or (tens == 1 and not one_number)


def _has_surd(node: t.Node) -> bool:
    """Tell whether a square root of a number stands there that is not rational."""
    return any(_irrational(part) for part in t.walk(node) if isinstance(part, t.Root))


def _irrational(root: t.Root) -> bool:
    try:
        inside = exact(root.of)
    except (t.NotationError, ArithmeticError):
        return False
    if root.index != 2 or inside < 0:
        return False
    return any(isqrt(n) ** 2 != n for n in (inside.numerator, inside.denominator))


def _splits(target: t.Node) -> bool:
    """Tell whether a target is a quadratic in one letter that is a product of two brackets.

    A common letter taken out, x(x + 5), is asked for at key stage 3.
    """
    if len(t.symbols(target)) != 1:
        return False
    try:
        top = algebra(target).top
        constant = any(not powers for powers, _ in top)
        return constant and splits(top)
    except (t.NotationError, ArithmeticError):
        return False


def _degree(node: t.Node) -> int:
    """Return the highest power of a letter in a polynomial, multiplied out; 0 for anything else."""
    try:
        quotient = algebra(node)
    except (t.NotationError, ArithmeticError):
        return 0
    return max((n for powers, _ in quotient.top for _, n in powers), default=0)


def _sides(relation: t.Relation) -> list[t.Node]:
    return [relation.first, *(side for _, side in relation.rest)]
