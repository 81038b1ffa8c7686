"""A file of sign-offs read in pieces says what it says as a whole, and one more reads one anew."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.bank.index import kept_signoffs
from itembank.bank.index.kept_signoffs import signoffs_on
from itembank.bank.index.opened import with_bank
from itembank.bank.model.content import data_hash
from itembank.bank.model.signed import SignOff
from itembank.bank.proof import signoff_pieces
from itembank.bank.proof.signoff import read_signoffs, signoffs_text
from itembank.bank.proof.signoff_pieces import LONGEST, pieces
from itembank.files.faults import FileFaults
from itembank.work.bank.checking import check_bank
from itembank.work.bank.signing_off import SignRequest, sign_questions
from tests.bank.bankfolder import item, make_bank
from tests.depth import cases

TOPIC = "fractions.add-unlike"
DAY = datetime.date(2026, 9, 14)


@pytest.fixture(autouse=True)
def small(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let a piece have about three entries."""
    monkeypatch.setattr(signoff_pieces, "USUAL", 3)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    ids = [f"sum-{number}" for number in range(1, 41)]
    return make_bank(tmp_path / "bank", {TOPIC: "".join(map(item, ids))}).folder


def signoff(number: int, by: str = "HT") -> SignOff:
    was = {"prompt": f"Work out {{{number} + 1}}.", "key": str(number + 1)}
    return SignOff(f"sum-{number}", by, DAY, data_hash(was), was)


def write(folder: Path, text: str) -> None:
    (folder / "signoffs.toml").write_text(text, encoding="utf-8")


def kept(folder: Path) -> list[SignOff]:
    ids = [f"sum-{number}" for number in range(1, 41)]
    return with_bank(folder, lambda bank: signoffs_on(bank, ids))


NUMBERS = st.lists(st.integers(1, 400), unique=True, max_size=30)


@given(NUMBERS, st.booleans())
@settings(max_examples=cases(25, 30), deadline=None)
def test_pieces_put_together_are_the_file(numbers: list[int], crlf: bool) -> None:
    data = signoffs_text(map(signoff, numbers)).encode()
    data = data.replace(b"\n", b"\r\n") if crlf else data
    parts = list(pieces(data))
    assert b"".join(parts) == data
    assert all(part.startswith(b"[[signoffs]]") for part in parts[1:])


def test_a_change_in_the_middle_leaves_the_pieces_elsewhere() -> None:
    text = signoffs_text(signoff(number) for number in range(1, 301)).encode()
    place = text.index(b'item = "sum-150"')
    before = list(pieces(text))
    after = list(pieces(text[:place] + text[place:].replace(b"sum-150", b"sum-999", 1)))
    assert len(before) > 20
    assert len(set(before) - set(after)) <= 3


def test_no_piece_is_without_end(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(signoff_pieces, "USUAL", 10**9)
    text = signoffs_text(signoff(number) for number in range(1, 2 * LONGEST + 2)).encode()
    assert max(part.count(b"[[signoffs]]") for part in pieces(text)) == LONGEST


def test_one_more_signature_reads_only_the_piece_it_is_in(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    ids = tuple(f"sum-{number}" for number in range(1, 40))
    sign_questions(folder, SignRequest("HT", ids, on=DAY))
    assert len(kept(folder)) == 39
    read: list[bytes] = []
    rows = kept_signoffs._rows
    monkeypatch.setattr(kept_signoffs, "_rows", lambda call: (read.append(call[0]), rows(call))[1])
    before = (folder / "signoffs.toml").read_bytes()
    sign_questions(folder, SignRequest("NT", ("sum-40",), on=DAY))
    after = (folder / "signoffs.toml").read_bytes()
    assert after.startswith(before)
    assert [(signed.item, signed.by) for signed in kept(folder)][-1] == ("sum-40", "NT")
    assert len(read) == 1
    assert kept(folder) == list(read_signoffs(folder))


def test_what_is_added_is_as_if_all_were_written_at_once(folder: Path) -> None:
    ids = [f"sum-{number}" for number in range(1, 8)]
    for id in ids:
        sign_questions(folder, SignRequest("HT", (id, "sum-1"), on=DAY))
    found = read_signoffs(folder)
    assert [signed.item for signed in found] == ids
    assert (folder / "signoffs.toml").read_text(encoding="utf-8") == signoffs_text(found)


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_what_a_person_changed_in_the_file_stays(folder: Path, end: str) -> None:
    text = signoffs_text([signoff(1)]).replace("\n", end)
    (folder / "signoffs.toml").write_bytes(b"\xef\xbb\xbf" + f"{text}# twice{end}{end}".encode())
    sign_questions(folder, SignRequest("HT", ("sum-2",), on=DAY))
    data = (folder / "signoffs.toml").read_bytes()
    assert data.startswith(b"\xef\xbb\xbf" + f"{text}# twice{end}{end}[[signoffs]]".encode())
    assert data.count(b"\r\n") == (data.count(b"\n") if end == "\r\n" else 0)
    assert [signed.item for signed in read_signoffs(folder)] == ["sum-1", "sum-2"]
    assert kept(folder) == list(read_signoffs(folder))


def test_the_mark_of_an_entry_in_a_longer_text_parts_nothing(folder: Path) -> None:
    was = {"prompt": "Copy:\n[[signoffs]]\nitem = 1\n", "key": "1"}
    entry = (
        f'[[signoffs]]\nitem = "sum-1"\nby = "HT"\non = 2026-09-14\ncontent = "{data_hash(was)}"\n'
        '[signoffs.was]\nprompt = """\nCopy:\n[[signoffs]]\nitem = 1\n"""\nkey = "1"\n'
    )
    write(folder, entry)
    assert [dict(signed.was) for signed in kept(folder)] == [was]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("signoffs = []\n" + signoffs_text([signoff(1)], " "), "line 2"),
        ("stray = 1\n" + signoffs_text([signoff(1)], " "), "no key ‘stray’"),
        (signoffs_text(map(signoff, range(1, 30))).replace("{17 + 1}", "{17 + 2}"), "line 87"),
    ],
)
def test_a_fault_in_one_piece_is_told_with_its_line(folder: Path, text: str, told: str) -> None:
    write(folder, text)
    with pytest.raises(FileFaults, match=told):
        check_bank(folder)


def test_nothing_is_signed_over_a_file_with_a_fault(folder: Path) -> None:
    text = signoffs_text(map(signoff, range(1, 30))).replace("{17 + 1}", "{17 + 2}")
    write(folder, text)
    with pytest.raises(FileFaults, match="changed by hand"):
        sign_questions(folder, SignRequest("HT", ("sum-1",), on=DAY))
    assert (folder / "signoffs.toml").read_text(encoding="utf-8") == text
