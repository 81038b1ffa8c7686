"""What a lesson's starter asks, from its pack: its questions, and in words their kinds."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from itembank.errors import ItembankError


def kinds_asked(folder: Path | None) -> str:
    """Return the kinds in the starter of a pack that are not plain; empty where it has none.

    A pack that is not there, or cannot be read, has none: it is told of elsewhere.

    >>> kinds_asked(None)
    ''
    """
    from itembank.packs.data.pack_place import read_pack_data

    if folder is None:
        return ""
    try:
        _, pack = read_pack_data(folder)
    except ItembankError:
        return ""
    return _line(_questions(pack))


def questions_asked(folder: Path | None) -> list[dict[str, Any]]:
    """Return the questions of the starter of a pack, checked whole; none where it has none.

    >>> questions_asked(None)
    []
    """
    from itembank.packs.data.pack_files import load_pack

    if folder is None:
        return []
    try:
        pack = load_pack(folder)
    except ItembankError:
        return []
    return [item.model_dump(mode="json") for item in pack.versions[0].items]


def kinds_in(pack_json: bytes) -> str:
    """Return the kinds in the starter of a pack's file that is not written yet."""
    return _line(_questions(json.loads(pack_json)))


def _questions(pack: Any) -> list[Any]:
    try:
        return list(pack["versions"][0]["items"])
    except (LookupError, TypeError):
        return []


def _line(questions: list[Any]) -> str:
    from itembank.packs.data.kinds_stored import kinds_counted, kinds_line

    try:
        return kinds_line(kinds_counted(questions))
    except (LookupError, TypeError):
        return ""
