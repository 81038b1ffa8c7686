"""Proves the items of a pack in a second process, while the first draws the pages.

Importing sympy takes about as long as proving a whole pack with it, so both are done beside
the drawing. Where the system cannot fork, the proof is made here when its result is asked for.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import partial
from types import TracebackType

from itembank.errors import CheckFailed
from itembank.items.item import Item
from itembank.processes.beside import Ahead, Beside
from itembank.proof import prove_fast, prove_symbolic

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


def prove_anew(items: Iterable[Item]) -> None:
    """Prove every item by sympy, and hold those of banks to all that their proof takes.

    A bank's questions are chosen by what its index says of them. Nothing is printed on its word.

    Raises:
        CheckFailed: names the address of each faulty item with both answers.
    """
    _raise(_faults(items, _prove_anew))


def prove_by_both_roads(items: Iterable[Item]) -> None:
    """Prove every item by exact arithmetic, and then as :func:`prove_anew` does.

    Raises:
        CheckFailed: names the address of each item that is faulty by one road, with both answers.
    """
    items = tuple(items)
    prove_by_first_road(items)
    prove_anew(items)


def _prove_anew(item: Item) -> None:
    prove_symbolic(item)
    if ":" not in item.address:
        return
    # Imported here: all that is read of a bank's words, which other questions do without.
    from itembank.proof.judge import judge
    from itembank.proof.outcome import State

    if (outcome := judge(item)).state is not State.PROVED:
        raise CheckFailed(f"{item.address}: {outcome.says}")


class Proof:
    """The proof of the keys of some items, started now and to be waited for.

    Use it as a context manager, so that the second process never outlives the pack's making::

        with Proof(items) as proof:
            ...            # draw
            proof.result() # raises CheckFailed

    Args:
        items: what is proved.
        beside: whether a second process does it.
        prove: by what.
        begun: a process that has been got ready for it (:mod:`itembank.packs.proof_ahead`).
    """

    def __init__(
        self,
        items: Sequence[Item],
        beside: bool = True,
        prove: Callable[[Iterable[Item]], None] = prove_by_second_road,
        begun: Ahead | None = None,
    ) -> None:
        self._items, self._prove = tuple(items), prove
        self._work: Ahead | Beside[None] | None = None
        if begun is not None:
            begun.start(partial(prove, self._items))
            self._work = begun
        elif beside:
            self._work = Beside(partial(prove, self._items))
        self._done = False

    def result(self) -> None:
        """Wait until every item is proved.

        Raises:
            CheckFailed: names the address of each faulty item with both answers.
        """
        if self._done:
            return
        try:
            if self._work is None:
                raise RuntimeError("there is no second process")
            self._work.result()
        except RuntimeError:  # none, or it was killed: nothing is taken on trust
            self._prove(self._items)
        self._done = True

    def close(self) -> None:
        """End the second process if it is still at work."""
        if self._work is not None:
            self._work.close()

    def __enter__(self) -> Proof:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()


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
