"""Scores into groups: how many pupils each band holds, and which seats they sit in.

A list of scores gives counts; a CSV of seat code and score gives the seats as well. Only
codes are let in: a column that looks like names is refused, because nothing about this job
needs a pupil's name.

>>> from itembank.planning.bands.bands import default_scheme
>>> found = group([Entry("A1", 3), Entry("A2", 8)], default_scheme().bands(8))
>>> [(group.band.name, group.count, group.codes) for group in found if group.count]
[('Rebuild', 1, ('A1',)), ('Extend', 1, ('A2',))]
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.csv_text import NO_MARK, csv_rows
from itembank.files.faults import Fault, FileFaults, decode_text
from itembank.people.seats import heading_fault, seat_fault, seat_order
from itembank.planning.bands.bands import Band, band_of
from itembank.text.in_words import counted

_OUT_OF = re.compile(r"(\d+) ?/ ?(\d+)")


@dataclass(frozen=True, slots=True)
class Entry:
    """One pupil's score; the code is empty where only scores were given."""

    code: str
    score: int


@dataclass(frozen=True, slots=True)
class ScoreFile:
    """What a CSV of scores holds: the entries, and the codes that have no score."""

    entries: tuple[Entry, ...]
    absent: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Group:
    """The pupils who landed in one band."""

    band: Band
    entries: tuple[Entry, ...]

    @property
    def count(self) -> int:
        """Return the number of pupils in the group."""
        return len(self.entries)

    @property
    def codes(self) -> tuple[str, ...]:
        """Return the seat codes of the group, in seat order (A2 before A10)."""
        return tuple(sorted((e.code for e in self.entries if e.code), key=seat_order))


def group(entries: Iterable[Entry], bands: Sequence[Band]) -> tuple[Group, ...]:
    """Return one group for each band, lowest band first; a group may be empty.

    Raises:
        BandError: a score lies outside all the bands.
    """
    found: dict[str, list[Entry]] = {band.name: [] for band in bands}
    for entry in entries:
        found[band_of(entry.score, bands).name].append(entry)
    return tuple(Group(band, tuple(found[band.name])) for band in bands)


def read_scores(path: Path, marks: int) -> ScoreFile:
    """Read a CSV with a seat code and a score in each row.

    A heading is allowed. A blank score, a dash or *absent* means that there is no score.

    Raises:
        FileFaults: the file cannot be read, or rows of it are not a code and a score; every
            faulty row is listed with its line number.
    """
    return parse_scores(decode_text(path), marks, str(path))


def parse_scores(text: str, marks: int, file: str = "scores") -> ScoreFile:
    r"""Read CSV text as :func:`read_scores` does.

    >>> parse_scores("seat,score\nA1,5\nA2,\n", 8)
    ScoreFile(entries=(Entry(code='A1', score=5),), absent=('A2',))
    """
    faults: list[Fault] = []
    entries: list[Entry] = []
    absent: list[str] = []
    seen: dict[str, int] = {}
    rows = csv_rows(text, file)
    if rows and _is_heading(rows[0][1]):
        line, cells = rows.pop(0)
        if said := next(filter(None, map(heading_fault, cells)), ""):
            raise FileFaults([Fault(file, line, said)])
    for line, cells in rows:
        if len(cells) != 2:
            size = counted(len(cells), "cell")
            faults.append(Fault(file, line, f"A row holds a seat code and a score, not {size}."))
            continue
        code, score = cells
        if said := seat_fault(code):
            faults.append(Fault(file, line, said))
        elif code.upper() in seen:
            faults.append(
                Fault(
                    file,
                    line,
                    f"Seat {code} is on line {seen[code.upper()]} already. Keep one of the two.",
                )
            )
        elif score.casefold() in NO_MARK:
            absent.append(code)
        else:
            # 5/8 says no more than 5 where the starter is out of 8.
            if (written := _OUT_OF.fullmatch(score)) and written[2] == str(marks):
                score = written[1]
            if written and written[2] != str(marks):
                said = f"‘{score}’ is out of {written[2]}, and the starter out of {marks}."
                said += f" Write a score out of {marks}."
                faults.append(Fault(file, line, said, matter="out of other marks"))
            elif fault := score_fault(score, marks):
                faults.append(Fault(file, line, fault))
            else:
                entries.append(Entry(code, int(score)))
        # A row with a fault takes its seat too, so that a second row for it is told in the same
        # run.
        seen.setdefault(code.upper(), line)
    if faults:
        raise FileFaults(faults)
    if not entries:
        raise ItembankError(f"{file}: there is no score in this file. Write rows such as A1,5.")
    return ScoreFile(tuple(entries), tuple(sorted(absent, key=seat_order)))


def score_fault(text: str, marks: int) -> str:
    """Return what is wrong with a score as typed, or an empty string.

    >>> score_fault("9", 8)
    'The score 9 is not between 0 and 8.'
    >>> score_fault("7", 8)
    ''
    """
    if not (text.isascii() and text.isdigit()):
        return f"‘{text}’ is not a score. Write a whole number from 0 to {marks}."
    # A score of thousands of digits is refused by its length: int() would take its time.
    if len(text) > 6 or int(text) > marks:
        return f"The score {text} is not between 0 and {marks}."
    return ""


def _is_heading(cells: list[str]) -> bool:
    """Tell a heading from a first row: a heading has no digit and no sign of absence in it."""
    return len(cells) > 1 and not any(
        re.search(r"\d", cell) or cell.casefold() in NO_MARK for cell in cells
    )
