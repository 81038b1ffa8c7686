"""Where packs are, and what their folders are called: written and read in this one place.

Only the standard library is loaded: a teacher who types three numbers after a lesson must not
wait for all that checks a pack.
"""

from __future__ import annotations

import datetime
import json
import math
import re
from pathlib import Path
from typing import Any, NoReturn

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import decode_text
from itembank.text.folding import same_name

PACK_FILE = "pack.json"
SCHEMA_VERSION = 6
_FOLDER = re.compile(r"(.+)-(\d{4}-\d{2}-\d{2})(?:-([\w.]{1,8}))?", re.DOTALL)


@dataclass(frozen=True, slots=True)
class PackPlace:
    """Where a class's pack for one lesson is; `period` is empty for the day's only one."""

    path: Path
    date: datetime.date
    period: str = ""


def folder_name(class_name: str, date: datetime.date, period: str = "") -> str:
    """Return the name of a pack's folder; of two lessons on a day each has its period in it.

    >>> folder_name("8K", datetime.date(2026, 11, 30), "3")
    '8K-2026-11-30-3'
    """
    return "-".join([class_name, date.isoformat(), *([period] if period else [])])


def read_folder_name(name: str) -> tuple[str, datetime.date, str] | None:
    """Return the class, the day and the period in the name of a pack's folder, or None.

    >>> read_folder_name("8K-2026-11-30-3")
    ('8K', datetime.date(2026, 11, 30), '3')
    >>> read_folder_name("8K-2026-11-31") is None
    True
    """
    match = _FOLDER.fullmatch(name)
    if match is None:
        return None
    try:
        return match[1], datetime.date.fromisoformat(match[2]), match[3] or ""
    except ValueError:
        return None


def packs_of(home: Path, class_name: str) -> list[PackPlace]:
    """Return the packs of a class in the output folder, or one folder further down, by date."""
    found = []
    for path in (*home.glob(f"*/{PACK_FILE}"), *home.glob(f"*/*/{PACK_FILE}")):
        named = read_folder_name(path.parent.name)
        if named is not None and same_name(named[0], class_name):
            found.append(PackPlace(path, named[1], named[2]))
    return sorted(found, key=lambda place: (place.date, place.period, str(place.path)))


def read_pack_data(path: Path) -> tuple[str, dict[str, Any]]:
    """Return the text of a pack's file and what it holds as JSON; a folder stands for its file.

    Nothing is known yet of what stands in it but the version of its format.

    Raises:
        ItembankError: it cannot be read, is not JSON, or was made by a newer version of this tool.
    """
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
    if not isinstance(data, dict):
        raise ItembankError(f"{path}: this is JSON but not a pack: a pack is an object in {{…}}.")
    version = data.get("schema_version")
    if isinstance(version, int) and not isinstance(version, bool) and version > SCHEMA_VERSION:
        raise ItembankError(
            f"{path}: this pack was made by a newer itembank ({data.get('made_by', 'unknown')}; "
            f"format {version}, and this one reads format {SCHEMA_VERSION}). Update itembank."
        )
    return text, data


def _refuse_constant(name: str) -> NoReturn:
    raise ValueError(f"{name} is not JSON")


def _finite(digits: str) -> float:
    number = float(digits)
    if not math.isfinite(number):
        raise ValueError("too large")
    return number
