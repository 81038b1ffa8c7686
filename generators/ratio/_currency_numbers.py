"""Which sums of money and exchange rates are asked for, and what the mistakes give.

A rate is in hundredths of the other currency for a pound.
"""

from __future__ import annotations

from fractions import Fraction

from generators.ratio._rates import apart, written

EURO = (108, 110, 112, 115, 116, 118, 120, 124, 125)


DOLLAR = (120, 122, 124, 125, 126, 128, 130, 132, 135, 136, 140)


def there_fits(kind: str, sign: str, rate: int, pounds: int) -> bool:
    """Keep rates of a currency, and mistakes that show."""
    if rate not in (EURO if sign == "€" else DOLLAR):
        return False
    return apart(Fraction(rate * pounds, 100), *there_wrong(rate, pounds))


def there_wrong(rate: int, pounds: int) -> tuple[Fraction | None, ...]:
    """Return what DIVIDES, SAME and ADDS give."""
    return written(100 * pounds, rate), Fraction(pounds), pounds + Fraction(rate, 100)


def back_fits(kind: str, sign: str, rate: int, pounds: int) -> bool:
    """Keep money changed back to pounds, and rates to find."""
    if rate not in (EURO if sign == "€" else DOLLAR):
        return False
    if kind == "rate":
        # The third wrong answer came later, and questions keep their places.
        return apart(Fraction(rate, 100), *rate_wrong(rate, pounds)[:2])
    return apart(pounds, *back_wrong(rate, pounds))


def more_rates_fit(kind: str, sign: str, rate: int, pounds: int) -> bool:
    """Keep every rate for some amounts: with few rates, neighbours would find the same one."""
    if rate not in (EURO if sign == "€" else DOLLAR):
        return False
    return apart(Fraction(rate, 100), *rate_wrong(rate, pounds))


def back_wrong(rate: int, pounds: int) -> tuple[Fraction | None, ...]:
    """Return what MULTIPLIES, SAME and ADDS give."""
    other = Fraction(rate * pounds, 100)
    return written(rate * rate * pounds, 10_000), other, other - Fraction(rate, 100)


def rate_wrong(rate: int, pounds: int) -> tuple[Fraction | None, ...]:
    """Return what UPSIDE_DOWN, ADDS (the difference of the two amounts) and SAME give."""
    return written(100, rate), written((rate - 100) * pounds, 100), Fraction(rate * pounds, 100)


def trip_fits(kind: str, pounds: int, rate: int, other: int, part: int) -> bool:
    """Keep money changed, spent and changed back; and prices by way of pounds."""
    if kind == "across":
        if rate not in EURO or other not in DOLLAR or part:
            return False
        return apart(Fraction(other * pounds, 100), *across_wrong(pounds, rate, other))
    if rate == other or part == 0:
        return False
    # part is what is left, in pounds at the second rate.
    left = Fraction(other * part, 100)
    spent = Fraction(rate * pounds, 100) - left
    if spent.denominator > 1 or spent <= 10 or part >= pounds:
        return False
    return apart(part, *trip_wrong(pounds, rate, other, part))


def trip_wrong(pounds: int, rate: int, other: int, part: int) -> tuple[Fraction | None, ...]:
    """Return what NOT_SPENT, FIRST_RATE and MULTIPLIES give."""
    return (
        written(rate * pounds, other),
        written(other * part, rate),
        written(other * other * part, 10_000),
    )


def across_wrong(pounds: int, rate: int, other: int) -> tuple[Fraction | None, ...]:
    """Return what IN_POUNDS, SWAPPED and ONE_CHANGE give."""
    return (
        Fraction(pounds),
        written(rate * rate * pounds, 100 * other),
        written(rate * other * pounds, 10_000),
    )
