"""The questions that are chosen for a pack."""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.follow_up import ChosenSheet
from itembank.packs.data.source import TopicSources

if TYPE_CHECKING:
    from itembank.packs.sources.banks import Banks


@dataclass(frozen=True, slots=True)
class Chosen:
    """The items of a pack before they are data."""

    topics: tuple[TopicSources, ...]
    versions: tuple[tuple[Candidate, ...], ...]
    sheets: tuple[ChosenSheet, ...]
    banks: Banks | None = None

    def taken(self) -> list[Candidate]:
        """Return everything that will be printed with a key, worked examples included."""
        found = [candidate for version in self.versions for candidate in version]
        for sheet in self.sheets:
            opening = (sheet.worked, sheet.part_finished)
            found += [*(candidate for candidate in opening if candidate is not None), *sheet.items]
        return found
