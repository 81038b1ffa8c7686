"""A bank as it was read: its topics, and its items with their places."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.bank.model.no_item import no_item
from itembank.data_class import dataclass

if TYPE_CHECKING:
    from itembank.bank.model.fields import BankItem, GeneratedSet, PinnedItem

BANK_FILE = "bank.toml"
SIGNOFF_FILE = "signoffs.toml"


def topic_files(folder: Path) -> list[Path]:
    """Return the topic files of a bank's folder, sorted by name."""
    return sorted(
        path
        for path in folder.glob("*.toml")
        if path.name not in (BANK_FILE, SIGNOFF_FILE) and not path.name.startswith(".")
    )


@dataclass(frozen=True, slots=True)
class Entry:
    """A hand-written item with its place in a bank."""

    item: BankItem
    topic: str
    bank: str
    path: Path
    line: int

    @property
    def address(self) -> str:
        """Return the address that names the item everywhere: ``larkhythe:garden-12``."""
        return f"{self.bank}:{self.item.id}"

    @property
    def record(self) -> str:
        """The item as JSON: what it states, and nothing of where it stands."""
        return self.item.model_dump_json(exclude_defaults=True)


@dataclass(frozen=True, slots=True)
class BankTopic:
    """One topic of a bank: what its file holds."""

    id: str
    title: str
    path: Path
    entries: tuple[Entry, ...]
    generated: tuple[GeneratedSet, ...]
    pinned: tuple[PinnedItem, ...]
    prerequisites: tuple[str, ...] = ()


@dataclass(frozen=True)
class Bank:
    """A bank as it stands in its folder."""

    folder: Path
    name: str
    title: str
    terms: str | None
    """The licence of its items, with who grants it."""
    authors: dict[str, str]
    topics: tuple[BankTopic, ...]

    def entries(self) -> Iterator[Entry]:
        """Yield every hand-written item, topic by topic, in the order of the files."""
        for topic in self.topics:
            yield from topic.entries

    def find(self, id: str) -> Entry:
        """Return the item called `id`, or by its address ``BANK:ID``.

        Raises:
            ItembankError: there is none; the message names the nearest.
        """
        wanted = id.removeprefix(f"{self.name}:")
        for entry in self.entries():
            if entry.item.id == wanted:
                return entry
        ids = (entry.item.id for entry in self.entries())
        raise no_item(wanted, ids, f"the bank {self.name}")
