"""Which parts of wholes are asked for, and what the mistakes give, in tenths of a per cent."""

from __future__ import annotations

from generators.percentages._amounts import apart
from generators.percentages._as_percentage import tenths_of

BIG = ((100, "m", "cm"), (100, "£", "p"), (1000, "kg", "g"), (60, "h", "min"), (1000, "l", "ml"))


_OUT_OF = ((10, 20, 50), (20, 25, 40), (10, 25, 40), (20, 40, 50), (25, 40, 60), (20, 30, 50))


def plain_wrong(a: int, n: int) -> tuple[int | None, ...]:
    """Return what the mistakes give in tenths of a per cent: TOP_AS, REST, UPSIDE_DOWN, ADDS_UP."""
    added = 10 * (a + 100 - n) if n < 100 else None
    return 10 * a if a < 100 else None, tenths_of(n - a, n), tenths_of(n, a), added


def support_fits(kind: str, n: int, a: int) -> bool:
    """Keep parts of wholes that go into a hundred; on a line, parts by its steps."""
    if kind == "line":
        # Here a counts steps of ten, and n is the whole.
        return a in (2, 3, 4, 6, 7) and a * n not in (1000, 100 * a, 1000 - 100 * a)
    if not 0 < a < n or 2 * a == n or (n == 200 and a % 2):
        return False
    key = tenths_of(a, n)
    return key is not None and apart(key, *plain_wrong(a, n))


def core_fits(kind: str, n: int, a: int) -> bool:
    """Keep wholes that have to be cancelled first, and amounts in two units."""
    if kind == "story":
        # a counts hundredths.
        if n * a % 100:
            return False
        part = n * a // 100
        return part > 1 and 2 * part != n and apart(10 * a, *plain_wrong(part, n))
    size, big, _ = BIG[n % 10]
    whole = size * (n // 10)
    if whole * a % 100 or a == 50:
        return False
    part = whole * a // 100
    return not (big == "h" and part % 3) and part < size and apart(10 * a, *units_wrong(part, n))


def units_wrong(part: int, n: int) -> tuple[int | None, ...]:
    """Return what the mistakes give in tenths of a per cent: UNITS_LOST, TOP_AS, REST."""
    size, whole = BIG[n % 10][0], n // 10
    top_as = 10 * part if part < 100 else None
    return tenths_of(part, whole), top_as, tenths_of(size * whole - part, size * whole)


def challenge_fits(kind: str, n: int, a: int, b: int) -> bool:
    """Keep two groups, more than the whole, and the best of three scores."""
    if kind == "groups":
        # n members, of whom a hundredths or halves of one are in the first group.
        if n * a % 200 or a == 100:
            return False
        part = n * a // 200
        return part > 1 and apart(5 * a, *groups_wrong(part, n))
    if kind == "over":
        if n * a % 100:
            return False
        part = n * a // 100
        return apart(10 * a, *over_wrong(part, n))
    # First, middle and last: a out of n, then more out of more.
    return _scores_fit(n, a, b)


def groups_wrong(part: int, n: int) -> tuple[int | None, ...]:
    """Return what the mistakes give: PART_TO_PART, REST, TOP_AS."""
    return tenths_of(part, n - part), tenths_of(n - part, n), 10 * part if part < 100 else None


def over_wrong(part: int, n: int) -> tuple[int | None, ...]:
    """Return what the mistakes give: UPSIDE_DOWN, CHANGE_ONLY, LARGER_AS."""
    return tenths_of(n, part), tenths_of(part - n, n), 10 * part


def three_scores(n: int, a: int, b: int) -> tuple[tuple[int, int], ...]:
    """Return three scores: the fewest wrong answers, the best, the most right ones."""
    few, some, many = _OUT_OF[n % 10]
    return (few - b, few), (some * a // 100, some), (many * (a - n // 10) // 100, many)


def _scores_fit(n: int, a: int, b: int) -> bool:
    first, best, last = three_scores(n, a, b)
    if best[1] * a % 100 or last[1] * (a - n // 10) % 100 or first[0] < 3:
        return False
    wrong = [out - right for right, out in (first, best, last)]
    return (
        first[0] * best[1] < best[0] * first[1]
        and first[0] < best[0] < last[0]
        and wrong[0] < wrong[1] < wrong[2]
        and first[0] * last[1] != last[0] * first[1]
    )
