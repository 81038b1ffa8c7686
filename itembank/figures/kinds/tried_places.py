"""The places that a label is tried at, the best first: in an angle, or beside a line."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from itembank.figures.drawing import Content
from itembank.figures.kinds.near_marks import FAR, GAP, Near
from itembank.figures.kinds.placed_labels import half_size
from itembank.notation import tree as t

_STEP = 0.15
"""How far the places along one direction are apart."""
_OFF = 2e-3
"""More than a place is moved by when it is rounded to the nearest thousandth."""
_FREE_OF = FAR["normal"]


def reach(content: Content, way: Near) -> float:
    """Return how far a label reaches from its middle in a direction."""
    w, h = half_size(content)
    return w * abs(way[0]) + h * abs(way[1])


def between(
    content: t.Node,
    at: Near,
    rays: tuple[Near, Near],
    arc: float,
    most: float,
    begun: float = 0.0,
    *,
    long: Near = (0.0, 0.0),
    others: Sequence[Near] = (),
    much: float = 1.0,
) -> Iterator[Near]:
    """Yield places for the label of an angle, from its arc outward, near its bisector first.

    `rays` are the directions of its rays, anticlockwise from the one to the other, and `long` how
    long the strokes along them are at least; `most` is how far from the vertex the middle of the
    label may be; a wide one may reach farther if it begins no farther than `begun`. A place is
    `much` times nearer to the vertex than to every one of the `others`.

    What is left out is what cannot be taken: most places of a narrow angle lie on its rays.
    """
    (first_x, first_y), (other_x, other_y) = rays
    start = math.atan2(first_y, first_x)
    sweep = (math.atan2(other_y, other_x) - start) % (2 * math.pi) or 2 * math.pi
    w, h = half_size(content)
    strokes = [
        _Stroke(ray, far, w + _FREE_OF, h + _FREE_OF) for ray, far in zip(rays, long, strict=True)
    ]
    steps_to = [(x - at[0], y - at[1]) for x, y in others]
    # Worked out one after the other: mostly one of the first is free.
    for parts in ((0.5, 0.42, 0.58, 0.34, 0.66), (0.27, 0.73, 0.2, 0.8)):
        found: list[tuple[float, float, float]] = []
        for part in parts:
            turn = start + sweep * part
            x, y = math.cos(turn), math.sin(turn)
            half = w * abs(x) + h * abs(y)
            least = arc + half + 2 * GAP
            # A place off the bisector has to be a good deal nearer to be taken.
            worse = 1.5 * abs(part - 0.5)
            begin = max((stroke.left_after(x, y, least) for stroke in strokes), default=least)
            if begin > most and begin - half > begun:
                continue
            end = min((_nearer_until(x, y, step, much) for step in steps_to), default=math.inf)
            step = int((begin - least) / _STEP)
            far = least + _STEP * step
            while far <= end and (far <= most or far - half <= begun):
                found.append((far + worse, at[0] + x * far, at[1] + y * far))
                step += 1
                far = least + _STEP * step
        found.sort()
        for _, x, y in found:
            mine = much * math.dist((x, y), at)
            if all(mine <= math.dist((x, y), centre) for centre in others):
                yield x, y


class _Stroke:
    """A stroke from the vertex of an angle, beside a box that is moved away from the vertex."""

    def __init__(self, ray: Near, long: float, wide: float, high: float) -> None:
        self.x, self.y = ray
        # Half of what a box takes across the stroke, and along it.
        self.across = wide * abs(self.y) + high * abs(self.x) - _OFF
        self.along = wide * abs(self.x) + high * abs(self.y) + _OFF
        self.long = long

    def left_after(self, x: float, y: float, least: float) -> float:
        """Return up to where, from `least` on, a box in a direction surely lies on the stroke."""
        along, across = x * self.x + y * self.y, abs(x * self.y - y * self.x)
        # It meets the stroke's line, and does so past the one end and not past the other.
        if least * along <= self.along:
            return least
        on = (self.long - self.along) / along
        off = self.across / across if across else math.inf
        return max(least, min(on, off))


def _nearer_until(x: float, y: float, step: Near, much: float) -> float:
    """Return how far one may go in a direction and stay `much` times nearer to the start.

    `step` goes from the start to the other place. It is a little more than what is so: what is
    nearer to which is for the caller to tell at the end.
    """
    a, b = step
    along, square, grow = x * a + y * b, a * a + b * b, much * much - 1
    if grow > 0:
        return (math.sqrt(along * along + grow * square) - along) / grow + _OFF
    return square / (2 * along) + _OFF if along > 0 else math.inf


def beside(label: t.Node, a: Near, b: Near, way: Near) -> list[Near]:
    """Return places beside the middle of a segment, and a little along it."""
    far = reach(label, way) + 2 * GAP
    return [
        (
            a[0] + (b[0] - a[0]) * part + way[0] * (far + more),
            a[1] + (b[1] - a[1]) * part + way[1] * (far + more),
        )
        for more in (0, 0.2, 0.4)
        for part in (0.5, 0.44, 0.56, 0.4, 0.6)
    ]
