"""The desk: how long after the command its first page is there, and how long each page takes."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from functools import partial
from http.client import HTTPConnection
from pathlib import Path
from statistics import median

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
FIRST, EACH = 1.0, 0.15
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
    """Measure and return a table."""
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder) / "larkhythe"
        shutil.copytree(ROOT / "banks" / "larkhythe", home)
        plan = ["week", "8K", "--from", "2026-11-30", "--department", str(home)]
        os.environ.setdefault("ITEMBANK_TODAY", DAY)
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
            pages = {}
            for name, where in PAGES.items():
                desk.look(where)  # what is worked out once is no part of a page's time
                pages[name] = median(desk.look(where).wall for _ in range(LOOKS))
        finally:
            desk.stop()
    base, first = found["python -c pass"], found["first page"]
    if not isinstance(base, Cost) or not isinstance(first, Cost):
        raise Missing(f"the first page was not measured: {first}")
    rows = [("page", "seconds", "× python", "of its limit")]
    times = [("first, from the command", first.wall, FIRST)]
    times += [(name, wall, EACH) for name, wall in pages.items()]
    rows += [
        (name, f"{wall:.3f}", f"{wall / base.wall:.1f}", f"{wall / limit:.2f}")
        for name, wall, limit in times
    ]
    head = f"The desk of the demo department (limits: first page {FIRST} s, each page {EACH} s)"
    return "\n".join([head, table(rows)])


def _first(home: Path) -> Cost:
    desk = RunningDesk(home)
    desk.stop()
    return Cost(desk.first, 0.0)
