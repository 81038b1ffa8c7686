"""Regular expressions that are compiled when they are first used."""

from __future__ import annotations

import re
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


def late(text: str, flags: int = 0) -> re.Pattern[str]:
    """Return a pattern that costs nothing before it is used.

    Commands that only load a bank, or mark one answer, import modules full of patterns and use
    few of them; those that name every unit take milliseconds to compile.

    >>> late("a+").search("baa").group()
    'aa'
    """
    return cast("re.Pattern[str]", _Late(text, flags))
