"""Which changes of unit are asked for, and what the mistakes give.

Amounts are in tenths of the larger unit.
"""

from __future__ import annotations

from fractions import Fraction

from generators.ratio._rates import apart, written
from generators.ratio._unit_orders import lengths_fit
from generators.ratio._unit_tables import CHAINS, NEIGHBOURS, TIMES

POURED = (
    (
        "A bottle holds {n}. A glass holds {m}. How many glasses can be filled from a full bottle?",
        "ml",
        "l",
        1000,
    ),
    (
        "A market garden has {n} of carrots. It fills bags of {m}. How many bags can it fill?",
        "kg",
        "t",
        1000,
    ),
    (
        "A reel holds {n} of ribbon. A bow takes {m}. How many bows can be made from the reel?",
        "cm",
        "m",
        100,
    ),
    (
        "A sack holds {n} of flour. A loaf takes {m}. How many loaves can be made from the sack?",
        "g",
        "kg",
        1000,
    ),
    (
        "A path is {n} long. A slab is {m} long. How many slabs in a row cover the path?",
        "cm",
        "m",
        100,
    ),
)
_FILLS = {"l": (1, 12), "t": (1, 3), "m": (3, 60), "kg": (5, 30)}


_PARTS = {"l": (50, 400), "t": (2, 25), "m": (20, 90), "kg": (150, 900)}


def support_fits(kind: str, pair: int, tenths: int) -> bool:
    """Keep one step between neighbours, to the smaller unit or to the larger one."""
    _, _, size, other = NEIGHBOURS[pair]
    if tenths % 10 == 0 and tenths > 90:
        return False
    return apart(support_key(kind, size, tenths), *support_wrong(kind, size, other, tenths))


def support_key(kind: str, size: int, tenths: int) -> Fraction:
    """Return the amount in the smaller unit ("down") or in the larger one.

    >>> support_key("down", 100, 25), support_key("up", 100, 25)
    (Fraction(250, 1), Fraction(5, 2))
    """
    return Fraction(size * tenths, 10) if kind == "down" else Fraction(tenths, 10)


def support_wrong(kind: str, size: int, other: int, tenths: int) -> tuple[Fraction | None, ...]:
    """Return what WRONG_WAY and FACTOR give."""
    if kind == "down":
        return written(tenths, 10 * size, 5), written(other * tenths, 10)
    return written(size * size * tenths, 10), written(size * tenths, 10 * other, 4)


def core_fits(kind: str, pair: int, tenths: int) -> bool:
    """Keep units of time, two steps, and sums in two units."""
    if kind == "time down":
        _, _, size, other = TIMES[pair % len(TIMES)]
        if pair >= len(TIMES) or size * tenths % 10 or (size < 60 and tenths % 10):
            return False
        return apart(Fraction(size * tenths, 10), *time_wrong(size, other, tenths))
    if kind == "time up":
        if pair >= len(TIMES):
            return False
        _, _, size, other = TIMES[pair]
        if size * tenths % 10 or (size < 60 and tenths % 10) or tenths < 15:
            return False
        small = size * tenths // 10
        return apart(Fraction(tenths, 10), written(small * size, 1), written(small, other, 2))
    if kind == "two steps":
        if pair >= len(CHAINS) or (pair > 2 and tenths > 60):
            return False
        *_, first, second = CHAINS[pair]
        if first * second * tenths % 10:
            return False
        key = Fraction(first * second * tenths, 10)
        return apart(
            key,
            written(second * tenths, 10),
            written(tenths, 10 * first * second, 4),
            written(first * tenths, 10),
        )
    _, _, size, other = NEIGHBOURS[pair]
    more = more_to_add(size, tenths)
    key = Fraction(size * tenths, 10) + more
    return tenths % 10 != 0 and apart(key, *sum_wrong(size, other, tenths))


def more_to_add(size: int, tenths: int) -> int:
    """Return what is added in the smaller unit: less than one of the larger, and no ten times."""
    return {10: 3 + tenths % 6, 100: 15 + tenths % 70, 1000: 150 + 10 * (tenths % 70)}[size]


def time_wrong(size: int, other: int, tenths: int) -> tuple[Fraction | None, ...]:
    """Return what HUNDRED (or a wrong factor), CLOCK and WRONG_WAY give."""
    whole, rest = divmod(tenths, 10)
    return (
        written(other * tenths, 10),
        Fraction(size * whole + rest) if rest and whole else None,
        written(tenths, 10 * size, 5),
    )


def sum_wrong(size: int, other: int, tenths: int) -> tuple[Fraction | None, ...]:
    """Return what NOT_CHANGED and FACTOR give."""
    more = more_to_add(size, tenths)
    return Fraction(tenths, 10) + more, Fraction(other * tenths, 10) + more


def challenge_fits(kind: str, pair: int, tenths: int, part: int) -> bool:
    """Keep how often a smaller amount goes into a larger one, and three lengths to order."""
    if kind == "goes into":
        _, _, large, size = POURED[pair]
        low, high = _FILLS[large]
        least, most = _PARTS[large]
        if not (10 * low <= tenths <= 10 * high and least <= part <= most):
            return False
        whole = Fraction(size * tenths, 10)
        if whole % part or whole / part < 3 or whole / part > 400:
            return False
        return apart(whole / part, *into_wrong(size, tenths, part))
    return pair < 3 and lengths_fit(pair, tenths, part)


def into_wrong(size: int, tenths: int, part: int) -> tuple[Fraction | None, ...]:
    """Return what NOT_CHANGED, FACTOR and OTHER_WAY give."""
    return (
        written(10 * part, tenths, 4),
        written(tenths * (100 if size == 1000 else 1000), 10 * part, 4),
        written(10 * part, size * tenths, 4),
    )
