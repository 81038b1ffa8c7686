"""When two names are the same name: capitals do not tell them apart, nor how letters are coded.

This is the one place that says so, for names of classes and seat codes; a database would fold
the capitals of English only, or not those of the same letters as another database.
"""

from __future__ import annotations

import unicodedata


def folded(name: str) -> str:
    r"""Return the form in which names are compared; names that differ there are two.

    It is the caseless match of the Unicode Standard (section 3.13, D145), composed, so that an
    É that is one sign and one that is an E with an accent after it are the same letter, as a
    folder's name on some systems needs. It is at most three times as long as the name.

    >>> folded("8É") == folded("8é") == folded("8E\u0301"), folded("8Straße") == folded("8STRASSE")
    (True, True)
    """
    return unicodedata.normalize("NFC", unicodedata.normalize("NFD", name).casefold())


def same_name(name: str, other: str) -> bool:
    """Tell whether two names are the same but for capitals.

    >>> same_name("8k", "8K"), same_name("8K", "8L")
    (True, False)
    """
    return folded(name) == folded(other)
