"""What the tool raises for anything a person can put right: one plain message, one exit status."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, ClassVar


class ItembankError(Exception):
    """A fault in what the tool was given: says what and where.

    The message is shown to a teacher as it stands, so it is a whole sentence with no
    programmer's words in it. It knows nothing of options or buttons: what to press or to type
    is for the face that shows it to add. That goes by the :attr:`matter`, a name for what is
    the matter, and by what it is :attr:`about`, as data. Where the matter is a question (may
    this be replaced?), a caller answers it by asking again with the answer. :attr:`field` names
    the field of a request that is at fault, where it is one of them: the face shows it there.

    The command line ends with :attr:`exit_status`.

    >>> str(ItembankError("There is no class 8Z. The classes are 7M, 8K and 9S."))
    'There is no class 8Z. The classes are 7M, 8K and 9S.'
    >>> error = ItembankError("There is a plan already.", matter="plan there", path="week.toml")
    >>> error.matter, error.about
    ('plan there', {'path': 'week.toml'})
    >>> ItembankError.exit_status, CheckFailed.exit_status
    (2, 1)
    """

    exit_status: ClassVar[int] = 2

    def __init__(
        self, message: str = "", *, matter: str = "", field: str = "", **about: Any
    ) -> None:
        super().__init__(message)
        self.matter = matter
        self.field = field
        self.about = about

    @property
    def matters(self) -> frozenset[str]:
        """The names of all that is the matter: of one error its own, of several theirs.

        >>> several = SeveralErrors([ItembankError("One.", matter="no such topic")])
        >>> SeveralErrors([several]).matters
        frozenset({'no such topic'})
        """
        return frozenset({self.matter})

    def within(self, before: str) -> ItembankError:
        """Return the same error with words before its message: where it is, or what was wanted.

        >>> str(ItembankError("Write a number.").within("tue ten: "))
        'tue ten: Write a number.'
        """
        return _again(type(self), (f"{before}{self}",), self.__dict__)

    def of_field(self, field: str) -> ItembankError:
        """Return the same error as one of a field of a request.

        >>> ItembankError("Write a number.").of_field("bands").field
        'bands'
        """
        return _again(type(self), self.args, {**self.__dict__, "field": field})

    def __reduce__(self) -> Any:
        """Let an error go from one process to another with all it knows, whatever its kind."""
        return _again, (type(self), self.args, self.__dict__)


def _again(
    kind: type[ItembankError], args: tuple[Any, ...], known: dict[str, Any]
) -> ItembankError:
    error = kind.__new__(kind)
    error.args = args
    error.__dict__.update(known)
    return error


class CheckFailed(ItembankError):
    """The input was sound, but a check of it failed: a wrong key, a blind item."""

    exit_status: ClassVar[int] = 1


class NotFound(ItembankError):
    """What an address or a name stands for is not there; a web page says so by its status."""


class SeveralErrors(ItembankError):
    """Several faults at once, each of which can be put right; the message has a line for each.

    >>> both = SeveralErrors([ItembankError("No such day."), ItembankError("No such topic.")])
    >>> print(both)
    No such day.
    No such topic.
    """

    def __init__(self, errors: Sequence[ItembankError]) -> None:
        self.errors = tuple(errors)
        super().__init__("\n".join(map(str, errors)))

    @property
    def matters(self) -> frozenset[str]:
        """The names of all that is the matter in any of them."""
        return frozenset().union(*(error.matters for error in self.errors))
