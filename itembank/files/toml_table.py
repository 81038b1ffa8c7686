"""A TOML file that a person wrote, taken apart value by value.

:class:`Table` takes values out one by one, collects what is wrong with them, and knows which
keys nobody asked for. Where they stand is found by :mod:`itembank.files.toml_read`.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from itembank.files import fault_words as words
from itembank.files.faults import Fault, FileFaults, decode_text, join_words
from itembank.files.toml_read import KeyPath, Locator, syntax_fault
from itembank.files.toml_unseen import escaped_faults, written_faults


class TomlFile:
    """A TOML file with its text, its data and the faults found in it so far.

    A `text` stands for what the file holds: it may not be written yet.

    Raises:
        FileFaults: the file is missing, is not UTF-8, or is not TOML.
    """

    def __init__(self, path: Path, text: str | None = None) -> None:
        self.path = path
        # TOML ends its lines with LF or CRLF; the text is kept as such for line numbers.
        if text is None:
            text = decode_text(path)
        if unseen := written_faults(path, text):
            raise FileFaults(unseen)
        try:
            self.data: dict[str, Any] = tomllib.loads(text)
        except tomllib.TOMLDecodeError as error:
            raise FileFaults([syntax_fault(path, text, str(error))]) from None
        except (ValueError, RecursionError):  # a number or a nesting beyond all measure
            raise FileFaults([Fault(str(path), 0, "This cannot be read as TOML.")]) from None
        if unseen := escaped_faults(path, text, self.data):
            raise FileFaults(unseen)
        self._locator = Locator(text)
        self.faults: list[Fault] = []

    def fault(self, path: KeyPath, message: str, word: str = "", matter: str = "") -> None:
        """Note a fault at `path`, or where `word` stands within its value."""
        at = self.line(path, word)
        self.faults.append(Fault(str(self.path), at, message, matter=matter, path=path))

    def line(self, path: KeyPath, word: str = "") -> int:
        """Return the line of `path`, or the one at or after it where `word` stands."""
        at = self._locator
        return at.line_of_word(path, word) if word else at.line(path)

    def finish(self) -> None:
        """Raise :class:`FileFaults` if any fault was noted."""
        if self.faults:
            raise FileFaults(self.faults)

    def top(self) -> Table:
        """Return the whole file as a table."""
        return Table(self, self.data, ())


class Table:
    """One table of a file; each reader notes a fault and returns its default where it must."""

    def __init__(self, file: TomlFile, data: dict[str, Any], path: KeyPath) -> None:
        self.file, self.data, self.path = file, data, path
        self._asked: set[str] = set()

    def __contains__(self, key: str) -> bool:
        return key in self.data

    def fault(self, key: str, message: str, word: str = "", matter: str = "") -> None:
        """Note a fault of `key`; an empty key stands for the table itself."""
        self.file.fault((*self.path, key) if key else self.path, message, word, matter)

    def text(self, key: str, default: str | None = None, *, most: int = 200) -> str:
        """Read a line of text that is not blank; needed where `default` is None."""
        value = self._value(key, default)
        if value is None:
            return ""
        if not isinstance(value, str):
            self._wrong(key, words.TEXT, value)
        elif not value.strip() and value != default:
            self.fault(key, f"‘{key}’ {words.EMPTY}.")
        elif len(value) > most or "\n" in value:
            self.fault(key, f"‘{key}’ {words.too_long(most)}.")
        else:
            return value.strip()
        return default or ""

    def whole(self, key: str, default: int | None, low: int, high: int) -> int:
        """Read a whole number from `low` to `high`; needed where `default` is None."""
        value = self._value(key, default)
        if value is None:
            return low
        if isinstance(value, bool) or not isinstance(value, int):
            self._wrong(key, words.whole_number(low, high), value)
        elif not low <= value <= high:
            self.fault(key, words.out_of_range(key, low, high, value))
        else:
            return value
        return default if default is not None else low

    def flag(self, key: str, default: bool) -> bool:
        """Read true or false."""
        value = self._value(key, default)
        if not isinstance(value, bool):
            self._wrong(key, words.FLAG, value)
            return default
        return value

    def choice(self, key: str, default: str | None, known: Iterable[str]) -> str:
        """Read one of the words in `known`; needed where `default` is None."""
        choices = list(known)
        value = self._value(key, default)
        if value is None:
            return choices[0]
        if not isinstance(value, str):
            self._wrong(key, f"one of {join_words(choices, 'or')}", value)
        elif value not in choices:
            self.fault(key, words.not_one_of(key, choices, value))
        else:
            return value
        return default or choices[0]

    def items(self, key: str) -> list[Any]:
        """Read an array of any values; an absent one is empty."""
        return self._list(key, words.LIST)

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
        for index, value in enumerate(self._list(key, words.tables_headed(key))):
            if isinstance(value, dict):
                found.append(Table(self.file, value, (*self.path, key, index)))
            else:
                self._wrong(key, words.tables_headed(key), value)
        return found

    def close(self) -> None:
        """Note a fault for each key that nobody asked for, with the nearest that exists."""
        for key in self.data:
            if key not in self._asked:
                self.fault(key, words.unknown_key(key, self._asked))

    def _list(self, key: str, wanted: str) -> list[Any]:
        value = self._value(key, [])
        if not isinstance(value, list):
            self._wrong(key, wanted, value)
            return []
        return value

    def _value(self, key: str, default: Any) -> Any:
        self._asked.add(key)
        if key not in self.data and default is None:
            self.fault("", words.missing(key))
        return self.data.get(key, default)

    def _wrong(self, key: str, wanted: str, value: object) -> None:
        self.fault(key, words.must_be(key, wanted, value))
