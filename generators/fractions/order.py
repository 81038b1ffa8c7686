"""Comparing fractions and putting them in order."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from itertools import pairwise
from math import gcd, lcm
from typing import Any

from generators._turns import by_turns
from generators.fractions._order_mistakes import (
    BAR_AS_POINT,
    BIG_DENOMINATOR,
    BIG_NUMERATOR,
    FROM_THE_END,
    GAP,
    LINE_AS_WHOLE,
    PERCENT_FACE,
    STEPS_COUNTED,
)
from itembank.figures.kinds.number_line import NumberLine
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Compare, Draft, Misconception, Order, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

Pair = tuple[int, int]
PERMUTATIONS = ((0, 2, 1), (1, 0, 2), (1, 2, 0), (2, 0, 1), (2, 1, 0), (0, 1, 2))
# Denominators of three fractions: the largest is a common one, or all three need changing.
NEAR: tuple[tuple[int, ...], ...] = (
    *((5, 10, 20), (4, 5, 20), (4, 10, 20), (2, 10, 20), (2, 5, 10), (3, 6, 12), (3, 4, 12)),
    *((3, 5, 15), (3, 9, 18), (2, 9, 18), (6, 9, 18), (4, 8, 16), (2, 8, 16)),
    # Pairs to compare; the larger bottom is a multiple of the smaller.
    *((3, 6), (3, 9), (3, 12), (4, 8), (4, 12), (5, 10), (5, 15), (5, 20), (6, 12), (7, 14)),
)
FAR = (
    *((3, 5, 9), (4, 9, 12), (3, 8, 12), (3, 9, 12), (3, 10, 12), (4, 5, 12), (5, 6, 12)),
    *((3, 10, 15), (5, 10, 15), (6, 10, 15), (4, 12, 15), (5, 12, 15), (3, 9, 15), (2, 7, 8)),
)


def _orders(things: Sequence[Pair]) -> list[list[Pair] | None]:
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


def _three(dens: tuple[int, int, int], x: int, y: int, z: int) -> bool:
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


def _support(dens: tuple[int, ...], x: int, y: int, z: int) -> bool:
    """Keep threes, and pairs that lack equally many pieces (x sets both numerators)."""
    if len(dens) == 3:
        return _three((dens[0], dens[1], dens[2]), x, y, z)
    a, c = dens
    return x < a and y == z == 1 and gcd(x, a) == 1 and gcd(c - a + x, c) == 1


def _challenge(f: Pair, g: Pair, up: int, down: int, swap: int) -> bool:
    """Keep two fractions, a decimal and a percentage close together, all different."""
    (a, b), (c, d) = f, g
    p, q = 1000 * a // b, 1000 * c // d
    if not 0 < q - p <= 250:
        return False
    decimal, percent = _close(p, q, up, down, swap)
    values = {p, q, decimal, percent}
    if len(values) < 4 or not min(values) > 20 or max(values) > 980 or percent % 10:
        return False
    # Written as a point, the second fraction must not stay where it belongs.
    pointed = sorted(((_point(a, b), 0), (_point(c, d), 1), (decimal, 2), (percent, 3)))
    return [k for _, k in pointed] != [
        k for _, k in sorted(((p, 0), (q, 1), (decimal, 2), (percent, 3)))
    ] and max(values) != percent


def _close(p: int, q: int, up: int, down: int, swap: int) -> tuple[int, int]:
    """Return a decimal and a percentage near to p and q, all in thousandths."""
    return (p + up, q - down) if swap else (q + up, p - down)


def _point(top: int, bottom: int) -> int:
    return 1000 * top + (100 if bottom < 10 else 10) * bottom


def _places(ones: int, b: int, a: int, k: int) -> tuple[int, ...]:
    """Return how many steps from 0 the fraction a/b stands, and where the wrong methods put it.

    The line goes from 0 to `ones`, and b × k of its steps make 1.
    """
    steps = ones * b * k
    return (a * k, a, steps - a * k, *((2 * a * k,) if ones == 2 and a < b else ()))


def _drawn(ones: int, b: int, a: int, k: int) -> bool:
    """Keep a fraction whose arrow stands apart from those of the wrong methods."""
    steps = ones * b * k
    if gcd(a, b) != 1 or a >= ones * b or steps > 24 or a == 1:
        return False
    places = sorted(_places(ones, b, a, k))
    return all(12 * (q - p) >= steps for p, q in pairwise(places))


def _which_arrow(topic: Topic, tier: Tier, ones: int, b: int, a: int, k: int) -> Draft:
    """Return a line with an arrow at a/b, and one at each place where it might be put."""
    steps = ones * b * k
    places = _places(ones, b, a, k)
    names = dict(zip(sorted(places), "ABCD", strict=False))
    figure = NumberLine(
        t.Int(0),
        t.Int(ones),
        steps,
        (steps // 2,) if ones == 2 else (),
        tuple((name, at) for at, name in names.items()),
    )
    fraction = t.frac(a, b)
    text = prompt("Which arrow points to {f}?", f=fraction)
    right, counted, other, *doubled = places
    key = t.Label(names[right])
    wrong = slips(
        (STEPS_COUNTED, t.Label(names[counted])),
        (FROM_THE_END, t.Label(names[other])),
        *((LINE_AS_WHOLE, t.Label(names[at])) for at in doubled),
    )
    over = f"{b * k} steps make 1, so write the fraction over {b * k}."
    told = (
        Step(over, t.equals(fraction, t.frac(a * k, b * k))),
        Step(f"Count {a * k} steps from 0.", key),
    )
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        told,
        wrong,
        ("arrow", ones, a, b, k),
        figure=figure,
    )


TERMINATING: tuple[Pair, ...] = (
    (1, 4),
    (3, 4),
    (1, 5),
    (2, 5),
    (3, 5),
    (4, 5),
    (3, 8),
    (5, 8),
    (7, 8),
    (3, 10),
    (7, 10),
    (7, 20),
    (9, 20),
    (13, 20),
    (17, 20),
)


def _differ(b: int, a: int, d: int, c: int) -> bool:
    """Keep two proper fractions in lowest terms that numerators or denominators alone misjudge."""
    if a >= b or c >= d or gcd(a, b) != 1 or gcd(c, d) != 1 or b == d:
        return False
    return a * d != b * c and _misjudged(b, a, d, c) is not None


def _misjudged(b: int, a: int, d: int, c: int) -> Misconception | None:
    """Return the mistake by which the smaller of a/b and c/d is taken for the larger."""
    first_larger = a * d > b * c
    if a != c and (a > c) != first_larger:
        return BIG_NUMERATOR
    return BIG_DENOMINATOR if a != c and (b < d) != first_larger else None


def _compared(topic: Topic, tier: Tier, b: int, a: int, d: int, c: int) -> Draft:
    """Return the statement which of two fractions is the larger."""
    first, second = t.frac(a, b), t.frac(c, d)
    bottom = lcm(b, d)
    larger, holds = a * d > b * c, kinds.lot(2, a, b, c, d) == 0
    mistake = _misjudged(b, a, d, c)
    assert mistake is not None  # the filter keeps no other
    sign: t.RelationOp = ">" if larger == holds else "<"
    return kinds.statement(
        t.Relation(first, ((sign, second),)),
        holds,
        mistake=mistake,
        steps=(
            Step(f"Write it over {bottom}.", t.equals(first, t.frac(a * bottom // b, bottom))),
            Step(f"Write it over {bottom}.", t.equals(second, t.frac(c * bottom // d, bottom))),
        ),
        twin=(a, b, c, d),
    )


@register
class OrderFractions(Topic):
    """Two fractions to compare, three to order, then fractions among decimals and percentages."""

    id = "fractions.order"
    title = "Comparing and ordering fractions"
    statements = ("number.ordering",)
    misconceptions = (
        *(BIG_DENOMINATOR, BIG_NUMERATOR, GAP, PERCENT_FACE, BAR_AS_POINT),
        *(STEPS_COUNTED, FROM_THE_END, LINE_AS_WHOLE),
    )
    prerequisites = ("fractions.equivalent",)
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            dens=NEAR,
            x=range(1, 6),
            y=(1, 2, 3, 4, 5, 7, 8),
            z=(1, 2, 3, 5, 7, 9, 11, 13),
        )
        .also(_which_arrow, _drawn, ones=(1,), b=range(3, 13), a=range(2, 12), k=range(2, 7))
        .also(_compared, _differ, b=(3, 4, 5, 6), a=range(1, 6), d=(8, 10, 12), c=range(1, 12)),
        Tier.CORE: Space(
            _three,
            dens=FAR,
            x=range(1, 6),
            y=(1, 2, 3, 4, 5, 7, 8),
            z=(1, 2, 4, 5, 7, 8, 11, 13, 14),
        )
        .also(_which_arrow, _drawn, ones=(2,), b=range(2, 9), a=range(2, 16), k=range(2, 6))
        .also(_compared, _differ, b=(5, 7, 8), a=range(1, 8), d=(9, 11), c=range(1, 11)),
        Tier.CHALLENGE: Space(
            _challenge,
            f=TERMINATING,
            g=TERMINATING,
            up=(-20, 30, 45),
            down=(-25, -5, 15, 40),
            swap=(0, 1),
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return self._among_decimals(*values)
        if tier is Tier.CORE:
            dens, x, y, z = values
            return self._three(((x, dens[0]), (y, dens[1]), (z, dens[2])))
        dens, x, y, z = values
        if len(dens) == 3:
            return self._three(((x, dens[0]), (y, dens[1]), (z, dens[2])))
        a, c = dens
        return self._pair((x, a), (c - a + x, c))

    def _pair(self, small: Pair, large: Pair) -> Draft:
        """Lacking equally many pieces, the fraction with the larger denominator is the larger."""
        first, second = (small, large) if (small[0] + small[1]) % 2 else (large, small)
        left, right = t.frac(*first), t.frac(*second)
        sign: t.RelationOp = "<" if first == small else ">"
        other: t.RelationOp = ">" if first == small else "<"
        key = t.relate(left, sign, right)
        bottom = lcm(first[1], second[1])
        steps = [
            _over(f"Write the {word} over {bottom}.", pair, bottom)
            for word, pair in (("first", first), ("second", second))
            if pair[1] != bottom
        ]
        first_top, second_top = first[0] * (bottom // first[1]), second[0] * (bottom // second[1])
        steps.append(
            Step(
                "Compare the numerators.",
                t.relate(t.frac(first_top, bottom), sign, t.frac(second_top, bottom)),
            )
        )
        steps.append(Step("So this is the right sign.", key))
        wrong = slips(
            (GAP, t.relate(left, "=", right)), (BIG_DENOMINATOR, t.relate(left, other, right))
        )
        text = prompt("Which sign goes between {a} and {b}: <, > or =?", a=left, b=right)
        return Draft(text, Compare(left, right), key, "sign", tuple(steps), wrong, (small, large))

    def _three(self, things: tuple[Pair, Pair, Pair]) -> Draft:
        right, bottoms, tops, gaps = _orders(things)
        assert right is not None
        shown = [
            things[k] for k in by_turns(PERMUTATIONS, sum(numerator for numerator, _ in things))
        ]
        if shown == right:
            shown.reverse()
        bottom = lcm(*(d for _, d in things))
        steps = [
            _over(f"Write {word} over {bottom}.", pair, bottom)
            for word, pair in zip(("the first", "the second", "the third"), shown, strict=True)
            if pair[1] != bottom
        ]
        steps.append(Step("Put the fractions in the order of the new numerators.", _listing(right)))
        wrong = slips(
            *(
                (misconception, _listing(order))
                for misconception, order in (
                    (BIG_DENOMINATOR, bottoms),
                    (BIG_NUMERATOR, tops),
                    (GAP, gaps),
                )
                if order
            )
        )
        nodes = tuple(t.frac(*pair) for pair in shown)
        text = prompt("Put these in order, smallest first:  {things}", things=t.Listing(nodes))
        return Draft(
            text, Order(nodes), _listing(right), "list", tuple(steps), wrong, tuple(sorted(things))
        )

    def _among_decimals(self, f: Pair, g: Pair, up: int, down: int, swap: int) -> Draft:
        p, q = 1000 * f[0] // f[1], 1000 * g[0] // g[1]
        d, c = _close(p, q, up, down, swap)
        things: list[tuple[t.Node, int, int, int]] = [
            # The number, its thousandths, and what the two wrong methods take it for.
            (t.frac(*f), p, p, _point(*f)),
            (decimal_node(Fraction(d, 1000)), d, d, d),
            (t.Percent(decimal_node(Fraction(c, 10))), c, 100 * c, c),
            (t.frac(*g), q, q, _point(*g)),
        ]
        turn = (f[0] + g[1] + up) % 4
        values = [value for _, value, _, _ in things]
        if values[turn:] + values[:turn] == sorted(values):
            turn += 1
        things = things[turn:] + things[:turn]
        steps = [
            Step(f"Write {word} as a decimal.", t.equals(node, decimal_node(Fraction(value, 1000))))
            for word, (node, value, _, _) in zip(
                ("the first", "the second", "the third", "the fourth"), things, strict=True
            )
            if node != decimal_node(Fraction(value, 1000))
        ]
        key = _by(things, lambda thing: thing[1])
        steps.append(
            Step("Put the decimals in order; write the numbers as they were printed.", key)
        )
        wrong = slips(
            (PERCENT_FACE, _by(things, lambda thing: thing[2])),
            (BAR_AS_POINT, _by(things, lambda thing: thing[3])),
        )
        nodes = tuple(node for node, _, _, _ in things)
        text = prompt("Put these in order, smallest first:  {things}", things=t.Listing(nodes))
        return Draft(text, Order(nodes), key, "list", tuple(steps), wrong, (p, q, d, c))


def _by(
    things: list[tuple[t.Node, int, int, int]], key: Callable[[tuple[t.Node, int, int, int]], int]
) -> t.Listing:
    return t.Listing(tuple(node for node, *_ in sorted(things, key=key)))


def _listing(things: Sequence[Pair]) -> t.Listing:
    return t.Listing(tuple(t.frac(*pair) for pair in things))


def _over(say: str, pair: Pair, bottom: int) -> Step:
    top, old = pair
    return Step(say, t.equals(t.frac(top, old), t.frac(top * (bottom // old), bottom)))
