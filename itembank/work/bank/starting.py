"""Starts a bank: an empty folder that will hold one file a topic."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError


@dataclass(frozen=True, slots=True)
class Started:
    """A bank that was started: its name for addresses, and its folder."""

    name: str
    folder: Path


def start_bank(
    folder: Path,
    name: str | None = None,
    title: str | None = None,
    licence: str | None = None,
    licensor: str | None = None,
    authors: Mapping[str, str] | None = None,
) -> Started:
    """Start a bank in a folder, which is made if need be; the folder's name is the usual one.

    Raises:
        ItembankError: there is a bank already, a name or a code is not allowed, or the folder
            cannot be written to.
    """
    from itembank.bank.write.edit import create_bank

    short = name or plain_name(folder.resolve().name)
    create_bank(
        folder, short, title or short, licence=licence, licensor=licensor, authors=authors or {}
    )
    return Started(short, folder)


def plain_name(folder: str) -> str:
    """Return a bank's name from that of its folder.

    Raises:
        ItembankError: the folder's name has no letters or digits to use.

    >>> plain_name("Year 8 questions")
    'year-8-questions'
    """
    name = "-".join(re.findall(r"[a-z0-9]+", folder.lower()))
    if not name:
        raise ItembankError("Give the bank a short name, such as larkhythe.", field="name")
    return name
