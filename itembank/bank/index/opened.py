"""A bank as its index has it: opened at once, and read as far as a command asks for it.

:func:`with_bank` is the way in. It gives a :class:`KeptBank`, which is a
:class:`~itembank.bank.model.bank.Bank` whose topics and items are looked up when they are asked
for, so that one question of two hundred thousand is shown without reading the rest.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from itembank.bank.index.rows.kept_entry import Kept, KeptEntry, Outline
from itembank.bank.index.rows.refresh import Progress, Read, Sheet, refresh
from itembank.bank.index.store.index_store import Store
from itembank.bank.index.store.index_tables import Changed, IndexFailed, seal
from itembank.bank.model.bank import Bank, BankTopic, Entry
from itembank.bank.model.no_item import no_item
from itembank.errors import ItembankError
from itembank.files.faults import FileFaults

if TYPE_CHECKING:
    from itembank.bank.model.fields import GeneratedSet, PinnedItem

T = TypeVar("T")
TRIES = 5
"""How often files are read anew that others change meanwhile."""

_ROW = """
    SELECT fact.id, fact.own, fact.tier, fact.author, fact.retired, fact.content, fact.record,
        fact.asked, fact.seal, place.id, place.line, place.sheet
    FROM temp.now JOIN place USING (sheet) JOIN fact ON fact.id = place.fact
"""
_IN_ORDER = " ORDER BY now.at, place.at"


class KeptTopic(BankTopic):
    """A topic of a bank whose items are read when they are asked for."""

    __slots__ = ("_bank", "_stated", "sheet")

    def __init__(self, bank: KeptBank, sheet: Sheet) -> None:
        stated = json.loads(sheet.stated)
        for name, value in (
            *(("id", sheet.topic), ("title", sheet.title), ("path", bank.folder / sheet.name)),
            ("prerequisites", tuple(stated["head"].get("prerequisites", ()))),
            *(("_bank", bank), ("sheet", sheet), ("_stated", stated)),
        ):
            object.__setattr__(self, name, value)

    sheet: Sheet
    _bank: KeptBank
    _stated: dict[str, Any]

    @property
    def entries(self) -> tuple[Entry, ...]:
        """The items of the topic, in the order of the file; read anew each time."""
        return tuple(self.kept_entries())

    def kept_entries(self) -> Iterator[KeptEntry]:
        """Yield the items of the topic as the index has them."""
        return self._bank.chosen("place.sheet = ?", [self.sheet.number])

    def outlines(self) -> list[Outline]:
        """Return the items of the topic in outline, in the order of the file."""
        query = (
            "SELECT place.id, fact.tier, fact.retired FROM place JOIN fact ON fact.id = place.fact "
            "WHERE place.sheet = ? ORDER BY place.at"
        )
        return [Outline(*row) for row in self._bank.store.rows(query, [self.sheet.number])]

    @property
    def generated(self) -> tuple[GeneratedSet, ...]:
        """The sets of generated items that the file names."""
        if not self._stated["generated"]:
            return ()
        from itembank.bank.model.fields import GeneratedSet

        return tuple(
            GeneratedSet.model_validate_json(json.dumps(fields))
            for fields in self._stated["generated"]
        )

    def made(self) -> tuple[str, ...]:
        """Return the address of every generated item that the file names, each once."""
        if not self._stated["generated"] and not self._stated["pinned"]:
            return ()
        from itembank.bank.question.generated_sets import made_addresses

        return made_addresses(self)

    @property
    def pinned(self) -> tuple[PinnedItem, ...]:
        """The generated items that the file names one by one."""
        if not self._stated["pinned"]:
            return ()
        from itembank.bank.model.fields import PinnedItem

        return tuple(PinnedItem(**fields) for fields in self._stated["pinned"])


class KeptBank(Bank):
    """A bank as its index has it, at the moment it was opened."""

    def __init__(self, folder: Path, store: Store, read: Read) -> None:
        assert read.stated is not None
        for name, value in (("folder", folder), *read.stated.items()):
            object.__setattr__(self, name, value)
        object.__setattr__(self, "store", store)
        object.__setattr__(self, "read", read)
        topics = tuple(KeptTopic(self, sheet) for sheet in read.sheets)
        object.__setattr__(self, "topics", topics)

    store: Store
    read: Read

    def __hash__(self) -> int:
        return id(self)

    def __eq__(self, other: object) -> bool:
        return self is other

    @cached_property
    def kept_topics(self) -> tuple[KeptTopic, ...]:
        """The topics with their sheets."""
        return tuple(topic for topic in self.topics if isinstance(topic, KeptTopic))

    @cached_property
    def _sheets(self) -> dict[int, KeptTopic]:
        return {topic.sheet.number: topic for topic in self.kept_topics}

    def entries(self) -> Iterator[Entry]:
        """Yield every hand-written item, topic by topic, in the order of the files."""
        for topic in self.topics:
            yield from topic.entries

    def find(self, id: str) -> KeptEntry:
        """Return the item called `id`, or by its address ``BANK:ID``.

        Raises:
            ItembankError: there is none; the message names the nearest.
        """
        wanted = id.removeprefix(f"{self.name}:")
        for entry in self.chosen("place.id = ?", [wanted]):
            return entry
        raise no_item(wanted, self.ids(), f"the bank {self.name}")

    def hash_of(self, topic: KeptTopic) -> bytes:
        """Return the hash of what a topic's file held when it was read."""
        query = "SELECT hash FROM sheet WHERE id = ?"
        for (found,) in self.store.rows(query, [topic.sheet.number]):
            return bytes(found)
        raise Changed("what was read is gone")

    def ids(self) -> list[str]:
        """Return the id of every item, in the order of the files."""
        query = "SELECT place.id FROM temp.now JOIN place USING (sheet)"
        return [id for (id,) in self.store.rows(query + _IN_ORDER)]

    def chosen(self, where: str = "", values: Sequence[object] = ()) -> Iterator[KeptEntry]:
        """Yield the items for which a condition of SQL holds, in the order of the files."""
        query = f"{_ROW} WHERE {where or '1'}{_IN_ORDER}"
        for *kept, sealed, id, line, sheet in self.store.each(query, values):
            row = Kept(*kept)
            topic = self._sheets.get(sheet)
            # The id stands first in a record, so a place that names another item shows at once.
            named = row.record.startswith(f'{{"id":"{id}"')
            if seal(*kept[1:]) != sealed or topic is None or not named:
                raise IndexFailed("a row is damaged")
            yield KeptEntry(row, id, topic.id, self.name, topic.path, line)

    def count(self, where: str = "", values: Sequence[object] = ()) -> int:
        """Return how many items there are for which a condition of SQL holds."""
        query = "SELECT COUNT(*) FROM temp.now JOIN place USING (sheet)"
        if where:
            query += f" JOIN fact ON fact.id = place.fact WHERE {where}"
        return int(self.store.rows(query, values)[0][0])


def with_bank(
    folder: Path | str,
    use: Callable[[KeptBank], T],
    report: Progress | None = None,
) -> T:
    """Return what `use` makes of the bank in a folder; it may be called again.

    That is so where the index turns out to be damaged half-way: the work goes on without.

    Parameters
    ----------
    folder
        The bank's folder.
    use
        What is to be done with the bank; it should do no more than return something.
    report
        Called with how many items are read, and about how many there are, where many are new.

    Raises
    ------
    FileFaults
        Anything is wrong with any of the bank's files; every fault is told.
    ItembankError
        The files go on changing while they are read.
    """
    for _ in range(TRIES):
        bank = open_bank(folder, report)
        try:
            return use(bank)
        except Changed:
            continue
        except IndexFailed:
            bank.store.discard()
    return use(open_bank(folder, report, on_disk=False))


def open_bank(
    folder: Path | str,
    report: Progress | None = None,
    *,
    on_disk: bool = True,
) -> KeptBank:
    """Return the bank in a folder as :func:`with_bank` gives it, to be kept for longer.

    Raises:
        FileFaults: anything is wrong with any of the bank's files; every fault is told.
        IndexFailed: never here, but where the bank is used, if its index is damaged.
        ItembankError: the files go on changing while they are read.
    """
    folder = Path(folder)
    if not folder.is_dir():
        from itembank.bank.read.load import no_bank

        raise no_bank(folder)
    failed = 0
    for _ in range(TRIES):
        store = Store.of(folder) if on_disk and failed < 2 else Store()
        try:
            read = refresh(folder, store, report)
        except Changed:
            store.close()
            continue
        except IndexFailed:
            failed += 1
            store.discard()
            continue
        if read.faults:
            store.close()
            raise FileFaults(read.faults, most=None)
        return KeptBank(folder, store, read)
    raise ItembankError(
        f"{folder}: the files of this bank change while they are read. "
        "Wait until they are saved, and try again."
    )
