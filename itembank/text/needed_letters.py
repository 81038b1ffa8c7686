"""Which of many patterns words may meet, told by letters in a row that each of them needs.

To look for a few letters is far quicker than to try a pattern, and most patterns are not met.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cached_property, lru_cache

from itembank.text.late_pattern import late

_LOOSE = late(r"\\.|\[[^\]]*\]|.[?*]|.\{[^}]*\}")
"""What a sentence need not have just so: classes, escapes, and what may be left out."""


@lru_cache(maxsize=1024)
def needs(wording: str) -> tuple[str, ...]:
    """Return letters in a row that every sentence of a wording has, in small letters.

    >>> needs("<FIND> the sum of <NPs>"), needs("(?:add|find) factori[sz]es? of"), needs("a|b")
    (('the', 'sum'), ('factori',), ())
    """
    depth, flat = 0, []
    for piece in re.findall(r"\\.|.", wording):
        depth += piece in "(<"
        flat.append(" " if depth else piece)
        if piece in ")>" and depth:
            depth -= 1
            flat[-1] = "\0"  # a sign after it, such as ?, is of the group
    text = "".join(flat)
    if "|" in text:
        return ()
    return tuple(re.findall(r"[a-z]{3,}", _LOOSE.sub(" ", text).lower()))


class Needing:
    """Finds the wordings of a list that words may hold, by letters in a row that each needs.

    >>> needing = Needing(["<FIND> the sum of <NPs>", "in the form <M>", "a|b"])
    >>> needing.of("Find the sum of"), needing.of("a form")
    ((0, 2), (2,))
    """

    def __init__(self, wordings: Iterable[str]) -> None:
        self._wordings = tuple(wordings)
        # Different words hold few different sets of these letters: each is looked up once.
        self._places: dict[tuple[str, ...], tuple[int, ...]] = {}

    @cached_property
    def _needs(self) -> tuple[tuple[str, ...], ...]:
        return tuple(map(needs, self._wordings))

    @cached_property
    def _letters(self) -> tuple[str, ...]:
        return tuple(sorted({letters for needed in self._needs for letters in needed}))

    def of(self, words: str) -> tuple[int, ...]:
        """Return the place in the list of each wording whose letters the words hold, in order."""
        folded = words.lower()
        held = tuple([letters for letters in self._letters if letters in folded])
        if (places := self._places.get(held)) is None:
            found = frozenset(held)
            places = tuple(
                place for place, needed in enumerate(self._needs) if found.issuperset(needed)
            )
            if len(self._places) < _MOST_KEPT:
                self._places[held] = places
        return places


_MOST_KEPT = 4096
