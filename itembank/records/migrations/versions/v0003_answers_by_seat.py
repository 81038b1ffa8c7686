"""Answers by seat as one text a seat, where there was a row for each answer.

What was two million rows for a school's five years is a quarter of a million; misconceptions,
which few answers show, have a table of their own. Of an export it is noted whose results it holds.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"

PART = 10_000
"""Rows that are written at a time."""


def _of_seat() -> tuple[sa.Column[int], sa.Column[str], sa.Column[int]]:
    return (
        sa.Column(
            "entry_id",
            sa.Integer,
            sa.ForeignKey("entry.id", ondelete="CASCADE"),
            primary_key=True,
            autoincrement=False,
        ),
        sa.Column("seat", sa.String(8), primary_key=True),
        sa.Column("number", sa.SmallInteger, primary_key=True, autoincrement=False),
    )


def upgrade() -> None:
    """Write each seat's answers into its score; keep the misconceptions; drop the rest."""
    op.add_column(
        "score", sa.Column("answers", sa.String(200), nullable=False, server_default=sa.text("''"))
    )
    none = sa.text("''")
    op.add_column(
        "exported", sa.Column("class_name", sa.String(12), nullable=False, server_default=none)
    )
    op.create_table("misconception", *_of_seat(), sa.Column("name", sa.String(60), nullable=False))
    connection = op.get_bind()
    connection.exec_driver_sql(
        "INSERT INTO misconception (entry_id, seat, number, name) "
        "SELECT entry_id, seat, number, misconception FROM mark WHERE misconception <> ''"
    )
    rows = connection.exec_driver_sql(
        'SELECT entry_id, seat, number, "right" FROM mark ORDER BY entry_id, seat, number'
    ).all()
    change = sa.text(
        "UPDATE score SET answers = :answers WHERE entry_id = :entry_id AND seat = :seat"
    )
    _in_parts(change, _texts(rows))
    op.drop_table("mark")


def _texts(rows: Sequence[Any]) -> Iterator[dict[str, object]]:
    """Yield the text of each seat; all texts of an entry have the same length."""
    for entry_id, of_entry in groupby(rows, key=lambda row: row[0]):
        marks = list(of_entry)
        last = max(row[2] for row in marks)
        for seat, of_seat in groupby(marks, key=lambda row: row[1]):
            signs = ["-"] * last
            for row in of_seat:
                signs[row[2] - 1] = "1" if row[3] else "0"
            yield {"entry_id": entry_id, "seat": seat, "answers": "".join(signs)}


def downgrade() -> None:
    """Write a row for each answer again."""
    op.create_table(
        "mark",
        *_of_seat(),
        sa.Column("right", sa.SmallInteger, nullable=False),
        sa.Column("misconception", sa.String(60), nullable=False),
    )
    connection = op.get_bind()
    shown = {
        (row[0], row[1], row[2]): row[3]
        for row in connection.exec_driver_sql(
            "SELECT entry_id, seat, number, name FROM misconception"
        )
    }
    rows = connection.exec_driver_sql(
        "SELECT entry_id, seat, answers FROM score WHERE answers <> ''"
    ).all()
    add = sa.text(
        'INSERT INTO mark (entry_id, seat, number, "right", misconception) '
        "VALUES (:entry_id, :seat, :number, :right, :misconception)"
    )
    _in_parts(
        add,
        (
            {
                "entry_id": entry_id,
                "seat": seat,
                "number": number,
                "right": int(sign == "1"),
                "misconception": shown.get((entry_id, seat, number), ""),
            }
            for entry_id, seat, answers in rows
            for number, sign in enumerate(answers, 1)
            if sign != "-"
        ),
    )
    op.drop_table("misconception")
    with op.batch_alter_table("exported") as exported:
        exported.drop_column("class_name")
    with op.batch_alter_table("score") as score:
        score.drop_column("answers")


def _in_parts(statement: sa.TextClause, values: Iterator[dict[str, object]]) -> None:
    connection = op.get_bind()
    part: list[dict[str, object]] = []
    for value in values:
        part.append(value)
        if len(part) == PART:
            connection.execute(statement, part)
            part = []
    if part:
        connection.execute(statement, part)
