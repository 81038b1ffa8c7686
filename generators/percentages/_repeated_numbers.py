"""Which repeated changes are asked for, and what the mistakes give.

A change p is in tenths of one per cent and happens k times to n, or one change n follows it.
"""

from __future__ import annotations

from generators._turns import by_turns
from generators.percentages._amounts import apart
from generators.percentages._repeated_stories import DECAY, GROWTH, Story

_SIZES = {"cm": (20, 120), "£": (1500, 30_000), "l": (200, 2000), "": (100, 9000)}


def after_changes(n: int, p: int, k: int) -> int | None:
    """Return n changed k times by p tenths of a per cent, in hundredths, if each step is exact."""
    value = 100 * n
    for _ in range(k):
        value, rest = divmod(value * (1000 + p), 1000)
        if rest:
            return None
    return value


def _whole_after(n: int, p: int, k: int) -> bool:
    return all((after_changes(n, p, times) or 1) % 100 == 0 for times in range(1, k + 1))


def story_for(p: int, n: int, k: int) -> Story | None:
    """Return a story in which the numbers are plausible, or None."""
    fits = [
        story
        for story in (GROWTH if p > 0 else DECAY)
        if _SIZES[story.unit][0] <= n <= _SIZES[story.unit][1]
        and abs(p) <= story.most
        and (story.unit or _whole_after(n, p, k))
    ]
    return by_turns(fits, n // 20 + abs(p) // 10 + k) if fits else None


def story_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep equal changes of which each comes out, in a story that suits the numbers."""
    end = after_changes(n, p, k)
    if end is None or story_for(p, n, k) is None:
        return False
    return apart(end, *plain_wrong(p, n, k))


def plain_wrong(p: int, n: int, k: int) -> tuple[int | None, ...]:
    """Return what SIMPLE, ONCE, ONE_SHORT and CHANGE_ONLY give, in hundredths."""
    end, simple = after_changes(n, p, k), n * (1000 + k * p)
    short = after_changes(n, p, k - 1) if k > 2 else None
    return (
        simple // 10 if simple > 0 and simple % 10 == 0 else None,
        after_changes(n, p, 1),
        short,
        abs(end - 100 * n) if end is not None else None,
    )


def interest_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep savings of which each year's amount comes out in pence."""
    end = after_changes(n, p, k)
    return end is not None and apart(end, *plain_wrong(p, n, k))


def earned_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep interest that comes out in pence every year."""
    end = after_changes(n, p, k)
    return end is not None and apart(end - 100 * n, *earned_wrong(p, n, k))


def overall_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep two changes, p and n, that come to a whole number of tenths and do not cancel."""
    if p * n % 1000 or (p > 0 and n > 0 and p >= n):
        return False
    overall = p + n + p * n // 1000
    return overall != 0 and apart(abs(overall), *overall_wrong(overall, p, n))


def first_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep beginnings from which each change comes out, in a story that suits the numbers."""
    end = after_changes(n, p, k)
    if end is None or story_for(p, n, k) is None:
        return False
    return apart(100 * n, *first_wrong(end, p, k))


def earned_wrong(p: int, n: int, k: int) -> tuple[int | None, ...]:
    """Return what SIMPLE, TOTAL and ONCE give."""
    return k * p * n // 10, after_changes(n, p, k), p * n // 10


def overall_wrong(overall: int, p: int, n: int) -> tuple[int | None, ...]:
    """Return what ADDS_UP, LEFT and ONCE give, in tenths of a per cent."""
    added = abs(p + n) or None
    return added, 1000 + overall, abs(p)


def first_wrong(end: int, p: int, k: int) -> tuple[int | None, ...]:
    """Return what BACK_SUM and BACK_ONCE give."""
    by_sum, rest = divmod(end * 1000, max(1000 + k * p, 1))
    once, left = divmod(end * 1000, 1000 + p)
    fair = 1000 + k * p > 0
    return None if rest or not fair else by_sum, None if left else once
