"""An index that is damaged, foreign, older, newer or cannot be written stops nobody's work."""

from __future__ import annotations

import multiprocessing
import os
import resource
import sqlite3
import stat
from pathlib import Path

import pytest

from itembank.bank.index.opened import open_bank
from itembank.bank.index.store import index_place as places
from itembank.bank.index.store import index_store as stores
from itembank.bank.index.store import old_indexes
from itembank.bank.index.store.index_place import index_path
from itembank.bank.index.store.index_remark import listen
from itembank.bank.index.store.index_tables import seal
from itembank.work.bank.looking import list_questions
from itembank.work.bank.wanted import Wanted
from tests.bank.bankfolder import item, make_bank


@pytest.fixture
def bank(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("ITEMBANK_INDEX", str(tmp_path / "cache"))
    make_bank(tmp_path / "bank", {"ratio.share": item("a-1") + item("a-2", key="1/2")})
    return tmp_path / "bank"


def told(folder: Path) -> tuple[list[str], list[str]]:
    """Return what a list of the bank says, and what is remarked."""
    remarks: list[str] = []
    listen(remarks.append)
    found = list_questions(folder, Wanted())
    return [f"{line.id} {line.state}" for line in found.lines], remarks


SAYS = ["a-1 proved", "a-2 disproved"]


def kept(folder: Path) -> Path:
    path = index_path(folder)
    assert path is not None
    return path


def test_a_sound_index_is_not_spoken_of_and_is_private(bank: Path) -> None:
    assert told(bank) == (SAYS, [])
    assert told(bank) == (SAYS, [])
    if os.name == "posix":
        assert stat.S_IMODE(kept(bank).stat().st_mode) == 0o600
        assert stat.S_IMODE(kept(bank).parent.stat().st_mode) == 0o700
    assert "bank" not in kept(bank).name


@pytest.mark.parametrize("part", [b"", b"This is no index.", None])
def test_a_damaged_index_is_made_anew(bank: Path, part: bytes | None) -> None:
    told(bank)
    path = kept(bank)
    whole = path.read_bytes()
    path.write_bytes(whole[: len(whole) // 2 + 100] if part is None else part)
    says, remarks = told(bank)
    assert says == SAYS
    assert part == b"" or remarks == ["The index of this bank was damaged. It is made anew."]
    assert told(bank) == (SAYS, [])


def test_damage_anywhere_is_never_believed(bank: Path) -> None:
    told(bank)
    path = kept(bank)
    whole = path.read_bytes()
    for at in range(100, len(whole), 1777):
        path.write_bytes(
            whole[:at] + bytes(255 - byte for byte in whole[at : at + 64]) + whole[at + 64 :]
        )
        assert told(bank)[0] == SAYS


@pytest.mark.parametrize("table", ["words", "digits", "sheet", "place", "fact", "proof", "stamp"])
def test_an_index_that_lacks_a_table_is_made_anew_where_it_is_written_to(
    bank: Path, table: str
) -> None:
    told(bank)
    with sqlite3.connect(kept(bank)) as db:
        db.execute(f"DROP TABLE {table}")
    db.close()
    make_bank(bank, {"ratio.share": item("a-1") + item("a-2", key="1/2") + item("a-3")})
    assert told(bank)[0] == [*SAYS, "a-3 proved"]


def test_damage_anywhere_stops_nothing_that_is_written(bank: Path) -> None:
    told(bank)
    path = kept(bank)
    whole = path.read_bytes()
    for place, at in enumerate(range(100, len(whole), 2777)):
        path.write_bytes(
            whole[:at] + bytes(255 - byte for byte in whole[at : at + 64]) + whole[at + 64 :]
        )
        more = item(f"b-{place}")
        make_bank(bank, {"ratio.share": item("a-1") + item("a-2", key="1/2") + more})
        assert told(bank)[0] == [*SAYS, f"b-{place} proved"]


def test_a_word_changed_in_a_row_is_not_believed(bank: Path) -> None:
    told(bank)
    path = kept(bank)
    whole = path.read_bytes()
    assert whole.count(b"disproved") == 1
    # SQLite itself sees nothing wrong with this.
    path.write_bytes(whole.replace(b"disproved", b"proved   "))
    assert told(bank)[0] == SAYS


def test_another_programs_file_is_left_alone(bank: Path) -> None:
    path = kept(bank)
    path.parent.mkdir(parents=True)
    with sqlite3.connect(path) as other:
        other.execute("CREATE TABLE fact (mine TEXT)")
    other.close()
    before = path.read_bytes()
    says, (remark,) = told(bank)
    assert says == SAYS
    assert str(path) in remark
    assert "other program" in remark
    assert path.read_bytes() == before


def _with_version(path: Path, version: int) -> None:
    with sqlite3.connect(path) as db:
        db.execute(f"PRAGMA user_version = {version}")
    db.close()


def test_a_newer_index_is_left_alone(bank: Path) -> None:
    told(bank)
    _with_version(kept(bank), stores.VERSION + 1)
    before = kept(bank).read_bytes()
    says, (remark,) = told(bank)
    assert says == SAYS
    assert "newer version" in remark
    assert kept(bank).read_bytes() == before


def test_an_older_index_is_made_anew(bank: Path) -> None:
    told(bank)
    _with_version(kept(bank), stores.VERSION - 1)
    says, (remark,) = told(bank)
    assert says == SAYS
    assert "older version" in remark
    assert told(bank) == (SAYS, [])


def test_what_other_code_worked_out_is_not_taken_over(
    bank: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told(bank)
    with sqlite3.connect(kept(bank)) as db:
        row = seal("x")
        db.execute("UPDATE proof SET state = 'proved', says = '', seal = ?", (row,))
    db.close()
    monkeypatch.setattr(stores, "code_mark", lambda: b"another version")
    assert told(bank) == (SAYS, [])


def test_two_versions_of_the_program_leave_each_others_index_alone(
    bank: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told(bank)
    mine = kept(bank)
    before = mine.read_bytes()
    with monkeypatch.context() as other:
        for module in (places, stores):
            other.setattr(module, "code_mark", lambda: b"another version!")
        assert told(bank) == (SAYS, [])
        assert kept(bank) != mine
        assert kept(bank).exists()
    assert mine.read_bytes() == before
    assert kept(bank) == mine


def test_indexes_that_nobody_uses_are_cleared_away_and_nothing_else(
    bank: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told(bank)
    mine, home = kept(bank), kept(bank).parent
    sound, long_ago = mine.read_bytes(), 10**9

    def beside(name: str, data: bytes, used: int) -> Path:
        path = home / name
        path.write_bytes(data)
        os.utime(path, (used, used))
        return path

    bank_mark = mine.name[:32]
    older = [
        beside(f"{bank_mark}-{number:016x}.sqlite3", sound, 2 * 10**9 + number)
        for number in range(5)
    ]
    plain = beside(f"{bank_mark}.sqlite3", sound, 2 * 10**9 - 1)  # before versions had their own
    forgotten = beside(f"{'0' * 32}-{'0' * 16}.sqlite3", sound, long_ago)
    others = [
        beside(f"{'1' * 32}-{'0' * 16}.sqlite3", sound, 2 * 10**9),
        beside(f"{'2' * 32}-{'0' * 16}.sqlite3", b"somebody's letter", long_ago),
        beside("letter.sqlite3", sound, long_ago),
    ]
    with monkeypatch.context() as other:
        for module in (places, stores):
            other.setattr(module, "code_mark", lambda: b"another version!")
        told(bank)
        new = kept(bank)
    left = {path for path in home.iterdir() if not path.name.endswith("-journal")}
    newest = older[-(old_indexes.VERSIONS - 1) :]
    assert left == {new, *newest, *others}
    assert plain not in left
    assert forgotten not in left
    assert mine not in left


def test_a_place_that_is_no_folder_is_remarked(bank: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("ITEMBANK_INDEX", str(bank / "bank.toml" / "cache"))
    says, (remark,) = told(bank)
    assert says == SAYS
    assert "without its index" in remark


def _in_little_room(bank: Path, room: int, answers: multiprocessing.SimpleQueue) -> None:  # type: ignore[type-arg]
    import signal

    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (room, room))
    answers.put(told(bank))


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")
@pytest.mark.parametrize("room", [0, 4096, 50_000, 90_000])
def test_a_full_disk_is_remarked_and_the_work_goes_on(bank: Path, room: int) -> None:
    context = multiprocessing.get_context("fork")
    answers = context.SimpleQueue()
    process = context.Process(target=_in_little_room, args=(bank, room, answers))
    process.start()
    process.join()
    says, remarks = answers.get()
    assert says == SAYS
    assert all(remark.endswith(".") and "Error" not in remark for remark in remarks)
    assert told(bank)[0] == SAYS


def test_an_index_another_program_is_writing_is_done_without(
    bank: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told(bank)
    monkeypatch.setattr(stores, "PATIENCE", 0.05)
    make_bank(bank, {"ratio.share": item("a-1") + item("a-2", key="1/2") + item("a-3", key="2/3")})
    other = sqlite3.connect(kept(bank), isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    try:
        says, remarks = told(bank)
    finally:
        other.close()
    assert says == [*SAYS, "a-3 disproved"]
    assert len(remarks) == 1


def _open(bank: Path, answers: multiprocessing.SimpleQueue) -> None:  # type: ignore[type-arg]
    answers.put(told(bank)[0])


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")
def test_two_at_once_see_the_same(bank: Path) -> None:
    context = multiprocessing.get_context("fork")
    answers = context.SimpleQueue()
    processes = [context.Process(target=_open, args=(bank, answers)) for _ in range(4)]
    for process in processes:
        process.start()
    found = [answers.get() for _ in processes]
    for process in processes:
        process.join()
    assert found == [SAYS] * 4


def test_an_index_that_another_program_makes_first_is_not_made_anew(
    bank: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[list[str]] = []
    make_anew = stores.make_anew

    def made_late(db: sqlite3.Connection, code: bytes) -> sqlite3.Connection:
        monkeypatch.setattr(stores, "make_anew", make_anew)
        other = open_bank(bank)
        made = make_anew(db, code)
        seen.append(other.ids())
        return made

    monkeypatch.setattr(stores, "make_anew", made_late)
    assert told(bank) == (SAYS, [])
    assert seen == [["a-1", "a-2"]]


def test_what_a_command_opened_stays_while_others_edit(bank: Path) -> None:
    first = open_bank(bank)
    make_bank(bank, {"ratio.share": item("b-1")})
    assert [entry.item.id for entry in open_bank(bank).entries()] == ["b-1"]
    assert [entry.item.id for entry in first.entries()] == ["a-1", "a-2"]


@pytest.mark.skipif(os.name != "posix", reason="permissions of POSIX")
def test_a_bank_that_may_only_be_read_has_an_index(bank: Path) -> None:
    os.chmod(bank, 0o555)
    try:
        assert told(bank) == (SAYS, [])
    finally:
        os.chmod(bank, 0o755)
    assert not list(bank.glob("*.sqlite3"))
