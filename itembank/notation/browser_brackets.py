"""Brackets for a browser: round what is no taller than a line they stay as they are set in a text.

A bracket of MathML is stretchy (MathML Core, operator dictionary), and a browser takes the sizes
for that from the mathematics font, where they have wider sides than the bracket of a line: a gap
opens within each. Slides and sheets have none.
"""

from __future__ import annotations

import re

_BRACKET = re.compile(r"<mo>([()\[\]])</mo>")
_TALL = re.compile(r"<(mfrac|msqrt|mroot|mtable|munder|mover|munderover)\b")


def closed_up(mathml: str) -> str:
    """Return MathML whose brackets do not stretch where they hold nothing tall.

    >>> closed_up("<mo>(</mo><mn>96</mn><mo>)</mo>")
    '<mo stretchy="false">(</mo><mn>96</mn><mo stretchy="false">)</mo>'
    >>> closed_up("<mo>(</mo><mfrac><mn>1</mn><mn>2</mn></mfrac><mo>)</mo>")
    '<mo>(</mo><mfrac><mn>1</mn><mn>2</mn></mfrac><mo>)</mo>'
    """
    opened: list[re.Match[str]] = []
    flat: set[int] = set()
    for bracket in _BRACKET.finditer(mathml):
        if bracket[1] in "([":
            opened.append(bracket)
        elif opened:
            first = opened.pop()
            if not _TALL.search(mathml, first.end(), bracket.start()):
                flat |= {first.start(), bracket.start()}
    return _BRACKET.sub(
        lambda at: f'<mo stretchy="false">{at[1]}</mo>' if at.start() in flat else at[0], mathml
    )
