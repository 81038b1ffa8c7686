"""A question as a bank's index keeps it: read only where more than its outline is asked."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from itembank.bank.model.bank import Entry

if TYPE_CHECKING:
    from itembank.bank.model.fields import BankItem


class Kept(NamedTuple):
    """What an index has of one item, as plain values."""

    fact: int
    own: bytes
    tier: str
    author: str | None
    retired: bool
    content: str
    """The hash of what prints, as a sign-off knows it."""
    record: str
    """The item as JSON."""
    asked: str
    """The prompt in pieces, as JSON."""

    def fields(self) -> dict[str, Any]:
        """Return what the item states, field by field; a day is text."""
        return dict(json.loads(self.record))


class Outline(NamedTuple):
    """What little of an item tells whether it may be of use: its check is made when it is read."""

    id: str
    tier: str
    retired: bool


class KeptEntry(Entry):
    """An item of a bank that is read in full only when :attr:`item` is asked for."""

    __slots__ = ("_item", "id", "kept")

    def __init__(self, kept: Kept, id: str, topic: str, bank: str, path: Path, line: int) -> None:
        for name, value in (
            *(("kept", kept), ("id", id), ("topic", topic), ("bank", bank), ("path", path)),
            *(("line", line), ("_item", None)),
        ):
            object.__setattr__(self, name, value)

    kept: Kept
    id: str
    _item: BankItem | None

    @property
    def item(self) -> BankItem:
        """The item in full."""
        if self._item is None:
            from itembank.bank.index.rows.topic_rows import item_of

            object.__setattr__(self, "_item", item_of(self.kept.record))
        assert self._item is not None
        return self._item

    @property
    def version(self) -> str:
        """Return what stands for all that the item states, with its topic; it changes with it."""
        return self.kept.own.hex()

    @property
    def address(self) -> str:
        """Return the address that names the item everywhere: ``larkhythe:garden-12``."""
        return f"{self.bank}:{self.id}"

    @property
    def record(self) -> str:
        """The item as JSON."""
        return self.kept.record

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Entry) and _parts(self) == _parts(other)

    def __hash__(self) -> int:
        return hash((self.bank, self.id))

    def __reduce__(self) -> tuple[Any, ...]:
        return KeptEntry, (self.kept, self.id, self.topic, self.bank, self.path, self.line)


def _parts(entry: Entry) -> tuple[object, ...]:
    return (entry.item, entry.topic, entry.bank, entry.path, entry.line)
