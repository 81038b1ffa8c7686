"""Whole numbers as a person types them: the one place that turns such text into an int."""

from __future__ import annotations

# More than any score, place or address has, and few enough that Python reads them at once.
MOST_DIGITS = 15


def whole_number(text: str, most_digits: int = MOST_DIGITS) -> int | None:
    """Return the whole number that a text is, or None; surrounding space is no part of one.

    Only the figures 0 to 9 count: ``str.isdigit`` also takes superscripts, which ``int``
    refuses, and ``int`` itself refuses numbers of thousands of digits.

    >>> whole_number("12"), whole_number("-1"), whole_number("²"), whole_number("9" * 5000)
    (12, None, None, None)
    """
    if not (text.isascii() and text.isdigit() and len(text) <= most_digits):
        return None
    return int(text)
