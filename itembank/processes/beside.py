"""Work done in a second process while this one goes on: two long loads are then waited for as one.

Python loads one module at a time in a process, however many processors there are.
"""

from __future__ import annotations

import os
import pickle
import signal
from collections.abc import Callable
from types import TracebackType
from typing import Any, Generic, TypeVar, cast

from itembank.errors import CheckFailed, ItembankError

T = TypeVar("T")


class Beside(Generic[T]):
    """The result of `work`, which is done beside what goes on here.

    Use it as a context manager, so that the second process never outlives it. Where the system
    cannot fork, or has one processor, the work is done here when its result is asked for.

    >>> with Beside(lambda: 6 * 7) as work:
    ...     work.result()
    42
    """

    def __init__(self, work: Callable[[], T]) -> None:
        self._work = work
        self._child = 0
        if hasattr(os, "fork") and (os.cpu_count() or 1) > 1:
            self._pipe, writing = os.pipe()
            self._child = os.fork()
            if not self._child:
                _do(work, self._pipe, writing)
            os.close(writing)

    def result(self) -> T:
        """Wait for the work and return what came of it.

        Raises:
            ItembankError: the work raised it; a CheckFailed likewise.
            RuntimeError: anything else went wrong there.
        """
        if not self._child:
            return self._work()
        with os.fdopen(self._pipe, "rb", closefd=False) as pipe:
            said = pipe.read()
        kind, found = _read(said)
        if kind == "fault":
            raise found
        if kind != "done":
            raise RuntimeError(found)
        return cast(T, found)

    def __enter__(self) -> Beside[T]:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def close(self) -> None:
        """End the second process if it is still at work."""
        if self._child:
            os.close(self._pipe)
            os.kill(self._child, signal.SIGKILL)
            os.waitpid(self._child, 0)
            self._child = 0


def _read(said: bytes) -> tuple[str, Any]:
    try:
        kind, found = pickle.loads(said)
    except Exception:  # nothing, or half of it: pickle has many words for that
        return "broken", "the second process came to a sudden end"
    return kind, found


def packed(answer: tuple[str, Any]) -> bytes:
    """Return what came of work as bytes for another process.

    An error that holds what no other process can have is told by its message and status alone.
    """
    kind, found = answer
    if kind != "fault":
        return pickle.dumps(answer)
    try:
        return pickle.dumps(answer)
    except Exception:  # pickle has many words for that
        plain = CheckFailed if isinstance(found, CheckFailed) else ItembankError
        return pickle.dumps((kind, plain(str(found))))


def _do(work: Callable[[], Any], reading: int, writing: int) -> None:
    """Do the work, say what came of it, and end this process without any of its owner's tidying."""
    try:
        # Ctrl-C at the keyboard is for the first process, which ends this one.
        signal.signal(signal.SIGINT, signal.SIG_IGN)
        os.close(reading)
        answer: tuple[str, Any]
        try:
            answer = ("done", work())
        except ItembankError as error:
            answer = ("fault", error)
        except BaseException as error:
            answer = ("broken", f"{type(error).__name__}: {error}")
        with os.fdopen(writing, "wb") as out:
            out.write(packed(answer))
    finally:
        os._exit(0)
