"""The sign-offs of one item are changed in their file alone, and as if the whole were written."""

from __future__ import annotations

import datetime
import shutil
from pathlib import Path

import pytest

from itembank.bank.merge import merge_files
from itembank.bank.merge.merge_files import prepare_keep_all, prepare_rename, prepare_settle
from itembank.bank.model.signed import SignOff
from itembank.bank.proof.signing import sign
from itembank.bank.proof.signoff import added_text, read_signoffs, signoffs_text
from itembank.bank.proof.signoff_edit import edited_signoffs
from itembank.bank.read.load import read_bank
from itembank.errors import ItembankError
from tests.bank.bankfolder import item, make_bank

TOPIC = "fractions.add-unlike"
DAY = datetime.date(2026, 9, 14)
CHANGES = {
    "rename": lambda folder: prepare_rename(folder, "sum-3", "pond-1", DAY),
    "rename one of two": lambda folder: prepare_rename(folder, conflict(folder)[0], "pond-1", DAY),
    "settle": lambda folder: prepare_settle(folder, conflict(folder)[1], DAY),
    "keep all": lambda folder: prepare_keep_all(folder, conflict(folder)[0], ["pond-2"], DAY),
}


def conflict(folder: Path) -> list[str]:
    return sorted(
        entry.item.id for entry in read_bank(folder).entries() if entry.item.id.startswith("bed-")
    )


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A bank with two versions of one item among others, all of them signed, some twice."""
    ours, theirs = (
        make_bank(
            tmp_path / name,
            {TOPIC: "".join([*(item(f"sum-{n}") for n in range(1, 6)), item("bed-1", *bed)])},
        )
        for name, bed in (
            ("ours", ("Work out {1/2 + 1/3}.", "5/6")),
            ("theirs", ("Work out {2/7 + 1/3}.", "13/21")),
        )
    )
    for bank, by in ((ours, "HT"), (theirs, "NT")):
        sign(bank, ["sum-1", "sum-3", "bed-1", "sum-5"], by, DAY)
    merge_files.prepare_merge(ours.folder, theirs.folder).save()
    return ours.folder


def written(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.glob("*.toml"))}


@pytest.mark.parametrize("way", CHANGES)
@pytest.mark.parametrize("notes", ["", "# HT looked at this twice.\n"])
def test_it_is_as_if_the_whole_file_were_written(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, way: str, notes: str
) -> None:
    path = folder / "signoffs.toml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("\n\n[[", f"\n{notes}\n[["), encoding="utf-8")
    other = Path(shutil.copytree(folder, tmp_path / "other"))
    CHANGES[way](folder).save()
    with monkeypatch.context() as patch:
        patch.setattr(merge_files, "edited_signoffs", lambda *_: None)
        CHANGES[way](other).save()
    assert written(folder) == written(other)
    assert written(folder)["signoffs.toml"] != text.encode()


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('item = "sum-3"\n', "item = 'sum-3'\n"),
        ('[[signoffs]]\nitem = "sum-3"', '[[signoffs]]\n# looked at twice\nitem = "sum-3"'),
        ("\n", "\r\n"),
    ],
)
def test_an_entry_that_somebody_wrote_by_hand_is_not_missed(
    folder: Path, old: str, new: str
) -> None:
    path = folder / "signoffs.toml"
    path.write_bytes(path.read_bytes().replace(old.encode(), new.encode()))
    before = read_signoffs(folder)
    prepare_rename(folder, "sum-3", "pond-1", DAY).save()
    now = {(s.item, s.by, s.content) for s in read_signoffs(folder)}
    names = {"sum-3": "pond-1"}
    assert now == {(names.get(s.item, s.item), s.by, s.content) for s in before}


def test_an_id_that_only_a_sign_off_has_is_not_given_again(folder: Path) -> None:
    path = folder / "signoffs.toml"
    text = path.read_text(encoding="utf-8").replace('item = "sum-5"', 'item = "pond-7"')
    path.write_text(text, encoding="utf-8")
    with pytest.raises(ItembankError, match="Choose another; pond-8 is free"):
        prepare_rename(folder, "sum-3", "pond-7", DAY)


def test_what_does_not_stand_there_is_not_guessed_at() -> None:
    signoff, two = (SignOff(name, "HT", DAY, "0" * 64, {"key": "1"}) for name in ("a-1", "a-2"))
    raw = signoffs_text([signoff]).encode()
    assert edited_signoffs(raw, [signoff], [signoff], {}) == raw
    assert edited_signoffs(raw, [signoff, two], [signoff], {}) is None
    assert edited_signoffs(raw, [two], [], {}) is None


def test_an_entry_that_stands_there_twice_is_left_once() -> None:
    signoff, two = (SignOff(name, "HT", DAY, "0" * 64, {"key": "1"}) for name in ("a-1", "a-2"))
    both = signoffs_text([signoff, two])
    twice = both + "\n" + added_text([signoff], before=True)
    assert edited_signoffs(twice.encode(), [signoff], [signoff], {}) == both.encode()
