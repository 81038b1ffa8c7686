"""Numbers and terms as they stand inside a sentence."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias

from itembank.notation import tree as t

Number: TypeAlias = int | Fraction


def shown(n: Number) -> str:
    """Return a number as text for a sentence, with a real minus sign.

    >>> shown(-3), shown(Fraction(3, 4))
    ('−3', '3/4')
    """
    return str(n).replace("-", "−")


def size(n: Number) -> Number:
    """Return a number without its sign."""
    return n if n >= 0 else -n


def shown_factor(n: Number) -> str:
    """Return a number as it stands after × or −: a negative one in a bracket.

    >>> shown_factor(4), shown_factor(-4)
    ('4', '(−4)')
    """
    return f"({shown(n)})" if n < 0 else shown(n)


def shown_term(a: Number, x: t.Sym) -> str:
    """Return ``ax`` as text: no coefficient of 1.

    >>> shown_term(3, t.Sym("x")), shown_term(-1, t.Sym("x"))
    ('3x', '−x')
    """
    if a in (1, -1):
        return x.name if a == 1 else f"−{x.name}"
    return f"{shown(a)}{x.name}"
