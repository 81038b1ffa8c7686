"""Where a line ends in the words of cards and numbered lines: each row of them stands by itself.

A hand-written question is one line in its file. With the names of its cards and lines told from
the words, it prints as a generated one does.
"""

from __future__ import annotations

import re

_ASKS = re.compile(r"\b(?:odd one out|match (?:each|every))\b", re.I)
_LINES = re.compile(r"\bline 1: *$", re.I)
_NAME = re.compile(r"(\([A-Z]\)|\b[A-Z]:?|\bline \d+:) *$", re.I)
_ROW = re.compile(r"\s+(?=(?:\(?[AP]\)?:?|line \d+:)\s*$)", re.I)
_QUESTION = re.compile(r"(?:^|(?<=[.;])) +(?=(?:in )?which line\b)", re.I)


def in_rows(pieces: list[tuple[str, bool]]) -> list[str]:
    r"""Return the texts of a prompt's pieces, each with whether it is mathematics, in rows.

    The first card of a row, each numbered line and what is asked about them begin a new line, and
    a name stays beside its card. Other prompts come back as they are.

    >>> cards = [("Match each sum with its answer. (A) ", False), ("1 + 1", True)]
    >>> in_rows([*cards, (". (P) ", False), ("2", True)])
    ['Match each sum with its answer.\n(A)\xa0', '1 + 1', '.\n(P)\xa0', '2']
    >>> in_rows([("Add to A ", False), ("7", True)])
    ['Add to A ', '7']
    """
    texts = [text for text, _ in pieces]
    words = [text for text, maths in pieces if not maths]
    cards = bool(words and _ASKS.search(words[0]))
    if not cards and not any(_LINES.search(text) for text in words):
        return texts
    for place, (text, maths) in enumerate(pieces):
        if maths:
            continue
        before_maths = place + 1 < len(pieces)
        if before_maths and _NAME.search(text):
            text = _NAME.sub(lambda found: f"{found[1]}\u00a0", _ROW.sub("\n", text))
        texts[place] = text if cards else _QUESTION.sub("\n", text)
    return texts
