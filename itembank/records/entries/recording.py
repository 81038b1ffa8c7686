"""Records what happened in a lesson."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from sqlalchemy import Connection, insert, select, update

from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.records.entries.details import write_details
from itembank.records.entries.entries import KINDS, NAMES, RESULTS, LessonFacts, What
from itembank.records.entries.lesson_row import lesson_row
from itembank.records.entries.questions_asked import asked_in, marks_of, pack_asked
from itembank.records.store.store import Store
from itembank.records.store.store_tables import active, entry, lesson, of_class
from itembank.text.in_words import moment


class RecordedAlready(ItembankError):
    """There are results for this lesson; they are kept unless the teacher asks."""


def record(
    store: Store,
    facts: LessonFacts,
    what: What,
    *,
    replace: bool = False,
    add: bool = False,
    seats: int = 0,
    now: datetime.datetime | None = None,
) -> int:
    """Keep what was counted in a lesson and return the number of the entry.

    It is on the disk when this returns.

    Raises:
        RecordedAlready: the lesson has such results, and `replace` is false.
        ItembankError: the store cannot be written; nothing was recorded.
    """
    with store.writing() as connection:
        return record_in(connection, facts, what, replace=replace, add=add, seats=seats, now=now)


def record_all(
    store: Store,
    facts: LessonFacts,
    whats: Sequence[What],
    *,
    replace: bool = False,
    add: bool = False,
    seats: int = 0,
) -> list[int]:
    """Keep several things of one lesson, all of them or none, as :func:`record` keeps one.

    They have one moment in common: what was recorded in one go is taken back in one go.
    """
    now = datetime.datetime.now()
    with store.writing() as connection:
        return [
            record_in(connection, facts, what, replace=replace, add=add, seats=seats, now=now)
            for what in whats
        ]


def record_each(store: Store, both: Sequence[tuple[LessonFacts, What]]) -> list[int]:
    """Keep one thing of each of several lessons, all of them or none, as :func:`record` does."""
    now = datetime.datetime.now()
    with store.writing() as connection:
        return [record_in(connection, facts, what, now=now) for facts, what in both]


def record_in(
    connection: Connection,
    facts: LessonFacts,
    what: What,
    *,
    replace: bool = False,
    add: bool = False,
    seats: int = 0,
    now: datetime.datetime | None = None,
) -> int:
    """Do as :func:`record` does within a transaction that is open for writing.

    With `add`, what is there is joined by what is new, in an entry that replaces it; `seats` is
    the number of seats in the class, or 0 where it is not known.
    """
    kind = KINDS[type(what)]
    # Added results are about the questions asked before; only a new count may change those.
    anew = kind == "cover" or (kind in RESULTS and not add)
    _refuse_contradiction(connection, facts, kind)
    lesson_id = lesson_row(connection, facts, asked_anew=anew)
    # Answers, scores and bands say the same thing in different detail: only one of them counts.
    rivals = RESULTS if kind in RESULTS else (kind,)
    there = connection.execute(
        select(entry.c.id, entry.c.kind, entry.c.made_at).where(
            entry.c.lesson_id == lesson_id, entry.c.kind.in_(rivals), active()
        )
    ).all()
    if there and add:
        from itembank.records.entries.joining import joined, refuse_other_questions

        if kind in RESULTS:
            refuse_other_questions(connection, lesson_id, facts)
        what = joined(connection, facts, there[0].kind, there[0].id, what, seats)
    elif there and not replace:
        earlier = there[0]
        when = f"on {moment(earlier.made_at)}"
        if kind == "cancelled":
            raise RecordedAlready(f"It is noted already, {when}, that {facts} has no lesson.")
        if kind == "cover":
            raise RecordedAlready(
                f"It is noted already, {when}, what {facts} was asked instead. Nothing was noted.",
                matter="noted already",
            )
        raise RecordedAlready(
            f"{facts} has {NAMES[earlier.kind]} already, recorded on {moment(earlier.made_at)}. "
            "Nothing was recorded.",
            matter="recorded already",
        )
    asked = asked_in(what, facts)
    made = connection.execute(
        insert(entry).values(
            lesson_id=lesson_id,
            kind=kind,
            made_at=now or datetime.datetime.now(),
            asked=pack_asked(facts, asked),
            out_of=marks_of(facts, asked),
        )
    )
    assert made.inserted_primary_key is not None
    number = int(made.inserted_primary_key[0])
    for earlier in there:
        connection.execute(update(entry).where(entry.c.id == earlier.id).values(replaced_by=number))
    marks = {item.number: item.marks for item in facts.questions}
    write_details(connection, number, what, marks)
    return number


def _refuse_contradiction(connection: Connection, facts: LessonFacts, kind: str) -> None:
    """Refuse results of a lesson that fell out, and what contradicts results there are."""
    told = (
        select(entry.c.kind)
        .join(lesson)
        .where(of_class(facts.class_name), lesson.c.date == facts.date, active())
    )
    # An entry without a period may be of this very lesson, so it counts as a rival too.
    if facts.period:
        told = told.where(lesson.c.period.in_((facts.period, "")))
    there = connection.scalars(told).all()
    if kind != "cancelled" and "cancelled" in there:
        raise ItembankError(
            f"It is noted that {facts} had no lesson. Nothing was recorded.",
            matter="had no lesson",
            class_name=facts.class_name,
            date=facts.date,
        )
    rivals = [noted for noted in there if kind == "cancelled" or noted in RESULTS]
    # The same kind again is no contradiction: whether it may replace is asked later.
    if rivals and rivals != [kind] and kind in ("cancelled", "cover"):
        what = "there was no lesson" if kind == "cancelled" else "something else was asked"
        raise ItembankError(
            f"{facts} has {join_words([NAMES[rival] for rival in rivals])} already, so it cannot "
            f"be noted that {what}. Nothing was recorded.",
            matter="take back first",
            class_name=facts.class_name,
            date=facts.date,
        )
