"""Ids of questions that are taken, and the next one that is free."""

from __future__ import annotations

import contextlib
import itertools
import tomllib
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from itembank.bank.model.bank import topic_files
from itembank.bank.saving.save import take
from itembank.errors import ItembankError


def ids_in_files(folder: Path | str, known: Iterable[str], path: Path) -> dict[str, Path]:
    """Return every id of a bank with its file; those in the file at `path` are `known`."""
    taken = dict.fromkeys(known, path)
    for file in topic_files(Path(folder)):
        if file != path:
            with contextlib.suppress(ItembankError):  # a file with faults of its own
                taken |= dict.fromkeys(ids_of(take(file).text, file), file)
    return taken


def free_id(stem: str, taken: Iterable[str]) -> str:
    """Return the first of ``STEM-1``, ``STEM-2`` … that no item has, not even in a conflict.

    >>> free_id("share", ["share-1", "share-2.5f3c", "garden-1"])
    'share-3'
    """
    used = {id.partition(".")[0] for id in taken}
    return next(id for number in itertools.count(1) if (id := f"{stem}-{number}") not in used)


def ids_of(text: str, path: Path) -> list[str]:
    """Return the ids that stand in the text of a topic file."""
    return [str(item.get("id")) for item in items_of(text, path)]


def items_of(text: str, path: Path) -> list[dict[str, Any]]:
    """Return the tables of the items in the text of a topic file.

    Raises:
        ItembankError: it is no TOML, or its items are none.
    """
    try:
        items = tomllib.loads(text).get("items", [])
    except tomllib.TOMLDecodeError as error:
        raise ItembankError(f"{path}: this file cannot be read as TOML: {error}.") from None
    return [item for item in items if isinstance(item, dict)]
