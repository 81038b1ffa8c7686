"""Changes a bank on the disk: makes one, adds, changes, moves, retires and removes items.

Each function reads the file, edits the lines of the item that is meant, and saves the file
whole under the bank's lock; comments and order stay. What would make an item unreadable is
refused with all of its faults.
"""

from __future__ import annotations

import contextlib
import datetime
import tomllib
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from itembank.bank.model.bank import BANK_FILE
from itembank.bank.model.fields import BankFile, BankItem, TopicFile
from itembank.bank.model.item_changes import changes
from itembank.bank.model.model_faults import sentences
from itembank.bank.read.item_checks import is_generated, new_item_faults
from itembank.bank.saving.bank_lock import locked
from itembank.bank.saving.save import ChangedSince, save, take
from itembank.bank.write.as_toml import bank_toml, topic_toml
from itembank.bank.write.blocks import block_of, with_block, with_fields, with_item, without_item
from itembank.bank.write.free_ids import free_id, ids_in_files, ids_of, items_of
from itembank.errors import ItembankError
from itembank.files.faults import nearest
from itembank.items.topics.registry import topic_ids

IdsLike = Callable[[str], Mapping[str, Path]]
"""Returns the ids of a bank that begin with some letters, each with its file."""


def create_bank(
    folder: Path | str,
    name: str,
    title: str,
    *,
    licence: str | None = None,
    licensor: str | None = None,
    authors: Mapping[str, str] | None = None,
) -> Path:
    """Make a new bank in `folder`, which is made too if need be, and return the folder.

    Raises:
        ItembankError: there is a bank already, a name or a code is not allowed, or the folder
            cannot be written to.
    """
    folder = Path(folder)
    facts = {
        "name": name,
        "title": title,
        "licence": licence,
        "licensor": licensor,
        "authors": dict(authors or {}),
    }
    try:
        BankFile.model_validate(facts)
    except ValidationError as error:
        raise _refused(error, BankFile) from None
    if folder.exists() and not folder.is_dir():
        raise ItembankError(f"{folder}: this is a file, not a folder. Choose another name.")
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise ItembankError(f"{folder}: this folder cannot be made ({error.strerror}).") from None
    with locked(folder):
        if (folder / BANK_FILE).exists():
            raise ItembankError(f"{folder}: there is a bank here already. Choose another folder.")
        text = bank_toml(name, title, licence, authors, licensor)
        save(folder, [(take(folder / BANK_FILE), text)])
    return folder


def topic_path(folder: Path | str, topic: str) -> Path:
    """Return where the file of a topic stands in a bank."""
    return Path(folder) / f"{topic}.toml"


def check_item(item: BankItem) -> None:
    """Raise an ItembankError that lists every fault of an item; say nothing where it is right."""
    found = [fault.message for fault in new_item_faults(item)]
    if found:
        raise ItembankError("\n".join(f"{item.id}: {message}" for message in found))


def make_item(fields: Mapping[str, Any]) -> BankItem:
    """Return an item with these fields, checked as a whole.

    Raises:
        ItembankError: a field is missing or wrong; all of them are told.

    >>> make_item({"id": "a-1", "tier": "core", "prompt": "Work out {2 + 3}.", "key": "5"}).key
    '5'
    """
    try:
        item = BankItem.model_validate(dict(fields))
    except ValidationError as error:
        raise _refused(error, BankItem, str(fields.get("id", ""))) from None
    check_item(item)
    return item


def add_item(
    folder: Path | str,
    topic: str,
    item: BankItem,
    *,
    title: str | None = None,
    numbered: bool = False,
    ids: IdsLike | None = None,
) -> tuple[Path, BankItem]:
    """Add an item to a topic of a bank, whose file is made if need be; return file and item.

    `title` is needed for a new topic that the tool makes no items on. Where its id was only
    `numbered`, as in share-3, and somebody has taken that by now, it has the next that is free.
    `ids` says which ids are taken, and is asked while nobody else saves the bank; by default
    all of its files are read.

    Raises:
        ItembankError: the item is not right, its id is taken in the bank, the topic is not
            known, or the file cannot be saved (as :func:`~itembank.bank.saving.save.save`).
    """
    check_item(item)
    path = topic_path(folder, topic)
    with locked(folder):
        before = take(path)
        text = before.text if before.raw is not None else new_topic(topic, title)
        stem = item.id.rpartition("-")[0] if numbered else item.id
        # Asked after the file was read: what is saved in between is seen by one or the other.
        taken = ids(stem) if ids else ids_in_files(folder, ids_of(text, path), path)
        if numbered and item.id in {id.partition(".")[0] for id in taken}:
            item = item.model_copy(update={"id": free_id(stem, taken)})
        elif item.id in taken:
            raise ItembankError(
                f"{taken[item.id]}: the id ‘{item.id}’ is taken already. Choose another."
            )
        save(folder, [(before, with_item(text, item))], f"{item.id} added")
    return path, item


def new_topic(topic: str, title: str | None = None) -> str:
    """Return the text of a new topic file.

    Raises:
        ItembankError: the tool makes no items on the topic, and it has no title.
    """
    try:
        TopicFile.model_validate({"topic": topic, "title": title})
    except ValidationError as error:
        raise _refused(error, TopicFile) from None
    if title is None and not is_generated(topic):
        near = nearest(topic, topic_ids())
        advice = f" Did you mean {' or '.join(near)}?" if near else ""
        raise ItembankError(
            f"There is no topic ‘{topic}’.{advice} A topic of your own needs a title."
        )
    return topic_toml(topic, title)


def change_item(
    path: Path | str,
    id: str,
    fields: Mapping[str, Any],
    was: BankItem | None = None,
    did: str = "",
) -> BankItem:
    """Change fields of an item, or take out those that are None; return it as it is now.

    `misconceptions` is a list of tables. The id may change too. `was` is the item as the change
    was made up for it, and `did` says what is done, for whoever takes it back.

    Raises:
        ChangedSince: it is not as it `was`, so that nobody has looked at what would come of it.
        ItembankError: there is no such item, or it would not be right; nothing is written.
    """
    path = Path(path)
    with locked(path.parent):
        before = take(path)
        raw = next((item for item in items_of(before.text, path) if item.get("id") == id), None)
        if raw is None:
            raise ItembankError(f"{path}: there is no item ‘{id}’ in this file.")
        if was is not None:
            _refuse_changed(path, was, make_item(raw))
        merged = {k: v for k, v in {**raw, **fields}.items() if v is not None}
        item = make_item(merged)
        text = with_fields(before.text, id, fields)
        if BankItem.model_validate(_item(text, item.id)) != item:  # never trust an edit unread
            raise ItembankError(f"{path}: the item ‘{id}’ could not be changed. Change it by hand.")
        save(path.parent, [(before, text)], did or f"{item.id} changed")
    return item


def move_item(
    path: Path | str,
    id: str,
    topic: str,
    *,
    title: str | None = None,
    folder: Path | str = "",
    licence: str | None = None,
    ids: IdsLike | None = None,
) -> Path:
    """Move an item, its comments with it, to another topic of this bank; return the new file.

    `folder` is another bank, where the item is to go there instead, `ids` says which are taken
    there (as for :func:`add_item`), and `licence` is what the item is to state there, where its
    own bank's would no longer be understood.

    Raises:
        ItembankError: there is no such item, its id is taken there, or a file cannot be saved.
    """
    path = Path(path)
    home = Path(folder) if folder else path.parent
    target = topic_path(home, topic)
    if target.resolve() == path.resolve():
        raise ItembankError(f"The item ‘{id}’ is in the topic {topic} already.")
    # In the order of their names: two who move items to and fro must not wait for each other.
    both = sorted({home.resolve(), path.parent.resolve()})
    with contextlib.ExitStack() as locks:
        for name in both:
            locks.enter_context(locked(name))
        source, goal = take(path), take(target)
        block = block_of(source.text, id)
        text = goal.text if goal.raw is not None else new_topic(topic, title)
        if any(item.get("id") == id for item in items_of(text, target)):
            raise ItembankError(f"{target}: the id ‘{id}’ is taken there already.")
        if home.resolve() != path.parent.resolve() and ids and (there := ids(id).get(id)):
            raise ItembankError(f"{there}: the id ‘{id}’ is taken there already.")
        text = with_block(text, block)
        if licence is not None:
            text = with_fields(text, id, {"licence": licence})
        gained = (goal, text)
        lost = (source, without_item(source.text, id))
        if home.resolve() == path.parent.resolve():
            save(home, [gained, lost], f"{id} moved to {topic}")
        else:
            save(home, [gained], f"{id} brought in from another bank")
            save(path.parent, [lost], f"{id} moved to another bank")
    return target


def retire_item(
    path: Path | str, id: str, day: datetime.date, because: str, was: BankItem | None = None
) -> BankItem:
    """Mark an item as no longer used from `day` on, and why; it stays in its file.

    Raises: as :func:`change_item`.
    """
    fields = {"retired": day, "retired_because": because}
    return change_item(path, id, fields, was, f"{id} retired")


def _refuse_changed(path: Path, was: BankItem, now: BankItem) -> None:
    if was != now:
        before, after = (item.model_dump(mode="json") for item in (was, now))
        raise ChangedSince(
            f"{path}: the item ‘{was.id}’ has been changed since it was read, so nothing was "
            "saved. Look at what changed and start again from what is there now.",
            "\n".join(map(str, changes(before, after))),
        )


def _item(text: str, id: str) -> dict[str, Any]:
    return next((i for i in tomllib.loads(text).get("items", []) if i.get("id") == id), {})


def _refused(error: ValidationError, model: Any, name: str = "") -> ItembankError:
    start = f"{name}: " if name else ""
    return ItembankError("\n".join(f"{start}{text}" for _, text in sentences(error, model)))
