"""Shares on the scale of the logarithm of their odds, kept off 0 and 1."""

from __future__ import annotations

from math import exp, log

NEVER = 0.005
"""No share is held for nearer to 0 or 1 than this, however many answers say so."""


def logit(share: float) -> float:
    """Return the logarithm of the odds of a share, which is kept off 0 and 1.

    >>> logit(0.5)
    0.0
    """
    # Of 0 and of 1 the logit has no value, and nobody is that sure of a class.
    share = min(max(share, NEVER), 1 - NEVER)
    return log(share / (1 - share))


def share_at(value: float) -> float:
    """Return the share whose logit is `value`.

    >>> round(share_at(logit(0.8)), 6)
    0.8
    """
    return 1 / (1 + exp(-value))


def slope(share: float) -> float:
    """Return how fast a share grows with its logit.

    >>> slope(0.5)
    0.25
    """
    share = min(max(share, NEVER), 1 - NEVER)
    return share * (1 - share)
