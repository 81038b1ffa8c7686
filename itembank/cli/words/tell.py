"""Telling remarks at the terminal, with what can be typed about them."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from itembank.cli.words.what_to_type import told
from itembank.cli.words.wrapped import say
from itembank.remark import Remark


def tell(remarks: Iterable[Remark], err: bool = False) -> None:
    """Say each remark, and what to type about it."""
    for remark in remarks:
        say(told(remark), err=err)


def tell_copies(folder: Path) -> None:
    """Tell, once in a command, of copies that lie beside the results of a department."""
    if folder in _TOLD:
        return
    _TOLD.add(folder)
    from itembank.work.lesson.results_store import copies_of_results

    tell(copies_of_results(folder), err=True)


_TOLD: set[Path] = set()
"""The folders of which this command has told copies already."""
