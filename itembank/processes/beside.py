"""Work done in a second process while this one goes on: two long loads are then waited for as one.

Python loads one module at a time in a process, however many processors there are.
"""

from __future__ import annotations

import importlib
from collections.abc import Callable, Sequence
from functools import partial
from types import TracebackType
from typing import Any, Generic, Self, TypeVar

from itembank.processes import machine
from itembank.processes.answer import Answer, attempt, say, value_of
from itembank.processes.child import BEGUN, CannotTravel, Child
from itembank.processes.message_line import Line
from itembank.processes.process_kinds import best_kind

T = TypeVar("T")


class _Second:
    """A second process; none where this one would have to share a single core with it.

    Use it as a context manager, so that the second process never outlives what it is for.
    """

    def __init__(self, serve: Callable[[Line], None]) -> None:
        self._child: Child | None = None
        self._begun = False
        if machine.cores() > 1:
            try:
                self._child = best_kind()(serve)
            except (OSError, CannotTravel):
                return  # then the work is done here

    def _answer(self) -> Answer | None:
        """Wait for an answer and return it; None where there never was a second process."""
        if self._child is None:
            return None
        try:
            while (message := self._child.receive()) is BEGUN:
                self._begun = True
        except EOFError:
            said = "the second process came to a sudden end"
            return ("broken", said) if self._begun else None
        answer: Answer = message[0]
        return answer

    def close(self) -> None:
        """End the second process if it is still at work."""
        if self._child is not None:
            self._child.end()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()


class Beside(_Second, Generic[T]):
    """The result of `work`, which is done beside what goes on here.

    Where there is one processor, or the system has no second process for this work, it is done
    here when its result is asked for.

    >>> with Beside(lambda: 6 * 7) as work:
    ...     work.result()
    42
    """

    def __init__(self, work: Callable[[], T]) -> None:
        self._work = work
        super().__init__(partial(_once, work))

    def result(self) -> T:
        """Wait for the work and return what came of it; ask once.

        Raises:
            ItembankError: the work raised it; a CheckFailed likewise.
            RuntimeError: anything else went wrong there.
        """
        answer = self._answer()
        if answer is None:
            return self._work()
        found: T = value_of(answer)
        return found


class Ahead(_Second):
    """A second process that is begun before it is known what it is to do.

    Until then it loads the modules that its work needs.

    >>> import math
    >>> with Ahead(["fractions"]) as ahead:
    ...     ahead.start(partial(math.gcd, 12, 18))
    ...     ahead.result()
    6
    """

    def __init__(self, loads: Sequence[str]) -> None:
        self._work: Callable[[], Any] | None = None
        super().__init__(partial(_when_told, tuple(loads)))

    def start(self, work: Callable[[], Any]) -> None:
        """Have this done: a function of a module, with what it is given, if anything."""
        self._work = work
        if self._child is not None:
            try:
                self._child.send(work)
            except OSError:
                pass  # it is gone, which shows when its answer is waited for
            except Exception:  # pickle has many words for what it cannot do
                self.close()
                self._child = None

    def result(self) -> Any:
        """Wait for the work that was started and return what came of it; ask once.

        Raises:
            ItembankError: the work raised it; a CheckFailed likewise.
            RuntimeError: anything else went wrong there.
        """
        if self._work is None:
            raise RuntimeError("nothing was started")
        answer = self._answer()
        return self._work() if answer is None else value_of(answer)


def _once(work: Callable[[], Any], line: Line) -> None:
    say(line, attempt(work))


def _when_told(loads: Sequence[str], line: Line) -> None:
    for name in loads:
        importlib.import_module(name)
    while True:
        say(line, attempt(line.receive()))
