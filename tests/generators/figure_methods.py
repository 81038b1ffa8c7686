"""Questions about figures, read from the words for who cannot see them, and answered from these.

Each method takes what was read and gives a number; it shares nothing with the generators.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from fractions import Fraction
from math import gcd
from types import MappingProxyType
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
    """What the words of a question and of its figure say.

    A shape has so many parts and shaded ones; on a line each arrow has its number; a plan has
    the lengths of its sides.
    """

    text: str
    said: str
    bars: list[Bar]
    total: Fraction | None
    shape: tuple[int, int] = (0, 0)
    arrows: Mapping[str, Fraction] = MappingProxyType({})
    sides: Mapping[str, Fraction] = MappingProxyType({})

    def bar(self, name: str) -> Bar:
        return next(bar for bar in self.bars if bar.name.lower() == name.lower())

    @property
    def named(self) -> Bar:
        """The one bar whose name stands in the last sentence that asks."""
        asks = self.text.split("? ")[0].split(". ")[-1].lower()
        (found,) = (bar for bar in self.bars if bar.name.lower() in asks)
        return found

    @property
    def box(self) -> tuple[int | None, int | None]:
        """Return the fraction with a box in it: None where the box is."""
        found = re.search(r"(\d+|□)/(\d+|□)", self.text)
        assert found, self.text
        top, bottom = (None if part == "□" else int(part) for part in found.groups())
        return top, bottom

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
    if found := re.fullmatch(r"(\d+)/(\d+)", text):
        return Fraction(int(found[1]), int(found[2]))
    if money := re.search(r"(\d+) pounds? (\d+) pence", text):
        return Fraction(int(money[1])) + Fraction(int(money[2]), 100)
    found = re.search(r"\d+(?:\.\d+)?", text.replace(" point ", "."))
    assert found, text
    return Fraction(found[0])


def answer(text: str) -> object:
    """Return an answer as a name, the numbers of a ratio, or a number."""
    if text.startswith('"'):
        return text.strip('"')
    if " : " in text:
        return [Fraction(part) for part in text.split(" : ")]
    return number(text)


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
    parts = re.search(r"divided into (?:(\d+) rows of )?(\d+) equal parts", said)
    dark = re.search(r"(\d+) of the parts (?:is|are) shaded", said)
    shape = (int(parts[1] or 1) * int(parts[2]), int(dark[1])) if parts and dark else (0, 0)
    line_to = re.search(r"A number line goes from 0 to (\d+) in (\d+) equal steps", said)
    arrows = {
        name: Fraction(int(at) * int(line_to[1]), int(line_to[2]))
        for name, at in re.findall(r"The arrow ([A-Z]) points (\d+) steps? after 0", said)
        if line_to
    }
    sides = {
        name: number(text)
        for name, text in re.findall(r"Side ([A-Z]{2}) is (\d[\w ]*?) centi", said)
    }
    done = [Bar(name, sum(long), dark, boxes, all_) for name, long, dark, boxes, all_ in bars]
    return Seen(text, said, done, total, shape, arrows, sides)


Method = Callable[[Seen], object]


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


def _share(found: Seen) -> object:
    if more := re.search(r"more do the (\w+) \w+ than the (\w+)", found.text):
        return found.part * (found.bar(more[1]).units - found.bar(more[2]).units)
    if "altogether" in found.text:
        return found.part * sum(bar.units for bar in found.bars)
    return found.part * found.named.units


def _bars_all(found: Seen) -> int:
    return sum(bar.units for bar in found.bars)


def _given(found: Seen) -> Fraction:
    """Return the one amount that stands on a bar, or for a bar."""
    amounts = [amount for bar in found.bars for _, amount in bar.boxes]
    amounts += [bar.total for bar in found.bars if bar.total is not None]
    (only,) = amounts
    return only


def _known(found: Seen) -> Bar:
    (bar,) = (bar for bar in found.bars if bar.total is not None)
    return bar


def _other(found: Seen) -> Bar:
    (bar,) = (bar for bar in found.bars if bar.total is None)
    return bar


def _gap(found: Seen) -> int:
    one, two = (bar.units for bar in found.bars)
    return abs(one - two)


def _asked_units(found: Seen) -> int:
    return _bars_all(found) if "altogether" in found.text else found.named.units


def _counts(found: Seen) -> list[int]:
    """Return how many parts of each kind a shape has, in the order the question names them."""
    every, dark = found.shape
    return [dark, every - dark] if "of shaded parts to" in found.text else [every - dark, dark]


def _lowest(first: int, second: int) -> list[Fraction]:
    return [Fraction(first, gcd(first, second)), Fraction(second, gcd(first, second))]


def _one_cancelled(found: Seen) -> list[Fraction]:
    counts = _counts(found)
    return [Fraction(n, gcd(*counts)) if n == min(counts) else Fraction(n) for n in counts]


def _shown(found: Seen) -> tuple[int, int]:
    """Return the parts that are shaded or come before the arrow, and all of them."""
    if found.arrows:
        steps = int(re.findall(r"in (\d+) equal steps", found.said)[0])
        return int(found.arrows["A"] * steps), steps
    every, dark = found.shape
    return dark, every


def _boxed(found: Seen) -> Fraction:
    """Try whole numbers in the box until both fractions are worth the same."""
    top, bottom = found.box
    dark, every = _shown(found)
    return next(Fraction(n) for n in range(1, 400) if (top or n) * every == dark * (bottom or n))


def _box_of_rest(found: Seen) -> Fraction:
    top, bottom = found.box
    part, every = _shown(found)
    rest = every - part
    return (
        Fraction(rest * bottom, every) if bottom is not None else Fraction(every * (top or 0), rest)
    )


def _box_left(found: Seen) -> Fraction:
    top, _ = found.box
    return Fraction(_shown(found)[top is not None])


def _box_by_adding(found: Seen) -> Fraction:
    top, bottom = found.box
    dark, every = _shown(found)
    return Fraction(dark + bottom - every if bottom is not None else every + (top or 0) - dark)


def _arrow_at(found: Seen, place: Fraction) -> str:
    return next(name for name, at in found.arrows.items() if at == place)


def _asked_fraction(found: Seen) -> tuple[int, int, int, int]:
    """Return numerator, denominator, how many steps the line has, and what it ends with."""
    top, bottom = map(int, re.findall(r"(\d+)/(\d+)", found.text)[0])
    ((ones, steps),) = re.findall(r"from 0 to (\d) in (\d+) equal", found.said)
    return top, bottom, int(steps), int(ones)


def _step_arrow(make: Callable[[int, int, int, int], Fraction]) -> Method:
    return lambda found: _arrow_at(found, make(*_asked_fraction(found)))


def _plan(size: int) -> Method:
    """Return the method that multiplies by the scale, and has so many centimetres in a metre."""

    def method(found: Seen) -> Fraction:
        asked = re.search(r"How long is ([A-Z]{2})", found.text)
        scale = re.search(r"1 : (\d+)", found.text)
        assert asked
        assert scale
        return found.sides[asked[1]] * int(scale[1]) / size

    return method


KEYS: dict[str, Method] = {
    "share": _share,
    "one-part": _share,
    "difference": _share,
    "fraction-of-whole": lambda found: Fraction(found.named.units, _bars_all(found)),
    "simplest-form": lambda found: _lowest(*_counts(found)),
    "scale": _plan(100),
    "equivalent": _boxed,
    "order": _step_arrow(lambda a, b, steps, ones: Fraction(a, b)),
    "of-quantity": _of(lambda whole, parts, dark: sum([whole / parts] * dark)),
    "find-whole": _back(lambda amount, known, parts: sum([amount / known] * parts)),
}
"""How each topic's questions on figures are answered."""

FIGURE_METHODS: dict[tuple[str, str], Method] = {
    ("share", "share-reversed"): lambda f: (
        f.part * f.bars[-1 - [bar.name for bar in f.bars].index(f.named.name)].units
    ),
    ("share", "share-equal"): lambda f: (f.total or 0) / len(f.bars),
    ("share", "share-one-part"): lambda f: f.part,
    ("share", "share-not-difference"): lambda f: f.part * max(bar.units for bar in f.bars),
    ("one-part", "one-part-additive"): lambda f: _given(f) + _other(f).units - _known(f).units,
    ("one-part", "one-part-undivided"): lambda f: _given(f) * _asked_units(f),
    ("one-part", "one-part-as-total"): lambda f: _given(f) / _bars_all(f) * _other(f).units,
    ("one-part", "one-part-not-total"): lambda f: f.part * _other(f).units,
    ("difference", "difference-as-part"): lambda f: _given(f) * _asked_units(f),
    ("difference", "difference-as-total"): lambda f: _given(f) / _bars_all(f) * f.named.units,
    ("difference", "difference-one-part"): lambda f: _given(f) / _gap(f),
    ("difference", "difference-larger-only"): lambda f: (
        _given(f) / _gap(f) * max(bar.units for bar in f.bars)
    ),
    ("fraction-of-whole", "fraction-part-to-part"): lambda f: Fraction(
        f.named.units, _bars_all(f) - f.named.units
    ),
    ("fraction-of-whole", "fraction-other-part"): lambda f: (
        1 - Fraction(f.named.units, _bars_all(f))
    ),
    ("simplest-form", "simplest-reversed"): lambda f: _lowest(*_counts(f)[::-1]),
    ("simplest-form", "simplest-one-part"): _one_cancelled,
    ("simplest-form", "simplest-part-to-whole"): lambda f: _lowest(_counts(f)[0], f.shape[0]),
    ("scale", "scale-centimetres-as-metres"): _plan(1),
    ("scale", "scale-thousand"): _plan(1000),
    ("equivalent", "equivalent-by-adding"): _box_by_adding,
    ("equivalent", "equivalent-by-subtracting"): _box_by_adding,
    ("equivalent", "equivalent-one-part"): _box_left,
    ("equivalent", "equivalent-rest-taken"): _box_of_rest,
    ("order", "order-steps-as-parts"): _step_arrow(
        lambda a, b, steps, ones: Fraction(a * ones, steps)
    ),
    ("order", "order-from-the-end"): _step_arrow(lambda a, b, steps, ones: ones - Fraction(a, b)),
    ("order", "order-line-as-whole"): _step_arrow(lambda a, b, steps, ones: ones * Fraction(a, b)),
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
