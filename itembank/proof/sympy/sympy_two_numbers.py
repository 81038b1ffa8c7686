"""The second road to two numbers with a sum and a product.

Importing this module imports sympy.
"""

from __future__ import annotations

import sympy

from itembank.items.asks import TwoNumbers
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found
from itembank.proof.sympy.sympy_text import sympy_text


def two_numbers(ask: TwoNumbers, key: t.Node) -> Finding:
    """Return the two numbers that sympy solves the two equations to, and whether the key is they.

    >>> from itembank.notation import parse
    >>> ask = TwoNumbers(t.Int(10), t.Int(24))
    >>> two_numbers(ask, parse("6, 4")).fault, bool(two_numbers(ask, parse("3, 7")).fault)
    ('', True)
    """
    a, b = sympy.symbols("a b")
    rows = [a + b - to_sympy(ask.total), a * b - to_sympy(ask.product)]
    pairs = {frozenset(pair) for pair in sympy.solve(rows, [a, b])}
    if (
        len(pairs) != 1
        or len(ours := pairs.pop()) != 2
        or not all(number.is_real for number in ours)
    ):
        raise NotExact("sympy finds no two different numbers with this sum and this product")
    given = key.parts if isinstance(key, t.Listing) else (key,)
    right = len(given) == 2 and frozenset(map(to_sympy, given)) == ours
    return found(", ".join(map(sympy_text, sorted(ours))), key, right)
