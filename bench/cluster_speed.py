"""Proofs on a cluster, against processes of one machine, and what very many of them would take.

The scheduler and two workers run on this machine's loopback interface, so both places have the
same two cores: what the cluster takes longer is what handing the work over and back costs.
"""

from __future__ import annotations

import contextlib
import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from bank_made import make_bank
from timing import ROOT, Missing, table

from itembank.bank.proof.prove import Question, judge_question
from itembank.bank.read.load import read_bank
from itembank.processes.cluster import Cluster
from itembank.processes.parcel import packed
from itembank.processes.work_place import Place, ThisMachine, all_or_lost

COUNT = 1_500
WORKERS = 2
MANY = 10_000_000
SIZES = (1, 10, 100)


def report() -> str:
    """Measure and return a table."""
    with tempfile.TemporaryDirectory() as folder, _cluster(Path(folder)) as address:
        make_bank(Path(folder) / "made", COUNT)
        entries = list(read_bank(Path(folder) / "made", processes=1).entries())
        questions = [Question(entry) for entry in entries]
        here, said = ThisMachine(WORKERS), []
        with Cluster(address, said.append) as cluster:
            _Run(cluster, questions[:200])  # its processes have loaded what they need
            _Run(here, questions[:200])
            alone = _Run(here, questions)
            there = _Run(cluster, questions)
        if said:
            raise Missing(f"the cluster was not used: {said[0]}")
        if alone.found != there.found:
            raise Missing("the cluster came to other results")
    rows = [("place", "seconds", "× processes", "µs of the asking process an item")]
    for name, run in (("2 processes here", alone), ("2 workers of a cluster", there)):
        own = f"{run.own / COUNT * 1e6:,.0f}"
        rows.append((name, f"{run.wall:.2f}", f"{run.wall / alone.wall:.2f}", own))
    # In seconds of a core, which other work on this machine does not make longer.
    dearest = alone.all / COUNT * max(1.0, there.wall / alone.wall)
    asking = there.own / COUNT
    size = len(packed(questions)) / COUNT
    lines = [
        f"{COUNT:,} items proved by both roads on {WORKERS} cores; the results are the same",
        table(rows),
        f"  An item goes out as {size:,.0f} bytes and takes a worker {dearest * 1e3:.1f} ms.",
        f"  By these, {MANY:,} items would take, where nothing else holds workers or network up:",
    ]
    for workers in SIZES:
        seconds = MANY * max(dearest / workers, asking)
        limit = " (as fast as one process can hand out)" if asking > dearest / workers else ""
        name = "1 worker" if workers == 1 else f"{workers} workers"
        lines.append(f"    {name}: {seconds / 3600:.1f} hours{limit}")
    return "\n".join(lines)


class _Run:
    """What came of proving some questions in a place, and what it took."""

    def __init__(self, place: Place, questions: list[Question]) -> None:
        before, start = os.times(), time.perf_counter()
        self.found = all_or_lost(place, judge_question, questions, loads=["sympy"])
        self.wall, after = time.perf_counter() - start, os.times()
        self.own = after.user + after.system - before.user - before.system
        self.all = sum(after[:4]) - sum(before[:4])  # with processes of this one


@contextlib.contextmanager
def _cluster(folder: Path) -> Iterator[str]:
    """Give the address of a scheduler with its workers; all are ended afterwards."""
    place = folder / "scheduler.json"
    env = {**os.environ, "PYTHONPATH": os.pathsep.join([str(ROOT), *sys.path[1:]])}

    def start(what: str, *options: str) -> subprocess.Popen[bytes]:
        command = [sys.executable, "-m", f"distributed.cli.dask_{what}", "--host", "127.0.0.1"]
        command += ["--no-dashboard", "--scheduler-file", str(place), *options]
        quiet = subprocess.DEVNULL
        return subprocess.Popen(command, env=env, cwd=folder, stdout=quiet, stderr=quiet)

    running = [start("scheduler", "--port", "0", "--no-show")]
    running += [start("worker", "--nthreads", "1", "--no-nanny") for _ in range(WORKERS)]
    try:
        yield _address(place)
    finally:
        for process in running:
            process.kill()
            process.wait()


def _address(place: Path) -> str:
    for _ in range(1200):
        with contextlib.suppress(OSError, ValueError):
            return str(json.loads(place.read_text())["address"])
        time.sleep(0.05)
    raise Missing("no scheduler began; pip install 'itembank[cluster]'")
