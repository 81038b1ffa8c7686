"""CSV as spreadsheets save it: which sign parts the columns is told from the first row.

A spreadsheet set up for a country that writes decimal commas saves with semicolons, and what is
copied out of one comes with tabs.
"""

from __future__ import annotations

import csv
import io

from itembank.faults import Fault, FileFaults

MOST_ROWS = 10_000


def csv_rows(text: str, file: str) -> list[tuple[int, list[str]]]:
    r"""Return the rows that are not empty, each with its line; cells without spaces round them.

    Raises:
        FileFaults: a row is no CSV, or there are more than :data:`MOST_ROWS`.

    >>> csv_rows("seat;score\n\nA1; 5\n", "scores.csv")
    [(1, ['seat', 'score']), (3, ['A1', '5'])]
    """
    first = text.lstrip().split("\n", 1)[0]
    separator = next((sign for sign in ";\t" if sign in first and "," not in first), ",")
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
    rows: list[tuple[int, list[str]]] = []
    try:
        for row in reader:
            cells = [cell.strip() for cell in row]
            if any(cells):
                rows.append((reader.line_num, cells))
            if len(rows) > MOST_ROWS:
                message = f"A sheet has at most {MOST_ROWS:,} rows."
                raise FileFaults([Fault(file, reader.line_num, message)])
    except csv.Error as error:
        fault = Fault(file, reader.line_num, f"This is not a CSV row: {error}.")
        raise FileFaults([fault]) from None
    return rows


NO_MARK = frozenset({"", "-", "–", "—", "absent", "abs", "away", "n/a"})
"""What stands in a cell, in small letters, where a pupil was away or gave no answer."""
