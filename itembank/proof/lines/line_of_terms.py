"""Lines about the terms of a sequence, factors and multiples, and numbers that are compared."""

from __future__ import annotations

from itertools import pairwise

from itembank.items.asks import Ask, Common, Sequence, asked
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.value import NotExact, exact
from itembank.proof.exact.integers import newton
from itembank.proof.exact.reckoning.truth import values_of


def terms_fault(ask: Sequence, line: t.Node) -> str:
    """Return what is wrong with a line for a question for an nth term, or ``""``.

    Raises:
        NotExact: it is neither terms, nor differences, nor an expression in n.

    >>> from itembank.notation import parse
    >>> ask = Sequence(parse("5, 8, 11, 14").parts)
    >>> [terms_fault(ask, parse(line)) for line in ("3, 3, 3", "3n", "4n")]
    ['', '', 'does not begin as the nth term does']
    """
    values = [exact(term) for term in ask.terms]
    if isinstance(line, t.Listing):
        row, given = values, [exact(part) for part in line.parts]
        # The terms, their differences, and the differences of those.
        for _ in range(3):
            if given == row[: len(given)]:
                return ""
            row = [b - a for a, b in pairwise(row)]
        raise NotExact("it is a list of neither the terms nor their differences")
    rule = newton(values)
    if isinstance(line, t.Relation) or rule is None or t.symbols(line) != {"n"}:
        raise NotExact("it is not an expression in n")
    given_rule, degree = algebra(line), max((sum(n for _, n in m[0]) for m in rule.top), default=0)
    left = (rule - given_rule).top
    # The working finds 3n first, then the + 2: what is still open is of a lower degree.
    if any(sum(n for _, n in powers) >= max(degree, 1) for powers, _ in left):
        return "does not begin as the nth term does"
    return ""


def common_fault(ask: Common, line: t.Node) -> str:
    """Return what is wrong with a line for a common factor or multiple, or ``""``.

    >>> from itembank.notation import parse
    >>> ask = Common(parse("12, 18").parts, "hcf")
    >>> common_fault(ask, parse("3, 6")), common_fault(ask, parse("3, 5"))
    ('', 'holds a number that is no factor of any of the numbers')
    """
    detail = ask.detail
    values = [exact(node) for node in ask.numbers]
    given = [exact(part) for part in (line.parts if isinstance(line, t.Listing) else (line,))]
    for shown in given:
        if not shown or not any(
            (value / shown if detail == "hcf" else shown / value).denominator == 1
            for value in values
        ):
            word = "factor" if detail == "hcf" else "multiple"
            return f"holds a number that is no {word} of any of the numbers"
    return ""


def among_fault(ask: Ask, line: t.Node) -> str:
    """Hold numbers to be those of a question to order, compare or choose from, however written.

    Raises:
        NotExact: the line has a letter in it, or another number.
    """
    if t.symbols(line) - {"π"}:
        raise NotExact("it has a letter in it")
    values = [value for thing in asked(ask) for value in values_of(thing)]
    if all(any(a == b for b in values) for a in values_of(line)):
        return ""
    raise NotExact("it holds a number that is not in the question")
