"""The first road to Solve: exact substitution, and a count of the roots."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.items.asks import Solve
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import UNIT, Polynomial, product
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found, text
from itembank.proof.claim.key_solutions import Misfit, solutions_given
from itembank.proof.exact.reckoning.equations import (
    Values,
    denominators,
    holds,
    polynomials,
    sides_of,
    solve,
    unknowns,
)
from itembank.proof.exact.reckoning.tree_of import quotient_node
from itembank.proof.exact.reckoning.univariate import (
    Coefficients,
    coefficients,
    common,
    count_roots,
)


def find_solutions(ask: Solve, key: t.Node) -> Finding:
    """Return what the equations come to, and whether the key gives all of it and no more.

    Raises:
        NotExact: neither solving the equations nor counting their roots settles it.
    """
    relations = ask.relations
    letters = unknowns(relations)
    if not letters:
        raise NotExact("there is no letter to solve for")
    try:
        ours, why = solve(relations), ""
    except NotExact as error:
        ours, why = None, str(error)
    answer = "" if ours is None else solutions_text(ours)
    try:
        given = [
            {name: algebra(value) for name, value in solution.items()}
            for solution in solutions_given(key, letters)
        ]
    except Misfit as error:
        return found(answer, key, False, str(error))
    if any(value.letters() - {"π"} for solution in given for value in solution.values()):
        return found(answer, key, False, "the key has a letter on both sides")
    # To put the key's values in works even where the equations could not be solved.
    for solution in given:
        if not holds(relations, solution):
            return found(answer, key, False, _why_not(relations, solution))
    if ours is not None:
        missing = [our for our in ours if not any(_same(our, root) for root in given)]
        parting = f"{solutions_text(missing[:1])} is missing" if missing else ""
        return found(answer, key, not missing, parting)
    if why.startswith("every value"):
        return found(why, key, False)
    # To count roots takes one letter.
    if len(letters) > 1:
        raise NotExact(why)
    wanted = real_solutions(relations, next(iter(letters)))
    # x = 3 or x = 3 is one solution, and must not pass for two.
    different = [
        solution
        for i, solution in enumerate(given)
        if not any(_same(solution, o) for o in given[:i])
    ]
    right = len(different) == wanted
    counted = f"there are {wanted} real solutions, the key gives {len(different)}"
    return found(text(key) if right else "", key, right, "" if right else counted)


def _same(a: Values, b: Values) -> bool:
    return all(a[name] == b[name] for name in a)


def _why_not(relations: Sequence[t.Relation], values: Values) -> str:
    """Return how a solution that is not one fails."""
    shown = solutions_text([values])
    for relation in relations:
        try:
            for a, b in sides_of(relation, values):
                if a != b:
                    left, right = text(quotient_node(a)), text(quotient_node(b))
                    return f"with {shown}, {text(relation)} would say {left} = {right}"
        except NotExact:
            return f"with {shown}, a denominator is zero"
    return ""


def real_solutions(relations: Sequence[t.Relation], letter: str) -> int:
    """Return how many different real numbers solve equations in one letter (Sturm).

    >>> from itembank.notation.parse import parse
    >>> [real_solutions([parse(text)], "x") for text in ("x^2 = 9", "x^2 = 0", "x^2 = -1")]
    [2, 1, 0]
    """
    shared: Coefficients = []
    for polynomial in polynomials(relations):
        shared = common(coefficients(polynomial, letter), shared)
    if not shared:
        raise NotExact(f"every value of {letter} is a solution")
    # What is printed below a line, multiplied together, is nought where any part of it is.
    below: Polynomial = {UNIT: algebra(t.Sym(letter)).bottom[UNIT]}
    for relation in relations:
        for node in denominators(relation):
            value = algebra(node)
            below = product(product(below, value.top), value.bottom)
    # Roots that the printed form shuts out, since it would divide by zero there.
    excluded = common(shared, coefficients(below, letter))
    return count_roots(shared) - (count_roots(excluded) if len(excluded) > 1 else 0)


def solutions_text(solutions: Sequence[Values]) -> str:
    """Return solutions in line notation: ``x = 2 or x = 3``.

    >>> from itembank.notation.quotients import number
    >>> solutions_text([{"x": number(2), "y": number(5)}])
    'x = 2, y = 5'
    """
    if not solutions:
        return "no real solution"
    cases: list[t.Node] = []
    for values in solutions:
        parts = [t.equals(t.Sym(name), quotient_node(values[name])) for name in sorted(values)]
        cases.append(parts[0] if len(parts) == 1 else t.Listing(tuple(parts)))
    return text(cases[0] if len(cases) == 1 else t.Either(tuple(cases)))
