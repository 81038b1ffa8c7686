"""Amounts in three units: put in order, and the odd one among equal ones."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.ratio._parts import amount, unit_name
from generators.ratio._unit_tables import CHAINS
from generators.ratio._units_mistakes import BY_NUMBER, BY_UNIT, FACTOR
from itembank.items import kinds
from itembank.items.item import Draft, Order, Step, Tier, prompt
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _lengths(pair: int, tenths: int, part: int) -> list[tuple[Fraction, str, int]]:
    """Return three amounts close together, each with its unit and its size in the smallest."""
    small, between, large, first, second = CHAINS[pair]
    near = first * second * tenths // 10
    step = max(1, near * part // 200)
    return [
        (Fraction(near, first * second), large, near),
        (Fraction(near + step, first), between, near + step),
        (Fraction(near - step), small, near - step),
    ]


def lengths_fit(pair: int, tenths: int, part: int) -> bool:
    """Keep amounts that are short decimals, and whose order no shortcut finds."""
    amounts = _turned(_lengths(pair, tenths, part), tenths + part)
    values = [value for value, _, _ in amounts]
    if any(value.denominator not in (1, 2, 4, 5, 10, 20, 50, 100) for value in values):
        return False
    right = sorted(range(3), key=lambda place: amounts[place][2])
    by_number = sorted(range(3), key=lambda place: values[place])
    by_unit = sorted(range(3), key=lambda place: _ORDER.index(amounts[place][1]))
    return right not in (by_number, by_unit, [0, 1, 2]) and by_number != by_unit


_ORDER = ("mm", "cm", "m", "km", "g", "kg", "t")


def _turned(amounts: list[tuple[Fraction, str, int]], turn: int) -> list[tuple[Fraction, str, int]]:
    """Return three amounts with their sizes changed round, so that no unit is always the least."""
    if turn % 3 == 1:
        (a, u, n), (b, v, m), (c, w, k) = amounts
        return [(a, u, n), (b * k / m, v, k), (c * m / k, w, m)]
    if turn % 3 == 2:
        (a, u, n), (b, v, m), (c, w, k) = amounts
        return [(a * k / n, u, k), (b, v, m), (c * n / k, w, n)]
    return amounts


def odd_fits(pair: int, tenths: int, slip: int) -> bool:
    """Keep lengths and masses whose three amounts are short decimals."""
    return pair < 3 and tenths % 10 != 0


def odd_amount(topic: Topic, tier: Tier, pair: int, tenths: int, slip: int) -> Draft:
    """Return one amount in three units, and one that comes of a wrong factor."""
    small, between, large, first, second = CHAINS[pair]
    value = Fraction(tenths, 10)
    in_large, in_between = amount(value, large), amount(value * second, between)
    in_small = amount(value * second * first, small)
    odd = amount(value * second / 10, between) if slip else amount(value * second * 10, between)
    return kinds.odd_one_out(
        odd,
        (in_large, in_between, in_small),
        mistakes=((FACTOR, 1),),
        steps=(
            Step(
                f"Change {unit_name(large)} to {unit_name(between)}.",
                t.equals(in_large, in_between),
            ),
            Step(
                f"Change {unit_name(between)} to {unit_name(small)}.",
                t.equals(in_between, in_small),
            ),
        ),
        twin=(pair, tenths, slip),
    )


def in_order(pair: int, tenths: int, part: int) -> Draft:
    """Return the question to put three amounts in three units in order."""
    small = CHAINS[pair][0]
    amounts = _turned(_lengths(pair, tenths, part), tenths + part)
    nodes = [amount(value, unit) for value, unit, _ in amounts]

    def listed(key: Any) -> t.Listing:
        return t.Listing(tuple(nodes[place] for place in sorted(range(3), key=key)))

    right = listed(lambda place: amounts[place][2])
    return Draft(
        prompt("Put these in order, smallest first:  {things}", things=t.Listing(tuple(nodes))),
        Order(tuple(nodes)),
        right,
        "list",
        (
            *(
                Step(
                    f"Write the {unit_name(unit)} in {unit_name(small)}.",
                    t.equals(node, amount(count, small)),
                )
                for node, (_, unit, count) in zip(nodes, amounts, strict=True)
                if unit != small
            ),
            Step("Put them in order as they were printed.", right),
        ),
        slips(
            (BY_NUMBER, listed(lambda place: amounts[place][0])),
            (BY_UNIT, listed(lambda place: _ORDER.index(amounts[place][1]))),
        ),
        ("order", pair, tenths, part),
    )
