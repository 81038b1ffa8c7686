"""Keys on nets, found again by folding the paper itself: corners turned in space, edge by edge.

The rectangles come from what is said to who cannot see the net. Where a face is folded, all that
hangs on it is turned by a right angle about the edge (Rodrigues' formula, from memory), in ordinary
numbers. Nothing here uses the figures' own readings.
"""

from __future__ import annotations

import random
import re

import pytest

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.line import line
from tests.depth import cases, whole
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import each_mistake

COUNT = cases(30, 80, 80)
Place = tuple[float, float, float]
Rect = tuple[int, int, int, int]


def rectangles(text: str) -> dict[str, Rect]:
    found: dict[str, Rect] = {}
    for called, column, row in re.findall(r"(\w|A square) is in column (\d+).*?row (\d+)", text):
        name = called if len(called) == 1 else f"part {len(found)}"
        found[name] = (int(column), int(row), 1, 1)
    for numbers in re.findall(
        r"A rectangle is (\d+) \w+ wide and (\d+) \w+ high, (\d+) \w+ from the left and (\d+)", text
    ):
        w, h, x, y = map(int, numbers)
        found[f"part {len(found)}"] = (x, y, w, h)
    return found


def pieces(item: Item) -> dict[str, dict[str, Rect]]:
    said = words(item.figure)
    if "Shape " not in said:
        return {"": rectangles(said)}
    parts = re.split(r"Shape (\w) is", said)[1:]
    return {name: rectangles(text) for name, text in zip(parts[::2], parts[1::2], strict=True)}


def minus(a: Place, b: Place) -> Place:
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def cross(a: Place, b: Place) -> Place:
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def dot(a: Place, b: Place) -> float:
    return sum(x * y for x, y in zip(a, b, strict=True))


def turned(at: Place, start: Place, end: Place) -> Place:
    """Turn a place by a right angle about the line from one place to another."""
    way = minus(end, start)
    long = dot(way, way) ** 0.5
    axis = (way[0] / long, way[1] / long, way[2] / long)
    arm = minus(at, start)
    along, aside = dot(arm, axis), cross(axis, arm)
    return tuple(start[k] + aside[k] + axis[k] * along for k in range(3))  # type: ignore[return-value]


def corners(rect: Rect) -> list[Place]:
    x, y, w, h = rect
    return [(x, y, 0), (x + w, y, 0), (x + w, y + h, 0), (x, y + h, 0)]


def shared(one: list[Place], other: list[Place]) -> tuple[Place, Place] | None:
    """Return the edge that two faces share whole, with the second on its right."""
    for k in range(4):
        a, b = one[k], one[(k + 1) % 4]
        if a in other and b in other:
            return a, b
    return None


def folded(rects: dict[str, Rect]) -> dict[str, list[Place]]:
    """Return the corners of each face in space, all folded up from the first."""
    flat = {name: corners(rect) for name, rect in rects.items()}
    first, *_ = flat
    parent: dict[str, str] = {first: ""}
    order = [first]
    for name in order:
        for other in flat:
            if other not in parent and shared(flat[name], flat[other]):
                parent[other] = name
                order.append(other)
    assert len(order) == len(flat)
    space = dict(flat)
    for name in reversed(order[1:]):
        a, b = shared(flat[parent[name]], flat[name])  # type: ignore[misc]
        hanging = [name]
        for text in hanging:
            hanging += [child for child, above in parent.items() if above == text]
        for text in hanging:
            # Round a face against the clock its neighbour is on the right of the edge: up is back.
            space[text] = [turned(at, b, a) for at in space[text]]
    return space


def middle(face: list[Place]) -> Place:
    return tuple(round(sum(at[k] for at in face) / 4, 6) for k in range(3))  # type: ignore[return-value]


def spans(space: dict[str, list[Place]]) -> list[float]:
    every = [at for face in space.values() for at in face]
    return [max(at[k] for at in every) - min(at[k] for at in every) for k in range(3)]


def is_box(space: dict[str, list[Place]]) -> bool:
    """Tell whether six faces lie in the six planes round what they take up, one in each."""
    every = [at for face in space.values() for at in face]
    ends = [(min(at[k] for at in every), max(at[k] for at in every)) for k in range(3)]
    planes = set()
    for face in space.values():
        for k in range(3):
            for end in (0, 1):
                if all(abs(at[k] - ends[k][end]) < 1e-6 for at in face):
                    planes.add((k, end))
    return len(space) == len(planes) == 6 and min(spans(space)) > 0.5


def sampled(tier: Tier) -> list[Item]:
    topic = find_topic("geometry.nets")
    chance = random.Random(f"nets {tier}")
    # Who says what the answer is has a test of its own.
    return [topic.item(tier, k) for k in chance.sample(topic.spaces[tier].own, COUNT)]


@whole
@pytest.mark.parametrize("tier", list(Tier))
def test_keys_are_what_folding_gives(tier: Tier) -> None:
    kinds = set()
    for item in sampled(tier):
        text, found = text_of(item), pieces(item)
        if "net of a cube" in text:
            kinds.add("which")
            cubes = [name for name, rects in found.items() if is_box(folded(rects))]
            assert [item.key.text] == cubes, item.address
            continue
        space = folded(found[""])
        assert is_box(space), item.address
        a, b, c = (round(span) for span in spans(space))
        if "opposite" in text:
            kinds.add("opposite")
            own = re.search(r"face (\w)\?", text)[1]
            gaps = {
                name: max(abs(x) for x in minus(middle(face), middle(space[own])))
                for name, face in space.items()
            }
            assert [item.key.text] == [name for name, gap in gaps.items() if gap > 0.9]
        elif "volume" in text:
            kinds.add("volume")
            assert line(item.key) == f"{a * b * c} cm^3"
        else:
            kinds.add("surface")
            total = sum(w * h for _, _, w, h in found[""].values())
            assert line(item.key) == f"{total} cm^2"
    assert len(kinds) == {Tier.SUPPORT: 1, Tier.CORE: 2, Tier.CHALLENGE: 2}[tier]


@whole
def test_mistakes_are_what_the_wrong_ways_give() -> None:
    met = set()
    for item in [item for tier in Tier for item in sampled(tier)]:
        text, found = text_of(item), pieces(item)
        for slip in each_mistake(item):
            name = slip.misconception.id.removeprefix("geometry.nets-")
            met.add(name)
            if isinstance(slip.wrong, t.Label) and "opposite" in text:
                rects = found[""]
                own, other = rects[re.search(r"face (\w)\?", text)[1]], rects[slip.wrong.text]
                apart = sorted((abs(own[0] - other[0]), abs(own[1] - other[1])))
                if name == "furthest":
                    far = [(own[0] - x) ** 2 + (own[1] - y) ** 2 for x, y, _, _ in rects.values()]
                    assert apart[0] ** 2 + apart[1] ** 2 == max(far)
                else:
                    assert apart == {"next": [0, 1], "corner": [1, 1]}[name]
            elif isinstance(slip.wrong, t.Label):
                assert fault_of(found[slip.wrong.text]) == name, item.address
            else:
                sizes = [round(span) for span in spans(folded(found[""]))]
                a, b, c = sizes
                half = a * b + b * c + a * c
                expected = {
                    "half": f"{half} cm^2",
                    "volume-for-surface": f"{a * b * c} cm^2",
                    "surface-for-volume": f"{2 * half} cm^3",
                    "edges-added": f"{a + b + c} cm^3",
                }[name]
                assert line(slip.wrong) == expected, item.address
    topic = find_topic("geometry.nets")
    assert met == {m.id.removeprefix("geometry.nets-") for m in topic.misconceptions}


def fault_of(rects: dict[str, Rect]) -> str:
    """Return what keeps a shape of six squares from being a net of a cube, the plainest first."""
    at = {(x, y) for x, y, _, _ in rects.values()}
    for dx, dy in ((1, 0), (0, 1)):
        if any({(x + k * dx, y + k * dy) for k in range(5)} <= at for x, y in at):
            return "long-row"
    if any({(x, y), (x + 1, y), (x, y + 1), (x + 1, y + 1)} <= at for x, y in at):
        return "block"
    middles = [middle(face) for face in folded(rects).values()]
    assert len({*middles}) < 6
    return "same-side"
