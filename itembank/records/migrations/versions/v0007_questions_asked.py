"""Which questions of its starter an entry is about, and out of how many marks.

A lesson can stop at question 5, and the next record of it can be about all eight: both stay true
of their own. Answers and counts by question show which questions they are about; scores and hands
that were recorded before are taken to be about all of them, as they were read then.
"""

from __future__ import annotations

from collections import defaultdict

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"


def upgrade() -> None:
    """Add the two columns, and fill them from the lesson and from what was counted."""
    op.add_column(
        "entry", sa.Column("asked", sa.String(200), nullable=False, server_default=sa.text("''"))
    )
    op.add_column(
        "entry", sa.Column("out_of", sa.SmallInteger, nullable=False, server_default=sa.text("0"))
    )
    connection = op.get_bind()
    connection.exec_driver_sql(
        "UPDATE entry SET out_of = (SELECT out_of FROM lesson WHERE lesson.id = entry.lesson_id)"
    )
    # The questions of the starters of which some question has no count.
    rows = connection.exec_driver_sql(
        "SELECT entry.id, question.number, question.marks, tally.number FROM entry "
        "JOIN question ON question.lesson_id = entry.lesson_id "
        "LEFT JOIN tally ON tally.entry_id = entry.id AND tally.number = question.number "
        "WHERE entry.id IN (SELECT tally.entry_id FROM tally JOIN entry AS counted "
        "ON counted.id = tally.entry_id GROUP BY tally.entry_id, counted.lesson_id HAVING "
        "COUNT(*) < (SELECT COUNT(*) FROM question WHERE question.lesson_id = counted.lesson_id)) "
        "ORDER BY entry.id, question.number"
    )
    marks: dict[int, dict[int, int]] = defaultdict(dict)
    for entry, number, worth, counted in rows:
        marks[entry][number] = worth if counted is not None else 0
    change = sa.text("UPDATE entry SET asked = :asked, out_of = :out_of WHERE id = :id")
    found = [
        {
            "id": entry,
            "asked": "".join("1" if of.get(n) else "-" for n in range(1, max(of) + 1)),
            "out_of": sum(of.values()),
        }
        for entry, of in marks.items()
    ]
    if found:
        connection.execute(change, found)


def downgrade() -> None:
    """Drop them: an older itembank takes scores and hands to be about all questions."""
    # Not in a batch: that makes the table anew and drops the old one, and on SQLite all that was
    # recorded would go with the entries it belongs to.
    for name in ("out_of", "asked"):
        op.get_bind().exec_driver_sql(f"ALTER TABLE entry DROP COLUMN {name}")
