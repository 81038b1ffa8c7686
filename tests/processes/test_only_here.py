"""Nothing starts a process but the part that is there for it, with its guarantees."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent.parent
MODULES = {"multiprocessing", "subprocess", "concurrent.futures", "pty", "joblib"}
CALLS = {"fork", "forkpty", "posix_spawn", "posix_spawnp", "popen", "system", "startfile"}
MAY_START = re.compile(
    "|".join((*(re.escape(name) for name in MODULES), *CALLS, "spawn", "exec", "concurrent"))
    + "|create_subprocess"
)


def starts(text):
    """Return the lines of some code that start a process, or bring in what does."""
    found = []
    if not MAY_START.search(text):
        return found  # most files are not worth parsing
    for node in ast.walk(ast.parse(text)):
        names = []
        match node:
            case ast.Import():
                names = [alias.name for alias in node.names]
            case ast.ImportFrom(level=0):
                module = node.module or ""
                names = [module, *(f"{module}.{alias.name}" for alias in node.names)]
            case ast.Attribute(value=ast.Name("os" | "asyncio"), attr=name):
                names = [f"os.{name}"]
        if any(is_start(name) for name in names):
            found.append(node.lineno)
    return found


def is_start(name):
    module, _, last = name.rpartition(".")
    if module == "os":
        return last in CALLS or last.startswith(("spawn", "exec", "create_subprocess"))
    return any(name == module or name.startswith(f"{module}.") for module in MODULES)


@pytest.mark.parametrize(
    "text",
    [
        *("import subprocess", "from multiprocessing import get_context", "import os\nos.fork()"),
        *("from concurrent import futures", "from concurrent.futures import Future"),
        *("from os import fork", "import os\nos.spawnv(0, 'a', [])", "import multiprocessing.pool"),
        *("import os\nos.system('x')", "import asyncio\nasyncio.create_subprocess_exec('x')"),
    ],
)
def test_what_starts_a_process_is_seen(text):
    assert starts(text)


def test_what_starts_none_is_let_be():
    assert not starts("import os, concurrent\nos.path.join('a')\nfrom os import getpid\nfork = 1")


def test_processes_are_started_in_one_place():
    here = ROOT / "itembank" / "processes"
    files = [*(ROOT / "itembank").rglob("*.py"), *(ROOT / "generators").rglob("*.py")]
    found = [
        f"{path.relative_to(ROOT).as_posix()}:{line}"
        for path in files
        if here not in path.parents
        for line in starts(path.read_text("utf-8"))
    ]
    assert found == []
    assert any(starts(path.read_text("utf-8")) for path in here.glob("*.py"))
