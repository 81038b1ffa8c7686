"""Brings the tables of an older results store up to date, by alembic."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import Connection


def upgrade(connection: Connection, to: str = "head") -> None:
    """Run the migrations that a store has not seen, within the connection's transaction."""
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations"))
    config.attributes["connection"] = connection
    command.upgrade(config, to)
