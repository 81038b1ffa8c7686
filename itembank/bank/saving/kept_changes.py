"""What the files of a bank were before each change, so that changes are taken back one by one.

It stands in a hidden file beside them, which no reader of a bank looks at: a line of JSON for
each change. Of each file it holds what was there in the place of what differs now, and marks of
the whole before and after. So a change that adds a question to a long file takes no room, and
one that somebody has edited over since is known.
"""

from __future__ import annotations

import base64
import contextlib
import datetime
import hashlib
import json
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.disk import remove
from itembank.files.together import write_whole

FILE = ".changes"
MOST = 40
"""How many changes of one bank can be taken back."""
MOST_BYTES = 4_000_000
"""How long the file may grow; the oldest changes go first."""


@dataclass(frozen=True, slots=True)
class FileWas:
    """What one file of a bank was before a change."""

    name: str
    before: str | None
    """The mark of all that it held; None where there was no file."""
    after: str | None
    start: int
    """How many bytes at its beginning the change left alone."""
    end: int
    """How many at its end."""
    middle: bytes
    """What stood between these."""

    def was(self, now: bytes | None) -> bytes | None:
        """Return what the file held before, from what it holds.

        Raises:
            ValueError: it holds something else than what the change made of it.
        """
        if mark(now) != self.after:
            raise ValueError(self.name)
        if self.before is None:
            return None
        there = now or b""
        found = there[: self.start] + self.middle + there[len(there) - self.end :]
        if mark(found) != self.before:
            raise ValueError(self.name)
        return found


@dataclass(frozen=True, slots=True)
class KeptChange:
    """A change of a bank that can be taken back: what was done, and on which day."""

    words: str
    on: datetime.date
    files: tuple[FileWas, ...]


def file_was(name: str, before: bytes | None, after: bytes | None) -> FileWas:
    """Return what has to be kept of a file so that it can be had back.

    >>> kept = file_was("a.toml", b"one two three", b"one 2 three")
    >>> kept.start, kept.end, kept.middle, kept.was(b"one 2 three")
    (4, 6, b'two', b'one two three')
    """
    old, new = before or b"", after or b""
    most = min(len(old), len(new))
    start = _most(most, lambda a, b: old[a:b] == new[a:b])
    ends = len(old), len(new)
    end = _most(
        most - start,
        lambda a, b: old[ends[0] - b : ends[0] - a] == new[ends[1] - b : ends[1] - a],
    )
    return FileWas(name, mark(before), mark(after), start, end, old[start : len(old) - end])


def _most(most: int, alike: Callable[[int, int], bool]) -> int:
    """Return up to where two texts are alike, at most as far as `most`."""
    low, high = 0, most
    while low < high:  # each step compares half of what is open, in one go
        middle = (low + high + 1) // 2
        if alike(low, middle):
            low = middle
        else:
            high = middle - 1
    return low


def mark(data: bytes | None) -> str | None:
    """Return what tells a file's content from any other; None where there is no file."""
    return None if data is None else hashlib.sha256(data).hexdigest()


def read_changes(folder: Path) -> list[KeptChange]:
    """Return the changes of a bank that can be taken back, the latest last.

    A line that cannot be read is left out, with all that came before it.
    """
    try:
        lines = (folder / FILE).read_bytes().splitlines()
    except OSError:
        return []
    found: list[KeptChange] = []
    for line in lines:
        try:
            found.append(_read(json.loads(line)))
        except (ValueError, LookupError, TypeError, AttributeError, RecursionError):
            found = []
    return found


def write_changes(folder: Path, changes: Sequence[KeptChange]) -> None:
    """Write down the changes of a bank that can be taken back; the bank's lock is held.

    What cannot be written is not kept: the change itself is saved by then.
    """
    with contextlib.suppress(ItembankError):
        if changes:
            write_whole(folder / FILE, _text(changes))
        else:
            remove(folder / FILE)


def still_done(folder: Path, changes: Sequence[KeptChange]) -> list[KeptChange]:
    """Return changes without those at the end that were taken back, had the power not failed."""
    found = list(changes)
    while found and all(_marked(folder / file.name) == file.before for file in found[-1].files):
        found.pop()
    return found


def _marked(path: Path) -> str | None:
    try:
        return mark(path.read_bytes())
    except FileNotFoundError:
        return None


def _text(changes: Sequence[KeptChange]) -> bytes:
    """Return the text of the file that holds some changes, without the oldest where it is long."""
    kept: list[bytes] = []
    size = 0
    for change in reversed(changes[-MOST:]):
        line = _line(change)
        size += len(line)
        if size > MOST_BYTES:
            break
        kept.append(line)
    return b"".join(reversed(kept))


def _line(change: KeptChange) -> bytes:
    files = [
        [
            *(file.name, file.before, file.after, file.start, file.end),
            base64.b64encode(file.middle).decode("ascii"),
        ]
        for file in change.files
    ]
    record = {"words": change.words, "on": change.on.isoformat(), "files": files}
    return json.dumps(record, ensure_ascii=False).encode("utf-8", "replace") + b"\n"


def _read(record: Any) -> KeptChange:
    return KeptChange(
        str(record["words"]),
        datetime.date.fromisoformat(record["on"]),
        tuple(_files(record["files"])),
    )


def _files(rows: Iterable[Any]) -> Iterable[FileWas]:
    for name, before, after, start, end, middle in rows:
        # The file may be anybody's: a path in it could reach out of the folder.
        if Path(name).name != name or name in (FILE, "..", ".") or min(int(start), int(end)) < 0:
            raise ValueError(name)
        yield FileWas(name, before, after, int(start), int(end), base64.b64decode(middle))
