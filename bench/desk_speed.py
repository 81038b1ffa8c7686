"""The desk: how long after the command its first page is there, and how long each page takes."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterable
from functools import partial
from http.client import HTTPConnection
from pathlib import Path
from statistics import median

from bank_made import make_bank
from timing import ROOT, Cost, Missing, in_turn, run_command, script, table

ROUNDS = 5
LOOKS = 7
DAY = "2026-11-28"
LESSON = "/class/8K/lesson/2026-11-30/1"
PAGES = {
    "today": "/",
    "week": "/class/8K/week/2026-11-30",
    "lesson": LESSON,
    "board": f"{LESSON}/board",
    "record": f"{LESSON}/record",
    "questions": "/questions/larkhythe",
}
LARGE = 5_000
"""Items of the bank that the second table's desk draws on."""
LARGE_BANK = "/questions/made"
LARGE_PAGES = PAGES | {
    "questions": LARGE_BANK,
    "questions, a later page": f"{LARGE_BANK}?page=90",
    "questions, by words": f"{LARGE_BANK}?words=solve",
    "questions, by state": f"{LARGE_BANK}?state=proved&tier=core",
    "a question": f"{LARGE_BANK}/of/made-4",
    "write a question": f"{LARGE_BANK}/new",
}
FIRST, EACH, LARGE_EACH = 1.0, 0.15, 0.3
"""Seconds that the first page, and each later one, may take on an ordinary machine."""
PATIENCE = 60.0


class RunningDesk:
    """A desk of its own process at a port of its own; `first` is when its first page was there."""

    def __init__(self, home: Path) -> None:
        began = time.perf_counter()
        command = [*script("itembank"), "desk", "--no-browser", "--department", str(home)]
        environment = os.environ | {"ITEMBANK_TODAY": DAY, "PYTHONUNBUFFERED": "1"}
        self._process = subprocess.Popen(command, stdout=subprocess.PIPE, env=environment)
        assert self._process.stdout is not None
        for line in self._process.stdout:
            _, found, rest = line.decode().partition("http://127.0.0.1:")
            if found:
                self._port = int("".join(filter(str.isdigit, rest.split("/")[0])))
                break
        else:
            raise Missing("the desk did not start.")
        self.look("/")
        self.first = time.perf_counter() - began

    def look(self, page: str) -> Cost:
        """Get a page and return what that took by the clock."""
        began = time.perf_counter()
        line = HTTPConnection("127.0.0.1", self._port, timeout=PATIENCE)
        line.request("GET", page)
        answer = line.getresponse()
        answer.read()
        line.close()
        if answer.status != 200:
            raise Missing(f"{page} was answered with {answer.status}.")
        return Cost(time.perf_counter() - began, 0.0)

    def stop(self) -> None:
        """End it."""
        self._process.terminate()
        self._process.wait(PATIENCE)
        assert self._process.stdout is not None
        self._process.stdout.close()


def report() -> str:
    """Measure and return two tables: the demo department, and one with a large bank."""
    os.environ.setdefault("ITEMBANK_TODAY", DAY)
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder) / "larkhythe"
        shutil.copytree(ROOT / "banks" / "larkhythe", home)
        demo = _table(home, "of the demo department", PAGES, EACH)
        make_bank(home / "made", LARGE)
        settings = home / "department.toml"
        text = settings.read_text("utf-8")
        line = '# banks = ["../key-stage-3"]'
        if line not in text:
            raise Missing(f"{settings} no longer shows where banks are named.")
        settings.write_text(text.replace(line, 'banks = ["made"]'), "utf-8")
        bank = [*script("itembank"), "bank", "prove", str(home / "made")]
        run_command(bank)
        large = _table(home, f"with a bank of {LARGE:,} items", LARGE_PAGES, LARGE_EACH)
    return f"{demo}\n\n{large}"


def _table(home: Path, whose: str, wanted: dict[str, str], each: float) -> str:
    """Plan a week, measure the pages that are `wanted` and return a table of them."""
    plan = ["week", "8K", "--from", "2026-11-30", "--replace", "--department", str(home)]
    run_command([*script("itembank"), *plan, "--output", str(home)])
    found = in_turn(
        {
            "python -c pass": partial(run_command, [sys.executable, "-c", "pass"]),
            "first page": partial(_first, home),
        },
        ROUNDS,
    )
    desk = RunningDesk(home)
    try:
        pages = dict(_pages(desk, wanted))
    finally:
        desk.stop()
    base, first = found["python -c pass"], found["first page"]
    if not isinstance(base, Cost) or not isinstance(first, Cost):
        raise Missing(f"the first page was not measured: {first}")
    rows = [("page", "seconds", "× python", "of its limit")]
    times = [("first, from the command", first.wall, FIRST)]
    times += [(name, wall, each) for name, wall in pages.items()]
    rows += [
        (name, f"{wall:.3f}", f"{wall / base.wall:.1f}", f"{wall / limit:.2f}")
        for name, wall, limit in times
    ]
    head = f"The desk {whose} (limits: first page {FIRST} s, each page {each} s)"
    return "\n".join([head, table(rows)])


def _pages(desk: RunningDesk, wanted: dict[str, str]) -> Iterable[tuple[str, float]]:
    for name, where in wanted.items():
        desk.look(where)  # what is worked out once is no part of a page's time
        yield name, median(desk.look(where).wall for _ in range(LOOKS))


def _first(home: Path) -> Cost:
    desk = RunningDesk(home)
    desk.stop()
    return Cost(desk.first, 0.0)
