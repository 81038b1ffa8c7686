"""Names of misconceptions of any length.

Several mistakes that lead to one answer are kept under an id that names them all, and nothing
limits the ids that a bank's authors choose.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0010"
down_revision = "0009"


def upgrade() -> None:
    """Widen the column. A batch is safe here: no table refers to this one."""
    with op.batch_alter_table("misconception") as misconception:
        misconception.alter_column("name", type_=sa.Text, existing_nullable=False)


def downgrade() -> None:
    """Narrow it again."""
    with op.batch_alter_table("misconception") as misconception:
        misconception.alter_column("name", type_=sa.String(60), existing_nullable=False)
