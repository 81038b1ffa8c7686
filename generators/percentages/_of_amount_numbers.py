"""Which percentages of amounts are asked for, and what the mistakes give.

Percentages are in tenths of one per cent, wrong amounts in hundredths.
"""

from __future__ import annotations

from generators.percentages._amounts import apart, hundredths


def support_fits(kind: str, p: int, n: int) -> bool:
    """Keep sums that come to whole numbers; on a line the percentage is a mark of its steps."""
    if p * n % 1000 or (kind == "line" and ((p % 100 and p % 250) or n > 400)):
        return False
    if kind == "line" and p in (100, 500, 800, 900):
        return False
    return apart(p * n // 10, *support_wrong(kind, p, n))


def support_wrong(kind: str, p: int, n: int) -> tuple[int | None, ...]:
    """Return what DIVIDES, SUBTRACTS, STOPS_AT_TEN and REST give, in hundredths."""
    # A line in fifths does not show 10%.
    tens = p > 100 and p % 100 == 0 and (kind == "sum" or p % 200 != 0)
    by_ten = hundredths(n, 10) if tens else None
    return (
        hundredths(10 * n, p),
        hundredths(10 * n - p, 10),
        by_ten,
        hundredths(1000 * n - p * n, 1000),
    )


def core_fits(kind: str, p: int, n: int, q: int, m: int) -> bool:
    """Keep awkward percentages, more than 100%, what is left, and the largest of three."""
    if kind == "choose":
        return _middle_is_largest(p, n, q, m)
    if p * n % 1000 and (kind == "rest" or p * n % 100):
        return False
    return apart(_core_key(kind, p, n), *core_wrong(kind, p, n))


def _core_key(kind: str, p: int, n: int) -> int:
    return (1000 - p) * n // 10 if kind == "rest" else p * n // 10


def core_wrong(kind: str, p: int, n: int) -> tuple[int | None, ...]:
    """Return what the mistakes give that belong to a sum, to more than 100%, and to the rest."""
    if kind == "sum":
        tens, over = divmod(p, 100)
        loose = hundredths(tens * n + over, 10) if tens else None
        return hundredths(10 * n, p), hundredths(p * n, 100), loose
    if kind == "over":
        return hundredths((p - 1000) * n, 1000), hundredths(10 * n + p - 1000, 10)
    return hundredths(p * n, 1000), hundredths(10 * n - p, 10)


def _middle_is_largest(p: int, n: int, q: int, m: int) -> bool:
    """Keep the middle of three as the largest: neither most per cent nor the most money."""
    first, middle, last = three_options(p, n, q, m)
    worths = [a * b for a, b in (first, middle, last)]
    apart = first[0] - middle[0] >= 50 and last[0] < middle[0] and middle[0] % 50 == 0
    return (
        apart
        and all(worth % 1000 == 0 for worth in worths)
        and first[1] < middle[1] < last[1]
        and worths[1] > max(worths[0], worths[2])
        and worths[1] * 3 < 4 * max(worths[0], worths[2])
        and worths[0] != worths[2]
    )


def three_options(p: int, n: int, q: int, m: int) -> tuple[tuple[int, int], ...]:
    """Return the three options: most per cent of little, the middle, little of most."""
    return (p, n), (q, m), (q - 100 if q > 150 else 50, m + n)


def challenge_fits(kind: str, p: int, n: int, q: int) -> bool:
    """Keep a part of a part, tenths of one per cent, and a percentage that makes sides equal."""
    if kind == "nested":
        part = p * n
        if part % 1000 or part * q % 1_000_000 or p == q or p + q >= 1000:
            return False
        return apart(part * (1000 - q) // 10_000, *challenge_wrong(kind, p, n, q))
    if kind == "halves":
        return p * n % 100 == 0 and apart(p * n // 10, *challenge_wrong(kind, p, n, q))
    # p% of n = □% of q, in whole per cents. Of half or a third of n it is twice or three times
    # the percentage, which is seen at once.
    if p * n % 1000 or p * n % (10 * q) or n <= q or n % q == 0 or p * n >= 1000 * q:
        return False
    return apart(10 * p * n // q, *challenge_wrong(kind, p, n, q))


def challenge_wrong(kind: str, p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what the mistakes give in a part of a part, in halves, and in equal sides."""
    if kind == "nested":
        part = p * n // 1000
        inner = part * q // 1000
        return 100 * inner, 100 * (n - inner), hundredths(1000 * part - q * n, 1000)
    if kind == "halves":
        return hundredths(p * n, 100), hundredths((p - 5) * n, 1000)
    return hundredths(p + 10 * (n - q), 10), hundredths(p * n, 1000)
