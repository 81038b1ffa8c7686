"""What came of some work, as it crosses from one process to another: a result or a fault.

A plain fault crosses with all it knows, so that it is told here as it would have been told where
it arose; any other says what it was.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, TypeAlias

from itembank.errors import CheckFailed, ItembankError
from itembank.processes.message_line import Line

Answer: TypeAlias = tuple[str, Any]
"""``done`` and the result, ``fault`` and the error, or ``broken`` and words."""

DONE, FAULT, BROKEN = "done", "fault", "broken"


def attempt(work: Callable[[], Any]) -> Answer:
    """Do some work and return what came of it; raises nothing.

    >>> attempt(lambda: 6 * 7)
    ('done', 42)
    >>> attempt(lambda: {}["seat"])
    ('broken', "KeyError: 'seat'")
    """
    try:
        return DONE, work()
    except ItembankError as error:
        return FAULT, error
    except BaseException as error:  # whatever it is, it is told where a person can see it
        return BROKEN, f"{type(error).__name__}: {error}"


def value_of(answer: Answer) -> Any:
    """Return the result that an answer holds.

    >>> value_of(("done", 42))
    42

    Raises:
        ItembankError: the work raised it.
        RuntimeError: anything else went wrong there.
    """
    kind, found = answer
    if kind == FAULT:
        raise found
    if kind != DONE:
        raise RuntimeError(found)
    return found


class Faults:
    """The faults of some pieces of work, of which the first is to be told.

    Which piece answers first is a matter of luck; what is told is not. So those before a fault
    are still waited for, and those after it are not wanted any more.

    >>> faults = Faults()
    >>> faults.note(5, ("fault", "no seat 5"))
    >>> faults.still_wanted([3, 5, 7])
    [3]
    """

    def __init__(self) -> None:
        self._found: dict[int, Answer] = {}

    def note(self, place: int, answer: Answer) -> None:
        """Note the fault of a piece."""
        self._found[place] = answer

    def still_wanted(self, places: Iterable[int]) -> list[int]:
        """Return which of some pieces are wanted."""
        if not self._found:
            return list(places)
        first = min(self._found)
        return [place for place in places if place < first]

    def tell(self) -> None:
        """Raise the first fault, if there is any."""
        if self._found:
            value_of(self._found[min(self._found)])


def say(line: Line, answer: Answer, of: object = None) -> None:
    """Send what came of some work, and of which; of what cannot be sent, why not.

    An error that holds what no other process can have is told by its message and status alone.

    Raises:
        OSError: nobody listens.
    """
    try:
        line.send((answer, of))
    except OSError:
        raise
    except Exception as why:  # pickle has many words for what it cannot do
        kind, found = answer
        if kind == FAULT:
            plain = CheckFailed if isinstance(found, CheckFailed) else ItembankError
            line.send(((FAULT, plain(str(found))), of))
        else:
            line.send(((BROKEN, f"{type(why).__name__}: {why}"), of))
