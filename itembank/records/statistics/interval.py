"""How sure a share is: the Wilson score interval for right answers out of answers given."""

from __future__ import annotations

from functools import cache
from math import sqrt
from statistics import NormalDist
from typing import NamedTuple


class Interval(NamedTuple):
    """A share and the lowest and highest value that the answers leave likely, from 0 to 1."""

    share: float
    low: float
    high: float


def wilson(right: float, out_of: int, confidence: float = 0.95) -> Interval:
    """Return the share `right` / `out_of` with its Wilson score interval.

    The interval holds the shares p for which the answers lie within z standard errors of p
    (Wilson, *Journal of the American Statistical Association* 22, 1927;
    from memory, and recomputed without the formula by a test). It stays between 0
    and 1 and does not close up at 0 or all right, which suits classes of thirty and fewer.
    With no answers nothing is known: the interval is 0 to 1 and the share one half.

    Raises:
        ValueError: a count is negative, more are right than answered, or the confidence is
            not between 0 and 1.

    >>> [round(x, 3) for x in wilson(5, 10)]
    [0.5, 0.237, 0.763]
    """
    if not 0 <= right <= out_of:
        raise ValueError(f"{right} right answers out of {out_of} cannot be")
    if not 0 < confidence < 1:
        raise ValueError(f"a confidence lies between 0 and 1, not at {confidence}")
    if not out_of:
        return Interval(0.5, 0.0, 1.0)
    z = _deviate(confidence)
    share = right / out_of
    spread = z * z / out_of
    middle = (share + spread / 2) / (1 + spread)
    half = z * sqrt(share * (1 - share) / out_of + spread / (4 * out_of)) / (1 + spread)
    # At the ends the exact bounds are 0 and 1; rounding must not leave them by 1e-17.
    low = 0.0 if right == 0 else middle - half
    high = 1.0 if right == out_of else middle + half
    return Interval(share, low, high)


@cache
def _deviate(confidence: float) -> float:
    """Return z, once for each confidence: a report on items asks for thirty thousand."""
    return NormalDist().inv_cdf((1 + confidence) / 2)
