"""Which plans of a department ask questions that are about to go."""

from __future__ import annotations

import datetime
import tomllib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from itembank.data_class import dataclass
from itembank.planning.week.week_plan import FILE_NAME, FOLDER


@dataclass(frozen=True, slots=True)
class Asking:
    """A plan that names a question, on a starter or on a sheet."""

    path: Path
    class_name: str
    address: str

    @property
    def week(self) -> datetime.date:
        """Return the Monday that the plan's file is named after; the last of days for another."""
        try:
            return datetime.date.fromisoformat(self.path.stem[-10:])
        except ValueError:
            return datetime.date.max


def plans_asking(home: Path, meant: Callable[[str], bool]) -> list[Asking]:
    """Return the plans of a department that name questions of a bank which are `meant`.

    `meant` is asked of each ``BANK:ID`` in them. A plan that cannot be read names none; whoever
    looks at its week is told why.
    """
    found = []
    for path in sorted((home / FOLDER).glob("week-*.toml")):
        try:
            data = tomllib.loads(path.read_text("utf-8-sig"))
        except (OSError, ValueError):
            continue
        named = FILE_NAME.fullmatch(path.name)
        class_name = str(data.get("class") or (named[1] if named else ""))
        addresses = dict.fromkeys(text for text in _texts(data) if ":" in text and meant(text))
        found += [Asking(path, class_name, address) for address in addresses]
    return found


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for part in value.values():
            yield from _texts(part)
    elif isinstance(value, list):
        for part in value:
            yield from _texts(part)
