"""Text cut to a length between words, since a word cut in two may read as another one."""

from __future__ import annotations

_LEFT_OVER = frozenset({"a", "an", "and", "by", "for", "from", "in", "of", "on", "or", "the", "to"})
"""Words that say nothing where what they lead to is gone."""


def cut_short(text: str, most: int) -> str:
    """Return `text` in at most `most` characters, with an ellipsis where words are left out.

    >>> cut_short("Rounding to the nearest 10, 100 or whole number", 40)
    'Rounding to the nearest 10, 100…'
    >>> cut_short("The median", 40), cut_short("Parallelepipeds", 8)
    ('The median', 'Paralle…')
    """
    if len(text) <= most:
        return text
    if len(text[:most].split()) < 2:
        return text[: most - 1] + "…"
    # The last word goes in any case: it may be cut in two, and the ellipsis needs room.
    words = text[:most].rsplit(maxsplit=1)[0].split()
    while len(words) > 1 and words[-1].casefold() in _LEFT_OVER:
        words.pop()
    return " ".join(words).rstrip(",;:") + "…"
