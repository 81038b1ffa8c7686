"""What anybody else finds in a bank while its files take their places, one after another."""

import pytest

from itembank.bank.saving.save import ChangedSince, save, take
from itembank.files import together
from itembank.people.lock import holder


@pytest.fixture
def steps(tmp_path, monkeypatch):
    """What is there at each step of a save: who holds the lock, and the files to be seen."""
    noted = []
    usual = together._take

    def watched(change, moved, sole):
        if change.place.parent == tmp_path:
            seen = {path.name: path.read_text() for path in tmp_path.glob("[a-z]*")}
            noted.append((holder(tmp_path), seen))
        usual(change, moved, sole)

    monkeypatch.setattr(together, "_take", watched)
    return noted


def test_the_lock_is_held_until_the_last_file_has_its_place(tmp_path, steps):
    for name in ("a", "b"):
        (tmp_path / name).write_text("old")
    save(tmp_path, [(take(tmp_path / name), "new") for name in ("a", "b")])
    assert len(steps) == 2
    assert all(held is not None for held, _ in steps)
    assert holder(tmp_path) is None


def test_a_file_goes_only_when_all_that_are_new_are_there(tmp_path, steps):
    """What moves from one file to another is never nowhere."""
    (tmp_path / "old").write_text("question")
    save(tmp_path, [(take(tmp_path / "old"), None), (take(tmp_path / "new"), "question")])
    assert [seen for _, seen in steps] == [
        {"old": "question"},
        {"old": "question", "new": "question"},
    ]
    assert {path.name for path in tmp_path.iterdir()} == {"new"}


def test_where_one_file_has_changed_no_other_takes_its_place_for_a_moment(tmp_path, steps):
    for name in ("a", "b"):
        (tmp_path / name).write_text("old")
    changes = [(take(tmp_path / name), "new") for name in ("a", "b")]
    (tmp_path / "b").write_text("theirs")
    with pytest.raises(ChangedSince):
        save(tmp_path, changes)
    assert not steps
    assert (tmp_path / "a").read_text() == "old"
