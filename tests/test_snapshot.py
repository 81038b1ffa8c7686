"""A file as it was read: how it ends its lines is kept, and what was read is of one moment."""

from __future__ import annotations

from pathlib import Path

import pytest

from itembank.files.snapshot import take, take_bytes


@pytest.mark.parametrize(
    ("raw", "written"),
    [
        (b"a = 1\r\n", b"b = 2\r\n"),
        (b"a = 1\n", b"b = 2\n"),
        (b"a = 1\r\nb = 2\n", b"b = 2\n"),  # of two sorts none is the file's own
        (b"", b"b = 2\n"),
        (None, b"b = 2\n"),
        (b"\xef\xbb\xbfa = 1\n", b"\xef\xbb\xbfb = 2\n"),
    ],
)
def test_a_file_is_written_with_its_own_line_ends(tmp_path, raw, written):
    path = tmp_path / "plan.toml"
    if raw is not None:
        path.write_bytes(raw)
    assert take(path).encode("b = 2\n") == written


@pytest.mark.parametrize("ends", [b"", b"\n", b"\n\n\n", b"\r\n\r\n"])
def test_more_stands_after_one_empty_line_however_the_file_ended(tmp_path, ends):
    path = tmp_path / "signoffs.toml"
    path.write_bytes(b"a = 1" + ends)
    line = b"\r\n" if ends.startswith(b"\r") else b"\n"
    assert take_bytes(path).with_more("b = 2\n") == b"a = 1" + 2 * line + b"b = 2" + line


def test_text_and_bytes_are_of_the_same_moment_where_somebody_saves_between(tmp_path, monkeypatch):
    path = tmp_path / "plan.toml"
    path.write_bytes(b"first\n")
    read, count = Path.read_bytes, iter(range(9))

    def saving(self):
        found = read(self)
        if self == path and next(count) == 0:
            path.write_bytes(b"second\n")  # between the first reading and the next
        return found

    monkeypatch.setattr(Path, "read_bytes", saving)
    snapshot = take(path)
    assert (snapshot.raw, snapshot.text) == (b"second\n", "second\n")
