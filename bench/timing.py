"""Clocks, medians and tables for the bench."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from statistics import median

ROOT = Path(__file__).parents[1]


class Missing(Exception):
    """A part to be measured is not there; the message says what to do."""


@dataclass(frozen=True)
class Cost:
    """What one run took, in seconds: by the clock, and on all cores together.

    `process` is the whole life of a process of which the run was a part.
    """

    wall: float
    cpu: float
    process: float = 0.0


def run_command(command: Sequence[str], cwd: Path = ROOT) -> Cost:
    """Run a command from cold and return what it took.

    Raises:
        Missing: it cannot be run, or ends with an error.
    """
    before = os.times()
    start = time.perf_counter()
    try:
        done = subprocess.run(command, cwd=cwd, capture_output=True, encoding="utf-8", check=False)
    except OSError as error:
        raise Missing(f"{command[0]} cannot be run: {error.strerror}") from error
    wall = time.perf_counter() - start
    after = os.times()
    if done.returncode:
        last = (done.stderr.strip() or "no message").splitlines()[-1]
        raise Missing(f"{' '.join(command[1:4])} … ended with {done.returncode}: {last}")
    cpu = after.children_user + after.children_system
    return Cost(wall, cpu - before.children_user - before.children_system)


def in_turn(runs: dict[str, Callable[[], Cost]], rounds: int) -> dict[str, Cost | str]:
    """Run everything `rounds` times, turn and turn about, and return medians by name.

    Taking turns spreads whatever else the machine does over all of them alike. What cannot
    be run is told by its message in place of a cost.
    """
    found: dict[str, list[Cost]] = {name: [] for name in runs}
    faults: dict[str, str] = {}
    for _ in range(rounds):
        for name, run in runs.items():
            if name not in faults:
                try:
                    found[name].append(run())
                except Missing as error:
                    faults[name] = str(error)
    return {
        name: faults[name]
        if name in faults
        else Cost(
            median(cost.wall for cost in costs),
            median(cost.cpu for cost in costs),
            median(cost.process for cost in costs),
        )
        for name, costs in found.items()
    }


def fraction_sum_seconds() -> float:
    """Return what adding two fractions takes here: a unit that no machine's speed changes."""
    first, other = Fraction(3, 8), Fraction(5, 12)
    best = float("inf")
    for _ in range(7):
        start = time.process_time()
        for _ in range(2_000):
            first + other
        best = min(best, time.process_time() - start)
    return best / 2_000


def script(name: str) -> list[str]:
    """Return how to run a program that was installed beside this Python."""
    beside = Path(sys.executable).parent / name
    if not beside.exists():
        raise Missing(f"{name} is not installed here: run make bench")
    return [str(beside)]


def table(rows: Sequence[Sequence[str]]) -> str:
    """Return rows as text: the first column set left, the others right."""
    widths = [max(len(row[i]) for row in rows) for i in range(len(rows[0]))]
    lines = []
    for row in rows:
        first, *rest = (
            cell.ljust(width) if i == 0 else cell.rjust(width)
            for i, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        lines.append("  " + "   ".join((first, *rest)).rstrip())
    return "\n".join(lines)
