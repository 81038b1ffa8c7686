"""The cells of a text that was copied out of a spreadsheet or a table, with their places.

A tab parts cells where there is one, else a semicolon or a comma. Cells in quotation marks may
hold line breaks, as spreadsheets copy them. Headings may stand in any order.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Mapping, Sequence
from typing import Generic, TypeVar

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.csv_text import as_meant
from itembank.text.characters import without_hidden
from itembank.work.department.wrong import Wrong

MOST_ROWS, MOST_CHARACTERS = 2_000, 500_000
Found = TypeVar("Found")


@dataclass(frozen=True, slots=True)
class Pasted(Generic[Found]):
    """What was read, what of it is wrong, and how something was understood."""

    found: Found
    wrong: tuple[Wrong, ...] = ()
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Row:
    """A row that is not empty: its number, counted from 1, and its cells."""

    number: int
    cells: tuple[str, ...]

    def cell(self, column: int | None) -> str:
        """Return a cell, counted from 0; "" where the row is shorter, or for no column."""
        return self.cells[column] if column is not None and column < len(self.cells) else ""

    @property
    def text(self) -> str:
        """Return the cells that are not empty in one line."""
        return " ".join(cell for cell in self.cells if cell)


@dataclass(frozen=True, slots=True)
class Sheet:
    """Rows below a row of headings, and which column each heading stands over.

    `columns` is empty where there is no such row; `unknown` are headings that mean nothing.
    """

    rows: tuple[Row, ...]
    columns: Mapping[str, tuple[int, ...]]
    unknown: tuple[tuple[int, str], ...] = ()
    above: tuple[str, ...] = ()
    heads: tuple[str, ...] = ()

    def column(self, name: str) -> int | None:
        """Return the first column of a name, or None."""
        return next(iter(self.columns.get(name, ())), None)


def rows_of(text: str) -> tuple[Row, ...]:
    r"""Return the rows of a pasted text that hold anything, their cells in single spaces.

    Raises:
        ItembankError: there is more than a school has.

    >>> rows_of('8K\t"Mon 3,\nTue 1"\t\n\n8L\tMon 4')[1]
    Row(number=3, cells=('8L', 'Mon 4'))
    """
    if len(text) > MOST_CHARACTERS:
        raise ItembankError(f"This is too much: {MOST_CHARACTERS:,} characters at most.")
    text = text.replace("\r\n", "\n").replace("\r", "\n").replace("\ufeff", "")
    first = next((line for line in text.split("\n") if line.strip()), "")
    between = next((sign for sign in "\t;," if sign in first), "\t")
    if between == "," and "\t" in text:
        between = "\t"
    # One quotation mark that is never closed would swallow all that follows it.
    closed = text.count('"') % 2 == 0
    reader = csv.reader(
        io.StringIO(text, newline=""),
        delimiter=between,
        quoting=csv.QUOTE_MINIMAL if closed else csv.QUOTE_NONE,
    )
    found = []
    try:
        for number, cells in enumerate(reader, 1):
            told = tuple(_plain(cell) for cell in cells)
            if any(told):
                found.append(Row(number, told))
            if len(found) > MOST_ROWS:
                raise ItembankError(f"This is too much: {MOST_ROWS:,} rows at most.")
    except csv.Error as error:
        raise ItembankError(f"This cannot be read as a table: {error}.") from None
    return tuple(found)


def _plain(cell: str) -> str:
    lines = (" ".join(without_hidden(as_meant(line)).split()) for line in cell.split("\n"))
    return "\n".join(filter(None, lines))


def sheet_of(text: str, heads: Mapping[str, str]) -> Sheet:
    r"""Return the rows of a text under its headings; `heads` are patterns by column's name.

    Raises:
        ItembankError: as :func:`rows_of`.

    >>> sheet = sheet_of("Teacher;Class\nHT;8K", {"class": "class|set", "teacher": "teacher"})
    >>> sheet.column("class"), sheet.rows[0].cells
    (1, ('HT', '8K'))
    """
    rows = rows_of(text)
    for place, row in enumerate(rows[:4]):
        names = [_head(cell, heads) for cell in row.cells]
        filled = [cell for cell in row.cells if cell]
        known = [name for name in names if name]
        told = zip(row.cells, names, strict=True)
        if any(re.search(r"\d", cell) and not name for cell, name in told):
            continue  # what is told, and no heading of it
        if known and 2 * len(known) >= len(filled) and not (len(filled) == 1 < _width(rows)):
            columns: dict[str, tuple[int, ...]] = {}
            for column, name in enumerate(names):
                if name:
                    columns[name] = (*columns.get(name, ()), column)
            unknown = tuple(
                (column, cell)
                for column, (cell, name) in enumerate(zip(row.cells, names, strict=True))
                if cell and not name
            )
            above = tuple(earlier.text for earlier in rows[:place])
            return Sheet(rows[place + 1 :], columns, unknown, above, row.cells)
    return Sheet(rows, {})


def _width(rows: Sequence[Row]) -> int:
    return max((sum(map(bool, row.cells)) for row in rows), default=0)


def _head(cell: str, heads: Mapping[str, str]) -> str:
    """Return the name of the column that a heading stands over, or ""."""
    said = re.sub(r"[^\w/ ]+", " ", cell.casefold().replace("_", " "))
    said = " ".join(said.split())
    return next((name for name, pattern in heads.items() if re.fullmatch(pattern, said)), "")
