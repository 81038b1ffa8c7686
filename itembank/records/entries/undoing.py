"""Takes back what was recorded last of a class: results, or moves of its pupils."""

from __future__ import annotations

import datetime

from sqlalchemy import Connection, false, func, or_, select, update

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.records.entries.entries import NAMES
from itembank.records.store.store import Store
from itembank.records.store.store_tables import active, entry, lesson, move, of_class
from itembank.text.folding import folded
from itembank.text.in_words import day_month_year


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


def last_recorded(
    store: Store,
    class_name: str,
    date: datetime.date | None = None,
    period: str | None = None,
) -> Last:
    """Return what ‘undo’ would take back: what was recorded last of a class, or of one day.

    With a `period` too it is what was recorded of that lesson: nothing of another lesson of the
    day, and no moves of pupils.

    Raises:
        ItembankError: there is nothing to take back.
    """
    with store.reading() as connection:
        return _last(connection, class_name, date, period)


def _last(
    connection: Connection, class_name: str, date: datetime.date | None, period: str | None = None
) -> Last:
    of_it = [of_class(class_name)]
    if date is not None:
        of_it.append(lesson.c.date == date)
    if period is not None:
        of_it.append(lesson.c.period.in_(("", period)))  # the only lesson of a day has none
    rows = select(entry, lesson.c.date, lesson.c.period).join(lesson).where(*of_it)
    last = connection.execute(
        rows.where(active()).order_by(entry.c.made_at.desc(), entry.c.id.desc()).limit(1)
    ).first()
    of_moves = [or_(move.c.from_key == folded(class_name), move.c.to_key == folded(class_name))]
    if date is not None:
        of_moves.append(move.c.date == date)
    if period is not None:
        of_moves.append(false())
    undone = [
        connection.scalar(select(func.max(entry.c.undone_at)).join(lesson).where(*of_it)),
        connection.scalar(select(func.max(move.c.undone_at)).where(*of_moves)),
    ]
    # Taking back twice may reach further than was meant; the caller asks first.
    newest = max((at for at in undone if at is not None), default=None)
    moved = connection.execute(
        select(move)
        .where(*of_moves, move.c.undone_at.is_(None))
        .order_by(move.c.made_at.desc(), move.c.id)
    ).first()
    # Whichever came last goes first, as a person would expect of ‘undo’.
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
        day = f" on {day_month_year(date)}" if date else ""
        raise ItembankError(f"Nothing is recorded for {class_name}{day}, so nothing to undo.")
    found = connection.execute(
        select(entry.c.id, entry.c.kind)
        .join(lesson)
        .where(*of_it, entry.c.made_at == last.made_at, active())
        .order_by(entry.c.id)
    ).all()
    return Last(
        last.lesson_id,
        tuple(row.kind for row in found),
        last.date,
        last.period,
        last.made_at,
        tuple(row.id for row in found),
        newest is not None and newest > last.made_at,
    )


def undo(
    store: Store,
    class_name: str,
    date: datetime.date | None = None,
    expected: Last | None = None,
    period: str | None = None,
) -> tuple[tuple[str, ...], datetime.date, bool]:
    """Take back what was recorded last of a class, of a class on one day, or of one lesson.

    What was recorded in one go is taken back in one go. Returns the kinds of its entries (none
    for moves), its day, and whether older entries that it had replaced count again. With
    `expected`, that and nothing else is taken back.

    Raises:
        ItembankError: there is nothing to take back, something was recorded after what was
            `expected`, or the store cannot be written.
    """
    with store.writing() as connection:
        last = _last(connection, class_name, date, period)
        # Between the question and the yes a colleague may have recorded something.
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
        # What the entry had replaced counts again: it was kept for this.
        again = connection.execute(
            update(entry).where(entry.c.replaced_by.in_(last.numbers)).values(replaced_by=None)
        )
    return last.kinds, last.date, again.rowcount > 0
