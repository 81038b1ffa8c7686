"""One starter of one pupil: the score, its band, and what was right in it."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from itembank.data_class import dataclass
from itembank.records.entries.details import unpack_answers
from itembank.records.reports.decision import seat_band

if TYPE_CHECKING:
    from itembank.planning.bands.bands import Band, BandScheme

FEWEST = 3
"""Answers to a topic, or starters, below which nothing is made of them (common practice, no
source)."""
Schemes = Callable[[str], "BandScheme"]
"""Gives the bands of a class by its name."""


@dataclass(frozen=True, slots=True)
class PupilAnswer:
    """A question of a starter; `right` is None where it was not asked, `mistake` an id or empty."""

    number: int
    topic: str
    prompt: str
    right: bool | None
    mistake: str = ""


@dataclass(frozen=True, slots=True)
class PupilStarter:
    """One starter of one pupil, in the class and seat they had; no answers where only a score."""

    class_name: str
    seat: str
    date: datetime.date
    period: str
    title: str
    marks: int
    out_of: int
    band: Band
    lowest: bool
    view: str = ""
    answers: tuple[PupilAnswer, ...] = ()


def pupil_starter(
    row: Any,
    asked: list[Any],
    shown: Mapping[tuple[int, int], str],
    views: Mapping[int, str],
    scheme: BandScheme,
) -> PupilStarter:
    """Return a starter from its score and its questions; what was right where that is known."""
    right = unpack_answers(row.answers)
    out_of = row.out_of or row.starter_marks
    worth = {question.number: question.marks for question in asked}
    # A pupil who came later may have been asked more, or less, than the others.
    total = sum(worth.get(number, 1) for number in right) or out_of
    band = seat_band(row.marks, total, scheme, out_of)
    return PupilStarter(
        row.class_name,
        row.seat,
        row.date,
        row.period,
        row.title,
        row.marks,
        total,
        band,
        band.letter == scheme.bands(out_of)[0].letter,
        views.get(row.lesson_id, ""),
        tuple(
            PupilAnswer(
                question.number,
                question.topic,
                question.prompt,
                right.get(question.number),
                shown.get((row.entry_id, question.number), ""),
            )
            for question in asked
        )
        if right
        else (),
    )
