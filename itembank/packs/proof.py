"""Proves the items of a pack by sympy in a second process, while the first draws the pages.

Importing sympy takes about as long as proving a whole pack with it, so both are done beside
the drawing. Where the system cannot fork, the proof is made here when its result is asked for.
"""

from __future__ import annotations

import os
import signal
from collections.abc import Callable, Iterable, Sequence
from types import TracebackType

from itembank.checking import prove_fast, prove_symbolic
from itembank.errors import CheckFailed
from itembank.items.item import Item

_PROVED = b"proved"
_FAULT = b"fault:"
MOST_TOLD = 5


def prove_by_first_road(items: Iterable[Item]) -> None:
    """Prove every item by exact arithmetic.

    Raises:
        CheckFailed: names the address of each faulty item with both answers.
    """
    _raise(_faults(items, prove_fast))


def prove_by_second_road(items: Iterable[Item]) -> None:
    """Prove every item by sympy.

    Raises:
        CheckFailed: names the address of each faulty item with both answers.
    """
    _raise(_faults(items, prove_symbolic))


class Proof:
    """The second road to the keys of some items, started now and to be waited for.

    Use it as a context manager, so that the second process never outlives the pack's making::

        with Proof(items) as proof:
            ...            # draw
            proof.result() # raises CheckFailed
    """

    def __init__(self, items: Sequence[Item], beside: bool = True) -> None:
        self._items = tuple(items)
        self._child: int | None = None
        self._done = False
        if beside and hasattr(os, "fork"):
            self._fork()

    def result(self) -> None:
        """Wait until every item is proved.

        Raises:
            CheckFailed: names the address of each faulty item with both answers.
        """
        if self._done:
            return
        report = self._report() if self._child is not None else b""
        if report.startswith(_FAULT):
            raise CheckFailed(report[len(_FAULT) :].decode())
        if report != _PROVED:  # no second process, or it was killed: nothing is taken on trust
            prove_by_second_road(self._items)
        self._done = True

    def close(self) -> None:
        """End the second process if it is still at work."""
        if self._child is not None:
            os.kill(self._child, signal.SIGKILL)
            self._report()

    def __enter__(self) -> Proof:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def _fork(self) -> None:
        reading, writing = os.pipe()
        child = os.fork()
        if child:
            os.close(writing)
            self._child, self._pipe = child, reading
            return
        # The second process ends here whatever happens: it must not run the caller's
        # clean-up, nor write what the first has left unwritten.
        try:
            signal.signal(signal.SIGINT, signal.SIG_DFL)
            os.close(reading)
            faults = _faults(self._items, prove_symbolic)
            report = _FAULT + _message(faults).encode() if faults else _PROVED
            with os.fdopen(writing, "wb") as out:
                out.write(report)
        finally:
            os._exit(0)

    def _report(self) -> bytes:
        with os.fdopen(self._pipe, "rb") as pipe:
            report = pipe.read()
        if self._child is not None:
            os.waitpid(self._child, 0)
            self._child = None
        return report


def _faults(items: Iterable[Item], prove: Callable[[Item], None]) -> list[str]:
    found = []
    for item in items:
        try:
            prove(item)
        except CheckFailed as error:
            found.append(str(error))
    return found


def _message(faults: Sequence[str]) -> str:
    shown = list(faults[:MOST_TOLD])
    if len(faults) > MOST_TOLD:
        shown.append(f"… and {len(faults) - MOST_TOLD} more.")
    head = "Stopped: a key could not be proved, and no pack is made or used with a wrong key."
    return "\n".join([head, *shown])


def _raise(faults: Sequence[str]) -> None:
    if faults:
        raise CheckFailed(_message(faults))
