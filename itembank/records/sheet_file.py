"""A CSV of a class's results: scores by seat, right and wrong by question, or typed answers.

Which of them it is shows in the file: two columns without numbers of questions are scores; a
column for each question holds 1 and 0 alone, or answers as they were typed.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.faults import Fault, FileFaults, decode_text, join_words
from itembank.records.entries import Answers, Scores
from itembank.records.typed import seat_said, view_level
from itembank.seats import heading_fault, seat_fault

if TYPE_CHECKING:
    from itembank.marking.answer_sheet import AnswerRow

_SEATS = {"seat", "seats", "code", "seat code", ""}
_RIGHT = {"1": True, "0": False, "": False}


@dataclass(frozen=True, slots=True)
class SheetRead:
    """What a sheet says, and the seats that it says nothing of."""

    what: Scores | Answers
    absent: tuple[str, ...]


def is_by_question(text: str) -> bool:
    """Tell whether the heading of a CSV numbers questions.

    >>> is_by_question("seat,1,2,3"), is_by_question("seat,score"), is_by_question("A1,5")
    (True, False, False)
    """
    heading = text.lstrip().split("\n", 1)[0].replace(";", ",").replace("\t", ",")
    cells = [cell.strip().strip('"').casefold() for cell in heading.split(",")]
    first = cells[0]
    if any(one.isdigit() for one in first):  # a seat code: there is no heading
        return len(cells) > 2
    rest = [cell.removeprefix("question").removeprefix("q").strip(" .") for cell in cells[1:]]
    return len(cells) > 2 or (first in _SEATS and any(cell.isdigit() for cell in rest))


@dataclass(frozen=True, slots=True)
class Asked:
    """The starter that a sheet answers: how many questions, and the pack that holds them."""

    out_of: int
    questions: int
    pack: Path | None = None
    versions: tuple[str, ...] = ()


def read_sheet(
    path: Path, asked: Asked, seats: Collection[str], banks: tuple[Path, ...] = ()
) -> SheetRead:
    """Read a sheet; typed answers are marked by the pack the class had.

    Raises:
        FileFaults: the file cannot be read, or rows of it are wrong; every fault with its line.
        ItembankError: answers have to be marked, and the pack cannot be read.
    """
    text = decode_text(path)
    strangers = _strangers(text, seats, str(path))
    try:
        found = _read(text, path, asked, banks)
    except FileFaults as error:
        raise FileFaults([*error.faults, *strangers]) from None
    if strangers:
        raise FileFaults(strangers)
    return found


def _read(text: str, path: Path, asked: Asked, banks: tuple[Path, ...]) -> SheetRead:
    if not is_by_question(text):
        return _scores(text, asked.out_of, str(path))
    from itembank.marking.answer_sheet import parse_answers

    if not asked.questions:
        message = "Without a pack nobody knows the questions. Name it with --pack."
        raise FileFaults([Fault(str(path), 0, message)])
    rows = parse_answers(text, asked.questions, str(path), asked.versions)
    there = [row for row in rows if any(row.answers)]
    absent = tuple(row.seat.upper() for row in rows if not any(row.answers))
    if all(cell in _RIGHT for row in there for cell in row.answers):
        right = {
            row.seat.upper(): {n: _RIGHT[cell] for n, cell in enumerate(row.answers, 1)}
            for row in there
        }
        return SheetRead(Answers(right, {}), absent)
    return SheetRead(_marked(there, asked, str(path), banks), absent)


def _marked(rows: Sequence[AnswerRow], asked: Asked, file: str, banks: tuple[Path, ...]) -> Answers:
    """Mark typed answers; an answer left out is a wrong one without a misconception."""
    from itembank.marking.mark import Verdict
    from itembank.marking.sheet import mark_sheet
    from itembank.records.pack_items import starter_items

    if asked.pack is None:
        message = "Typed answers are marked by the pack the class had. Name it with --pack."
        raise FileFaults([Fault(file, 0, message)])
    if len(asked.versions) > 1 and not all(row.version for row in rows):
        message = (
            f"The class had versions {join_words(list(asked.versions))}, which have different "
            "answers. Add a column headed ‘version’ after the seats."
        )
        raise FileFaults([Fault(file, 1, message)])
    items = starter_items(asked.pack, banks)
    right: dict[str, dict[int, bool]] = {}
    shown: dict[tuple[str, int], str] = {}
    for letter, questions in items.items():
        theirs = [row for row in rows if row.version == letter or not row.version]
        for seat in mark_sheet(questions, theirs).seats if theirs else ():
            code = seat.seat.upper()
            right[code] = {}
            for number, one in enumerate(seat.marked, 1):
                right[code][number] = one is not None and one.verdict is Verdict.RIGHT
                if one is not None and one.misconception is not None:
                    shown[code, number] = one.misconception.id
    return Answers(right, shown)


def _scores(text: str, out_of: int, file: str) -> SheetRead:
    from itembank.planning.groups import parse_scores

    found = parse_scores(text, out_of, file)
    marks = {one.code.upper(): one.score for one in found.entries}
    return SheetRead(Scores(marks), tuple(code.upper() for code in found.absent))


def read_view_file(path: Path, seats: Collection[str]) -> dict[str, str]:
    """Read a CSV with a seat code and an own view in each row.

    Raises:
        FileFaults: the file cannot be read, or rows of it are wrong; every fault with its line.
    """
    file, faults = str(path), []
    found: dict[str, str] = {}
    for line, row in enumerate(decode_text(path).splitlines(), 1):
        cells = [cell.strip().strip('"') for cell in row.replace(";", ",").split(",")]
        if not any(cells):
            continue
        level = view_level(cells[1]) if len(cells) == 2 else ""
        if line == 1 and not level and not any(one.isdigit() for one in cells[0]):
            if fault := next(filter(None, map(heading_fault, cells)), ""):
                raise FileFaults([Fault(file, line, fault)])
            continue
        if len(cells) != 2 or (cells[1] and not level):
            message = "A row holds a seat code and sure, partly or not sure."
            faults.append(Fault(file, line, message))
        elif fault := seat_said(cells[0], seats):
            faults.append(Fault(file, line, fault))
        elif cells[0].upper() in found:
            faults.append(Fault(file, line, f"Seat {cells[0]} is there twice. Keep one."))
        elif level:
            found[cells[0].upper()] = level
    if faults:
        raise FileFaults(faults)
    if not found:
        raise FileFaults([Fault(file, 0, "There is no own view here. Write rows as A1,sure.")])
    return found


def _strangers(text: str, seats: Collection[str], file: str) -> list[Fault]:
    """Return a fault for each seat code that is none of the class's, with its line.

    What is no seat code at all is left to those who read the sheet.
    """
    found = []
    for number, line in enumerate(text.splitlines(), 1):
        first = line.replace(";", ",").replace("\t", ",").split(",")[0].strip().strip('"')
        if not seat_fault(first) and (said := seat_said(first, seats)):
            found.append(Fault(file, number, said))
    return found
