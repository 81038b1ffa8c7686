"""A store that a department shares, on a real PostgreSQL server that these tests start."""

import datetime

import pytest

from itembank.errors import ItembankError
from itembank.items.item import Misconception
from itembank.items.wrong_answers import either
from itembank.records.entries import recording
from itembank.records.entries.entries import Answers, OwnViews, Scores
from itembank.records.entries.recording import RecordedAlready, record
from itembank.records.entries.undoing import undo
from itembank.records.exporting import export_all
from itembank.records.forget.forgetting import forget
from itembank.records.pupils.whom import Whom
from itembank.records.results.correct import correct
from itembank.records.results.results import class_history
from itembank.records.store.migrate import upgrade
from itembank.records.store.store import open_store

from .stores import DAY, counting, dump, facts
from .test_store import first_of_many

NEXT = DAY + datetime.timedelta(days=1)
RIGHT = {"A1": {1: True, 2: False, 3: True, 4: True}, "A2": {1: False, 2: False, 3: True, 4: True}}


def play(store, tmp_path):
    """Do everything once and return what the store holds then."""
    record(store, facts(), Scores({"A1": 3}))
    with pytest.raises(RecordedAlready):
        record(store, facts(), Scores({"A1": 4}))
    record(store, facts(), Answers(RIGHT, {("A2", 1): "ratio.adds"}), replace=True)
    record(store, facts(), OwnViews({"A1": "sure", "A2": "sure"}, {}))
    correct(store, "8k", DAY, [("A2", 2, True)])
    record(store, facts(NEXT), Answers(RIGHT, {}))
    undo(store, "8K")
    export_all(store, tmp_path)
    forget(store, Whom("8K", "A1"))
    with store.reading() as connection:
        assert class_history(connection, "8K").seen["ratio.share"][0].out_of == 4
    return {name: rows for name, rows in dump(store).items() if name != "exported"}


def test_a_shared_store_does_all_that_a_file_does(shared, store, tmp_path):
    on_server = play(shared, tmp_path / "server")
    assert on_server == play(store, tmp_path / "file")
    assert on_server["misconception"]
    for path in (tmp_path / "server").iterdir():
        assert path.read_bytes().count(b"A1") == 0
        if path.name != "entries.csv":
            assert path.read_bytes() == (tmp_path / "file" / path.name).read_bytes()


def test_the_id_of_a_misconception_may_be_long(shared):
    name = either(
        *(Misconception(f"number.{word * 20}", "adds", "Is it?") for word in ("ab-c", "de-f"))
    ).id
    record(shared, facts(), Answers(RIGHT, {("A2", 1): name}))
    assert [row[-1] for row in dump(shared)["misconception"]] == [name]


def test_migrations_make_the_same_tables_there(shared):
    from alembic.autogenerate import compare_metadata
    from alembic.migration import MigrationContext

    from itembank.records.store import store_tables as tables

    with shared.writing() as connection:
        tables.metadata.drop_all(connection)
        upgrade(connection)
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        found = compare_metadata(context, tables.metadata)
    assert [one for one in found if getattr(one[1], "name", "") != "alembic_version"] == []


def test_of_two_who_record_the_same_lesson_one_is_told(shared, server):
    assert first_of_many(server.url) == [1] * 5


def test_two_who_begin_the_store_at_once(shared, server):
    from itembank.records.store import store_tables as tables

    with shared.writing() as connection:
        tables.metadata.drop_all(connection)
    assert first_of_many(server.url) == [1] * 5


def test_a_server_lost_in_the_middle_leaves_nothing_by_halves(shared, server, monkeypatch):
    record(shared, facts(), Scores({"A1": 3}))
    before = dump(shared, times=True)
    write = recording.write_details

    def lost(*arguments):
        write(*arguments)
        server.stop()

    try:
        with monkeypatch.context() as patch:
            patch.setattr(recording, "write_details", lost)
            with pytest.raises(ItembankError, match=r"server at .* cannot be reached"):
                record(shared, facts(NEXT), Scores({"A1": 4}))
        with pytest.raises(ItembankError, match="Check the network and the server"):
            open_store(server.url)
    finally:
        server.start()
    assert dump(shared, times=True) == before
    record(shared, facts(NEXT), Scores({"A1": 4}))
    assert len(counting(shared)) == 2


def test_a_writer_does_not_wait_for_ever(shared, server, monkeypatch):
    monkeypatch.setattr("itembank.records.store.store.WAIT", 1)
    record(shared, facts(), Scores({"A1": 3}))
    before = dump(shared, times=True)
    with (
        open_store(server.url) as other,
        shared.writing(),
        pytest.raises(ItembankError, match=r"is writing.* 1 seconds. Nothing was rec"),
    ):
        record(other, facts(NEXT), Scores({"A1": 4}))
    assert dump(shared, times=True) == before


def test_a_password_is_never_said(server):
    url = server.url.replace("itembank@", "itembank:secret@").replace("/postgres?", "/absent?")
    with pytest.raises(ItembankError) as error:
        open_store(url)
    assert "secret" not in str(error.value)
