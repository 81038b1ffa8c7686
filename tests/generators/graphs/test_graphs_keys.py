"""Keys of graph topics found again from what is printed and said, by fractions and brute force.

Nothing here uses the figures' own readings: points and lines are rebuilt from the words for who
cannot see them.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from fractions import Fraction
from itertools import pairwise

import pytest

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation.line import line
from tests.depth import cases, whole
from tests.figures.grid_reader import GridSaid, Spot, grid_said

pytestmark = whole
COUNT = cases(8, 60, 30)
"""So many questions of a tier."""


def text_of(item: Item) -> str:
    """Return the prompt as text, minus signs as they are typed."""
    shown = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
    return shown.replace("−", "-")


def seen(item: Item) -> GridSaid:
    assert item.figure is not None
    return grid_said(words(item.figure))


def numbers(text: str) -> list[Fraction]:
    return [Fraction(each) for each in re.findall(r"-?\d+(?:\.\d+)?(?:/\d+)?", text)]


def written(place: tuple[Fraction, Fraction]) -> str:
    return "(" + ", ".join(str(float(v)).removesuffix(".0") for v in place) + ")"


def coordinates(item: Item) -> str:
    text, said = text_of(item), seen(item)
    if found := re.match(r"Which point is at (.+)\?", text):
        (name,) = [n for n, at in said.points.items() if [*at] == numbers(found[1])]
        return f'"{name}"'
    if found := re.fullmatch(r"(?:Write down|What are) the coordinates of ([A-Z])[.?]", text):
        return written(said.points[found[1]])
    found = re.fullmatch(r"Write down the coordinates of D so that ABCD is a (\w+)\.", text)
    assert found
    return written(_fourth(found[1], said.points))


def _fourth(shape: str, points: dict[str, Spot]) -> Spot:
    """Try every place of the grid for the corner that makes the shape, in order round it."""
    a, b, c = (points[name] for name in "ABC")
    fits = []
    for x in range(-20, 21):
        for y in range(-20, 21):
            d = (Fraction(x), Fraction(y))
            ways = [(q[0] - p[0], q[1] - p[1]) for p, q in ((a, b), (b, c), (c, d), (d, a))]
            opposite = all(
                ways[k][0] == -ways[k + 2][0] and ways[k][1] == -ways[k + 2][1] for k in (0, 1)
            )
            right = ways[0][0] * ways[1][0] + ways[0][1] * ways[1][1] == 0
            long = [u * u + v * v for u, v in ways]
            wanted = {"parallelogram": True, "rectangle": right}
            if opposite and wanted.get(shape, right and len({*long}) == 1):
                fits.append(d)
    (corner,) = fits
    return corner


def midpoints(item: Item) -> str:
    """Halfway: as far from the one end as from the other."""
    text = text_of(item)
    if item.figure is not None:
        ends = [*seen(item).points.values()]
    else:
        found = numbers(text)
        ends = [(found[0], found[1]), (found[2], found[3])]
    (a, b), (c, d) = ends
    if "is the midpoint of" in text:
        return written((c + (c - a), d + (d - b)))
    return written((a + (c - a) / 2, b + (d - b) / 2))


def gradient(item: Item) -> str:
    text = text_of(item)
    if item.figure is not None:
        said = seen(item)
        ((a, b, _),) = said.lines.values()
        return str(_slope(a, b))
    found = numbers(text)
    if "has a gradient of" in text:
        x, y, u, m = found
        return str(y + m * (u - x))
    return str(_slope((found[0], found[1]), (found[2], found[3])))


def _slope(a: Spot, b: Spot) -> Fraction:
    """Return how much y grows for each 1 of x."""
    return (b[1] - a[1]) / (b[0] - a[0])


def intercept(item: Item) -> str:
    """Go along the line by trying: y for two values of x, and x where y is nought."""
    text = text_of(item)
    across, up, rest = equation_of(re.search(r"line (.+?)(?:\?| cross)", text)[1])

    def height(x: int) -> Fraction:
        return -(across * x + rest) / up

    if "gradient" in text:
        return str(height(1) - height(0))
    if "y-intercept" in text:
        return str(height(0))
    return str(-rest / across)


def equation_of(text: str) -> tuple[Fraction, Fraction, Fraction]:
    """Return the numbers of x, of y and alone in an equation, all on one side."""
    counts = [Fraction(0)] * 3
    for side, sign in zip(text.split("="), (1, -1), strict=True):
        terms = re.sub(r"\((\d+/\d+)\)", r"\1", side).replace(" ", "").replace("-", "+-")
        for term in filter(None, terms.split("+")):
            letter = term[-1] if term[-1] in "xy" else ""
            size = term.removesuffix(letter) if letter else term
            size = {"": "1", "-": "-1"}.get(size, size)
            counts["xy".find(letter) if letter else 2] += sign * Fraction(size)
    return counts[0], counts[1], counts[2]


def height_at(text: str, x: Fraction) -> Fraction:
    across, up, rest = equation_of(text)
    return -(across * x + rest) / up


def equation_of_line(item: Item) -> str:
    text, lines = text_of(item), seen(item).lines
    if found := re.match(r"Which line has the equation (.+)\?", text):
        fits = [
            name
            for name, (a, b, _) in lines.items()
            if all(height_at(found[1], x) == y for x, y in (a, b))
        ]
        (name,) = fits
        return f'"{name}"'
    ((a, b, _),) = lines.values()
    # The key itself is tried at both places; it is told by its text alone where both fit.
    key = line(item.key)
    assert all(height_at(key, x) == y for x, y in (a, b))
    assert re.fullmatch(r"y = (?:-?\d*|-?\(\d+/\d+\))x(?: [+-] \d+)?", key)
    return key


def lines_by_table(item: Item) -> str:
    text = text_of(item)
    if found := re.match(r"A table of values is made for (.+)\. What is y when x = (.+)\?", text):
        return str(height_at(found[1], Fraction(found[2])))
    if found := re.match(r"The point \(k, (.+)\) lies on the line (.+)\. Work", text):
        (x,) = [x for x in range(-60, 60) if height_at(found[2], Fraction(x)) == Fraction(found[1])]
        return str(x)
    if found := re.match(r"Which point lies on the line (.+)\?", text):
        (name,) = [n for n, (x, y) in seen(item).points.items() if height_at(found[1], x) == y]
        return f'"{name}"'
    found = re.match(r"Which line passes through (.+)\?", text)
    assert found
    x, y = numbers(found[1])
    (name,) = [n for n, (a, b, _) in seen(item).lines.items() if _on(a, b, (x, y))]
    return f'"{name}"'


def _on(a: Spot, b: Spot, c: Spot) -> bool:
    return (b[0] - a[0]) * (c[1] - a[1]) == (b[1] - a[1]) * (c[0] - a[0])


def parallel_lines(item: Item) -> str:
    text = text_of(item)
    if found := re.match(r"Which line is parallel to the line (.+)\?", text):
        steep = height_at(found[1], Fraction(1)) - height_at(found[1], Fraction(0))
        (name,) = [n for n, (a, b, _) in seen(item).lines.items() if _slope(a, b) == steep]
        return f'"{name}"'
    if found := re.match(r"A line is parallel to (.+) and goes through (\(.+\))\. At", text):
        steep = height_at(found[1], Fraction(1)) - height_at(found[1], Fraction(0))
        x, y = numbers(found[2])
        return str(y - steep * x)
    found = re.match(r"What is the equation of the line through (.+) parallel to line L\?", text)
    assert found
    ((a, b, _),) = seen(item).lines.values()
    key, (x, y) = line(item.key), numbers(found[1])
    assert height_at(key, x) == y
    assert height_at(key, x + 1) - y == _slope(a, b)
    return key


def simultaneous(item: Item) -> str:
    """Walk the grid in halves for the one place that is on both lines."""
    text = text_of(item)
    found = re.search(r"solve (.+?)(?: and (.+))?\.", text)
    if found and not found[2]:
        left, _, level = found[1].partition(" = ")
        ((a, b, _),) = seen(item).lines.values()
        assert all(height_at(f"y = {left}", x) == y for x, y in (a, b))
        (x,) = [x for x in halves() if height_at(f"y = {left}", x) == int(level)]
        return f"x = {x}"
    if found:
        drawn = [*seen(item).lines.values()]
        for equation in found.groups():
            fits = [all(height_at(equation, x) == y for x, y in (a, b)) for a, b, _ in drawn]
            assert fits.count(True) == 1
        (x,) = [x for x in halves() if height_at(found[1], x) == height_at(found[2], x)]
        return f"x = {x}, y = {height_at(found[1], x)}"
    (a, b, _), (c, d, _) = seen(item).lines.values()
    places = [(x, y) for x in halves() for y in halves()]
    ((x, y),) = [place for place in places if _on(a, b, place) and _on(c, d, place)]
    return written((x, y))


def halves() -> list[Fraction]:
    return [Fraction(n, 2) for n in range(-20, 21)]


def quadratic_table(item: Item) -> str:
    """Work y out by adding x to itself, and look for x among whole numbers."""
    text = text_of(item)
    if found := re.match(
        r"A table of values is made for y = (.+)\. What is y when x = (.+)\?", text
    ):
        return str(quadratic(found[1], int(found[2])))
    found = re.match(r"For the curve y = (.+), find both values of x where y = (.+)\.", text)
    assert found
    low, high = [x for x in range(-50, 51) if quadratic(found[1], x) == int(found[2])]
    return f"x = {low} or x = {high}"


def quadratic(text: str, x: int) -> int:
    total = 0
    for sign, size, power in re.findall(r"([+-]?) ?(\d*)(x\^2|x|)(?= |$)", text):
        if size or power:
            times = {"x^2": abs(sum([x] * abs(x))), "x": x, "": 1}[power]
            total += (-1 if sign == "-" else 1) * int(size or 1) * times
    return total


def conversion(item: Item) -> str:
    found = re.match(r"How many (.+) are ([\d.]+) (.+)\?", text_of(item))
    assert found
    said = seen(item)
    ((a, b, _),) = said.lines.values()
    assert a == (0, 0)
    along, up = (title.casefold() for title in said.titles)
    amount = Fraction(found[2])
    if (found[3], found[1]) == (along, up):
        value = amount * b[1] / b[0]
    else:
        assert (found[3], found[1]) == (up, along)
        value = amount * b[0] / b[1]
    return str(float(value)).removesuffix(".0")


def distance_time(item: Item) -> str:
    """Walk along each journey in small steps of time, noting where it is."""
    text, said = text_of(item), seen(item)
    time, (place, unit) = (
        said.titles[0][6:-1],
        re.findall(r"from (\w+) \((\w+)\)", said.titles[1])[0],
    )
    assert {"km": "kilometres", "m": "metres"}[unit] in text or time in text
    assert place in text
    walks = {name: _walk(corners) for name, corners in said.shapes.items()}
    if "overtake" in text:
        first, second = walks["A"], walks["B"]
        (met,) = [x for x in first if x in second and first[x] == second[x] and x < max(second)]
        return _decimal(met)
    (walk,) = walks.values()
    if found := re.search(r"is the \w+ after ([\d.]+) ", text):
        return _decimal(walk[Fraction(found[1])])
    if found := re.search(r"is the \w+ ([\d.]+) \w+ from", text):
        (x,) = [x for x in walk if walk[x] == Fraction(found[1])]
        return _decimal(x)
    times = sorted(walk)
    still = [b - a for a, b in pairwise(times) if walk[a] == walk[b]]
    if "stop?" in text and "speed" not in text:
        return _decimal(sum(still))
    gone = {b: abs(walk[b] - walk[a]) for a, b in pairwise(times)}
    if "altogether" in text:
        return _decimal(sum(gone.values()))
    hour = 60 if (time, "per hour" in text) == ("minutes", True) else 1
    end = times[-1]
    if "whole journey" in text:
        return _decimal(sum(gone.values()) / end * hour)
    if found := re.search(r"in the (first|last) (\d+)", text):
        long = Fraction(found[2])
        low = Fraction(0) if found[1] == "first" else end - long
    else:
        # Back from the farthest place, or on from the last moment of the stop.
        low = max(b for a, b in pairwise(times) if walk[a] == walk[b])
        long = end - low
    return _decimal(sum(gone[x] for x in times if low < x <= low + long) / long * hour)


def _walk(corners: list[Spot]) -> dict[Fraction, Fraction]:
    """Return the distance at each 24th part of every piece's time."""
    found = {}
    for (a, b), (c, d) in pairwise(corners):
        for part in range(25):
            found[a + (c - a) * part / 24] = b + (d - b) * part / 24
    return found


def _decimal(value: Fraction) -> str:
    return str(float(value)).removesuffix(".0")


KEYS: dict[str, Callable[[Item], str]] = {
    "graphs.coordinates": coordinates,
    "graphs.midpoints": midpoints,
    "graphs.gradient": gradient,
    "graphs.intercept": intercept,
    "graphs.equation-of-line": equation_of_line,
    "graphs.lines-by-table": lines_by_table,
    "graphs.parallel-lines": parallel_lines,
    "graphs.simultaneous": simultaneous,
    "graphs.quadratic-table": quadratic_table,
    "graphs.conversion": conversion,
    "graphs.distance-time": distance_time,
}


@pytest.mark.parametrize("name", KEYS)
def test_keys_are_found_again(name: str) -> None:
    topic = find_topic(name)
    for tier in Tier:
        own = topic.spaces[tier].own
        for index in random.Random(f"{name} {tier}").sample(own, min(len(own), COUNT)):
            item = topic.item(tier, index)
            assert line(item.key) == KEYS[name](item), (item.address, text_of(item))
