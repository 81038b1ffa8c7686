"""What two copies of a store need to know each other by, and what a forgetting has left to do.

The entries of an older store are named by what they are, so that two copies of it, each brought
up to date on its own, give an entry the same name. Exports are noted from the department's
folder on, so that they are found when it has moved.
"""

from __future__ import annotations

import hashlib
from collections import Counter
from pathlib import Path

import sqlalchemy as sa
from alembic import op

from itembank.records.store.store_place import noted

revision = "0008"
down_revision = "0007"


def upgrade() -> None:
    """Add the column and the tables, and name what there is."""
    op.add_column(
        "entry", sa.Column("uid", sa.String(32), nullable=False, server_default=sa.text("''"))
    )
    op.create_table(
        "forgetting",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("class_name", sa.String(12), nullable=False),
        sa.Column("seat", sa.String(8), nullable=False),
        sa.Column("before", sa.Date),
        sa.Column("begun_at", sa.DateTime, nullable=False),
    )
    op.create_table(
        "forgetting_file",
        sa.Column(
            "forgetting_id",
            sa.Integer,
            sa.ForeignKey("forgetting.id", ondelete="CASCADE"),
            primary_key=True,
            autoincrement=False,
        ),
        sa.Column("path", sa.Text, primary_key=True),
    )
    op.create_table("forgotten", sa.Column("uid", sa.String(32), primary_key=True))
    _name_entries()
    op.create_index("ix_entry_uid", "entry", ["uid"])
    _note_exports()


def _name_entries() -> None:
    lesson = sa.table(
        "lesson",
        sa.column("id", sa.Integer),
        sa.column("class_key", sa.String),
        sa.column("date", sa.Date),
        sa.column("period", sa.String),
    )
    entry = sa.table(
        "entry",
        sa.column("id", sa.Integer),
        sa.column("lesson_id", sa.Integer),
        sa.column("kind", sa.String),
        sa.column("made_at", sa.DateTime),
        sa.column("uid", sa.String),
    )
    connection = op.get_bind()
    rows = connection.execute(
        sa.select(
            entry.c.id,
            lesson.c.class_key,
            lesson.c.date,
            lesson.c.period,
            entry.c.kind,
            entry.c.made_at,
        )
        .join_from(entry, lesson, entry.c.lesson_id == lesson.c.id)
        .order_by(entry.c.id)
    ).all()
    seen: Counter[str] = Counter()
    values = []
    for number, key, date, period, kind, made_at in rows:
        what = "|".join((key, date.isoformat(), period, kind, made_at.isoformat()))
        seen[what] += 1
        uid = hashlib.sha256(f"{what}|{seen[what]}".encode()).hexdigest()[:16]
        values.append({"number": number, "new": uid})
    if values:
        connection.execute(
            sa.update(entry)
            .where(entry.c.id == sa.bindparam("number"))
            .values(uid=sa.bindparam("new")),
            values,
        )


def _note_exports() -> None:
    """Note paths within the department's folder from there; a server knows no such folder."""
    connection = op.get_bind()
    file = connection.engine.url.database
    if connection.dialect.name != "sqlite" or not file or file == ":memory:":
        return
    exported = sa.table("exported", sa.column("id", sa.Integer), sa.column("path", sa.Text))
    for number, path in connection.execute(sa.select(exported.c.id, exported.c.path)).all():
        note = noted(Path(path), Path(file).parent)
        connection.execute(sa.update(exported).where(exported.c.id == number).values(path=note))


def downgrade() -> None:
    """Drop them; an older itembank knows whole paths only, and would not find exports."""
    op.drop_index("ix_entry_uid", "entry")
    op.drop_column("entry", "uid")
    for name in ("forgotten", "forgetting_file", "forgetting"):
        op.drop_table(name)
