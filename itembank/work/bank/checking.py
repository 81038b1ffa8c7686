"""Looks for faults in a bank's files, all of them at once."""

from __future__ import annotations

from pathlib import Path

from itembank.bank.index.kept_signoffs import signoff_sheet
from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.refresh import Progress
from itembank.data_class import dataclass
from itembank.files.faults import Fault, FileFaults


@dataclass(frozen=True, slots=True)
class Checked:
    """A bank without faults: what it holds."""

    name: str
    terms: str | None
    """The licence of its questions, with who grants it."""
    questions: int
    topics: int
    retired: int
    generated: int
    """How many generated questions its files name."""


def check_bank(folder: Path, report: Progress | None = None) -> Checked:
    """Return what the bank in a folder holds.

    Raises:
        FileFaults: anything is wrong with any of its files, its sign-offs among them; every
            fault is told.
    """
    try:
        return with_bank(folder, _checked, report)
    except FileFaults as error:
        if any(fault.file == str(folder / "signoffs.toml") for fault in error.faults):
            raise
        raise FileFaults([*error.faults, *_signoff_faults(folder)], most=None) from None


def _checked(bank: KeptBank) -> Checked:
    signoff_sheet(bank)  # it tells of their faults
    return Checked(
        bank.name,
        bank.terms,
        bank.count(),
        len(bank.topics),
        bank.count("fact.retired = 1"),
        sum(len(topic.made()) for topic in bank.kept_topics),
    )


def _signoff_faults(folder: Path) -> tuple[Fault, ...]:
    from itembank.bank.proof.signoff import read_signoffs

    try:
        read_signoffs(folder)
    except FileFaults as error:
        return error.faults
    return ()
