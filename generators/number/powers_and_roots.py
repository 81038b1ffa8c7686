"""Powers and roots: squares, cubes and beyond, their roots, and calculations with them.

The programme of study for key stage 3 (England, 2013) asks pupils to "use integer powers and
associated real roots (square, cube and higher), recognise powers of 2, 3, 4, 5" (from memory).
"""

from __future__ import annotations

from math import isqrt
from typing import Any

from generators._turns import by_turns
from generators.number import _power_mistakes as m
from generators.number._powers_given import BEYOND, NOT_A_MULTIPLE, with_given
from generators.number._powers_numbers import (
    WAYS,
    Kind,
    challenge_fits,
    core_fits,
    listed_by,
    support_fits,
    things_to_order,
)
from generators.number._powers_worked_out import calculation_of
from generators.number._powers_wrong_lines import gone_wrong, power_of, written_out
from generators.number._writing import worked
from itembank.items import kinds
from itembank.items.item import Draft, Find, Order, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


@register
class PowersAndRoots(Topic):
    """One power or root; two of them in a calculation; then stories, negatives and orders."""

    id = "number.powers-and-roots"
    title = "Powers and roots"
    statements = ("number.powers-roots",)
    misconceptions = (
        m.TIMES_INDEX,
        m.SWAPS,
        m.HALVES,
        m.POWER_FOR_ROOT,
        m.ROOTS_EACH,
        m.NO_ROOTS,
        m.JOINS,
        m.NOUGHT_IS_NOUGHT,
        m.NOUGHT_CHANGES_NOTHING,
        m.STOPS,
        m.QUARTERS,
        m.NEGATIVE_ANSWER,
        m.NUMERATOR_ONLY,
        m.ROOT_IGNORED,
        BEYOND,
        NOT_A_MULTIPLE,
    )
    spare = "The powers and roots of whole numbers that a pupil has to know are few."
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(support_fits, kind=tuple(Kind)[:5], a=range(2, 21), n=range(2, 11))
            ),
            gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    core_fits,
                    kind=tuple(Kind)[5:10],
                    a=range(2, 26),
                    b=(*range(2, 13), 15, 16, 20, 24),
                    c=range(2, 6),
                    d=range(2, 5),
                )
            ),
            gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            Space(
                challenge_fits,
                kind=tuple(Kind)[10:],
                a=range(1, 26),
                b=range(1, 10),
                c=range(2, 11),
            ),
            gone_wrong,
        ),
    }
    spaces = with_given(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c, d = (*values, 0, 0)[:5]
        twin = (int(kind), a, b, c, d)
        match kind:
            case Kind.AS_POWER:
                return _as_power(a, b, twin)
            case Kind.AS_PRODUCT:
                return _as_product(a, b, twin)
            case Kind.EDGING:
                return _edging(a, twin)
            case Kind.ORDER:
                return _in_order(a, b, c, twin)
        asked, key, steps, wrong = calculation_of(kind, a, b, c, d)
        form, how = "integer", ""
        if kind == Kind.NEGATIVE_INDEX:
            form, how = "fraction", " Give your answer as a fraction."
        if kind == Kind.FRACTIONS:
            form, how = "lowest-terms", " Give your answer in its lowest terms."
        text = prompt("Work out {e}." + how, e=asked)
        return Draft(text, Find(asked), key, form, steps, slips(*wrong, key=key), twin)


def _as_power(a: int, n: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a product of equal factors as a power."""
    asked = written_out(t.Int(a), n)
    key = power_of(a, n)
    steps = worked(asked, (f"The factor {a} stands there {n} times, so the index is {n}.", key))
    wrong = slips((m.TIMES_INDEX, t.times(t.Int(a), t.Int(n))), (m.SWAPS, power_of(n, a)))
    text = prompt("Write {e} as a power of {a}.", e=asked, a=t.Int(a))
    return Draft(text, Find(asked), key, "power", steps, wrong, twin)


def _as_product(a: int, n: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a power as a product of equal factors."""
    asked, key = power_of(a, n), written_out(t.Int(a), n)
    steps = worked(asked, (f"The index is {n}, so the factor {a} stands there {n} times.", key))
    wrong = slips((m.TIMES_INDEX, t.times(t.Int(a), t.Int(n))), (m.SWAPS, written_out(t.Int(n), a)))
    text = prompt("Write {e} as a product, without powers.", e=asked)
    return Draft(text, Find(asked), key, "product", steps, wrong, twin)


_SQUARE_THINGS = (
    ("A square bed in a market garden has an area of", "How many metres of edging go round it?"),
    ("A square allotment has an area of", "How many metres of fence go round it?"),
    ("A square yard of a bus depot has an area of", "How many metres of wall go round it?"),
    ("A square pool of a swimming club has an area of", "How many metres of rail go round it?"),
)


def _edging(a: int, twin: tuple[object, ...]) -> Draft:
    """Ask for the way round a square whose area is given."""
    has, asks = by_turns(_SQUARE_THINGS, a)
    area, four = t.Int(a * a), t.Int(4)
    side = t.Root(area)
    asked = t.times(four, side)
    text = prompt(f"{has} {{a}} square metres. {asks}", a=area)
    steps = (
        Step("The side is the square root of the area.", t.equals(side, t.Int(a))),
        Step("A square has four equal sides.", t.equals(t.times(four, t.Int(a)), t.Int(4 * a))),
    )
    wrong = slips((m.STOPS, a), (m.QUARTERS, a * a))
    return Draft(text, Find(asked), t.Int(4 * a), "integer", steps, wrong, twin, constants=(4,))


def _in_order(a: int, b: int, c: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a root, a power and two whole numbers in order."""
    things = things_to_order(a, b, c)
    nodes = tuple(thing[0] for thing in things)
    turned = nodes[(a + b) % 4 :] + nodes[: (a + b) % 4]

    key, no_root, times_index = (listed_by(things, way) for way in WAYS)
    if turned == key.parts:
        turned = turned[::-1]
    under = 10 * a + b
    low = isqrt(under)
    base, index = things[1][0], t.Int(int(things[1][1]))
    steps = (
        Step(
            f"{under} is between {low * low} and {(low + 1) ** 2}, "
            f"so its root is between {low} and {low + 1}."
        ),
        Step("Work out the power.", t.equals(base, index)),
        Step("Put them in order, as they were printed.", key),
    )
    wrong = slips((m.ROOT_IGNORED, no_root), (m.TIMES_INDEX, times_index))
    text = prompt(
        "Write these in order of size, smallest first: {things}.", things=t.Listing(turned)
    )
    return Draft(text, Order(turned), key, "list", steps, wrong, twin)
