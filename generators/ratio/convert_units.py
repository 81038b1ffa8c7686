"""Converting between metric units, and between units of time.

Key stage 3, ratio (England, 2013): "change freely between related standard units (for example time,
length, area, volume/capacity, mass)" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.ratio._parts import amount, unit_name
from generators.ratio._rates import apart, written, wrong_amounts
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Order, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.notation.units import unit_known

WRONG_WAY = Misconception(
    "ratio.units-wrong-way",
    "divides where it should multiply, or the other way round",
    "Which of the two units is larger? So are there more of them or fewer?",
)
FACTOR = Misconception(
    "ratio.units-wrong-factor",
    "uses another number of smaller units to the larger one",
    "How many of the smaller units make one of the larger?",
)
CLOCK = Misconception(
    "ratio.units-clock-decimal",
    "reads the decimal part as the smaller unit",
    "Is 0.5 of an hour 5 minutes? How many minutes is it?",
)
HUNDRED = Misconception(
    "ratio.units-hundred-for-sixty",
    "takes 100 for 60",
    "How many seconds are in a minute, and minutes in an hour?",
)
ONE_STEP = Misconception(
    "ratio.units-one-step",
    "stops half way, at the unit between the two",
    "In which unit is your number? In which unit is it wanted?",
)
NOT_CHANGED = Misconception(
    "ratio.units-not-changed",
    "works with the numbers as they stand, whatever the units",
    "Are both amounts in the same unit?",
)
BY_NUMBER = Misconception(
    "ratio.units-by-number",
    "puts the numbers in order, whatever the units",
    "Which is longer, 1 m or 50 cm? What else matters?",
)
BY_UNIT = Misconception(
    "ratio.units-by-unit",
    "puts the units in order, whatever the numbers",
    "Is 1 m longer or shorter than 500 cm? What else matters?",
)
OTHER_WAY = Misconception(
    "ratio.units-divides-the-other-way",
    "divides the smaller amount by the larger",
    "Which of the two is larger? How many of the smaller fit in it?",
)

# Smaller unit, larger unit, how many, and a number that is taken for it by mistake.
_NEIGHBOURS = (
    ("mm", "cm", 10, 100),
    ("cm", "m", 100, 1000),
    ("m", "km", 1000, 100),
    ("g", "kg", 1000, 100),
    ("ml", "l", 1000, 100),
    ("kg", "t", 1000, 100),
    ("cl", "l", 100, 10),
    ("mg", "g", 1000, 100),
)
_TIMES = (("s", "min", 60, 100), ("min", "h", 60, 100), ("h", "day", 24, 12), ("day", "week", 7, 5))
# Smallest, between, largest.
_CHAINS = (
    ("mm", "cm", "m", 10, 100),
    ("cm", "m", "km", 100, 1000),
    ("g", "kg", "t", 1000, 1000),
    ("s", "min", "h", 60, 60),
    ("min", "h", "day", 60, 24),
)
_POURED = (
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
_SHARES = (
    2, 4, 5, 8, 10, 12, 15, 20, 25, 30, 40, 45, 60, 75, 80, 90, 120, 150, 180, 200, 240, 250, 300,
    400, 450, 600, 750, 800,
)  # fmt: skip
_FILLS = {"l": (1, 12), "t": (1, 3), "m": (3, 60), "kg": (5, 30)}
_PARTS = {"l": (50, 400), "t": (2, 25), "m": (20, 90), "kg": (150, 900)}


def _support(kind: str, pair: int, tenths: int) -> bool:
    """Keep one step between neighbours, to the smaller unit or to the larger one."""
    _, _, size, other = _NEIGHBOURS[pair]
    if tenths % 10 == 0 and tenths > 90:
        return False
    return apart(_support_key(kind, size, tenths), *_support_wrong(kind, size, other, tenths))


def _support_key(kind: str, size: int, tenths: int) -> Fraction:
    return Fraction(size * tenths, 10) if kind == "down" else Fraction(tenths, 10)


def _support_wrong(kind: str, size: int, other: int, tenths: int) -> tuple[Fraction | None, ...]:
    """Return what WRONG_WAY and FACTOR give."""
    if kind == "down":
        return written(tenths, 10 * size, 5), written(other * tenths, 10)
    return written(size * size * tenths, 10), written(size * tenths, 10 * other, 4)


def _core(kind: str, pair: int, tenths: int) -> bool:
    """Keep units of time, two steps, and sums in two units."""
    if kind == "time down":
        _, _, size, other = _TIMES[pair % len(_TIMES)]
        if pair >= len(_TIMES) or size * tenths % 10 or (size < 60 and tenths % 10):
            return False
        return apart(Fraction(size * tenths, 10), *_time_wrong(size, other, tenths))
    if kind == "time up":
        if pair >= len(_TIMES):
            return False
        _, _, size, other = _TIMES[pair]
        if size * tenths % 10 or (size < 60 and tenths % 10) or tenths < 15:
            return False
        small = size * tenths // 10
        return apart(Fraction(tenths, 10), written(small * size, 1), written(small, other, 2))
    if kind == "two steps":
        if pair >= len(_CHAINS) or (pair > 2 and tenths > 60):
            return False
        *_, first, second = _CHAINS[pair]
        if first * second * tenths % 10:
            return False
        key = Fraction(first * second * tenths, 10)
        return apart(
            key,
            written(second * tenths, 10),
            written(tenths, 10 * first * second, 4),
            written(first * tenths, 10),
        )
    _, _, size, other = _NEIGHBOURS[pair]
    more = _more(size, tenths)
    key = Fraction(size * tenths, 10) + more
    return tenths % 10 != 0 and apart(key, *_sum_wrong(size, other, tenths))


def _more(size: int, tenths: int) -> int:
    """Return what is added in the smaller unit: less than one of the larger, and no ten times."""
    return {10: 3 + tenths % 6, 100: 15 + tenths % 70, 1000: 150 + 10 * (tenths % 70)}[size]


def _time_wrong(size: int, other: int, tenths: int) -> tuple[Fraction | None, ...]:
    """Return what HUNDRED (or a wrong factor), CLOCK and WRONG_WAY give."""
    whole, rest = divmod(tenths, 10)
    return (
        written(other * tenths, 10),
        Fraction(size * whole + rest) if rest and whole else None,
        written(tenths, 10 * size, 5),
    )


def _sum_wrong(size: int, other: int, tenths: int) -> tuple[Fraction | None, ...]:
    """Return what NOT_CHANGED and FACTOR give."""
    more = _more(size, tenths)
    return Fraction(tenths, 10) + more, Fraction(other * tenths, 10) + more


def _challenge(kind: str, pair: int, tenths: int, part: int) -> bool:
    """Keep how often a smaller amount goes into a larger one, and three lengths to order."""
    if kind == "goes into":
        _, _, large, size = _POURED[pair]
        low, high = _FILLS[large]
        least, most = _PARTS[large]
        if not (10 * low <= tenths <= 10 * high and least <= part <= most):
            return False
        whole = Fraction(size * tenths, 10)
        if whole % part or whole / part < 3 or whole / part > 400:
            return False
        return apart(whole / part, *_into_wrong(size, tenths, part))
    return pair < 3 and _lengths_fit(pair, tenths, part)


def _into_wrong(size: int, tenths: int, part: int) -> tuple[Fraction | None, ...]:
    """Return what NOT_CHANGED, FACTOR and OTHER_WAY give."""
    return (
        written(10 * part, tenths, 4),
        written(tenths * (100 if size == 1000 else 1000), 10 * part, 4),
        written(10 * part, size * tenths, 4),
    )


def _lengths(pair: int, tenths: int, part: int) -> list[tuple[Fraction, str, int]]:
    """Return three amounts close together, each with its unit and its size in the smallest."""
    small, between, large, first, second = _CHAINS[pair]
    near = first * second * tenths // 10
    step = max(1, near * part // 200)
    return [
        (Fraction(near, first * second), large, near),
        (Fraction(near + step, first), between, near + step),
        (Fraction(near - step), small, near - step),
    ]


def _lengths_fit(pair: int, tenths: int, part: int) -> bool:
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


def _keep_odd(pair: int, tenths: int, slip: int) -> bool:
    """Keep lengths and masses whose three amounts are short decimals."""
    return pair < 3 and tenths % 10 != 0


def _odd(topic: Topic, tier: Tier, pair: int, tenths: int, slip: int) -> Draft:
    """Return one amount in three units, and one that comes of a wrong factor."""
    small, between, large, first, second = _CHAINS[pair]
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


@register
class ConvertUnits(Topic):
    """One step; time, two steps and sums; how often one goes into another, and orders."""

    id = "ratio.convert-units"
    title = "Converting between metric units and units of time"
    statements = ("ratio.units", "number.units")
    misconceptions = (
        WRONG_WAY,
        FACTOR,
        CLOCK,
        HUNDRED,
        ONE_STEP,
        NOT_CHANGED,
        BY_NUMBER,
        BY_UNIT,
        OTHER_WAY,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _support,
                    kind=("down", "up"),
                    pair=range(len(_NEIGHBOURS)),
                    tenths=(*range(12, 100, 4), 25, 35, 65, 75, 30, 50, 70, 90),
                )
            ),
            lambda kind, pair, *_: (kind, pair),
        ),
        Tier.CORE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _core,
                    kind=("time down", "time up"),
                    pair=range(len(_TIMES)),
                    tenths=(*range(11, 60), 70, 80, 90),
                )
                .then(_core, kind=("two steps",), pair=range(len(_CHAINS)), tenths=range(3, 80, 2))
                .then(_core, kind=("sum",), pair=range(len(_NEIGHBOURS)), tenths=range(12, 95, 3))
            ),
            lambda kind, pair, *_: (kind, pair),
        ).also(_odd, _keep_odd, pair=range(3), tenths=range(12, 99, 4), slip=(0, 1)),
        Tier.CHALLENGE: kinds.with_answers(
            Space(
                _challenge,
                kind=("goes into",),
                pair=range(len(_POURED)),
                tenths=(*range(10, 120, 2), 15, 25, 35, 45, *range(120, 600, 10)),
                part=_SHARES,
            ).then(
                _challenge,
                kind=("order",),
                pair=range(2),
                tenths=range(4, 98, 2),
                part=range(1, 40, 6),
            ),
            only=lambda kind, *_: kind == "goes into",
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, pair, tenths, *more = values
        if kind in ("down", "up"):
            return self._one_step(kind, pair, tenths)
        if kind in ("time down", "time up"):
            return self._time(kind, pair, tenths)
        if kind == "two steps":
            return self._two_steps(pair, tenths)
        if kind == "sum":
            return self._sum(pair, tenths)
        if kind == "goes into":
            return self._goes_into(pair, tenths, more[0])
        return self._order(pair, tenths, more[0])

    def _one_step(self, kind: str, pair: int, tenths: int) -> Draft:
        small, large, size, other = _NEIGHBOURS[pair]
        few, many = amount(Fraction(tenths, 10), large), amount(Fraction(size * tenths, 10), small)
        given, key, unit = (few, many, small) if kind == "down" else (many, few, large)
        verb = "multiply" if kind == "down" else "divide"
        say = f"There are {size} {unit_name(small)} in 1 {_single(large)}, so {verb} by {size}."
        return Draft(
            prompt(f"Change {{n}} to {unit_name(unit)}.", n=given),
            Find(given),
            key,
            "quantity",
            (Step(say, t.equals(given, key)),),
            wrong_amounts(
                unit,
                _support_key(kind, size, tenths),
                (WRONG_WAY, FACTOR),
                _support_wrong(kind, size, other, tenths),
            ),
            (kind, pair, tenths),
        )

    def _time(self, kind: str, pair: int, tenths: int) -> Draft:
        small, large, size, other = _TIMES[pair]
        few, many = amount(Fraction(tenths, 10), large), amount(size * tenths // 10, small)
        down = kind == "time down"
        given, key, unit = (few, many, small) if down else (many, few, large)
        wrong = _time_wrong(size, other, tenths)
        value = Fraction(size * tenths, 10) if down else Fraction(tenths, 10)
        if not down:
            count = size * tenths // 10
            wrong = (written(count, other, 2), None, Fraction(count * size))
        say = f"There are {size} {unit_name(small)} in 1 {_single(large)}, so "
        line = (
            t.times(t.Int(size), amount(Fraction(tenths, 10), ""))
            if down
            else t.divide(t.Int(size * tenths // 10), t.Int(size))
        )
        number = amount(value, "")
        return Draft(
            prompt(f"Change {{n}} to {unit_name(unit)}.", n=given),
            Find(given),
            key,
            "quantity",
            (
                Step(f"{say}{'multiply' if down else 'divide'} by {size}.", t.equals(line, number)),
                Step("Write the answer with its unit.", t.equals(given, key)),
            ),
            wrong_amounts(
                unit, value, (HUNDRED if size == 60 else FACTOR, CLOCK, WRONG_WAY), wrong
            ),
            (kind, pair, tenths),
        )

    def _two_steps(self, pair: int, tenths: int) -> Draft:
        small, between, large, first, second = _CHAINS[pair]
        given, middle = amount(Fraction(tenths, 10), large), Fraction(second * tenths, 10)
        key = Fraction(first * second * tenths, 10)
        return Draft(
            prompt(f"Change {{n}} to {unit_name(small)}.", n=given),
            Find(given),
            amount(key, small),
            "quantity",
            (
                Step(
                    f"Multiply by {second} to change {unit_name(large)} to {unit_name(between)}.",
                    t.equals(given, amount(middle, between)),
                ),
                Step(
                    f"Multiply by {first} to change {unit_name(between)} to {unit_name(small)}.",
                    t.equals(amount(middle, between), amount(key, small)),
                ),
            ),
            wrong_amounts(
                small,
                key,
                (ONE_STEP, WRONG_WAY, FACTOR),
                (
                    middle,
                    written(tenths, 10 * first * second, 4),
                    written(first * tenths, 10),
                ),
            ),
            ("two steps", pair, tenths),
        )

    def _sum(self, pair: int, tenths: int) -> Draft:
        small, large, size, other = _NEIGHBOURS[pair]
        first, more = amount(Fraction(tenths, 10), large), amount(_more(size, tenths), small)
        changed, key = (
            Fraction(size * tenths, 10),
            Fraction(size * tenths, 10) + _more(size, tenths),
        )
        asked = t.add(first, more)
        return Draft(
            prompt(f"Work out {{e}}. Give your answer in {unit_name(small)}.", e=asked),
            Find(asked),
            amount(key, small),
            "quantity",
            (
                Step(
                    f"Write the {unit_name(large)} in {unit_name(small)}.",
                    t.equals(first, amount(changed, small)),
                ),
                Step("Add.", t.equals(t.add(amount(changed, small), more), amount(key, small))),
            ),
            wrong_amounts(small, key, (NOT_CHANGED, FACTOR), _sum_wrong(size, other, tenths)),
            ("sum", pair, tenths),
        )

    def _goes_into(self, pair: int, tenths: int, part: int) -> Draft:
        text, small, large, size = _POURED[pair]
        whole, each, x = amount(Fraction(tenths, 10), large), amount(part, small), t.Sym("x")
        changed = amount(Fraction(size * tenths, 10), small)
        key = Fraction(size * tenths, 10 * part)
        return Draft(
            prompt(text, n=whole, m=each),
            Find(x, (t.equals(x, t.divide(whole, each)),)),
            amount(key, ""),
            "integer",
            (
                Step(
                    f"Write the {unit_name(large)} in {unit_name(small)}.",
                    t.equals(whole, changed),
                ),
                Step("Divide.", t.equals(t.divide(changed, each), amount(key, ""))),
            ),
            wrong_amounts(
                "", key, (NOT_CHANGED, FACTOR, OTHER_WAY), _into_wrong(size, tenths, part)
            ),
            ("goes into", pair, tenths, part),
        )

    def _order(self, pair: int, tenths: int, part: int) -> Draft:
        small = _CHAINS[pair][0]
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


def _single(unit: str) -> str:
    return unit_known(unit).singular
