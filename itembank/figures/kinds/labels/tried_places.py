"""The places that a label is tried at, the best first: in an angle, or beside a line."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from itembank.figures.drawing import Content
from itembank.figures.kinds.labels.near_marks import FAR, GAP, Near
from itembank.figures.kinds.labels.placed_labels import half_size
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
        _stroke(ray, far, w + _FREE_OF, h + _FREE_OF)
        for ray, far in zip(rays, long, strict=True)
        if far
    ]
    grow = much * much - 1
    steps_to = [(x - at[0], y - at[1]) for x, y in others]
    squares = [(a, b, a * a + b * b) for a, b in steps_to]
    # Worked out one after the other: mostly one of the first is free.
    for parts in ((0.5, 0.42, 0.58, 0.34, 0.66), (0.27, 0.73, 0.2, 0.8)):
        found: list[tuple[float, float, float]] = []
        for part in parts:
            turn = start + sweep * part
            x, y = math.cos(turn), math.sin(turn)
            half = w * abs(x) + h * abs(y)
            begin = least = arc + half + 2 * GAP
            for ray_x, ray_y, across, along, far in strokes:
                # Up to where a box in this direction surely lies on the stroke: it meets the
                # stroke's line, and does so past the one end and not past the other.
                on_ray = x * ray_x + y * ray_y
                if least * on_ray > along:
                    until = (far - along) / on_ray
                    aside = abs(x * ray_y - y * ray_x)
                    if aside and across / aside < until:
                        until = across / aside
                    if until > begin:
                        begin = until
            if begin > most and begin - half > begun:
                continue
            # Up to where it is `much` nearer to the vertex than to the others, and a little more:
            # what is nearer to which is told at the end.
            end = math.inf
            for a, b, square in squares:
                to_it = x * a + y * b
                if grow > 0:
                    until = (math.sqrt(to_it * to_it + grow * square) - to_it) / grow + _OFF
                elif to_it > 0:
                    until = square / (2 * to_it) + _OFF
                else:
                    continue
                if until < end:
                    end = until
            # A place off the bisector has to be a good deal nearer to be taken.
            worse = 1.5 * abs(part - 0.5)
            step = int((begin - least) / _STEP)
            far = least + _STEP * step
            while far <= end and (far <= most or far - half <= begun):
                found.append((far + worse, at[0] + x * far, at[1] + y * far))
                step += 1
                far = least + _STEP * step
        found.sort()
        for _, x, y in found:
            mine = much * math.dist((x, y), at)
            for centre in others:
                if mine > math.dist((x, y), centre):
                    break
            else:
                yield x, y


def _stroke(
    ray: Near, far: float, wide: float, high: float
) -> tuple[float, float, float, float, float]:
    """Return a ray's direction, half of what a box takes across it and along it, and its length.

    Along it the box is taken for larger than it is and across it for smaller, by what rounding
    moves a place.
    """
    x, y = ray
    across = wide * abs(y) + high * abs(x) - _OFF
    along = wide * abs(x) + high * abs(y) + _OFF
    return x, y, across, along, far


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
