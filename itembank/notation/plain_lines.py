"""Reads the plainest lines that are written here: numbers, places on a grid, straight lines.

They are most of what figures are asked by, and the grammar, which reads them to the same trees,
takes a tenth of a second to build.
"""

from __future__ import annotations

import re

from itembank.notation.tree import (
    Dec,
    Frac,
    Int,
    Juxt,
    Listing,
    Mixed,
    Neg,
    Node,
    Relation,
    Sum,
    Sym,
)

_WHOLE = r"(?:0|[1-9][0-9]{0,3})"
_FRACTION = r"[1-9][0-9]{0,3}/[1-9][0-9]{0,3}"
_NUMBER = rf"-?(?:[1-9][0-9]{{0,3}} )?{_FRACTION}|-?{_WHOLE}(?:\.[0-9]{{1,6}})?"
_ONE = re.compile(_NUMBER)
_PLACE = re.compile(rf"\(({_NUMBER}), ({_NUMBER})\)")
_LINE = re.compile(
    rf"y = (?P<minus>-)?(?P<times>{_WHOLE}|\({_FRACTION}\))?x"
    rf"(?: (?P<sign>[+-]) (?P<more>{_WHOLE}))?"
)


def plain_line(text: str) -> Node | None:
    """Return the tree of a line if it is one of the plainest, as the grammar would read it.

    >>> plain_line("(2, -3)") == Listing((Int(2), Neg(Int(3))), True)
    True
    >>> plain_line("y = 2x + 1") is not None, plain_line("y = 2(x + 1)")
    (True, None)
    """
    if _ONE.fullmatch(text):
        return _number(text)
    if place := _PLACE.fullmatch(text):
        first, second = map(_number, place.groups())
        return first and second and Listing((first, second), True)
    if line := _LINE.fullmatch(text):
        return _straight(line)
    return None


def _number(text: str) -> Node | None:
    if text.startswith("-"):
        found = _number(text[1:])
        return found and Neg(found)
    if "/" not in text:
        whole, point, places = text.partition(".")
        return Dec(whole, places) if point else Int(int(whole))
    *whole_part, fraction = text.split(" ")
    top, bottom = map(int, fraction.split("/"))
    if not whole_part:
        return Frac(Int(top), Int(bottom))
    # The grammar has something to say of a mixed number with more than a whole in its fraction.
    return Mixed(int(whole_part[0]), top, bottom) if top < bottom else None


def _straight(line: re.Match[str]) -> Node | None:
    times, more = line["times"], line["more"]
    term: Node = Sym("x")
    if times is not None:
        number = _number(times.strip("()"))
        if number is None:
            return None
        term = Juxt((number, term))
    if line["minus"]:
        term = Neg(term)
    if more is not None:
        term = Sum(term, (("+" if line["sign"] == "+" else "-", Int(int(more))),))
    return Relation(Sym("y"), (("=", term),))
