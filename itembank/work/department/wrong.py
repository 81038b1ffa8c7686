"""What is missing or wrong in answers, each with its place: an answer, or a pasted cell."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass

Part = Literal["school", "year", "classes", "topics", "bands"]
PARTS: tuple[Part, ...] = ("school", "year", "classes", "topics", "bands")
"""The parts of the conversation, in the order in which they are asked for."""

Field = tuple[str | int, ...]
"""Where in the answers, as in ``("classes", 0, "year")``."""


@dataclass(frozen=True, slots=True)
class Wrong:
    """One thing to put right: a whole sentence, and where it is.

    `field` is the answer; of pasted cells `row` and `column` count from 1, 0 is none. `typed` is
    what stands in the cell, unless it may be the name of a pupil.

    >>> str(Wrong("classes", "‘Monday’ has no period.", row=3, column=4))
    'Row 3, column D: ‘Monday’ has no period.'
    """

    part: Part
    message: str
    field: Field = ()
    row: int = 0
    column: int = 0
    typed: str = ""

    def __str__(self) -> str:
        """Return the sentence, after its cell where it has one."""
        where = ", ".join(
            filter(
                None,
                (
                    f"row {self.row}" if self.row else "",
                    f"column {column_letter(self.column)}" if self.column else "",
                ),
            )
        )
        return f"{where[:1].upper()}{where[1:]}: {self.message}" if where else self.message


def column_letter(number: int) -> str:
    """Return the letters that a spreadsheet has above a column, the first being 1.

    >>> column_letter(1), column_letter(27)
    ('A', 'AA')
    """
    letters = ""
    while number:
        number, place = divmod(number - 1, 26)
        letters = chr(ord("A") + place) + letters
    return letters
