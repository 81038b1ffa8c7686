"""Entries that two files say replaced each other: one of them counts all the same."""

import shutil

from sqlalchemy import update

from itembank.records.entries.entries import Scores
from itembank.records.entries.recording import record
from itembank.records.entries.undoing import undo
from itembank.records.store import store_tables as tables
from itembank.records.store.store import open_store
from itembank.records.unite.both_files import Entry
from itembank.records.unite.uniting import unite
from itembank.records.unite.which_counts import _reached
from tests.records.stores import DAY, counting, facts
from tests.records.test_unite import MOMENT, datetime


def turned_round(store):
    """Have the later of two entries replaced by the earlier: a clock that was put back does so."""
    with store.writing() as connection:
        rows = connection.execute(tables.entry.select().order_by(tables.entry.c.id)).all()
        first, second = rows[0].id, rows[1].id
        for number, by in ((first, None), (second, first)):
            connection.execute(
                update(tables.entry).where(tables.entry.c.id == number).values(replaced_by=by)
            )


def in_a_circle(tmp_path):
    mine, copy = tmp_path / "results.sqlite3", tmp_path / "copy.sqlite3"
    with open_store(str(mine)) as store:
        for marks in (3, 4):
            now = MOMENT + datetime.timedelta(minutes=marks)
            record(store, facts(), Scores({"A1": marks}), replace=True, now=now)
    shutil.copy(mine, copy)
    with open_store(str(copy)) as store:
        turned_round(store)
        assert counting(store)[0][4][0][1] == 3
    return mine, copy


def test_of_entries_that_replaced_each_other_the_later_counts(tmp_path):
    mine, copy = in_a_circle(tmp_path)
    with open_store(str(mine)) as store:
        for _ in range(2):  # and again, which changes nothing
            unite(store, copy)
            (entry,) = counting(store)
            assert entry[4][0][1] == 4
        undo(store, "8K")
        (entry,) = counting(store)
        assert entry[4][0][1] == 3


def test_it_is_the_same_whichever_file_takes_in_the_other(tmp_path):
    mine, copy = in_a_circle(tmp_path)
    with open_store(str(copy)) as store:
        unite(store, mine)
        (entry,) = counting(store)
        assert entry[4][0][1] == 4


def test_no_entry_is_among_those_that_replaced_it():
    known = {uid: Entry(uid, ("8k", DAY, ""), "scores", MOMENT, None, set()) for uid in "abc"}
    known["a"].winners, known["b"].winners, known["c"].winners = {"b"}, {"a", "c"}, {"a"}
    assert _reached(known["a"], known) == {"b", "c"}
    assert _reached(known["c"], known) == {"a", "b"}
