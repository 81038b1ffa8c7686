"""Holds the files of a bank to what they must say together, reading what an index has of them."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any, cast

from itembank.bank.index.store.index_store import Store
from itembank.bank.model.fields import GeneratedSet, PinnedItem, TopicFile
from itembank.bank.read.bank_checks import bank_faults
from itembank.bank.read.topic_text import Placed, TopicText
from itembank.files.faults import Fault

if TYPE_CHECKING:
    from itembank.bank.index.rows.refresh import Sheet


def faults_together(
    folder: Path,
    sheets: Sequence[Sheet],
    faulty: Mapping[str, TopicText],
    authors: Mapping[str, str] | None,
    store: Store,
) -> list[Fault]:
    """Return every fault that no file of a bank has by itself.

    `sheets` are the files that are right by themselves, `faulty` those that are not.
    """
    whole = bool(faulty) or _ids_repeat(store) or not _authors_known(authors, store)
    files = [_as_read(folder, sheet, store if whole else None) for sheet in sheets]
    files = sorted([*files, *faulty.values()], key=lambda file: file.path)
    return list(bank_faults(files, authors))


def _ids_repeat(store: Store) -> bool:
    query = (
        "SELECT 1 FROM place JOIN temp.now USING (sheet) GROUP BY id HAVING COUNT(*) > 1 LIMIT 1"
    )
    return bool(store.rows(query))


def _authors_known(authors: Mapping[str, str] | None, store: Store) -> bool:
    query = "SELECT DISTINCT author FROM place JOIN temp.now USING (sheet)"
    return all(code is None or code in (authors or {}) for (code,) in store.rows(query))


def _as_read(folder: Path, sheet: Sheet, store: Store | None) -> TopicText:
    """Return a file as reading it would give it; its items, where a store is given, in outline."""
    stated, lines = json.loads(sheet.stated), json.loads(sheet.lines)
    file = TopicText(
        folder / sheet.name, "", TopicFile.model_validate_json(json.dumps(stated["head"]))
    )
    file.topic_line, file.prerequisites_line = lines["topic"], lines["prerequisites"]
    file.generated = list(
        zip(
            (
                GeneratedSet.model_validate_json(json.dumps(fields))
                for fields in stated["generated"]
            ),
            lines["generated"],
            strict=True,
        )
    )
    pinned = (PinnedItem(**fields) for fields in stated["pinned"])
    file.pinned = list(zip(pinned, lines["pinned"], strict=True))
    if store is not None:
        file.items = _outlines(store, sheet)
    return file


def _outlines(store: Store, sheet: Sheet) -> list[Placed]:
    """Return the places of a file's items, each with its id and author alone."""
    query = (
        "SELECT at, id, author, line, id_line, author_line FROM place WHERE sheet = ? ORDER BY at"
    )
    return [
        Placed(cast(Any, SimpleNamespace(id=id, author=author)), at, line, id_line, author_line)
        for at, id, author, line, id_line, author_line in store.rows(query, [sheet.number])
    ]
