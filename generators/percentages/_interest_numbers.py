"""Which savings, rates and times are asked for, and what the mistakes give.

Savings n are in pounds, a rate p in tenths of one per cent, what comes out in hundredths.
"""

from __future__ import annotations

from generators.percentages._amounts import apart, hundredths
from generators.percentages._as_percentage import tenths_of


def years_fit(kind: str, n: int, p: int, k: int) -> bool:
    """Keep interest, or all there is after k years, with two mistakes that show."""
    if p * n % 100:
        return False
    return apart(
        interest_of(n, p, k) + (100 * n if kind == "total" else 0), *wrong_of_years(kind, n, p, k)
    )


def interest_of(n: int, p: int, k: int) -> int:
    """Return the simple interest in hundredths of a pound, of whole years."""
    return n * p * k // 10


def wrong_of_years(kind: str, n: int, p: int, k: int) -> tuple[int | None, ...]:
    """Return what the mistakes give: of a total, INTEREST_ONLY, ONE_YEAR and POUNDS."""
    year, interest = n * p // 10, interest_of(n, p, k)
    if kind == "total":
        return interest, 100 * n + year, 100 * n + 10 * p * k
    return year, 100 * n + interest, 10 * p * k


def months_fit(kind: str, n: int, p: int, k: int) -> bool:
    """Keep interest of k months that comes out in pence."""
    return n * p * k % 120 == 0 and apart(n * p * k // 120, *wrong_of_months(n, p, k))


def wrong_of_months(n: int, p: int, k: int) -> tuple[int | None, ...]:
    """Return what MONTHS and WHOLE_YEAR give."""
    return hundredths(n * p * k, 1000), hundredths(n * p, 1000)


def backwards_fit(kind: str, n: int, p: int, k: int) -> bool:
    """Keep whole pounds of interest a year, with two mistakes that show."""
    if n * p % 1000 or k * n * p % 1000:
        return False
    if kind == "rate":
        return apart(p, *wrong_rates(n, p, k))
    if kind == "time":
        return apart(100 * k, *wrong_times(n, p, k))
    return p != 10 and apart(100 * n, *wrong_savings(n, p, k))


def wrong_rates(n: int, p: int, k: int) -> tuple[int | None, ...]:
    """Return what NO_TIME and YEARLY_AS_RATE give, in tenths of a per cent."""
    interest = n * p * k // 1000
    return tenths_of(interest, n), 10 * interest // k if interest < 100 * k else None


def wrong_times(n: int, p: int, k: int) -> tuple[int | None, ...]:
    """Return what BY_RATE and YEARLY_AS_TIME give: of these, years in hundredths."""
    interest = n * p * k // 1000
    return hundredths(10 * interest, p), 100 * (interest // k)


def wrong_savings(n: int, p: int, k: int) -> tuple[int | None, ...]:
    """Return what NO_TIME and OF_INTEREST give."""
    interest = n * p * k // 1000
    return hundredths(1000 * interest, p), hundredths(interest * p * k, 1000)
