"""What comes of a form about a department: answers, and a fault beside each field that has one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from itembank.work.department.answered import Answers
from itembank.work.department.wrong import Field, Wrong

Fields = Mapping[str, str]
"""The fields of a form by name, each as somebody typed it."""
MOST_ROWS = 400


@dataclass
class Reading:
    """What a form says. A field that cannot be read is among the `faults`, by its name.

    `at` tells which field, or which row of fields, an answer stands in.
    """

    answers: Answers
    faults: dict[str, str] = field(default_factory=dict)
    at: dict[Field, str] = field(default_factory=dict)
    remarks: tuple[str, ...] = ()
    general: list[str] = field(default_factory=list)
    """Faults that stand beside no field."""

    @property
    def sound(self) -> bool:
        """Tell whether nothing is wrong."""
        return not self.faults and not self.general

    def note(self, wrong: Iterable[Wrong]) -> None:
        """Note what is wrong in the answers, each beside the field that it comes from."""
        for fault in wrong:
            name = self._name_of(fault.field)
            if name:
                self.faults.setdefault(name, str(fault))
            elif str(fault) not in self.general:
                self.general.append(str(fault))

    def _name_of(self, where: Field) -> str:
        # A fault of a whole row stands beside the first field of it.
        for length in range(len(where), 0, -1):
            if name := self.at.get(where[:length]):
                return name
        return ""


def rows_typed(fields: Fields, kind: str) -> int:
    """Return how many rows of a kind there are up to the last in which something stands.

    >>> rows_typed({"term-0-name": "Autumn", "term-4-name": ""}, "term")
    1
    """
    found = [
        int(match[1])
        for name, value in fields.items()
        if value and (match := re.fullmatch(rf"{kind}-(\d{{1,3}})-[a-z]+", name))
    ]
    return min(max(found, default=-1) + 1, MOST_ROWS)


def row(fields: Fields, kind: str, number: int, names: Iterable[str]) -> dict[str, str]:
    """Return the fields of one row by their short names, without spaces around them."""
    return {name: fields.get(f"{kind}-{number}-{name}", "").strip() for name in names}
