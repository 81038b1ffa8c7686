"""One topic file read from its text: everything that can be told from this file alone.

:func:`load_topic_text` is a function of the text and nothing else, so that any text at all can
be tried on it: it gives a :class:`TopicText` or raises :class:`~itembank.files.faults.FileFaults`.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import field
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from itembank.bank.model.fields import BankItem, GeneratedSet, PinnedItem, TopicFile
from itembank.bank.model.model_faults import sentences
from itembank.bank.question.given.maths import FieldFault
from itembank.bank.read.item_checks import item_faults
from itembank.data_class import dataclass
from itembank.files.faults import Fault, FileFaults
from itembank.files.toml_read import KeyPath, Locator, read_toml

MANY_ITEMS = 500
_BLOCKS = ("items", "generated", "pinned")


@dataclass(frozen=True, slots=True)
class Placed:
    """An item with its place: the entry of its file, and the lines of its id and its author."""

    item: BankItem
    index: int
    line: int
    id_line: int
    author_line: int


@dataclass(slots=True)
class TopicText:
    """A topic file: what was understood of it, and what is wrong with it."""

    path: Path
    text: str
    head: TopicFile | None = None
    """The file without its items; None where it could not be understood."""
    topic_line: int = 0
    prerequisites_line: int = 0
    items: list[Placed] = field(default_factory=list)
    generated: list[tuple[GeneratedSet, int]] = field(default_factory=list)
    pinned: list[tuple[PinnedItem, int]] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)

    def is_large(self) -> bool:
        """Whether it holds so many items that they are better checked in parts."""
        return len(self.items) > MANY_ITEMS

    def note(self, where: KeyPath, message: str, locator: Locator) -> None:
        """Note a fault at the line of `where`."""
        self.faults.append(Fault(str(self.path), locator.line(where), message))

    def note_fields(self, found: Iterable[tuple[int, FieldFault]]) -> None:
        """Note faults of fields, each with the number of its item in the file."""
        found = list(found)
        if found:
            locator = Locator(self.text)
            for index, fault in found:
                self.note(("items", index, *fault.field), fault.message, locator)


def read_topic(text: str, path: Path | str) -> TopicText:
    """Return what can be understood of a topic file; the mathematics is not read yet.

    Raises nothing: what is wrong stands in the result's faults.
    """
    path = Path(path)
    toml = read_toml(text, path, _BLOCKS)
    result = TopicText(path, toml.text)
    result.faults.extend(toml.faults)
    if toml.data is None:
        return result
    data, locator = toml.data, toml.locator
    whole: TopicFile | None = None
    try:
        whole = TopicFile.model_validate(data)
    except ValidationError as error:
        for where, message in sentences(error, TopicFile):
            # A head that could not be read may well have held what seems to be missing.
            if not (toml.head_damaged and len(where) == 1 and "missing" in message):
                result.note(where, message, locator)
    _salvage(result, data, locator, whole)
    return result


def _salvage(
    result: TopicText, data: dict[str, Any], locator: Locator, whole: TopicFile | None
) -> None:
    """Take over every part of the file that is right by itself; all of one that is right."""
    head = {key: value for key, value in data.items() if key not in _BLOCKS}
    try:
        result.head = TopicFile.model_validate(head)
    except ValidationError:
        topic = head.get("topic")
        if isinstance(topic, str) and head.get("title", "") is not None:
            try:
                result.head = TopicFile(topic=topic, title=str(head.get("title") or topic))
            except ValidationError:
                result.head = None
    result.topic_line = locator.line(("topic",))
    result.prerequisites_line = locator.line(("prerequisites",))
    for index, raw in _tables(data, "items"):
        item = whole.items[index] if whole is not None else _right_or_mended(raw)
        if item is None:
            continue
        where: KeyPath = ("items", index)
        result.items.append(
            Placed(
                item,
                index,
                locator.line(where),
                locator.line((*where, "id")),
                locator.line((*where, "author")),
            )
        )
    for index, raw in _tables(data, "generated"):
        try:
            made = GeneratedSet.model_validate(raw)
        except ValidationError:
            continue
        result.generated.append((made, locator.line(("generated", index))))
    for index, raw in _tables(data, "pinned"):
        try:
            pin = PinnedItem.model_validate(raw)
        except ValidationError:
            continue
        result.pinned.append((pin, locator.line(("pinned", index))))


def _right_or_mended(raw: object) -> BankItem | None:
    try:
        return BankItem.model_validate(raw)
    except ValidationError as error:
        return _mended(raw, {str(found["loc"][0]) for found in error.errors() if found["loc"]})


_NEEDED: dict[str, Any] = {"tier": "core", "prompt": "{1}", "key": "1"}
_TOGETHER = (
    {"prompt", "key", "form", "task", "misconceptions"},
    {"model", "find"},
    {"retired", "retired_because", "created"},
    {"options", "choose", "task", "key", "misconceptions"},
)
"""Fields that are checked against each other: with one of them gone, the others tell nothing."""


def _mended(raw: object, bad: set[str]) -> BankItem | None:
    """Return an item without its bad fields, so that what else is wrong can be told as well."""
    if not isinstance(raw, dict):
        return None
    gone = set(bad)
    for fields in _TOGETHER:
        if bad & fields:
            # The lines of mathematics are read one by one, so these can stay.
            gone |= fields - {"prompt", "key", "model"}
    kept = {key: value for key, value in raw.items() if key not in gone}
    for key, value in _NEEDED.items():
        kept.setdefault(key, value)
    kept.setdefault("id", f"no-id-{id(raw)}")
    try:
        return BankItem.model_validate(kept)
    except ValidationError:
        return None


def _tables(data: dict[str, Any], key: str) -> Iterable[tuple[int, dict[str, Any]]]:
    value = data.get(key)
    return enumerate(value) if isinstance(value, list) else ()


def check_items(items: Sequence[tuple[int, BankItem]]) -> list[tuple[int, FieldFault]]:
    """Return the faults of items, each with the number that came with its item."""
    return [(index, fault) for index, item in items for fault in item_faults(item)]


def load_topic_text(text: str, path: Path | str = "topic.toml") -> TopicText:
    """Return a topic file that is right in itself.

    Raises:
        FileFaults: anything is wrong with it; every fault is told.

    >>> text = '''topic = "ratio.share"
    ... [[items]]
    ... id = "bus-1"
    ... tier = "core"
    ... prompt = "Work out {3 × 4}."
    ... key = "12"'''
    >>> load_topic_text(text).items[0].item.id
    'bus-1'
    """
    result = read_topic(text, path)
    result.note_fields(check_items([(placed.index, placed.item) for placed in result.items]))
    if result.faults:
        raise FileFaults(result.faults, most=None)
    return result
