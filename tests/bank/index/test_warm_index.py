"""What a command looks up in an index it does not load the readers and provers for."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from itembank.work.bank.proving import prove_bank
from itembank.work.bank.signing_off import SignRequest, sign_questions
from tests.bank.bankfolder import item, make_bank

HEAVY = {"lark", "pydantic", "sympy", "mpmath", "numpy", "reportlab", "ziamath", "generators"}
COMMANDS = (
    ["bank", "show", "a-1"],
    ["bank", "list", "--topic", "ratio.share"],
    ["bank", "list", "--state", "signed"],
    ["bank", "find", "work"],
    ["bank", "check"],
    ["bank", "prove"],
)
RUN = """
import json, sys
from itembank.cli.main import run
for arguments in json.loads(sys.argv[1]):
    try:
        run([*arguments, "--bank", sys.argv[2]] if "check" not in arguments and "prove" not in
            arguments else [*arguments, sys.argv[2]])
    except SystemExit as end:
        assert not end.code, (arguments, end.code)
    print()
    print(json.dumps([arguments, sorted({name.partition(".")[0] for name in sys.modules})]))
"""


def loaded(folder: Path) -> list[tuple[list[str], set[str]]]:
    done = subprocess.run(
        [sys.executable, "-c", RUN, json.dumps(COMMANDS), str(folder)],
        capture_output=True,
        text=True,
        check=True,
    )
    lines = [line for line in done.stdout.splitlines() if line.startswith('[["bank"')]
    return [(arguments, set(modules)) for arguments, modules in map(json.loads, lines)]


def test_what_is_known_is_told_without_what_reads_and_proves(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("ITEMBANK_INDEX", str(tmp_path / "index"))
    folder = tmp_path / "bank"
    make_bank(folder, {"ratio.share": item("a-1") + item("a-2", "Work out {1 + 1}.", "2")})
    prove_bank(folder)
    sign_questions(folder, SignRequest("HT", ("a-1",)))
    first = loaded(folder)
    again = loaded(folder)
    assert len(first) == len(again) == len(COMMANDS)
    assert "sympy" not in first[-1][1]  # all was proved before
    for arguments, modules in again:
        assert not HEAVY & modules, arguments
