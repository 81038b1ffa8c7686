"""Brings another results file into a department's; that file itself is not changed."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.work.lesson.results_store import open_results

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.records.unite.united import United


@dataclass(frozen=True, slots=True)
class BroughtIn:
    """What came of another file, and the name of the results it was brought into."""

    united: United
    store_name: str


def unite(department: Department, file: Path) -> BroughtIn:
    """Bring all that another results file holds into the department's.

    Raises:
        ItembankError: the file is none of results, or one of the two cannot be read.
    """
    from itembank.records.unite.uniting import unite as unite_files

    with open_results(department) as store:
        return BroughtIn(unite_files(store, file), store.name)
