"""How a bank's commands grow with the bank: from 500 items to those of a trust of forty schools.

    python bench/bank_growth.py [SIZES…]     as in 500 5000 50000 200000

Every command is a process of its own, as a teacher starts it, with the index as an earlier
command left it. What is told is the time of a core, of the processes that a command starts too,
as multiples of the start of a command that does nothing, in the same run: so it hardly changes
with what else the machine does. With no sizes the largest is left out, which takes long.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import NamedTuple

from timing import table

SIZES = (500, 5_000, 50_000)
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


class Spent(NamedTuple):
    """What a command took: seconds of a core and by the clock, megabytes of its largest process."""

    core: float
    clock: float
    memory: float


def report(sizes: tuple[int, ...] = SIZES) -> str:
    """Measure and return two tables: ratios that show the growth, and seconds of a core."""
    start = min(_run(["--version"], {}).core for _ in range(TRIES))
    ratios = [("items", *COMMANDS, "in all")]
    seconds = [("items", "index built", "items/s of a core", "memory", *COMMANDS)]
    least = 0.0
    for size in sizes:
        built, spent = _of_size(size)
        core = {name: cost.core for name, cost in spent.items()}
        least = least or sum(core.values())
        largest = max(cost.memory for cost in (built, *spent.values()))
        grown = sum(core.values()) / least
        ratios.append(
            (f"{size:,}", *(f"{core[name] / start:.1f}" for name in core), f"{grown:.1f}")
        )
        seconds.append(
            (
                f"{size:,}",
                f"{built.core:.1f} ({built.clock:.1f})",
                f"{size / built.core:,.0f}",
                f"{largest:.0f} MB",
                *(f"{cost.core:.2f} ({cost.clock:.2f})" for cost in spent.values()),
            )
        )
    return "\n".join(
        [
            f"Banks of growing size, each command from cold, in starts of one ({start:.2f} s)",
            table(ratios),
            "",
            "The same in seconds of a core, in brackets by the clock",
            table(seconds),
        ]
    )


def _of_size(size: int) -> tuple[Spent, dict[str, Spent]]:
    """Return what the index of a bank of some size took, and each command the least of some."""
    with tempfile.TemporaryDirectory() as folder:
        bank = Path(folder) / "bank"
        # By another process: what this one ever held counts for every command that it starts.
        made = Path(__file__).with_name("bank_made.py")
        subprocess.run([sys.executable, str(made), str(bank), str(size)], check=True)
        values = {"bank": str(bank), "out": str(Path(folder) / "out")}
        where = {"ITEMBANK_INDEX": str(Path(folder) / "index")}
        built = _run(["bank", "check", str(bank)], where)
        spent = {}
        for name, words in COMMANDS.items():
            typed = [word.format(**values) for word in words]
            _run(typed, where)  # what it needs for the first time is worked out
            tries = [_after_edit(bank / f"{TOPIC}.toml", name, typed, where) for _ in range(TRIES)]
            spent[name] = Spent(
                min(cost.core for cost in tries),
                min(cost.clock for cost in tries),
                max(cost.memory for cost in tries),
            )
    return built, spent


def _after_edit(file: Path, name: str, typed: list[str], where: dict[str, str]) -> Spent:
    if name in EDITED:
        _new_question(file)
    return _run(typed, where)


def _new_question(file: Path) -> None:
    """Change the first question of a file into one that nobody has met."""
    text = file.read_text(encoding="utf-8")
    place = time.time_ns() % 10**9
    head, mark, rest = text.partition('prompt = "')
    rest = rest.partition("\n")[2].partition("\n")[2]
    asked = f'Solve {{x + 1 = {place + 1}}}."\nkey = "x = {place}"\n'
    file.write_text(f"{head}{mark}{asked}{rest}", encoding="utf-8")


def _run(typed: list[str], where: dict[str, str]) -> Spent:
    # As for a teacher, whose Python keeps what it has compiled.
    own = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    begun = time.perf_counter()
    with subprocess.Popen(
        [sys.executable, "-m", "itembank.cli", *typed],
        env={**own, **where},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    ) as process:
        assert process.stderr is not None
        said = process.stderr.read()
        _, status, used = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise RuntimeError(f"{' '.join(typed)}: {said}")
    clock = time.perf_counter() - begun
    return Spent(used.ru_utime + used.ru_stime, clock, used.ru_maxrss / 1024)


if __name__ == "__main__":
    print(report(tuple(int(word) for word in sys.argv[1:]) or SIZES))
