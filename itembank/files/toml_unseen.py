"""Characters in TOML text that nobody sees, or that pass for others: each with line and column."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

from itembank.files.faults import Fault
from itembank.text.characters import Found, has_hidden, hidden, look_alikes, named, without_hidden

_ESCAPE = re.compile(
    r"\\(?:u(?P<u>[0-9a-fA-F]{4})|U(?P<U>[0-9a-fA-F]{8})|x(?P<x>[0-9a-fA-F]{2})|(?P<c>.))"
)
_NAMED = {"b": "\b", "f": "\f", "r": "\r", "e": "\x1b"}
MOST = 20
"""Faults of this kind that are told of one file."""


def written_faults(path: Path | str, text: str) -> list[Fault]:
    r"""Return a fault for each unseen or look-alike character that stands in TOML text.

    >>> (fault,) = written_faults("a.toml", 'name = "8K"\nx = "\u200b"\n')
    >>> fault.line, fault.column, fault.message[:33]
    (2, 6, 'There is ZERO WIDTH SPACE (U+200B')
    """
    found = [*hidden(text)] if has_hidden(text) else []
    if not text.isascii():
        found += look_alikes(text)
    return _placed(path, text, found)


def escaped_faults(path: Path | str, text: str, data: Any) -> list[Fault]:
    r"""Return a fault for each unseen character that TOML text writes as its number.

    `data` is what the text says. Where no value holds any there is no fault.

    >>> (fault,) = escaped_faults("a.toml", 'x = "\\u001b[31m"', {"x": "\x1b[31m"})
    >>> fault.line, fault.column
    (1, 6)
    """
    # Only a backslash writes a character as its number; what stands as it is was told before.
    if "\\" not in text or not _anywhere(data, has_hidden):
        return []
    found = []
    for match in _ESCAPE.finditer(text):
        digits = match["u"] or match["U"] or match["x"]
        code = int(digits, 16) if digits else 0
        char = chr(code) if digits and code < 0x110000 else _NAMED.get(match["c"] or "", "")
        if char and has_hidden(char):
            says = f"{match[0]} is {named(char)}, which nobody can see. Take it out."
            found.append(Found(match.start(), says))
    return _placed(path, text, found)


def seen(data: Any) -> Any:
    """Return what TOML text says, with a space for each character that nobody sees."""
    if isinstance(data, str):
        return without_hidden(data)
    if isinstance(data, dict):
        return {without_hidden(key): seen(value) for key, value in data.items()}
    return [seen(part) for part in data] if isinstance(data, list) else data


def _anywhere(data: Any, test: Callable[[str], bool]) -> bool:
    waiting = [data]
    while waiting:
        part = waiting.pop()
        if isinstance(part, str):
            if test(part):
                return True
        elif isinstance(part, dict):
            waiting += [*part.keys(), *part.values()]
        elif isinstance(part, list):
            waiting += part
    return False


def _placed(path: Path | str, text: str, found: list[Found]) -> list[Fault]:
    faults = []
    for place in sorted(found, key=lambda place: place.at)[:MOST]:
        start = text.rfind("\n", 0, place.at) + 1
        line = text.count("\n", 0, place.at) + 1
        faults.append(Fault(str(path), line, place.says, place.at - start + 1))
    return faults
