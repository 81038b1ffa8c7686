"""Which wholes are asked for, and what the mistakes give.

Percentages are in tenths of one per cent, wrong amounts in hundredths.
"""

from __future__ import annotations

from generators.percentages._amounts import apart, hundredths


def support_fits(kind: str, p: int, n: int) -> bool:
    """Keep wholes n of which p tenths of a per cent come to a whole number."""
    if p * n % 1000 or (kind == "story" and n < 30) or p * n == 1000:
        return False
    if kind == "line" and (p % 100 or p in (100, 500, 800, 900) or n > 300):
        return False
    return apart(100 * n, *part_wrong(p, n))


def part_wrong(p: int, n: int) -> tuple[int | None, ...]:
    """Return what OF_PART, REST and PLAIN give, in hundredths."""
    part = p * n // 1000
    return hundredths(p * part, 1000), hundredths(n - part), hundredths(10 * part + p, 10)


def core_fits(kind: str, p: int, n: int) -> bool:
    """Keep old amounts n changed by p tenths of a per cent, up or down, or what is left of n."""
    if kind == "off":
        return p * n % 1000 == 0 and apart(n * (1000 - p) // 10, *off_wrong(p, n))
    if kind == "count" and (p * n % 1000 or n < 40):
        return False
    if kind == "price" and p * n % 100:
        return False
    new = n * (1000 + p)
    return (new % 10) == 0 and apart(100 * n, *change_wrong(p, n))


def change_wrong(p: int, n: int) -> tuple[int | None, ...]:
    """Return what OF_NEW, PLAIN and WRONG_WAY give, in hundredths."""
    new = n * (1000 + p)
    return (
        hundredths(new * (1000 - p), 1_000_000),
        hundredths(new - 100 * p, 1000),
        hundredths(new * (1000 + p), 1_000_000),
    )


def challenge_fits(kind: str, p: int, n: int, q: int) -> bool:
    """Keep two rises, and the rest of a whole."""
    if kind == "twice":
        end = n * (1000 + p) * (1000 + q)
        return p != q and end % 100_000 == 0 and apart(100 * n, *twice_wrong(p, n, q))
    left = 1000 - p - q
    if left <= 0 or p == q or left * n % 1000 or left == 500:
        return False
    return apart(100 * n, *land_wrong(p, n, q))


def twice_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what ADDS_BOTH and ONE_BACK give, in hundredths."""
    end = n * (1000 + p) * (1000 + q)
    return hundredths(end, 1000 * (1000 + p + q)), hundredths(n * (1000 + p), 1000)


def land_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what WRONG_PART and OF_PART give, in hundredths."""
    left = (1000 - p - q) * n // 1000
    return hundredths(1000 * left, p + q), hundredths(left * (1000 - p - q), 1000)


def off_wrong(p: int, n: int) -> tuple[int | None, ...]:
    """Return what STOPS and OF_PART give, in hundredths."""
    off = p * n // 1000
    return 100 * n, hundredths(off * (1000 - p), 1000)
