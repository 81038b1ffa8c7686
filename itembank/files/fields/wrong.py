"""What is wrong with a value, as a sentence for the person who wrote the file."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

KeyPath = tuple[str | int, ...]
MISSING_KEY, UNKNOWN_KEY = "missing key", "unknown key"
"""Matters that a reader of a file may want to tell in its own way."""
HEADER = "\N{NULL}"
"""Stands in a sentence for the dotted name of the table it speaks of."""


@dataclass(slots=True)
class Wrong:
    """One thing to put right in data: where it stands, and what to do.

    Until the key is known, `says` is the rest of a sentence that begins with it.
    """

    path: KeyPath
    says: str
    whole: bool = False
    matter: str = ""

    def below(self, part: str | int) -> Wrong:
        """Return it as it is told from the table or list in which `part` holds it."""
        self.path = (part, *self.path)
        if not self.whole and isinstance(part, str):
            self.says = f"‘{part}’ {self.says}."
            self.whole = True
        return self

    def told(self, at: KeyPath = ()) -> Wrong:
        """Return it as it is told of a file, `at` being where the data stands in it."""
        self.path = (*at, *self.path)
        if not self.whole:
            self.says = f"This {self.says}."
            self.whole = True
        if HEADER in self.says:
            names = ".".join(part for part in self.path if isinstance(part, str))
            self.says = self.says.replace(HEADER, names)
        return self


class Refused(Exception):
    """A value was refused; `value` is what can be gone on with, so that more can be told."""

    def __init__(self, wrongs: Iterable[Wrong], value: Any) -> None:
        super().__init__("refused")
        self.wrongs, self.value = list(wrongs), value
