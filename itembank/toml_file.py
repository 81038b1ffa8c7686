"""TOML that a person wrote, read so that every fault can be told with its line.

``tomllib`` gives values without their places, so :class:`Locator` finds the line of a key
again from the text. :class:`Table` takes values out one by one, collects what is wrong with
them, and knows which keys nobody asked for.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from itembank.faults import Fault, FileFaults, decode_text, join_words, nearest

KeyPath = tuple[str | int, ...]

_HEADER = re.compile(r"\s*(\[\[?)\s*([^\[\]]+?)\s*\]\]?\s*(?:#.*)?$")
_KEY = re.compile(r"""\s*((?:[\w-]+|"[^"]*"|'[^']*')(?:\s*\.\s*(?:[\w-]+|"[^"]*"|'[^']*'))*)\s*=""")
_AT = re.compile(r"\s*\(at (?:line (\d+), column \d+|end of document)\)$")


class Locator:
    r"""Finds the line of a key path in TOML text.

    Where a key stands inside an inline table, or is missing, the line is that of the nearest
    table or key that holds it.

    >>> text = 'school = "Fernhill School"\n\n[[classes]]\nname = "8K"\nyear = 8\n'
    >>> Locator(text).line(("classes", 0, "year"))
    5
    """

    def __init__(self, text: str) -> None:
        self._lines = text.splitlines()
        self._found: dict[KeyPath, int] = {(): 0}
        self._scan()

    def _scan(self) -> None:
        table: KeyPath = ()
        counts: dict[KeyPath, int] = {}
        fence = ""
        for number, line in enumerate(self._lines, 1):
            if fence:  # inside a string of several lines, nothing is a key
                fence = "" if line.count(fence) % 2 else fence
                continue
            if match := _HEADER.match(line):
                names = _split(match[2])
                table = ()
                for depth, name in enumerate(names):
                    table = (*table, name)
                    is_new_entry = depth == len(names) - 1 and match[1] == "[["
                    if is_new_entry:
                        counts[table] = counts.get(table, -1) + 1
                        self._found.setdefault(table, number)
                    if table in counts:
                        table = (*table, counts[table])
                self._found[table] = number
            elif match := _KEY.match(line):
                path = table
                for name in _split(match[1]):
                    path = (*path, name)
                    self._found.setdefault(path, number)
            fence = next((f for f in ('"""', "'''") if line.count(f) % 2), "")

    def line(self, path: KeyPath) -> int:
        """Return the line of `path`, counted from 1, or 0 where only the file is known."""
        while path not in self._found:
            path = path[:-1]
        return self._found[path]

    def line_of_word(self, path: KeyPath, word: str) -> int:
        """Return the line at or after `path` where `word` stands in quotation marks."""
        start = self.line(path)
        for number in range(max(start, 1), len(self._lines) + 1):
            if f'"{word}"' in self._lines[number - 1] or f"'{word}'" in self._lines[number - 1]:
                return number
        return start


def _split(dotted: str) -> list[str]:
    parts = re.findall(r"""[\w-]+|"[^"]*"|'[^']*'""", dotted)
    return [part.strip("\"'") for part in parts]


class TomlFile:
    """A TOML file with its text, its data and the faults found in it so far.

    Raises:
        FileFaults: the file is missing, is not UTF-8, or is not TOML.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        # TOML ends its lines with LF or CRLF; the text is kept as such for line numbers.
        text = decode_text(path)
        try:
            self.data: dict[str, Any] = tomllib.loads(text)
        except tomllib.TOMLDecodeError as error:
            raise FileFaults([_syntax_fault(path, text, str(error))]) from None
        except (ValueError, RecursionError):  # a number or a nesting beyond all measure
            raise FileFaults([Fault(str(path), 0, "This cannot be read as TOML.")]) from None
        self._locator = Locator(text)
        self.faults: list[Fault] = []

    def fault(self, path: KeyPath, message: str, word: str = "") -> None:
        """Note a fault at `path`, or where `word` stands within its value."""
        at = self._locator
        line = at.line_of_word(path, word) if word else at.line(path)
        self.faults.append(Fault(str(self.path), line, message))

    def finish(self) -> None:
        """Raise :class:`FileFaults` if any fault was noted."""
        if self.faults:
            raise FileFaults(self.faults)

    def top(self) -> Table:
        """Return the whole file as a table."""
        return Table(self, self.data, ())


def _syntax_fault(path: Path, text: str, error: str) -> Fault:
    match = _AT.search(error)
    line = int(match[1]) if match and match[1] else len(text.splitlines())
    what = _AT.sub("", error)
    return Fault(
        str(path),
        line,
        f"This line cannot be read as TOML: {what[:1].lower()}{what[1:]}. "
        "Look for a missing quotation mark, comma, bracket or equals sign here or just above.",
    )


class Table:
    """One table of a file; each reader notes a fault and returns its default where it must."""

    def __init__(self, file: TomlFile, data: dict[str, Any], path: KeyPath) -> None:
        self.file, self.data, self.path = file, data, path
        self._asked: set[str] = set()

    def __contains__(self, key: str) -> bool:
        return key in self.data

    def fault(self, key: str, message: str, word: str = "") -> None:
        """Note a fault of `key`; an empty key stands for the table itself."""
        self.file.fault((*self.path, key) if key else self.path, message, word)

    def text(self, key: str, default: str | None = None, *, most: int = 200) -> str:
        """Read a line of text that is not blank; needed where `default` is None."""
        value = self._value(key, default)
        if value is None:
            return ""
        if not isinstance(value, str):
            self._wrong(key, "text in quotation marks", value)
        elif not value.strip() and value != default:
            self.fault(key, f"‘{key}’ is empty. Write something between the quotation marks.")
        elif len(value) > most or "\n" in value:
            self.fault(key, f"‘{key}’ is too long. Write one line of at most {most} characters.")
        else:
            return value.strip()
        return default or ""

    def whole(self, key: str, default: int | None, low: int, high: int) -> int:
        """Read a whole number from `low` to `high`; needed where `default` is None."""
        value = self._value(key, default)
        if value is None:
            return low
        if isinstance(value, bool) or not isinstance(value, int):
            self._wrong(key, f"a whole number from {low} to {high}", value)
        elif not low <= value <= high:
            self.fault(key, f"‘{key}’ must be from {low} to {high}, not {value}.")
        else:
            return value
        return default if default is not None else low

    def flag(self, key: str, default: bool) -> bool:
        """Read true or false."""
        value = self._value(key, default)
        if not isinstance(value, bool):
            self._wrong(key, "true or false", value)
            return default
        return value

    def choice(self, key: str, default: str | None, known: Iterable[str]) -> str:
        """Read one of the words in `known`; needed where `default` is None."""
        words = list(known)
        value = self._value(key, default)
        if value is None:
            return words[0]
        if not isinstance(value, str):
            self._wrong(key, f"one of {join_words(words, 'or')}", value)
        elif value not in words:
            self.fault(key, f"‘{key}’ must be {join_words(words, 'or')}, not ‘{value}’.")
        else:
            return value
        return default or words[0]

    def items(self, key: str) -> list[Any]:
        """Read an array of any values; an absent one is empty."""
        value = self._value(key, [])
        if not isinstance(value, list):
            self._wrong(key, "a list in square brackets", value)
            return []
        return value

    def any(self, key: str) -> Any:
        """Read whatever stands at `key`, or None."""
        self._asked.add(key)
        return self.data.get(key)

    def known(self, key: str) -> None:
        """Let `key` be allowed without reading it."""
        self._asked.add(key)

    def table(self, key: str) -> Table | None:
        """Read a table, or None where there is none."""
        value = self._value(key, {})
        if not isinstance(value, dict):
            self._wrong(key, f"a table, headed [{key}]", value)
            return None
        return Table(self.file, value, (*self.path, key)) if key in self.data else None

    def tables(self, key: str) -> list[Table]:
        """Read an array of tables; an absent one is empty."""
        found = []
        for index, value in enumerate(self.items(key)):
            if isinstance(value, dict):
                found.append(Table(self.file, value, (*self.path, key, index)))
            else:
                self._wrong(key, f"tables, each headed [[{key}]]", value)
        return found

    def close(self) -> None:
        """Note a fault for each key that nobody asked for, with the nearest that exists."""
        for key in self.data:
            if key not in self._asked:
                near = nearest(key, self._asked, 1)
                advice = (
                    f"Did you mean ‘{near[0]}’?"
                    if near
                    else f"The keys here are {join_words(sorted(self._asked))}."
                )
                self.fault(key, f"There is no key ‘{key}’ here. {advice}")

    def _value(self, key: str, default: Any) -> Any:
        self._asked.add(key)
        if key not in self.data and default is None:
            self.fault("", f"‘{key}’ is missing here. Add a line {key} = …")
        return self.data.get(key, default)

    def _wrong(self, key: str, wanted: str, value: object) -> None:
        shown = str(value).lower() if isinstance(value, bool) else repr(value)
        if isinstance(value, dict):
            shown = "a table"
        elif len(shown) > 40:
            shown = shown[:39] + "…"
        self.fault(key, f"‘{key}’ must be {wanted}, not {shown}.")
