"""The first road to numbers that are compared, put in order or chosen from."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from itembank.items.asks import Choose, Compare, Order
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.value import NotExact, exact
from itembank.proof.claim.finding import Finding, found, ordinal
from itembank.proof.claim.key_solutions import says
from itembank.proof.exact.reckoning.surd import surd


def find_sign(ask: Compare, key: t.Node) -> Finding:
    """Return two numbers with the sign that belongs between them, and whether the key is that.

    Raises:
        NotExact: one of them is no number that can be compared here.

    >>> from itembank.notation import parse
    >>> find_sign(Compare(parse("1/2"), parse("0.4")), parse("1/2 < 0.4")).shown
    '1/2 > 0.4'
    """
    a, b = _reals((ask.left, ask.right))
    # The same numbers with the same sign between them: the sides stay as they are printed.
    sign: t.RelationOp = "<" if a < b else ">" if b < a else "="
    ours = t.Relation(ask.left, ((sign, ask.right),))
    return found(ours, key, says(ours, key))


def find_choice(ask: Choose, key: t.Node) -> Finding:
    """Return the name of the least or the greatest, and whether it is the key.

    Raises:
        NotExact: two are equally good, or one is no number that can be compared here.
    """
    values = _reals([node for _, node in ask.options])
    best = min(values) if ask.detail == "least" else max(values)
    # Of two that are equal neither is the best buy, whatever the key says.
    if values.count(best) != 1:
        raise NotExact("two choices are equally good")
    name = t.Label(ask.options[values.index(best)][0])
    return found(name, key, key == name)


def find_order(ask: Order, key: t.Node) -> Finding:
    """Return the numbers in order, and whether the key has them so.

    Raises:
        NotExact: two are equal, or one is no number that can be compared here.

    >>> from itembank.notation import parse
    >>> ask = Order(parse("0.5, 1/3").parts, "ascending")
    >>> find_order(ask, parse("0.5, 1/3")).fault.partition("; ")[2]
    'they first differ at the 1st'
    """
    things = ask.things
    values = _reals(things)
    places = sorted(range(len(things)), key=values.__getitem__, reverse=ask.detail == "descending")
    if any(values[a] == values[b] for a, b in pairwise(places)):
        raise NotExact("two of the numbers to be ordered are equal")
    ours = t.Listing(tuple(things[place] for place in places))
    if ours == key:
        return Finding(ours)
    if not isinstance(key, t.Listing) or len(key.parts) != len(things):
        return found(ours, key, False, f"the answer has {len(things)} numbers")
    # Held by worth and not by writing: a key may give 1/2 for a printed 0.5.
    given = _reals(key.parts)
    wrong = [i for i, place in enumerate(places, start=1) if values[place] != given[i - 1]]
    return found(
        ours, key, not wrong, f"they first differ at the {ordinal(wrong[0])}" if wrong else ""
    )


def _reals(things: Sequence[t.Node]) -> list[Any]:
    """Return numbers that can be compared: rational if they all are."""
    try:
        # Fractions compare far more quickly than surds do.
        return [exact(thing) for thing in things]
    except NotExact:
        return [surd(algebra(thing)) for thing in things]
