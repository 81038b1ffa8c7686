"""Areas, perimeters and missing lengths, found again from the words: of figures and of stories."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

import pytest

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation.line import line
from tests.generators.asked_plainly import plain
from tests.generators.geometry.geometry_reader import (
    Equation,
    alike,
    asked,
    form,
    items,
    makes,
    said,
    settled,
)

_AMOUNT = re.compile(r"£?(\d+(?:\.\d+)?)(?: ?(?:°|cm\^2|m\^2|cm|m))?")


def amount(text: str) -> Fraction:
    """Return the number of an amount."""
    found = _AMOUNT.fullmatch(text)
    assert found, text
    return Fraction(found[1])


# What each story says, in words around its numbers, and how its answer is worked out.
STORIES: dict[str, Callable[..., Fraction]] = {
    "area of # and a length of #. Work out its width": lambda area, side: area / side,
    "perimeter of # and a length of #. Work out its width": lambda p, side: p / 2 - side,
    "perimeter of a square is #. Work out the area": lambda p: (p / 4) ** 2,
    "an area of #. One side is # long. Work out the perimeter": lambda a, s: 2 * (s + a / s),
    "a perimeter of #. One side is # long. Work out the area": lambda p, s: s * (p / 2 - s),
    "is a rectangle, # by #. Enough .* for one square metre costs #.": lambda w, h, c: w * h * c,
    "is a rectangle, # by #. It is covered .* Each tile has sides of #.": (
        lambda w, h, tile: (100 * w / tile) * (100 * h / tile)
    ),
    "board is # long and # wide. Work out its area in square cent": lambda w, h: 100 * w * h,
    "A triangle has an area of # and a (?:base|height) of #.": lambda area, side: 2 * area / side,
    "as a rectangle that is # by #. The base of the triangle is #.": lambda p, q, b: 2 * p * q / b,
    "A parallelogram has an area of # and a (?:base|height) of #. Work out its (?:b|h)": (
        lambda area, side: area / side
    ),
    "sides of a parallelogram are # and # long. The height on the side of # is #. Work out the "
    "height on the side of #.": lambda p, q, _, h, other: p * h / q,
    "parallelogram has an area of # and a height of #. Each of its slanted sides is # long": (
        lambda area, h, side: 2 * (area / h + side)
    ),
    "trapezium has an area of #. Its parallel sides are # and # long": (
        lambda area, p, q: 2 * area / (p + q)
    ),
    "trapezium has an area of # and a height of #. One of its parallel sides is #": (
        lambda area, h, p: 2 * area / h - p
    ),
    "is a rectangle, # by #. A fence .* One metre of fence costs #": (
        lambda p, q, c: 2 * (p + q) * c
    ),
    "is # by #. A .* # wide goes all the way round": (
        lambda p, q, w: (p + 2 * w) * (q + 2 * w) - p * q
    ),
    "is # by #. A square with sides of # is cut out of each of its four": (
        lambda p, q, c: p * q - 4 * c**2
    ),
    "is # by #. A right-angled triangle is cut off .* sides of the triangle are # and # long": (
        lambda p, q, c, d: p * q - c * d / 2
    ),
    "A polygon has # sides. Work out the sum of its interior angles": lambda n: 180 * (n - 2),
    "A regular polygon has # sides. Work out the size of each of its ext": lambda n: 360 / n,
    "A regular polygon has # sides. Work out the size of each of its int": (
        lambda n: 180 * (n - 2) / n
    ),
    "Each exterior angle of a regular polygon is #. Work out": lambda e: 180 - e,
    "Three exterior angles of a quadrilateral are #, # and #.": lambda a, b, c: 360 - a - b - c,
    "Each exterior angle of a regular polygon is #. How many": lambda e: 360 / e,
    "The interior angles of a polygon add up to #. How many": lambda s: s / 180 + 2,
    "Each interior angle of a regular polygon is #. How many": lambda i: 360 / (180 - i),
    "Each interior angle of a regular polygon is # times as large": lambda k: 2 * k + 2,
    "The interior angles of a regular polygon add up to #. Work": lambda s: 360 / (s / 180 + 2),
    "Each of the equal sides is # long. The perimeter is #.": lambda s, p: p - 2 * s,
    "A regular pentagon has a perimeter of #": lambda p: p / 5,
    "A regular hexagon has a perimeter of #": lambda p: p / 6,
    "A regular octagon has a perimeter of #": lambda p: p / 8,
    "a regular decagon has a perimeter of #": lambda p: p / 10,
    "A square has the same perimeter as a rectangle that is # by #": lambda w, h: (w + h) / 2,
}


def told(item: Item) -> Fraction:
    """Return the answer to a story."""
    text = asked(item)
    number = r"(£?\d+(?:\.\d+)?(?: ?(?:°|cm\^2|m\^2|cm|m))?)"
    fits = [
        (rule, found)
        for words, rule in STORIES.items()
        if (
            found := re.search(
                words.replace(".", r"\.").replace(r"\.*", ".*").replace("#", number), text
            )
        )
    ]
    assert len(fits) == 1, (text, fits)
    rule, found = fits[0]
    return rule(*map(amount, found.groups()))


def sides_said(text: str) -> dict[str, Fraction]:
    """Return how long the sides of a figure are that say so."""
    found = re.findall(r"Side (\w\w) is (\d+)(?: point (\w+))? (?:centi)?metres?", text)
    digits = {"zero": 0, "five": 5, "two five": 25, "seven five": 75}
    return {side: Fraction(f"{n}.{digits.get(p, p) or 0}") for side, n, p in found}


def drawn(item: Item) -> Fraction:
    """Return the area or perimeter of the shape that is drawn, from what is said of it."""
    text = said(item)
    sides = sides_said(text)
    wanted = "area" if "area" in asked(item) else "perimeter"
    ways = re.search(r"From A they go (.*?)\.", text)
    if ways:
        return around(text, ways[1], sides, wanted)
    high = re.search(r"to side (\w\w), at a right angle to it\. It is (\d+)(?: point (\w+))?", text)
    if wanted == "perimeter":
        return perimeter(text, sides)
    parallel = [*map(set, re.findall(r"The sides (\w\w) and (\w\w) are marked as par", text))]
    if high:
        up = Fraction(f"{high[2]}.{ {'five': 5}.get(high[3], high[3] or 0) }")
        base = sides[high[1]]
        if text.startswith("A triangle"):
            return base * up / 2
        return base * up if len(parallel) == 2 else (base + sides["CD"]) * up / 2
    if text.startswith("A triangle"):
        corner = re.search(r"The angle at (\w) is a right angle", text)
        assert corner
        legs = [length for side, length in sides.items() if corner[1] in side]
        return legs[0] * legs[1] / 2
    # A trapezium with a right angle: the side at it between the parallel ones.
    return (sides["AB"] + sides["CD"]) * sides["DA"] / 2


def perimeter(text: str, sides: dict[str, Fraction]) -> Fraction:
    """Return the perimeter where dashes and arrows say which sides are equal."""
    names = re.search(r"corners (.*?)\.", text)
    assert names
    corners = re.findall(r"[A-H]", names[1])
    round_ = [a + b for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    equal = [
        re.findall(r"[A-H]{2}", group)
        for group in re.findall(r"sides ([^.]*?) are marked as equal", text)
    ]
    if len(re.findall("marked as parallel", text)) == 2:
        equal += [["AB", "CD"], ["BC", "DA"]]
    for group in equal:
        known = next(
            sides.get(s, sides.get(s[::-1])) for s in group if s in sides or s[::-1] in sides
        )
        sides |= dict.fromkeys(group, known)
    total = Fraction(0)
    for side in round_:
        total += sides[side] if side in sides else sides[side[::-1]]
    return total


def around(text: str, ways: str, sides: dict[str, Fraction], wanted: str) -> Fraction:
    """Return the area or perimeter of a shape with right angles alone, walked round."""
    steps = re.findall(r"(right|left|up|down) to (\w)", ways)
    at, path = "A", []
    for way, corner in steps:
        path.append((at + corner, way))
        at = corner
    scale = 100
    equations: list[Equation] = [({side: 1}, int(scale * length)) for side, length in sides.items()]
    for there, back in (("right", "left"), ("up", "down")):
        row = {side: 1 if way == there else -1 for side, way in path if way in (there, back)}
        equations.append((row, 0))
    for first, other in re.findall(r"The sides (\w\w) and (\w\w) are marked as equal", text):
        equations.append(({first: 1, other: -1}, 0))
    if wanted == "perimeter":
        row = {side: 1 for side, _ in path}
        equations.append(({**row, "round": -1}, 0))
        return settled(equations, "round") / scale
    known = {side: settled(equations, side) / scale for side, _ in path}
    x = y = twice = Fraction(0)
    for side, way in path:
        dx, dy = {"right": (1, 0), "left": (-1, 0), "up": (0, 1), "down": (0, -1)}[way]
        a, b = x + dx * known[side], y + dy * known[side]
        twice += x * b - a * y
        x, y = a, b
    assert (x, y) == (0, 0), text
    return abs(twice) / 2


@pytest.mark.parametrize(
    "name",
    [
        "polygon-angles",
        "area-of-rectangles",
        "area-of-triangles",
        "area-of-parallelograms",
        "area-of-trapeziums",
        "compound-area",
        "perimeter",
    ],
)
def test_keys_from_words_alone(name: str) -> None:
    seen = 0
    for item in items(f"geometry.{name}"):
        if item.figure is not None and name == "polygon-angles":
            continue
        found = told(item) if item.figure is None else drawn(item)
        assert amount(line(item.key)) == found, (item.address, asked(item))
        seen += 1
    assert seen > 60


_COMPASS = {
    "east": 90,
    "south-east": 135,
    "south": 180,
    "south-west": 225,
    "west": 270,
    "north-west": 315,
}


def test_bearings() -> None:
    """Each direction as a point of the circle of whole degrees, walked degree by degree."""
    for item in items("geometry.bearings"):
        text = asked(item)
        degrees = [int(n) for n in re.findall(r"(\d+)°", text)]
        if way := re.search(r"s (\S+)\. The \w+ turns \d+° (clockwise|anticlockwise)", text):
            found = _COMPASS[way[1]]
            for _ in range(degrees[0]):
                found = (found + (1 if way[2] == "clockwise" else -1)) % 360
        elif "turns" in text:
            found = sum(degrees) % 360
            if "straight back" in text:
                found = (found + 180) % 360
        elif "between the two" in text:
            gap = abs(degrees[0] - degrees[1])
            found = min(gap, 360 - gap)
        else:
            found = (degrees[0] + 180) % 360
        assert amount(line(item.key)) == found, (item.address, text)
        assert 0 < found < 360


def sides_and_letter(item: Item) -> tuple[Fraction, Fraction, Fraction]:
    """Return the letter of two equal sides, how long they are, and the perimeter or 0."""
    text = said(item)
    labels = dict(re.findall(r"Side (\w\w) is (.*?) (?:centi)?metres?\.", text))
    pair = ("BC", "CA") if text.startswith("A triangle") else ("AB", "CD")
    said_of = [labels[side] for side in pair]
    forms = [(0, "", int(text)) if text.isdigit() else form(text) for text in said_of]
    first, other = (each for each in forms if each)
    (letter,) = {name for _, name, _ in (first, other) if name}
    value = settled([alike(first, other)], letter)
    equal = first[0] * value + first[2]
    rest = [int(labels[side]) for side in labels if side not in pair]
    around = 2 * equal + sum(rest) * (1 if pair[0] == "BC" else 2)
    return value, equal, around if rest else Fraction(0)


def test_equations_from_shapes() -> None:
    for item in items("geometry.form-equations"):
        value, _, around = sides_and_letter(item)
        wanted = value if "value" in asked(item) else around
        assert amount(line(item.key)) == wanted, item.address


def test_equations_formed_from_drawn_stories() -> None:
    topic, seen = find_topic("equations.form-and-solve"), 0
    for tier in (Tier.CORE, Tier.CHALLENGE):
        for item in (topic.item(tier, k) for k in plain(topic, tier)[-40:]):
            if item.figure is None:
                continue
            seen += 1
            wrong = {slip.misconception.id: slip.wrong for slip in item.slips}
            if tier is Tier.CHALLENGE:
                value, equal, around = sides_and_letter(item)
                assert amount(line(item.key)) == around, item.address
                assert amount(line(wrong["equations.letter-only"])) == value
                assert amount(line(wrong["equations.stops-early"])) == equal
                assert amount(line(wrong["equations.two-sides-only"])) == around / 2
                continue
            labels = re.findall(r"The angle at [A-C] is (.*?)\.", said(item))
            forms = [each for each in map(form, labels) if each]
            key = settled([makes(180, *forms)], "x")
            assert line(item.key) == f"x = {key}", item.address
            count, more = sum(n for n, _, _ in forms), sum(n for _, _, n in forms)
            assert line(wrong["equations.angle-sum-360"]) == f"x = {(360 - more) // count}"
            assert line(wrong["equations.same-operation"]) == f"x = {(180 + more) // count}"
    assert seen > 40
