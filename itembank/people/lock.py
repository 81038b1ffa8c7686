"""A folder that one person at a time works in: a file that says who does, and since when.

It holds between machines that share the folder, and says nothing of anybody but the initials
that they chose. One that was left behind by a process that is gone, or that is older than such
work can take, is taken over.
"""

from __future__ import annotations

import contextlib
import json
import os
import random
import secrets
import threading
import time
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.disk import write_first
from itembank.people.colleague import A_COLLEAGUE, chosen_initials, machine_mark, shown_as
from itembank.text.in_words import counted

LOCK_FILE = ".lock"
GUARD = "-guard"
GUARD_SECONDS = 10
"""Age from which a guard, or a lock that says nothing, was left behind by a killed process."""

_held = threading.local()
"""The locks that this thread holds, by path: what it does under one may ask for it as well."""


class Locked(ItembankError):
    """Someone else is at work in the folder."""


class Unwritable(ItembankError):
    """Nothing can be written in the folder, a lock neither."""


@dataclass(frozen=True, slots=True)
class Holder:
    """Who holds a lock, by chosen initials, the process that does, and since when (in UTC).

    `machine` is a mark by which that machine alone knows itself again.
    """

    who: str
    pid: int
    since: datetime
    token: str = ""
    machine: str = ""

    def seconds(self, now: datetime | None = None) -> float:
        """Return for how long the lock has been held; 0 where its machine's clock is ahead."""
        return max(((now or datetime.now(UTC)) - self.since).total_seconds(), 0.0)

    def age(self, now: datetime | None = None) -> str:
        """Return how long the lock has been held, in words.

        >>> start = datetime(2026, 11, 25, 10, 0, tzinfo=UTC)
        >>> Holder("HT", 7, start).age(datetime(2026, 11, 25, 10, 3, 20, tzinfo=UTC))
        '3 minutes'
        """
        seconds = int(self.seconds(now))
        for size, name in ((86_400, "day"), (3_600, "hour"), (60, "minute"), (1, "second")):
            if seconds >= size:
                return counted(seconds // size, name)
        return "less than a second"


@dataclass(frozen=True, slots=True)
class Manners:
    """How one waits for a lock, and what one says.

    Parameters
    ----------
    doing
        What its holder does, as in *HT has been saving this bank for 3 minutes*.
    wait
        How many seconds somebody else is waited for.
    stuck
        Age in seconds from which a lock is not waited for: its holder is not just at work.
    stale
        Age in seconds from which it was left behind, since no such work takes so long; None where
        only a person can tell.
    file
        The name of the lock in its folder.
    refused
        The name of the matter where one waited in vain.
    """

    doing: str
    wait: float
    stuck: float = float("inf")
    stale: float | None = None
    file: str = LOCK_FILE
    refused: str = ""


Waiting = Callable[[Holder], None]
"""Told, time and again, whom one waits for."""


def holder(folder: Path | str, file: str = LOCK_FILE) -> Holder | None:
    """Return who holds the lock of a folder, or None where nobody does."""
    path = Path(folder) / file
    try:
        text = path.read_text(encoding="utf-8")
        made = datetime.fromtimestamp(path.stat().st_mtime, UTC)
    except FileNotFoundError:
        return None
    except (OSError, UnicodeDecodeError):
        return Holder(A_COLLEAGUE, 0, datetime.now(UTC))
    try:
        data = json.loads(text)
        return Holder(
            shown_as(str(data["who"])),
            int(data["pid"]),
            datetime.fromisoformat(data["since"]).astimezone(UTC),
            str(data["token"]),
            str(data["machine"]),
        )
    except (ValueError, KeyError, TypeError, OverflowError, RecursionError):
        # Just made and not yet filled in, or damaged: then the file's own age has to do.
        return Holder(A_COLLEAGUE, 0, made)


def holds(folder: Path | str, file: str = LOCK_FILE) -> bool:
    """Tell whether this thread holds the lock of a folder already."""
    return _key(folder, file) in _held.__dict__.get("locks", ())


def _key(folder: Path | str, file: str) -> str:
    return os.path.join(os.path.realpath(folder), file)


@contextlib.contextmanager
def locked(
    folder: Path | str, manners: Manners, waiting: Waiting | None = None
) -> Iterator[Holder]:
    """Hold the lock of a folder while the body runs; another's is waited for, for a while.

    A lock left behind on this machine by a process that is gone is taken over, and so is one
    that says nothing and has been there for some seconds.

    Raises:
        Locked: someone else holds it; the message tells who, and for how long.
        Unwritable: the folder cannot be written to.
    """
    path = Path(folder) / manners.file
    held: dict[str, Holder] = _held.__dict__.setdefault("locks", {})
    here = _key(folder, manners.file)
    if here in held:
        yield held[here]
        return
    mine = held[here] = _take(path, manners, waiting)
    try:
        yield mine
    finally:
        del held[here]
        # Only one's own lock is let go: somebody may have taken it away and made another.
        found = holder(folder, manners.file)
        if found is not None and found.token == mine.token:
            path.unlink(missing_ok=True)


def _take(path: Path, manners: Manners, waiting: Waiting | None) -> Holder:
    """Make a lock, as soon as nobody has it."""
    who, machine = shown_as(chosen_initials()), machine_mark()
    last = time.monotonic() + manners.wait
    while True:
        now, token = datetime.now(UTC), secrets.token_hex(8)
        mine = Holder(who, os.getpid(), now, token, machine)
        if _make(path, mine):
            return mine
        rival = holder(path.parent, path.name)
        gone = rival is not None and _is_gone(rival, manners)
        if gone and rival is not None:
            _take_away(path, rival)
            if _make(path, mine):
                return mine
            # Another takes the old lock away just now, or was killed while doing so.
            rival = holder(path.parent, path.name) or rival
            gone = rival is not None and _is_gone(rival, manners)
        stuck = rival is not None and not gone and rival.seconds() > manners.stuck
        if time.monotonic() >= last or stuck:
            raise _refusal(path.parent, None if gone else rival, manners)
        if waiting is not None and rival is not None and not gone:
            waiting(rival)
        time.sleep(random.uniform(0.01, 0.05))


def unlock(folder: Path | str, file: str = LOCK_FILE) -> Holder | None:
    """Take a lock away, whoever holds it, and return who held it; None where nobody did.

    Raises:
        ItembankError: the folder cannot be written to.
    """
    found = holder(folder, file)
    try:
        (Path(folder) / file).unlink(missing_ok=True)
    except OSError as error:
        raise unwritable(Path(folder), error) from None
    return found


def _make(path: Path, mine: Holder) -> bool:
    """Make the lock's file, which must not be there; return whether that was done.

    It is there with all it says or not at all: one that says nothing would keep everybody out.
    """
    record = {
        "who": mine.who,
        "pid": mine.pid,
        "since": mine.since.isoformat(),
        "token": mine.token,
        "machine": mine.machine,
    }
    try:
        return write_first(path, json.dumps(record).encode())
    except OSError as error:
        raise unwritable(path.parent, error) from None


def _is_gone(other: Holder, manners: Manners) -> bool:
    """Whether the process that made a lock ran on this machine and has ended.

    Wherever it ran, it is gone after longer than such work can take.

    Of a lock that says nothing only its age is known: this version makes none, but a full disk
    may have left one to an older version.
    """
    if manners.stale is not None and other.seconds() > manners.stale:
        return True
    if not other.token:
        return other.seconds() > GUARD_SECONDS
    if not other.machine or other.machine != machine_mark() or other.pid <= 0:
        return False
    if os.name == "nt":  # there, asking a process for a sign of life would end it
        return False
    try:
        os.kill(other.pid, 0)
    except ProcessLookupError:
        return True
    except (OSError, OverflowError):
        return False
    return False


def _take_away(path: Path, other: Holder) -> None:
    """Take away a lock left behind, unless it has become another's in the meantime.

    Only one process at a time does so: otherwise the second could take away the lock that the
    first has just made.
    """
    guard = path.with_name(path.name + GUARD)
    try:
        os.close(os.open(guard, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o666))
    except OSError:
        with contextlib.suppress(OSError):
            if time.time() - guard.stat().st_mtime > GUARD_SECONDS:  # its maker was killed
                guard.unlink()
        return
    try:
        if holder(path.parent, path.name) == other:
            path.unlink(missing_ok=True)
    finally:
        guard.unlink(missing_ok=True)


def _refusal(folder: Path, other: Holder | None, manners: Manners) -> Locked:
    if other is None:
        return Locked(f"{folder}: someone else was {manners.doing} just now. Try again.")
    return Locked(
        f"{folder}: {other.who} has been {manners.doing} for {other.age()}, so nothing was done. "
        "Try again in a moment.",
        matter=manners.refused,
        folder=folder,
        holder=other,
    )


def unwritable(folder: Path, error: OSError) -> Unwritable:
    """Return the plain error for a folder in which nothing can be written."""
    return Unwritable(
        f"{folder}: this folder cannot be written to ({error.strerror}), so nothing was saved."
    )
