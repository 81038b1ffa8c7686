"""A bank is saved by one person at a time: a file that says who is saving it, and since when."""

from __future__ import annotations

import contextlib
import json
import os
import random
import secrets
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from itembank.errors import ItembankError
from itembank.files.disk import JOURNAL_FILE, write_first
from itembank.files.journal import finish
from itembank.people.colleague import A_COLLEAGUE, chosen_initials, machine_mark, shown_as
from itembank.text.paths_shown import as_typed

LOCK_FILE = ".lock"
GUARD_FILE = ".lock-guard"
GUARD_SECONDS = 10
"""Age from which a guard, or a lock that says nothing, was left behind by a killed process."""

WAIT_SECONDS = 10.0
"""How long somebody else's save is waited for; most take less than a second."""

STUCK_SECONDS = 60
"""Age from which a lock is not waited for: whoever holds it is not just saving."""

_held = threading.local()
"""The locks that this thread holds, by folder: what it does under one may save as well."""


class Locked(ItembankError):
    """Someone else is saving the bank."""


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

    def age(self, now: datetime | None = None) -> str:
        """Return how long the lock has been held, in words.

        >>> start = datetime(2026, 11, 25, 10, 0, tzinfo=UTC)
        >>> Holder("HT", 7, start).age(datetime(2026, 11, 25, 10, 3, 20, tzinfo=UTC))
        '3 minutes'
        """
        seconds = max(int(((now or datetime.now(UTC)) - self.since).total_seconds()), 0)
        for size, name in ((86_400, "day"), (3_600, "hour"), (60, "minute"), (1, "second")):
            if seconds >= size:
                count = seconds // size
                return f"{count} {name}{'' if count == 1 else 's'}"
        return "less than a second"


def holder(folder: Path | str) -> Holder | None:
    """Return who holds the lock of a bank, or None where nobody does."""
    path = Path(folder) / LOCK_FILE
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


@contextlib.contextmanager
def locked(folder: Path | str) -> Iterator[Holder]:
    """Hold the lock of a bank while the body runs; another's is waited for, for a while.

    What one reads, changes and saves in the body is changed by nobody else in between. A lock
    left behind on this machine by a process that is gone is taken over, and so is one that says
    nothing and has been there for some seconds.

    Raises:
        Locked: someone else holds it; the message tells who, for how long, and what to do.
        ItembankError: the folder cannot be written to.
    """
    folder = Path(folder)
    held: dict[str, Holder] = _held.__dict__.setdefault("locks", {})
    here = os.path.realpath(folder)
    if here in held:
        yield held[here]
        return
    mine = held[here] = _take(folder)
    try:
        _finish(folder)
        yield mine
    finally:
        del held[here]
        # Only one's own lock is let go: somebody may have taken it away and made another.
        found = holder(folder)
        if found is not None and found.token == mine.token:
            (folder / LOCK_FILE).unlink(missing_ok=True)


def finish_saving(folder: Path | str) -> None:
    """Finish a save that was cut off in the middle, where there is one and it can be done.

    One that is just going on is waited for.
    """
    folder = Path(folder)
    if (folder / JOURNAL_FILE).exists():
        with contextlib.suppress(ItembankError), locked(folder):
            pass


def _finish(folder: Path) -> None:
    if (folder / JOURNAL_FILE).exists():
        try:
            finish(folder)
        except OSError as error:
            raise _unwritable(folder, error) from None


def _take(folder: Path) -> Holder:
    """Make the lock of a bank, as soon as nobody has it."""
    path = folder / LOCK_FILE
    who, machine = shown_as(chosen_initials()), machine_mark()
    last = time.monotonic() + WAIT_SECONDS
    while True:
        now, token = datetime.now(UTC), secrets.token_hex(8)
        mine = Holder(who, os.getpid(), now, token, machine)
        if _make(path, mine):
            return mine
        other = holder(folder)
        if other is not None and _is_gone(other):
            _take_away(path, other)
            if _make(path, mine):
                return mine
            other = holder(folder) or other
        stuck = other is not None and (datetime.now(UTC) - other.since).total_seconds()
        if time.monotonic() >= last or stuck > STUCK_SECONDS:
            raise Locked(_refusal(folder, other))
        time.sleep(random.uniform(0.01, 0.05))


def unlock(folder: Path | str) -> Holder | None:
    """Take a lock away, whoever holds it, and return who held it; None where nobody did.

    Raises:
        ItembankError: the folder cannot be written to.
    """
    found = holder(folder)
    try:
        (Path(folder) / LOCK_FILE).unlink(missing_ok=True)
    except OSError as error:
        raise _unwritable(Path(folder), error) from None
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
        raise _unwritable(path.parent, error) from None


def _is_gone(other: Holder) -> bool:
    """Whether the process that made a lock ran on this machine and has ended.

    Of a lock that says nothing only its age is known: this version makes none, but a full disk
    may have left one to an older version.
    """
    if not other.token:
        return (datetime.now(UTC) - other.since).total_seconds() > GUARD_SECONDS
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
    guard = path.with_name(GUARD_FILE)
    try:
        os.close(os.open(guard, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o666))
    except OSError:
        with contextlib.suppress(OSError):
            if time.time() - guard.stat().st_mtime > GUARD_SECONDS:  # its maker was killed
                guard.unlink()
        return
    try:
        if holder(path.parent) == other:
            path.unlink(missing_ok=True)
    finally:
        guard.unlink(missing_ok=True)


def _refusal(folder: Path, other: Holder | None) -> str:
    if other is None:
        return f"{folder}: someone else was saving this bank just now. Try again."
    return (
        f"{folder}: {other.who} has been saving this bank for {other.age()}. Try again in a "
        f"moment. If nobody is, ‘itembank bank unlock {as_typed(folder)}’ takes the lock away."
    )


def _unwritable(folder: Path, error: OSError) -> ItembankError:
    return ItembankError(
        f"{folder}: this folder cannot be written to ({error.strerror}), so nothing was saved."
    )
