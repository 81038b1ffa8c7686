"""Which geometric sequences are asked for."""

from __future__ import annotations

from fractions import Fraction


def terms_of(first: Fraction | int, ratio: Fraction | int, count: int = 4) -> list[Fraction]:
    """Return the first terms of a sequence that is multiplied by a ratio each time.

    >>> [int(term) for term in terms_of(3, 2)]
    [3, 6, 12, 24]
    """
    return [Fraction(first) * Fraction(ratio) ** k for k in range(count)]


def support_fits(kind: int, first: int, r: int) -> bool:
    """Keep short sequences whose multiplier is not seen in the first term."""
    return first * r**3 < 1300 and (kind == 2 or first != r) and (kind != 1 or first > 1)


def core_fits(kind: int, first: int, r: int) -> bool:
    """Keep falling sequences, negative multipliers, and the sixth term."""
    if kind == 0:  # falling: the last of four terms is `first`
        return first * r**3 < 2100 and first % r != 0
    if kind == 1:  # a negative multiplier
        return first * r**4 < 3000 and first < 31
    return first * r**5 < 4100 and r < 5  # the sixth term


def challenge_fits(kind: int, first: int, r: int) -> bool:
    """Keep the way back to the first term, stories, and multipliers above 1 that are fractions."""
    if kind == 0:  # back to the first term
        return first * r**4 < 4000
    if kind == 1:  # stories
        return r in (2, 3) and first * r**5 < 5000
    return r in (2, 3, 4) and first < 16  # a fraction above 1: r + 1 over r
