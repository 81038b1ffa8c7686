"""A colleague's bank: handed over, looked through, merged as was chosen, and taken back."""

import html
import io
import re
import shutil
import tempfile
import zipfile

import pytest

BANK = "/questions/larkhythe"
MERGE = f"{BANK}/merge"


def files(home):
    return {path.name: path.read_bytes() for path in sorted((home / "questions").glob("*.toml"))}


@pytest.fixture
def theirs(home, tmp_path):
    """Make a colleague's copy: one question put otherwise, another new."""
    folder = shutil.copytree(home / "questions", tmp_path / "theirs")
    path = folder / "ratio.share.toml"
    text = path.read_text().replace("Two clubs rent a pool", "Two clubs hire a pool")
    new = (
        '\n[[items]]\nid = "pool-90"\ntier = "core"\nprompt = "Share {60} in the ratio {1 : 2}."\n'
    )
    path.write_text(text + new + 'key = "20, 40"\n')
    return folder


def zipped(folder, inside="bank/"):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for path in folder.glob("*.toml"):
            archive.write(path, inside + path.name)
    return out.getvalue()


def hand_over(desk, *sent, **fields):
    return desk.post(MERGE, files=[("files", each) for each in sent] or None, data=fields)


def token(answer):
    assert answer.status_code == 200, answer.text
    return re.search(r'name="token" value="([^"]+)"', answer.text)[1]


def ids(desk):
    return re.findall(r'/of/([^"]+)">', desk.get(BANK).text)


@pytest.mark.parametrize(
    ("choice", "wanted", "gone"),
    [
        ("mine", "Two clubs rent a pool", "Two clubs hire a pool"),
        ("theirs", "Two clubs hire a pool", "Two clubs rent a pool"),
        ("both", "Two clubs rent a pool", ""),
    ],
)
def test_a_bank_is_looked_through_merged_as_chosen_and_taken_back(
    desk, home, theirs, choice, wanted, gone
):
    before = files(home)
    seen = hand_over(desk, ("bank.zip", zipped(theirs)))
    text = html.unescape(seen.text)
    assert "Two clubs rent a pool" in text
    assert "Two clubs hire a pool" in text
    assert "Share " in text
    assert "New here: 1 question" in text
    assert files(home) == before
    answer = desk.post(
        f"{MERGE}/write",
        data={"token": token(seen), "keep-pool-1": choice},
        follow_redirects=False,
    )
    assert answer.status_code == 303
    assert "pool-90" in ids(desk)
    assert wanted in desk.get(f"{BANK}/of/pool-1/edit").text
    listed = desk.get(BANK, params={"words": "two clubs"}).text
    in_use = [card for card in listed.split('<li class="card">')[1:] if ">Retired<" not in card]
    assert len(in_use) == (2 if choice == "both" else 1)
    assert bool([card for card in in_use if gone and gone in card]) is False
    assert desk.post(f"{BANK}/undo", follow_redirects=False).status_code == 303
    assert files(home) == before
    # What was handed over is held no more.
    again = desk.post(f"{MERGE}/write", data={"token": token(seen)})
    assert again.status_code == 404


def test_what_is_not_settled_is_settled_on_its_own_page(desk, theirs):
    seen = hand_over(desk, ("bank.zip", zipped(theirs)))
    desk.post(f"{MERGE}/write", data={"token": token(seen)})
    versions = [id for id in ids(desk) if id.startswith("pool-1.")]
    assert len(versions) == 2
    page = desk.get(f"{BANK}/of/{versions[0]}").text
    assert versions[1] in page
    answer = desk.post(f"{BANK}/of/{versions[0]}/settle", data={"keep": "one"})
    assert "Kept as pool-1" in answer.text


def test_files_by_themselves_and_a_folder_do_too(desk, theirs):
    sent = [(path.name, path.read_bytes()) for path in theirs.glob("*.toml")]
    assert "New here: 1 question" in hand_over(desk, *sent).text
    assert "New here: 1 question" in hand_over(desk, path=str(theirs)).text


@pytest.mark.parametrize("climbs", ["../", "a/../../"])
def test_names_that_climb_write_nowhere_else(desk, theirs, climbs, tmp_path, monkeypatch):
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "tmp"))
    (tmp_path / "tmp").mkdir()
    before = {path for path in tmp_path.rglob("*") if path.parent != tmp_path / "tmp"}
    for sent in (
        [("bank.zip", zipped(theirs, climbs))],
        [(climbs + path.name, path.read_bytes()) for path in theirs.glob("*.toml")],
    ):
        assert hand_over(desk, *sent).status_code in (200, 400)
    new = {path for path in tmp_path.rglob("*") if path.parent != tmp_path / "tmp"} - before
    assert all(path.parent.parent == tmp_path / "tmp" for path in new)


@pytest.mark.parametrize(
    ("sent", "said"),
    [
        ([], "Choose your colleague’s bank first"),
        ([("bank.zip", b"PK\x03\x04 nonsense")], "cannot be opened as a zip"),
        ([("ratio.share.toml", b'topic = "ratio.share"')], "no whole bank"),
        ([("a/bank.toml", b"x"), ("b/bank.toml", b"x")], "Two of these files|several banks"),
        ([("bank.toml", b"x = [")], "bank.toml"),
        ([("bank.toml", b"\xff\xfe")], "bank.toml"),
    ],
)
def test_what_is_no_bank_is_told_on_the_page_and_changes_nothing(desk, home, sent, said):
    before = files(home)
    answer = hand_over(desk, *sent)
    assert answer.status_code == 400
    assert re.search(said, html.unescape(answer.text))
    assert "itembank-bank-" not in answer.text
    assert "Merge a colleague" in answer.text
    assert files(home) == before


@pytest.mark.parametrize("packed", [zipfile.ZIP_DEFLATED, zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA])
def test_a_zip_that_was_damaged_on_its_way_is_no_zip(desk, theirs, packed):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", packed) as archive:
        archive.writestr("bank.toml", (theirs / "bank.toml").read_text() + "# more\n" * 99)
    data = bytearray(out.getvalue())
    for place in range(45, 60):
        data[place] ^= 0xFF
    answer = hand_over(desk, ("bank.zip", bytes(data)))
    assert answer.status_code == 400
    assert "cannot be opened as a zip" in answer.text


@pytest.mark.parametrize("path", ["~nobody-of-that-name/bank", "b" * 5000])
def test_a_folder_that_cannot_be_is_told_on_the_page(desk, path):
    answer = hand_over(desk, path=path)
    assert answer.status_code == 400
    assert "There is no bank" in answer.text


def test_a_zip_that_unpacks_to_too_much_is_read_no_further(desk):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("bank.toml", b"#" * 21_000_000)
    answer = hand_over(desk, ("bank.zip", out.getvalue()))
    assert answer.status_code == 400
    assert "too much" in answer.text
