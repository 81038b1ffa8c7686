"""A starter for the desk on the desktop, so that nobody needs a terminal a second time."""

from __future__ import annotations

import os
import shlex
import sys
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError

NAME = "Starters desk"


@dataclass(frozen=True, slots=True)
class Shortcut:
    """A file that opens the desk when somebody opens it: where it goes and what it holds."""

    path: Path
    text: str


def shortcut(system: str, home: Path, python: str) -> Shortcut:
    """Return the file that opens the desk on a system, as ``sys.platform`` names it.

    `python` is the interpreter that the tool is installed with; it is named in full, so that the
    file works whatever the search path is.

    Linux: Desktop Entry Specification 1.5; quoting of ``Exec`` by its section 7.

    >>> shortcut("darwin", Path("/Users/ht"), "/opt/py/bin/python3").text.splitlines()[1]
    'exec /opt/py/bin/python3 -m itembank.cli desk'
    """
    desktop = home / "Desktop"
    if system == "win32":
        # A percent sign in a path would be taken for a variable.
        where = python.replace("%", "%%")
        lines = [
            "@echo off",
            f"title {NAME}",
            f'"{where}" -m itembank.cli desk',
            "if errorlevel 1 pause",
        ]
        return Shortcut(desktop / f"{NAME}.cmd", "\r\n".join(lines) + "\r\n")
    if system == "darwin":
        run = f"exec {shlex.quote(python)} -m itembank.cli desk"
        return Shortcut(desktop / f"{NAME}.command", f"#!/bin/sh\n{run}\n")
    escaped = (
        python.replace("\\", "\\\\").replace('"', '\\"').replace("`", "\\`").replace("$", "\\$")
    )
    run = f'"{escaped}"'.replace("\\", "\\\\").replace("%", "%%")
    lines = [
        "[Desktop Entry]",
        "Type=Application",
        f"Name={NAME}",
        "Comment=Plan, show and record the quiz that opens a lesson",
        f"Exec={run} -m itembank.cli desk",
        "Terminal=true",
        "Categories=Education;",
    ]
    folder = desktop if desktop.is_dir() else home / ".local" / "share" / "applications"
    return Shortcut(folder / "itembank-desk.desktop", "\n".join(lines) + "\n")


def write_shortcut() -> Path:
    """Write the starter for this system, in place of an earlier one, and return where it is.

    Raises:
        ItembankError: it cannot be written.
    """
    from itembank.files.together import Together

    made = shortcut(sys.platform, Path.home(), sys.executable)
    try:
        made.path.parent.mkdir(parents=True, exist_ok=True)
        with Together() as change:
            change.file(made.path, made.text.encode())
        if os.name == "posix":
            made.path.chmod(0o755)
    except OSError as error:
        raise ItembankError(f"{made.path} cannot be written: {error.strerror or error}.") from None
    return made.path
