"""Finds the pack a class had, and reads from it what results are about.

Only what recording needs is read, by the standard library alone: a teacher who types three
numbers must not wait for all that checks a pack. Nothing here is printed for pupils.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.packs.data.pack_place import PACK_FILE, PackPlace, read_pack_data
from itembank.records.entries.entries import LessonFacts, QuestionFacts
from itembank.text.in_words import day_month_year


def choose_pack(
    places: Iterable[PackPlace], date: datetime.date | None, today: datetime.date
) -> PackPlace | None:
    """Return the pack of `date`, else the newest one up to `today`; None where there is none.

    Raises:
        ItembankError: the class had two packs that day, so that only the teacher can tell.

    >>> day = datetime.date
    >>> packs = [PackPlace(Path("a"), day(2026, 11, 23)), PackPlace(Path("b"), day(2026, 12, 1))]
    >>> choose_pack(packs, None, day(2026, 11, 30)).date.isoformat()
    '2026-11-23'
    """
    known = [place for place in places if (place.date == date if date else place.date <= today)]
    if not known:
        return None
    newest = [pack for pack in known if pack.date == known[-1].date]
    if len(newest) > 1:
        folders = ", ".join(str(pack.path.parent) for pack in newest)
        raise ItembankError(
            f"There are {len(newest)} packs for {day_month_year(newest[0].date)}: {folders}.",
            matter="several packs",
        )
    return newest[0]


@dataclass(frozen=True, slots=True)
class PackFacts:
    """What a pack says: lesson, bands (letter, name, lowest and highest score) and versions."""

    lesson: LessonFacts
    bands: tuple[tuple[str, str, int, int], ...]
    path: Path
    versions: tuple[str, ...]


def read_pack_facts(path: Path, period: str = "") -> PackFacts:
    """Read the lesson, questions and bands of a pack; a folder stands for its ``pack.json``.

    Where a pack holds parallel versions the first stands for all: they ask alike.

    Raises:
        ItembankError: the file cannot be read, or is not a pack.
    """
    path = path / PACK_FILE if path.is_dir() else path
    _, data = read_pack_data(path)
    try:
        lesson = data["lesson"]
        questions = tuple(
            QuestionFacts(
                number,
                str(item["address"]),
                str(item["topic"]),
                str(item["tier"]),
                "".join(map(_run_text, item["prompt"])),
                int(item["marks"]),
            )
            for number, item in enumerate(data["versions"][0]["items"], 1)
        )
        facts = LessonFacts(
            str(lesson["class_name"]),
            datetime.date.fromisoformat(lesson["date"]),
            sum(question.marks for question in questions),
            str(lesson["title"]),
            period,
            questions,
        )
        versions = tuple(str(version["letter"]) for version in data["versions"])
        bands = tuple(
            (str(band["letter"]), str(band["name"]), int(band["lowest"]), int(band["highest"]))
            for band in data["bands"]
        )
    except (KeyError, TypeError, ValueError, IndexError, AttributeError, RecursionError):
        raise ItembankError(f"{path} is not a whole pack.", matter="no whole pack") from None
    return PackFacts(facts, bands, path, versions)


def _run_text(run: Mapping[str, Any]) -> str:
    return str(run["text"] if run.get("kind") == "text" else run["line"])
