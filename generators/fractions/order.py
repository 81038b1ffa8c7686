"""Comparing fractions and putting them in order."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from math import lcm
from typing import Any

from generators._line_in_order import TOLD, in_parts
from generators._turns import by_turns
from generators.fractions._fractions_compared import TERMINATING, compared, two_differ
from generators.fractions._fractions_on_a_line import Pair, arrows_fit, bar_as_point, which_arrow
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
from generators.fractions._order_numbers import (
    challenge_fits,
    close_to,
    orders_of,
    support_fits,
    three_fit,
)
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Compare, Draft, Order, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

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
            support_fits,
            dens=NEAR,
            x=range(1, 6),
            y=(1, 2, 3, 4, 5, 7, 8),
            z=(1, 2, 3, 5, 7, 9, 11, 13),
        )
        .also(which_arrow, arrows_fit, ones=(1,), b=range(3, 13), a=range(2, 12), k=range(2, 7))
        .also(compared, two_differ, b=(3, 4, 5, 6), a=range(1, 6), d=(8, 10, 12), c=range(1, 12)),
        Tier.CORE: Space(
            three_fit,
            dens=FAR,
            x=range(1, 6),
            y=(1, 2, 3, 4, 5, 7, 8),
            z=(1, 2, 4, 5, 7, 8, 11, 13, 14),
        )
        .also(which_arrow, arrows_fit, ones=(2,), b=range(2, 9), a=range(2, 16), k=range(2, 6))
        .also(compared, two_differ, b=(5, 7, 8), a=range(1, 8), d=(9, 11), c=range(1, 11)),
        Tier.CHALLENGE: Space(
            challenge_fits,
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
        right, bottoms, tops, gaps = orders_of(things)
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
        say = "Put the fractions in the order of the new numerators."
        line = in_parts([Fraction(*pair) for pair in shown], bottom)
        steps.append(Step(f"{say} {TOLD}" if line else say, _listing(right), line))
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
        d, c = close_to(p, q, up, down, swap)
        things: list[tuple[t.Node, int, int, int]] = [
            # The number, its thousandths, and what the two wrong methods take it for.
            (t.frac(*f), p, p, bar_as_point(*f)),
            (decimal_node(Fraction(d, 1000)), d, d, d),
            (t.Percent(decimal_node(Fraction(c, 10))), c, 100 * c, c),
            (t.frac(*g), q, q, bar_as_point(*g)),
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
