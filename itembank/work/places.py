"""What is near where a person works: the department, its banks, the place for packs."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from itembank.planning.department.department import (
    FILE_NAME,
    Department,
    find_department,
    read_department,
)
from itembank.planning.department.question_sources import BANK_FILE, no_bank

if TYPE_CHECKING:
    from itembank.items.item import Item


def nearby_department(folder: Path | None, known: tuple[str, ...] | None) -> Department | None:
    """Return the named department, or the one around the current folder, or None.

    Raises:
        ItembankError: the named folder is no department, or its file has faults.
    """
    if folder is None:
        here = Path.cwd()
        if not any((parent / FILE_NAME).is_file() for parent in (here, *here.parents)):
            return None
    return read_department(find_department(folder), known)


def banks_of(department: Department | None) -> tuple[Path, ...]:
    """Return the banks that a department names anywhere, each once."""
    if department is None:
        return ()
    places = (department.stated_sources, *(group.stated_sources for group in department.classes))
    return tuple(dict.fromkeys(bank for place in places for bank in place.banks or ()))


def nearby_banks(named: tuple[Path, ...] = ()) -> tuple[Path, ...]:
    """Return the banks that are named; else the one around here and those of the department.

    Raises:
        ItembankError: a folder that is named holds no bank, or the department's file has faults.
    """
    for folder in named:
        if (wrong := no_bank(folder)) is not None:
            raise wrong
    if named:
        return named
    here = Path.cwd()
    around = [parent for parent in (here, *here.parents) if (parent / BANK_FILE).is_file()][:1]
    others = banks_of(nearby_department(None, None))
    found = {place.resolve(): place for place in (*around, *others)}
    return tuple(found.values())


def find_address(address: str, named: tuple[Path, ...] = ()) -> Item:
    """Return the item at an address, ``topic/tier/number`` or ``BANK:ID`` of a bank near here.

    Raises:
        ItembankError: the address names nothing, or what it names needs a person.
    """
    if ":" not in address:  # the banks' reader takes longer to load than a question to make
        from itembank.items.topics.registry import find_item

        return find_item(address)
    from itembank.bank.index.any_address import find_any

    return find_any(address, nearby_banks(named))


def packs_place(department: Path | None = None) -> Path:
    """Return where packs go unless told otherwise: near the department.

    Terminal and desk both ask here, and so find what the other made. A department that is not
    named is the one around the current folder; where there is none, packs go near that folder.
    A folder ``output`` that stands where one works, above the department, counts as near; not so
    one in a person's home folder, which is above all that they have.
    """
    here = Path.cwd()
    if department is not None:
        folder = department.parent if department.name == FILE_NAME else department
        folder = folder.absolute()
        above = here in folder.parents and here != Path.home()
        return output_home(folder, here if above else None)
    around = (folder for folder in (here, *here.parents) if (folder / FILE_NAME).is_file())
    return output_home(next(around, here))


def output_home(here: Path, top: Path | None = None) -> Path:
    """Return the nearest folder called ``output``.

    It is looked for in `here` and then above it, no further than the top of the project (the
    folder that holds ``.git``) or than `top`. Outside a project, or without one, it is `here`
    itself.
    """
    around = (here, *here.parents)
    project = next((folder for folder in around if (folder / ".git").exists()), top or here)
    for folder in around:
        if (folder / "output").is_dir():
            return folder / "output"
        if folder == project:
            break
    return here
