"""The first road to error intervals: half a step below and half a step above."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.asks import ErrorInterval, Inequality
from itembank.items.forms.form_rules import decimal_node
from itembank.notation import tree as t
from itembank.notation.quotients import number
from itembank.notation.value import NotExact, exact
from itembank.once import once
from itembank.proof.claim.finding import Finding
from itembank.proof.exact.reckoning.ranges import find_range
from itembank.proof.exact.rounding import rounded


def find_interval(ask: ErrorInterval, key: t.Node) -> Finding:
    """Return the numbers that come to the one that is printed, and how the key is not they.

    Raises:
        NotExact: the number is not above 0, or does not look rounded as the words say.

    >>> from itembank.notation import parse
    >>> ask = ErrorInterval(t.Sym("x"), parse("3.4"), "places", 1)
    >>> find_interval(ask, parse("3.35 ≤ x < 3.45")).fault
    ''
    >>> find_interval(ask, parse("3.35 ≤ x ≤ 3.45")).fault.partition("; ")[2]
    'at x = 69/20 the question is false, the key is not'
    """
    return find_range(Inequality(interval_of(ask)), key)


@once
def interval_of(ask: ErrorInterval) -> t.Relation:
    """Return the interval as a relation: its lower end belongs to it, its upper does not.

    >>> from itembank.notation import line, parse
    >>> line(interval_of(ErrorInterval(t.Sym("x"), parse("300"), "figures", 1)))
    '250 ≤ x < 350'
    >>> line(interval_of(ErrorInterval(t.Sym("x"), parse("100"), "figures", 1)))
    '95 ≤ x < 150'
    """
    value = exact(ask.value)
    if value <= 0:
        raise NotExact("an error interval is given here for a number above 0")
    step, itself = rounded(number(value), ask.detail, ask.amount)
    if itself != value:
        raise NotExact("the number does not look rounded as the words say")
    low, high = value - step / 2, value + step / 2
    if ask.way == "down":
        low, high = value, value + step
    elif ask.detail == "figures":
        # 100 to one figure: below it numbers are rounded to tens, and 95 is the first to come.
        below, _ = rounded(number(value - Fraction(step, 1000)), ask.detail, ask.amount)
        low = value - below / 2
    return t.Relation(decimal_node(low), (("≤", ask.letter), ("<", decimal_node(high))))
