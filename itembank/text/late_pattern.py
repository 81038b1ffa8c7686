"""Regular expressions that are compiled when they are first used."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any, cast


class _Late:
    """Stands for a pattern; what is asked of it is kept, so that it is looked up once."""

    def __init__(self, text: str, flags: int) -> None:
        self._text, self._flags = text, flags

    def __getattr__(self, name: str) -> Any:
        compiled = self.__dict__.get("_compiled")
        if compiled is None:
            compiled = self.__dict__["_compiled"] = re.compile(self._text, self._flags)
        found = self.__dict__[name] = getattr(compiled, name)
        return found


class Needing:
    """Stands for a pattern that is in no words without some words of its own."""

    def __init__(self, pattern: re.Pattern[str], needs: str) -> None:
        self.pattern, self.needs = pattern, needs

    def search(self, words: str) -> re.Match[str] | None:
        """Look for the pattern in some words."""
        return self.pattern.search(words) if self.needs in words.casefold() else None

    def fullmatch(self, words: str) -> re.Match[str] | None:
        """Hold the whole of some words to the pattern."""
        return self.pattern.fullmatch(words) if self.needs in words.casefold() else None

    def finditer(self, words: str) -> Iterator[re.Match[str]]:
        """Look for the pattern again and again in some words."""
        return self.pattern.finditer(words) if self.needs in words.casefold() else iter(())


def late(text: str, flags: int = 0, needs: str = "") -> re.Pattern[str]:
    """Return a pattern that costs nothing before it is used.

    Commands that only load a bank, or mark one answer, import modules full of patterns and use
    few of them; those that name every unit take milliseconds to compile. Where a pattern `needs`
    some words, in small letters, to be found at all, it is compiled for words with these alone;
    such a pattern has :meth:`Needing.search`, `fullmatch` and `finditer`. (No i is among what it
    needs: of all letters that a pattern may name, folding leaves the dotless one as it is.)

    >>> late("a+").search("baa").group()
    'aa'
    >>> late("NEAREST (ten|hundred)", re.I, needs="nearest").search("to the nearest ten").group(1)
    'ten'
    """
    pattern = cast("re.Pattern[str]", _Late(text, flags))
    return cast("re.Pattern[str]", Needing(pattern, needs)) if needs else pattern
