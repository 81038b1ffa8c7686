"""A bank is the same with its index as without it, whatever was done to its files meanwhile."""

from __future__ import annotations

import dataclasses
import os
import shutil
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from itembank.bank.index.opened import open_bank
from itembank.bank.index.store import stamps
from itembank.bank.model.bank import Bank
from itembank.bank.proof.signing import sign
from itembank.bank.proof.state import EntryState
from itembank.bank.read.load import read_bank
from itembank.files.faults import FileFaults
from itembank.work.bank.checking import check_bank
from itembank.work.bank.looking import find_questions, list_questions, show_questions
from itembank.work.bank.proving import prove_bank
from itembank.work.bank.wanted import STATES, Wanted
from tests.depth import cases, whole

HEAD = 'name = "made"\ntitle = "Made"\n\n[authors]\nHT = "head"\n'
TOPICS = ("ratio.share", "number.sums", "number.more")
SUMS = (
    ("Work out {3 + 4}.", "7"),
    ("Add: {4 + 3}", "7"),
    ("Work out {3 + 4}.", "8"),
    ("Work out {30% of 50}.", "15"),
    ("Solve {2x = 6}.", "x = 3"),
    ("Think of a number.", "5"),
)
numbers = st.integers(0, 5)
items = st.tuples(numbers, numbers, st.sampled_from(["core", "support"]), st.booleans())
files = st.tuples(st.sampled_from(TOPICS), st.lists(items, max_size=4), st.booleans())
steps = st.one_of(
    st.tuples(st.just("write"), files),
    st.tuples(st.just("break"), files),
    st.tuples(st.just("remove"), st.sampled_from(TOPICS)),
    st.tuples(st.just("rename"), st.sampled_from(TOPICS)),
    st.tuples(st.just("touch"), st.sampled_from(TOPICS)),
    st.tuples(st.just("hide"), st.sampled_from(TOPICS)),
    st.tuples(st.just("sign"), numbers),
    st.tuples(st.just("authors"), st.sampled_from(["HT", "AB"])),
)


def _text(topic: str, made: list[tuple[int, int, str, bool]], generated: bool) -> str:
    title = "" if topic == "ratio.share" else f'title = "{topic}"\n'
    blocks = [f'topic = "{topic}"\n{title}']
    for id, number, tier, mine in made:
        prompt, key = SUMS[number]
        author = 'author = "HT"\n' if mine else ""
        blocks.append(
            f'[[items]]\nid = "a-{id}"\ntier = "{tier}"\n'
            f'prompt = "{prompt}"\nkey = "{key}"\n{author}'
        )
    if generated:
        blocks.append('[[pinned]]\naddress = "ratio.share/core/12"\n')
    return "\n".join(blocks)


def _apply(folder: Path, step: tuple[str, Any]) -> None:
    kind, what = step
    if kind in ("write", "break"):
        topic, made, generated = what
        text = _text(topic, made, generated)
        if kind == "break":
            text = text.replace("{3", "{{3").replace("title", "titel")
        (folder / f"{topic}.toml").write_text(text, encoding="utf-8")
    elif kind == "authors":
        (folder / "bank.toml").write_text(HEAD.replace("HT", what), encoding="utf-8")
    elif kind == "sign":
        _sign(folder, f"a-{what}")
    else:
        path = folder / f"{what}.toml"
        if not path.exists():
            return
        if kind == "remove":
            path.unlink()
        elif kind == "touch":
            path.touch()
        elif kind == "rename":
            path.rename(folder / "number.renamed.toml")
        else:  # an edit that leaves size and time of change as they were
            before = path.stat()
            path.write_text(path.read_text().replace("{3 + 4}", "{4 + 4}"))
            os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))


def _sign(folder: Path, id: str) -> None:
    import datetime

    from itembank.errors import ItembankError

    try:
        sign(read_bank(folder), [id], "HT", datetime.date(2026, 11, 2))
    except ItembankError:  # none of that id, or it is wrong, or the bank is
        return


def _all_told(folder: Path) -> list[object]:
    """Return all that commands tell of a bank, or its faults."""
    try:
        told: list[object] = [check_bank(folder)]
        whole = list_questions(folder, Wanted())
        told += [whole, prove_bank(folder)]
        for wanted in (
            Wanted(states=("proved", "unsigned")),
            Wanted(states=("stale",)),
            Wanted(words=("WORK", "out"), tier="core"),
            Wanted(author="ht"),
        ):
            try:
                told += [list_questions(folder, wanted), find_questions(folder, wanted)]
            except Exception as error:
                told.append(str(error))
        shown = show_questions(folder, [line.id for line in whole.lines])
        for word in STATES:
            found = find_questions(folder, Wanted(states=(word,))).lines
            assert [line.id for line in found] == [
                question.id for question in shown if _is(question.state, word)
            ]
        for question in shown:
            state = dataclasses.replace(question.state, entry=None)
            told.append(dataclasses.replace(question, state=state))
    except FileFaults as error:
        return [str(error)]
    return told


def _is(state: EntryState, word: str) -> bool:
    if state.retired is not None or word == "retired":
        return state.retired is not None and word == "retired"
    return word in (state.outcome.state.value.replace(" ", "-"), state.sign.state.value)


def _whole(bank: Bank) -> list[object]:
    found: list[object] = [bank.name, bank.title, bank.terms, bank.authors]
    for topic in bank.topics:
        found += [topic.id, topic.title, topic.path, topic.generated, topic.pinned]
        found += [topic.prerequisites]
        found += [
            (entry.item, entry.topic, entry.bank, entry.path, entry.line) for entry in topic.entries
        ]
    return found


def _whole_or_faults(read: Callable[[Path], Bank], folder: Path) -> list[object]:
    try:
        return _whole(read(folder))
    except FileFaults as error:
        return [str(error)]


ONE: tuple[str, Any] = ("write", ("number.sums", [(1, 0, "core", True)], False))


@given(st.lists(steps, min_size=1, max_size=6))
@example([ONE, ("hide", "number.sums")])
@example([ONE, ("remove", "number.sums"), ("write", ("number.more", *ONE[1][1:]))])
@example([ONE, ("sign", 1), ("hide", "number.sums")])
@example([ONE, ("sign", 1), ("remove", "number.sums"), ("write", ("number.more", *ONE[1][1:]))])
@example([ONE, ("sign", 1), ("write", ("number.sums", [(1, 1, "core", True)], True))])
@example([ONE, ("authors", "AB"), ("authors", "HT"), ("write", ("ratio.share", ONE[1][1], True))])
# The examples above are of each way an index could be out of date; the rest mixes them.
@whole
@settings(max_examples=cases(3, 100, 10))
def test_any_edits_give_the_same_with_the_index_as_without(
    tmp_path_factory: pytest.TempPathFactory, done: list[tuple[str, Any]]
) -> None:
    home = tmp_path_factory.mktemp("same")
    folder = home / "bank"
    folder.mkdir()
    (folder / "bank.toml").write_text(HEAD, encoding="utf-8")
    with pytest.MonkeyPatch.context() as patch:
        # Stamps are believed at once, so that what they miss would show.
        patch.setattr(stamps, "SETTLED", -(10**12))
        for step in done:
            _apply(folder, step)
            patch.setenv("ITEMBANK_INDEX", str(home / "index"))
            kept = _all_told(folder)
            assert kept == _all_told(folder)  # all of it is known by now
            patch.setenv("ITEMBANK_INDEX", "none")
            assert kept == _all_told(folder)
            plain = _whole_or_faults(read_bank, folder)
            patch.setenv("ITEMBANK_INDEX", str(home / "index"))
            assert _whole_or_faults(open_bank, folder) == plain
    shutil.rmtree(home)


def test_an_edit_within_one_tick_of_the_clock_is_seen(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # A file system whose clock stands still: the stamp of the file is the same after the edit.
    monkeypatch.setenv("ITEMBANK_INDEX", str(tmp_path / "index"))
    (tmp_path / "bank.toml").write_text(HEAD)
    path = tmp_path / "number.sums.toml"
    path.write_text(_text("number.sums", [(1, 0, "core", False)], False))
    real = stamps._stamp
    now = time.time_ns()

    def still(found: os.stat_result, at: int) -> tuple[str, bool]:
        return str(found.st_size), real(found, at)[1] and now > 0

    monkeypatch.setattr(stamps, "_stamp", still)
    assert open_bank(tmp_path).find("a-1").item.key == "7"
    path.write_text(_text("number.sums", [(1, 2, "core", False)], False))
    assert open_bank(tmp_path).find("a-1").item.key == "8"


def test_a_file_that_did_not_change_is_not_read_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("ITEMBANK_INDEX", str(tmp_path / "index"))
    monkeypatch.setattr(stamps, "SETTLED", -(10**12))
    (tmp_path / "bank.toml").write_text(HEAD)
    (tmp_path / "number.sums.toml").write_text(_text("number.sums", [(1, 0, "core", False)], False))
    open_bank(tmp_path)

    def no(*_: object) -> None:
        raise AssertionError("a file was read")

    for name in (
        "itembank.bank.index.rows.refresh.read_stamped",
        "itembank.bank.index.rows.keeping.read_new",
    ):
        monkeypatch.setattr(name, no)
    assert open_bank(tmp_path).find("a-1").item.key == "7"
