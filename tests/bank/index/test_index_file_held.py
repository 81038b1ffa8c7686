"""What an index keeps under a hash is what was hashed, whoever saves or damages it meanwhile."""

from __future__ import annotations

import os

import pytest

from itembank.bank.index.rows.refresh import File, look_at
from itembank.bank.index.store import stamps
from itembank.bank.index.store.index_store import Store
from itembank.bank.index.store.index_tables import Changed


def test_a_file_that_changed_after_it_was_hashed_is_not_kept_under_that_hash(tmp_path):
    path = tmp_path / "ratio.share.toml"
    path.write_bytes(b"first")
    file = File(path, stamps.hash_of(b"first"), None)
    assert file.held() == b"first"
    path.write_bytes(b"second")
    with pytest.raises(Changed):
        file.held()


def test_a_stamp_whose_row_is_damaged_is_not_believed(tmp_path, monkeypatch):
    monkeypatch.setattr(stamps, "SETTLED", -(10**12))
    path = tmp_path / "ratio.share.toml"
    path.write_bytes(b"first")
    store = Store()
    look_at([path], store)
    assert look_at([path], store)[0].data is None  # known by its stamp, and so not read
    store.write(lambda db: db.execute("UPDATE stamp SET hash = ?", (b"\0" * 32,)))
    (file,) = look_at([path], store)
    assert (file.data, file.hash) == (b"first", stamps.hash_of(b"first"))


def test_a_file_that_changes_while_it_is_read_is_not_settled(tmp_path, monkeypatch):
    monkeypatch.setattr(stamps, "SETTLED", -(10**12))
    path = tmp_path / "ratio.share.toml"
    path.write_bytes(b"first")
    assert stamps.read_stamped(path)[2]
    real, count = os.fstat, iter(range(9))

    def saving(handle):
        if next(count) == 1:
            path.write_bytes(b"first and more")
        return real(handle)

    monkeypatch.setattr(os, "fstat", saving)
    assert not stamps.read_stamped(path)[2]
