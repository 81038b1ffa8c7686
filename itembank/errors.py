"""What the tool raises for anything a person can put right: one plain message, one exit status.

A message names what a person states, such as the day of a lesson, by a :class:`Matter` and never
by the option of a command: the same message is told at a terminal, on a page and in a test. Each
way to the tool has words of its own for a matter, and puts them in by :meth:`ItembankError.told`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar


@dataclass(frozen=True, slots=True)
class Matter:
    """Something a person states, such as the number of questions.

    `plain` stands in a message where nobody has other words for it. It may be empty: advice like
    *name another place* is whole without saying where one types it.
    """

    name: str
    plain: str = ""


class ItembankError(Exception):
    """A fault in what the tool was given: says what, where, and what to do.

    The message is shown to a teacher as it stands, so it is a whole sentence with no
    programmer's words in it. The command line ends with :attr:`exit_status`. It may be given in
    parts, those that a way to the tool has its own words for being matters.

    >>> str(ItembankError("There is no class 8Z. The classes are 7M, 8K and 9S."))
    'There is no class 8Z. The classes are 7M, 8K and 9S.'
    >>> questions = Matter("questions", "the number of questions")
    >>> error = ItembankError("There are too few. Change ", questions, ".")
    >>> str(error)
    'There are too few. Change the number of questions.'
    >>> error.told({"questions": "--questions"})
    'There are too few. Change --questions.'
    >>> ItembankError.exit_status, CheckFailed.exit_status
    (2, 1)
    """

    exit_status: ClassVar[int] = 2

    def __init__(self, *parts: str | Matter) -> None:
        self.parts = parts
        super().__init__(in_words(parts))

    def __reduce__(self) -> tuple[Any, ...]:
        """Keep all that an error holds when another process sends it here."""
        return _sent, (type(self), self.parts, self.__dict__)

    def told(self, words: Mapping[str, str]) -> str:
        """Return the message with `words`, by the names of matters, in place of plain ones."""
        return in_words(self.parts, words)


class CheckFailed(ItembankError):
    """The input was sound, but a check of it failed: a wrong key, a blind item."""

    exit_status: ClassVar[int] = 1


def in_words(parts: tuple[str | Matter, ...], words: Mapping[str, str] | None = None) -> str:
    """Return the parts of a message as one text.

    >>> in_words(("Change ", Matter("day", "the day"), "."), {"day": "--date"})
    'Change --date.'
    """
    known = words or {}
    return "".join(
        part if isinstance(part, str) else known.get(part.name, part.plain) for part in parts
    )


def _sent(kind: type[ItembankError], parts: tuple[str | Matter, ...], held: Any) -> ItembankError:
    error = kind.__new__(kind)
    ItembankError.__init__(error, *parts)
    error.__dict__.update(held)
    return error
