"""What people type for an answer, brought to what the line parser reads.

The key says which kind of answer is expected, and so settles what is ambiguous in what was
typed: a comma parts the items of a list but groups the digits of a number; *to* stands in a
ratio for the colon.
"""

from __future__ import annotations

import re
import unicodedata

from itembank.notation.parse import ParseError, parse
from itembank.notation.tree import Label, Listing, Node, Ratio, Relation, Sym

LONGEST = 200
"""Characters of an answer that are read; no key needs more. Longer text is not looked at."""

_GROUPED = re.compile(r"(?<![\d.,])\d{1,3}(?:[, ]\d{3})+(?![\d,/]| *\d)")
_DOTS = re.compile(r"(\d+\.\d+?)(?:\.{2,}|…)")
_UNSEEN = ("Cc", "Cf", "Co", "Cs", "Cn")
_JOINERS = "\u2061\u2062\u2063\u2064"


class Unreadable(ValueError):
    """The answer cannot be read; the message says where reading stopped, in plain words."""


def read_answer(text: str, key: Node) -> Node:
    """Return what was typed as a tree, read as an answer to a question with this key.

    Raises
    ------
    Unreadable
        For anything that is not mathematics as people type it. No other exception is raised,
        whatever the text.

    >>> from itembank.notation.tree import Int, Ratio
    >>> read_answer(" 1,200. ", Int(5))
    Int(n=1200)
    >>> read_answer("3 to 20", Ratio((Int(1), Int(2))))
    Ratio(parts=(Int(n=3), Int(n=20)))
    >>> read_answer("1.77...", Int(2))
    Dec(whole='1', places='', recurring='7')
    """
    if len(text) > LONGEST:
        raise Unreadable(f"The answer is longer than {LONGEST} characters: type the answer alone.")
    # The parser opens full-width digits and the like; characters that cannot be seen go here.
    plain = "".join(
        char if unicodedata.category(char) not in _UNSEEN or char in _JOINERS else " "
        for char in text
    )
    plain = " ".join(plain.split())
    plain = _DOTS.sub(lambda found: _recurring(found[1]), plain).rstrip(" .;,")
    if not plain:
        raise Unreadable("There is no answer to read.")
    if isinstance(key, Label):
        return Label(plain.strip("\"'“”‘’"))
    if isinstance(key, Relation) and not isinstance(key.first, Sym) and plain in ("<", ">", "="):
        return Relation(key.first, ((plain, key.rest[0][1]),))  # type: ignore[arg-type]
    if not any(unicodedata.category(char) in ("Nd", "No", "Nl") for char in plain):
        raise Unreadable("There is no number in the answer.")
    if isinstance(key, Ratio):
        plain = re.sub(r"(?<=[\d\w]) *\bto\b *(?=[\d\w£.])", " : ", plain)
    if isinstance(key, Listing):
        plain = re.sub(r",? +and +", ", ", plain)
    else:
        plain = _GROUPED.sub(lambda found: re.sub("[, ]", "", found[0]), plain)
    letter = _letter(key)
    if letter:
        plain = re.sub(rf"(?<![A-Za-z]){letter.upper()}(?![A-Za-z])", letter, plain)
    try:
        return parse(plain)
    except ParseError as error:
        raise Unreadable(str(error)) from error


def _recurring(digits: str) -> str:
    """Return a decimal typed with dots at its end, its shortest repeated tail marked recurring.

    1.777 gives 1.7̇, 0.1666 gives 0.16̇ and 0.2727 gives 0.2̇7̇; 1.7 gives 1.7̇.
    """
    whole, places = digits.split(".")
    for size in range(1, len(places) // 2 + 1):
        block = places[-size:]
        if places[-2 * size : -size] == block:
            head = places[: -2 * size]
            while head.endswith(block):
                head = head[:-size]
            break
    else:
        head, block = places[:-1], places[-1]
    dot = "\u0307"
    marked = block[0] + dot + (block[1:] + dot if len(block) > 1 else "")
    return f"{whole}.{head}{marked}"


def _letter(key: Node) -> str:
    if isinstance(key, Relation) and isinstance(key.first, Sym) and key.first.name.islower():
        return key.first.name
    return ""
