"""What a forgetting did: the rows that went, and what became of the exported files."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path


@dataclass(slots=True)
class Forgotten:
    """How many rows went from the store, and what became of the files it had exported.

    `left` are files that a person has to see to, each with the reason, and `copies` those that
    are copies of the results, which may hold more than the store does; `notes` are lessons with
    a note or title that may speak of a seat whose code is a bare number; `moved` are the other
    seats under which a pupil was forgotten; `unswept` says why the store's file could not be
    written anew.
    """

    rows: int = 0
    rewritten: list[Path] = field(default_factory=list)
    parts: list[Path] = field(default_factory=list)
    gone: list[Path] = field(default_factory=list)
    left: list[tuple[Path, str]] = field(default_factory=list)
    copies: list[Path] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    moved: list[str] = field(default_factory=list)
    cut: int = 0
    unswept: str = ""

    @property
    def done(self) -> bool:
        """Tell whether nothing is left to do."""
        return not (self.left or self.copies or self.unswept)
