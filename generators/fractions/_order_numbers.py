"""Which fractions are put in order."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import gcd, lcm

from generators.fractions._fractions_on_a_line import Pair, bar_as_point


def orders_of(things: Sequence[Pair]) -> list[list[Pair] | None]:
    """Return the right order, then those of the wrong methods: denominators, numerators, gaps.

    A wrong method that finds two of the fractions equal makes no order.
    """
    bottom = lcm(*(d for _, d in things))
    orders: list[list[Pair] | None] = []
    keys: tuple[Callable[[Pair], int], ...] = (
        lambda f: f[0] * (bottom // f[1]),
        lambda f: -f[1],
        lambda f: f[0],
        lambda f: f[0] - f[1],
    )
    for key in keys:
        different = len({key(thing) for thing in things}) == len(things)
        orders.append(sorted(things, key=key) if different else None)
    return orders


def three_fit(dens: tuple[int, int, int], x: int, y: int, z: int) -> bool:
    """Keep three proper fractions that the wrong methods put in at least two wrong orders."""
    a, b, c = dens
    if x >= a or y >= b or z >= c or gcd(x, a) != 1 or gcd(y, b) != 1 or gcd(z, c) != 1:
        return False
    # An order is told by the answers to: is x/a the smaller of x/a and y/b, and so on.
    ay, bx, bz, cy, az, cx = a * y, b * x, b * z, c * y, a * z, c * x
    if bx == ay or cy == bz or cx == az:
        return False
    right = (bx < ay, cy < bz, cx < az)
    # By the bottoms alone z/c comes first, then y/b, for a < b < c.
    wrong = [(False, False, False)]
    if x != y and y != z and x != z:
        wrong.append((x < y, y < z, x < z))
    p, q, r = x - a, y - b, z - c
    if p != q and q != r and p != r:
        wrong.append((p < q, q < r, p < r))
    return right not in wrong and any(order != wrong[0] for order in wrong)


def support_fits(dens: tuple[int, ...], x: int, y: int, z: int) -> bool:
    """Keep threes, and pairs that lack equally many pieces (x sets both numerators)."""
    if len(dens) == 3:
        return three_fit((dens[0], dens[1], dens[2]), x, y, z)
    a, c = dens
    return x < a and y == z == 1 and gcd(x, a) == 1 and gcd(c - a + x, c) == 1


def challenge_fits(f: Pair, g: Pair, up: int, down: int, swap: int) -> bool:
    """Keep two fractions, a decimal and a percentage close together, all different."""
    (a, b), (c, d) = f, g
    p, q = 1000 * a // b, 1000 * c // d
    if not 0 < q - p <= 250:
        return False
    decimal, percent = close_to(p, q, up, down, swap)
    values = {p, q, decimal, percent}
    if len(values) < 4 or not min(values) > 20 or max(values) > 980 or percent % 10:
        return False
    # Written as a point, the second fraction must not stay where it belongs.
    pointed = sorted(((bar_as_point(a, b), 0), (bar_as_point(c, d), 1), (decimal, 2), (percent, 3)))
    return [k for _, k in pointed] != [
        k for _, k in sorted(((p, 0), (q, 1), (decimal, 2), (percent, 3)))
    ] and max(values) != percent


def close_to(p: int, q: int, up: int, down: int, swap: int) -> tuple[int, int]:
    """Return a decimal and a percentage near to p and q, all in thousandths."""
    return (p + up, q - down) if swap else (q + up, p - down)
