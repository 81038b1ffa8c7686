"""A file as it was when it was read, so that what somebody saves in the meantime stays theirs."""

from __future__ import annotations

import difflib
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import decode_text

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

    def with_more(self, text: str) -> bytes:
        """Return the file with `text` after an empty line at its end, written as it writes.

        What it holds is not decoded for it, however long it is.
        """
        if self.raw is None or not self.raw.strip():
            return self.encode(text)
        end = b"\r\n" if _only_crlf(self.raw) else b"\n"
        more = text.encode("utf-8").replace(b"\n", end)
        return b"".join((self.raw.rstrip(b"\r\n"), end, end, more))

    def refuse_newer(self) -> None:
        """Refuse to go on where the file is not as it was.

        Raises:
            ChangedSince: somebody has made it, changed it or taken it away.
        """
        self.refuse_other(self.path)

    def refuse_other(self, now: Path | None) -> None:
        """Refuse to go on where what stood in the file's place, and is at `now`, is another.

        Raises:
            ChangedSince: it is; None stands for no file.
        """
        raw = now.read_bytes() if now is not None and now.exists() else None
        if raw == self.raw:
            return
        if raw is None:
            raise ChangedSince(
                f"{self.path}: this file has been taken away since it was read, so nothing was "
                "saved. Start again from what is there now.",
                "",
            )
        verb = "made" if self.raw is None else "changed"
        raise ChangedSince(
            f"{self.path}: this file has been {verb} since it was read, so nothing was saved. "
            "Look at the difference and start again from what is there now.",
            difference(_lines(self.raw), _lines(raw)),
        )


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


def take_bytes(path: Path | str) -> Snapshot:
    """Return a file as it is now, for :meth:`Snapshot.with_more` alone: its text is left out."""
    path = Path(path)
    return Snapshot(path, path.read_bytes() if path.exists() else None, "")


def _lines(raw: bytes | None) -> str:
    return (raw or b"").decode("utf-8-sig", "replace").replace("\r\n", "\n")


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


def _only_crlf(raw: bytes) -> bool:
    ends = raw.count(b"\n")
    return ends > 0 and raw.count(b"\r\n") == ends
