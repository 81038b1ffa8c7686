"""What became of lessons and pupils: cover, lessons that fell out, pupils who moved."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"


def upgrade() -> None:
    """Add the two tables."""
    op.create_table(
        "remark",
        sa.Column(
            "entry_id",
            sa.Integer,
            sa.ForeignKey("entry.id", ondelete="CASCADE"),
            primary_key=True,
            autoincrement=False,
        ),
        sa.Column("words", sa.String(200), nullable=False),
    )
    op.create_table(
        "move",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("from_class", sa.String(12), nullable=False),
        sa.Column("from_key", sa.String(36), nullable=False),
        sa.Column("from_seat", sa.String(8), nullable=False),
        sa.Column("to_class", sa.String(12), nullable=False),
        sa.Column("to_key", sa.String(36), nullable=False),
        sa.Column("to_seat", sa.String(8), nullable=False),
        sa.Column("date", sa.Date, nullable=False),
        sa.Column("made_at", sa.DateTime, nullable=False),
        sa.Column("undone_at", sa.DateTime),
    )


def downgrade() -> None:
    """Drop them, and the entries that an older version does not know."""
    op.execute("DELETE FROM entry WHERE kind IN ('cover', 'cancelled')")
    op.drop_table("move")
    op.drop_table("remark")
