"""One cell of a table of items, as text and as the value of its field.

A cell of several entries holds one a line; the parts of an entry have a ``|`` between them.
"""

from __future__ import annotations

import datetime
import json
import re
from typing import Any

_TEXT = ("title", "prompt", "key", "find", "licence", "source", "retired_because")
MOST_DIGITS = 20


def cell_text(name: str, value: Any) -> str:
    """Return the value of a field as the text of its cell."""
    if value is None:
        return ""
    if name == "working":
        return "\n".join(_joined(say, maths) if maths else _escaped(say) for say, maths in value)
    if name in ("options", "not_needed"):
        return "\n".join(_joined(*pair) for pair in value.items())
    if name == "figure":
        return json.dumps(value, ensure_ascii=False)
    if name == "misconceptions":
        return "\n".join(_joined(slip.id, slip.name, slip.wrong, slip.ask) for slip in value)
    if name == "constants":
        return " ".join(str(number) for number in value)
    if isinstance(value, tuple):
        return "\n".join(value)
    return value.isoformat() if isinstance(value, datetime.date) else str(value)


def _escaped(text: str) -> str:
    return text.replace("\\", "\\\\").replace("|", "\\|")


def _joined(*parts: str) -> str:
    return " | ".join(_escaped(part) for part in parts)


def _parted(line: str) -> list[str]:
    r"""Return the parts of a line; one space beside each bar belongs to the bar.

    >>> _parted(r"Add | 1 + 1 = 2"), _parted(r"a \| b|c")
    (['Add', '1 + 1 = 2'], ['a | b', 'c'])
    """
    parts = [""]
    chars = iter(line)
    for char in chars:
        if char == "|":
            parts.append("")
        else:
            parts[-1] += next(chars, char) if char == "\\" else char
    last = len(parts) - 1
    ended = [part[:-1] if at < last and part[-1:] == " " else part for at, part in enumerate(parts)]
    return [part[1:] if at and part[:1] == " " else part for at, part in enumerate(ended)]


def cell_value(name: str, cell: str) -> Any:
    """Return a cell as the value of its field; a ValueError says what it should hold."""
    if name in ("marks", "constants", "from_year"):
        numbers = [_whole(word) for word in re.split(r"[\s,;]+", cell.strip()) if word]
        if name == "constants":
            return tuple(numbers)
        if len(numbers) != 1:
            raise ValueError("holds one whole number")
        return numbers[0]
    if name in ("created", "retired"):
        try:
            return datetime.date.fromisoformat(cell.strip())
        except ValueError:
            raise ValueError(
                f"must be a day such as 2026-09-14, not ‘{cell.strip()[:40]}’"
            ) from None
    if name in ("model", "accept"):
        return tuple(line for line in cell.split("\n") if line.strip())
    if name == "working":
        return tuple(tuple(_line(line, 1, 2, "words | mathematics")) for line in _lines(cell))
    if name in ("options", "not_needed"):
        shape = "name | mathematics" if name == "options" else "number | why it is not needed"
        pairs = [_line(line, 2, 2, shape) for line in _lines(cell)]
        found: dict[str, str] = {}
        for key, value in pairs:
            # TOML refuses a key that comes twice; of two lines here one would be lost unsaid.
            if found.setdefault(key, value) != value:
                raise ValueError(f"has two lines for ‘{key[:40]}’")
        return found
    if name == "figure":
        try:
            data = json.loads(cell)
        except (ValueError, RecursionError):
            data = None
        if not isinstance(data, dict):
            raise ValueError('holds a figure’s data as JSON, as in {"kind": …}')
        return data
    if name == "misconceptions":
        parts = [
            _line(line, 4, 4, "id | name | wrong answer | what to ask") for line in _lines(cell)
        ]
        return tuple(dict(zip(("id", "name", "wrong", "ask"), p, strict=True)) for p in parts)
    return cell if name in _TEXT else cell.strip()


def _lines(cell: str) -> list[str]:
    return [line for line in cell.split("\n") if line.strip()]


def _line(line: str, least: int, most: int, shape: str) -> list[str]:
    parts = _parted(line)
    if not least <= len(parts) <= most:
        raise ValueError(f"holds lines such as ‘{shape}’, not ‘{line[:40]}’")
    return parts


def _whole(word: str) -> int:
    if len(word) > MOST_DIGITS or not re.fullmatch(r"-?\d+", word, re.ASCII):
        raise ValueError(f"must be a whole number, not ‘{word[:40]}’")
    return int(word)
