"""Lessons, their questions and what was recorded of them."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def _of_entry() -> sa.Column[int]:
    return sa.Column(
        "entry_id",
        sa.Integer,
        sa.ForeignKey("entry.id", ondelete="CASCADE"),
        primary_key=True,
        autoincrement=False,
    )


def upgrade() -> None:
    """Make the first tables."""
    op.create_table(
        "lesson",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("class_name", sa.String(12), nullable=False),
        sa.Column("date", sa.Date, nullable=False),
        sa.Column("period", sa.String(8), nullable=False),
        sa.Column("title", sa.String(60), nullable=False),
        sa.Column("out_of", sa.SmallInteger, nullable=False),
        sa.UniqueConstraint(
            "class_name", "date", "period", name="uq_lesson_class_name_date_period"
        ),
    )
    op.create_table(
        "question",
        sa.Column(
            "lesson_id",
            sa.Integer,
            sa.ForeignKey("lesson.id", ondelete="CASCADE"),
            primary_key=True,
            autoincrement=False,
        ),
        sa.Column("number", sa.SmallInteger, primary_key=True, autoincrement=False),
        sa.Column("address", sa.String(120), nullable=False),
        sa.Column("topic", sa.String(60), nullable=False),
        sa.Column("tier", sa.String(10), nullable=False),
        sa.Column("marks", sa.SmallInteger, nullable=False),
        sa.Column("prompt", sa.Text, nullable=False),
    )
    op.create_index("ix_question_topic", "question", ["topic"])
    op.create_index("ix_question_address", "question", ["address"])
    op.create_table(
        "entry",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column(
            "lesson_id",
            sa.Integer,
            sa.ForeignKey("lesson.id", ondelete="CASCADE"),
            nullable=False,
        ),
        sa.Column("kind", sa.String(12), nullable=False),
        sa.Column("made_at", sa.DateTime, nullable=False),
        sa.Column("replaced_by", sa.Integer, sa.ForeignKey("entry.id", ondelete="SET NULL")),
        sa.Column("undone_at", sa.DateTime),
    )
    op.create_index("ix_entry_lesson_id", "entry", ["lesson_id"])
    op.create_table(
        "band_count",
        _of_entry(),
        sa.Column("letter", sa.String(2), primary_key=True),
        sa.Column("name", sa.String(30), nullable=False),
        sa.Column("lowest", sa.SmallInteger, nullable=False),
        sa.Column("highest", sa.SmallInteger, nullable=False),
        sa.Column("pupils", sa.SmallInteger, nullable=False),
    )
    op.create_table(
        "tally",
        _of_entry(),
        sa.Column("number", sa.SmallInteger, primary_key=True, autoincrement=False),
        sa.Column("right", sa.SmallInteger, nullable=False),
        sa.Column("out_of", sa.SmallInteger, nullable=False),
    )
    op.create_table(
        "score",
        _of_entry(),
        sa.Column("seat", sa.String(8), primary_key=True),
        sa.Column("marks", sa.SmallInteger, nullable=False),
    )
    op.create_table(
        "mark",
        _of_entry(),
        sa.Column("seat", sa.String(8), primary_key=True),
        sa.Column("number", sa.SmallInteger, primary_key=True, autoincrement=False),
        sa.Column("right", sa.SmallInteger, nullable=False),
        sa.Column("misconception", sa.String(60), nullable=False),
    )


def downgrade() -> None:
    """Drop them all."""
    for name in ("mark", "score", "tally", "band_count", "entry", "question", "lesson"):
        op.drop_table(name)
