"""The banks that a department can look at: its own, and those that ship with the tool."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import NotFound

if TYPE_CHECKING:
    from itembank.planning.department.department import Department

BANK_FILE = "bank.toml"


@dataclass(frozen=True, slots=True)
class BankAtHand:
    """A bank as it is chosen: `own` says that it is the department's, to be changed."""

    name: str
    title: str
    folder: Path
    own: bool
    used: bool = False
    """Whether plans of the department may draw on it."""


def banks_at_hand(department: Department | None, home: Path) -> tuple[BankAtHand, ...]:
    """Return the banks of a department, each name once: its own first, then the shipped ones.

    Its own are those that it names, and those that lie in its folder. One whose `bank.toml`
    cannot be read is there under its folder's name: looking at it tells what is wrong.
    """
    from itembank.files.shipped import shipped_folder
    from itembank.work.places import banks_of

    shipped = shipped_folder().resolve()
    named = [folder.resolve() for folder in banks_of(department)]
    own = [*named, *_banks_in(home)]
    found: dict[str, BankAtHand] = {}
    seen: set[Path] = set()
    for folder in (*own, *_banks_in(shipped)):
        if folder in seen:
            continue
        seen.add(folder)
        name, title = name_and_title(folder)
        if name in found:
            if shipped in folder.parents:
                continue  # a copy of it is the department's own
            name = next(n for k in range(2, 1000) if (n := f"{name}-{k}") not in found)
        mine = shipped not in folder.parents or home.resolve() in folder.parents
        found[name] = BankAtHand(name, title, folder, mine, folder in named)
    return tuple(found.values())


def the_bank(banks: tuple[BankAtHand, ...], name: str) -> BankAtHand:
    """Return the bank of a name.

    Raises:
        NotFound: there is none.
    """
    for bank in banks:
        if bank.name == name:
            return bank
    raise NotFound(f"There is no bank ‘{name[:40]}’ here.")


def _banks_in(home: Path) -> Iterator[Path]:
    yield from sorted(path.parent.resolve() for path in home.glob(f"*/{BANK_FILE}"))


def name_and_title(folder: Path) -> tuple[str, str]:
    """Return what a bank calls itself, without reading its questions."""
    import tomllib

    try:
        stated = tomllib.loads((folder / BANK_FILE).read_text("utf-8-sig"))
    except (OSError, ValueError, RecursionError):
        stated = {}
    name, title = stated.get("name"), stated.get("title")
    name = name if isinstance(name, str) and name else folder.name
    return name, title if isinstance(title, str) and title else name
