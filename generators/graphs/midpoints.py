"""Midpoints: of a segment drawn, of one in words, and the other end from one end and the middle.

England's programme of study for key stage 3 (2013) asks pupils to "work with coordinates in all
four quadrants" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.graphs._grids import Spot, grid, number, pair
from generators.graphs._lines import segment, signed
from generators.graphs._misconceptions import SWAPPED
from generators.graphs._place_mistakes import HALF_THE_WAY, MIDDLE_AGAIN, NOT_HALVED, ONE_STEP
from generators.graphs._places_told import with_middles
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

FIRST, FOUR = (0, 10, 0, 8), (-6, 6, -5, 5)
_NAMES = (("A", "B", "M"), ("P", "Q", "M"), ("C", "D", "M"))


def _apart(a: int, b: int, c: int, d: int) -> bool:
    """Keep ends whose middle is told apart from what the wrong ways give."""
    sums = (a + c, b + d)
    return (
        a != c
        and b != d
        and sums[0] != sums[1]
        and 0 not in sums
        and (abs(a - c), abs(b - d)) not in (sums, sums[::-1])
        and a * b * c * d != 0
    )


def _support(a: int, b: int, c: int, d: int) -> bool:
    """Keep whole middles of segments on a grid in the first quadrant."""
    whole = (a + c) % 2 == 0 == (b + d) % 2
    # In the corners of the grid there is no room for a letter.
    return a < c and (a > 1 or 2 < b < 6) and whole and _apart(a, b, c, d)


def _core(what: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep middles with a half or a minus, drawn or in words."""
    halves = ((a + c) % 2 + (b + d) % 2) == 1
    if not (halves and min(a, b, c, d) < 0 and _apart(a, b, c, d)):
        return False
    if what == 0:
        inside = max(abs(a), abs(c)) < 5 and max(abs(b), abs(d)) < 4
        return inside and a < c and c - a > 2 and (a + 2 * b + 3 * c + d) % 2 == 0
    return (3 * a + b + 2 * c + d) % 29 == 0


def _challenge(a: int, b: int, x: int, y: int) -> bool:
    """Keep ends that are told apart from the middle, and from the middle of what is given."""
    far, high = 2 * x - a, 2 * y - b
    ends = {(far, high), (a, b), (x, y), (x - a, y - b), (high, far)}
    apart = len(ends) == 5 and x != a and y != b and 0 not in (far, high, a, b, x, y)
    return apart and min(a, b, x, y) < 0 and (a + 2 * b + 3 * x + 5 * y) % 9 == 0


@register
class Midpoints(Topic):
    """The point halfway between two others."""

    id = "graphs.midpoints"
    title = "Midpoints"
    statements = ("algebra.coordinates",)
    prerequisites = ("graphs.coordinates",)
    spare = "Segments on a grid that fits a slide, away from its corners: there letters have room."
    misconceptions = (SWAPPED, HALF_THE_WAY, NOT_HALVED, MIDDLE_AGAIN, ONE_STEP)
    spaces = {
        Tier.SUPPORT: Space(_support, a=range(1, 9), b=range(1, 8), c=range(2, 9), d=range(1, 8)),
        Tier.CORE: Space(
            _core,
            what=range(2),
            a=range(-8, 9),
            b=range(-7, 8),
            c=range(-8, 9),
            d=range(-7, 8),
        ),
        Tier.CHALLENGE: Space(
            _challenge, a=range(-6, 10), b=range(-6, 8), x=range(-5, 7), y=range(-5, 6)
        ),
    }

    spaces = with_middles(spaces)
    # Of a midpoint both coordinates are one answer where it is read from a grid alone.
    _read = {Tier.SUPPORT: spaces[Tier.SUPPORT]}
    spaces |= kinds.with_people_asked(kinds.with_statements(_read, 60), "graphs.midpoints")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return self._other_end(*values)
        if tier is Tier.SUPPORT:
            a, b, c, d = values
            return self._drawn((a, b), (c, d), FIRST)
        what, a, b, c, d = values
        return self._told((a, b), (c, d)) if what else self._drawn((a, b), (c, d), FOUR)

    def _drawn(self, a: Spot, b: Spot, edges: tuple[int, int, int, int]) -> Draft:
        p, q, _ = _NAMES[(a[0] + b[1]) % 3]
        figure = grid(edges, ((p, a), (q, b)), (segment(a, b),))
        text = (f"What are the coordinates of the midpoint of {p}{q}?",)
        key = pair(Fraction(a[0] + b[0], 2), Fraction(a[1] + b[1], 2))
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            _steps(a, b),
            _wrong(a, b, key),
            ("drawn", a, b),
            figure=figure,
        )

    def _told(self, a: Spot, b: Spot) -> Draft:
        p, q, _ = _NAMES[(a[0] + b[1]) % 3]
        ends = [pair(*a), pair(*b)]
        text = prompt(
            f"{p} is the point {{a}} and {q} is the point {{b}}. "
            f"Work out the coordinates of the midpoint of {p}{q}.",
            a=ends[0],
            b=ends[1],
        )
        key = pair(Fraction(a[0] + b[0], 2), Fraction(a[1] + b[1], 2))
        target = t.pair(*(_half(u, v) for u, v in zip(a, b, strict=True)))
        return Draft(
            text,
            Find(target),
            key,
            "point",
            _steps(a, b),
            _wrong(a, b, key),
            ("told", a, b),
            constants=(2,),
        )

    def _other_end(self, a: int, b: int, x: int, y: int) -> Draft:
        far, high = 2 * x - a, 2 * y - b
        p, q, m = _NAMES[(a + y) % 3]
        text = prompt(
            f"{m} is the midpoint of {p}{q}. {p} is the point {{a}} and {m} is the point {{m}}. "
            f"Work out the coordinates of {q}.",
            a=pair(a, b),
            m=pair(x, y),
        )
        letters = (t.Sym("u"), t.Sym("v"))
        relations = tuple(
            t.equals(t.Frac(t.add(t.num(end), letter), t.Int(2)), t.num(middle))
            for end, letter, middle in zip((a, b), letters, (x, y), strict=True)
        )
        key = pair(far, high)
        wrong = slips(
            (MIDDLE_AGAIN, pair(Fraction(a + x, 2), Fraction(b + y, 2))),
            (ONE_STEP, pair(x - a, y - b)),
            (SWAPPED, pair(high, far)),
            key=key,
        )
        steps = (
            Step(
                f"From {p} to {m}, how far along?",
                t.equals(t.sub(t.num(x), signed(a)), t.num(x - a)),
            ),
            Step(
                "And how far up?",
                t.equals(t.sub(t.num(y), signed(b)), t.num(y - b)),
            ),
            Step(f"Go as far again from {m} to {q}.", key),
        )
        return Draft(
            text,
            Find(t.pair(*letters), relations),
            key,
            "point",
            steps,
            wrong,
            ("other end", a, b, x, y),
            constants=(2,),
        )


def _half(u: int, v: int) -> t.Node:
    return t.Frac(t.add(t.num(u), signed(v)), t.Int(2))


def _steps(a: Spot, b: Spot) -> tuple[Step, ...]:
    return tuple(
        Step(
            f"Add the {letter}-coordinates and halve.",
            t.equals(_half(u, v), number(Fraction(u + v, 2))),
        )
        for letter, u, v in zip("xy", a, b, strict=True)
    )


def _wrong(a: Spot, b: Spot, key: t.Node) -> tuple[Any, ...]:
    halves = [Fraction(u + v, 2) for u, v in zip(a, b, strict=True)]
    return slips(
        (SWAPPED, pair(halves[1], halves[0])),
        (HALF_THE_WAY, pair(*(Fraction(abs(u - v), 2) for u, v in zip(a, b, strict=True)))),
        (NOT_HALVED, pair(a[0] + b[0], a[1] + b[1])),
        key=key,
    )
