"""Reads the words of a figure of angles or sides: what a pupil hears who cannot see it.

Keys of geometry are found again from these words alone, by trying every whole number of degrees.
Nothing here looks at a figure's data, its readings or its drawing.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from fractions import Fraction

import flint

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from tests.generators.asked_plainly import plain

Form = tuple[int, str, int]
"""So many times a letter, and a number."""
_FORM = re.compile(
    r"(?:open bracket )?(?:(?P<count>\d+) )?(?P<letter>[a-z])"
    r"(?: (?P<sign>plus|minus) (?P<more>\d+))?(?: close bracket)?(?: degrees)?"
)
_NUMBER = re.compile(r"(\d+(?:\.\d+)?) (?:degrees|centimetres|metres)")


def items(name: str, count: int = 150) -> Iterator[Item]:
    """Yield random items of a topic, as many of each tier, the same ones each time."""
    topic = find_topic(name)
    for tier in Tier:
        own = plain(topic, tier)
        chance = random.Random(f"{name}/{tier}")
        for index in chance.sample(own, min(len(own), count // 3)):
            yield topic.item(tier, index)


def form(phrase: str) -> Form | None:
    """Return what a label says, None for an angle without one."""
    if phrase == "a right angle":
        return (0, "", 90)
    if found := _NUMBER.fullmatch(phrase):
        return (0, "", int(found[1]))
    if found := _FORM.fullmatch(phrase):
        more = int(found["more"] or 0)
        return (
            int(found["count"] or 1),
            found["letter"],
            -more if found["sign"] == "minus" else more,
        )
    assert phrase == "one unlabelled", phrase
    return None


def listed(text: str, lead: str) -> list[Form | None]:
    """Return the labels that stand after a phrase, in their order."""
    found = re.search(rf"{lead}([^.]*)\.", text)
    assert found, text
    return [form(part) for part in re.split(r", | and ", found[1])]


def said(item: Item) -> str:
    """Return what is said of the item's figure."""
    assert item.figure is not None
    return words(item.figure)


def asked(item: Item) -> str:
    """Return the prompt as it is read aloud."""
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def letter_asked(item: Item) -> str:
    """Return the letter whose size or value is wanted."""
    found = re.search(r"(?:angle|value of|length of|length|find) ([a-z])[.?]$", asked(item))
    assert found, asked(item)
    return found[1]


def tried(equations: list[list[Form]], totals: list[int], letter: str) -> int:
    """Return the one value of a letter with which all sums come out, by trying each."""
    found = [
        value
        for value in range(-400, 401)
        if all(
            sum(
                count * value + more if name == letter or not name else 10**6
                for count, name, more in forms
            )
            == total
            for forms, total in zip(equations, totals, strict=True)
        )
    ]
    assert len(found) == 1, (equations, totals, found)
    return found[0]


def number(item: Item) -> Fraction:
    """Return the number of a key, without its unit."""
    found = re.fullmatch(r"(-?\d+(?:\.\d+)?)(?:°| ?[a-z]+(?:\^2)?)?", line(item.key))
    assert found, line(item.key)
    return Fraction(found[1])


Equation = tuple[dict[str, int], int]
"""So many times each unknown, and what they come to."""


def settled(equations: list[Equation], unknown: str) -> Fraction:
    """Return the value of an unknown, by python-flint's elimination; fails where it is open."""
    names = sorted({name for row, _ in equations for name in row})
    rows = [[row.get(name, 0) for name in names] + [right] for row, right in equations]
    matrix, _ = flint.fmpq_mat(rows).rref()
    at = names.index(unknown)
    for i in range(matrix.nrows()):
        row = [matrix[i, j] for j in range(len(names))]
        if row[at] == 1 and sum(value != 0 for value in row) == 1:
            value = matrix[i, len(names)]
            return Fraction(int(value.p), int(value.q))
    raise AssertionError((equations, unknown))


def plus(*forms: Form | str) -> tuple[dict[str, int], int]:
    """Return the sum of labels, and of angles or sides without one by their names."""
    row: dict[str, int] = {}
    number = 0
    for each in forms:
        count, name, more = (1, each, 0) if isinstance(each, str) else each
        if name:
            row[name] = row.get(name, 0) + count
        number += more
    return row, number


def makes(total: int, *forms: Form | str) -> Equation:
    """Return that labels come to a total."""
    row, number = plus(*forms)
    return row, total - number


def alike(first: Form | str, other: Form | str) -> Equation:
    """Return that two labels are equal."""
    (row, number), (less, taken) = plus(first), plus(other)
    return {n: row.get(n, 0) - less.get(n, 0) for n in {*row, *less}}, taken - number
