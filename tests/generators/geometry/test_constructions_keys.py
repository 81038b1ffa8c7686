"""Keys and mistakes of constructions, done again with compasses from what is said and asked."""

from __future__ import annotations

import re

import pytest

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.value import exact
from tests.depth import some, whole
from tests.figures.compasses import Placed, fitted, measure, placed
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import each_mistake

TOPIC = "geometry.constructions"
UNITS = {"millimetres": 0.001, "centimetres": 0.01, "metres": 1.0, "degrees": 1.0}
SIZE = re.compile(r"(?:Angle )?(\b[A-Z]{2,3}) is ([\d.]+) ([a-z]+)\.")
LETTER = re.compile(
    r"(?:Angle )?(\b[A-Z]{2,3}) is open bracket (\d+) ([a-z]) (plus|minus) (\d+) close bracket"
)


def sizes(text: str) -> dict[str, float]:
    return {name: float(size) * UNITS[unit] for name, size, unit in SIZE.findall(text)}


def done(item: Item) -> Placed:
    """Return the points of what is said, as wide as what is given wants it."""
    text = words(item.figure)
    angles = {name: size for name, size in sizes(text).items() if len(name) == 3}
    if not angles:
        return placed(text, 47)
    ((name, size),) = angles.items()
    return fitted(text, lambda points: measure(points, name) - size)


def scaled(item: Item, name: str) -> float:
    """Return a length in metres, or an angle in degrees."""
    points = done(item)
    size = measure(points, name)
    if len(name) == 2:
        ((given, long),) = [size for size in sizes(words(item.figure)).items() if len(size[0]) == 2]
        size *= long / measure(points, given)
    return size


def solved(item: Item) -> float:
    """Return the letter that is asked for: its part is as large as compasses make it."""
    name, count, _, sign, more = LETTER.search(words(item.figure)).groups()
    part = scaled(item, name)
    if len(name) == 2:
        part /= UNITS[re.search(r" (\w*metres)", words(item.figure))[1]]
    return (part - float(more) * (1 if sign == "plus" else -1)) / int(count)


def as_far(points: Placed, line: str, of: str, others: list[str]) -> list[str]:
    """Return the points, or the lines, that a line is everywhere as far from as from another."""
    a, b = (points[letter] for letter in line)
    ends = [a, b, 2 * b - a]

    def away(at: complex, name: str) -> float:
        if len(name) == 1:
            return abs(at - points[name])
        first, last = (points[letter] for letter in name)
        way = (last - first) / abs(last - first)
        return abs(((at - first) / way).imag)

    return [
        name for name in others if all(abs(away(at, of) - away(at, name)) < 1e-6 for at in ends)
    ]


BEGUN = {
    "perpendicular bisector": r"the ends of a line",
    "angle bisector": r"^Lines go from .* crosses",
    "equilateral triangle": r"with the radius (..) cross",
    "perpendicular at a point on a line": r"is on a line",
    "perpendicular from a point to a line": r"is beside the line",
}


def answer(item: Item) -> float | str:
    text, said = text_of(item), words(item.figure)
    if found := re.search(r"Which construction is shown: (.*)\?", text):
        (name,) = [name for name in re.split(r", | or ", found[1]) if re.search(BEGUN[name], said)]
        return name
    if found := re.search(r"distance from (.) to line ..: (.*)\?", text):
        return min(re.split(r", | or ", found[2]), key=lambda name: measure(done(item), name))
    if found := re.search(r"on line (..) is as far from (?:line )?(..?) as", text):
        points = done(item)
        others = list(points) if len(found[2]) == 1 else [found[2][0] + name for name in points]
        others = [name for name in others if name != found[2] and len({*name}) == len(name)]
        (name,) = as_far(points, found[1], found[2], others)
        return name
    if found := re.search(r"(?:angle|length of) ([A-Z]{2,3})\b", text):
        return scaled(item, found[1])
    return solved(item)


@whole
@pytest.mark.parametrize("tier", list(Tier))
def test_compasses_come_to_the_key(tier: Tier) -> None:
    topic = find_topic(TOPIC)
    own = topic.spaces[tier].own
    assert len(own) >= 200
    for item in (topic.item(tier, index) for index in some(own, 60)):
        found = answer(item)
        if isinstance(found, str):
            assert item.key == t.Label(found), item.address
        else:
            assert found == pytest.approx(float(exact(item.key))), item.address


def whole_of(item: Item) -> float:
    """Return the whole line, or the whole angle, that is halved."""
    letters = re.findall(r"[A-Z]", words(item.figure))
    if "the ends of a line" in words(item.figure):
        return scaled(item, "".join(letters[1:3]))
    b, a, c = re.match(r"Lines go from (.) to (.) and to (.)\.|", words(item.figure)).groups()
    if b is None and (
        found := re.match(r"Arcs round (.) and (.) .* cross at (.)\. ", words(item.figure))
    ):
        b, c, a = found.groups()
    if b is None:
        b, c, a = re.match(
            r"(.) is on a line that goes on to (.)\..*?cross at (.)\.", words(item.figure)
        ).groups()
    return scaled(item, a + b + c)


def given_of(item: Item) -> float:
    ((_, size),) = sizes(words(item.figure)).items()
    return size


def key_of(item: Item) -> float:
    return float(exact(item.key))


def expression(item: Item) -> tuple[int, int, float]:
    """Return a and b of ax + b, and half of the whole."""
    _, count, _, sign, more = LETTER.search(words(item.figure)).groups()
    a, b = int(count), int(more) * (1 if sign == "plus" else -1)
    return a, b, a * key_of(item) + b


def other_of(item: Item) -> list[float]:
    """Return what the other parts of a line that is bisected twice come to."""
    whole = whole_of(item)
    return [whole, whole - key_of(item), whole * 3 / 4]


WAYS = {
    "constructions-not-halved": lambda item: [whole_of(item)],
    "constructions-doubled": lambda item: [2 * whole_of(item)],
    "constructions-halved-again": lambda item: [given_of(item) / 2],
    "constructions-copied": lambda item: [given_of(item)],
    "constructions-sixty-or-ninety": lambda item: [
        key_of(item) * (90 if round(whole_of(item)) == 60 else 60) / whole_of(item)
    ],
    "constructions-halved-once": lambda item: [whole_of(item) / 2],
    "constructions-other-part": other_of,
    "constructions-equal-acute": lambda item: [given_of(item)],
    "constructions-right-left-out": lambda item: [180 - given_of(item)],
    "constructions-part-for-whole": lambda item: [
        (2 * expression(item)[2] - expression(item)[1]) / expression(item)[0]
    ],
    "constructions-half-doubled": lambda item: [
        (2 * expression(item)[2] - expression(item)[1]) / (2 * expression(item)[0])
    ],
    "angle-numbers-added": lambda item: [
        (expression(item)[2] + expression(item)[1]) / expression(item)[0]
    ],
    "constructions-size-for-letter": lambda item: [expression(item)[2]],
}
BY_NAME = {
    "constructions-line-or-angle",
    "constructions-on-or-off",
    "constructions-arcs-alone",
    "constructions-other-end",
    "constructions-past-the-line",
    "constructions-itself",
    "constructions-crossing",
}


def on_the_line(item: Item, name: str) -> bool:
    line = re.search(r"on line (..)", text_of(item))[1]
    points = done(item)
    a, b = (points[letter] for letter in line)
    return all(abs(((points[letter] - a) / (b - a)).imag) < 1e-6 for letter in name)


@whole
def test_mistakes_lead_where_they_are_said_to() -> None:
    topic, met = find_topic(TOPIC), set()
    own = [(tier, index) for tier in Tier for index in some(topic.spaces[tier].own, 60)]
    for item in (topic.item(*place) for place in own):
        for slip in each_mistake(item):
            name = slip.misconception.id.removeprefix("geometry.")
            met.add(name)
            if name in BY_NAME:
                wrong = slip.wrong.text
                assert wrong in text_of(item) or on_the_line(item, wrong), item.address
                assert wrong != item.key.text, item.address
                continue
            wrong = float(exact(slip.wrong))
            assert any(wrong == pytest.approx(way) for way in WAYS[name](item)), (
                item.address,
                name,
            )
    assert met == {m.id.removeprefix("geometry.") for m in topic.misconceptions}
