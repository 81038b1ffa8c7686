"""Records what happened in a lesson, and takes it back."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, delete, func, insert, or_, select, update

from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.records.entries.details import write_details
from itembank.records.entries.entries import KINDS, NAMES, RESULTS, LessonFacts, What
from itembank.records.entries.questions_asked import asked_in, marks_of, pack_asked
from itembank.records.store.store import Store
from itembank.records.store.store_tables import active, entry, lesson, move, of_class, question
from itembank.text.folding import folded
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
    anew = kind == "cover" or (kind in RESULTS and not add)
    _refuse_contradiction(connection, facts, kind)
    lesson_id = _lesson(connection, facts, asked_anew=anew)
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
        one = there[0]
        when = f"on {moment(one.made_at)}"
        if kind == "cancelled":
            raise RecordedAlready(f"It is noted already, {when}, that {facts} has no lesson.")
        if kind == "cover":
            raise RecordedAlready(
                f"It is noted already, {when}, what {facts} was asked instead. Nothing was noted.",
                matter="noted already",
            )
        raise RecordedAlready(
            f"{facts} has {NAMES[one.kind]} already, recorded on {moment(one.made_at)}. "
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
    for one in there:
        connection.execute(update(entry).where(entry.c.id == one.id).values(replaced_by=number))
    write_details(connection, number, what, {one.number: one.marks for one in facts.questions})
    return number


def _refuse_contradiction(connection: Connection, facts: LessonFacts, kind: str) -> None:
    """Refuse results of a lesson that fell out, and what contradicts results there are."""
    told = (
        select(entry.c.kind)
        .join(lesson)
        .where(of_class(facts.class_name), lesson.c.date == facts.date, active())
    )
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
    rivals = [one for one in there if kind == "cancelled" or one in RESULTS]
    if rivals and rivals != [kind] and kind in ("cancelled", "cover"):
        what = "there was no lesson" if kind == "cancelled" else "something else was asked"
        raise ItembankError(
            f"{facts} has {join_words([NAMES[rival] for rival in rivals])} already, so it cannot "
            f"be noted that {what}. Nothing was recorded.",
            matter="take back first",
            class_name=facts.class_name,
            date=facts.date,
        )


@dataclass(frozen=True, slots=True)
class Last:
    """What was recorded last of a class, in one go; or the last list of moves.

    `asked_about` says that something newer was taken back before, so that whoever takes this
    back as well ought to see first what it is.
    """

    lesson_id: int
    kinds: tuple[str, ...]
    date: datetime.date
    period: str
    made_at: datetime.datetime
    numbers: tuple[int, ...]
    asked_about: bool
    moves: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        """Return what it is in words."""
        if len(self.moves) == 1:
            return f"the move of {self.moves[0]}"
        if self.moves:
            return f"the moves of {len(self.moves)} pupils"
        return join_words(list(dict.fromkeys(NAMES[kind] for kind in self.kinds)))


def last_recorded(store: Store, class_name: str, date: datetime.date | None = None) -> Last:
    """Return what ‘undo’ would take back: what was recorded last of a class, or of one day.

    Raises:
        ItembankError: there is nothing to take back.
    """
    with store.reading() as connection:
        return _last(connection, class_name, date)


def _last(connection: Connection, class_name: str, date: datetime.date | None) -> Last:
    of_it = [of_class(class_name)]
    if date is not None:
        of_it.append(lesson.c.date == date)
    rows = select(entry, lesson.c.date, lesson.c.period).join(lesson).where(*of_it)
    last = connection.execute(
        rows.where(active()).order_by(entry.c.made_at.desc(), entry.c.id.desc()).limit(1)
    ).first()
    of_moves = [or_(move.c.from_key == folded(class_name), move.c.to_key == folded(class_name))]
    if date is not None:
        of_moves.append(move.c.date == date)
    undone = [
        connection.scalar(select(func.max(entry.c.undone_at)).join(lesson).where(*of_it)),
        connection.scalar(select(func.max(move.c.undone_at)).where(*of_moves)),
    ]
    newest = max((one for one in undone if one is not None), default=None)
    moved = connection.execute(
        select(move)
        .where(*of_moves, move.c.undone_at.is_(None))
        .order_by(move.c.made_at.desc(), move.c.id)
    ).first()
    if moved is not None and (last is None or moved.made_at > last.made_at):
        rows_of = connection.execute(
            select(move)
            .where(move.c.made_at == moved.made_at, move.c.undone_at.is_(None))
            .order_by(move.c.id)
        ).all()
        said = tuple(
            f"{row.from_class}/{row.from_seat} "
            + (f"to {row.to_class}/{row.to_seat}" if row.to_class else "away")
            for row in rows_of
        )
        numbers = tuple(row.id for row in rows_of)
        about = newest is not None and newest > moved.made_at
        return Last(0, (), moved.date, "", moved.made_at, numbers, about, said)
    if last is None:
        day = f" on {date}" if date else ""
        raise ItembankError(f"Nothing is recorded for {class_name}{day}, so nothing to undo.")
    found = connection.execute(
        select(entry.c.id, entry.c.kind)
        .join(lesson)
        .where(of_class(class_name), entry.c.made_at == last.made_at, active())
        .order_by(entry.c.id)
    ).all()
    return Last(
        last.lesson_id,
        tuple(one.kind for one in found),
        last.date,
        last.period,
        last.made_at,
        tuple(one.id for one in found),
        newest is not None and newest > last.made_at,
    )


def undo(
    store: Store,
    class_name: str,
    date: datetime.date | None = None,
    expected: Last | None = None,
) -> tuple[tuple[str, ...], datetime.date, bool]:
    """Take back what was recorded last of a class, or of a class on one day.

    What was recorded in one go is taken back in one go. Returns the kinds of its entries (none
    for moves), its day, and whether older entries that it had replaced count again. With
    `expected`, that and nothing else is taken back.

    Raises:
        ItembankError: there is nothing to take back, something was recorded after what was
            `expected`, or the store cannot be written.
    """
    with store.writing() as connection:
        last = _last(connection, class_name, date)
        if expected is not None and (last.numbers, last.kinds) != (
            expected.numbers,
            expected.kinds,
        ):
            raise ItembankError(
                f"Something else was recorded for {class_name} a moment ago. Nothing was taken "
                "back.",
                matter="something newer",
            )
        if last.moves:
            connection.execute(
                update(move)
                .where(move.c.id.in_(last.numbers))
                .values(undone_at=datetime.datetime.now())
            )
            return (), last.date, False
        connection.execute(
            update(entry)
            .where(entry.c.id.in_(last.numbers))
            .values(undone_at=datetime.datetime.now())
        )
        again = connection.execute(
            update(entry).where(entry.c.replaced_by.in_(last.numbers)).values(replaced_by=None)
        )
    return last.kinds, last.date, again.rowcount > 0


def _lesson(connection: Connection, facts: LessonFacts, asked_anew: bool) -> int:
    """Return the number of the lesson's row, made if it is not there.

    Its questions are written, or brought up to date, when results come in: a pack made again
    since then must not change what earlier results were about.
    """
    where = (
        of_class(facts.class_name),
        lesson.c.date == facts.date,
        lesson.c.period == facts.period,
    )
    # Where older versions made two lessons of one, the one of exactly that name.
    best = (lesson.c.class_name != facts.class_name, lesson.c.id)
    found = connection.scalar(select(lesson.c.id).where(*where).order_by(*best).limit(1))
    values = {"title": facts.title, "out_of": facts.out_of}
    known: int | None = None
    if found is None:
        made = connection.execute(
            insert(lesson).values(
                class_name=facts.class_name, date=facts.date, period=facts.period, **values
            )
        )
        assert made.inserted_primary_key is not None
        found = int(made.inserted_primary_key[0])
    else:
        if asked_anew:
            connection.execute(update(lesson).where(lesson.c.id == found).values(**values))
        known = connection.scalar(select(func.count()).where(question.c.lesson_id == found))
    if facts.questions and (asked_anew or not known):
        connection.execute(delete(question).where(question.c.lesson_id == found))
        connection.execute(
            insert(question),
            [
                {
                    "lesson_id": found,
                    "number": one.number,
                    "address": one.address,
                    "topic": one.topic,
                    "tier": one.tier,
                    "prompt": one.prompt,
                    "marks": one.marks,
                }
                for one in facts.questions
            ],
        )
    return found
