"""The second road to an equivalent fraction.

Importing this module imports sympy.
"""

from __future__ import annotations

import sympy

from itembank.items.asks import Equivalent
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, text


def equivalent(ask: Equivalent, key: t.Node) -> Finding:
    """Return a fraction that sympy makes, and whether the key is right.

    >>> from itembank.notation import parse
    >>> bool(equivalent(Equivalent(parse("2/3")), parse("6/9")).fault)
    False
    >>> equivalent(Equivalent(parse("2/3")), parse("3/4")).fault
    '3/4 is not another fraction equal to 2/3'
    """
    value = to_sympy(ask.target)
    if not value.is_Rational or value == 0:
        raise NotExact("sympy makes equivalent fractions of rational numbers other than 0 only")
    ours = f"for example {5 * value.p}/{5 * value.q}"
    right = False
    if not isinstance(key, t.Relation | t.Listing | t.Either):
        right = sympy.simplify(to_sympy(key) - value) == 0 and text(key) != text(ask.target)
    return Finding(
        ours, "" if right else f"{text(key)} is not another fraction equal to {text(ask.target)}"
    )
