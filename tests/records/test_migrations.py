"""Migrations keep what was recorded, upwards and down again, in a file and on a server."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import create_engine

from itembank.records.entries.details import (
    answers_of,
    misconceptions_of,
    pack_answers,
    unpack_answers,
)
from itembank.records.entries.entries import Answers
from itembank.records.entries.recording import record
from itembank.records.entries.undoing import undo
from itembank.records.store import store_tables as tables
from itembank.records.store.migrate import downgrade, upgrade
from itembank.records.store.store import open_store
from tests.depth import cases, whole

from .stores import DAY, counting, dump, facts

SEATS = st.sampled_from(["A1", "A2", "B1", "C6"])
ANSWERS = st.dictionaries(
    SEATS, st.dictionaries(st.integers(1, 8), st.booleans(), min_size=1), min_size=1
)


@given(answers=st.dictionaries(st.integers(1, 12), st.booleans()))
def test_a_seats_answers_are_read_as_they_were_written(answers):
    text = pack_answers(answers, 12)
    assert len(text) == 12
    assert unpack_answers(text) == answers


@whole
@given(right=ANSWERS, where=st.data())
@settings(
    max_examples=cases(6, 15, 15), deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
def test_answers_survive_migrations_down_and_up_again(tmp_path_factory, right, where):
    wrong = [(seat, n) for seat, row in right.items() for n, good in row.items() if not good]
    shown = {one: "ratio.adds" for one in wrong if where.draw(st.booleans())}
    path = tmp_path_factory.mktemp("store") / "results.sqlite3"
    with open_store(str(path)) as store:
        number = record(store, facts(questions=8), Answers(right, shown))
        before = dump(store)
        with store.writing() as connection:
            downgrade(connection, "0002")
            rows = connection.exec_driver_sql(
                'SELECT seat, number, "right", misconception FROM mark ORDER BY seat, number'
            ).all()
        assert [tuple(row) for row in rows] == [
            (seat, n, int(right[seat][n]), shown.get((seat, n), ""))
            for seat in sorted(right)
            for n in sorted(right[seat])
        ]
    with open_store(str(path)) as store:
        assert dump(store) == before
        with store.reading() as connection:
            assert answers_of(connection, number) == right
            assert misconceptions_of(connection, number) == shown


def test_all_the_way_down_and_up_leaves_the_tables_of_a_new_store(tmp_path):
    engine = create_engine(f"sqlite:///{tmp_path / 'results.sqlite3'}")
    with engine.begin() as connection:
        upgrade(connection)
        downgrade(connection, "base")
        left = connection.exec_driver_sql("SELECT name FROM sqlite_master WHERE type = 'table'")
        assert left.scalars().all() == ["alembic_version"]
        upgrade(connection)
    with open_store(str(tmp_path / "results.sqlite3")) as store:
        record(store, facts(), Answers({"A1": {1: True}}, {}))
        assert counting(store)


@pytest.fixture
def before_third(tmp_path):
    """Return a store of the second version, with a row for each answer, one of them corrected."""
    path = tmp_path / "results.sqlite3"
    engine = create_engine(f"sqlite:///{path}")
    with engine.begin() as connection:
        upgrade(connection, "0002")
        for line in (
            "INSERT INTO lesson VALUES (1, '8K', '2026-11-30', '', 'Sharing', 3)",
            "INSERT INTO question VALUES (1, 1, 'share/core/1', 'ratio.share', 'core', 1, '')",
            "INSERT INTO entry VALUES (1, 1, 'answers', '2026-11-30 09:00:00.000000', 2, NULL)",
            "INSERT INTO entry VALUES (2, 1, 'answers', '2026-11-30 10:00:00.000000', NULL, NULL)",
            "INSERT INTO score VALUES (1, 'A1', 2), (2, 'A1', 1), (2, 'A2', 0)",
            "INSERT INTO tally VALUES (2, 1, 1, 2), (2, 2, 0, 1), (2, 3, 0, 1)",
            "INSERT INTO mark VALUES (1, 'A1', 1, 1, ''), (1, 'A1', 2, 1, ''),"
            " (2, 'A1', 1, 1, ''), (2, 'A1', 2, 0, 'ratio.adds'), (2, 'A2', 1, 0, ''),"
            " (2, 'A2', 3, 0, 'ratio.halves')",
        ):
            connection.exec_driver_sql(line)
    engine.dispose()
    return path


def test_a_store_with_a_row_for_each_answer_is_brought_up_to_date(before_third):
    with open_store(str(before_third)) as store:
        found = dump(store)
        assert found["alembic_version"] == [(tables.VERSION,)]
        assert found["score"] == [(1, "A1", 2, "11"), (2, "A1", 1, "10-"), (2, "A2", 0, "0-0")]
        assert found["misconception"] == [(2, "A1", 2, "ratio.adds"), (2, "A2", 3, "ratio.halves")]
        assert undo(store, "8K")[1] == DAY
        with store.reading() as connection:
            assert answers_of(connection, 1) == {"A1": {1: True, 2: True}}
