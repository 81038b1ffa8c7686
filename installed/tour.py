"""Goes through README.md with an installed tool, far from any checkout.

    python -m installed.tour .venv-floors/bin

Each section is walked in a new folder, into which `itembank demo` has put what ships. What sets
up an environment is left out: there is one. Every other command has to end well and say
something.
"""

from __future__ import annotations

import os
import shlex
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from installed.open_desk import first_page
from tests.readme import blocks


def walks() -> dict[str, list[list[str]]]:
    """Return the commands of each section of README.md that need no checkout, as words."""
    found: dict[str, list[list[str]]] = {}
    for heading, lines in blocks():
        for words in map(shlex.split, lines):
            if Path(words[0]).name in ("itembank", "cp"):
                found.setdefault(heading, []).append(words)
    return found


def environment(programs: Path) -> dict[str, str]:
    """Return an environment that knows of the installed tool and of no other code of ours."""
    kept = {k: v for k, v in os.environ.items() if not k.startswith(("PYTHON", "ITEMBANK"))}
    return kept | {
        "PATH": f"{programs}{os.pathsep}{kept.get('PATH', '')}",
        "PYTHONIOENCODING": "utf-8",
        "ITEMBANK_TODAY": "2026-11-28",  # as README.md says
        "ITEMBANK_INITIALS": "",
        "XDG_CONFIG_HOME": str(programs / "no-settings"),
        "HOME": str(programs / "no-home"),
    }


def run(words: list[str], folder: Path, programs: Path) -> str:
    """Run one command in a folder; return what it says.

    Raises:
        SystemExit: it ended badly, or said nothing.
    """
    command = [str(programs / Path(words[0]).name), *words[1:]]
    if words[1:2] == ["desk"] and "--shortcut" not in words:
        return first_page(command, folder, environment(programs))
    done = subprocess.run(
        command,
        cwd=folder,
        env=environment(programs),
        encoding="utf-8",
        capture_output=True,
        check=False,
    )
    if done.returncode or not done.stdout.strip():
        sys.exit(f"failed: {shlex.join(words)}\n{done.stdout}{done.stderr}")
    return done.stdout


def main(programs: Path) -> None:
    """Walk through every section, with the programs of an environment."""
    count = 0
    with tempfile.TemporaryDirectory(prefix="itembank-tour-") as name:
        top = Path(name).resolve()
        code = run(["python", "-c", "import itembank; print(itembank.__file__)"], top, programs)
        if not Path(code.strip()).is_relative_to(programs.parent.resolve()):
            sys.exit(f"failed: this is not the installed tool but {code}")
        version = run(["itembank", "--version"], top, programs)
        for number, (heading, commands) in enumerate(walks().items()):
            folder = top / str(number)
            folder.mkdir()
            for words in [["itembank", "demo"], *commands]:
                if words[0] == "cp":
                    shutil.copytree(folder / words[-2], folder / words[-1])
                elif run(words, folder, programs) == version:
                    sys.exit(f"failed: {shlex.join(words)} only says which version this is")
                count += 1
            print(f"{heading}: {len(commands)} commands", flush=True)
    if count < 30:
        sys.exit("failed: README.md shows hardly any commands; are its blocks read right?")
    print(f"The tour of README.md: {count} passed, 0 failed")


if __name__ == "__main__":
    main(Path(sys.argv[1]).absolute())
