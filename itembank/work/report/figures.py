"""Figures and days as all reports print them, and the rows of their tables."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    from itembank.records.statistics.interval import Interval

Rows: TypeAlias = tuple[Sequence[str], list[Sequence[object]]]
"""A table for a CSV file: its headings and its rows."""


def share_words(interval: Interval) -> str:
    """Return a share with the ends of its interval, in per cent.

    >>> from itembank.records.statistics.interval import wilson
    >>> share_words(wilson(5, 10))
    '50 % (24–76)'
    """
    low, high = round(100 * interval.low), round(100 * interval.high)
    return f"{round(100 * interval.share)} % ({low}–{high})"


def percent(part: int, whole: int) -> str:
    """Return a part of a whole with its share.

    >>> percent(3, 12), percent(0, 0)
    ('3 of 12 (25 %)', '0 of 0')
    """
    return f"{part} of {whole}" + (f" ({round(100 * part / whole)} %)" if whole else "")


def figure(value: float | None) -> str:
    """Return a figure to two places with a true minus; a dash where it is not known.

    >>> figure(-0.251), figure(None)
    ('−0.25', '–')
    """
    return "–" if value is None else f"{round(value, 2) + 0.0:.2f}".replace("-", "−")


def places(value: float | None) -> float | None:
    """Return a figure to four places, for a spreadsheet; None where it is not known.

    >>> places(0.30000000000000004), places(None)
    (0.3, None)
    """
    # Added to 0, what is hardly below it has no minus: databases sum in different orders.
    return None if value is None else round(value, 4) + 0.0


def rounded(interval: Interval) -> tuple[float, float, float]:
    """Return a share and its ends to four places, for a spreadsheet."""
    return round(interval.share, 4), round(interval.low, 4), round(interval.high, 4)
