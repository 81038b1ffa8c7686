"""Brings the tables of an older results store up to date, by alembic."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sqlalchemy import Connection

if TYPE_CHECKING:
    from alembic.config import Config


def upgrade(connection: Connection, to: str = "head") -> None:
    """Run the migrations that a store has not seen, within the connection's transaction."""
    from alembic import command

    command.upgrade(_config(connection), to)


def downgrade(connection: Connection, to: str) -> None:
    """Take migrations back, down to the one named, as an older itembank wants its store."""
    from alembic import command

    command.downgrade(_config(connection), to)


def _config(connection: Connection) -> Config:
    from alembic.config import Config

    config = Config()
    # Named as a package: a path would be read for % and other signs of its own.
    config.set_main_option("script_location", "itembank.records:migrations")
    config.attributes["connection"] = connection
    return config
