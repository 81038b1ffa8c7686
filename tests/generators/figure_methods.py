"""Questions about figures, read from the words for who cannot see them, and answered from these.

Each method takes what was read and gives a number; it shares nothing with the generators.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from typing import NamedTuple

from itembank.figures.figure import words
from itembank.items.item import Item
from itembank.notation import line


class Bar(NamedTuple):
    """A bar in words: how many units long, shaded ones, and each amount with its units."""

    name: str
    units: int
    shaded: int
    boxes: list[tuple[int, Fraction]]
    total: Fraction | None


class Seen(NamedTuple):
    """What the words of a question and of its figure say."""

    text: str
    said: str
    bars: list[Bar]
    total: Fraction | None

    @property
    def part(self) -> Fraction:
        """What one unit is worth, from the one amount that is given."""
        if self.total is not None:
            return self.total / sum(bar.units for bar in self.bars)
        for bar in self.bars:
            if bar.total is not None:
                return bar.total / bar.units
            for units, amount in bar.boxes:
                return amount / units
        raise AssertionError(self.said)


def number(text: str) -> Fraction:
    found = re.search(r"\d+(?:\.\d+)?", text)
    assert found, text
    return Fraction(found[0])


def seen(item: Item) -> Seen:
    assert item.figure is not None
    said = words(item.figure)
    text = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
    bars = []
    total = None
    for sentence in re.split(r"(?<=[a-z\d])\. ?(?=[A-Z]|$)", said):
        if made := re.match(r"(?:A bar|The bar of (.+?)|Bar \d) has (.+)", sentence):
            sizes = [int(n) for n in re.findall(r"\d+", made[2])]
            one_size = "equal part" in made[2] or made[2] == "1 part"
            lengths = [1] * sizes[0] if one_size else sizes
            if made[2].startswith("1 part that"):
                lengths = sizes[1:]
            bars.append((made[1] or "", lengths, 0, [], None))
        elif made := re.match(r"Its first (\d+) parts are shaded", sentence):
            bars[-1] = (*bars[-1][:2], int(made[1]), *bars[-1][3:])
        elif made := re.match(r"Its part (\d+) says (.+)", sentence):
            lengths = bars[-1][1]
            bars[-1][3].append((lengths[int(made[1]) - 1], number(made[2])))
        elif re.match(r"Its part \d+ is shaded", sentence):
            bars[-1] = (*bars[-1][:2], bars[-1][2] + 1, *bars[-1][3:])
        elif made := re.match(r"All of it is (.+)", sentence):
            bars[-1] = (*bars[-1][:4], number(made[1]))
        elif made := re.match(r"(?:Both|All) bars together are (.+)", sentence):
            total = number(made[1])
    done = [Bar(name, sum(long), dark, boxes, all_) for name, long, dark, boxes, all_ in bars]
    return Seen(text, said, done, total)


Method = Callable[[Seen], Fraction]


def _of(make: Callable[[Fraction, int, int], Fraction | int]) -> Method:
    """Return a method on one bar: its whole, its parts, and how many are shaded."""

    def method(found: Seen) -> Fraction:
        (bar,) = found.bars
        assert bar.total is not None
        return Fraction(make(bar.total, bar.units, bar.shaded))

    return method


def _back(make: Callable[[Fraction, int, int], Fraction | int]) -> Method:
    """Return a method on one bar: what is known, how many parts that is, and all parts."""

    def method(found: Seen) -> Fraction:
        (bar,) = found.bars
        ((known, amount),) = bar.boxes
        return Fraction(make(amount, known, bar.units))

    return method


KEYS: dict[str, Method] = {
    "of-quantity": _of(lambda whole, parts, dark: sum([whole / parts] * dark)),
    "find-whole": _back(lambda amount, known, parts: sum([amount / known] * parts)),
}
"""How each topic's questions on figures are answered."""

FIGURE_METHODS: dict[tuple[str, str], Method] = {
    ("of-quantity", "of-gives-the-rest"): _of(lambda n, d, a: n - n / d * a),
    ("of-quantity", "of-subtracts-denominator"): _of(lambda n, d, a: n - d),
    ("of-quantity", "of-one-part"): _of(lambda n, d, a: n / d),
    ("of-quantity", "of-divides-by-numerator"): _of(lambda n, d, a: n / a * d),
    ("find-whole", "whole-adds-denominator"): _back(lambda n, a, d: n + d),
    ("find-whole", "whole-one-part"): _back(lambda n, a, d: n / a),
    ("find-whole", "whole-multiplies-only"): _back(lambda n, a, d: n * d),
    ("find-whole", "whole-leaves-known-out"): _back(lambda n, a, d: n / a * (d - a)),
}
"""The wrong method of each misconception that shows on a figure."""
