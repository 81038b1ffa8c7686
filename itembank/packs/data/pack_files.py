"""Packs on disk: a folder that appears whole or not at all, and `pack.json` read with care."""

from __future__ import annotations

import contextlib
import json
import math
import os
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NoReturn

from itembank.errors import ItembankError
from itembank.files.disk import (
    make_parents,
    put_in_place,
    remove,
    remove_if_empty,
    stage_folder,
    sync_folder,
    write_file,
)
from itembank.packs.data.pack import Pack

PACK_FILE = "pack.json"
SCHEMA_VERSION = 4
_OURS = re.compile(r"pack\.json|[a-z0-9-]+\.(pdf|html)", re.IGNORECASE)


def pack_json(pack: Pack) -> bytes:
    """Return the text of `pack.json`: the same bytes for the same pack.

    Fields stand in the order of the models; letters outside ASCII are written as they are.
    """
    return (pack.model_dump_json(indent=1) + "\n").encode()


def schema_json() -> bytes:
    """Return the JSON Schema of `pack.json` (draft 2020-12), as published in ``docs``."""
    schema: dict[str, Any] = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **Pack.model_json_schema(),
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
    new: Path | None = None
    made: list[Path] = []
    try:
        try:
            made = make_parents(folder.parent)
            new = stage_folder(folder)
            for name, data in files.items():
                write_file(new / name, data)
            sync_folder(new)
            _swap_in(new, folder)
        except OSError as error:
            raise cannot_write(folder, error) from None
        made = []
    finally:
        # Gone by now, or what stood there before; or it went wrong, and nothing of it may stay.
        if new is not None:
            remove(new)
        for one in reversed(made):
            remove_if_empty(one)


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
        held = sorted(one.name for one in folder.iterdir())
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


def _swap_in(new: Path, folder: Path) -> None:
    """Give `new` the name `folder`; what stood there is put back if that fails."""
    old = put_in_place(new, folder)
    with contextlib.suppress(OSError):  # the names are right by now, if not yet on the disk
        sync_folder(folder.parent)
    if old is not None:
        remove(old)


def load_pack(path: Path) -> Pack:
    """Return the pack that a `pack.json` holds, its shape checked but its keys not proved.

    A folder stands for the `pack.json` in it. :func:`itembank.packs.check.read_pack` proves
    the keys as well; nothing is to be printed without that.

    Raises:
        ItembankError: it cannot be read, is not JSON, or is not a pack this version knows.
    """
    from pydantic import ValidationError

    from itembank.files.faults import decode_text

    if path.is_dir():
        path = path / PACK_FILE
    text = decode_text(path)
    try:
        data = json.loads(text, parse_constant=_refuse_constant, parse_float=_finite)
    except json.JSONDecodeError as error:
        raise ItembankError(
            f"{path}, line {error.lineno}, column {error.colno}: this is not JSON "
            f"({error.msg[:1].lower()}{error.msg[1:]}). "
            "Make the pack again, or take a copy that is whole."
        ) from None
    except (ValueError, RecursionError):
        raise ItembankError(
            f"{path}: this cannot be read as JSON: a number or a nesting in it is beyond all "
            "measure. Make the pack again, or take a copy that is whole."
        ) from None
    _check_version(path, data)
    try:
        return Pack.model_validate_json(text, strict=True)
    except ValidationError as error:
        raise ItembankError(_shape_faults(path, error)) from None


def _refuse_constant(name: str) -> NoReturn:
    raise ValueError(f"{name} is not JSON")


def _finite(digits: str) -> float:
    number = float(digits)
    if not math.isfinite(number):
        raise ValueError("too large")
    return number


def _check_version(path: Path, data: object) -> None:
    if not isinstance(data, dict):
        raise ItembankError(f"{path}: this is JSON but not a pack: a pack is an object in {{…}}.")
    version = data.get("schema_version")
    if isinstance(version, int) and not isinstance(version, bool) and version > SCHEMA_VERSION:
        raise ItembankError(
            f"{path}: this pack was made by a newer itembank ({data.get('made_by', 'unknown')}; "
            f"format {version}, and this one reads format {SCHEMA_VERSION}). Update itembank."
        )


_SAID = {
    "missing": "this field is missing",
    "extra_forbidden": "there is no field of this name",
}


def _shape_faults(path: Path, error: Any) -> str:
    found = error.errors(include_url=False, include_context=False, include_input=False)
    lines = []
    for fault in found[:5]:
        where = _field_path(fault["loc"])
        message = fault["msg"]
        said = _SAID.get(fault["type"], f"{message[:1].lower()}{message[1:]}")
        lines.append(f"{path}, {where}: {said}.")
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
