"""Work and results as they travel between machines: data, and functions by their name.

Pickles can name anything that a machine has. What comes out of these is data of the standard
library, classes of this tool, and, where work is taken, functions of it; nothing else is looked
up, so that no answer can do anything here.
"""

from __future__ import annotations

import datetime
import decimal
import fractions
import io
import pickle
from types import FunctionType
from typing import Any

from itembank.errors import _again

OURS = ("itembank", "generators")
_PLAIN: dict[tuple[str, str], Any] = {
    (kind.__module__, kind.__name__): kind
    for kind in (
        *(set, frozenset, complex, bytearray, range),
        *(fractions.Fraction, decimal.Decimal),
        *(datetime.date, datetime.datetime, datetime.time, datetime.timedelta),
    )
}


# How an error of ours is made again from what it knows: nothing of it is called.
_PLAIN[_again.__module__, _again.__name__] = _again


class Refused(Exception):
    """A parcel holds what is neither data nor ours."""


def packed(content: object) -> bytes:
    """Return some content as a parcel.

    Raises:
        Exception: pickle has many words for what cannot travel, such as a function without name.

    >>> unpacked(packed([1, {"a": fractions.Fraction(1, 2)}]))
    [1, {'a': Fraction(1, 2)}]
    """
    return pickle.dumps(content, pickle.HIGHEST_PROTOCOL)


def unpacked(parcel: bytes, *, work: bool = False) -> Any:
    """Return what a parcel holds; functions of ours only where it may hold `work`.

    Raises:
        Refused: it holds anything else.
    """
    try:
        return _Reader(parcel, work).load()
    except Refused:
        raise
    except Exception as error:
        raise Refused(f"this is no whole parcel: {error}") from None


class _Reader(pickle.Unpickler):
    def __init__(self, parcel: bytes, work: bool) -> None:
        super().__init__(io.BytesIO(parcel))
        self._work = work

    def find_class(self, module: str, name: str) -> Any:
        """Return what a parcel names, if it may."""
        if (module, name) in _PLAIN:
            return _PLAIN[module, name]
        if module.partition(".")[0] in OURS and "." not in name:
            found = super().find_class(module, name)
            kinds = (type, FunctionType) if self._work else type
            # A module's names are not all its own: `os` stands in many.
            if isinstance(found, kinds) and found.__module__.partition(".")[0] in OURS:
                return found
        raise Refused(f"a parcel names {module}.{name}, which is not data")
