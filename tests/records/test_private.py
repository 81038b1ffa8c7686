"""Files with results are for their owner and for the group a folder is shared with; no others."""

import os
import stat

import pytest

from itembank.files.private import write_private
from itembank.records.entries.entries import Scores
from itembank.records.entries.recording import record
from itembank.records.exporting import export_all
from itembank.records.forget.forgetting import forget
from itembank.records.pupils.whom import Whom
from itembank.records.store.migrate import downgrade
from itembank.records.store.store import open_store

from .stores import facts

pytestmark = pytest.mark.skipif(os.name != "posix", reason="this system has no such permissions")


def mode(path):
    return stat.S_IMODE(path.stat().st_mode)


@pytest.fixture(params=[0o022, 0o002, 0o000])
def folder(request, tmp_path):
    was = os.umask(request.param)
    one = tmp_path / "department"
    one.mkdir()
    yield one
    os.umask(was)


@pytest.mark.parametrize(
    ("shared_as", "files", "folders"),
    [(0o755, 0o640, 0o750), (0o775, 0o660, 0o770), (0o700, 0o600, 0o700), (0o777, 0o660, 0o770)],
)
def test_files_follow_their_folder_and_shut_all_others_out(folder, shared_as, files, folders):
    folder.chmod(shared_as)
    with open_store(str(folder / "results.sqlite3")) as store:
        record(store, facts(), Scores({"A1": 3, "A2": 1}))
        export_all(store, folder / "tables" / "2026")
        with store.writing() as connection:
            connection.exec_driver_sql("UPDATE score SET marks = 2")
            journal = folder / "results.sqlite3-journal"
            assert mode(journal) == files
        forget(store, Whom("8K", "A1"))
    write_private(folder / "reports" / "8K.pdf", b"%PDF")
    for path in folder.rglob("*"):
        assert mode(path) == (folders if path.is_dir() else files), path
    assert mode(folder) == shared_as


def test_an_older_store_is_shut_when_it_is_brought_up_to_date(tmp_path):
    path = tmp_path / "results.sqlite3"
    with open_store(str(path)) as store:
        record(store, facts(), Scores({"A1": 3}))
        with store.writing() as connection:
            downgrade(connection, "0003")
    path.chmod(0o664)
    open_store(str(path)).close()
    assert mode(path) == 0o660
