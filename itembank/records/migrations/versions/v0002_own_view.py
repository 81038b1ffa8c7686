"""Pupils' own view, the clarity check, and which exports were made, so that forget finds them."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Add the three tables."""
    op.create_table(
        "own_view",
        sa.Column(
            "entry_id",
            sa.Integer,
            sa.ForeignKey("entry.id", ondelete="CASCADE"),
            primary_key=True,
            autoincrement=False,
        ),
        sa.Column("seat", sa.String(8), primary_key=True),
        sa.Column("level", sa.String(10), primary_key=True),
        sa.Column("pupils", sa.SmallInteger, nullable=False),
    )
    op.create_table(
        "clarity",
        sa.Column(
            "entry_id",
            sa.Integer,
            sa.ForeignKey("entry.id", ondelete="CASCADE"),
            primary_key=True,
            autoincrement=False,
        ),
        sa.Column("unsure", sa.SmallInteger, nullable=False),
        sa.Column("pupils", sa.SmallInteger),
        sa.Column("note", sa.String(200), nullable=False),
    )
    op.create_table(
        "exported",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("path", sa.Text, nullable=False),
        sa.Column("made_at", sa.DateTime, nullable=False),
    )


def downgrade() -> None:
    """Drop the three tables."""
    for name in ("exported", "clarity", "own_view"):
        op.drop_table(name)
