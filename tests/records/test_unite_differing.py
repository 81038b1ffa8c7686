"""Of several results of one lesson in two files one counts, and each undo goes back by one."""

import shutil

from itembank.records.entries.entries import Scores
from itembank.records.entries.recording import record
from itembank.records.entries.undoing import undo
from itembank.records.store.store import open_store
from itembank.records.unite.uniting import unite

from .stores import counting, facts
from .test_unite import MOMENT, datetime


def scored(store, marks, minute):
    now = MOMENT + datetime.timedelta(minutes=minute)
    record(store, facts(), Scores({"A1": marks}), replace=True, now=now)


def copies(tmp_path):
    mine, copy = tmp_path / "results.sqlite3", tmp_path / "copy.sqlite3"
    with open_store(str(mine)) as store:
        scored(store, 3, 0)
    shutil.copy(mine, copy)
    return mine, copy


def test_the_same_results_in_both_files_are_no_difference_to_decide_about(tmp_path):
    mine, copy = copies(tmp_path)
    with open_store(str(copy)) as store:
        scored(store, 4, 5)
    with open_store(str(mine)) as store:
        scored(store, 4, 6)
        assert unite(store, copy).differing == []
        assert len(counting(store)) == 1


def test_each_undo_goes_back_to_what_was_recorded_just_before(tmp_path):
    mine, copy = copies(tmp_path)
    with open_store(str(copy)) as store:
        scored(store, 2, 30)
    with open_store(str(mine)) as store:
        scored(store, 4, 10)
        scored(store, 5, 20)
        unite(store, copy)
        seen = []
        for _ in range(4):
            (entry,) = counting(store)  # one alone counts, after every step
            seen.append(entry[4][0][1])
            undo(store, "8K")
        assert seen == [2, 5, 4, 3]
        assert counting(store) == []
