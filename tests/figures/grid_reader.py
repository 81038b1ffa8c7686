"""What is on a coordinate grid, rebuilt from what is said of it to who cannot see it."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

Spot = tuple[Fraction, Fraction]

_COUNT = r"(?:\d+ (?:and a half )?squares?|half a square)"
_WAY = rf"\b({_COUNT}) (left|right) and ({_COUNT}) (up|down)\b"


class GridSaid(NamedTuple):
    """Points and lines by their letters, a line with whether it ends; shapes by their corners."""

    points: dict[str, Spot]
    lines: dict[str, tuple[Spot, Spot, bool]]
    shapes: dict[str, list[Spot]]
    titles: tuple[str, str]


def _squares(text: str) -> Fraction:
    if text == "half a square":
        return Fraction(1, 2)
    return int(text.split()[0]) + (Fraction(1, 2) if "half" in text else Fraction(0))


def grid_said(text: str) -> GridSaid:
    """Return what a grid shows, from its words alone."""
    edges = re.match(r"A grid has x from (.+?) to (.+?) and y from (.+?) to (.+?)\.", text)
    assert edges
    left, _, bottom, _ = (int(group.replace("minus ", "-")) for group in edges.groups())
    steps = re.search(r"A square is (\d+) wide and (\d+) high", text)
    wide, high = map(int, steps.groups()) if steps else (1, 1)
    start = (0, 0) if "the origin" in text else (left, bottom)
    titles = re.search(r"Along it stands (.+?), and up it (.+?)\.", text)

    def place(found: tuple[str, str, str, str]) -> Spot:
        across, way, up, upright = found
        x = _squares(across) * wide * (-1 if way == "left" else 1)
        y = _squares(up) * high * (-1 if upright == "down" else 1)
        return start[0] + x, start[1] + y

    said = GridSaid({}, {}, {}, (titles[1], titles[2]) if titles else ("", ""))
    for sentence in re.split(r"(?<=\.) ", text):
        ways = [place(found) for found in re.findall(_WAY, sentence)]
        if name := re.match(r"The point (\w) is", sentence):
            said.points[name[1]] = ways[0]
        elif name := re.match(r"A (segment|straight line)(?: (\w))? (?:goes|ends)", sentence):
            said.lines[name[2] or ""] = (ways[0], ways[1], name[1] == "segment")
        elif name := re.match(r"A (?:dashed )?(?:shape|path)(?: (\w))? goes", sentence):
            said.shapes[name[1] or ""] = ways
    return said
