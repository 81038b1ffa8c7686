"""The tables of the results store.

A *lesson* is a class on a day; its *questions* are those of the starter it had. Each act of
recording is an *entry* and is never overwritten: a correction adds an entry and marks the one
it replaces, an undo marks an entry as taken back, so only entries with neither mark count.
Pupils appear under their seat codes and nothing else; a *move* says that the pupil of one seat
has another one from a day on, and leaves what was recorded under the old one as it was.

A change here needs a migration in ``itembank/records/migrations``; a test holds the two to one
another.
"""

from __future__ import annotations

import secrets
from typing import Any

from sqlalchemy import (
    Column,
    Date,
    DateTime,
    ForeignKey,
    Index,
    Integer,
    MetaData,
    SmallInteger,
    String,
    Table,
    Text,
    UniqueConstraint,
    and_,
    text,
)

from itembank.text.folding import folded

VERSION = "0010"
"""The newest migration: what this program reads and writes."""

LONGEST_TITLE, LONGEST_NOTE = 60, 200
"""Characters of a lesson's title, and of a note on what was unclear."""

NAMING = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s",
    "pk": "pk_%(table_name)s",
}
metadata = MetaData(naming_convention=NAMING)


def _of_entry() -> Column[int]:
    return Column(
        "entry_id",
        Integer,
        ForeignKey("entry.id", ondelete="CASCADE"),
        primary_key=True,
        autoincrement=False,
    )


def _class_key(context: Any) -> str:
    """Return the key of the class of a row that is being inserted."""
    return folded(context.get_current_parameters()["class_name"])


lesson = Table(
    "lesson",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("class_name", String(12), nullable=False),
    Column("date", Date, nullable=False),
    Column("period", String(8), nullable=False, default=""),
    Column("title", String(LONGEST_TITLE), nullable=False, default=""),
    Column("out_of", SmallInteger, nullable=False),
    # The class's name as names are compared; no database folds capitals as Python does.
    Column("class_key", String(36), nullable=False, server_default=text("''"), default=_class_key),
    UniqueConstraint("class_name", "date", "period"),
    Index(None, "class_key", "date"),
)

question = Table(
    "question",
    metadata,
    Column(
        "lesson_id",
        Integer,
        ForeignKey("lesson.id", ondelete="CASCADE"),
        primary_key=True,
        autoincrement=False,
    ),
    Column("number", SmallInteger, primary_key=True, autoincrement=False),
    Column("address", String(120), nullable=False),
    Column("topic", String(60), nullable=False),
    Column("tier", String(10), nullable=False),
    Column("marks", SmallInteger, nullable=False, default=1),
    Column("prompt", Text, nullable=False, default=""),
    Index(None, "topic"),
    Index(None, "address"),
)


def new_uid() -> str:
    """Return the name of a new entry, which no other has."""
    return secrets.token_hex(8)


entry = Table(
    "entry",
    metadata,
    Column("id", Integer, primary_key=True),
    Column(
        "lesson_id",
        Integer,
        ForeignKey("lesson.id", ondelete="CASCADE"),
        nullable=False,
        index=True,
    ),
    Column("kind", String(12), nullable=False),
    Column("made_at", DateTime, nullable=False),
    Column("replaced_by", Integer, ForeignKey("entry.id", ondelete="SET NULL")),
    Column("undone_at", DateTime),
    # Which questions it is about, as records/entries/questions_asked.py says; empty for all.
    Column("asked", String(200), nullable=False, server_default=text("''")),
    # The marks of those questions: what the scores are out of.
    Column("out_of", SmallInteger, nullable=False, server_default=text("0")),
    # Made by chance when the entry is, and the same in every copy of the store, so that two
    # copies that went their own ways know what they have in common.
    Column("uid", String(32), nullable=False, server_default=text("''"), default=new_uid),
    Index(None, "uid"),
)

band_count = Table(
    "band_count",
    metadata,
    _of_entry(),
    Column("letter", String(2), primary_key=True),
    Column("name", String(30), nullable=False),
    Column("lowest", SmallInteger, nullable=False),
    Column("highest", SmallInteger, nullable=False),
    Column("pupils", SmallInteger, nullable=False),
)

tally = Table(
    "tally",
    metadata,
    _of_entry(),
    Column("number", SmallInteger, primary_key=True, autoincrement=False),
    Column("right", SmallInteger, nullable=False),
    Column("out_of", SmallInteger, nullable=False),
)

score = Table(
    "score",
    metadata,
    _of_entry(),
    Column("seat", String(8), primary_key=True),
    Column("marks", SmallInteger, nullable=False),
    # A character a question, as records/entries/details.py says; empty where only scores were told.
    Column("answers", String(200), nullable=False, server_default=text("''")),
)

misconception = Table(
    "misconception",
    metadata,
    _of_entry(),
    Column("seat", String(8), primary_key=True),
    Column("number", SmallInteger, primary_key=True, autoincrement=False),
    # An id, or the ids of several mistakes that lead to one answer
    # (items/wrong_answers.py).
    Column("name", Text, nullable=False),
)

own_view = Table(
    "own_view",
    metadata,
    _of_entry(),
    # An empty seat stands for the whole class, where only hands were counted.
    Column("seat", String(8), primary_key=True, default=""),
    Column("level", String(10), primary_key=True),
    Column("pupils", SmallInteger, nullable=False, default=1),
)

clarity = Table(
    "clarity",
    metadata,
    _of_entry(),
    Column("unsure", SmallInteger, nullable=False),
    Column("pupils", SmallInteger),
    Column("note", String(LONGEST_NOTE), nullable=False, default=""),
)

remark = Table(
    "remark",
    metadata,
    _of_entry(),
    # Why a lesson fell out, or where what was asked instead came from.
    Column("words", String(200), nullable=False),
)

move = Table(
    "move",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("from_class", String(12), nullable=False),
    Column("from_key", String(36), nullable=False),
    Column("from_seat", String(8), nullable=False),
    # Class and seat are empty for a pupil who left.
    Column("to_class", String(12), nullable=False),
    Column("to_key", String(36), nullable=False),
    Column("to_seat", String(8), nullable=False),
    # The first day in the new seat.
    Column("date", Date, nullable=False),
    Column("made_at", DateTime, nullable=False),
    Column("undone_at", DateTime),
)

exported = Table(
    "exported",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("path", Text, nullable=False),
    # The class it is about; empty for all of them.
    Column("class_name", String(12), nullable=False, server_default=text("''")),
    Column("made_at", DateTime, nullable=False),
)

forgetting = Table(
    "forgetting",
    metadata,
    Column("id", Integer, primary_key=True),
    # Whom: all three are blank once only unused room in the store is left to be overwritten.
    Column("class_name", String(12), nullable=False, default=""),
    Column("seat", String(8), nullable=False, default=""),
    Column("before", Date),
    Column("begun_at", DateTime, nullable=False),
    # The first day of a pupil's time in a seat that was somebody else's before.
    Column("since", Date),
)
"""What was begun to be forgotten and is not done yet: gone from the other tables already."""

forgetting_file = Table(
    "forgetting_file",
    metadata,
    Column(
        "forgetting_id",
        Integer,
        ForeignKey("forgetting.id", ondelete="CASCADE"),
        primary_key=True,
        autoincrement=False,
    ),
    Column("path", Text, primary_key=True),
)
"""Files that may still hold it, as they are noted in the table of exports."""

forgotten = Table("forgotten", metadata, Column("uid", String(32), primary_key=True))
"""Names of entries that were forgotten whole, so that no copy of the store brings them back."""

version = Table("alembic_version", metadata, Column("version_num", String(32), primary_key=True))
"""Alembic's own table, here too so that a new store is made without loading alembic."""

DETAILS = (band_count, tally, score, misconception, own_view, clarity, remark)
"""The tables that hold what entries say."""


def of_class(name: str) -> Any:
    """Return the condition that a lesson is of a class, whatever its capitals."""
    return lesson.c.class_key == folded(name)


def active() -> Any:
    """Return the condition that an entry counts: neither replaced nor taken back."""
    return and_(entry.c.replaced_by.is_(None), entry.c.undone_at.is_(None))


def counted_answers() -> Any:
    """Return what to select counts by question from: entries, their lessons, tallies, questions."""
    return (
        entry.join(lesson, lesson.c.id == entry.c.lesson_id)
        .join(tally, tally.c.entry_id == entry.c.id)
        .join(
            question,
            (question.c.lesson_id == lesson.c.id) & (question.c.number == tally.c.number),
        )
    )
