"""The second road to equations and inequalities. Importing this module imports sympy."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from typing import Any

import sympy
from sympy.solvers.inequalities import solve_poly_inequality
from sympy.solvers.solveset import NonlinearError

from itembank.items.asks import Find, Inequality, Pick, Solve
from itembank.notation import tree as t
from itembank.notation.symbolic import symbol, to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found, text
from itembank.proof.claim.key_solutions import Misfit, solutions_given, value_given
from itembank.proof.sympy.sympy_text import node_of, sympy_text
from itembank.proof.sympy.sympy_zero import is_zero

Values = dict[Any, Any]


class _EveryValue(NotExact):
    """Both sides of an equation are the same, whatever its letter is worth."""


def equations(relation: t.Relation) -> list[Any]:
    """Return what a relation says to be zero, ratios part by part, nothing in a denominator."""
    sides = [relation.first, *(node for _, node in relation.rest)]
    if any(op != "=" for op, _ in relation.rest):
        raise NotExact("not an equation")
    out: list[Any] = []
    for left, right in itertools.pairwise(sides):
        a, b = to_sympy(left), to_sympy(right)
        if isinstance(a, list):
            # Equal ratios: the second is the first times one scale, so its parts are too.
            if not isinstance(b, list) or len(a) != len(b):
                raise NotExact("two ratios of different lengths are said to be equal")
            out += [a[0] * b[i] - a[i] * b[0] for i in range(1, len(a))]
        else:
            out.append(sympy.numer(sympy.together(a - b)))
    return out


def settled(wanted: list[Any], relations: tuple[t.Relation, ...], proportional: bool) -> list[Any]:
    """Return the wanted expressions with the letters replaced by what the relations make them."""
    given = {name: value for relation in relations for name, value in _given(relation)}
    letters = {symbol(n) for relation in relations for n in t.symbols(relation) if n != "π"}
    unknown = sorted(letters - set(given), key=str)
    rows = [row.subs(given) for relation in relations for row in equations(relation)]
    # What the given values make true says nothing more.
    rows = [row for row in rows if sympy.expand(row) != 0]
    every: list[Values] = [given]
    if rows or unknown:
        every = [{**given, **solution} for solution in sympy.solve(rows, unknown, dict=True)]
    answers = []
    for solution in every:
        values = [sympy.simplify(value.subs(solution)) for value in wanted]
        # Brought to one scale, so that solutions in one ratio are not taken for different answers.
        if proportional and values[0] != 0:
            values = [sympy.simplify(value / values[0]) for value in values]
        # None is kept: sympy often cannot tell of a letter's value whether it is real.
        if all(value.is_real is not False for value in values):
            answers.append(values)
    if not answers or any(
        not is_zero(a - b)
        for answer in answers[1:]
        for a, b in zip(answers[0], answer, strict=True)
    ):
        raise NotExact(f"sympy finds {len(answers)} solutions")
    loose = {letter for value in answers[0] for letter in value.free_symbols}
    if loose and unknown:
        raise NotExact(f"the question does not settle {', '.join(sorted(map(str, loose)))}")
    return answers[0]


def _given(relation: t.Relation) -> list[tuple[Any, Any]]:
    if len(relation.rest) == 1 and isinstance(relation.first, t.Sym):
        value = to_sympy(relation.rest[0][1])
        if not isinstance(value, list) and not value.free_symbols:
            return [(symbol(relation.first.name), value)]
    return []


def solutions(ask: Solve, key: t.Node) -> Finding:
    """Return sympy's real solutions of the equations, and whether the key gives just those.

    >>> from itembank.notation import parse
    >>> solutions(Solve((parse("x^2 = 5x - 6"),)), parse("x = 2 or x = 4")).fault
    'it comes to x = 2 or x = 3, the key says x = 2 or x = 4'
    """
    relations = ask.relations
    names = frozenset(n for relation in relations for n in t.symbols(relation)) - {"π"}
    letters = [symbol(name) for name in sorted(names)]
    rows = [row for relation in relations for row in equations(relation)]
    try:
        every = [answer for answer in _solve(rows, letters) if _meaningful(answer, relations)]
    except _EveryValue as error:
        return found(str(error), key, False)
    ours = _text(every)
    try:
        cases = solutions_given(key, names)
    except Misfit as error:
        return found(ours, key, False, str(error))
    given = [{symbol(n): to_sympy(value) for n, value in case.items()} for case in cases]
    right = all(any(_same(solution, root) for root in every) for solution in given) and all(
        any(_same(solution, root) for root in given) for solution in every
    )
    return found(ours, key, right)


def picked(ask: Pick, key: t.Node) -> Finding:
    """Return the one solution or share that the question names, and whether the key is it.

    >>> from itembank.items.item import Solve
    >>> from itembank.notation import parse
    >>> picked(Pick(Solve((parse("x^2 = 9"),)), "negative"), parse("3")).fault
    'it comes to -3, the key says 3'
    """
    of = ask.of
    if isinstance(of, Find):
        parts = to_sympy(of.target)
        values = settled(parts if isinstance(parts, list) else [parts], of.relations, False)
        letter = None
    else:
        rows = [row for relation in of.relations for row in equations(relation)]
        letters = sorted({n for relation in of.relations for n in t.symbols(relation)} - {"π"})
        if len(letters) != 1:
            raise NotExact("one of several solutions is picked in one letter only")
        letter = letters[0]
        every = _solve(rows, [symbol(letter)])
        values = [
            solution[symbol(letter)] for solution in every if _meaningful(solution, of.relations)
        ]
    if ask.which in ("positive", "negative"):
        ours = [v for v in values if (v.is_positive if ask.which == "positive" else v.is_negative)]
    elif len(values) > 1:
        # Max and Min compare exactly, roots too.
        best = (sympy.Max if ask.which == "largest" else sympy.Min)(*values)
        ours = [value for value in values if is_zero(value - best)]
    else:
        ours = []
    if len(ours) != 1:
        raise NotExact(f"sympy finds {len(ours)} answers that are the {ask.which} one")
    value = value_given(key)
    if isinstance(value, t.Either | t.Listing):
        return found(sympy_text(ours[0]), key, False, "the question has one answer")
    right = is_zero(ours[0] - to_sympy(value))
    if letter and isinstance(key, t.Relation) and key.first != t.Sym(letter):
        right = False
    return found(sympy_text(ours[0]), key, right)


def _solve(rows: list[Any], letters: list[Any]) -> list[Values]:
    if len(letters) == 1:
        return [{letters[0]: root} for root in _roots(rows, letters[0])]
    rows = [row for row in map(sympy.expand, rows) if row != 0]
    try:
        matrix, right = sympy.linear_eq_to_matrix(rows, letters)
    except NonlinearError:
        every = sympy.solve(rows, letters, dict=True)
    else:
        found_set = sympy.linsolve((matrix, right), *letters)
        every = [dict(zip(letters, values, strict=True)) for values in found_set]
    for solution in every:
        if set(solution) != set(letters) or any(value.free_symbols for value in solution.values()):
            raise NotExact("the equations do not settle every letter")
    return [solution for solution in every if all(value.is_real for value in solution.values())]


def _roots(rows: list[Any], letter: Any) -> list[Any]:
    polynomials = [sympy.Poly(sympy.expand(row), letter) for row in rows]
    shared = polynomials[0]
    for polynomial in polynomials[1:]:
        # A number solves all the equations just where it is a root of what they have in common.
        shared = sympy.gcd(shared, polynomial)
    if shared.is_zero:
        raise _EveryValue(f"every value of {letter} is a solution")
    if shared.degree() == 0:
        return []
    if shared.degree() == 1:
        return [sympy.radsimp(-shared.nth(0) / shared.nth(1))]
    if shared.domain.is_ZZ or shared.domain.is_QQ:
        # A double root is listed twice there, and is one solution.
        return list(dict.fromkeys(shared.real_roots()))
    return [root for root in sympy.roots(shared) if root.is_real]


def _meaningful(solution: Values, relations: Sequence[t.Relation]) -> bool:
    """Tell whether no denominator that is printed becomes zero."""
    for relation in relations:
        for part in t.walk(relation):
            below = [part.den] if isinstance(part, t.Frac) else []
            if isinstance(part, t.Product):
                below = [node for op, node in part.rest if op == "÷"]
            for node in below:
                if t.symbols(node) and is_zero(to_sympy(node).subs(solution)):
                    return False
    return True


def _same(solution: Values, other: Values) -> bool:
    return all(is_zero(value - other[letter]) for letter, value in solution.items())


def _text(every: list[Values]) -> str:
    if not every:
        return "no real solution"
    try:
        cases: list[t.Node] = []
        for solution in every:
            parts = [t.equals(t.Sym(str(letter)), node_of(solution[letter])) for letter in solution]
            cases.append(parts[0] if len(parts) == 1 else t.Listing(tuple(parts)))
        return text(cases[0] if len(cases) == 1 else t.Either(tuple(cases)))
    except t.NotationError:
        return " or ".join(
            ", ".join(f"{letter} = {value}" for letter, value in solution.items())
            for solution in every
        )


def inequality(ask: Inequality, key: t.Node) -> Finding:
    """Return sympy's solution set of an inequality or a chain, and whether the key is it."""
    letters = t.symbols(ask.relation) - {"π"}
    if len(letters) != 1:
        raise NotExact("this is not an inequality in one letter")
    unknown = symbol(next(iter(letters)))
    cases = key.parts if isinstance(key, t.Either) else (key,)
    asked = where_true(ask.relation, unknown)
    given = sympy.S.EmptySet
    for case in cases:
        if not isinstance(case, t.Relation) or t.symbols(case) != letters:
            return found(_range_text(asked, unknown), key, False, f"it is no range of {unknown}")
        if any(op == "=" for op, _ in case.rest):
            return found(_range_text(asked, unknown), key, False, "the key is not an inequality")
        given = sympy.Union(given, where_true(case, unknown))
    # Equal sets may be held in two forms, and sympy then calls them different: only nothing in
    # either but not in both shows that they are the same.
    same = asked == given or sympy.SymmetricDifference(asked, given).is_empty is True
    return found(_range_text(asked, unknown), key, bool(same))


def where_true(relation: t.Relation, unknown: Any) -> Any:
    """Return the set of real numbers for which a relation in one letter holds."""
    links = to_sympy(relation)
    whole = sympy.S.Reals
    for link in links if isinstance(links, list) else [links]:
        if link in (sympy.true, sympy.false):
            part = sympy.S.Reals if link == sympy.true else sympy.S.EmptySet
        else:
            part = _solved(link, unknown)
        whole = sympy.Intersection(whole, part)
    return whole


def _solved(link: Any, unknown: Any) -> Any:
    """Return where one inequality holds; polynomials over the rationals take the short way."""
    gap = sympy.expand(link.lhs - link.rhs)
    if gap.is_polynomial(unknown):
        polynomial = sympy.Poly(gap, unknown)
        if polynomial.domain.is_ZZ or polynomial.domain.is_QQ:
            return sympy.Union(*solve_poly_inequality(polynomial, link.rel_op))
    return sympy.solve_univariate_inequality(link, unknown, relational=False)


def _range_text(where: Any, unknown: Any) -> str:
    """Return a set of numbers as people may read it: -2 < x ≤ 3, or two such joined by or."""
    if where == sympy.S.Reals:
        return f"every value of {unknown}"
    if where == sympy.S.EmptySet:
        return "no solution"
    parts = where.args if isinstance(where, sympy.Union) else (where,)
    try:
        return " or ".join(_interval_text(part, unknown) for part in parts)
    except t.NotationError:
        return str(where)


def _interval_text(part: Any, unknown: Any) -> str:
    if isinstance(part, sympy.FiniteSet):
        return " or ".join(f"{unknown} = {text(node_of(value))}" for value in part)
    low, high = part.start, part.end
    if low.is_infinite:
        return f"{unknown} {'<' if part.right_open else '≤'} {text(node_of(high))}"
    if high.is_infinite:
        return f"{unknown} {'>' if part.left_open else '≥'} {text(node_of(low))}"
    start = f"{text(node_of(low))} {'<' if part.left_open else '≤'} {unknown}"
    return f"{start} {'<' if part.right_open else '≤'} {text(node_of(high))}"
