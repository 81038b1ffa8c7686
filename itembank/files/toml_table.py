"""A TOML file that a person wrote, with its faults: each with its line.

What may stand in it is said by kinds of value and dataclasses (:mod:`itembank.files.fields`).
A :class:`Table` is read as a dataclass, or key by key where what one key may hold hangs on
another, on the topics there are, or on the calendar. Lines come from
:mod:`itembank.files.toml_read`.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from pathlib import Path
from typing import Any, TypeVar

from itembank.files.faults import Fault, FileFaults, decode_text
from itembank.files.fields.kinds import Anything, Choice, Flag, Kind, Line, Many, Whole
from itembank.files.fields.record import missing_key, try_read, unknown_key
from itembank.files.fields.wrong import HEADER, Refused
from itembank.files.toml_read import KeyPath, Locator, syntax_fault
from itembank.files.toml_unseen import escaped_faults, written_faults

T = TypeVar("T")
NEEDED: Any = object()
"""Stands for the default of a key that must be there."""


class TomlFile:
    """A TOML file with its text, its data and the faults found in it so far.

    Raises:
        FileFaults: the file is missing, is not UTF-8, or is not TOML.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        # TOML ends its lines with LF or CRLF; the text is kept as such for line numbers.
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
        self.faults.append(Fault(str(self.path), self.line(path, word), message, matter=matter))

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

    def take(self, key: str, kind: Kind, default: Any = NEEDED) -> Any:
        """Read the value of `key` as one of `kind`; needed where there is no default."""
        self._asked.add(key)
        if key not in self.data:
            if default is not NEEDED:
                return default
            self.fault("", missing_key(key, kind))
            return kind.blank()
        try:
            return kind.read(self.data[key])
        except Refused as refused:
            for wrong in refused.wrongs:
                told = wrong.below(key).told(self.path)
                self.file.fault(told.path, told.says)
            return refused.value if default is NEEDED else default

    def read(self, model: type[T]) -> T:
        """Read the whole table as a declared dataclass; what is wrong is noted."""
        made, wrongs = try_read(model, self.data, self.path)
        for wrong in wrongs:
            self.file.fault(wrong.path, wrong.says)
        self._asked.update(self.data)
        return made

    def text(self, key: str, default: str | None = None, *, most: int = 200) -> str:
        """Read a line of text that is not blank; needed where `default` is None."""
        kind = Line(most, bare=True, open=default == "")
        found: str = self.take(key, kind, NEEDED if default is None else default)
        return found

    def whole(self, key: str, default: int | None, low: int, high: int) -> int:
        """Read a whole number from `low` to `high`; needed where `default` is None."""
        found: int = self.take(key, Whole(low, high), NEEDED if default is None else default)
        return found

    def flag(self, key: str, default: bool) -> bool:
        """Read true or false."""
        found: bool = self.take(key, Flag(), default)
        return found

    def choice(self, key: str, default: str | None, known: Iterable[str]) -> str:
        """Read one of the words in `known`; needed where `default` is None."""
        kind = Choice(tuple(known))
        found: str = self.take(key, kind, NEEDED if default is None else default)
        return found

    def items(self, key: str) -> list[Any]:
        """Read an array of any values; an absent one is empty."""
        return list(self.take(key, Many(Anything()), ()))

    def any(self, key: str) -> Any:
        """Read whatever stands at `key`, or None."""
        self._asked.add(key)
        return self.data.get(key)

    def known(self, key: str) -> None:
        """Let `key` be allowed without reading it."""
        self._asked.add(key)

    def table(self, key: str) -> Table | None:
        """Read a table, or None where there is none."""
        value = self.take(key, _TABLE, None)
        return None if value is None else Table(self.file, value, (*self.path, key))

    def tables(self, key: str) -> list[Table]:
        """Read an array of tables; an absent one is empty."""
        found = self.take(key, Many(_ROW), ())
        rows = self.data.get(key)
        return [
            Table(self.file, value, (*self.path, key, place))
            for place, value in enumerate(found)
            if isinstance(rows, list) and isinstance(rows[place], dict)
        ]

    def close(self) -> None:
        """Note a fault for each key that nobody asked for, with the nearest that exists."""
        for key in self.data:
            if key not in self._asked:
                self.fault(key, unknown_key(key, self._asked))


class _AnyTable(Kind):
    """A table whose keys are read one by one."""

    is_table = True

    def __init__(self, wanted: str) -> None:
        self.wanted = wanted

    def takes(self, value: Any) -> bool:
        return isinstance(value, dict)

    def read(self, value: Any) -> dict[str, Any]:
        if isinstance(value, dict):
            return value
        raise self.refuse(value)

    def blank(self) -> dict[str, Any]:
        return {}


_TABLE = _AnyTable(f"a table, headed [{HEADER}]")
_ROW = _AnyTable("a table of keys")
