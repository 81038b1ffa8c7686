"""Where the indexes of banks are kept: in this person's cache, where nobody else looks.

A bank often lies on a share that a person may only read, or that several write to at once, and
SQLite's locks do not hold on every share. So each person has an index of their own.
"""

from __future__ import annotations

import hashlib
import os
import sys
from pathlib import Path

from itembank.bank.index.store.code_mark import code_mark

VARIABLE = "ITEMBANK_INDEX"
"""The environment variable that names another folder for indexes; :data:`NONE` keeps none."""
NONE = "none"
FOLDER = "banks"


def cache_folder() -> Path | None:
    """Return the folder of this person's indexes, or None where none are to be kept.

    Raises:
        RuntimeError: this account has no home folder.
    """
    stated = os.environ.get(VARIABLE, "")
    if stated.strip().lower() == NONE:
        return None
    return Path(stated).absolute() if stated.strip() else _caches() / "itembank" / FOLDER


def _caches() -> Path:
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches"
    if os.name == "nt":
        local = os.environ.get("LOCALAPPDATA", "")
        return Path(local) if local else Path.home() / "AppData" / "Local"
    # The XDG base directory specification: a path that is not absolute is to be ignored.
    stated = os.environ.get("XDG_CACHE_HOME", "")
    return Path(stated) if os.path.isabs(stated) else Path.home() / ".cache"


def index_path(folder: Path) -> Path | None:
    """Return the file that holds the index of the bank in `folder`, or None where none is kept.

    Each version of this program has one of its own, so that two that share a cache do not undo
    each other's work. The name tells nothing of the bank: folders may be named after people.

    Raises:
        RuntimeError: this account has no home folder.
    """
    home = cache_folder()
    if home is None:
        return None
    where = os.path.realpath(folder)
    mark = hashlib.blake2b(os.fsencode(where), digest_size=16).hexdigest()
    return home / f"{mark}-{code_mark().hex()[:16]}.sqlite3"


def make_private_folder(path: Path) -> None:
    """Make the folder of the indexes, which its owner alone may look into.

    Raises:
        OSError: it cannot be made.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    path.mkdir(mode=0o700, exist_ok=True)
