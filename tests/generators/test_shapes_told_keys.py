"""Keys of short questions on shapes, journeys and buses, found again from their words.

Areas and faces are counted square by square, solids are built from their corners, times go
through `datetime`, corners of kites are looked for on a grid, and lengths of similar shapes are
compared crosswise: nothing here uses the formulas of the topics.
"""

import re
from collections.abc import Callable
from datetime import datetime, timedelta
from fractions import Fraction
from itertools import product
from math import dist

import pytest

from itembank.items.topics.registry import find_topic
from itembank.notation.line import line
from tests.depth import whole
from tests.generators.told_in_words import COUNT, text_of, told

MODULES = (
    *("_journeys_told", "_conversions_told", "_buses_told", "_shapes_told", "_loci_told"),
    *("_plans_told", "_solids_told", "_enlarged_told", "_boxes_told"),
    *("_constructions_told", "_symmetry_told", "_form_told"),
)
_NUMBER = r"-?\d+(?:\.\d+)?"
_POINT = r"\((-?\d+), (-?\d+)\)"
Fits = Callable[[str, str], bool]


def amounts(text: str) -> list[Fraction]:
    """Return the numbers of a text, without the exponents of units."""
    return [Fraction(each) for each in re.findall(_NUMBER, re.sub(r"\^\d", "", text))]


def points(text: str) -> list[tuple[int, int]]:
    return [(int(x), int(y)) for x, y in re.findall(_POINT, text)]


def only(text: str) -> Fraction:
    (value,) = amounts(text)
    return value


def journey(text: str, answer: str) -> bool:
    found, value = amounts(text), only(answer)
    if "stop?" in text:
        times = [Fraction(each) for each in re.findall(r"(\d+) min", text)]
        return times[0] + value == times[1]
    hours = [Fraction(each) for each in re.findall(r"(\d+) h", text)]
    ways = [Fraction(each) for each in re.findall(r"(\d+) km", text)]
    assert len(hours) + len(ways) == len(found)
    if "average" in text:
        return value * sum(hours) == sum(ways)
    return ways[0] + value * (hours[1] - hours[0]) == ways[1]


def conversion(text: str, answer: str) -> bool:
    names = re.search(rf"graph ({_NUMBER}) (\w+) are ({_NUMBER}) (\w+)\. How many (\w+) are", text)
    assert names, text
    known = {names[2]: Fraction(names[1]), names[4]: Fraction(names[3])}
    asked = re.search(rf"are ({_NUMBER})(?: and ({_NUMBER}))? (\w+)(?: together)?\?", text)
    assert asked
    assert {asked[3], names[5]} == {*known}
    amount = Fraction(asked[1]) + Fraction(asked[2] or 0)
    return only(answer) * known[asked[3]] == amount * known[names[5]]


def at(text: str) -> datetime:
    return datetime.strptime(text, "%H:%M")


def lasts(text: str) -> timedelta:
    """Return a length of time such as 1 h 20 min."""
    hours, minutes = re.search(r"(\d+) h\b", text), re.search(r"(\d+) min", text)
    return timedelta(hours=int(hours[1]) if hours else 0, minutes=int(minutes[1]) if minutes else 0)


def bus(text: str, answer: str) -> bool:
    times = [at(each) for each in re.findall(r"\d\d:\d\d", text)]
    if "wait" in text:
        (come,) = [at(each) for each in re.findall(r"get (?:there|to the stop) at (\S+)\.", text)]
        later = min(time for time in times if time > come)
        return come + lasts(answer) == later
    if len(times) == 2:
        return times[0] + lasts(answer) == times[1]
    spans = [lasts(each) for each in re.findall(r"\d+ min", text)]
    return at(answer) == times[0] + sum(spans, timedelta())


def shape(text: str, answer: str) -> bool:
    if "perimeter" in text:
        a, b = amounts(text)
        return only(answer) == a + b + a + b
    if "next to it" in text:
        return only(answer) + only(text) == 180
    if "isosceles" in text:
        return 2 * only(answer) + only(text) == 180
    a, b, c = points(text)
    (d,) = points(answer)
    # A and C are each as far from D as from B, and D is another place.
    return d != b and all(dist(end, b) == dist(end, d) for end in (a, c))


def locus(text: str, answer: str) -> bool:
    a, b = points(text)
    if "axis" in text:
        ((x, y),) = points(answer)
        on_axis = x == 0 if "y-axis" in text else y == 0
        return on_axis and dist((x, y), a) == dist((x, y), b)
    if "equation" in text:
        letter, _, value = answer.partition(" = ")
        k = float(value)
        places = [(k, v) if letter == "x" else (v, k) for v in (-7, 0, 11)]
        return all(abs(dist(p, a) - dist(p, b)) < 1e-9 for p in places)
    return dist(a, b) == float(answer)


def view(text: str, answer: str) -> bool:
    if "volume" in text:
        wide, plan, front = amounts(text)
        fits = [
            wide * deep * high
            for deep, high in product(range(1, 30), repeat=2)
            if (wide * deep, wide * high) == (plan, front)
        ]
        return [only(answer)] == fits
    wide, deep, high = map(int, amounts(text))
    cells = set(product(range(wide), range(deep), range(high)))
    gone = {"plan": 2, "front": 1, "side": 0}[re.search("plan|front|side", text)[0]]  # type: ignore[index]
    seen = {tuple(v for n, v in enumerate(cell) if n != gone) for cell in cells}
    return len(seen) == only(answer)


def parts(shape: str, n: int) -> dict[str, int]:
    """Return how many faces, edges and vertices a solid has, from the corners of its faces."""
    low = [(k, 0) for k in range(n)]
    if shape == "prism":
        high = [(k, 1) for k in range(n)]
        walls = [(low[k], low[(k + 1) % n], high[(k + 1) % n], high[k]) for k in range(n)]
        faces = [tuple(low), tuple(high), *walls]
    else:
        faces = [tuple(low), *((low[k], low[(k + 1) % n], (0, 2)) for k in range(n))]
    edges = {
        frozenset((a, b)) for face in faces for a, b in zip(face, face[1:] + face[:1], strict=True)
    }
    corners = {corner for face in faces for corner in face}
    return {"faces": len(faces), "edges": len(edges), "vertices": len(corners)}


def solid(text: str, answer: str) -> bool:
    name = "prism" if "prism" in text else "pyramid"
    wanted = re.search(r"How many (\w+)", text)
    assert wanted
    if "with" in text:
        return parts(name, int(only(text)))[wanted[1]] == only(answer)
    told_of = re.search(r"has \d+ (\w+)\.", text)
    assert told_of
    fits = [n for n in range(3, 60) if parts(name, n)[told_of[1]] == only(text)]
    if wanted[1] == "sides":
        return fits == [only(answer)]
    return [parts(name, n)[wanted[1]] for n in fits] == [only(answer)]


def similar(text: str, answer: str) -> bool:
    a, b, c = amounts(text)
    if "shadow" in text:  # both stand to their shadows alike
        return (a + only(answer)) * b == a * c
    return only(answer) * a == c * b


def grown(text: str, answer: str) -> bool:
    value = only(answer)
    if "multiplied" in text or "What is its area" in text:
        area, k = amounts(text)
        return value == area * k * k
    if "scale factor?" in text:
        first, second = amounts(text)
        return value > 0 and first * value * value == second
    first, second, side = amounts(text)
    return value > 0 and (value / side) ** 2 == second / first


def surface(text: str, answer: str) -> bool:
    p, q, r = (int(amount) for amount in amounts(text))
    cubes = set(product(range(p), range(q), range(r)))
    ways = [(1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1)]
    bare = [
        way
        for cube in cubes
        for way in ways
        if tuple(u + v for u, v in zip(cube, way, strict=True)) not in cubes
    ]
    lid = bare.count((0, 0, 1)) if "open box" in text else 0
    return only(answer) == len(bare) - lid


def bisector(text: str, answer: str) -> bool:
    value = only(answer)
    if "triangle" in text:
        a, b = amounts(text)
        # Angle ADC, beside it, is outside triangle ABD: as large as A's half and B together.
        return 2 * (180 - value) == a + b + b
    if "whole angle" in text or "How large was" in text:
        return value - only(text) == only(text)
    if "smallest" in text or "new parts" in text:
        return value + value + value + value == only(text)
    return value + value == only(text)


def corner(text: str, answer: str) -> bool:
    p, *rest = points(text)
    (q,) = points(answer)
    middle = [Fraction(u + v, 2) for u, v in zip(p, q, strict=True)]
    if rest:
        return middle == [*rest[0]]
    letter, value = re.search(r"([xy]) = (-?\d+)", text).groups()  # type: ignore[union-attr]
    at = "xy".index(letter)
    return middle[at] == int(value) and p[1 - at] == q[1 - at]


def sides(text: str, answer: str) -> bool:
    """Put numbers for the letter, one after the other, until the perimeter is right."""
    x = re.search(r"What is ([a-z])\?|Sides of ([a-z])", text)
    assert x
    letter = x[1] or x[2]
    total = int(re.search(r"perimeter (?:is|of) (\d+)", text)[1])  # type: ignore[index]
    found = re.findall(rf"(\d*){letter}\b(?: ([+-]) (\d+))?", text.split("perimeter")[0])
    terms = [(int(a or 1), int(f"{sign}{b}" if b else 0)) for a, sign, b in found]
    every = {1: 4, 2: 2, 3: 1}[len(terms)]
    fits = [v for v in range(1, 200) if every * sum(a * v + b for a, b in terms) == total]
    assert len(fits) == 1
    lengths = [a * fits[0] + b for a, b in terms]
    return only(answer) == (max(lengths) if "longest" in text else fits[0])


FITS: dict[str, Fits] = {
    "graphs.distance-time": journey,
    "graphs.conversion": conversion,
    "measures.timetables": bus,
    "geometry.shapes": shape,
    "geometry.loci": locus,
    "geometry.plans": view,
    "geometry.solids": solid,
    "geometry.similarity": similar,
    "geometry.scale-factors-area": grown,
    "geometry.surface-area": surface,
    "geometry.constructions": bisector,
    "geometry.symmetry": corner,
    "geometry.form-equations": sides,
}
WITH_OWN_SHORT_ONES = ("geometry.surface-area",)
"""Of which a tier has questions without a picture of its own."""


@whole
@pytest.mark.parametrize("name", FITS)
def test_keys_of_what_is_told_fit_its_words_and_wrong_answers_do_not(name):
    items = list(told(name, MODULES))
    assert len(items) >= 1.5 * COUNT
    for item in items:
        text = text_of(item)
        assert FITS[name](text, line(item.key)), (text, line(item.key))
        wrong = [line(slip.wrong) for slip in item.slips]
        assert len(wrong) >= 2
        assert not [each for each in wrong if FITS[name](text, each)], text


@pytest.mark.parametrize("name", [name for name in FITS if name != "geometry.symmetry"])
def test_each_tier_has_its_share_of_short_questions(name):
    topic, every = find_topic(name), list(told(name, MODULES, 10**4))
    for tier, space in topic.spaces.items():
        short = [item for item in every if item.tier is tier]
        if name in WITH_OWN_SHORT_ONES and not short:
            short = [
                item
                for item in (topic.item(tier, index) for index in range(len(space)))
                if item.figure is None and len(text_of(item)) <= 100
            ]
        assert len(short) >= max(30, 0.15 * len(space)), tier
        assert all(item.figure is None and len(text_of(item)) <= 112 for item in short)
