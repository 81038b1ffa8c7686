"""Equations between polynomials solved exactly, one letter after another.

A letter that stands only to the first power, with a number before it, is replaced everywhere
by what it equals; an equation in one letter is solved by its roots. What is found is put back
into the equations as they are printed, so that nothing that makes a denominator zero is left.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import OVER_ONE, Polynomial, Quotient, number
from itembank.notation.value import NotExact, sides
from itembank.proof.exact.reckoning.surd import Surd
from itembank.proof.exact.reckoning.univariate import Coefficients, coefficients, common, real_roots

Values = dict[str, Quotient]


def unknowns(relations: Sequence[t.Node]) -> frozenset[str]:
    """Return the letters of the relations; π is a number.

    >>> from itembank.notation.parse import parse
    >>> sorted(unknowns([parse("x + y = 5"), parse("x = 2")]))
    ['x', 'y']
    """
    return frozenset(name for relation in relations for name in t.symbols(relation)) - {"π"}


def sides_of(
    relation: t.Relation, known: Mapping[str, Quotient] | None = None
) -> list[tuple[Quotient, Quotient]]:
    """Return the pairs of expressions that a relation says are equal; ratios part by part.

    Raises:
        NotExact: a sign is not =, or a side is past what :func:`~.algebra.algebra` can do.
    """
    pairs = []
    for left, op, right in sides(relation):
        if op != "=":
            raise NotExact(f"the sign {op} is not an equation")
        if isinstance(left, t.Ratio) and isinstance(right, t.Ratio):
            a = [algebra(part, known) for part in left.parts]
            b = [algebra(part, known) for part in right.parts]
            if len(a) != len(b):
                raise NotExact("two ratios of different lengths are said to be equal")
            if not any(part.top for part in a) or not any(part.top for part in b):
                # Its cross products with every ratio agree.
                raise NotExact("0 : 0 is no ratio")
            pairs += [(a[0] * b[i], a[i] * b[0]) for i in range(1, len(a))]
        else:
            pairs.append((algebra(left, known), algebra(right, known)))
    return pairs


def holds(relations: Sequence[t.Relation], known: Mapping[str, Quotient]) -> bool:
    """Tell whether every relation is true, and has a meaning, at these values.

    >>> from itembank.notation.quotients import number
    >>> from itembank.notation.parse import parse
    >>> holds([parse("x^2 = 9")], {"x": number(-3)})
    True
    """
    try:
        # From the relations as printed: multiplied out, 1/x = 2/x would hold at 0.
        return all(a == b for relation in relations for a, b in sides_of(relation, known))
    except NotExact as error:
        # A side without a value is not equal to anything. Other errors are limits of this program,
        # and say nothing about the values.
        if "divides by zero" in str(error):
            return False
        raise


def polynomials(relations: Sequence[t.Relation]) -> list[Polynomial]:
    """Return the relations multiplied out, as polynomials that have to be zero."""
    return [(a - b).top for relation in relations for a, b in sides_of(relation)]


def solve(relations: Sequence[t.Relation]) -> list[Values]:
    """Return every real solution of some equations.

    Raises:
        NotExact: they do not settle a letter, or cannot be solved by square roots.

    >>> from itembank.notation import parse
    >>> from itembank.notation.quotients import rational
    >>> found = solve([parse("x + y = 7"), parse("xy = 12")])
    >>> sorted((str(rational(s["x"])), str(rational(s["y"]))) for s in found)
    [('3', '4'), ('4', '3')]
    """
    letters = unknowns(relations)
    # To multiply denominators away can add solutions and loses none.
    every = _solve(polynomials(relations), letters)
    return [values for values in every if holds(relations, values)]


def _solve(equations: list[Polynomial], letters: frozenset[str]) -> list[Values]:
    equations = [equation for equation in equations if equation]
    # A number that has to be zero and is not. π may stand in it: a polynomial in π with
    # algebraic coefficients is zero only where it has no term, since π is transcendental.
    if any(not _letters(equation) for equation in equations):
        return []
    if not letters:
        return [{}]
    unsettled = sorted(letters - {name for equation in equations for name in _letters(equation)})
    if unsettled:
        if not equations:
            raise NotExact(f"every value of {', '.join(unsettled)} is a solution")
        raise NotExact(f"the question does not settle {', '.join(unsettled)}")
    # The shortest first: what is put in the place of a letter is copied into all the others.
    for equation in sorted(equations, key=len):
        for letter in sorted(_letters(equation)):
            alone = _isolated(equation, letter)
            if alone is not None:
                return _replaced(equations, equation, letter, alone, letters)
    for equation in equations:
        if len(_letters(equation)) == 1:
            (letter,) = _letters(equation)
            return _by_roots(equations, letter, letters)
    raise NotExact("these equations cannot be solved one letter at a time")


def _letters(polynomial: Polynomial) -> frozenset[str]:
    return frozenset(name for powers, _ in polynomial for name, _ in powers) - {"π"}


def _isolated(equation: Polynomial, letter: str) -> Quotient | None:
    """Return what `letter` equals if it stands once, to the first power, after a number."""
    coefficient: Polynomial = {}
    rest: Polynomial = {}
    for (powers, root), c in equation.items():
        exponents = dict(powers)
        if letter not in exponents:
            rest[powers, root] = -c
        elif exponents.pop(letter) == 1 and set(exponents) <= {"π"}:
            coefficient[tuple(sorted(exponents.items())), root] = c
        else:
            return None
    # No letter in what it is divided by, and it is not zero: no solution is lost.
    return Quotient(rest, coefficient)


def _replaced(
    equations: list[Polynomial],
    used: Polynomial,
    letter: str,
    alone: Quotient,
    letters: frozenset[str],
) -> list[Values]:
    others = [
        # A letter is worth a polynomial over a number, so the bottoms are numbers.
        evaluated(equation, {letter: alone}).top
        for equation in equations
        if equation is not used
    ]
    found = _solve(others, letters - {letter})
    return [{**values, letter: replaced(alone, values)} for values in found]


def _by_roots(equations: list[Polynomial], letter: str, letters: frozenset[str]) -> list[Values]:
    shared: Coefficients = []
    # No letter stands alone, so one is found by its roots.
    for equation in equations:
        if _letters(equation) == {letter}:
            # Only a root of the greatest common divisor solves all that are in this letter alone.
            shared = common(coefficients(equation, letter), shared)
    found = []
    for root in real_roots(shared):
        at = {letter: quotient(root)}
        others = [
            evaluated(equation, at).top for equation in equations if _letters(equation) != {letter}
        ]
        found += [{**values, **at} for values in _solve(others, letters - {letter})]
    return found


def evaluated(polynomial: Polynomial, values: Mapping[str, Quotient]) -> Quotient:
    """Return a polynomial with some letters replaced."""
    total = number(0)
    for (powers, root), c in polynomial.items():
        kept = tuple((name, n) for name, n in powers if name not in values)
        term = Quotient({(kept, root): c}, OVER_ONE)
        for name, n in powers:
            if name in values:
                for _ in range(n):
                    term = term * values[name]
        total = total + term
    return total


def replaced(value: Quotient, values: Mapping[str, Quotient]) -> Quotient:
    """Return a quotient with some letters replaced."""
    return evaluated(value.top, values) / evaluated(value.bottom, values)


def quotient(value: Surd) -> Quotient:
    """Return a surd as a quotient without letters."""
    return Quotient({((), root): c for root, c in value.terms}, OVER_ONE)


def denominators(node: t.Node) -> list[t.Node]:
    """Return everything in a tree that something is divided by.

    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> [line(node) for node in denominators(parse("1/x + 2/(x + 1)"))]
    ['x', 'x + 1']
    """
    below: list[t.Node] = []
    for part in t.walk(node):
        if isinstance(part, t.Frac):
            below.append(part.den)
        elif isinstance(part, t.Product):
            below += [factor for op, factor in part.rest if op == "÷"]
    return [equation for equation in below if t.symbols(equation)]
