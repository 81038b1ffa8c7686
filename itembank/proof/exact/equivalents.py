"""The first road to an equivalent fraction: exact arithmetic."""

from __future__ import annotations

from itembank.items.asks.equivalent import Equivalent, not_equivalent
from itembank.notation import tree as t
from itembank.notation.value import NotExact, exact
from itembank.proof.claim.finding import Finding, text


def find_equivalent(ask: Equivalent, key: t.Node) -> Finding:
    """Return a fraction that is right, and how the key is not.

    Two fractions that are right are made without looking at the key, over two and three times
    the lowest denominator; where one is printed, four times it gives another.

    Raises:
        NotExact: the number is 0, or has no exact value.

    >>> from itembank.notation import parse
    >>> ask = Equivalent(parse("2/3"))
    >>> find_equivalent(ask, parse("6/9")).shown, find_equivalent(ask, parse("3/4")).fault
    ('for example 4/6', '4/6 would be right, the key says 3/4; 3/4 is not equal to 2/3')
    """
    value = exact(ask.target)
    if not value:
        raise NotExact("there is nothing to multiply in 0")
    made = [t.frac(k * value.numerator, k * value.denominator) for k in (2, 3, 4)]
    ours = text(next(answer for answer in made if not not_equivalent(ask, answer)))
    if fault := not_equivalent(ask, key):
        return Finding(
            f"for example {ours}", f"{ours} would be right, the key says {text(key)}; {fault}"
        )
    return Finding(f"for example {ours}")
