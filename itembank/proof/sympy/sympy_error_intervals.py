"""The second road to error intervals: the ends of the key are rounded, and what is beside them.

Rounding never goes down where numbers go up. So an interval is the right one where its lower end
comes to the printed number and what is just below does not, and what is just below its upper end
does and that end itself does not. Importing this module imports sympy.
"""

from __future__ import annotations

import sympy

from itembank.items.asks import ErrorInterval
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found
from itembank.proof.sympy.sympy_text import sympy_text


def error_interval(ask: ErrorInterval, key: t.Node) -> Finding:
    """Return whether the key holds the numbers that come to the printed one, and no other.

    >>> from itembank.notation import parse
    >>> ask = ErrorInterval(t.Sym("x"), parse("3.4"), "places", 1)
    >>> error_interval(ask, parse("3.35 ≤ x < 3.45")).fault
    ''
    >>> bool(error_interval(ask, parse("3.35 < x ≤ 3.45")).fault)
    True
    """
    value = to_sympy(ask.value)
    if not (value.is_rational and value > 0):
        raise NotExact("an error interval is given here for a number above 0")
    if _to(ask, value) != value:
        raise NotExact("the number does not look rounded as the words say")
    ours = f"the numbers that come to {sympy_text(value)}"
    match key:
        case t.Relation(low, (("≤", letter), ("<", high))) if letter == ask.letter:
            pass
        case t.Relation(high, ((">", letter), ("≥", low))) if letter == ask.letter:
            pass
        case _:
            return found(ours, key, False, "it is not lower end ≤ letter < upper end")
    if t.symbols(low) or t.symbols(high):
        return found(ours, key, False, "its ends are not numbers")
    least, most = to_sympy(low), to_sympy(high)
    if not 0 <= least < most:
        return found(ours, key, False, "its ends are not in order")
    little = (most - least) / 10**6
    inside = _to(ask, least) == value == _to(ask, most - little)
    outside = _to(ask, most) != value and (least == 0 or _to(ask, least - little) != value)
    return found(ours, key, bool(inside and outside), "" if inside else "it holds other numbers")


def _to(ask: ErrorInterval, x: sympy.Rational) -> sympy.Rational:
    """Return a number rounded, or truncated, as the question's words say."""
    ten = sympy.Integer(10)
    if ask.detail == "nearest":
        step = sympy.Integer(ask.amount)
    elif ask.detail == "places":
        step = ten ** (-ask.amount)
    else:
        step = ten ** (sympy.floor(sympy.log(x, 10)) - ask.amount + 1) if x else ten
    half = sympy.Rational(1, 2) if ask.way == "nearest" else sympy.Integer(0)
    return sympy.floor(x / step + half) * step
