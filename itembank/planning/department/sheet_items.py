"""The questions of a lesson's follow-up sheets, by address."""

from __future__ import annotations

from itembank.data_class import dataclass


@dataclass(frozen=True, slots=True)
class SheetItems:
    """What stands on one sheet: the examples it opens with, then its questions, in order."""

    tier: str
    opens: tuple[str, ...]
    questions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LessonSheets:
    """The sheets of a lesson, and what they were made for: topics in order, questions on each.

    Sheets that were made for something else are of no use, so both are kept together. A sheet
    may have fewer questions than were wanted, where a bank had no more.
    """

    topics: tuple[str, ...] = ()
    sheets: tuple[SheetItems, ...] = ()
    wanted: int = 0

    def __bool__(self) -> bool:
        """Tell whether there are sheets at all."""
        return bool(self.sheets)

    @property
    def addresses(self) -> tuple[str, ...]:
        """Return the addresses of everything on the sheets.

        >>> sheets = LessonSheets(("a.b",), (SheetItems("core", ("a.b/core/1",), ("a.b/core/2",)),))
        >>> sheets.addresses
        ('a.b/core/1', 'a.b/core/2')
        """
        return tuple(
            address for sheet in self.sheets for address in (*sheet.opens, *sheet.questions)
        )
