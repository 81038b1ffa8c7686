"""How a person appears to colleagues who share a folder: by initials they chose, or not at all.

No file that colleagues share holds a login or the name of a machine. A lock tells who is
saving by the initials in the environment variable ``ITEMBANK_INITIALS``, else by those the
person gave when they were asked, else as "a colleague".

What was answered stands in ``me.toml`` in the person's own settings folder, beside a random key
that never leaves it. The key makes :func:`machine_mark`, by which a later command on the same
machine knows its own lock again and nobody else learns anything.
"""

from __future__ import annotations

import hashlib
import hmac
import os
import platform
import re
import secrets
import tomllib
from pathlib import Path

from itembank.errors import ItembankError
from itembank.files.together import write_whole

VARIABLE = "ITEMBANK_INITIALS"
FILE_NAME = "me.toml"
A_COLLEAGUE = "a colleague"
_INITIALS = re.compile(r"[^\W_]{1,6}")
_KEY = re.compile(r"[0-9a-f]{32,64}")
_HEAD = "# Yours alone: no other person and no shared folder needs this file.\n"


def settings_folder() -> Path:
    """Return the person's own folder for settings of this tool, which need not be there.

    It is under ``XDG_CONFIG_HOME``, ``~/.config`` or, on Windows, ``%LOCALAPPDATA%``.
    """
    named = os.environ.get("XDG_CONFIG_HOME", "")
    if not named and os.name == "nt":
        named = os.environ.get("LOCALAPPDATA", "")
    return (Path(named) if named else Path.home() / ".config") / "itembank"


def check_initials(typed: str) -> str:
    """Return initials as they are shown.

    Raises:
        ItembankError: they are not one to six letters or digits.

    >>> check_initials(" ht ")
    'HT'
    """
    initials = typed.strip().upper()
    if not _INITIALS.fullmatch(initials):
        raise ItembankError(
            f"‘{typed.strip()[:20]}’ are not initials. "
            "Write one to six letters or digits, as in HT."
        )
    return initials


def shown_as(initials: str | None) -> str:
    """Return the words for whoever chose `initials`; what are no initials is not shown.

    >>> shown_as("HT"), shown_as("ht@staff-room"), shown_as(None)
    ('HT', 'a colleague', 'a colleague')
    """
    return initials if initials and _INITIALS.fullmatch(initials) else A_COLLEAGUE


def chosen_initials() -> str | None:
    """Return this person's initials, "" where they want none, None where nobody asked yet.

    Raises:
        ItembankError: ``ITEMBANK_INITIALS`` holds something else.
    """
    if VARIABLE in os.environ:
        stated = os.environ[VARIABLE]
        try:
            return check_initials(stated) if stated.strip() else ""
        except ItembankError as error:
            raise ItembankError(f"The environment variable {VARIABLE}: {error}") from None
    return _kept().get("initials")


def keep_initials(initials: str) -> Path:
    """Keep the answer of a person who was asked ("" is none), and return the file it is in.

    Raises:
        ItembankError: the file cannot be written.
    """
    return _keep(initials, _kept().get("key") or secrets.token_hex(16))


def machine_mark() -> str:
    """Return a mark that is the same for one person on one machine, and tells nothing of either.

    It is the machine's name hashed under the person's own random key. Where the key cannot be
    kept it is "", which is like no other machine's.
    """
    kept = _kept()
    key = kept.get("key", "")
    if not key:
        key = secrets.token_hex(16)
        try:
            _keep(kept.get("initials"), key)
        except ItembankError:
            return ""
    digest = hmac.new(key.encode(), platform.node().encode("utf-8", "replace"), hashlib.sha256)
    return digest.hexdigest()[:16]


def _kept() -> dict[str, str]:
    """Return what ``me.toml`` holds; a file that cannot be read is as good as none."""
    try:
        data = tomllib.loads((settings_folder() / FILE_NAME).read_text(encoding="utf-8"))
    except (OSError, ValueError, RuntimeError, RecursionError):
        return {}
    kept = {name: data[name] for name in ("initials", "key") if isinstance(data.get(name), str)}
    if not _KEY.fullmatch(kept.get("key", "")):
        kept.pop("key", None)
    if kept.get("initials") and not _INITIALS.fullmatch(kept["initials"]):
        del kept["initials"]
    return kept


def _keep(initials: str | None, key: str) -> Path:
    answer = "" if initials is None else f'initials = "{initials}"\n'
    try:
        path = settings_folder() / FILE_NAME
    except RuntimeError:  # an account without a home
        raise ItembankError("There is no home folder to keep settings in.") from None
    write_whole(path, f'{_HEAD}{answer}key = "{key}"\n'.encode(), mode=0o600)
    return path
