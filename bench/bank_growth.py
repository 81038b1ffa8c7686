"""How a bank's commands grow with the bank: from 500 items to those of a trust of forty schools.

Every command is a process of its own, as a teacher starts it, with the index as an earlier
command left it. Times are told as multiples of the start of a command that does nothing, in the
same run.
"""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from bank_made import make_bank
from timing import table

SIZES = (500, 5_000, 50_000, 200_000)
TOPIC = "made.linear"
TRIES = 3
COMMANDS: dict[str, tuple[str, ...]] = {
    "show": ("bank", "show", "made-1", "--bank", "{bank}"),
    "list": ("bank", "list", "{bank}", "--topic", TOPIC),
    "find": ("bank", "find", "minibus", "depot", "--bank", "{bank}"),
    "check, one edit": ("bank", "check", "{bank}"),
    "prove, one edit": ("bank", "prove", "{bank}", "--topic", TOPIC),
    "pack": (
        *("pack", "--bank", "{bank}", "--topic", TOPIC, "--topic", "ratio.share"),
        *("--questions-from", "both", "--prefer", "bank", "--output", "{out}", "--replace"),
        *("--questions", "6", "--follow-up", "4", "--seed", "1"),
    ),
}
EDITED = frozenset({"check, one edit", "prove, one edit"})


def report(sizes: tuple[int, ...] = SIZES) -> str:
    """Measure and return a table."""
    rows: list[tuple[str, ...]] = [
        (
            "items",
            "index built",
            "items/s",
            "core ms an item",
            "largest process",
            *COMMANDS,
            "in all",
        )
    ]
    start = min(_seconds(["--version"], {}) for _ in range(TRIES))
    least = 0.0
    for size in sizes:
        with tempfile.TemporaryDirectory() as folder:
            bank = Path(folder) / "bank"
            make_bank(bank, size)
            values = {"bank": str(bank), "out": str(Path(folder) / "out")}
            where = {"ITEMBANK_INDEX": str(Path(folder) / "index")}
            spent = _core_seconds()
            built = _seconds(["bank", "check", str(bank)], where)
            spent = _core_seconds() - spent
            times = {}
            for name, words in COMMANDS.items():
                typed = [word.format(**values) for word in words]
                _seconds(typed, where)  # what it needs for the first time is worked out
                times[name] = min(
                    _timed(bank / f"{TOPIC}.toml", name, typed, where) for _ in range(TRIES)
                )
        least = least or sum(times.values())
        largest = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
        rows.append(
            (
                f"{size:,}",
                f"{built:.1f} s",
                f"{size / built:,.0f}",
                f"{spent / size * 1000:.2f}",
                f"{largest:.0f} MB",
                *(f"{times[name] / start:.1f}" for name in COMMANDS),
                f"{sum(times.values()) / least:.1f}",
            )
        )
    return "\n".join(
        [
            f"Banks of growing size, each command from cold, in starts of one ({start:.2f} s)",
            table(rows),
            "  Milliseconds of a core that indexing takes; memory of the largest process so far.",
        ]
    )


def _core_seconds() -> float:
    """Return what the commands so far took of all cores, whatever else the machine did."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def _timed(file: Path, name: str, typed: list[str], where: dict[str, str]) -> float:
    if name in EDITED:
        text = file.read_text(encoding="utf-8")
        file.write_text(f"{text}# {time.time_ns()}\n", encoding="utf-8")
        if name.startswith("prove"):
            _new_question(file)
    return _seconds(typed, where)


def _new_question(file: Path) -> None:
    """Change the first question of a file into one that nobody has met."""
    text = file.read_text(encoding="utf-8")
    place = time.time_ns() % 10**9
    head, mark, rest = text.partition('prompt = "')
    rest = rest.partition("\n")[2].partition("\n")[2]
    asked = f'Solve {{x + 1 = {place + 1}}}."\nkey = "x = {place}"\n'
    file.write_text(f"{head}{mark}{asked}{rest}", encoding="utf-8")


def _seconds(typed: list[str], where: dict[str, str]) -> float:
    begun = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-m", "itembank.cli", *typed],
        env={**os.environ, **where},
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise RuntimeError(f"{' '.join(typed)}: {done.stderr}")
    return time.perf_counter() - begun


if __name__ == "__main__":
    print(report(tuple(int(word) for word in sys.argv[1:]) or SIZES))
