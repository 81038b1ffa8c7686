r"""A file of sign-offs in pieces, so that one more sign-off has but one piece read anew.

A file of two hundred thousand sign-offs takes most of a minute to read. It is parted where an
entry begins, and at which entries is told by their own bytes: what is added, changed or taken
out somewhere leaves the pieces elsewhere as they were.
"""

from __future__ import annotations

import re
import tomllib
import zlib
from collections.abc import Iterator
from pathlib import Path

from itembank.bank.model.signed import SignOff
from itembank.bank.proof.signoff import signoffs_of_file
from itembank.files.faults import FileFaults
from itembank.files.toml_table import TomlFile

_BEGINS = re.compile(rb"(?m)^\[\[signoffs\]\]")
_BEGINNING = 100
"""Bytes of an entry by which it is told whether a piece begins there: item, author and day."""
USUAL = 256
"""About so many entries are in a piece."""
LONGEST = 4 * USUAL
"""Never more than so many, whatever they say."""


def pieces(data: bytes) -> Iterator[bytes]:
    r"""Yield a file of sign-offs in pieces: first what stands before the entries, often notes.

    Put together they are the file, to the byte.

    >>> list(pieces(b"# Notes\n\n[[signoffs]]\nitem = 'a-1'\n"))
    [b'# Notes\n\n', b"[[signoffs]]\nitem = 'a-1'\n"]
    """
    begun, entries = 0, LONGEST  # the first entry always begins a piece
    for found in _BEGINS.finditer(data):
        at = found.start()
        if entries >= LONGEST or zlib.crc32(data[at : at + _BEGINNING]) % USUAL == 0:
            yield data[begun:at]
            begun, entries = at, 0
        entries += 1
    yield data[begun:]


def read_piece(piece: bytes, path: Path) -> tuple[SignOff, ...] | None:
    """Return the sign-offs of a piece, or None where it cannot be read by itself.

    Then the file has a fault, or says what it says in another way than the tool writes it; who
    reads it whole is told.
    """
    try:
        return signoffs_of_file(TomlFile(path, piece.decode("utf-8")))
    except (FileFaults, UnicodeDecodeError):
        return None


def is_only_notes(head: bytes) -> bool:
    r"""Whether what stands before the first entry says nothing that counts.

    >>> is_only_notes(b"# Who checked which\n"), is_only_notes(b"signoffs = []\n")
    (True, False)
    """
    try:
        return not tomllib.loads(head.decode("utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError):
        return False
