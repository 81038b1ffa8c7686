"""Answer sheets: a CSV of seat codes and typed answers, read with every fault told at once.

The heading row is *seat* and the numbers of the questions: ``seat,1,2,3``. A cell left empty,
or a dash, is a question without an answer. A separator other than a comma is told from the
heading. Where neighbours had parallel versions, a column headed *version* says whose is whose.
Seat codes only: columns that look like names or dates of birth are refused.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import field
from pathlib import Path

from itembank.data_class import dataclass
from itembank.files.csv_text import NO_MARK, csv_rows
from itembank.files.faults import Fault, FileFaults, decode_text, join_words
from itembank.people.seats import heading_fault, seat_fault
from itembank.text.late_pattern import late

_QUESTION = late(r"(?:q|qu|question|no\.?|nr\.?|#)? ?\.?0*([1-9]\d{0,3})\.?", re.I)
_SEAT_HEADINGS = frozenset({"seat", "seats", "code", "codes", "seat code", "seat codes", ""})
_VERSION = -1  # no place of a question, which are counted from 0
# Columns that a spreadsheet adds up by itself; what they say is counted again.
_TOTALS = frozenset({"total", "totals", "score", "mark", "marks", "sum", "out of", "%"})


@dataclass(frozen=True, slots=True)
class AnswerRow:
    """The answers of one seat, one for each question; an empty text is no answer.

    `version` is the letter of the seat's version of the starter, empty where none is stated;
    `line` is where the row stands in its file.
    """

    seat: str
    answers: tuple[str, ...]
    version: str = ""
    line: int = field(default=0, compare=False)


def read_answers(path: Path, questions: int, versions: Sequence[str] = ()) -> tuple[AnswerRow, ...]:
    """Read an answer sheet with so many questions; `versions` are the letters there are.

    Raises:
        FileFaults: the file cannot be read, or is not an answer sheet; every fault is listed
            with its line.
    """
    return parse_answers(decode_text(path), questions, str(path), versions)


def parse_answers(
    text: str, questions: int, file: str = "answers", versions: Sequence[str] = ()
) -> tuple[AnswerRow, ...]:
    r"""Read CSV text as :func:`read_answers` does.

    >>> parse_answers("seat,1,2\nA1,3/4,5\nA2,,x = 2\n", 2)[1]
    AnswerRow(seat='A2', answers=('', 'x = 2'), version='', line=3)
    """
    rows = csv_rows(text, file)
    if not rows:
        raise FileFaults([Fault(file, 0, f"The sheet is empty. {_wanted(questions)}")])
    line, heading = rows[0]
    while len(heading) > 1 and not heading[-1]:
        heading.pop()  # spreadsheets leave empty columns at the end
    faults: list[Fault] = []
    columns = _columns(heading, questions, file, line, faults)
    found: list[AnswerRow] = []
    seen: dict[str, int] = {}
    for line, cells in rows[1:]:
        # Too many cells: mostly an answer with a comma, which would move all those after it.
        if len(cells) > len(heading) and any(cells[len(heading) :]):
            message = (
                f"This row has {len(cells)} cells and the heading {len(heading)}. "
                "An answer with a comma in it needs quotation marks round it."
            )
            faults.append(Fault(file, line, message))
            continue
        seat = cells[0]
        if fault := seat_fault(seat):
            faults.append(Fault(file, line, fault))
            continue
        # Seat codes are said aloud, and a1 and A1 sound alike.
        if seat.upper() in seen:
            message = f"Seat {seat} is on line {seen[seat.upper()]} already. Keep one of the two."
            faults.append(Fault(file, line, message))
            continue
        seen[seat.upper()] = line
        # Rows may be short: spreadsheets leave out empty cells at the end.
        answers = [""] * questions
        version = ""
        if _VERSION in columns:
            version = "".join(cells[columns.index(_VERSION) + 1 :][:1]).upper()
            if fault := _version_fault(version, versions):
                faults.append(Fault(file, line, fault))
        for place, cell in zip(columns, cells[1:], strict=False):
            if place is not None and place != _VERSION and cell.casefold() not in NO_MARK:
                answers[place] = cell
        found.append(AnswerRow(seat, tuple(answers), version, line))
    if faults:
        raise FileFaults(faults)
    if not found:
        raise FileFaults(
            [Fault(file, 0, f"No seat stands under the heading. {_wanted(questions)}")]
        )
    return tuple(found)


def _columns(
    heading: list[str], questions: int, file: str, line: int, faults: list[Fault]
) -> list[int | None]:
    """Return the question that each column after the seats is for, counted from 0.

    The column of versions is _VERSION, and None stands for a column that is wrong.
    """
    first, *rest = heading
    if first.casefold() not in _SEAT_HEADINGS:
        fault = heading_fault(first)
        if not fault:
            said = f"‘{first}’ is not a heading for seat codes. " if first else ""
            fault = f"{said}{_wanted(questions)}"
        faults.append(Fault(file, line, fault))
    columns: list[int | None] = []
    for cell in rest:
        number = _QUESTION.fullmatch(cell)
        place = int(number[1]) - 1 if number else None
        if cell.casefold() == "version" and _VERSION not in columns:
            place = _VERSION
        elif cell.casefold() in _TOTALS:
            place = None
        elif place is None:
            fault = heading_fault(cell) or f"‘{cell}’ is not the number of a question."
            faults.append(Fault(file, line, fault))
        elif not 0 <= place < questions:
            message = f"There is no question {place + 1}. There are {questions}."
            faults.append(Fault(file, line, message))
            place = None  # the rows below are still looked through
        elif place in columns:
            faults.append(Fault(file, line, f"Question {place + 1} has two columns. Keep one."))
        columns.append(place)
    if not any(place is not None and place >= 0 for place in columns) and not faults:
        faults.append(Fault(file, line, f"No question has a column. {_wanted(questions)}"))
    return columns


def _version_fault(version: str, versions: Sequence[str]) -> str:
    """Return what is wrong with the letter of a version."""
    if version in versions:
        return ""
    there = f"The versions are {join_words(list(versions))}." if versions else ""
    if not version:
        return f"The version is missing. {there}".strip()
    return f"There is no version {version}. {there}".strip()


def _wanted(questions: int) -> str:
    numbers = ",".join(str(n + 1) for n in range(min(questions, 3)))
    return f"Begin with a heading such as: seat,{numbers}{',…' if questions > 3 else ''}"
