"""Finds the questions of banks that ask the same in disguise."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from itembank.bank.index.kept_twins import twin_groups
from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.refresh import Progress
from itembank.errors import ItembankError
from itembank.processes.work_place import Place

Groups = list[tuple[str, ...]]


def find_twins(
    folders: Sequence[Path], place: Place | None = None, report: Progress | None = None
) -> Groups:
    """Return the twins in and across some banks, by their addresses.

    Each group is sorted; the groups stand in the order of their first questions in the banks.
    Generated questions that a bank names are among them. Each question is read once, however
    many there are.

    Parameters
    ----------
    folders
        The banks' folders.
    place
        Where questions are read; default, on as many processes of this machine as it has cores.
    report
        See :mod:`itembank.work.bank`.

    Raises
    ------
    ItembankError
        A bank has faults, or two have one name, so that no address would tell them apart.
    """

    def opened(rest: Sequence[Path], banks: tuple[KeptBank, ...]) -> Groups:
        if not rest:
            return twin_groups(*banks, report=report, place=place)

        def with_this(bank: KeptBank) -> Groups:
            if any(known.name == bank.name for known in banks):
                raise ItembankError(
                    f"Two of these banks are called {bank.name}, so that nobody could tell whose "
                    "questions are meant. Give each a name of its own in its bank.toml."
                )
            return opened(rest[1:], (*banks, bank))

        return with_bank(rest[0], with_this, report)

    return opened(list(dict.fromkeys(folder.resolve() for folder in folders)), ())
