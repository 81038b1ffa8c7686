"""Reads a question about lengths, areas and volumes from its print, and holds a key to a value.

Values come from solvers that know the printed words alone and work in python-flint's ball
arithmetic (`arb`), which neither road of the proofs uses.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from itembank.figures.figure import words
from itembank.items.item import Item
from itembank.notation import line
from tests.balls import arb

SIZES = {"mm": "0.001", "cm": "0.01", "m": "1", "km": "1000"}
NAMES = {"millimetre": "mm", "centimetre": "cm", "metre": "m", "kilometre": "km"}
NAMED = re.compile(
    r"(?:(square|cubic) )?(millimetre|centimetre|kilometre|metre)s?(?: (squared|cubed))?"
)


class Worth(NamedTuple):
    """What a question comes to: a number of metres, square metres, degrees, or a bare number."""

    value: arb
    power: int = 0
    """1 for lengths, 2 for areas, 3 for volumes, 0 for a bare number."""


Solver = Callable[[str], Worth]


def text_of(item: Item) -> str:
    """Return the prompt as a line, with what is said of the figure."""
    printed = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
    seen = f" [{words(item.figure)}]" if item.figure is not None else ""
    return printed + NAMED.sub(_short, POINT.sub(_decimal, seen))


POINT = re.compile(r"\b(\d+) point ((?:\d )*\d)\b")


def _decimal(found: re.Match[str]) -> str:
    return f"{found[1]}.{found[2].replace(' ', '')}"


def _short(found: re.Match[str]) -> str:
    power = {"square": "^2", "squared": "^2", "cubic": "^3", "cubed": "^3"}
    return NAMES[found[2]] + power.get(found[1] or found[3] or "", "")


def size(unit: str) -> arb:
    """Return the size of a unit in metres, square metres or cubic metres."""
    if unit in ("", "°"):
        return arb(1)
    if unit in ("l", "ml"):
        return arb("0.001") if unit == "l" else arb("0.000001")
    name, _, power = unit.partition("^")
    return arb(SIZES[name]) ** int(power or 1)


AMOUNT = r"(\d+(?:\.\d+)?)(π)? ?((?:mm|cm|km|m)(?:\^[23])?|ml|l|°)?(?!\w|\.\d)"


def amount(found: tuple[str, str, str]) -> arb:
    number, pi, unit = found
    return arb(number) * (arb.pi() if pi else 1) * size(unit)


def after(text: str, words_before: str) -> arb:
    """Return the amount that follows some words, a regular expression."""
    found = re.search(rf"(?:{words_before}) {AMOUNT}", text)
    assert found, (words_before, text)
    return amount(found.groups()[-3:])


def amounts(text: str) -> list[arb]:
    """Return every length, area, volume and angle of a text, in order."""
    return [amount(each) for each in re.findall(AMOUNT, text) if each[2]]


KEY = re.compile(r"(?:(\d+(?:\.\d+)?)|(\d+)/(\d+))?(π)? ?(\S+)?")


def holds(item: Item, worth: Worth) -> None:
    """Hold a key to a value: equal where it is exact, rounded as the words say where it is not."""
    printed, key = text_of(item), line(item.key)
    found = KEY.fullmatch(key)
    assert found, key
    unit = found[5] or ""
    assert (unit in ("", "°")) == (worth.power == 0), (key, printed)
    if worth.power > 1 and unit not in ("l", "ml"):
        assert unit.endswith(f"^{worth.power}"), (key, printed)
    number = arb(found[1] or found[2] or 1) / arb(found[3] or 1)
    gap = worth.value / size(unit) - number * (arb.pi() if found[4] else 1)
    asked = re.search(
        r"to (?:(\d) (decimal places?|significant figures)|the nearest ([a-z ]+))", printed
    )
    if asked is None:
        assert abs(gap) < arb("1e-30"), (key, printed, worth)
        assert bool(found[4]) == ("in terms of π" in printed), (key, printed)
        return
    places = len(found[1].partition(".")[2])
    if asked[3]:
        step = arb(1)
        assert places == 0
    elif asked[2].startswith("decimal"):
        assert places == int(asked[1]), (key, printed)
        step = arb(10) ** -places
    else:
        whole, digits = len(found[1].partition(".")[0].lstrip("0")), int(asked[1])
        assert places == max(digits - whole, 0), (key, printed)
        step = arb(10) ** (whole - digits)
    assert abs(gap) < step / 2, (key, printed, worth)
