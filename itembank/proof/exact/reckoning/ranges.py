"""The first road to inequalities: exact truth at every turning place and between them.

An inequality between polynomials in one letter can only change from true to false where its
two sides are equal. So two statements about a letter say the same when they agree at every
such place of both, and at one point of every gap between neighbouring places.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from itembank.items.asks import Inequality
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.linear import linear
from itembank.notation.value import NotExact, over, sides
from itembank.once import once
from itembank.proof.claim.finding import Finding, found, text
from itembank.proof.claim.key_solutions import Misfit
from itembank.proof.exact.reckoning.elimination import minus
from itembank.proof.exact.reckoning.surd import Surd, surd_node
from itembank.proof.exact.reckoning.univariate import (
    Coefficients,
    coefficients,
    real_roots,
    value_at,
)

FLIP = {"<": ">", ">": "<", "≤": "≥", "≥": "≤"}
SIGNS = {"<": (-1,), ">": (1,), "≤": (-1, 0), "≥": (0, 1), "=": (0,), "≠": (-1, 1)}
"""The signs that left minus right may have where a relation holds."""

Link = tuple[Coefficients, str]
"""Left minus right, and the sign between them."""


def solve_inequality(relation: t.Relation) -> tuple[str, str, Fraction]:
    """Return a linear inequality in one letter as (letter, sign, bound).

    Dividing by a negative number turns the sign round.

    >>> from itembank.notation.tree import Int, juxt, num, relate
    >>> solve_inequality(relate(juxt(num(-2), t.Sym("x")), "<", Int(6)))
    ('x', '>', Fraction(-3, 1))
    """
    pairs = sides(relation)
    if len(pairs) != 1:
        raise NotExact("only a single inequality can be solved here")
    left, op, right = pairs[0]
    form = minus(linear(left), linear(right))
    letters = [name for name, c in form.items() if name and c]
    if len(letters) != 1 or op not in FLIP:
        raise NotExact("this is not an inequality in one letter")
    # The slope is not zero: letters without a coefficient were left out above.
    slope = form[letters[0]]
    return letters[0], FLIP[op] if slope < 0 else op, over(-form.get("", 0), slope)


def find_range(ask: Inequality, key: t.Node) -> Finding:
    """Return the solution of an inequality or a chain of them, and whether the key is it.

    Raises:
        NotExact: it is not in one letter, or its sides are not polynomials that can be solved.

    >>> from itembank.notation import parse
    >>> find_range(Inequality(parse("-1 < 2x + 3 ≤ 7")), parse("-2 < x ≤ 2")).shown
    '-2 < x ≤ 2'
    """
    relation = ask.relation
    if len(relation.rest) == 1 and isinstance(key, t.Relation) and len(key.rest) == 1:
        try:
            letter, op, bound = solve_inequality(relation)
            if (letter, op, bound) == solve_inequality(key):
                return Finding(text(key))
        except NotExact:
            pass  # not linear: the long way
    # Here a key that is wrong comes too, to be told at which number it goes wrong.
    letters = t.symbols(relation) - {"π"}
    if len(letters) != 1:
        raise NotExact("this is not an inequality in one letter")
    (letter,) = letters
    asked, answer = _solved(relation, letter)
    cases = key.parts if isinstance(key, t.Either) else (key,)
    try:
        for case in cases:
            if not isinstance(case, t.Relation) or any(op == "=" for op, _ in case.rest):
                raise Misfit("the key is not an inequality")
            if t.symbols(case) != letters:
                raise Misfit(f"the key is not about {letter}")
    except Misfit as error:
        return found(answer, key, False, str(error))
    given = statement(tuple(case for case in cases if isinstance(case, t.Relation)), letter)
    where = first_difference(asked, given)
    if where is None:
        return found(answer, key, True)
    says = "true" if is_true(asked, where) else "false"
    at = text(t.relate(t.Sym(letter), "=", surd_node(where)))
    return found(answer, key, False, f"at {at} the question is {says}, the key is not")


@once
def _solved(relation: t.Relation, letter: str) -> tuple[list[list[Link]], str]:
    """Return a question as its links, and its answer: of several answers each is held to it."""
    asked = statement((relation,), letter)
    return asked, _written(asked, letter)


def statement(cases: tuple[t.Relation, ...], letter: str) -> list[list[Link]]:
    """Return relations joined by *or*, each as its links, which all have to hold.

    Raises:
        NotExact: a side is not a polynomial in the letter.

    >>> from itembank.notation.parse import parse
    >>> [len(links) for links in statement((parse("x < -1"), parse("2 < x ≤ 5")), "x")]
    [1, 2]
    """
    found = []
    for case in cases:
        links: list[Link] = []
        for left, op, right in sides(case):
            gap = algebra(left) - algebra(right)
            below = coefficients(gap.bottom, letter)
            # Multiplied by a letter of unknown sign an inequality may turn round; by a number it is
            # divided outright, sign and all.
            if len(below) != 1:
                raise NotExact("a letter stands in a denominator of an inequality")
            links.append(([c / below[0] for c in coefficients(gap.top, letter)], op))
        found.append(links)
    return found


def is_true(cases: list[list[Link]], x: Surd) -> bool:
    """Tell whether a statement is true at x.

    >>> from itembank.notation.parse import parse
    >>> [is_true(statement((parse("2 < x ≤ 5"),), "x"), Surd.of(n)) for n in (2, 3, 5, 6)]
    [False, True, True, False]
    """
    return any(all(value_at(p, x).sign in SIGNS[op] for p, op in links) for links in cases)


def turning_places(*statements: list[list[Link]]) -> list[Surd]:
    """Return where the sides of some link are equal, least first.

    >>> from itembank.notation.parse import parse
    >>> turning_places(statement((parse("2x < 6"),), "x")) == [Surd.of(3)]
    True
    """
    places: set[Surd] = set()
    for cases in statements:
        for links in cases:
            for p, _ in links:
                # Where both sides are the same polynomial nothing turns.
                places |= set(real_roots(p)) if p else set()
    return sorted(places)


def points(places: list[Surd]) -> list[Surd]:
    """Return the places with a point before, between and after them.

    >>> points([Surd.of(1), Surd.of(3)]) == [Surd.of(n) for n in (0, 1, 2, 3, 4)]
    True
    """
    # No place to turn at: the same everywhere, so any point will do.
    if not places:
        return [Surd.of(0)]
    half = Surd.of(Fraction(1, 2))
    every = [places[0] - Surd.of(1)]
    for a, b in pairwise(places):
        every += [a, (a + b) * half]
    return [*every, places[-1], places[-1] + Surd.of(1)]


def first_difference(first: list[list[Link]], other: list[list[Link]]) -> Surd | None:
    """Return a number at which two statements differ, or None if they say the same."""
    for point in points(turning_places(first, other)):
        if is_true(first, point) != is_true(other, point):
            return point
    return None


def _written(cases: list[list[Link]], letter: str) -> str:
    """Return the solution set in line notation."""
    places = turning_places(cases)
    every = points(places)
    truth = [is_true(cases, point) for point in every]
    if all(truth):
        return f"every value of {letter}"
    if not any(truth):
        return "no solution"
    shown: list[t.Node] = []
    start = 0
    while start < len(every):
        if not truth[start]:
            start += 1
            continue
        end = start
        while end + 1 < len(every) and truth[end + 1]:
            end += 1
        shown.append(_interval(letter, every, start, end))
        start = end + 1
    return text(shown[0] if len(shown) == 1 else t.Either(tuple(shown)))


def _interval(letter: str, every: list[Surd], start: int, end: int) -> t.Node:
    """Return one stretch of the line; places stand at odd positions, gaps at even ones."""
    x, low, high = t.Sym(letter), None, None
    lower: t.RelationOp = "≤" if start % 2 else "<"
    upper: t.RelationOp = "≤" if end % 2 else "<"
    if start > 0:
        low = surd_node(every[start if start % 2 else start - 1])
    if end < len(every) - 1:
        high = surd_node(every[end if end % 2 else end + 1])
    # One place by itself: x² ≤ 0 holds at 0 alone.
    if low is not None and low == high:
        return t.relate(x, "=", low)
    if low is None or high is None:
        if high is not None:
            return t.relate(x, upper, high)
        assert low is not None
        return t.relate(x, "≥" if lower == "≤" else ">", low)
    return t.Relation(low, ((lower, x), (upper, high)))
