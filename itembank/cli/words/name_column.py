"""Tables and texts of names that may be longer than the room there is for them."""

from __future__ import annotations

import textwrap
from collections.abc import Collection, Sequence

from itembank.cli.words.wrapped import table, width

LEAST = 16
"""Columns that a name is given at least, however wide the figures beside it are."""


def cut(text: str, most: int) -> str:
    """Return `text`, shortened to `most` characters at a word where there is one.

    >>> cut("Adding and subtracting mixed numbers", 24)
    'Adding and subtracting…'
    >>> cut("fractions.decimals-percentages", 20)
    'fractions.decimals-…'
    """
    if len(text) <= most:
        return text
    whole = textwrap.shorten(text, most, placeholder="…", break_on_hyphens=False)
    return whole if len(whole) > 1 else text[: most - 1].rstrip() + "…"


def named_table(
    heads: Sequence[str], rows: Sequence[Sequence[str]], right: Collection[int] = ()
) -> str:
    """Return a table whose first column names its rows: whole, on several lines where need be.

    The table then fills the width there is and no more.

    >>> print(named_table(["topic", "n"], [["ratio", "5"]], right={1}))
    topic  n
    ratio  5
    """
    others = [max(len(row[i]) for row in (heads, *rows)) for i in range(1, len(heads))]
    room = max(LEAST, width() - sum(others) - 2 * len(others))
    lines: list[Sequence[str]] = []
    for row in rows:
        first, *more = _lines(row[0], room)
        lines.append([first, *row[1:]])
        lines += [[part, *("" for _ in row[1:])] for part in more]
    return table(heads, lines, right)


def _lines(text: str, room: int) -> list[str]:
    return textwrap.wrap(text, room, subsequent_indent="  ", break_on_hyphens=False) or [""]
