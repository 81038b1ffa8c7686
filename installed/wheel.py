"""Builds the tool's wheel from a copy of the checkout, so that the build leaves nothing in it.

python -m installed.wheel FOLDER        puts the wheel there
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[1]
NEEDED = ("pyproject.toml", "setup.py", "MANIFEST.in", "README.md", "LICENSE")
FOLDERS = ("itembank", "generators", "banks")


def build(folder: Path) -> None:
    """Build the wheel into `folder`.

    Raises:
        CalledProcessError: pip could not build it, and has said why.
    """
    with tempfile.TemporaryDirectory(prefix="itembank-wheel-") as name:
        copy = Path(name)
        for one in NEEDED:
            shutil.copy(ROOT / one, copy)
        for one in FOLDERS:
            ignored = shutil.ignore_patterns("__pycache__")
            shutil.copytree(ROOT / one, copy / one, ignore=ignored)
        pip = [sys.executable, "-m", "pip", "wheel", "--quiet", "--disable-pip-version-check"]
        subprocess.run([*pip, "--no-deps", "--wheel-dir", str(folder), name], check=True)


if __name__ == "__main__":
    build(Path(sys.argv[1]))
