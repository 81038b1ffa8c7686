"""Pentagons and hexagons drawn with one angle missing, or with a letter in their angles."""

from __future__ import annotations

from collections.abc import Sequence

from generators._corners import polygon_corners
from generators.geometry import _misconceptions as m
from generators.geometry._angles import (
    deg,
    degrees_of,
    left_over,
    letter_of,
    size_question,
    solving,
    value_letter,
    value_question,
    wrong_values,
)
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.items.item import Draft, Step
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

SOME = (0, 4, -7, 10, -12, 15)
"""By how much angles of an irregular polygon are off those of a regular one."""


def irregular(count: int, first: int, second: int) -> list[int]:
    """Return the angles of a polygon that are given; what is left for the last is its angle."""
    middle = 180 * (count - 2) // count
    given = [middle + first, middle + second]
    given += [middle + (-3, 6, -11)[(k + first) % 3] for k in range(count - 3)]
    return given


def last_angle(count: int, given: Sequence[int]) -> int:
    """Return the angle that is left of a polygon for the last one."""
    return 180 * (count - 2) - sum(given)


def fits_drawn(count: int, first: int, second: int) -> bool:
    """Return whether a polygon is near enough to a regular one, and no angle gives another away."""
    given = irregular(count, first, second)
    last = last_angle(count, given)
    middle = 180 * (count - 2) // count
    near = abs(last - middle) <= 24
    return near and last not in given and 90 not in (*given, last) and max(*given, last) < 155


def letter_parts(n: int, b: int) -> tuple[list[tuple[int, int]], int]:
    """Return the angles px + q of a pentagon with its letter's value."""
    given = irregular(5, n % 25 - 12, b)
    times = 2 + n // 25
    value = given[0] // times
    return [(times, 0), (1, given[1] - value), *((0, size) for size in given[2:])], value


def drawn_missing(count: int, n: int, b: int) -> Draft:
    """Return the question for the missing angle of a pentagon or a hexagon."""
    given = irregular(count, n - 12, b)
    size, whole = last_angle(count, given), 180 * (count - 2)
    x = letter_of(n, b)
    angles = [*given, size]
    labels: list[t.Node] = [*map(deg, given), x]
    figure = _drawn(angles, labels)
    name = "pentagon" if count == 5 else "hexagon"
    steps = [
        Step(
            f"A {name} splits into {count - 2} triangles.",
            t.equals(t.times(t.Int(count - 2), deg(180)), deg(whole)),
        ),
        *left_over(f"So its angles add up to {whole}°.", x, whole, given),
    ]
    short = whole - 180 - sum(given)
    wrong: list[Wrong] = [
        (m.ONE_TOO_FEW, size + 180),
        (m.LEFT_OUT, size + given[-1]),
        (m.COPIED, given[-1] if short < 0 else None),
    ]
    return size_question(figure, x, size, steps, wrong, (count, n, b))


def _drawn(angles: Sequence[int], labels: Sequence[t.Node]) -> Polygon:
    named = "ABCDEF"[: len(angles)]
    return Polygon(
        polygon_corners(angles), angles=tuple(zip(named, labels, strict=True)), accurate=False
    )


def drawn_expressions(n: int, b: int) -> Draft:
    """Return the question for the letter in the angles of a pentagon."""
    parts, value = letter_parts(n, b)
    given = [p * value + q for p, q in parts]
    whole = [*parts, (0, last_angle(5, given))]
    x = value_letter(n, b)
    labels = [degrees_of(p, x, q) if p else deg(q) for p, q in whole]
    figure = _drawn([p * value + q for p, q in whole], labels)
    steps = [
        Step(
            "A pentagon splits into 3 triangles.",
            t.equals(t.times(t.Int(3), t.Int(180)), t.Int(540)),
        ),
        *solving("So its angles add up to 540°.", x, whole, 540),
    ]
    wrong = wrong_values(whole, value, 540, m.OTHER_POLYGON)
    return value_question(figure, x, value, steps, wrong, (n, b))
