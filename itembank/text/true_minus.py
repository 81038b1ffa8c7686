"""Questions kept as one line of text, as a page prints them."""

from __future__ import annotations

import re


def printed(prompt: str) -> str:
    """Return a question as typed in one line with true minus signs; hyphens in words stay.

    >>> printed("Solve -x - 4 = 2-3x. A warm-up.")
    'Solve −x − 4 = 2−3x. A warm-up.'
    """
    return re.sub(r"(?<![A-Za-z])-|-(?![A-Za-z])", "\N{MINUS SIGN}", prompt)
