"""Lines that solve an equation or an inequality, or make a letter the subject."""

from __future__ import annotations

from itembank.items.asks import ErrorInterval, Inequality, Solve, Subject
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.value import NotExact
from itembank.proof.exact.error_intervals import interval_of
from itembank.proof.exact.reckoning.equations import Values, holds, sides_of, solve, unknowns
from itembank.proof.exact.reckoning.ranges import (
    first_difference,
    is_true,
    points,
    statement,
    turning_places,
)
from itembank.proof.exact.subject import undone


def solved_fault(ask: Solve, line: t.Node) -> str:
    """Return what is wrong with a line for a question to solve equations."""
    relations = ask.relations
    letters = unknowns(relations)
    cases = line.parts if isinstance(line, t.Either) else (line,)
    every = solve(relations)
    if not t.symbols(line) - {"π"} <= letters:
        return "is about another letter"
    if not all(isinstance(case, t.Relation | t.Listing) for case in cases):
        return _side(relations, line)
    # Each solution has to fit a case, and each case a solution: else a solution was lost on the
    # way, or one was made up.
    used = [False] * len(cases)
    for solution in every:
        fits = [_holds(case, solution) for case in cases]
        if not any(fits):
            return "does not follow from the question"
        used = [a or b for a, b in zip(used, fits, strict=True)]
    return "" if all(used) or not every else "has a solution that the question has not"


def _holds(case: t.Node, at: Values) -> bool:
    relations = case.parts if isinstance(case, t.Listing) else (case,)
    return all(isinstance(relation, t.Relation) and holds([relation], at) for relation in relations)


def _side(relations: tuple[t.Relation, ...], line: t.Node) -> str:
    """Hold a bare expression to be a side of an equation, written in another way."""
    given = algebra(line)
    for relation in relations:
        for a, b in sides_of(relation):
            # Or the difference of the sides, which is what is factorised to solve a quadratic.
            if given in (a, b, a - b, b - a):
                return ""
    raise NotExact("it is an expression, and neither side of the equation")


def inequality_fault(ask: Inequality, line: t.Node) -> str:
    """Return what is wrong with a line for a question to solve an inequality.

    Raises:
        NotExact: the question is not about one letter, or the line is no inequality.
    """
    cases = line.parts if isinstance(line, t.Either | t.Listing) else (line,)
    letters = t.symbols(ask.relation) - {"π"}
    if len(letters) != 1:
        raise NotExact("this is not an inequality in one letter")
    (letter,) = letters
    relations = tuple(case for case in cases if isinstance(case, t.Relation))
    if len(relations) != len(cases):
        raise NotExact("it is not an inequality")
    if any(t.symbols(relation) - {"π"} != letters for relation in relations):
        return "is about another letter"
    asked, given = statement((ask.relation,), letter), statement(relations, letter)
    if len(ask.relation.rest) > 1 and [len(relation.rest) for relation in relations] == [1]:
        # One part of a chain has to be true wherever the chain is.
        wider = all(
            is_true(given, x) or not is_true(asked, x) for x in points(turning_places(asked, given))
        )
        return "" if wider else "has another solution than the question"
    senses = [given]
    if isinstance(line, t.Listing):
        # With a comma between them x < -3, x > 3 are the cases, and x > -2, x ≤ 3 hold together.
        senses.append([[link for links in given for link in links]])
    right = any(first_difference(asked, sense) is None for sense in senses)
    return "" if right else "has another solution than the question"


def interval_fault(ask: ErrorInterval, line: t.Node) -> str:
    """Return what is wrong with a line for a question to give an error interval."""
    return inequality_fault(Inequality(interval_of(ask)), line)


def subject_fault(ask: Subject, line: t.Node) -> str:
    """Return what is wrong with a line for a question to make a letter the subject."""
    if not isinstance(line, t.Relation):
        raise NotExact("it is not a formula")
    power, value = undone(ask.relation, ask.letter.name)
    if power == 1:
        same = holds([line], {ask.letter.name: value})
    else:
        same = undone(line, ask.letter.name) == (power, value)
    return "" if same else "says something else than the formula"
