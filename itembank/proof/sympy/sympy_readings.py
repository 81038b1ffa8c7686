"""The second road to what a figure shows: measured on its drawing. This module imports sympy."""

from __future__ import annotations

from itembank.items.asks import Find, Inequality, OfFigure, RoundReading, Solve, Subject
from itembank.items.asks.of_figure import is_range, relations_in
from itembank.notation import tree as t
from itembank.proof.claim.finding import Finding, found
from itembank.proof.measured.measure import as_measured, disagreement, measured_name
from itembank.proof.sympy.sympy_algebra import subject
from itembank.proof.sympy.sympy_integers import rounded_value
from itembank.proof.sympy.sympy_solving import inequality, settled, solutions
from itembank.proof.sympy.sympy_worth import pieces, worth


def reading(ask: OfFigure, key: t.Node) -> Finding:
    """Return what is measured on the figure, and how the key is not that.

    Raises:
        NotExact: the drawing or sympy does not settle it.
    """
    if parting := disagreement(ask.figure):
        return Finding("", parting)
    if (name := measured_name(ask)) is not None:
        return found(name, key, key == name)
    question = as_measured(ask)
    if isinstance(question.target, t.Relation) and is_range(question.target):
        return inequality(Inequality(question.target), key)
    if isinstance(question.target, t.Relation) and isinstance(question.target.first, t.Sym):
        return subject(Subject(question.target, question.target.first), key)
    if given := relations_in(question.target):
        return solutions(Solve(given), key)
    return worth(Find(question.target, question.relations), key)


def rounded_reading(ask: RoundReading, key: t.Node) -> Finding:
    """Return what is measured on the figure rounded, and how the key is not that.

    Raises:
        NotExact: the drawing or sympy does not settle it.
    """
    if parting := disagreement(ask.of.figure):
        return Finding("", parting)
    question = as_measured(ask.of)
    (value,) = pieces(question.target)
    if question.relations:
        (value,) = settled([value], question.relations, False)
    return rounded_value(value, ask.detail, ask.amount, key, ask.way)
