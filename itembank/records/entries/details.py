"""What an entry says, in its rows: written when it is recorded, read back for reports.

Answers by seat are kept as one text a seat, a character a question in order: ``1`` right,
``0`` wrong, ``-`` not asked. Two million answers are then a quarter of a million short rows,
which is why every report on them is quick.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from typing import Any

from sqlalchemy import Connection, func, insert, select

from itembank.records.entries.entries import (
    Answers,
    Bands,
    Cancelled,
    Clarity,
    Cover,
    OwnViews,
    Questions,
    Scores,
    What,
)
from itembank.records.entries.questions_asked import NOT_ASKED
from itembank.records.store.store_tables import (
    active,
    band_count,
    clarity,
    entry,
    misconception,
    own_view,
    remark,
    score,
    tally,
)

RIGHT, WRONG = "1", "0"


def pack_answers(answers: Mapping[int, bool], questions: int) -> str:
    """Return one seat's answers as text.

    >>> pack_answers({1: True, 3: False}, 4)
    '1-0-'
    """
    signs = {True: RIGHT, False: WRONG, None: NOT_ASKED}
    return "".join(signs[answers.get(number)] for number in range(1, questions + 1))


def unpack_answers(text: str) -> dict[int, bool]:
    """Return whether each answer is right, by question; the inverse of :func:`pack_answers`.

    >>> unpack_answers("1-0-")
    {1: True, 3: False}
    """
    return {number: sign == RIGHT for number, sign in enumerate(text, 1) if sign != NOT_ASKED}


def write_details(
    connection: Connection, number: int, what: What, worth: Mapping[int, int]
) -> None:
    """Write what an entry says; `worth` are the marks of each question."""
    rows: dict[Any, list[dict[str, object]]] = {}
    match what:
        case Bands(counts, _):
            rows[band_count] = [
                {
                    "letter": count.letter,
                    "name": count.name,
                    "lowest": count.lowest,
                    "highest": count.highest,
                    "pupils": count.pupils,
                }
                for count in counts
            ]
        case Questions(tallies):
            rows[tally] = _tally_rows(tallies)
        case Scores(marks, _):
            rows[score] = [{"seat": seat, "marks": n, "answers": ""} for seat, n in marks.items()]
        case Answers(right, misconceptions):
            last = max((place for row in right.values() for place in row), default=0)
            rows[misconception] = [
                {"seat": seat, "number": int(place), "name": name}
                for (seat, place), name in misconceptions.items()
            ]
            # Scores and tallies too, so that reports read them alike at every depth.
            rows[score] = [
                {
                    "seat": seat,
                    "marks": sum(worth.get(place, 1) for place, good in answers.items() if good),
                    "answers": pack_answers(answers, last),
                }
                for seat, answers in right.items()
            ]
            rows[tally] = _tally_rows(tallies_of(right))
        case OwnViews(by_seat, hands):
            rows[own_view] = [
                {"seat": seat, "level": level, "pupils": 1} for seat, level in by_seat.items()
            ] or [{"seat": "", "level": level, "pupils": n} for level, n in hands.items()]
        case Clarity(unsure, pupils, note):
            rows[clarity] = [{"unsure": unsure, "pupils": pupils, "note": note}]
        case Cover(words) | Cancelled(words):
            rows[remark] = [{"words": words}] if words else []
    for table, values in rows.items():
        if values:
            connection.execute(insert(table), [{"entry_id": number, **row} for row in values])


def tallies_of(right: Mapping[str, Mapping[int, bool]]) -> dict[int, tuple[int, int]]:
    """Return right answers and answers given for each question.

    >>> tallies_of({"A1": {1: True, 2: False}, "A2": {1: True}})
    {1: (2, 2), 2: (0, 1)}
    """
    found: dict[int, tuple[int, int]] = {}
    for answers in right.values():
        for place, good in answers.items():
            so_far, out_of = found.get(place, (0, 0))
            found[place] = (so_far + good, out_of + 1)
    return dict(sorted(found.items()))


def _tally_rows(counts: Mapping[int, tuple[int, int]]) -> list[dict[str, object]]:
    return [
        {"number": place, "right": right, "out_of": out_of}
        for place, (right, out_of) in counts.items()
    ]


def answers_of(connection: Connection, entry_id: int) -> dict[str, dict[int, bool]]:
    """Return whether each answer of an entry is right, by seat and question."""
    rows = connection.execute(
        select(score.c.seat, score.c.answers).where(score.c.entry_id == entry_id)
    )
    return {row.seat: unpack_answers(row.answers) for row in rows if row.answers}


def misconceptions_of(connection: Connection, entry_id: int) -> dict[tuple[str, int], str]:
    """Return the misconceptions that answers of an entry showed, by seat and question."""
    rows = connection.execute(select(misconception).where(misconception.c.entry_id == entry_id))
    return {(row.seat, row.number): row.name for row in rows}


def misconceptions_counted(connection: Connection, entry_id: int) -> dict[int, dict[str, int]]:
    """Return how many answers to each question showed each misconception."""
    found: dict[int, dict[str, int]] = defaultdict(dict)
    rows = connection.execute(
        select(misconception.c.number, misconception.c.name, func.count())
        .where(misconception.c.entry_id == entry_id)
        .group_by(misconception.c.number, misconception.c.name)
    )
    for number, name, count in rows:
        found[number][name] = count
    return dict(found)


def scores_of(connection: Connection, entry_id: int) -> dict[str, int]:
    """Return the marks of an entry by seat."""
    rows = connection.execute(
        select(score.c.seat, score.c.marks).where(score.c.entry_id == entry_id)
    )
    return {row.seat: row.marks for row in rows}


def tallies_by_question(connection: Connection, entry_id: int) -> dict[int, tuple[int, int]]:
    """Return right answers and answers given of an entry by question."""
    rows = connection.execute(
        select(tally).where(tally.c.entry_id == entry_id).order_by(tally.c.number)
    )
    return {row.number: (row.right, row.out_of) for row in rows}


def bands_of(connection: Connection, entry_id: int) -> list[tuple[str, str, int, int, int]]:
    """Return the band counts of an entry: letter, name, lowest, highest, pupils."""
    rows = connection.execute(
        select(band_count).where(band_count.c.entry_id == entry_id).order_by(band_count.c.lowest)
    )
    return [(row.letter, row.name, row.lowest, row.highest, row.pupils) for row in rows]


def own_views_of(connection: Connection, lesson_id: int) -> tuple[dict[str, str], dict[str, int]]:
    """Return own views of a lesson: the level by seat, and hands counted by level."""
    by_seat: dict[str, str] = {}
    counts: dict[str, int] = defaultdict(int)
    for row in connection.execute(
        select(own_view).join(entry).where(entry.c.lesson_id == lesson_id, active())
    ):
        if row.seat:
            by_seat[row.seat] = row.level
        counts[row.level] += row.pupils
    return by_seat, dict(counts)


def clarity_of(connection: Connection, lesson_id: int) -> tuple[int, int | None, str] | None:
    """Return how many pupils asked about the task, out of how many, and the note; or None."""
    row = connection.execute(
        select(clarity).join(entry).where(entry.c.lesson_id == lesson_id, active())
    ).first()
    return (row.unsure, row.pupils, row.note) if row is not None else None
