"""Writing a pack: drawn and proved at once, then all of it or nothing."""

import json
import os
from functools import partial

import pytest

from itembank.errors import CheckFailed, ItembankError
from itembank.packs.build import start_pack
from itembank.packs.pack_checks import start_reading
from itembank.pages import draw
from itembank.pages.draw import drawers
from itembank.pages.write_pack import drawn, write_pack
from tests.packs.packs import request

SMALL = request(questions=4, variants=1, follow_up=2)
"""Of a pack that is killed, refused or drawn in no pages, a few questions show as much."""


def process(name, pack):
    """Draw the number of the process that draws."""
    return b"%d" % os.getpid()


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


def test_two_processes_draw_what_one_draws(two_cores):
    started = start_pack(request(follow_up=4))
    with started.proof:
        alone, together = drawn(started), drawn(started, by_two=True)
    assert together == alone
    assert list(together) == list(alone)


def test_a_copy_draws_what_the_teacher_reads(monkeypatch, two_cores):
    """Its marks are made elsewhere: a drawing that tells its process tells another's number."""
    draws = {name: partial(process, name) for name in ("starter.pdf", "teacher-notes.pdf")}
    monkeypatch.setattr(draw, "drawers", lambda pack: draws)
    started = start_pack(SMALL)
    with started.proof:
        made = drawn(started, by_two=True)
    assert made["starter.pdf"] == b"%d" % os.getpid() != made["teacher-notes.pdf"]


def test_a_copy_that_is_killed_leaves_its_pages_to_be_drawn_here(monkeypatch, two_cores):
    here = os.getpid()

    def notes(pack):
        if os.getpid() != here:
            os._exit(9)
        return b"drawn"

    monkeypatch.setattr(draw, "drawers", lambda pack: {"teacher-notes.pdf": notes})
    started = start_pack(SMALL)
    with started.proof:
        assert drawn(started, by_two=True)["teacher-notes.pdf"] == b"drawn"


def test_what_is_too_long_in_a_copy_is_told_here(monkeypatch, two_cores):
    def too_long(pack):
        raise ItembankError("Question 3 is too long for a page.")

    monkeypatch.setattr(draw, "drawers", lambda pack: {"teacher-notes.pdf": too_long})
    started = start_pack(SMALL)
    with started.proof, pytest.raises(ItembankError, match="Question 3"):
        drawn(started, by_two=True)


def test_a_pack_can_be_made_again_in_its_own_place(tmp_path):
    write_pack(start_pack(SMALL), tmp_path / "made")
    before = held(tmp_path / "made")
    write_pack(start_reading(tmp_path / "made"), tmp_path / "made", replace=True)
    assert held(tmp_path / "made") == before
    assert os.listdir(tmp_path) == ["made"]


def test_a_key_the_second_road_rejects_is_not_written(tmp_path, monkeypatch):
    """The second process takes over what stands here when it is started."""
    wanted = start_pack(SMALL)
    wanted.proof.close()
    address = wanted.pack.sheets[2].items[0].address

    def reject(item):
        if item.address == address:
            raise CheckFailed(f"{address}: it comes to 1, the key says 2")

    monkeypatch.setattr("itembank.packs.pack_proof.prove_symbolic", reject)
    with pytest.raises(CheckFailed, match=f"{address}: it comes to 1, the key says 2"):
        write_pack(start_pack(SMALL), tmp_path / "made")
    assert not os.listdir(tmp_path)


def test_a_stop_while_drawing_writes_nothing_and_ends_the_second_process(tmp_path, monkeypatch):
    def stop(pack):
        raise KeyboardInterrupt

    monkeypatch.setattr(draw, "drawers", lambda pack: {"starter.pdf": stop})
    started = start_pack(SMALL)
    child = started.proof._work._child.pid
    with pytest.raises(KeyboardInterrupt):
        write_pack(started, tmp_path / "made")
    assert not os.listdir(tmp_path)
    with pytest.raises(ChildProcessError):
        os.waitpid(child, os.WNOHANG)


def test_an_existing_folder_is_refused_before_anything_is_drawn(tmp_path, monkeypatch):
    monkeypatch.setattr(draw, "drawers", lambda pack: pytest.fail("drawn all the same"))
    (tmp_path / "made").mkdir()
    (tmp_path / "made" / "pack.json").write_text(json.dumps("mine"))
    with pytest.raises(ItembankError, match="already"):
        write_pack(start_pack(SMALL), tmp_path / "made")
    assert held(tmp_path / "made") == {"pack.json": b'"mine"'}
