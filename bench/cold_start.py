"""A whole pack, and a record of how it went, from cold: the interpreter's start included."""

from __future__ import annotations

import sys
import tempfile
from functools import partial
from pathlib import Path

from timing import ROOT, Cost, in_turn, run_command, script, table

ROUNDS = 7
LIMITS = {"itembank --help": 0.1, "itembank pack": 0.6, "itembank record": 0.3}
"""Seconds that each may take on two cores of an ordinary machine."""


def report() -> str:
    """Measure and return a table."""
    with tempfile.TemporaryDirectory() as folder:
        itembank = script("itembank")
        # Results go to a copy of the department, whose own folder stays as it is.
        home = Path(folder) / "department"
        home.mkdir()
        text = (ROOT / "banks" / "larkhythe" / "department.toml").read_text(encoding="utf-8")
        (home / "department.toml").write_text(text, encoding="utf-8")
        record = ["record", "8K", "--bands", "8 12 9", "--replace", "--output", folder]
        record += ["--department", str(home)]
        demo = ["pack", "--department", str(ROOT / "banks" / "larkhythe"), "--replace"]
        demo += ["--output", folder]
        found = in_turn(
            {
                "python -c pass": partial(run_command, [sys.executable, "-c", "pass"]),
                "itembank --help": partial(run_command, [*itembank, "--help"]),
                "itembank pack": partial(run_command, [*itembank, *demo]),
                "itembank record": partial(run_command, [*itembank, *record]),
            },
            ROUNDS,
        )
        files = sorted(file.name for file in Path(folder).glob("8K-*/*"))
    base = found["python -c pass"]
    rows = [("command", "seconds", "× python", "of its limit", "on all cores")]
    faults = []
    for name, cost in found.items():
        if isinstance(cost, str):
            faults.append(f"  {name} was not measured: {cost}")
            continue
        limit = f"{cost.wall / LIMITS[name]:.2f}" if name in LIMITS else "–"
        times = f"{cost.wall / base.wall:.1f}" if isinstance(base, Cost) else "–"
        rows.append((name, f"{cost.wall:.3f}", times, limit, f"{cost.cpu:.3f}"))
    head = f"From cold, median of {ROUNDS}, in turn (limits: help 0.1 s, pack 0.6 s, record 0.3 s)"
    tail = [f"  The pack: {', '.join(files)}."] if files else []
    return "\n".join([head, table(rows), *tail, *faults])
