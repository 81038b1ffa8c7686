"""Amounts that are typed with the names they belong to: *white 8, red 12* for 12, 8.

The names are words of the question, and the key has its parts in the order in which the
question names them. Where the question names them in more than one order, nothing is moved.
"""

from __future__ import annotations

import re

from itembank.text.late_pattern import late

_PARTED = late(r",(?!\d{3}(?!\d))\s*(?:and\b)?|;|\band\b|&", re.I)
_WORD = late(r"[A-Za-z]{3,}")
_INITIAL = late(r"\b[A-Z] ?[:=]")
_PIECE = late(
    r"\s*(?:(?P<before>[A-Za-z]{3,}|(?-i:[A-Z])(?= ?[:=])) ?"
    r"(?:[:=]|gets?|has|have|is|are|pays?|costs?)? ?)?"
    r"(?P<value>[£−-]{0,2}\d[\d.,/ ]*(?:(?:p|kg|g|m|cm|mm|km|ml|l)(?![A-Za-z])|%|°)?)"
    r"(?: ?(?P<after>[A-Za-z]{3,}))?\s*",
    re.I,
)
_SENTENCE = late(r"[.?!]")
_AMOUNT = late(r"£ ?\d|\d ?(?:p|pence|penny)\b|\d ?(?:pounds?|quid)\b", re.I)
_AMOUNTS_JOIN = late(r"(?<=[\da-z])(?:,|,? and|,? ?&) (?=£? ?\d)", re.I)


def _named(sentence: str, names: list[str]) -> list[str]:
    """Return the words of a sentence in small letters, with initials for the names they mean."""
    words = _WORD.findall(sentence)
    for name in names:
        begun = {word for word in words if len(name) == 1 and word[0].lower() == name}
        # A name is written large: R is Red, and not ratio.
        initials = {word for word in begun if word[0].isupper()} or begun
        if len(initials) == 1:
            words = [name if word in initials else word for word in words]
    return [word.lower() for word in words]


def in_order(plain: str, words: str, count: int) -> str:
    """Return an answer of `count` named amounts as amounts alone, in the order of the question.

    `words` are the words of the question. Any other answer is returned as it is.

    >>> asked = "Share the beads: red and white beads are in the ratio."
    >>> in_order("white 8, red 12", asked, 2), in_order("12 red and 8 white", asked, 2)
    ('12, 8', '12, 8')
    >>> in_order("8, 12", asked, 2), in_order("red 12, blue 8", asked, 2)
    ('8, 12', 'red 12, blue 8')
    >>> in_order("red 8, white 12", asked + " How many are white, how many red?", 2)
    'red 8, white 12'
    >>> in_order("B: £8, A: £12", "Ann and Ben share it.", 2)
    '£12, £8'
    >>> in_order("8 lemons and 12 pears", "Share the pears and lemons.", 2)
    '12, 8'
    """
    if not (_WORD.search(plain) or _INITIAL.search(plain)):
        return plain
    pieces = [_PIECE.fullmatch(piece) for piece in _PARTED.split(plain) if piece.strip()]
    values: dict[str, str] = {}
    for piece in pieces:
        if piece is None or (piece["before"] is None) == (piece["after"] is None):
            return plain
        values[(piece["before"] or piece["after"]).lower()] = piece["value"].strip()
    if len(values) != count or len(pieces) != count:
        return plain
    orders = set()
    for sentence in _SENTENCE.split(words):
        found = _named(sentence, list(values))
        if all(name in found for name in values):
            # Named twice in one sentence, so that its order says nothing.
            if any(found.count(name) > 1 for name in values):
                return plain
            orders.add(tuple(sorted(values, key=found.index)))
    # Told in two orders, the question leaves open which one the key has.
    if len(orders) != 1:
        return plain
    return ", ".join(values[name] for name in orders.pop())


def sums_apart(plain: str, count: int) -> str:
    """Return an answer of `count` sums of money with semicolons between them.

    Of £1, 20p nobody can tell but by the question whether it is one sum of money or two.

    >>> sums_apart("£1 and 20p", 2), sums_apart("£1 and 20p", 3), sums_apart("£1, 20p, £3", 3)
    ('£1; 20p', '£1 and 20p', '£1; 20p; £3')
    """
    return _AMOUNTS_JOIN.sub("; ", plain) if len(_AMOUNT.findall(plain)) == count else plain
