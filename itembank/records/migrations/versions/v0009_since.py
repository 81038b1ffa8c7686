"""From which day a seat that is being forgotten was the pupil's: another may have had it before."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0009"
down_revision = "0008"


def upgrade() -> None:
    """Add the column."""
    op.add_column("forgetting", sa.Column("since", sa.Date))


def downgrade() -> None:
    """Drop it."""
    op.drop_column("forgetting", "since")
