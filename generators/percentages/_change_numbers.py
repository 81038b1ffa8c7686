"""Which changes are asked for, and what the mistakes give.

Percentages are in tenths of one per cent, wrong amounts in hundredths.
"""

from __future__ import annotations

from generators.percentages._amounts import apart, hundredths
from generators.percentages._as_percentage import tenths_of
from generators.percentages._change_stories import GROWS, SHRINKS


def support_fits(kind: str, p: int, n: int) -> bool:
    """Keep changes that come to whole numbers."""
    return p * n % 1000 == 0 and apart(new_amount(kind, p, n), *change_wrong(kind, p, n))


def new_amount(kind: str, p: int, n: int) -> int:
    """Return what n is after a change by p, in hundredths.

    >>> new_amount("up", 100, 50), new_amount("down", 125, 80)
    (5500, 7000)
    """
    return n * (1000 + p if kind == "up" else 1000 - p) // 10


def change_wrong(kind: str, p: int, n: int) -> tuple[int | None, ...]:
    """Return what PLAIN, STOPS and WRONG_WAY give, in hundredths."""
    sign = 1 if kind == "up" else -1
    plain = hundredths(10 * n + sign * p, 10)
    return plain, hundredths(n * p, 1000), hundredths(n * (1000 - sign * p), 1000)


def core_fits(kind: str, p: int, n: int) -> bool:
    """Keep changes by a multiplier, multipliers, prices, and percentages of change to find."""
    if kind == "multiplier":
        # n tells an increase (1) from a decrease (−1).
        return n in (1, -1)
    if kind in ("up", "down"):
        point = hundredths(n * (1000 + (10 * p if kind == "up" else -10 * p)), 1000)
        wrong = (*change_wrong(kind, p, n)[:2], point if p < 100 else None)
        return p * n % 100 == 0 and apart(new_amount(kind, p, n), *wrong)
    if kind == "sale":
        return p * n % 10 == 0 and p * n % 1000 != 0 and n >= 8 and p % 50 == 0
    # p is a change in tenths of a per cent, with its sign.
    if p * n % 1000 or p == 0:
        return False
    new = n + p * n // 1000
    table = SHRINKS if p < 0 else GROWS
    return any(low <= n <= high for _, _, low, high in table) and apart(
        abs(p), *found_wrong(n, new)
    )


def found_wrong(old: int, new: int) -> tuple[int | None, ...]:
    """Return what CHANGE_AS, BY_NEW and NEW_AS give, in tenths of a per cent."""
    change = abs(new - old)
    return 10 * change if change < 100 else None, tenths_of(change, new), tenths_of(new, old)


def challenge_fits(kind: str, p: int, n: int, q: int) -> bool:
    """Keep two changes, the cheapest of three shops, and profits."""
    if kind == "twice":
        return (
            n * (1000 + p) * (1000 + q) % 10_000 == 0
            and 0 not in (p, q)
            and _two_changes_fit(p, n, q)
        )
    if kind == "shops":
        return _one_is_cheapest(n, p, q)
    # n things bought at q pence each, sold with a gain of p.
    return p * q % 1000 == 0 and _profit_fits(p, n, q)


def _two_changes_fit(p: int, n: int, q: int) -> bool:
    """Keep two changes that can happen to a price, and whose mistakes differ from the end."""
    middle, end = n * (1000 + p) // 10, n * (1000 + p) * (1000 + q) // 10_000
    if n * (1000 + p) % 10 or (p < 0 and q == -p):
        return False
    return apart(end, *twice_wrong(p, n, q), middle)


def twice_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what ADDS_BOTH and ONE_CHANGE give, in hundredths."""
    return hundredths(n * (1000 + p + q), 1000), hundredths(n * (1000 + p), 1000)


def three_shops(n: int, p: int, q: int) -> tuple[tuple[int, int], ...]:
    """Return price and percentage off of three shops: most off, the cheapest, least before."""
    return (n + q, p + 150), (n, p), (n - q // 2, p - 150)


def _one_is_cheapest(n: int, p: int, q: int) -> bool:
    shops = three_shops(n, p, q)
    if any(price * off % 100 or off <= 0 for price, off in shops):
        return False
    first, best, last = (price * (1000 - off) for price, off in shops)
    return best < first and best < last and first != last and 5 * max(first, last) < 6 * best


def _profit_fits(p: int, n: int, q: int) -> bool:
    each = q + p * q // 1000
    if n * q % 100 or n * each % 10:
        return False
    cost, taken = n * q, n * each
    return apart(p, *profit_wrong(cost, taken))


def profit_wrong(cost: int, taken: int) -> tuple[int | None, ...]:
    """Return the gain of what was taken, the gain in pounds, and what was taken of the cost."""
    gain = taken - cost
    in_pounds = gain // 10 if gain % 100 == 0 else None
    return tenths_of(gain, taken), in_pounds, tenths_of(taken, cost)
