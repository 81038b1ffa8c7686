"""A colleague's bank as it is handed over: files, a zip of them, or a folder; laid out to be read.

Only a bank's own files are taken, each by its bare name into one folder: whatever names a zip or
a browser gives them, nothing is written anywhere else.
"""

from __future__ import annotations

import io
import lzma
import struct
import zipfile
import zlib
from collections.abc import Iterable, Mapping
from pathlib import Path, PurePosixPath

from itembank.errors import ItembankError
from itembank.files.together import write_whole
from itembank.files.typed_path import is_file

BANK_FILE = "bank.toml"
MOST_FILES = 300
"""Files of a bank at most: one a topic, and a few of its own."""
MOST_BYTES = 20_000_000
"""How long all files of a bank may be together, once they are unpacked."""
_NO_ZIP = (
    *(zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError, OSError, ValueError),
    *(zlib.error, lzma.LZMAError, struct.error),
)
"""What a zip raises that is damaged, locked by a password or packed in a way not known here.

The three ways of packing raise errors of their own: zipfile hands them on as they are.
"""


def lay_out(files: Mapping[str, bytes], into: Path) -> None:
    """Write the files of one bank to a folder, by their bare names.

    Raises:
        ItembankError: they are no bank, or too much.
    """
    if BANK_FILE not in files:
        raise ItembankError(
            f"There is no {BANK_FILE} among these files, so they are no whole bank. "
            "Choose all files of your colleague’s bank, or its zip.",
            field="files",
        )
    for name, data in files.items():
        if not _is_name(name):
            raise ItembankError(f"‘{name[:60]}’ is no name of a file of a bank.", field="files")
        write_whole(into / name, data)


def files_sent(sent: Iterable[tuple[str, bytes]]) -> dict[str, bytes]:
    """Return the files of the one bank among what was sent; a zip is opened.

    Raises:
        ItembankError: there are several banks, two files of one name, or too much.
    """
    found: list[tuple[PurePosixPath, bytes]] = []
    for name, data in sent:
        if name.lower().endswith(".zip") or data[:4] == b"PK\x03\x04":
            found += _unzipped(name, data)
        else:
            found.append((PurePosixPath(name.replace("\\", "/")), data))
    found = [(path, data) for path, data in found if path.suffix == ".toml"]
    if len(found) > MOST_FILES:
        raise ItembankError(f"A bank has {MOST_FILES} files at most.", field="files")
    homes = {path.parent for path, _ in found if path.name == BANK_FILE}
    if len(homes) > 1:
        raise ItembankError("There are several banks among these files.", field="files")
    files: dict[str, bytes] = {}
    for path, data in found:
        if homes and path.parent not in homes:
            continue  # files of the department beside its bank
        if path.name in files:
            raise ItembankError(f"Two of these files are called {path.name}.", field="files")
        files[path.name] = data
    return files


def files_in(folder: Path) -> dict[str, bytes]:
    """Return the files of the bank in a folder.

    Raises:
        ItembankError: there is no such folder, it holds no bank, or too much.
    """
    if not is_file(folder / BANK_FILE):
        raise ItembankError(f"There is no bank in {folder}: it has no {BANK_FILE}.", field="path")
    paths = sorted(folder.glob("*.toml"))
    try:
        if len(paths) > MOST_FILES or sum(path.stat().st_size for path in paths) > MOST_BYTES:
            raise ItembankError("That bank is too large for this page.", field="path")
        return {path.name: path.read_bytes() for path in paths}
    except OSError as error:
        raise ItembankError(
            f"{error.filename or folder} cannot be read: {error.strerror}.", field="path"
        ) from None


def _unzipped(name: str, data: bytes) -> list[tuple[PurePosixPath, bytes]]:
    """Return the files in a zip, read no further than a bank may be long."""
    found = []
    left = MOST_BYTES
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            entries = [member for member in archive.infolist() if member.filename.endswith(".toml")]
            if len(entries) > MOST_FILES:
                raise ItembankError(f"A bank has {MOST_FILES} files at most.", field="files")
            for member in entries:
                with archive.open(member) as stream:
                    part = stream.read(left + 1)
                left -= len(part)
                if left < 0:
                    raise ItembankError(f"{name} unpacks to too much for a bank.", field="files")
                found.append((PurePosixPath(member.filename), part))
    except _NO_ZIP:
        raise ItembankError(f"{name} cannot be opened as a zip.", field="files") from None
    return found


def _is_name(name: str) -> bool:
    return (
        name == Path(name).name
        and name.endswith(".toml")
        and not name.startswith(".")
        and not any(char in name for char in "\\/:\0")
    )
