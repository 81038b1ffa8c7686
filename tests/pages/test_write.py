"""Writing a pack: drawn and proved at once, then all of it or nothing."""

import json
import os

import pytest

from itembank.errors import CheckFailed, ItembankError
from itembank.packs.build import start_pack
from itembank.packs.pack_checks import start_reading
from itembank.pages import draw
from itembank.pages.draw import drawers
from itembank.pages.write_pack import write_pack
from tests.packs.packs import request


def held(folder):
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_a_pack_made_again_from_its_data_has_the_same_bytes(tmp_path):
    started = start_pack(request(follow_up=4))
    write_pack(started, tmp_path / "made")
    made = held(tmp_path / "made")
    assert set(made) == {*drawers(started.pack), "pack.json", "self-mark.html"}
    assert all(made[name].startswith(b"%PDF") for name in drawers(started.pack))
    write_pack(start_reading(tmp_path / "made"), tmp_path / "again")
    assert held(tmp_path / "again") == made


def test_a_pack_can_be_made_again_in_its_own_place(tmp_path):
    write_pack(start_pack(request(follow_up=4)), tmp_path / "made")
    before = held(tmp_path / "made")
    write_pack(start_reading(tmp_path / "made"), tmp_path / "made", replace=True)
    assert held(tmp_path / "made") == before
    assert os.listdir(tmp_path) == ["made"]


def test_a_key_the_second_road_rejects_is_not_written(tmp_path, monkeypatch):
    """The second process takes over what stands here when it is started."""
    wanted = start_pack(request(follow_up=4))
    wanted.proof.close()
    address = wanted.pack.sheets[2].items[0].address

    def reject(item):
        if item.address == address:
            raise CheckFailed(f"{address}: it comes to 1, the key says 2")

    monkeypatch.setattr("itembank.packs.pack_proof.prove_symbolic", reject)
    with pytest.raises(CheckFailed, match=f"{address}: it comes to 1, the key says 2"):
        write_pack(start_pack(request(follow_up=4)), tmp_path / "made")
    assert not os.listdir(tmp_path)


def test_a_stop_while_drawing_writes_nothing_and_ends_the_second_process(tmp_path, monkeypatch):
    def stop(pack):
        raise KeyboardInterrupt

    monkeypatch.setattr(draw, "draw_pack", stop)
    started = start_pack(request(follow_up=4))
    child = started.proof._work._child.pid
    with pytest.raises(KeyboardInterrupt):
        write_pack(started, tmp_path / "made")
    assert not os.listdir(tmp_path)
    with pytest.raises(ChildProcessError):
        os.waitpid(child, os.WNOHANG)


def test_an_existing_folder_is_refused_before_anything_is_drawn(tmp_path, monkeypatch):
    monkeypatch.setattr(draw, "draw_pack", lambda pack: pytest.fail("drawn all the same"))
    (tmp_path / "made").mkdir()
    (tmp_path / "made" / "pack.json").write_text(json.dumps("mine"))
    with pytest.raises(ItembankError, match="already"):
        write_pack(start_pack(request(follow_up=4)), tmp_path / "made")
    assert held(tmp_path / "made") == {"pack.json": b'"mine"'}
