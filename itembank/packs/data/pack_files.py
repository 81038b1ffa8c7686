"""Packs on disk: a folder that appears whole or not at all, and `pack.json` read with care."""

from __future__ import annotations

import json
import os
import re
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from itembank.errors import ItembankError
from itembank.files.together import Together, write_whole
from itembank.packs.data.pack import Pack
from itembank.packs.data.pack_place import PACK_FILE, read_pack_data

_OURS = re.compile(r"pack\.json|[a-z0-9-]+\.(pdf|html)", re.IGNORECASE)


def pack_json(pack: Pack) -> bytes:
    """Return the text of `pack.json`: the same bytes for the same pack.

    Fields stand in the order of the models; letters outside ASCII are written as they are.
    """
    return (pack.model_dump_json(indent=1) + "\n").encode()


def schema_json() -> bytes:
    """Return the JSON Schema of `pack.json` (draft 2020-12), as published in ``docs``."""
    from itembank.packs.data.pack_models import model_of

    schema: dict[str, Any] = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **model_of(Pack).model_json_schema(),
    }
    return (json.dumps(schema, indent=1, ensure_ascii=False) + "\n").encode()


def write_folder(files: Mapping[str, bytes], folder: Path, replace: bool = False) -> None:
    """Write a folder that holds exactly `files`; it appears whole or not at all.

    The files are written to a hidden folder beside the wanted one and brought to the disk;
    only then does that folder take its name. With `replace`, the old folder and the new one
    change places, and the old one is removed when the new one stands.

    Raises:
        ItembankError: the folder exists (and may not be replaced), or cannot be written.
    """
    refuse_folder(folder, files, replace)
    try:
        with Together() as change:
            change.folder(folder, files)
    except OSError as error:
        raise cannot_write(folder, error) from None


def refuse_folder(folder: Path, files: Mapping[str, bytes], replace: bool) -> None:
    """Refuse to write where something stands that may not be replaced.

    Raises:
        ItembankError: says what stands there and what to do.
    """
    for name in files:
        if Path(name).name != name or name in {"", ".", ".."}:
            raise ItembankError(f"A pack's file cannot be called ‘{name}’.")
    if not os.path.lexists(folder):
        return
    if folder.is_symlink() or not folder.is_dir():
        raise ItembankError(f"{folder} exists and is no folder.", matter="place of a pack")
    if not replace:
        raise ItembankError(
            f"There is a pack in {folder} already.", matter="pack there", folder=folder
        )
    try:
        held = sorted(path.name for path in folder.iterdir())
    except OSError as error:
        raise cannot_write(folder, error) from None
    strange = [name for name in held if not _OURS.fullmatch(name) and name not in files]
    if held and (strange or PACK_FILE not in held):
        what = f"it holds {strange[0]}" if strange else f"it holds no {PACK_FILE}"
        raise ItembankError(
            f"{folder} is not just a pack: {what}. Nothing was changed. Move what you want to "
            "keep somewhere else, then try again."
        )


def cannot_write(folder: Path, error: OSError) -> ItembankError:
    """Return the plain error for a folder that the system will not let us write."""
    reason = error.strerror or str(error)
    return ItembankError(
        f"{folder} cannot be written: {reason}. Nothing was written.", matter="place of a pack"
    )


def load_pack(path: Path) -> Pack:
    """Return the pack that a `pack.json` holds, its shape checked but its keys not proved.

    A folder stands for the `pack.json` in it. :func:`itembank.packs.pack_checks.read_pack` proves
    the keys as well; nothing is to be printed without that.

    Raises:
        ItembankError: it cannot be read, is not JSON, or is not a pack this version knows.
    """
    from pydantic import ValidationError

    text, _ = read_pack_data(path)
    path = path / PACK_FILE if path.is_dir() else path
    try:
        return _checked(text)
    except ValidationError as error:
        raise ItembankError(_shape_faults(path, error)) from None


@lru_cache(maxsize=12)
def _checked(text: str) -> Pack:
    """Return the pack that a text holds; nobody changes it, and it is kept for the next look.

    A page of the desk looks at the packs of a week, and most often at those of the page before.
    """
    # Strictly, or "8" would be read as 8 and 1 as true: a file that this tool never wrote.
    return Pack.model_validate_json(text, strict=True)


def _shape_faults(path: Path, error: Any) -> str:
    from itembank.files.model_words import model_at, sentence
    from itembank.packs.data.pack_models import model_of

    found = error.errors(include_url=False)
    lines = []
    for fault in found[:5]:
        message = fault["msg"]
        said = sentence(fault, model_at(model_of(Pack), fault["loc"]), written=False)
        said = said or f"{message[:1].lower()}{message[1:]}."
        lines.append(f"{path}, {_field_path(fault['loc'])}: {said}")
    if len(found) > 5:
        lines.append(f"… and {len(found) - 5} more.")
    return "\n".join([*lines, "Make the pack again, or take a copy that is whole."])


def _field_path(loc: tuple[str | int, ...]) -> str:
    """Return the place of a field as a person counts: ``versions[0].items[2].key``.

    >>> _field_path(("versions", 0, "items", 2, "key"))
    'versions[0].items[2].key'
    """
    text = ""
    for part in loc:
        text += f"[{part}]" if isinstance(part, int) else f".{part}"
    return text.lstrip(".") or "the whole file"


if __name__ == "__main__":
    published = Path(__file__).parents[3] / "docs" / "pack.schema.json"
    write_whole(published, schema_json())
    print(published)
