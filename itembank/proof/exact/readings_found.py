"""The first road to what a figure shows: read from its data, and worked out from there."""

from __future__ import annotations

from itembank.items.asks import Find, Inequality, OfFigure, Round, RoundReading, Solve, Subject
from itembank.items.asks.of_figure import as_find, is_range, name_read, relations_in
from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t
from itembank.proof.claim.finding import Finding, found
from itembank.proof.exact.reckoning.elimination import answer
from itembank.proof.exact.reckoning.ranges import find_range
from itembank.proof.exact.roots import find_solutions
from itembank.proof.exact.rounding import find_rounded
from itembank.proof.exact.subject import find_subject
from itembank.proof.exact.values_found import find_worth


def find_read(ask: OfFigure, key: t.Node) -> Finding:
    """Return what is read from the figure's data, and how the key is not that.

    Raises:
        NotExact: the data does not settle it.
    """
    if (name := name_read(ask)) is not None:
        return found(name, key, key == name)
    question = as_find(ask)
    if isinstance(question.target, t.Relation) and is_range(question.target):
        return find_range(Inequality(question.target), key)
    if isinstance(question.target, t.Relation) and isinstance(question.target.first, t.Sym):
        return find_subject(Subject(question.target, question.target.first), key)
    if given := relations_in(question.target):
        return find_solutions(Solve(given), key)
    return find_worth(Find(question.target, question.relations), key)


def find_read_rounded(ask: RoundReading, key: t.Node) -> Finding:
    """Round what the figure's data shows, its letters settled by what its labels say together.

    Raises:
        NotExact: the data does not settle it.
    """
    question = as_find(ask.of)
    target = question.target
    if question.relations:
        (value,) = answer(target, question.relations)
        target = number_node(value)  # in base units, as a quantity is worth
    return find_rounded(Round(target, ask.detail, ask.amount, ask.way), key)
