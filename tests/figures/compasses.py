"""Does with compasses what the words of a construction say, in ordinary numbers.

Nothing is taken from the figure but its words. What is not said (how wide an angle is, before
anything is given) is a free number, which `fitted` finds from what is given.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable

At = complex
Placed = dict[str, At]


def crossings(a: At, r: float, b: At, s: float) -> tuple[At, At]:
    """Return where two circles cross: on the left of the way from a to b, and on the right."""
    far = abs(b - a)
    along = (far**2 + r**2 - s**2) / (2 * far)
    aside = math.sqrt(r**2 - along**2)
    way = (b - a) / far
    return a + way * complex(along, aside), a + way * complex(along, -aside)


def halving(vertex: At, first: At, other: At) -> At:
    """Return where equal arcs from the arms of an angle cross, away from its vertex."""
    p, q = (vertex + (at - vertex) / abs(at - vertex) for at in (first, other))
    return max(crossings(p, 1.3, q, 1.3), key=lambda at: abs(at - vertex))


def placed(text: str, free: float) -> Placed:
    """Return the points of a construction; `free` degrees are what its words leave open."""
    if found := re.match(
        r"Arcs of one radius round (.) and (.), the ends of a line, cross at (.) and (.)\. "
        r"The line \3\4 crosses \1\2 at (.)\.",
        text,
    ):
        a, b, c, d, m = found.groups()
        radius = 1 / math.cos(math.radians(free))
        up, down = crossings(-1, radius, 1, radius)
        return {a: -1 + 0j, b: 1 + 0j, c: up, d: down, m: complex(up.real, 0)}
    if found := re.match(
        r"(.) is beside the line (.)(.)\. An arc round \1 crosses the line twice\. Arcs of the "
        r"same radius round these crossings cross at (.)\. The line \1\4 crosses \2\3 at (.)\.",
        text,
    ):
        p, a, b, q, n = found.groups()
        radius = 1.5
        aside = math.sqrt(radius**2 - 1)
        other = min(crossings(-aside, radius, aside, radius), key=lambda at: at.imag)
        return {p: 1j, a: -2 + 0j, b: 2.3 + 0j, q: other, n: complex(other.real, 0)}
    return _angle(text, free)


def _angle(text: str, free: float) -> Placed:
    if found := re.match(r"Lines go from (.) to (.) and to (.)\.", text):
        b, a, c = found.groups()
        points = {b: 0j, c: 1 + 0j, a: complex(*_way(free))}
    elif found := re.match(
        r"Arcs round (.) and (.) with the radius \1\2 cross at (.)\. \3 is joined to \1 and \2\.",
        text,
    ):
        b, c, a = found.groups()
        points = {b: 0j, c: 1 + 0j, a: crossings(0, 1, 1, 1)[0]}
    else:
        found = re.match(
            r"(.) is on a line that goes on to (.)\. An arc round \1 crosses the line on both "
            r"sides of \1\. Arcs of one radius round these crossings cross at (.)\. \3 is "
            r"joined to \1\.",
            text,
        )
        assert found, text
        b, c, a = found.groups()
        points = {b: 0j, c: 1 + 0j, a: crossings(-1, 1.7, 1, 1.7)[0]}
    for near, far, new in re.findall(
        r"An arc round . crosses .(.) and .(.)\. Arcs of one radius round these crossings cross at "
        r"(.), and",
        text,
    ):
        points[new] = halving(points[b], points[near], points[far])
    return points


def _way(degrees: float) -> tuple[float, float]:
    turn = math.radians(degrees)
    return math.cos(turn), math.sin(turn)


def measure(points: Placed, name: str) -> float:
    """Return a length, or an angle in degrees, by the letters of its points."""
    at = [points[letter] for letter in name]
    if len(at) == 2:
        return abs(at[0] - at[1])
    first, last = at[0] - at[1], at[2] - at[1]
    return abs(math.degrees(math.atan2((last / first).imag, (last / first).real)))


def fitted(text: str, fits: Callable[[Placed], float]) -> Placed:
    """Return the points for which `fits`, which rises or falls steadily, comes to nought."""
    low, high = 1.0, 89.0 if text.startswith("Arcs of one radius") else 179.0
    rises = fits(placed(text, high)) > fits(placed(text, low))
    for _ in range(60):
        middle = (low + high) / 2
        if (fits(placed(text, middle)) < 0) == rises:
            low = middle
        else:
            high = middle
    return placed(text, (low + high) / 2)
