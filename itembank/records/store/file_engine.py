"""SQLAlchemy's engines on SQLite files, which share what has been worked out for one of them.

The desk opens the store for each page. An engine of its own would compile every statement again
each time, and for a new store the tables too, which takes longer than SQLite takes to do it all.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from sqlalchemy import Dialect, Engine, QueuePool, create_engine
from sqlalchemy.engine import URL
from sqlalchemy.schema import CreateIndex, CreateTable
from sqlalchemy.sql.compiler import Compiled
from sqlalchemy.sql.ddl import DDLElement
from sqlalchemy.util import LRUCache

from itembank.records.store import store_tables as tables

_COMPILED: LRUCache[Any, Compiled] = LRUCache(1_000)


def file_engine(url: URL, wait: int) -> Engine:
    """Return an engine on a file, which waits so many seconds for other programs.

    >>> file_engine(URL.create("sqlite", database="results.sqlite3"), 10).dialect.name
    'sqlite'
    """
    dialect = _dialect()
    words, options = dialect.create_connect_args(url)
    pool = QueuePool(lambda: dialect.connect(*words, **{**options, "timeout": wait}))
    return Engine(pool, dialect, url, execution_options={"compiled_cache": _COMPILED})


@cache
def _dialect() -> Dialect:
    """Return the dialect of all files, by which SQLAlchemy keeps what it has compiled.

    It has met SQLite once, and knows what this version can do.
    """
    engine = create_engine("sqlite://")
    with engine.connect():
        return engine.dialect


@cache
def tables_in_sqlite() -> tuple[str, ...]:
    """Return the statements that make the tables of a new store.

    >>> tables_in_sqlite()[0].split()[:2]
    ['CREATE', 'TABLE']
    """
    made: list[DDLElement] = []
    for table in tables.metadata.sorted_tables:
        made.append(CreateTable(table))
        made += [CreateIndex(index) for index in sorted(table.indexes, key=lambda i: str(i.name))]
    return tuple(str(statement.compile(dialect=_dialect())) for statement in made)
