"""The twins of one question are found without reading the words of the whole bank."""

from __future__ import annotations

import random
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from itembank.bank.index.kept_twins import twins_of
from itembank.bank.index.opened import KeptBank, open_bank
from itembank.bank.index.store.index_remark import FEW_ITEMS, watch
from itembank.bank.question.twins import twins
from itembank.cli.bank.show import question_text
from itembank.work.bank import looking
from itembank.work.bank.finding_twins import find_twins
from itembank.work.bank.looking import show_questions
from tests.bank.bankfolder import item, make_bank
from tests.depth import cases, whole

BANKS = Path(__file__).parents[3] / "banks"


def asked(bank: KeptBank) -> int:
    return int(bank.store.rows("SELECT COUNT(*) FROM question")[0][0])


def text(id: str, prompt: str, key: str, **more: str) -> str:
    lines = "\n".join(f"{name} = {value}" for name, value in more.items())
    return f'\n[[items]]\nid = "{id}"\ntier = "core"\nprompt = "{prompt}"\nkey = "{key}"\n{lines}\n'


DISGUISES = [
    ("Work out {1/2 × 46}.", "23", "Find {46 × 1/2}.", "23"),
    ("Solve {7x + 12 = 96}.", "x = 12", "Solve {96 = 12 + 7y}.", "y = 12"),
    ("Work out {0.5 × 31}.", "15.5", "Work out {31 × .50}.", "15.5"),
    ("Work out {14^2}.", "196", "Work out {14²}.", "196"),
    ("Work out {3 + 4}.", "7", "Add: {4 + 3}", "7"),
    ("Find the sum of {20} and {45}.", "65", "Work out {45 + 20}.", "65"),
    ("Work out {5^3}.", "125", "Cube {5}.", "125"),
    ("Think of a day in May.", "5", "Think of a day in May!", "5"),
]


def test_the_twins_of_each_question_are_those_of_the_whole_bank(tmp_path: Path) -> None:
    rows = "".join(
        text(f"a-{n}", one, key) + text(f"b-{n}", other, also)
        for n, (one, key, other, also) in enumerate(DISGUISES)
    )
    make_bank(tmp_path / "bank", {"number.sums": 'title = "Sums"\n' + rows})
    entries = list(open_bank(tmp_path / "bank", on_disk=False).entries())
    groups = twins(entries)
    assert len(groups) == len(DISGUISES)
    for entry in entries:
        fresh = open_bank(tmp_path / "bank", on_disk=False)  # nothing was read before
        ((found, unread),) = twins_of(fresh, [fresh.find(entry.address)])
        assert not unread
        group = next((group for group in groups if entry.address in group), (entry.address,))
        assert {*found, entry.address} == {*group}
        assert asked(fresh) < len(entries)
        assert twins_of(fresh, [fresh.find(entry.address)]) == [(found, 0)]


def test_where_very_many_could_be_twins_the_question_is_shown_and_this_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(looking, "MOST_READ", 2)
    monkeypatch.setenv("ITEMBANK_INDEX", str(tmp_path / "index"))
    prompts = ["{7 + 8}", "{7 + 8 + 0.1 − 0.1}", "{7 × 8}", "{8 + 7}", "{8 − 7}", "{7 − 8}"]
    keys = ["15", "15", "56", "15", "1", "-1"]
    rows = [text(f"a-{n}", f"Work out {p}.", keys[n]) for n, p in enumerate(prompts)]
    folder = make_bank(
        tmp_path / "bank", {"number.sums": 'title = "Sums"\n' + "".join(rows)}
    ).folder
    for _ in range(2):  # those left are not taken for looked at
        (found,) = show_questions(folder, ["a-0"])
        assert (found.twins, found.could_be_twins) == (("larkhythe:a-3",), 3)
    told = question_text(found)
    assert "among 3 more questions with the same numbers" in " ".join(told.split())
    find_twins([folder])
    (found,) = show_questions(folder, ["a-0"])
    assert (found.twins, found.could_be_twins) == (("larkhythe:a-3",), 0)
    assert "same numbers" not in question_text(found)


LOADED = """
import sys
from pathlib import Path
from itembank.work.bank import looking
looking.MOST_READ = int(sys.argv[2])
looking.show_questions(Path(sys.argv[1]), ["a-1"])
print([name for name in ("lark", "pydantic", "sympy") if name in sys.modules])
"""


@pytest.mark.parametrize("most", [200, 0])
def test_a_question_that_was_shown_is_shown_again_without_being_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, most: int
) -> None:
    monkeypatch.setenv("ITEMBANK_INDEX", str(tmp_path / "index"))
    one, key, other, also = DISGUISES[1]
    rows = text("a-1", one, key) + text("b-1", other, also)
    make_bank(tmp_path / "bank", {"number.sums": 'title = "Sums"\n' + rows})
    monkeypatch.setattr(looking, "MOST_READ", most)
    show_questions(tmp_path / "bank", ["a-1"])
    told = subprocess.run(
        [sys.executable, "-c", LOADED, str(tmp_path / "bank"), str(most)],
        capture_output=True,
        text=True,
        check=True,
    )
    assert told.stdout.strip() == "[]"


def test_a_twin_that_is_added_later_is_found(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("ITEMBANK_INDEX", str(tmp_path / "index"))
    one, key, other, also = DISGUISES[1]
    head = 'title = "Sums"\n'
    make_bank(tmp_path / "bank", {"number.sums": head + text("a-0", one, key)})
    bank = open_bank(tmp_path / "bank")
    for _ in range(2):
        assert twins_of(bank, [bank.find("a-0")]) == [([], 0)]
    more = text("a-0", one, key) + text("b-0", other, also)
    make_bank(tmp_path / "bank", {"number.sums": head + more})
    bank = open_bank(tmp_path / "bank")
    for _ in range(2):
        assert twins_of(bank, [bank.find("a-0")]) == [(["larkhythe:b-0"], 0)]


@whole
@pytest.mark.parametrize("folder", ["key-stage-3", "larkhythe/questions"])
def test_no_twin_in_a_bank_that_ships_is_missed(folder: str) -> None:
    bank = open_bank(BANKS / folder, on_disk=False)
    entries = list(bank.entries())
    groups = {address: {*group} for group in twins(entries) for address in group}
    for entry in random.Random(4).sample(entries, min(len(entries), cases(12, 25, 25))):
        ((found, _),) = twins_of(bank, [bank.find(entry.address)])
        written = {address for address in found if ":" in address}
        assert written | {entry.address} == groups.get(entry.address, {entry.address})


class Bar:
    def __init__(self) -> None:
        self.said: list[tuple[int, int]] = []
        self.cleared = 0

    def __call__(self, done: int, total: int) -> None:
        self.said.append((done, total))

    def clear(self) -> None:
        self.cleared += 1


@pytest.fixture
def bar() -> Iterator[Bar]:
    shown = Bar()
    watch(lambda: shown)
    yield shown
    watch(Bar)


def test_who_reads_a_bank_by_the_way_shows_how_far_it_has_come(tmp_path: Path, bar: Bar) -> None:
    many = FEW_ITEMS + 5
    make_bank(tmp_path / "bank", {"ratio.share": "".join(item(f"a-{n}") for n in range(many))})
    open_bank(tmp_path / "bank", on_disk=False)
    assert bar.said[-1] == (many, many)
    assert bar.cleared == 1
    make_bank(tmp_path / "few", {"ratio.share": item("a-1")})
    open_bank(tmp_path / "few", on_disk=False)
    assert bar.said[-1] == (many, many)
