"""The name of a lesson's class in the form in which it is compared.

Databases fold the capitals of English only, so ‘8É’ was recorded and then not found.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

from itembank.text.folding import folded

revision = "0005"
down_revision = "0003"

INDEX = "ix_lesson_class_key_date"


def upgrade() -> None:
    """Fill the column from the names there are."""
    op.add_column(
        "lesson",
        sa.Column("class_key", sa.String(36), nullable=False, server_default=sa.text("''")),
    )
    connection = op.get_bind()
    change = sa.text("UPDATE lesson SET class_key = :key WHERE class_name = :name")
    for name in (
        connection.exec_driver_sql("SELECT DISTINCT class_name FROM lesson").scalars().all()
    ):
        connection.execute(change, {"key": folded(name), "name": name})
    op.create_index(INDEX, "lesson", ["class_key", "date"])


def downgrade() -> None:
    """Drop the column."""
    op.drop_index(INDEX, "lesson")
    # Not by a batch, which writes the table anew: dropping the old one would take every entry
    # of its lessons with it.
    op.drop_column("lesson", "class_key")
