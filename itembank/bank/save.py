"""Writes a bank's files: whole or not at all, and never over what somebody else has changed."""

from __future__ import annotations

import difflib
import os
import secrets
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from itembank.bank.lock import locked
from itembank.disk import sync_folder
from itembank.errors import ItembankError
from itembank.faults import decode_text

MOST_DIFFERENCE = 60
"""Lines of a difference that are shown."""


class ChangedSince(ItembankError):
    """A file is no longer what it was when it was read; `difference` is what changed in it."""

    def __init__(self, message: str, difference: str) -> None:
        self.difference = difference
        super().__init__(f"{message}\n{difference}" if difference else message)


@dataclass(frozen=True, slots=True)
class Snapshot:
    """A file as it was when it was read. `raw` is None where there was none.

    `text` has its lines ended with LF alone; :meth:`encode` puts the file's own way back.
    """

    path: Path
    raw: bytes | None
    text: str

    def encode(self, text: str) -> bytes:
        """Return `text` as this file writes it: its line ends, and its mark of UTF-8."""
        if self.raw is not None and _only_crlf(self.raw):
            text = text.replace("\n", "\r\n")
        data = text.encode("utf-8")
        bom = b"\xef\xbb\xbf"
        return bom + data if self.raw is not None and self.raw.startswith(bom) else data


def take(path: Path | str) -> Snapshot:
    """Return a file as it is now, or an empty one where there is none.

    Raises:
        FileFaults: it cannot be read, or it is not UTF-8.
    """
    path = Path(path)
    if not path.exists():
        return Snapshot(path, None, "")
    raw, text = None, ""
    while raw != (raw := path.read_bytes()):  # until both readings are of the same file
        text = decode_text(path)
    assert raw is not None
    return Snapshot(path, raw, text.replace("\r\n", "\n") if _only_crlf(raw) else text)


def save(folder: Path | str, changes: Sequence[tuple[Snapshot, str | None]]) -> None:
    """Save files of one bank under its lock; each is replaced whole. None takes a file away.

    Every file is compared with its snapshot before any is written, and all of them are on the
    disk before the first takes its place. They take their places in the order given, so a move
    puts the file that gains an item first: a loss of power between the two can double the item
    (which loading then tells) but never lose it.

    Raises:
        ChangedSince: a file is not what it was when it was read. Nothing is written.
        Locked: someone else is saving the bank. Nothing is written.
        ItembankError: the folder cannot be written to. Nothing is written.
    """
    with locked(folder):
        for before, _ in changes:
            _refuse_newer(before)
        ready: list[tuple[Path, Path]] = []
        done: list[Snapshot] = []
        try:
            for before, text in changes:
                target = Path(os.path.realpath(before.path))
                if text is not None:
                    ready.append((_write_beside(target, before.encode(text)), target))
            waiting = iter(ready)
            for before, text in [*filter(_keeps, changes), *filter(_removes, changes)]:
                if text is None:
                    before.path.unlink(missing_ok=True)
                else:
                    os.replace(*next(waiting))
                done.append(before)
            with suppress(OSError):  # the names are right by now, if not yet on the disk
                sync_folder(Path(folder))
        except OSError as error:
            _put_back(done)
            raise ItembankError(
                f"{error.filename or folder}: this cannot be written ({error.strerror}), "
                "so nothing was saved."
            ) from None
        finally:
            for beside, _ in ready:
                beside.unlink(missing_ok=True)


def _keeps(change: tuple[Snapshot, str | None]) -> bool:
    return change[1] is not None


def _removes(change: tuple[Snapshot, str | None]) -> bool:
    return change[1] is None


def _put_back(done: Sequence[Snapshot]) -> None:
    """Undo what was done before a file could not be replaced."""
    for before in done:
        with suppress(OSError):
            target = Path(os.path.realpath(before.path))
            if before.raw is None:
                target.unlink(missing_ok=True)
            else:
                os.replace(_write_beside(target, before.raw), target)


def _refuse_newer(before: Snapshot) -> None:
    now = before.path.read_bytes() if before.path.exists() else None
    if now == before.raw:
        return
    if now is None:
        raise ChangedSince(
            f"{before.path}: this file has been taken away since it was read, so nothing was "
            "saved. Start again from what is there now.",
            "",
        )
    verb = "made" if before.raw is None else "changed"
    raise ChangedSince(
        f"{before.path}: this file has been {verb} since it was read, so nothing was saved. "
        "Look at the difference and start again from what is there now.",
        difference(before.text, now.decode("utf-8-sig", "replace").replace("\r\n", "\n")),
    )


def difference(before: str, now: str) -> str:
    r"""Return what changed from one text to the other, as a unified difference.

    >>> print(difference("a\nb\n", "a\nc\n"))
    --- as it was read
    +++ as it is now
    @@ -1,2 +1,2 @@
     a
    -b
    +c
    """
    lines = list(
        difflib.unified_diff(
            before.splitlines(), now.splitlines(), "as it was read", "as it is now", lineterm=""
        )
    )
    if len(lines) > MOST_DIFFERENCE:
        left = len(lines) - MOST_DIFFERENCE
        lines = [*lines[:MOST_DIFFERENCE], f"… and {left} more lines."]
    return "\n".join(lines)


def _write_beside(target: Path, data: bytes) -> Path:
    """Write `data` to a new file in the same folder, and have it on the disk."""
    beside = target.with_name(f".{target.name}.{secrets.token_hex(6)}.part")
    try:
        with open(beside, "xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if target.exists():
            os.chmod(beside, target.stat().st_mode & 0o777)
    except OSError:
        beside.unlink(missing_ok=True)
        raise
    return beside


def _only_crlf(raw: bytes) -> bool:
    ends = raw.count(b"\n")
    return ends > 0 and raw.count(b"\r\n") == ends
