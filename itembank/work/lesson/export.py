"""Writes all that was recorded as CSV files."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from itembank.work.lesson.results_store import open_results

if TYPE_CHECKING:
    from itembank.planning.department.department import Department


def export(department: Department, folder: Path, replace: bool = False) -> dict[str, int]:
    """Write every table to `folder`, one a file, and return the number of rows of each.

    Raises:
        ItembankError: nothing is recorded yet, a file is there already ("export there", a
            question: `replace`), or it cannot be written.
    """
    from itembank.records.exporting import export_all

    with open_results(department, make=False) as store:
        return export_all(store, folder, replace)
