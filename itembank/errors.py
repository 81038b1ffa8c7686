"""What the tool raises for anything a person can put right: one plain message, one exit status."""

from __future__ import annotations

from typing import ClassVar


class ItembankError(Exception):
    """A fault in what the tool was given: says what, where, and what to do.

    The message is shown to a teacher as it stands, so it is a whole sentence with no
    programmer's words in it. The command line ends with :attr:`exit_status`.

    >>> str(ItembankError("There is no class 8Z. The classes are 7M, 8K and 9S."))
    'There is no class 8Z. The classes are 7M, 8K and 9S.'
    >>> ItembankError.exit_status, CheckFailed.exit_status
    (2, 1)
    """

    exit_status: ClassVar[int] = 2


class CheckFailed(ItembankError):
    """The input was sound, but a check of it failed: a wrong key, a blind item."""

    exit_status: ClassVar[int] = 1
