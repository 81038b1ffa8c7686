"""The results of a department: where they are, opened, and the copies that lie beside them."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from itembank.remark import Remark

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.records.store.store import Store
    from itembank.records.store.store_place import StorePlace


def place_of_results(department: Department) -> StorePlace:
    """Return where a department's results are kept."""
    from itembank.records.store.store_place import store_place

    return store_place(department.folder)


def open_results(department: Department, make: bool = True) -> Store:
    """Open a department's results; with `make` false they have to be there.

    Raises:
        ItembankError: they are not there, cannot be reached, or are of a newer version.
    """
    from itembank.records.store.store import open_store

    return open_store(place_of_results(department), make=make)


def copies_of_results(folder: Path) -> tuple[Remark, ...]:
    """Return a remark on each copy of the results of the department in a folder."""
    from itembank.records.store.store_place import store_place

    place = store_place(folder)
    if not place.is_file:
        return ()
    from itembank.records.store.copies import copies_beside, is_loose_end

    found = []
    for path in copies_beside(place.path):
        if is_loose_end(path):
            said = (
                f"{path} is left of a copy of the results that was being written. Keep it beside "
                "that copy until both have been brought in; then delete them."
            )
            found.append(Remark(said, matter="part of a copy of results"))
        else:
            said = (
                f"{path} is a copy of the results, as a program that keeps folders in step makes "
                "them when two people record at once. It may hold what is not here."
            )
            found.append(Remark(said, matter="copy of results", path=str(path)))
    return tuple(found)
