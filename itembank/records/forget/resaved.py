"""Exported tables as they are found later: as they were written, or saved anew by a spreadsheet.

A spreadsheet may change what stands between the cells, the coding of letters, the ends of lines
and the way dates are written. All of that is found out, and kept when the table is written anew.
"""

from __future__ import annotations

import codecs
import csv
import datetime
import io
import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import chain
from pathlib import Path

from itembank.data_class import dataclass
from itembank.files.csv_text import CsvWriter, as_meant
from itembank.files.private import file_mode
from itembank.files.together import whole_file
from itembank.text.folding import folded

_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_WEEKDAY = re.compile(r"^[A-Za-z]{3,9},? +")
_ISO = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[ T].*)?")
_SHORT = re.compile(r"(\d{1,2})[-/. ]+(\d{1,2})[-/. ]+(\d{4}|\d{2})(?: .*)?")
_NAMED = re.compile(r"(\d{1,2})[-/. ]+([A-Za-z]{3,9})[-/., ]+(\d{4}|\d{2})(?: .*)?")
_SERIAL = re.compile(r"[3-9]\d{4}(?:[.,]0+)?")
_DAY_0 = datetime.date(1899, 12, 30)
"""The day that spreadsheets count from (common practice; Lotus's leap year 1900 is why)."""
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


@dataclass(frozen=True, slots=True)
class Table:
    """A table in a file: how it is written, and its headings in small letters."""

    path: Path
    encoding: str
    separator: str
    end: str
    skip: int
    heads: tuple[str, ...]
    month_first: bool = False

    def column(self, name: str) -> int | None:
        """Return where a column is, or None."""
        return self.heads.index(name) if name in self.heads else None

    def rows(self) -> Iterator[list[str]]:
        """Yield the rows under the headings, one at a time, each as long as the headings at least.

        Raises:
            OSError: it cannot be read.
            ValueError: it is no such table any more.
        """
        for row in _rows(self.path, self.encoding, self.separator, self.skip + 1):
            yield row + [""] * (len(self.heads) - len(row))

    def first_lines(self) -> list[list[str]]:
        """Return what stands above the rows, as it stands there."""
        found = []
        for row in _rows(self.path, self.encoding, self.separator, 0, empty=True):
            found.append(row)
            if len(found) > self.skip:
                break
        return found

    def write(self, rows: Iterable[Sequence[str]]) -> None:
        """Write the table anew with these rows, in the way in which it was found.

        Raises:
            OSError: it cannot be written; it is as it was.
        """
        heads = self.first_lines()
        with whole_file(self.path, file_mode(self.path.parent)) as raw:
            out = io.TextIOWrapper(raw, encoding=self.encoding, newline="")
            writer = CsvWriter(out, self.end, self.separator)
            # Read as it is meant, since the writer makes each cell harmless once more.
            for row in chain(heads, rows):
                writer.writerow([as_meant(cell) for cell in row])
            out.detach()  # whoever opened the file closes it, and puts it in its place

    def date(self, cell: str) -> datetime.date | None:
        """Return the day that a cell names, or None where it is none."""
        return read_day(cell, self.month_first)


def open_table(path: Path) -> Table:
    """Find out how a table is written.

    Raises:
        OSError: it cannot be read.
        ValueError: it is no table with classes and dates.
    """
    encoding = _encoding(path)
    with path.open(encoding=encoding, newline="") as file:
        first = file.readline()
        skip = int(first.lower().startswith("sep="))  # told to the spreadsheet, not to a reader
        if skip:
            first = file.readline()
    end = "\r\n" if first.endswith("\r\n") else "\n"
    for separator in ",;\t":
        row = next(_rows(path, encoding, separator, skip), [])
        heads = tuple(folded(cell.strip()) for cell in row)
        if {"class", "date"} <= set(heads):
            break
    else:
        raise ValueError("its columns are others")
    found = Table(path, encoding, separator, end, skip, heads)
    where = heads.index("date")
    dates = (row[where] for row in found.rows())
    return Table(path, encoding, separator, end, skip, heads, _month_first(dates))


def read_day(cell: str, month_first: bool = False) -> datetime.date | None:
    """Return the day a cell names in one of the ways in which spreadsheets write days, or None.

    >>> for cell in ("2026-11-30", "30/11/2026", "30.11.26", "Mon 30 November 2026", "46356"):
    ...     assert read_day(cell) == datetime.date(2026, 11, 30)
    >>> read_day("next week") is None
    True
    """
    text = _WEEKDAY.sub("", cell.strip())
    try:
        if found := _ISO.fullmatch(text):
            return datetime.date(*map(int, found.groups()))
        if found := _SHORT.fullmatch(text):
            first, two, year = map(int, found.groups())
            day, month = (two, first) if month_first else (first, two)
            return datetime.date(_year(year), month, day)
        if found := _NAMED.fullmatch(text):
            month = _MONTHS.index(found[2][:3].casefold()) + 1
            return datetime.date(_year(int(found[3])), month, int(found[1]))
        if _SERIAL.fullmatch(text):
            return _DAY_0 + datetime.timedelta(days=int(text[:5]))
    except ValueError:
        return None
    return None


def _year(number: int) -> int:
    return 2000 + number if number < 100 else number


def _month_first(dates: Iterable[str]) -> bool:
    """Tell whether days are written as in 11/30/2026: where one of them can be no other way."""
    found = False
    for cell in dates:
        if short := _SHORT.fullmatch(_WEEKDAY.sub("", cell.strip())):
            if int(short[1]) > 12:
                return False
            found = found or int(short[2]) > 12
    return found


def _encoding(path: Path) -> str:
    """Return how the letters of a file are coded, reading it in pieces."""
    decoder = codecs.getincrementaldecoder("utf-8")()
    with path.open("rb") as file:
        start = file.read(4)
        for mark, name in _MARKS:
            if start.startswith(mark):
                return name
        file.seek(0)
        try:
            while piece := file.read(1 << 20):
                decoder.decode(piece)
            decoder.decode(b"", final=True)
        except UnicodeDecodeError:
            return "cp1252"  # how a spreadsheet in Western Europe saves without being asked
    return "utf-8"


def _rows(
    path: Path, encoding: str, separator: str, skip: int, empty: bool = False
) -> Iterator[list[str]]:
    with path.open(encoding=encoding, newline="") as file:
        reader = csv.reader(file, delimiter=separator)
        try:
            for number, row in enumerate(reader):
                if number >= skip and (row or empty):
                    yield row
        except csv.Error as error:
            raise ValueError(str(error)) from None
