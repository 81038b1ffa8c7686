"""Spots on the tracks that a letter may stand on, in exact steps, and the blocks that cut them."""

from __future__ import annotations

from itertools import pairwise
from typing import TypeAlias

Ratio: TypeAlias = tuple[int, int]
"""A number as one whole number over another, not reduced: quicker than a fraction to compare."""

Spot: TypeAlias = tuple[int, int]
Track: TypeAlias = tuple[Spot, ...]
Block: TypeAlias = tuple[int, int, int, int]
Cut: TypeAlias = tuple[Spot, Spot, Block]
"""A stroke by its ends, and the block that it fits in."""

ALONG = (14, 13, 12, 2, 3, 4, 10, 6, 15, 1, 11, 5, 9, 7, 8)
"""Where the letter of a line is tried, in sixteenths of it."""


def first_spots(track: Track, closed: bool) -> list[Spot]:
    """Return the places by which the letter of a line, or of a shape, is tried."""
    if closed:
        corners = track[:-1]
        n = len(corners)
        middle = (sum(x for x, _ in corners) // n, sum(y for _, y in corners) // n)
        # Towards each corner too: the middle of the corners may lie too near to a side.
        aims = [((2 * middle[0] + x) // 3, (2 * middle[1] + y) // 3) for x, y in corners]
        halves = [((a + c) // 2, (b + d) // 2) for (a, b), (c, d) in pairwise(track)]
        return [middle, *aims, *halves, *corners]
    pairs = [*pairwise(track)]
    return [
        (a + (c - a) * part // 16, b + (d - b) * part // 16)
        for (a, b), (c, d) in reversed(pairs)
        for part in ALONG
    ]


def block_around(at: Spot, wide: int, high: int) -> Block:
    """Return the block of a letter whose middle is at a spot."""
    return at[0] - wide, at[1] - high, at[0] + wide, at[1] + high


def blocks_meet(block: Block, other: Block) -> bool:
    """Tell whether two blocks have more than an edge in common."""
    return (
        block[0] < other[2] and other[0] < block[2] and block[1] < other[3] and other[1] < block[3]
    )


def bounded_cut(a: Spot, b: Spot) -> Cut:
    """Return a stroke from one spot to another, with the block that it fits in."""
    return a, b, (min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1]))


def cut_parts_block(a: Spot, b: Spot, block: Block) -> bool:
    """Tell whether the line of a stroke has corners of a box on both sides of it."""
    left, bottom, right, top = block
    dx, dy = b[0] - a[0], b[1] - a[1]
    across, up = (
        (dy * (left - a[0]), dy * (right - a[0])),
        (dx * (bottom - a[1]), dx * (top - a[1])),
    )
    return min(up) - max(across) < 0 < max(up) - min(across)


def square_of_gap(a: Spot, b: Spot) -> int:
    """Return the square of the distance of two spots."""
    return (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2


def smaller_ratio(first: Ratio, other: Ratio) -> bool:
    """Tell whether a number is smaller than another; what each is over is above 0."""
    return first[0] * other[1] < other[0] * first[1]


def square_to_track(at: Spot, track: Track) -> Ratio:
    """Return the square of the distance of a place from the nearest stroke of a track."""
    found, *others = (square_to_stroke(at, a, b) for a, b in pairwise(track))
    for rival in others:
        if smaller_ratio(rival, found):
            found = rival
    return found


def square_to_stroke(at: Spot, a: Spot, b: Spot) -> Ratio:
    """Return the square of the distance of a place from a stroke."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = dx * dx + dy * dy
    along = (at[0] - a[0]) * dx + (at[1] - a[1]) * dy
    if along <= 0:
        return square_of_gap(at, a), 1
    if along >= long:
        return square_of_gap(at, b), 1
    across = (at[0] - a[0]) * dy - (at[1] - a[1]) * dx
    return across * across, long
