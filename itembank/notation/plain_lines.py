"""Reads the plainest lines that are written here: numbers, places, straight lines, lengths, angles.

They are most of what figures are asked by and labelled with, and the grammar, which reads them to
the same trees, takes a tenth of a second to build: as long as half a pack takes to draw.
"""

from __future__ import annotations

import re
from typing import Literal

from itembank.notation.tree import (
    Bracket,
    ClockTime,
    Dec,
    Frac,
    Int,
    Juxt,
    Listing,
    Mixed,
    Money,
    Neg,
    Node,
    Percent,
    Quantity,
    Relation,
    Sum,
    Sym,
)
from itembank.notation.units import AS_WORDS, UNITS
from itembank.text.late_pattern import late

_WHOLE = r"(?:0|[1-9][0-9]{0,3})"
_FRACTION = r"[1-9][0-9]{0,3}/[1-9][0-9]{0,3}"
_NUMBER = rf"-?(?:[1-9][0-9]{{0,3}} )?{_FRACTION}|-?{_WHOLE}(?:\.[0-9]{{1,6}})?"
_TERM = rf"(?:{_WHOLE})?[a-oq-z]"
"""A letter, or a number of it; not p, which after a number may be pence."""
_ONE = late(_NUMBER)
_PLACE = late(rf"\(({_NUMBER}), ({_NUMBER})\)")
_LINE = late(
    rf"y = (?P<minus>-)?(?P<times>{_WHOLE}|\({_FRACTION}\))?x"
    rf"(?: (?P<sign>[+-]) (?P<more>{_WHOLE}))?"
)
_LABEL = late(
    rf"(?:(?P<number>{_NUMBER})|(?P<term>{_TERM})"
    rf"|\((?P<first>{_TERM}) (?P<sign>[+-]) (?P<more>{_WHOLE})\))(?P<unit>[°%]| [^ ]+)?"
)
_POUNDS = late(rf"£({_WHOLE}(?:\.[0-9][0-9])?)")
_TIME = late(r"([01][0-9]|2[0-3]):([0-5][0-9])")
_SIGNS = UNITS.keys() - AS_WORDS - {"°"}
"""Units that stand after a space and are written alike after one and after many."""


def plain_line(text: str) -> Node | None:
    """Return the tree of a line if it is one of the plainest, as the grammar would read it.

    That is as :func:`~.parse.parse_written` reads it: 14:35 is a time of day.

    >>> plain_line("(2, -3)") == Listing((Int(2), Neg(Int(3))), True)
    True
    >>> plain_line("y = 2x + 1") is not None, plain_line("y = 2(x + 1)")
    (True, None)
    >>> plain_line("27 cm"), plain_line("27 sweets")
    (Quantity(amount=Int(n=27), unit='cm'), None)
    """
    if _ONE.fullmatch(text):
        return _number(text)
    if label := _LABEL.fullmatch(text):
        return _label(label)
    if pounds := _POUNDS.fullmatch(text):
        amount = _number(pounds[1])
        return amount and Money(amount)
    if time := _TIME.fullmatch(text):
        return ClockTime(int(time[1]), int(time[2]))
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


def _label(label: re.Match[str]) -> Node | None:
    """Return what a side or an angle is labelled with: 27 cm, x, 2x°, (2x + 5)°."""
    number, term, unit = label["number"], label["term"], label["unit"]
    if number is not None:
        # The minus of a number with a unit stands before both.
        less = number.startswith("-")
        amount = _number(number.removeprefix("-"))
        found = amount and _measured(amount, unit)
        return found and Neg(found) if less else found
    if term is not None:
        return _measured(_letters(term), unit) if unit else _letters(term)
    if unit is None:
        return None  # nothing is labelled with a bracket alone
    sign: Literal["+", "-"] = "+" if label["sign"] == "+" else "-"
    more = Int(int(label["more"]))
    return _measured(Bracket(Sum(_letters(label["first"]), ((sign, more),))), unit)


def _measured(amount: Node, unit: str) -> Node | None:
    if unit == "%":
        return Percent(amount) if isinstance(amount, Int | Dec) else None
    if unit == "°":
        return Quantity(amount, unit)
    return Quantity(amount, unit[1:]) if unit[1:] in _SIGNS else None


def _letters(term: str) -> Node:
    letter = Sym(term[-1])
    return Juxt((Int(int(term[:-1])), letter)) if term[:-1] else letter


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
