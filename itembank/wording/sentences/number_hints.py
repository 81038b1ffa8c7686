"""Beginnings of words that may stand for a number: for a search that must not miss one.

They say more than is meant (*even* has none, *height* has eight): what they find is then read.
"""

from __future__ import annotations

from itembank.text.late_pattern import late

SMALL = late(
    r"\b(?:thir|three|thrice|treb|trip|cub|four|quart|quad|fi[fv]|six|seven|eight|nin|ten|elev|twel)"
)
"""What may say a number from 3 to 12."""
LARGE = (
    *("teen", "twent", "thirt", "fort", "fift", "sixt", "sevent", "eight", "ninet", "hundred"),
    *("thousand", "million", "billion", "dozen", "score", "centur"),
)
"""What may say a larger one."""
