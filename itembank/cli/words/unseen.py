"""What was typed or pasted on the command line, looked through for what its writer cannot see."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.errors import ItembankError
from itembank.text.characters import hidden, look_alikes, named, shown


def decoded(arguments: Sequence[str]) -> list[str]:
    r"""Return arguments as text, where a system that is set to ASCII has handed on bytes.

    >>> decoded(["8\udcc3\udc89", "8K", "\udcff"])
    ['8É', '8K', '\udcff']
    """
    found = []
    for typed in arguments:
        try:
            found.append(typed.encode("utf-8", "surrogateescape").decode())
        except UnicodeError:
            found.append(typed)
    return found


def refuse_unseen(arguments: Sequence[str]) -> None:
    """Refuse arguments with bytes that are no text, unseen characters, or look-alike letters.

    Raises:
        ItembankError: says which, what is in it, and what to do.
    """
    for typed in arguments:
        for char in typed:
            if "\udc80" <= char <= "\udcff":
                raise ItembankError(
                    f"‘{shown(typed)}’ holds {named(char)}. Type it again; a file or a folder "
                    "with such a name is to be renamed first."
                )
        for alike in (*hidden(typed, in_maths=True), *look_alikes(typed)):
            raise ItembankError(f"‘{shown(typed)}’: {alike.says}")
