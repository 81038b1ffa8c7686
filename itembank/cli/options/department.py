"""The department that a command is about: named, or around the current folder."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from itembank.errors import ItembankError

if TYPE_CHECKING:
    from itembank.planning.department.department import Department


def the_department(folder: Path | None) -> Department:
    """Return the department that is named or stands around the current folder.

    Raises:
        ItembankError: there is none, or its file has faults.
    """
    from itembank.work.places import nearby_department

    found = nearby_department(folder, None)
    if found is None:
        raise ItembankError(
            "There is no department.toml here or above.", matter="no department here"
        )
    return found


def department_with_results(folder: Path | None) -> Department:
    """Return the department as :func:`the_department` does, and tell of copies of its results."""
    from itembank.cli.words.tell import tell_copies

    department = the_department(folder)
    tell_copies(department.folder)
    return department


def packs_home(output: Path | None, department: Path | None) -> Path:
    """Return the folder in which packs are, as named or as found from the department's folder."""
    from itembank.work.places import packs_place

    return output if output is not None else packs_place(department)
