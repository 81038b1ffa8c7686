"""What a teacher says of a lesson, to be recorded."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from itembank.data_class import dataclass

if TYPE_CHECKING:
    from itembank.records.entries.entries import OwnViews

Numbers: TypeAlias = "str | Sequence[int]"
"""Whole numbers, or a text with them in it, as people write them in one line."""
Change: TypeAlias = "tuple[str, int | None, int | bool]"
"""Seat, question (None for the whole score), and the score or whether the answer is right."""


@dataclass(frozen=True, slots=True)
class RecordRequest:
    """How a starter went, at the depth there was time for; None for what is not said.

    Attributes
    ----------
    bands
        Hands counted in each band, from the lowest.
    right
        How many had each question right, in order; fewer where the starter stopped early.
    pupils
        How many were there, for `right`.
    sheet
        A CSV with a score or answers by seat.
    slips
        The codes of result slips from the self-marking page: a text, or a file with one a line.
    own_view
        How sure pupils were: views as data, a line of text, or the path of a CSV.
    unclear, note
        How many asked what to do before they could start, and what was unclear.
    correct
        Changes to single seats of what is recorded, as data or as text ("A3 6"); goes alone.
    date, period
        Day and lesson; those of the newest pack up to today where left out.
    pack, same_as, out_of
        The pack the class had; the class whose starter it had; the marks of a starter
        without a pack.
    asked
        The questions asked where the starter stopped early: how many from the first, their
        numbers, or a text with either.
    packs
        The folder in which packs are.
    replace, add
        Whether to put this in place of what is recorded, or to join it to that.
    any_day
        Whether a day on which the class has no lesson is meant all the same.
    """

    class_name: str | None = None
    bands: Numbers | None = None
    right: Numbers | None = None
    pupils: int | None = None
    sheet: Path | None = None
    slips: str | Path | None = None
    own_view: OwnViews | str | None = None
    unclear: int | None = None
    note: str | None = None
    correct: tuple[Change | str, ...] = ()
    date: datetime.date | None = None
    period: str | None = None
    pack: Path | None = None
    asked: Numbers | int | None = None
    same_as: str | None = None
    out_of: int | None = None
    packs: Path = Path()
    replace: bool = False
    add: bool = False
    any_day: bool = False

    @property
    def depths(self) -> tuple[str, ...]:
        """Return the fields that say how the starter went; only one of them may be given.

        >>> RecordRequest(bands=(8, 12, 9), sheet=Path("a.csv")).depths
        ('bands', 'sheet')
        """
        return tuple(
            name for name in ("bands", "right", "sheet", "slips") if getattr(self, name) is not None
        )

    @property
    def empty(self) -> bool:
        """Tell whether nothing is to be recorded yet."""
        beside = (self.own_view, self.unclear, self.note)
        return not self.depths and all(value is None for value in beside)
