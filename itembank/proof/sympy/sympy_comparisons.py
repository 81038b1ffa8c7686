"""The second road to numbers that are compared, put in order or chosen from.

Importing this module imports sympy.
"""

from __future__ import annotations

import itertools

from itembank.items.asks import Choose, Compare, Order
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found, ordinal
from itembank.proof.claim.key_solutions import says
from itembank.proof.sympy.sympy_zero import is_zero


def sign_between(ask: Compare, key: t.Node) -> Finding:
    """Return two numbers with the sign that sympy finds between them, and whether the key is that.

    >>> from itembank.notation import parse
    >>> sign_between(Compare(parse("1/2"), parse("0.4")), parse("1/2 < 0.4")).shown
    '1/2 > 0.4'
    """
    gap = to_sympy(ask.left) - to_sympy(ask.right)
    sign: t.RelationOp = "<" if gap.is_negative else ">" if gap.is_positive else "="
    ours = t.Relation(ask.left, ((sign, ask.right),))
    return found(ours, key, says(ours, key))


def in_order(ask: Order, key: t.Node) -> Finding:
    """Return whether the key has each of the numbers once, and each larger than the one before.

    >>> from itembank.notation import parse
    >>> in_order(Order(parse("0.5, 1/3").parts, "ascending"), parse("0.5, 1/3")).fault
    'it does not come to 0.5, 1/3; the key is not in order after its 1st number'
    """
    things, descending = ask.things, ask.detail == "descending"
    values = [to_sympy(thing) for thing in things]
    if not isinstance(key, t.Listing) or len(key.parts) != len(things):
        return found("", key, False, f"the answer has {len(things)} numbers")
    given = [to_sympy(part) for part in key.parts]
    left = list(values)
    for place, value in enumerate(given, start=1):
        # Each printed number may be used once, however it is written in the key.
        same = next((root for root in left if is_zero(root - value)), None)
        if same is None:
            return found("", key, False, f"its {ordinal(place)} number is not in the question")
        left.remove(same)
    low_first = given[::-1] if descending else given
    for place, (a, b) in enumerate(itertools.pairwise(low_first), start=1):
        if not (b - a).is_positive:
            at = len(given) - place if descending else place
            return found("", key, False, f"the key is not in order after its {ordinal(at)} number")
    return Finding(key)


def choice(ask: Choose, key: t.Node) -> Finding:
    """Return the name of the least or the greatest, and whether it is the key.

    Raises:
        NotExact: two are equally good.
    """
    options, side = ask.options, 1 if ask.detail == "least" else -1
    worth = {name: to_sympy(node) for name, node in options}
    best = [
        name
        for name, value in worth.items()
        if all(
            (side * (amount - value)).is_positive
            for rival, amount in worth.items()
            if rival != name
        )
    ]
    if len(best) != 1:
        raise NotExact("two choices are equally good")
    ours = t.Label(best[0])
    return found(ours, key, key == ours)
