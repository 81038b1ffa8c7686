"""A bank of 5,000 items: read and checked, proved by both roads, and searched for twins."""

from __future__ import annotations

import os
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from bank_made import make_bank
from timing import Cost, fraction_sum_seconds, table

from itembank.bank.proof.prove import prove_bank
from itembank.bank.question.twins import bank_twins
from itembank.bank.read.load import read_bank
from itembank.items.topics.registry import topics
from itembank.processes.work_place import ThisMachine

COUNT = 5_000
PROCESSES = 2
LIMITS = {"read and check": 5.0, "prove every key": 60.0}
"""Seconds that each may take for a bank of 5,000 items on two cores."""
T = TypeVar("T")


def report() -> str:
    """Measure and return a table."""
    topics()  # laid out before the clock starts: the other reports say what that takes
    unit = fraction_sum_seconds()
    with tempfile.TemporaryDirectory() as folder:
        made = Path(folder) / "made"
        make_bank(made, COUNT)
        bank, reading = _timed(lambda: read_bank(made, processes=PROCESSES))
        states, proving = _timed(lambda: prove_bank(bank, place=ThisMachine(PROCESSES)))
        groups, finding = _timed(lambda: bank_twins(bank))
    rows = [("part", "seconds", "of its limit", "on all cores", "sums of fractions an item")]
    for name, cost in (
        ("read and check", reading),
        ("prove every key", proving),
        ("find twins", finding),
    ):
        limit = f"{cost.wall / LIMITS[name]:.2f}" if name in LIMITS else "–"
        sums = f"{cost.cpu / COUNT / unit:,.0f}"
        rows.append((name, f"{cost.wall:.2f}", limit, f"{cost.cpu:.2f}", sums))
    found = Counter(state.outcome.state.value for state in states)
    told = ", ".join(f"{number:,} {state}" for state, number in found.most_common())
    return "\n".join(
        [
            f"A bank of {COUNT:,} items on {PROCESSES} cores (limits: 5 s to check, 60 s to prove)",
            table(rows),
            f"  Of them {told}; {len(groups):,} groups of twins.",
        ]
    )


def _timed(run: Callable[[], T]) -> tuple[T, Cost]:
    before, start = os.times(), time.perf_counter()
    found = run()
    wall, after = time.perf_counter() - start, os.times()
    cpu = sum(after[:4]) - sum(before[:4])  # this process and those it started
    return found, Cost(wall, cpu)
