"""Joins what is recorded now to what was recorded of the same lesson before.

So two teachers of a split class each record their half, and somebody who was away is added
later. Nothing counts twice: a seat stands in one part only, and hands never come to more than
sit in the class.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TypeVar

from sqlalchemy import Connection, select

from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.people.seats import seat_order
from itembank.records.entries.details import (
    answers_of,
    bands_of,
    misconceptions_of,
    scores_of,
    tallies_by_question,
)
from itembank.records.entries.entries import (
    KINDS,
    NAMES,
    Answers,
    BandCount,
    Bands,
    Clarity,
    LessonFacts,
    OwnViews,
    Questions,
    Scores,
    What,
)
from itembank.records.entries.questions_asked import asked_in, marks_of, pack_asked
from itembank.records.store.store_tables import LONGEST_NOTE, clarity, entry, own_view, question
from itembank.text.in_words import plural

T = TypeVar("T")


def joined(
    connection: Connection, facts: LessonFacts, kind: str, entry_id: int, what: What, seats: int
) -> What:
    """Return what the entry of that kind says together with `what`, which is new.

    `seats` is the number of seats in the class; 0 where it is not known.

    Raises:
        ItembankError: the two cannot be joined, or together count somebody twice.
    """
    if kind != KINDS[type(what)]:
        raise ItembankError(
            f"{facts} has {NAMES[kind]}; {NAMES[KINDS[type(what)]]} cannot be joined to them. "
            "Record this part in the same way.",
            matter="another kind of part",
        )
    match what:
        case Answers(right, shown):
            before = answers_of(connection, entry_id)
            _refuse_twice(facts, before, right)
            # Seats of the two parts never meet (above), so neither can write over the other's
            # mistakes.
            named = {**misconceptions_of(connection, entry_id), **shown}
            return Answers({**before, **right}, named)
        case Scores(marks, asked):
            # A score does not say which questions were right: only scores out of the same can be
            # one list.
            _refuse_other_length(connection, facts, entry_id, what)
            known = scores_of(connection, entry_id)
            _refuse_twice(facts, known, marks)
            return Scores({**known, **marks}, asked)
        case Questions(counts):
            both = _summed(tallies_by_question(connection, entry_id), counts)
            # Hands have no seats: a count of more pupils than sit there is all that shows a part
            # told twice.
            _refuse_crowd(facts, max(out_of for _, out_of in both.values()), seats)
            return Questions(both)
        case Bands(counts, asked):
            _refuse_other_length(connection, facts, entry_id, what)
            return Bands(_bands(connection, facts, entry_id, counts, seats), asked)
        case OwnViews():
            return _views(connection, facts, entry_id, what, seats)
        case Clarity():
            return _clarity(connection, facts, entry_id, what, seats)
        case _:
            raise ItembankError(f"{facts} has {NAMES[kind]} already. Nothing was recorded.")


def refuse_other_questions(connection: Connection, lesson_id: int, facts: LessonFacts) -> None:
    """Refuse a part that is about other questions than the part recorded before.

    Raises:
        ItembankError: the pack was made anew in between, say.
    """
    rows = connection.execute(
        select(question.c.address)
        .where(question.c.lesson_id == lesson_id)
        .order_by(question.c.number)
    )
    before = [row.address for row in rows]
    # Where either side knows no questions, as of a starter that had no pack, nothing can differ.
    if before and facts.questions and before != [asked.address for asked in facts.questions]:
        raise ItembankError(
            f"{facts}: what was recorded before is about other questions than this pack asks, so "
            "the two cannot be joined. Nothing was recorded.",
            matter="part of another pack",
        )


def _refuse_other_length(
    connection: Connection, facts: LessonFacts, entry_id: int, what: What
) -> None:
    """Refuse scores or hands about other questions: a score does not say which were right."""
    before = connection.execute(
        select(entry.c.asked, entry.c.out_of).where(entry.c.id == entry_id)
    ).one()
    asked = asked_in(what, facts)
    if (pack_asked(facts, asked), marks_of(facts, asked)) != (before.asked, before.out_of):
        raise ItembankError(
            f"{facts}: what was recorded before counts out of {before.out_of}, this part out of "
            f"{marks_of(facts, asked)}, so they cannot be joined. Nothing was recorded.",
            matter="part of another length",
        )


def _refuse_twice(facts: LessonFacts, before: Iterable[str], new: Iterable[str]) -> None:
    twice = sorted({*before} & {*new}, key=seat_order)
    if twice:
        many = len(twice)
        raise ItembankError(
            f"{facts}: {plural(many, 'seat')} {join_words(twice)} {plural(many, 'is', 'are')} "
            f"recorded already, so {plural(many, 'it', 'they')} would count twice. "
            "Nothing was recorded. Take the seats out of one part.",
            matter="seats in both parts",
            seat=twice[0],
        )


def _refuse_crowd(facts: LessonFacts, counted: int, seats: int) -> None:
    if seats and counted > seats:
        raise ItembankError(
            f"{facts}: both parts together come to {counted} pupils, but only {seats} sit in the "
            "class. Nothing was recorded. Was one part recorded twice?"
        )


def _summed(
    before: Mapping[int, tuple[int, int]], new: Mapping[int, tuple[int, int]]
) -> dict[int, tuple[int, int]]:
    found = dict(before)
    for number, (right, out_of) in new.items():
        so_far, of = found.get(number, (0, 0))
        found[number] = (so_far + right, of + out_of)
    return dict(sorted(found.items()))


def _bands(
    connection: Connection,
    facts: LessonFacts,
    entry_id: int,
    counts: tuple[BandCount, ...],
    seats: int,
) -> tuple[BandCount, ...]:
    before = [BandCount(*row) for row in bands_of(connection, entry_id)]
    if [(band.lowest, band.highest) for band in before] != [(c.lowest, c.highest) for c in counts]:
        raise ItembankError(
            f"{facts} was counted by other bands before: "
            f"{join_words([f'{band.name} {band.lowest}–{band.highest}' for band in before])}.",
            matter="other bands",
        )
    both = tuple(
        BandCount(band.letter, band.name, band.lowest, band.highest, band.pupils + more.pupils)
        for band, more in zip(before, counts, strict=True)
    )
    _refuse_crowd(facts, sum(band.pupils for band in both), seats)
    return both


def _views(
    connection: Connection, facts: LessonFacts, entry_id: int, what: OwnViews, seats: int
) -> OwnViews:
    rows = connection.execute(select(own_view).where(own_view.c.entry_id == entry_id)).all()
    by_seat = {row.seat: row.level for row in rows if row.seat}
    hands = {row.level: row.pupils for row in rows if not row.seat}
    # Hands and seats cannot be put together: whose hand was up is not known, and would count twice.
    if bool(by_seat) != bool(what.by_seat):
        raise ItembankError(
            f"{facts}: own views were told {'by seat' if by_seat else 'by hands'} before. Tell "
            "this part in the same way."
        )
    _refuse_twice(facts, by_seat, what.by_seat)
    both = {
        level: hands.get(level, 0) + what.counts.get(level, 0) for level in {*hands, *what.counts}
    }
    _refuse_crowd(facts, sum(both.values()), seats)
    return OwnViews({**by_seat, **what.by_seat}, both)


def _clarity(
    connection: Connection, facts: LessonFacts, entry_id: int, what: Clarity, seats: int
) -> Clarity:
    row = connection.execute(select(clarity).where(clarity.c.entry_id == entry_id)).one()
    _refuse_crowd(facts, row.unsure + what.unsure, seats)
    notes = [note for note in (row.note, what.note) if note]
    # The same note told with both parts is one note.
    note = "; ".join(dict.fromkeys(notes))
    if len(note) > LONGEST_NOTE:
        raise ItembankError(
            f"With what was noted before it comes to {len(note)} characters; "
            f"{LONGEST_NOTE} are the most. Write less.",
            field="note",
        )
    return Clarity(row.unsure + what.unsure, row.pupils or what.pupils, note)
