"""Keeps the comments a person put into a file that the tool writes anew."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from difflib import SequenceMatcher


def with_comments(new: str, old: str, ours: Callable[[str], bool]) -> str:
    r"""Return `new` with the comments of `old`, each before the line it stood before.

    Comments that are `ours` are left out. One whose line is gone stands before the next line
    that stayed. Where a comment would change what `new` says, all are left out.

    >>> old = "# The week.\na = 1\n# Ask Sam.\nb = 2  # or 3\n"
    >>> new = "# The week.\na = 5\nb = 2\n"
    >>> print(with_comments(new, old, lambda comment: "week" in comment), end="")
    # The week.
    a = 5
    # Ask Sam.
    b = 2  # or 3
    """
    lines = new.split("\n")
    codes = [_split(line)[0] or line for line in lines]
    stayed: list[tuple[str, list[str], str]] = []
    waiting: list[str] = []
    for line in old.split("\n"):
        code, comment = _split(line)
        if comment and not code and not ours(comment):
            waiting.append(line.rstrip())
        else:
            stayed.append((code or line, waiting, "" if not comment or ours(comment) else comment))
            waiting = []
    stayed.append(("", waiting, ""))
    found = _aligned([code for code, _, _ in stayed], codes)
    before: dict[int, list[str]] = {}
    after = len(lines) - 1
    for place in reversed(range(len(stayed))):
        _, above, beside = stayed[place]
        if place in found:
            after = found[place]
        if beside and place in found and not _split(lines[after])[1]:
            lines[after] += f"  {beside}"
        elif beside:
            above = [*above, beside]
        before[after] = [*above, *before.get(after, [])]
    kept = "\n".join(
        part for place, line in enumerate(lines) for part in (*before.get(place, []), line)
    )
    try:
        return kept if tomllib.loads(kept) == tomllib.loads(new) else new
    except tomllib.TOMLDecodeError:
        return new


def _aligned(old: list[str], new: list[str]) -> dict[int, int]:
    """Return which line of the new text each line of the old one is."""
    pairs = SequenceMatcher(None, old, new, autojunk=False).get_matching_blocks()
    return {a + k: b + k for a, b, size in pairs for k in range(size)}


def _split(line: str) -> tuple[str, str]:
    """Return what a line says, and its comment.

    >>> _split('why = "no. #3"  # ask')
    ('why = "no. #3"', '# ask')
    """
    quote, escaped = "", False
    for place, char in enumerate(line):
        if quote:
            if char == quote and not escaped:
                quote = ""
            escaped = char == "\\" and quote == '"' and not escaped
        elif char in "\"'":
            quote = char
        elif char == "#":
            return line[:place].rstrip(), line[place:].rstrip()
    return line.rstrip(), ""
