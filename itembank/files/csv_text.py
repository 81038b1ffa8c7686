"""CSV as spreadsheets save it and open it: the one place where this tool writes and reads it.

A spreadsheet set up for a country that writes decimal commas saves with semicolons, and what is
copied out of one comes with tabs: which sign parts the columns is told from the first row.

A spreadsheet takes a cell that begins with = + - or @ for a formula and works it out, whoever
wrote it. Such a cell is written with an apostrophe before it, and read back without. (What may
begin a formula: OWASP's page on CSV injection, from memory.)
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable
from typing import IO, Any

from itembank.files.faults import Fault, FileFaults
from itembank.text.characters import hidden, shown

MOST_ROWS = 10_000

# What a spreadsheet, or a person who pastes, may lose before the sign: spaces, quotation marks,
# and characters that nobody sees.
_BEFORE = r"[\s'\"\x00-\x20\x7f-\xa0\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff]*"
_FORMULA = re.compile(rf"'*[\t\r\n]|{_BEFORE}[=+\-@\uff1d\uff0b\uff0d\uff20]")
# What begins with apostrophes and then such a sign is one too, or it could not be read back.
_NUMBER = re.compile(r"-[0-9]+(?:\.[0-9]+)?")
_PARTS = re.compile(r"[;\t\r]")


def harmless(text: str) -> str:
    """Return the text of a cell as it is written, so that no spreadsheet works anything out.

    A negative number is left a number. :func:`as_meant` gives the text back.

    >>> harmless("=1+1"), harmless(" @x"), harmless("-3"), harmless("-3 + 5"), harmless("2 - 3")
    ("'=1+1", "' @x", '-3', "'-3 + 5", '2 - 3')
    """
    return f"'{text}" if _is_formula(text) else text


def as_meant(cell: str) -> str:
    """Return the text that a written cell stands for: ``as_meant(harmless(text)) == text``.

    >>> as_meant("'=1+1"), as_meant("'tis"), as_meant("-3")
    ('=1+1', "'tis", '-3')
    """
    return cell[1:] if cell[:1] == "'" and _is_formula(cell[1:]) else cell


def _is_formula(text: str) -> bool:
    return _FORMULA.match(text) is not None and not _NUMBER.fullmatch(text)


class CsvWriter:
    r"""Writes rows of harmless cells; None is an empty cell.

    >>> out = io.StringIO()
    >>> CsvWriter(out).writerow(["=1+1", -3, "-3", None, "3, 4"])
    >>> out.getvalue()
    '\'=1+1,-3,-3,,"3, 4"\n'
    """

    def __init__(self, out: IO[str], ends: str = "\n", between: str = ",") -> None:
        self._plain = csv.writer(out, delimiter=between, lineterminator=ends)
        self._marked = csv.writer(
            out, delimiter=between, lineterminator=ends, quoting=csv.QUOTE_ALL
        )

    def writerow(self, row: Iterable[Any]) -> None:
        """Write one row."""
        cells = ["" if cell is None else cell for cell in row]
        writer = self._plain
        for place, cell in enumerate(cells):
            if isinstance(cell, str):
                if _is_formula(cell):
                    cells[place] = f"'{cell}"
                if _PARTS.search(cell):  # where these part columns or rows, it stays one cell
                    writer = self._marked
        writer.writerow(cells)


def csv_rows(text: str, file: str) -> list[tuple[int, list[str]]]:
    r"""Return the rows that are not empty, each with its line; cells without spaces round them.

    A row whose cells are parted by another sign than the first row's, as where somebody typed
    below what a spreadsheet had saved, is parted by its own.

    Raises:
        FileFaults: a row is no CSV, a cell holds characters that nobody sees, or there are more
            than :data:`MOST_ROWS`.

    >>> csv_rows("seat;score\n\nA1; 5\n", "scores.csv")
    [(1, ['seat', 'score']), (3, ['A1', '5'])]
    >>> csv_rows("seat,score\nA1;5\n", "scores.csv")
    [(1, ['seat', 'score']), (2, ['A1', '5'])]
    """
    first = text.lstrip().split("\n", 1)[0]
    separator = next((sign for sign in ";\t" if sign in first and "," not in first), ",")
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
    rows: list[tuple[int, list[str]]] = []
    try:
        for row in reader:
            if rows and len(row) == 1 < len(rows[0][1]):
                row = _parted(row[0])
            cells = [as_meant(cell).strip() for cell in row]
            for cell in cells:
                for unseen in hidden(cell, in_maths=True):
                    message = f"‘{shown(cell)}’: {unseen.says}"
                    raise FileFaults([Fault(file, reader.line_num, message)])
            if any(cells):
                rows.append((reader.line_num, cells))
            if len(rows) > MOST_ROWS:
                message = f"A sheet has at most {MOST_ROWS:,} rows."
                raise FileFaults([Fault(file, reader.line_num, message)])
    except csv.Error as error:
        fault = Fault(file, reader.line_num, f"This is not a CSV row: {error}.")
        raise FileFaults([fault]) from None
    return rows


def _parted(row: str) -> list[str]:
    """Return the cells of a row by the first sign it holds that parts cells; else all of it."""
    sign = next((sign for sign in "\t;," if sign in row), None)
    return [row] if sign is None else next(csv.reader([row], delimiter=sign))


NO_MARK = frozenset({"", "-", "–", "—", "absent", "abs", "away", "n/a"})
"""What stands in a cell, in small letters, where a pupil was away or gave no answer."""
