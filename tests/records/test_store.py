"""The store under ill treatment: killed, full, damaged, older, newer, two at once."""

import datetime
import os
import random
import signal
import sqlite3
import threading
import time

import pytest
from sqlalchemy import create_engine, event, func, select, text
from sqlalchemy.exc import OperationalError

from itembank.errors import ItembankError
from itembank.records.entries.entries import Scores
from itembank.records.entries.recording import RecordedAlready, record
from itembank.records.entries.undoing import undo
from itembank.records.forget.forgetting import forget
from itembank.records.forget.unfinished import unfinished
from itembank.records.pupils.whom import Whom
from itembank.records.store import store_tables as tables
from itembank.records.store.migrate import upgrade
from itembank.records.store.store import _words, open_store
from itembank.records.unite.uniting import unite
from tests.depth import cases, whole

from .stores import DAY, counting, dump, facts

KILLS = cases(12, 100, 50)


@whole
def test_a_writer_killed_at_any_moment_loses_nothing_it_acknowledged(tmp_path):
    """A record is acknowledged when ``record`` has returned: from then on it must be there."""
    place = str(tmp_path / "results.sqlite3")
    acknowledged: set[int] = set()
    chance = random.Random(20261130)
    begun = 0
    for _ in range(KILLS):
        seen, begun = _write_until_killed(place, begun, chance.uniform(0.0, 0.03))
        acknowledged |= seen
    assert len(acknowledged) >= KILLS  # the kills must fall between and within records
    with open_store(place) as store, store.reading() as connection:
        assert connection.scalar(text("PRAGMA integrity_check")) == "ok"
        rows = connection.execute(
            select(tables.lesson.c.date, tables.score.c.marks)
            .join(tables.entry, tables.entry.c.lesson_id == tables.lesson.c.id)
            .join(tables.score, tables.score.c.entry_id == tables.entry.c.id)
        ).all()
        entries = connection.scalar(select(func.count()).select_from(tables.entry))
    kept = {(date - DAY).days for date, _ in rows}
    assert acknowledged <= kept
    # Nor is anything there by halves: each entry has its two scores, and only its own.
    assert len(rows) == 2 * entries
    assert all(marks == (date - DAY).days % 5 for date, marks in rows)


def _write_until_killed(place, begin, wait):
    """Let a child record lesson after lesson, kill it, and return what it acknowledged."""
    reading, writing = os.pipe()
    child = os.fork()
    if not child:
        try:
            os.close(reading)
            with open_store(place) as store:
                for number in range(begin, begin + 10_000):
                    day = DAY + datetime.timedelta(days=number)
                    record(store, facts(day), Scores({"A1": number % 5, "A2": number % 5}))
                    os.write(writing, f"{number}\n".encode())
        finally:
            os._exit(1)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        first = pipe.readline()
        time.sleep(wait)
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        seen = {int(line) for line in (first + pipe.read()).split()}
    # The one after the last acknowledged may be there or not: leave its day alone.
    return seen, max(seen) + 2


def test_a_full_disk_is_plain_and_costs_nothing(store):
    record(store, facts(), Scores({"A1": 3}))
    before = dump(store, times=True)
    limit = {"pages": None}

    @event.listens_for(store.engine, "begin")
    def _fill(connection):
        if limit["pages"]:
            connection.exec_driver_sql(f"PRAGMA max_page_count = {limit['pages']}")

    with store.reading() as connection:
        limit["pages"] = connection.scalar(text("PRAGMA page_count"))
    crowd = Scores({f"A{n}": n % 5 for n in range(2000)})
    with pytest.raises(ItembankError, match=r"disk is full. Nothing was recorded"):
        record(store, facts(DAY + datetime.timedelta(days=1)), crowd)
    assert dump(store, times=True) == before
    limit["pages"] = 100_000
    record(store, facts(DAY + datetime.timedelta(days=1)), crowd)
    assert len(dump(store)["score"]) == 2001


def test_a_disk_that_takes_no_more_bytes_is_plain(tmp_path):
    """The limit on the size of a file stands in for a disk: writing fails in the system itself."""
    resource = pytest.importorskip("resource")
    place = str(tmp_path / "results.sqlite3")
    with open_store(place) as store:
        record(store, facts(), Scores({"A1": 3}))
        before = counting(store)
    size = os.path.getsize(place)
    reading, writing = os.pipe()
    child = os.fork()
    if not child:
        try:
            signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
            resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
            with open_store(place) as store:
                crowd = Scores({f"A{n}": 1 for n in range(2000)})
                record(store, facts(DAY + datetime.timedelta(days=1)), crowd)
        except ItembankError as error:
            os.write(writing, str(error).encode())
        finally:
            os._exit(0)
    os.close(writing)
    with os.fdopen(reading) as pipe:
        said = pipe.read()
    os.waitpid(child, 0)
    assert "Nothing was recorded" in said
    assert "disk" in said
    with open_store(place) as store:
        assert counting(store) == before


def test_a_store_that_may_not_be_written_is_plain(tmp_path):
    path = tmp_path / "results.sqlite3"
    with open_store(str(path)) as store:
        record(store, facts(), Scores({"A1": 3}))
    engine = create_engine(f"sqlite:///file:{path}?mode=ro&uri=true")
    with open_store(str(path)) as store:
        store.engine.dispose()
        store.engine = engine
        with pytest.raises(ItembankError, match=r"may not be written. Nothing was recorded"):
            record(store, facts(), Scores({"A1": 4}), replace=True)
        assert [row[2] for row in dump(store)["score"]] == [3]


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="this system has no such permissions")
def test_a_file_without_permission_to_write_is_plain(tmp_path):
    """Root may write anything, so it stands aside for a user who may not."""
    path = tmp_path / "results.sqlite3"
    with open_store(str(path)) as store:
        record(store, facts(), Scores({"A1": 3}))
        undo(store, "8K")
    path.chmod(0o444)
    was = os.geteuid()
    folder = os.open(tmp_path, os.O_RDONLY)
    home = os.getcwd()
    try:
        os.chmod(tmp_path, 0o755)
        os.fchdir(folder)  # the folders above may be closed to that user
        if not was:
            os.seteuid(65534)
        with pytest.raises(ItembankError, match=r"Nothing was (recorded|changed)"):
            _use("results.sqlite3")
    finally:
        os.seteuid(was)
        os.chdir(home)
        os.close(folder)


def _use(place):
    with open_store(place) as store:
        record(store, facts(), Scores({"A1": 4}), replace=True)
        dump(store)


@pytest.mark.parametrize("where", ["head", "middle", "text"])
def test_a_damaged_file_is_plain_and_left_alone(tmp_path, where):
    path = tmp_path / "results.sqlite3"
    with open_store(str(path)) as store:
        for number in range(30):
            record(store, facts(DAY + datetime.timedelta(days=number)), Scores({"A1": 3}))
    data = bytearray(path.read_bytes())
    if where == "head":
        data[:64] = b"\0" * 64
    elif where == "middle":
        data[8192:] = os.urandom(len(data) - 8192)
    else:
        data = bytearray(b"seat,score\nA1,5\n" * 400)
    path.write_bytes(data)
    with pytest.raises(ItembankError, match="damaged"):
        _use(str(path))
    assert path.read_bytes() == bytes(data)


def test_another_programs_database_is_left_alone(tmp_path):
    path = tmp_path / "results.sqlite3"
    with sqlite3.connect(path) as other:
        other.execute("CREATE TABLE lesson (id INTEGER)")
    before = path.read_bytes()
    with pytest.raises(ItembankError, match="not a results store"):
        open_store(str(path))
    assert path.read_bytes() == before


def test_a_store_from_a_newer_version_is_refused_and_left_alone(tmp_path):
    path = tmp_path / "results.sqlite3"
    open_store(str(path)).close()
    with sqlite3.connect(path) as other:
        other.execute("UPDATE alembic_version SET version_num = '9999'")
    before = path.read_bytes()
    with pytest.raises(ItembankError, match=r"newer itembank .store version 9999"):
        open_store(str(path))
    assert path.read_bytes() == before


def test_a_missing_store_is_not_made_where_it_is_only_read(tmp_path):
    with pytest.raises(ItembankError, match="no results"):
        open_store(str(tmp_path / "results.sqlite3"), make=False)
    assert not list(tmp_path.iterdir())
    with pytest.raises(ItembankError, match="no folder"):
        open_store(str(tmp_path / "nowhere" / "results.sqlite3"))


@pytest.mark.parametrize("place", ["mysqlish://x", "postgresql+nothing://x/y", "://"])
def test_a_place_that_makes_no_sense_is_plain(place):
    with pytest.raises(ItembankError, match="ITEMBANK_STORE"):
        open_store(place)


def at_first(path):
    """Make a store as the first version made it, with a lesson, two entries and their scores."""
    engine = create_engine(f"sqlite:///{path}")
    with engine.begin() as connection:
        upgrade(connection, "0001")
        for line in (
            "INSERT INTO lesson VALUES (1, '8K', '2026-11-30', '', 'Sharing', 4)",
            "INSERT INTO question VALUES (1, 1, 'share/core/1', 'ratio.share', 'core', 1, '')",
            "INSERT INTO entry VALUES (1, 1, 'scores', '2026-11-30 09:00:00.000000', 2, NULL)",
            "INSERT INTO entry VALUES (2, 1, 'scores', '2026-11-30 10:00:00.000000', NULL, NULL)",
            "INSERT INTO score VALUES (1, 'A1', 2), (2, 'A1', 3), (2, 'A2', 4)",
        ):
            connection.exec_driver_sql(line)
    engine.dispose()


def test_an_older_store_is_brought_up_to_date_with_all_it_holds(tmp_path):
    path = tmp_path / "results.sqlite3"
    at_first(path)
    with open_store(str(path)) as store:
        found = dump(store)
        assert found["alembic_version"] == [(tables.VERSION,)]
        assert found["score"] == [(1, "A1", 2, ""), (2, "A1", 3, ""), (2, "A2", 4, "")]
        assert undo(store, "8K") == (("scores",), DAY, True)
        assert counting(store)[0][1] == "scores"


def test_tables_are_what_the_migrations_make(tmp_path):
    from alembic.autogenerate import compare_metadata
    from alembic.migration import MigrationContext

    engine = create_engine(f"sqlite:///{tmp_path / 'by-migrations.sqlite3'}")
    with engine.begin() as connection:
        upgrade(connection)
        context = MigrationContext.configure(
            connection, opts={"compare_type": True, "compare_server_default": True}
        )
        assert context.get_current_revision() == tables.VERSION
        # Alembic leaves its own table out of what it compares.
        found = compare_metadata(context, tables.metadata)
    assert [one for one in found if getattr(one[1], "name", "") != "alembic_version"] == []


def test_two_programs_at_once_wait_for_each_other(tmp_path):
    place = str(tmp_path / "results.sqlite3")
    said = _race(place, 4, 10)
    assert said == ["done"] * 40
    with open_store(place) as store:
        assert len(dump(store)["score"]) == 40


def _race(place, programs, records):
    """Let several writers record lessons of their own at once; return how each record went."""
    said, start = [], threading.Barrier(programs, timeout=60)

    def write(which):
        start.wait()
        with open_store(place) as store:
            for number in range(records):
                day = DAY + datetime.timedelta(days=number)
                record(store, facts(day, class_name=f"8{which}"), Scores({"A1": 3}))
                said.append("done")

    threads = [threading.Thread(target=write, args=(which,)) for which in range(programs)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return said


def first_of_many(place, programs=4, lessons=5):
    """Let several record the same lessons at once; return how many got in for each lesson."""
    won = [0] * lessons
    start = threading.Barrier(programs, timeout=60)

    def write():
        with open_store(place) as store:
            for number in range(lessons):
                start.wait()
                try:
                    day = DAY + datetime.timedelta(days=number)
                    record(store, facts(day), Scores({"A1": 3}))
                except RecordedAlready:
                    continue
                won[number] += 1

    threads = [threading.Thread(target=write) for _ in range(programs)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return won


def test_of_two_who_record_the_same_lesson_one_is_told(tmp_path):
    place = str(tmp_path / "results.sqlite3")
    open_store(place).close()
    assert first_of_many(place) == [1] * 5


def test_a_store_that_stays_locked_is_plain(store, tmp_path, monkeypatch):
    record(store, facts(), Scores({"A1": 3}))
    monkeypatch.setattr("itembank.records.store.store.WAIT", 0.1)
    other = sqlite3.connect(tmp_path / "results.sqlite3", isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    try:
        with pytest.raises(ItembankError, match="another program is writing"):
            _use(str(tmp_path / "results.sqlite3"))
    finally:
        other.execute("ROLLBACK")
        other.close()


def test_a_file_is_written_to_the_disk_and_overwrites_what_it_deletes(tmp_path):
    """A killed program does not show a lost write, as the system still has it: so ask SQLite."""
    with (
        open_store(str(tmp_path / "results.sqlite3")) as store,
        store.writing() as connection,
    ):
        names = ("synchronous", "secure_delete", "foreign_keys")
        set_to = {name: connection.exec_driver_sql(f"PRAGMA {name}").scalar() for name in names}
    # 2 is FULL (SQLite documentation, "PRAGMA Statements").
    assert set_to == {"synchronous": 2, "secure_delete": 1, "foreign_keys": 1}


def test_a_forgetting_and_a_union_killed_at_any_moment_are_whole_or_not_at_all(tmp_path):
    """A few kills each: a thousand were tried by hand when this was written."""
    mine, other = tmp_path / "results.sqlite3", tmp_path / "other.db"
    for path, days in ((mine, range(8)), (other, range(8, 24))):
        with open_store(str(path)) as store:
            for number in days:
                day = DAY + datetime.timedelta(days=number)
                record(store, facts(day), Scores({f"A{n}": n % 5 for n in range(1, 31)}))
    before = mine.read_bytes()
    chance = random.Random(20261130)
    acts = {
        240 - 8: lambda store: forget(store, Whom("8K", "A3")),
        3 * 240: lambda store: unite(store, other),
    }
    for rows, act in acts.items():
        for _ in range(6):
            mine.write_bytes(before)
            mine.with_name("results.sqlite3-journal").unlink(missing_ok=True)
            child = os.fork()
            if not child:
                try:
                    with open_store(str(mine)) as store:
                        act(store)
                finally:
                    os._exit(0)
            time.sleep(chance.uniform(0.0, 0.15))
            os.kill(child, signal.SIGKILL)
            os.waitpid(child, 0)
            with open_store(str(mine)) as store:
                assert len(dump(store)["score"]) in (240, rows)
                act(store)
                assert len(dump(store)["score"]) == rows
                assert not unfinished(store)


def test_what_a_server_forbids_is_no_matter_of_a_folder():
    refused = OperationalError("", None, Exception('permission denied for table "lesson"'))
    told = _words(refused, "postgresql://results.example/maths", "Nothing was recorded.")
    assert "folder" not in told
    assert "server" in told
    assert "folder" in _words(refused, "results.sqlite3", "Nothing was recorded.")
