"""Areas and volumes in three units: the odd one among equal ones, and orders of size."""

from __future__ import annotations

from fractions import Fraction

from generators.measures._unit_mistakes import LINEAR, TEN_TIMES
from generators.ratio._parts import amount, unit_name
from generators.ratio._units_mistakes import BY_NUMBER, BY_UNIT
from itembank.items.item import Draft, Misconception, Tier
from itembank.items.kinds.equal_ways import Way, odd_way_out, order_fits, ways_in_order
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_Unit = tuple[str, int, int, Misconception]
"""A unit, how many make the largest one, how many a mistake takes for that, and the mistake."""
_CHAINS: tuple[tuple[_Unit, ...], ...] = (
    (("m^2", 1, 1, LINEAR), ("cm^2", 10_000, 100, LINEAR), ("mm^2", 1_000_000, 1000, LINEAR)),
    (("l", 1, 1, TEN_TIMES), ("ml", 1000, 100, TEN_TIMES), ("cm^3", 1000, 100, TEN_TIMES)),
    (("m^3", 1, 1, LINEAR), ("l", 1000, 100, TEN_TIMES), ("cm^3", 1_000_000, 100, LINEAR)),
)
_TENTHS = tuple(n for n in range(2, 100) if n % 10)


def _way(chain: int, place: int, tenths: Fraction | int) -> Way:
    """Return so many tenths of the largest unit in the unit of a place."""
    unit, many, *_ = _CHAINS[chain][place]
    middle, of_middle, *_ = _CHAINS[chain][1]
    shown = amount(Fraction(tenths) * many / 10, unit)
    if place == 1:
        return Way(shown)
    same = amount(Fraction(tenths) * of_middle / 10, middle)
    return Way(shown, f"Change {unit_name(unit)} to {unit_name(middle)}.", t.equals(shown, same))


def odd_area(topic: Topic, tier: Tier, chain: int, tenths: int, which: int) -> Draft:
    """Return an amount in three units, and one that comes of a wrong factor."""
    _, many, taken, mistake = _CHAINS[chain][which]
    odd = _way(chain, which, Fraction(tenths * taken, many))
    others = [_way(chain, place, tenths) for place in range(3)]
    return odd_way_out(odd, others, mistake, ("areas", chain, tenths, which))


def _odd_fits(chain: int, tenths: int, which: int) -> bool:
    _, many, taken, _ = _CHAINS[chain][which]
    short = Fraction(tenths * taken, many) * _CHAINS[chain][1][1] / 10
    return short.denominator in (1, 10, 100) and (tenths + which) % 2 == 0


def _amounts(start: int, up: int, down: int, turn: int) -> list[tuple[int, int]]:
    """Return three amounts near one another, each in another unit: its place and its tenths."""
    tenths = (start, start + up, start - down)
    return [((place + turn) % 3, number) for place, number in enumerate(tenths)]


def _sizes(chain: int, told: list[tuple[int, int]]) -> list[list[Fraction]]:
    """Return the sizes, the numbers as they stand, and what the units alone say."""
    made = [_CHAINS[chain][place][1] for place, _ in told]
    return [
        [Fraction(tenths) for _, tenths in told],
        [Fraction(tenths * many) for (_, tenths), many in zip(told, made, strict=True)],
        [Fraction(-many) for many in made],
    ]


def areas_in_order(
    topic: Topic, tier: Tier, chain: int, start: int, up: int, down: int, turn: int
) -> Draft:
    """Return three areas or volumes in three units to put in order."""
    told = _amounts(start, up, down, turn)
    true, faces, units = _sizes(chain, told)
    return ways_in_order(
        [_way(chain, place, tenths) for place, tenths in told],
        true,
        ((BY_NUMBER, faces), (BY_UNIT, units)),
        ("areas in order", chain, *told),
    )


def _order_fits(chain: int, start: int, up: int, down: int, turn: int) -> bool:
    if (start + 3 * up + 5 * down + turn) % 6:
        return False
    told = _amounts(start, up, down, turn)
    true, faces, units = _sizes(chain, told)
    several = len({*faces}) == len({*units}) == 3
    return several and all(n % 10 for _, n in told) and order_fits(true, faces, units)


def with_cards(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with cards and orders at the ends of support and core."""
    grown = dict(spaces)
    for tier, chains in ((Tier.SUPPORT, (0,)), (Tier.CORE, (1, 2))):
        grown[tier] = (
            grown[tier]
            .also(odd_area, _odd_fits, chain=chains, tenths=_TENTHS, which=(1, 2))
            .also(
                areas_in_order,
                _order_fits,
                chain=chains[-1:],
                start=range(7, 60, 4),
                up=(1, 2, 4, 7),
                down=(1, 3, 5),
                turn=range(3),
            )
        )
    return grown
