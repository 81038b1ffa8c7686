"""Opens the desk as a person would, reads its first page, and stops it again."""

from __future__ import annotations

import re
import subprocess
import threading
import urllib.request
from collections.abc import Mapping, Sequence
from pathlib import Path

ADDRESS = re.compile(r"http://127\.0\.0\.1:\d+/")
WAIT_SECONDS = 60.0


def first_page(command: Sequence[str], folder: Path, environment: Mapping[str, str]) -> str:
    """Return the first page of the desk that a command opens.

    Raises:
        RuntimeError: it never said where it is.
    """
    desk = subprocess.Popen(
        [*command, "--no-browser"],
        cwd=folder,
        env=dict(environment),
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        encoding="utf-8",
    )
    # A desk that hangs before it says anything is stopped, which ends the reading below.
    watch = threading.Timer(WAIT_SECONDS, desk.kill)
    watch.start()
    try:
        assert desk.stdout is not None
        said = desk.stdout.readline()
        found = ADDRESS.search(said)
        if found is None:
            raise RuntimeError(said + desk.stdout.read())
        with urllib.request.urlopen(found[0], timeout=WAIT_SECONDS) as page:
            return str(page.read(), "utf-8")
    finally:
        watch.cancel()
        desk.terminate()
        desk.wait()
