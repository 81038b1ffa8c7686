"""The starter of a pack as items to mark by: exactly what the class was shown.

An item is made again from its address where that gives what the pack says, prompt and key and
all: that is quick. Where it does not, because a bank's question was edited since, or moved, the
pack's own copy counts, which is proved again by both roads when it is read.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from itembank.bank.index.any_address import find_any
from itembank.errors import ItembankError
from itembank.items.item import Item, Run
from itembank.notation.mathml import mathml
from itembank.packs.data.pack_place import read_pack_data


def starter_items(path: Path, banks: tuple[Path, ...] = ()) -> dict[str, list[Item]]:
    """Return the questions of each version of a pack's starter, by the version's letter.

    Raises:
        ItembankError: the pack cannot be read, or is not whole.
        CheckFailed: a key of it is wrong.
    """
    _, data = read_pack_data(path)
    try:
        versions = data["versions"]
        quick = {
            str(version["letter"]): [_same(stored, banks) for stored in version["items"]]
            for version in versions
        }
    except (KeyError, TypeError, ValueError, AttributeError, RecursionError):
        quick = {"": [None]}  # reading the pack says what is wrong with it
    found = {
        letter: [item for item in items if item is not None] for letter, items in quick.items()
    }
    if all(len(found[letter]) == len(items) for letter, items in quick.items()):
        return found
    from itembank.packs.data.read_back import read_item
    from itembank.packs.pack_checks import read_pack

    pack = read_pack(path)
    return {
        version.letter: [read_item(stored) for stored in version.items] for version in pack.versions
    }


def _same(stored: Mapping[str, Any], banks: tuple[Path, ...]) -> Item | None:
    """Return the item at a stored question's address if it is what is stored there."""
    try:
        item = find_any(str(stored["address"]), banks)
    except ItembankError:
        return None
    said = [run["text"] if run["kind"] == "text" else run["mathml"] for run in stored["prompt"]]
    key = stored["key"]
    if (
        said == [_face(run) for run in item.prompt]
        and (key["mathml"], key["form"]) == (mathml(item.key), item.form)
        and list(stored["accept"]) == list(item.accept)
    ):
        return item
    return None


def _face(run: Run) -> str:
    return run if isinstance(run, str) else mathml(run)
