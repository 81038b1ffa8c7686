"""A store is the file at its path, whatever signs the names of its folders are made of."""

import tempfile
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.records.entries.entries import Scores
from itembank.records.entries.recording import record
from itembank.records.exporting import export_all
from itembank.records.store.store import open_store
from tests.depth import cases, whole

from .stores import dump, facts

SIGNS = "%?#&:;=@!$'\"+,~^[]{}()|\\ .-_a0éß£数🎲"
NAMES = st.text(st.sampled_from(SIGNS), min_size=1, max_size=20).filter(
    lambda name: name.strip(".")  # . and .. are folders of another kind
)


def files_under(folder):
    return sorted(str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file())


@whole
@given(name=NAMES)
@example(name="Maths?mode=memory")
@example(name="100%25")
@example(name="a%2Fb")
@example(name="file:x?mode=ro")
@example(name="user:word@host")
@settings(max_examples=cases(8, 25, 25), deadline=None)
def test_results_land_in_the_folder_that_was_meant(name):
    with tempfile.TemporaryDirectory() as top:
        folder = Path(top) / name
        try:
            folder.mkdir()
        except OSError:
            pytest.skip("this system has no such names")
        with open_store(str(folder / "results.sqlite3")) as store:
            record(store, facts(), Scores({"A1": 3}))
            assert str(folder) in store.name
        assert files_under(Path(top)) == [f"{name}/results.sqlite3"]
        with open_store(str(folder / "results.sqlite3"), make=False) as store:
            assert len(dump(store)["score"]) == 1
            export_all(store, folder / "out")
        assert all(file.startswith(f"{name}/") for file in files_under(Path(top)))


def test_two_departments_whose_names_differ_in_a_sign_are_two(tmp_path):
    """As a URL, both names would mean the second folder's file."""
    for number, name in enumerate(("Maths%20East", "Maths East", "Maths", "Maths?East")):
        (tmp_path / name).mkdir()
        with open_store(str(tmp_path / name / "results.sqlite3")) as store:
            record(store, facts(), Scores({f"A{number}": 3}))
    for number, name in enumerate(("Maths%20East", "Maths East", "Maths", "Maths?East")):
        with open_store(str(tmp_path / name / "results.sqlite3")) as store:
            assert [row[1] for row in dump(store)["score"]] == [f"A{number}"]


def test_a_folder_from_which_one_works_may_have_any_name(tmp_path, monkeypatch):
    folder = tmp_path / "file:a?b#c"
    folder.mkdir()
    monkeypatch.chdir(folder)
    with open_store("results.sqlite3") as store:
        record(store, facts(), Scores({"A1": 3}))
    assert files_under(tmp_path) == ["file:a?b#c/results.sqlite3"]


def test_a_driver_that_is_not_there_is_told_and_no_other_is_taken(tmp_path, monkeypatch):
    """One that encrypts was asked for: without it, results would lie there for all to read."""
    monkeypatch.chdir(tmp_path)
    with pytest.raises(ItembankError, match="does not name a store"):
        open_store("sqlite+pysqlcipher:///results.sqlite3")
    assert not files_under(tmp_path)
