"""Words on what to type, which some commands or all of them give."""

from __future__ import annotations

from collections.abc import Collection

from itembank.data_class import dataclass


@dataclass(frozen=True, slots=True)
class Advice:
    """A sentence on what to type; ``{path}`` in it stands for what the error is about.

    It is given by some commands only, where others have no such option.
    """

    words: str
    commands: Collection[str] = ()
