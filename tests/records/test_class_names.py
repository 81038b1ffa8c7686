"""A class is found again whatever capitals its name has, in English or not, on both databases."""

import datetime

import pytest
from sqlalchemy import create_engine, func, select

from itembank.records.entries.entries import OwnViews, Scores
from itembank.records.entries.recording import RecordedAlready, record
from itembank.records.entries.undoing import undo
from itembank.records.exporting import export_all
from itembank.records.forget.forgetting import count_rows, forget
from itembank.records.pupils.whom import Whom
from itembank.records.reports.class_report import department_report
from itembank.records.results.lessons import lessons
from itembank.records.results.results import class_history, used_addresses
from itembank.records.results.scope import Scope
from itembank.records.store import store_tables as tables
from itembank.records.store.migrate import upgrade
from itembank.records.store.store import open_store
from tests.depth import left

from .stores import DAY, dump, facts

NEXT = DAY + datetime.timedelta(days=1)
WRITTEN = [("8É", "8é"), ("8É", "8E\u0301"), ("9ß", "9SS"), ("7K", "7k"), ("10Ω", "10ω")]


@pytest.fixture(params=["file", "server"])
def either(request):
    """Give a store in a file, and one on a server."""
    return request.getfixturevalue({"file": "store", "server": "shared"}[request.param])


@pytest.mark.parametrize(
    ("either", "name", "other"),
    [
        *(("file", *names) for names in WRITTEN),
        *(("server", *names) for names in WRITTEN[:2]),
        *(left("server", *names) for names in WRITTEN[2:]),
    ],
    indirect=["either"],
)
def test_what_was_recorded_is_found_and_forgotten(either, tmp_path, name, other):
    store = either
    record(store, facts(class_name=name), Scores({"A1": 3, "A2": 1}))
    record(store, facts(class_name=name), OwnViews({"A1": "sure"}, {}))
    record(store, facts(NEXT, class_name=name), Scores({"A1": 2}))
    with pytest.raises(RecordedAlready):
        record(store, facts(class_name=other), Scores({"A1": 4}))
    export_all(store, tmp_path / "out")
    with store.reading() as connection:
        assert len(lessons(connection, other)) == 2
        assert class_history(connection, other).seen
        assert used_addresses(connection, other, DAY)
        lines = department_report(connection, Scope(class_name=other)).classes
        assert [(line.class_name, line.lessons) for line in lines] == [(name, 2)]
    assert undo(store, other)[1] == NEXT
    assert count_rows(store, Whom(other, "a1")) == 3
    forget(store, Whom(other, "a1"))
    assert [row[1:3] for row in dump(store)["score"]] == [("A2", 1)]
    assert dump(store)["own_view"] == []
    forget(store, Whom(other))
    assert not dump(store)["lesson"]
    for path in (tmp_path / "out").iterdir():
        assert len(path.read_text().splitlines()) == 1, path


def test_one_class_written_in_two_ways_is_one_line(either):
    record(either, facts(class_name="8É"), Scores({"A1": 3}))
    record(either, facts(NEXT, class_name="8é"), Scores({"A1": 3}))
    with either.reading() as connection:
        lines = department_report(connection, Scope()).classes
    assert [(line.class_name, line.lessons) for line in lines] == [("8É", 2)]


def test_an_older_store_gets_its_keys(tmp_path):
    path = tmp_path / "results.sqlite3"
    engine = create_engine(f"sqlite:///{path}")
    with engine.begin() as connection:
        upgrade(connection, "0003")
        connection.exec_driver_sql(
            "INSERT INTO lesson VALUES (1, '8É', '2026-11-30', '', 'Sharing', 4),"
            " (2, '7M', '2026-11-30', '', 'Sharing', 4)"
        )
    engine.dispose()
    with open_store(str(path)) as store, store.reading() as connection:
        assert [lesson.class_name for lesson in lessons(connection, "8é")] == ["8É"]
        keys = connection.scalar(select(func.count(tables.lesson.c.class_key.distinct())))
        assert keys == 2
