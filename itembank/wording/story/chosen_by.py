"""By what one of several is chosen: the cheapest, the tallest, the best value."""

from __future__ import annotations

import re

from itembank.text.late_pattern import late

_LEAST = late(
    r"\b(?:less|least|lowest|lower|cheap\w*|small\w*|short\w*|lightest|lighter|few\w*|cold\w*|narrow\w*|"
    r"less expensive|least expensive)\b",
    re.I,
)
_GREATEST = late(
    r"\b(?:more|most|greatest|greater|larg\w*|bigg\w*|highest|higher|longest|longer|heav\w*|"
    r"dearest|dearer|tall\w*|warm\w*|hott\w*|wid\w*)\b",
    re.I,
)
_BEST = late(r"\b(?:best|better) (?:value|buy|deal|offer)\b|\bbest\b", re.I)
_MORE_THAN_CHOOSING = late(
    r"\b(?:not|n't|never|difference|how much|how many|both|neither|second|third|middle|between|next|"
    r"after|but one|closest|nearest|avoid|worst|worse|last|later|only|off|lose[sd]?|lost|costs? (?:of|to)|"
    r"(?:less|least|more|most) (?:cold|warm|hot|heavy|light|slow|fast|likely|far))\b"
    r"|\bof (?:\w+s )?[A-Z] and [A-Z]\b|\bwhat is the\b",
    re.I,
)
_DEAREST = late(r"\bmost expensive\b", re.I)


def more_than_choosing(words: str) -> str:
    """Return the word by which a question asks for more than to choose, or an empty string.

    >>> more_than_choosing("Which is the second cheapest?"), more_than_choosing("Which is cheaper?")
    ('second', '')
    """
    found = _MORE_THAN_CHOOSING.search(words)
    return found[0] if found else ""


def least_or_greatest(words: str) -> str:
    """Return ``least``, ``greatest`` or ``both`` as the words say, or an empty string.

    >>> least_or_greatest("Which bag is heavier?"), least_or_greatest("Which is best?")
    ('greatest', '')
    """
    low, high = _LEAST.search(words), _GREATEST.search(words)
    if low and high:
        return "greatest" if _DEAREST.search(words) else "both"
    return "least" if low else "greatest" if high else ""


def asks_best(words: str) -> bool:
    """Tell whether the words ask for the best of several, as the best value is."""
    return bool(_BEST.search(words))
