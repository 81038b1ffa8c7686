"""Which numbers are asked for in inverse proportion, and what the mistakes give.

Wrong answers are doubled, so that halves are whole numbers.
"""

from __future__ import annotations

from generators._turns import by_turns
from generators.ratio._inverse_stories import SUPPLIES, job_for


def _apart(key: int, *wrong: int | None) -> bool:
    return len({value for value in wrong if value and value > 0 and value != key}) > 1


def _doubled(top: int, bottom: int) -> int | None:
    """Return a quotient that is a positive whole number or a half, doubled; else None."""
    value, rest = divmod(2 * top, bottom)
    return None if rest or value <= 0 else value


def support_fits(kind: str, p: int, n: int, q: int) -> bool:
    """Keep a number that is doubled, trebled, halved or so."""
    if p == q or p * n % q or (p % q and q % p):
        return False
    key = p * n // q
    return job_for(n, key, 0) is not None and _apart(2 * key, *simple_wrong(p, n, q))


def simple_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what DIRECT, ADDITIVE and UNDIVIDED give, doubled."""
    return _doubled(n * q, p), 2 * (n + p - q), 2 * p * n


def core_fits(kind: str, p: int, n: int, q: int) -> bool:
    """Keep numbers of which neither is a multiple of the other, so that the way is by one."""
    if p == q or p * n % q or not (p % q and q % p):
        return False
    if kind == "rows" and n == q:  # as many in each row as before
        return False
    key = p * n // q
    if kind == "job":
        plausible = job_for(n, key, 0) is not None
    elif kind == "supply":
        low, high = by_turns(SUPPLIES, p + n + q)[2:]
        plausible = low <= n <= high and low <= key <= high
    elif kind == "journey":
        plausible = p * n <= 600
    elif kind == "letters":
        plausible = p < 16
    else:
        plausible = key <= 40
    return plausible and _apart(2 * key, *simple_wrong(p, n, q))


def challenge_fits(kind: str, p: int, n: int, q: int) -> bool:
    """Keep how many more are needed, and a change when part is done."""
    if kind == "more":
        # n hours with p, q hours with more.
        if q >= n or p * n % q or q < 2 or p * n < q * (p + 2):
            return False
        key = p * n // q - p
        return job_for(n, q, 0) is not None and key < 20 and _apart(2 * key, *more_wrong(p, n, q))
    # p at work, n hours in all; when q are gone after a third or so, how much longer.
    done = hours_done(n)
    left = p * (n - done)
    if q >= p - 1 or left % (p - q) or n % 3:
        return False
    key = left // (p - q)
    return job_for(n, key, 0) is not None and _apart(2 * key, *gone_wrong(p, n, q))


def hours_done(n: int) -> int:
    """Return how much of n hours is over when some stop."""
    return n // 3


def more_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what ALL_OF_THEM, ADDITIVE and DIRECT give, doubled: as many more as hours fewer."""
    return 2 * (p * n // q), 2 * (n - q), None


def gone_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what FORGETS_DONE and SAME_TIME give, doubled."""
    return _doubled(p * n, p - q), 2 * (n - hours_done(n))
