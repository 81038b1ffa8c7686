"""A CSV of a class's results: scores by seat, right and wrong by question, or typed answers.

Which of them it is shows in the file: two columns without numbers of questions are scores; a
column for each question holds 1 and 0 alone, or answers as they were typed.

A question was not asked where nobody has anything in its column, or where it has none: a lesson
can stop early, and the sheet is that of the whole starter. Where others have an answer, a pupil
who left the cell blank gave none, which is a wrong one. Both are told, and a teacher who knows
better says which questions were asked.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.files.faults import Fault, FileFaults, decode_text, join_words
from itembank.records.entries.entries import Answers, Scores
from itembank.records.entries.questions_asked import not_asked_said
from itembank.records.entries.view_file import strangers
from itembank.remark import Remark
from itembank.text.in_words import counted

if TYPE_CHECKING:
    from itembank.marking.answer_sheet import AnswerRow

_SEATS = {"seat", "seats", "code", "seat code", ""}
_RIGHT = {
    **dict.fromkeys(("1", "✓", "✔", "☑", "√", "y", "yes", "right", "r", "tick", "true", "t"), True),
    **dict.fromkeys(
        ("0", "✗", "✘", "×", "x", "n", "no", "wrong", "w", "cross", "false", "f"), False
    ),
}
"""How a person writes that an answer is right, or wrong, in small letters."""
_PLAINLY = frozenset({"1", "0", "✓", "✔", "☑", "✗", "✘"})
"""Those of them that are hardly answers themselves."""
MARKS_FROM = 0.75
"""Share of such cells from which a sheet is meant to hold marks, and no answers."""


@dataclass(frozen=True, slots=True)
class SheetRead:
    """What a sheet says, the seats that it says nothing of, and what the teacher should know."""

    what: Scores | Answers
    absent: tuple[str, ...]
    remarks: tuple[Remark, ...] = ()


def is_by_question(text: str) -> bool:
    """Tell whether the heading of a CSV numbers questions.

    >>> is_by_question("seat,1,2,3"), is_by_question("seat,score"), is_by_question("A1,5")
    (True, False, False)
    """
    heading = text.lstrip().split("\n", 1)[0].replace(";", ",").replace("\t", ",")
    cells = [cell.strip().strip('"').casefold() for cell in heading.split(",")]
    first = cells[0]
    if any(sign.isdigit() for sign in first):  # a seat code: there is no heading
        return len(cells) > 2
    rest = [cell.removeprefix("question").removeprefix("q").strip(" .") for cell in cells[1:]]
    return len(cells) > 2 or (first in _SEATS and any(cell.isdigit() for cell in rest))


@dataclass(frozen=True, slots=True)
class Asked:
    """The starter that a sheet answers: how many questions, and the pack that holds them.

    `numbers` are the questions asked, as the teacher says; empty where the sheet is to show it.
    """

    out_of: int
    questions: int
    pack: Path | None = None
    versions: tuple[str, ...] = ()
    numbers: tuple[int, ...] = ()


def read_sheet(
    path: Path, asked: Asked, seats: Collection[str], banks: tuple[Path, ...] = ()
) -> SheetRead:
    """Read a sheet; typed answers are marked by the pack the class had.

    Raises:
        FileFaults: the file cannot be read, or rows of it are wrong; every fault with its line.
        ItembankError: answers have to be marked, and the pack cannot be read.
    """
    text = decode_text(path)
    unknown = strangers(text, seats, str(path))
    try:
        found = _read(text, path, asked, banks)
    except FileFaults as error:
        raise FileFaults([*error.faults, *unknown]) from None
    if unknown:
        raise FileFaults(unknown)
    return found


def _read(text: str, path: Path, asked: Asked, banks: tuple[Path, ...]) -> SheetRead:
    if not is_by_question(text):
        return _scores(text, asked, str(path))
    from itembank.marking.answer_sheet import parse_answers

    if not asked.questions:
        message = "Without its pack nobody knows the questions."
        raise FileFaults([Fault(str(path), 0, message, matter="pack unknown")])
    rows = parse_answers(text, asked.questions, str(path), asked.versions)
    there = [row for row in rows if any(row.answers)]
    absent = tuple(row.seat.upper() for row in rows if not any(row.answers))
    numbers = _asked_in(there, asked, str(path))
    told = _blanks(there, numbers, asked)
    if _are_marks(there, str(path)):
        right = {
            row.seat.upper(): {n: _RIGHT.get(row.answers[n - 1].casefold(), False) for n in numbers}
            for row in there
        }
        return SheetRead(Answers(right, {}), absent, told)
    what, remarks = _marked(there, asked, numbers, str(path), banks)
    return SheetRead(what, absent, (*told, *remarks))


def _asked_in(rows: Sequence[AnswerRow], asked: Asked, file: str) -> tuple[int, ...]:
    """Return the questions that were asked: those the teacher named, or those with an answer.

    Raises:
        FileFaults: there are answers to a question that was not asked, as the teacher says.
    """
    found = tuple(
        n for n in range(1, asked.questions + 1) if any(row.answers[n - 1] for row in rows)
    )
    if not asked.numbers:
        return found
    faults = []
    for n in found:
        if n not in asked.numbers:
            line = next(row.line for row in rows if row.answers[n - 1])
            message = f"There is an answer to question {n}, which was not asked, as you say."
            faults.append(Fault(file, line, message, matter="answer to what was not asked"))
    if faults:
        raise FileFaults(faults)
    return asked.numbers


def _blanks(rows: Sequence[AnswerRow], numbers: Sequence[int], asked: Asked) -> tuple[Remark, ...]:
    """Return how empty cells are read: not asked where nobody answered, else no answer."""
    found = []
    missing = [n for n in range(1, asked.questions + 1) if n not in numbers]
    if missing and not asked.numbers:
        found.append(
            Remark(
                f"{not_asked_said(missing)} Nobody has an answer there.",
                matter="nobody answered",
                questions=asked.questions,
            )
        )
    blank = sum(not row.answers[n - 1] for row in rows for n in numbers)
    if blank:
        cells = counted(blank, "cell is", "cells are")
        said = f"{cells} blank where others have an answer: no answer, so wrong."
        found.append(Remark(said))
    return tuple(found)


def _are_marks(rows: Sequence[AnswerRow], file: str) -> bool:
    """Tell whether a sheet says right or wrong in each cell, or holds answers as typed.

    Raises:
        FileFaults: most cells say right or wrong, yet some do not: as answers, all of those
            would be wrong, and nobody would be told.
    """
    cells = [(row, cell) for row in rows for cell in row.answers if cell]
    strange = [(row, cell) for row, cell in cells if cell.casefold() not in _RIGHT]
    if not strange:
        return True
    plain = sum(cell in _PLAINLY for _, cell in cells)
    if plain < MARKS_FROM * len(cells):
        return False
    message = "‘{}’ says neither right nor wrong, as most cells do. Write 1 or 0."
    raise FileFaults([Fault(file, row.line, message.format(cell)) for row, cell in strange])


def _marked(
    rows: Sequence[AnswerRow],
    asked: Asked,
    numbers: Sequence[int],
    file: str,
    banks: tuple[Path, ...],
) -> tuple[Answers, tuple[Remark, ...]]:
    """Mark typed answers to the questions `numbers`; one left out shows no misconception."""
    from itembank.marking.class_sheet import mark_sheet
    from itembank.marking.verdict import Verdict
    from itembank.records.entries.pack_items import starter_items

    if asked.pack is None:
        message = "Typed answers are marked by the pack the class had, and it is not known."
        raise FileFaults([Fault(file, 0, message, matter="pack unknown")])
    if len(asked.versions) > 1 and not all(row.version for row in rows):
        message = (
            f"The class had versions {join_words(list(asked.versions))}, which have different "
            "answers. Add a column headed ‘version’ after the seats."
        )
        raise FileFaults([Fault(file, 1, message)])
    items = starter_items(asked.pack, banks)
    right: dict[str, dict[int, bool]] = {}
    shown: dict[tuple[str, int], str] = {}
    verdicts: Counter[Verdict] = Counter()
    for letter, questions in items.items():
        # Of one version alone, rows need not name it.
        theirs = [row for row in rows if row.version == letter or not row.version]
        for seat in mark_sheet(questions, theirs).seats if theirs else ():
            code = seat.seat.upper()
            right[code] = {}
            for number in numbers:
                marked = seat.marked[number - 1]
                right[code][number] = marked is not None and marked.verdict is Verdict.RIGHT
                verdicts.update([marked.verdict] if marked is not None else [])
                if marked is not None and marked.misconception is not None:
                    shown[code, number] = marked.misconception.id
    return Answers(right, shown), _remarks(
        sum(verdicts.values()),
        verdicts[Verdict.RIGHT],
        verdicts[Verdict.UNREADABLE],
        verdicts[Verdict.WRONG_FORM],
    )


def _remarks(answers: int, right: int, unreadable: int, other_form: int) -> tuple[Remark, ...]:
    """Return what a teacher should look at before trusting typed answers.

    >>> print(*_remarks(16, 0, 0, 0))
    None of the 16 answers is right. If the sheet holds marks, write 1 or 0 in each cell.
    >>> print(_remarks(1, 0, 0, 0)[0].words.partition(".")[0])
    The one answer is not right
    """
    found = []
    if answers and not right:
        none = f"None of the {answers} answers is" if answers > 1 else "The one answer is not"
        found.append(Remark(f"{none} right. If the sheet holds marks, write 1 or 0 in each cell."))
    counted = [
        f"{number} {what}"
        for number, what in (
            (unreadable, "could not be read"),
            (other_form, "had the right value in another form"),
        )
        if number
    ]
    if counted:
        said = f"Of the answers, {join_words(counted)}: wrong, as counted."
        found.append(Remark(said, matter="answers to look at"))
    return tuple(found)


def _scores(text: str, asked: Asked, file: str) -> SheetRead:
    from itembank.planning.bands.groups import parse_scores

    found = parse_scores(text, asked.out_of, file)
    marks = {entry.code.upper(): entry.score for entry in found.entries}
    return SheetRead(Scores(marks, asked.numbers), tuple(code.upper() for code in found.absent))
