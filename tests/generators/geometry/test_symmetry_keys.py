"""Keys and likely mistakes on symmetry, found again from what is said, place by place.

The shape is built from the words for who cannot see it. Places scattered all over it are turned
and reflected, and each has to be as dark as before. Nothing here uses the figures' own readings,
or the corners by which drawings are measured.
"""

from __future__ import annotations

import cmath
import math
import random
import re
from collections.abc import Callable, Sequence
from fractions import Fraction
from functools import cached_property
from itertools import pairwise

import pytest

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.value import exact
from tests.depth import cases, only_whole, whole
from tests.figures.grid_reader import grid_said
from tests.generators.asked_plainly import plain
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import each_mistake

COUNT = cases(20, 70, 70)
AXES = sorted(
    {(s + Fraction(180 * k, n)) % 180 for n in range(1, 11) for k in range(n) for s in (0, 90)}
)
"""The directions, in degrees, that a line of symmetry may have here."""
NAMES = ("equilateral triangle", "square", "pentagon", "hexagon", "heptagon", "octagon")
CORNERS = {name: sides for sides, name in enumerate((*NAMES, "nonagon", "decagon"), 3)}
PLACES = 150
EDGE = 0.005
"""Places nearer to an edge, for their size, are not asked: rounding could settle them."""

Outline = Sequence[complex]
Move = Callable[[complex], complex]


def inside(outline: Outline, at: complex) -> bool:
    """Count the edges to the right of a place (the even-odd rule, from memory)."""
    count = 0
    for a, b in pairwise((*outline, outline[0])):
        if (a.imag > at.imag) != (b.imag > at.imag):
            x = a.real + (at.imag - a.imag) * (b.real - a.real) / (b.imag - a.imag)
            count += x > at.real
    return count % 2 == 1


def on_edge(outline: Outline, at: complex) -> bool:
    for a, b in pairwise((*outline, outline[0])):
        along = ((at - a) / (b - a)).real
        if abs(at - (a + min(max(along, 0.0), 1.0) * (b - a))) < EDGE:
            return True
    return False


def reflection(degrees: float, through: complex) -> Move:
    turn = cmath.rect(1, math.radians(2 * degrees))
    return lambda at: through + (at - through).conjugate() * turn


def rotation(degrees: float, centre: complex) -> Move:
    turn = cmath.rect(1, math.radians(degrees))
    return lambda at: centre + (at - centre) * turn


def square(row: int, column: int) -> Outline:
    corner = complex(column - 1, -row)
    return (corner, corner + 1, corner + 1 + 1j, corner + 1j)


class Seen:
    """What is shaded, in what it stands, and the letters with their squares."""

    def __init__(self, item: Item) -> None:
        self.said = words(item.figure)
        self.letters: dict[str, Outline] = {}
        self.sides = 0
        self.dark: list[Outline]
        self.whole: Outline
        if "rows of" in self.said:
            self._squares()
        elif "A grid has x" in self.said:
            (corners,) = grid_said(self.said).shapes.values()
            self.whole = [complex(float(x), float(y)) for x, y in corners]
            self.dark, self.sides = [self.whole], len(corners)
        else:
            self._regular()
        self.middle = sum(self.whole) / len(self.whole)

    def _squares(self) -> None:
        rows, columns = map(int, re.search(r"(\d+) rows of (\d+)", self.said).groups())
        self.dark = []
        for row, text in re.findall(r"In row (\d+) (.+?) shaded", self.said):
            places = [int(n) for n in re.findall(r"\d+", text)]
            if text.startswith("all"):
                places = list(range(1, columns + 1))
            self.dark += [square(int(row), place) for place in places]
        for name, column, row in re.findall(r"(\w) is square (\d+) of row (\d+)", self.said):
            self.letters[name] = square(int(row), int(column))
        self.whole = [-rows * 1j, columns - rows * 1j, columns + 0j, 0j]

    def _regular(self) -> None:
        name = re.match(r"An? (?:regular )?(equilateral triangle|\w+)", self.said)[1]
        self.sides = n = CORNERS[name]
        start = 1 / 8 if n == 4 else 0
        self.whole = [cmath.rect(2, math.tau * (1 / 4 - start - k / n)) for k in range(n)]
        self.dark = [self.whole]
        if "shaded" in self.said:
            places = [int(k) for k in re.findall(r"\d+", self.said.rpartition(":")[2])]
            self.dark = [(0j, self.whole[k - 1], self.whole[k % n]) for k in places]

    @cached_property
    def places(self) -> list[complex]:
        chance = random.Random(self.said)
        xs, ys = [at.real for at in self.whole], [at.imag for at in self.whole]
        # Just within each corner too: that is where two polygons nearly alike differ.
        corners = [self.middle + (at - self.middle) * 0.99 for at in self.whole]
        return corners + [
            complex(chance.uniform(min(xs), max(xs)), chance.uniform(min(ys), max(ys)))
            for _ in range(PLACES)
        ]

    def kept(self, move: Move, more: Sequence[Outline] = ()) -> bool:
        """Tell whether every place is as dark as the one that a move takes it to."""
        dark = [*self.dark, *more]
        for at in self.places:
            two = (at, move(at))
            if any(on_edge(sequence, place) for sequence in (self.whole, *dark) for place in two):
                continue
            shades = {
                (inside(self.whole, place), any(inside(sequence, place) for sequence in dark))
                for place in two
            }
            if len(shades) > 1:
                return False
        return True

    def folds(self, degrees: float, more: Sequence[Outline] = ()) -> bool:
        return self.kept(reflection(degrees, self.middle), more)

    def axes(self, more: Sequence[Outline] = ()) -> list[float]:
        tried = {round(float(axis), 6) % 180 for axis in AXES}
        if "A grid has x" in self.said:
            # Slants of whole squares: an axis of a regular polygon lies too near to some of them.
            tried = {0.0, 45.0, 90.0, 135.0, *self.through_corners()}
            sides = [(a + b) / 2 for a, b in pairwise((*self.whole, self.whole[0]))]
            tried |= {self._direction(side) for side in sides}
        return [axis for axis in sorted(tried) if self.folds(axis, more)]

    def through_corners(self) -> list[float]:
        """Return the directions of the lines through the middle and a corner."""
        return [self._direction(at) for at in self.whole]

    def _direction(self, at: complex) -> float:
        return round(math.degrees(cmath.phase(at - self.middle)) % 180, 6) % 180

    def lines(self, more: Sequence[Outline] = ()) -> int:
        return len(self.axes(more))

    def order(self, more: Sequence[Outline] = ()) -> int:
        return max(k for k in range(1, 11) if self.kept(rotation(360 / k, self.middle), more))


def sampled(tier: Tier) -> list[Item]:
    topic = find_topic("geometry.symmetry")
    chance = random.Random(f"symmetry {tier}")
    own = plain(topic, tier)
    places = chance.sample(own, COUNT)
    if tier is Tier.SUPPORT:  # regular polygons without shading stand at its end
        places += own[-8:]
    return [topic.item(tier, k) for k in places]


def equation_holds(text: str, seen: Seen) -> bool:
    """Tell whether two places of a line lie so that the shape folds along it."""
    left, _, right = text.partition(" = ")
    if left == "x":
        angle, on = 90.0, complex(float(Fraction(right)), 0)
    else:
        found = re.fullmatch(r"(-?)(x)?(?: ?([+-]) ?(\d+))?", right)
        if found and found[2]:
            rest = float(f"{found[3] or '+'}{found[4] or 0}")
            angle, on = (135.0 if found[1] else 45.0), rest * 1j
        else:
            angle, on = 0.0, float(Fraction(right)) * 1j
    return seen.kept(reflection(angle, on))


@whole
@pytest.mark.parametrize("tier", list(Tier))
def test_keys_are_what_laying_the_area_over_itself_gives(tier: Tier) -> None:
    kinds = set()
    for item in sampled(tier):
        seen, text = Seen(item), text_of(item)
        if "equation" in text:
            kinds.add("equation")
            assert equation_holds(line(item.key), seen), item.address
            assert seen.lines() == 1
        elif seen.letters:
            order = "rotational" in text
            kinds.add("square for order" if order else "square for lines")
            wanted = int(re.search(r"\d", text)[0])
            fits = [
                name
                for name, square in seen.letters.items()
                if (seen.order if order else seen.lines)([square]) == wanted
            ]
            assert [t.Label(name) for name in fits] == [item.key], item.address
        else:
            order = "order of" in text
            kinds.add("order" if order else "lines")
            assert exact(item.key) == (seen.order() if order else seen.lines()), item.address
    assert len(kinds) == {Tier.SUPPORT: 1, Tier.CORE: 2, Tier.CHALLENGE: 3}[tier]


def straight(seen: Seen) -> int:
    return seen.folds(0) + seen.folds(90)


def quarter_or_half(seen: Seen) -> int:
    return 2 if seen.order() % 2 == 0 else 1


NUMBERS = {
    "diagonals": lambda seen: len({*seen.axes()} - {*seen.through_corners()}) + 2,
    "no-diagonals": straight,
    "upright-alone": lambda seen: int(seen.folds(90)),
    "lines-twice": lambda seen: 2 * seen.lines(),
    "corners-alone": lambda seen: seen.sides // 2,
    "order-for-lines": lambda seen: seen.order(),
    "whole-grid": lambda seen: 4,
    "all-quarters": lambda seen: 4,
    "half-turns-alone": quarter_or_half,
    "lines-for-order": lambda seen: seen.lines(),
    "full-turn-left-out": lambda seen: seen.order() - 1,
    "sides": lambda seen: seen.sides,
}
"""What each mistake counts, of the area itself."""
AXIS = {"reflected-across": 90.0, "reflected-over": 0.0}


def moved_there(item: Item, seen: Seen, name: str, letter: str) -> bool:
    """Tell whether the square of a letter is where a mistake takes the one without a partner."""
    target, right = seen.letters[letter], seen.letters[item.key.text]
    at = sum(right) / 4
    half = rotation(180, seen.middle)
    if name in AXIS:
        return inside(target, reflection(AXIS[name], seen.middle)(half(at)))
    (axis,) = seen.axes([right])
    lone = reflection(axis, seen.middle)(at)
    if name == "turned":
        return inside(target, half(lone))
    assert name == "other-line"
    return any(
        inside(target, reflection(other, seen.middle)(lone)) for other in (0, 90) if other != axis
    )


@only_whole
def test_mistakes_are_what_the_wrong_ways_give() -> None:
    topic = find_topic("geometry.symmetry")
    met = set()
    for item in [item for tier in Tier for item in sampled(tier)]:
        seen = Seen(item)
        for slip in each_mistake(item):
            name = slip.misconception.id.removeprefix("geometry.symmetry-")
            met.add(name)
            if name in NUMBERS:
                assert exact(slip.wrong) == NUMBERS[name](seen), (item.address, name)
            elif isinstance(slip.wrong, t.Label):
                assert moved_there(item, seen, name, slip.wrong.text), (item.address, name)
            else:
                key, wrong = line(item.key), line(slip.wrong)
                assert wrong == equations(key, seen)[name], (item.address, name)
    declared = {m.id.removeprefix("geometry.symmetry-") for m in topic.misconceptions}
    assert met == declared


def equations(key: str, seen: Seen) -> dict[str, str]:
    """Return what each mistake makes of the equation of the line of symmetry."""
    left, _, right = key.partition(" = ")
    swapped = {"x": "y", "y": "x"}
    if "x" in right:
        turned = right.removeprefix("-") if right.startswith("-") else f"-{right}"
        sign = "-" if right.startswith("-") else ""
        return {"gradient-sign": f"y = {turned}", "always-y-x": f"y = {sign}x"}
    low = min(at.real if left == "x" else at.imag for at in seen.whole)
    return {"changed-letter": f"{swapped[left]} = {right}", "edge": f"{left} = {int(low)}"}
