"""Answers that are not a department yet, kept in a file so that one can go on another day."""

from __future__ import annotations

import contextlib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from itembank.files.faults import Fault, FileFaults
from itembank.files.together import write_whole
from itembank.files.toml_document import toml_document
from itembank.files.toml_table import TomlFile
from itembank.planning.calendar.calendar import Closed, Term
from itembank.planning.calendar.timetable import WeeklyLesson, parse_lesson
from itembank.work.department.answered import (
    Answers,
    BandsAnswer,
    ClassAnswer,
    SchemeAnswer,
    TopicAnswer,
)

FILE_NAME = "begun.toml"
_HEAD = (
    "# Answers about this department that are not in its files yet. The tool reads this when you\n"
    "# go on, and takes it away when you are done; take it away yourself to begin again.\n\n"
)


def keep_so_far(folder: Path, answers: Answers) -> Path:
    """Keep answers in a folder, which is made if need be, and return their file.

    Raises:
        ItembankError: it cannot be written.
    """
    path = folder / FILE_NAME
    write_whole(path, (_HEAD + toml_document(_as_data(answers))).encode())
    return path


def read_so_far(folder: Path) -> Answers | None:
    """Return the answers that were kept in a folder, or None where there are none.

    Raises:
        FileFaults: the file holds something else.
    """
    path = folder / FILE_NAME
    if not path.exists():
        return None
    file = TomlFile(path)
    try:
        return _as_answers(file.data)
    except (KeyError, TypeError, ValueError, AttributeError):
        said = "These are not answers that were kept. Take the file away to begin again."
        raise FileFaults([Fault(str(path), 0, said)]) from None


def forget_so_far(folder: Path) -> None:
    """Take away the answers that were kept in a folder: they are in its files now."""
    with contextlib.suppress(FileNotFoundError):
        (folder / FILE_NAME).unlink()


def _as_data(answers: Answers) -> dict[str, Any]:
    found = _plain(answers)
    assert isinstance(found, dict)
    return found


def _plain(value: Any) -> Any:
    """Return answers as TOML has them: what is open is left out."""
    if isinstance(value, WeeklyLesson):
        return str(value)
    if isinstance(value, tuple):
        return [_plain(part) for part in value]
    if hasattr(value, "__dataclass_fields__"):
        named = {name: getattr(value, name) for name in value.__dataclass_fields__}
        return {
            name: _plain(part)
            for name, part in named.items()
            if part is not None and part not in ("", ())
        }
    return value


def _as_answers(data: Mapping[str, Any]) -> Answers:
    if not isinstance(school := data.get("school", ""), str):
        raise TypeError(school)
    return Answers(
        school=school,
        terms=tuple(Term(**{"name": "", **row}) for row in data.get("terms", [])),
        closed=tuple(Closed(**{"why": "", **row}) for row in data.get("closed", [])),
        two_week=data.get("two_week"),
        week_a=data.get("week_a"),
        classes=tuple(map(_class, data.get("classes", []))),
        schemes=tuple(
            SchemeAnswer(
                row.get("name", ""),
                row["year"],
                tuple(TopicAnswer(**topic) for topic in row.get("topics", [])),
            )
            for row in data.get("schemes", [])
        ),
        bands=_bands(data["bands"]) if "bands" in data else None,
    )


def _class(row: Mapping[str, Any]) -> ClassAnswer:
    lessons = [parse_lesson(text) for text in row.get("lessons", [])]
    if None in lessons:
        raise ValueError(row)
    return ClassAnswer(
        **{
            **row,
            "seats": tuple(row.get("seats", ())),
            "lessons": tuple(lesson for lesson in lessons if lesson is not None),
        }
    )


def _bands(row: Mapping[str, Any]) -> BandsAnswer:
    return BandsAnswer(tuple(row.get("names", ())), tuple(row.get("cuts", ())), row["out_of"])
