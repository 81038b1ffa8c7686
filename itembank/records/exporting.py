"""Writes everything in the store as CSV, one file a table, and remembers where.

It remembers so that forgetting a pupil can follow the copies it made.
"""

from __future__ import annotations

import datetime
import io
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Select, case, delete, insert, select

from itembank.errors import ItembankError
from itembank.files.csv_text import CsvWriter
from itembank.files.private import file_mode, make_folder
from itembank.files.together import whole_file
from itembank.planning.bands.caution import HEADING
from itembank.records.entries.details import unpack_answers
from itembank.records.entries.questions_asked import numbers_said, unpack_asked
from itembank.records.store.store import Store
from itembank.records.store.store_place import StorePlace, noted
from itembank.records.store.store_tables import (
    band_count,
    clarity,
    entry,
    exported,
    lesson,
    misconception,
    move,
    own_view,
    question,
    remark,
    score,
    tally,
)

TAKEN_BACK = "taken back"
"""The state of what does not count any more because it was not so."""
_LESSON = (
    lesson.c.class_name.label("class"),
    lesson.c.date,
    lesson.c.period,
)
_STATE = case(
    (entry.c.undone_at.is_not(None), TAKEN_BACK),
    (entry.c.replaced_by.is_not(None), "replaced"),
    else_="counts",
).label("state")


_HEADINGS = {
    ("right-answers.csv", "number"): "question",
    ("bands.csv", "name"): HEADING,
    ("remarks.csv", "words"): "note",
}
"""What heads a column whose name in the store would say too little, by file and name."""


def queries() -> dict[str, Select[Any]]:
    """Return what each file holds, by its name."""
    of_entry = (*_LESSON, entry.c.id.label("entry"))
    found: dict[str, Select[Any]] = {
        "lessons.csv": select(*_LESSON, lesson.c.title, lesson.c.out_of.label("marks")),
        "questions.csv": select(
            *_LESSON,
            question.c.number.label("question"),
            question.c.address,
            question.c.topic,
            question.c.tier,
            question.c.marks,
            question.c.prompt,
        ).join(question),
        "entries.csv": select(
            *of_entry,
            entry.c.kind,
            entry.c.made_at,
            _STATE,
            entry.c.asked,
            entry.c.out_of.label("marks"),
        ).join(entry),
    }
    details = {
        "bands.csv": (band_count, ("letter", "name", "lowest", "highest", "pupils")),
        "right-answers.csv": (tally, ("number", "right", "out_of")),
        "scores.csv": (score, ("seat", "marks")),
        "answers.csv": (score, ("seat", "answers")),
        "own-views.csv": (own_view, ("seat", "level", "pupils")),
        "clarity.csv": (clarity, ("unsure", "pupils", "note")),
        "remarks.csv": (remark, ("words",)),
    }
    for name, (table, columns) in details.items():
        shown = [table.c[column].label(_HEADINGS.get((name, column), column)) for column in columns]
        found[name] = (
            select(*of_entry, *shown)
            .join(entry, entry.c.lesson_id == lesson.c.id)
            .join(table, table.c.entry_id == entry.c.id)
        )
    found["moves.csv"] = select(
        move.c.from_class.label("class"),
        move.c.date,
        move.c.from_seat.label("seat"),
        move.c.to_class,
        move.c.to_seat,
        case((move.c.undone_at.is_not(None), TAKEN_BACK), else_="counts").label("state"),
    )
    found["answers.csv"] = found["answers.csv"].where(score.c.answers != "")
    return {
        name: query.order_by(
            *[column for column in query.selected_columns if column.name in _ORDER]
        )
        for name, query in found.items()
    }


_ORDER = ("date", "class", "period", "entry", "seat", "question", "letter", "level")


def export_all(store: Store, folder: Path, replace: bool = False) -> dict[str, int]:
    """Write every table to `folder` and return the number of rows of each file.

    Raises:
        ItembankError: a file is there already (and `replace` is false), or cannot be written.
    """
    wanted = queries()
    there = [name for name in wanted if (folder / name).exists()]
    if there and not replace:
        raise ItembankError(f"There is {there[0]} in {folder} already.", matter="export there")
    try:
        make_folder(folder)
    except OSError as error:
        raise ItembankError(f"{folder} cannot be made: {error.strerror}.") from None
    # Remembered first: if the power fails between the two, forgetting still knows where to look.
    with store.writing() as connection:
        for name in wanted:
            remember_export(connection, store.folder, folder / name)
    found: dict[str, int] = {}
    with store.reading() as connection:
        for name, query in wanted.items():
            result = connection.execution_options(yield_per=5000).execute(query)
            heads = list(result.keys())
            rows: Iterator[Sequence[Any]] = iter(result)
            if name == "answers.csv":
                heads, rows = _row_an_answer(connection, heads, rows)
            elif name == "entries.csv":
                rows = _asked_said(rows, heads.index("asked"))
            found[name] = write_csv(folder / name, heads, rows)
    return found


def _asked_said(rows: Iterator[Any], place: int) -> Iterator[Sequence[Any]]:
    """Yield rows with the numbers of the questions asked; nothing where it was all of them."""
    for row in rows:
        text = row[place]
        numbers = unpack_asked(text, range(1, len(text) + 1))
        said = numbers_said(numbers).partition(" ")[2] if numbers else ""
        yield (*row[:place], said, *row[place + 1 :])


def _row_an_answer(
    connection: Connection, heads: list[str], rows: Iterator[Any]
) -> tuple[list[str], Iterator[Sequence[Any]]]:
    """Return headings and rows with a row for each answer, from rows with a seat's answers."""
    shown = {
        (row.entry_id, row.seat, row.number): row.name
        for row in connection.execute(select(misconception))
    }

    def answer_rows() -> Iterator[Sequence[Any]]:
        for *lesson_and_entry, entry_id, seat, answers in rows:
            for number, right in unpack_answers(answers).items():
                name = shown.get((entry_id, seat, number), "")
                yield (*lesson_and_entry, entry_id, seat, number, int(right), name)

    return [*heads[:-1], "question", "right", "misconception"], answer_rows()


def remember_export(connection: Connection, folder: Path, path: Path, class_name: str = "") -> None:
    """Note that a file with results (of one class, or of all) was written.

    Forgetting finds it then. `folder` is the department's.
    """
    where = noted(path, folder)
    connection.execute(delete(exported).where(exported.c.path == where))
    connection.execute(
        insert(exported).values(path=where, class_name=class_name, made_at=datetime.datetime.now())
    )


def remember_files(place: str | StorePlace, paths: Iterable[Path], class_name: str = "") -> None:
    """Note in the store at `place` that files with results will be written, as above.

    Raises:
        ItembankError: the store cannot be written.
    """
    from itembank.records.store.store import open_store

    with open_store(place, make=False) as store, store.writing() as connection:
        for path in paths:
            remember_export(connection, store.folder, path, class_name)


def write_csv(path: Path, heads: Sequence[str], rows: Iterator[Sequence[Any]]) -> int:
    """Write a CSV that appears whole or not at all; return its number of rows.

    Raises:
        ItembankError: it cannot be written.
    """
    count = 0
    try:
        # With a mark of UTF-8 at its start, a spreadsheet shows £ and ½ as they are.
        with whole_file(path, file_mode(path.parent)) as raw:
            out = io.TextIOWrapper(raw, encoding="utf-8-sig", newline="")
            writer = CsvWriter(out)
            writer.writerow(heads)
            for row in rows:
                writer.writerow(row)
                count += 1
            out.detach()
    except OSError as error:
        raise ItembankError(f"{path} cannot be written: {error.strerror}.") from None
    return count
