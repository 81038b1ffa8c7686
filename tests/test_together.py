"""Several files change together: in the order named, or not at all, with the log that says so."""

import os

import pytest

from itembank.files import journal, renaming, together
from itembank.files.snapshot import ChangedSince, take
from itembank.files.together import Together, write_whole


def saved(change, folder, **files):
    """Save files in one change."""
    with change:
        for name, text in files.items():
            change.file(folder / name, text)


@pytest.fixture
def placed(monkeypatch):
    """The names of the files that took their places, in turn; one named *stop* cannot."""
    names = []
    usual = together.put_in_place

    def noted(new, place):
        if place.name == "stop":
            raise OSError(5, os.strerror(5), str(place))
        names.append(place.name)
        return usual(new, place)

    monkeypatch.setattr(together, "put_in_place", noted)
    return names


def test_files_take_their_places_in_the_order_in_which_they_were_named(tmp_path, placed):
    names = ["b", "c", "a"]
    with Together() as change:
        for name in names:
            change.file(tmp_path / name, b"new")
    assert placed == names


def test_what_is_named_before_a_fault_is_put_back_and_what_is_after_is_not_touched(
    tmp_path, placed
):
    for name in ("b", "stop", "a"):
        (tmp_path / name).write_bytes(b"old")
    change = Together()
    with pytest.raises(OSError, match="stop"):
        saved(change, tmp_path, b=b"new", stop=b"new", a=b"new")
    assert placed == ["b"]
    assert change.at == tmp_path / "stop"
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {
        "b": b"old",
        "stop": b"old",
        "a": b"old",
    }


def test_a_place_named_twice_is_put_back_as_it_was_before_the_first(tmp_path, placed):
    (tmp_path / "a").write_bytes(b"old")
    change = Together()
    change.file(tmp_path / "a", b"first")
    with pytest.raises(OSError, match="stop"):
        saved(change, tmp_path, a=b"second", stop=b"new")
    assert (tmp_path / "a").read_bytes() == b"old"
    assert [path.name for path in tmp_path.iterdir()] == ["a"]


@pytest.mark.parametrize("names", [["a", "b"], ["a", "stop"]])
def test_two_files_are_in_the_log_until_they_stand_and_no_longer(
    tmp_path, placed, monkeypatch, names
):
    steps = []
    begin, end = journal.begin, journal.end
    monkeypatch.setattr(
        journal, "begin", lambda *given: (steps.append(("begin", *placed)), begin(*given))
    )
    monkeypatch.setattr(journal, "end", lambda log: (steps.append(("end", *placed)), end(log)))
    try:
        with Together(log=tmp_path) as change:
            for name in names:
                change.file(tmp_path / name, b"new")
    except OSError:
        pass
    assert steps == [("begin",), ("end", *placed)]
    assert sorted(path.name for path in tmp_path.iterdir()) == sorted(
        placed if "b" in names else []
    )


def test_one_file_that_somebody_saved_since_it_was_read_stays_theirs(tmp_path):
    path = tmp_path / "plan"
    path.write_bytes(b"read")
    was = take(path)
    path.write_bytes(b"theirs, and longer")
    with pytest.raises(ChangedSince), Together() as change:
        change.file(path, b"mine", was=was)
    assert path.read_bytes() == b"theirs, and longer"
    assert [found.name for found in tmp_path.iterdir()] == ["plan"]


@pytest.mark.skipif(os.name == "nt", reason="there, a file that is being read keeps its place")
def test_one_who_is_reading_a_file_goes_on_with_what_was_there(tmp_path):
    path = tmp_path / "plan"
    path.write_bytes(b"what was there")
    with path.open("rb", buffering=0) as reading:
        begun = reading.read(4)
        write_whole(path, b"what is new, and longer")
        assert begun + reading.read() == b"what was there"
    assert path.read_bytes() == b"what is new, and longer"


def test_folders_made_for_what_failed_are_gone_however_deep(tmp_path):
    def fails():
        with Together() as change:
            change.file(tmp_path / "a" / "b" / "c" / "plan", b"text")
            raise ValueError("no more")

    with pytest.raises(ValueError, match="no more"):
        fails()
    assert list(tmp_path.iterdir()) == []


def test_where_two_cannot_change_places_in_one_step_a_fault_puts_the_old_folder_back(
    tmp_path, monkeypatch
):
    """As on systems other than Linux."""
    monkeypatch.setattr(renaming, "_renamed", lambda first, other, flag: False)
    new, at = tmp_path / "new", tmp_path / "at"
    for folder in (new, at):
        folder.mkdir()
        (folder / "which").write_text(folder.name)
    usual = os.rename

    def rename(old, place):
        if old == new:
            raise OSError(5, os.strerror(5), str(place))
        usual(old, place)

    monkeypatch.setattr(os, "rename", rename)
    with pytest.raises(OSError, match="at"):
        renaming.put_in_place(new, at)
    assert (at / "which").read_text() == "at"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["at", "new"]
