"""The likely mistakes on rates, units, money and inverse proportion, on the printed question.

Each method reads the words and numbers alone and does what the name of its misconception says. It
returns every value it may come to, where the name leaves open which number is divided by which.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import NamedTuple

_UNITS = (
    "km/h|m/s|g/cm\\^3|[ckm]?m(?:\\^[23])?|kg|mg|g|t|[cm]?l|ms|s|min|h|"
    "days?|weeks?|hours|minutes|seconds"
)
_NUMBER = r"\d+(?:\.\d+)?"
_AMOUNT = re.compile(rf"([£€$]?)(\d+(?:\.\d+)?)(?: ?({_UNITS})(?![\w^/]))?")
SIZES = {
    **{"mm": 1, "cm": 10, "m": 1000, "km": 1_000_000},
    **{"mg": Fraction(1, 1000), "g": 1, "kg": 1000, "t": 1_000_000},
    **{"ml": 1, "cl": 10, "l": 1000},
    **{"s": 1, "min": 60, "h": 3600, "day": 86_400, "week": 604_800},
}
WORDS = {
    **{"millimetre": "mm", "centimetre": "cm", "metre": "m", "kilometre": "km"},
    **{"milligram": "mg", "gram": "g", "kilogram": "kg", "tonne": "t"},
    **{"millilitre": "ml", "centilitre": "cl", "litre": "l"},
    **{"second": "s", "minute": "min", "hour": "h", "day": "day", "week": "week"},
}
FACTORS = (5, 7, 10, 12, 24, 30, 60, 100, 1000)


class Amount(NamedTuple):
    """A printed number with its sign or unit."""

    n: Fraction
    unit: str


class Asked:
    """What is printed: its words, and its amounts in their order."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.amounts = [
            Amount(Fraction(found[2]), found[1] or (found[3] or "").rstrip("s") or found[3] or "")
            for found in _AMOUNT.finditer(text)
        ]
        self.n = [amount.n for amount in self.amounts]

    def of(self, *units: str) -> list[Fraction]:
        return [amount.n for amount in self.amounts if amount.unit in units]

    def minutes(self) -> Fraction:
        """Return the first time, of hours and minutes or one of them, in minutes."""
        found = re.search(r"(?:(\d+) h ?)?(?:(\d+) min)?", self.time)
        assert found
        return Fraction(int(found[1] or 0) * 60 + int(found[2] or 0))

    @property
    def time(self) -> str:
        found = re.search(r"\d+ h \d+ min|\d+ min|\d+ h(?!/)", self.text)
        assert found
        return found[0]


Values = set[Fraction] | set[str] | set[tuple[Amount, ...]]
Method = Callable[[Asked], Values]


def both_ways(a: Fraction, b: Fraction) -> set[Fraction]:
    return {a / b, b / a}


# --- Speed.


def parts(q: Asked) -> Iterator[tuple[Fraction, Fraction]]:
    """Yield the distance and the minutes of each part of a journey."""
    yield from zip(q.of("km"), q.of("min"), strict=True)


def two_speeds(q: Asked) -> bool:
    return len(q.of("km/h")) == 2


def mean_speed(q: Asked) -> set[Fraction]:
    speeds = q.of("km/h") if two_speeds(q) else [60 * far / time for far, time in parts(q)]
    return {sum(speeds) / 2}


def half_the_way(q: Asked) -> set[Fraction]:
    if two_speeds(q):
        (far,) = q.of("km")
        return {far / sum(far / speed for speed in q.of("km/h"))}
    whole = sum(time for _, time in parts(q))
    return {60 * far / whole for far, _ in parts(q)}


def minutes_as_hours(q: Asked) -> set[Fraction]:
    if "steady" in q.text:
        return {q.of("km/h")[0] * q.of("min")[0]}
    if "stop" in q.text:
        return {q.of("km")[0] / (q.minutes() - q.of("min")[-1])}
    if "and then" in q.text:
        return {sum(q.of("km")) / sum(q.of("min"))}
    return {q.of("km")[0] / q.minutes()}


def as_hundredths(q: Asked) -> set[Fraction]:
    if "How many minutes" in q.text:
        return {100 * q.of("km")[0] / q.of("km/h")[0]}
    whole, rest = divmod(q.minutes(), 60)
    clock = whole + rest / 100
    return {q.of("km/h")[0] * clock if "steady" in q.text else q.of("km")[0] / clock}


# --- Density and pressure.


def density(q: Asked) -> Fraction:
    return q.of("g/cm^3")[0]


def edges(q: Asked) -> list[Fraction]:
    found = re.search(r"([\d.]+) cm by ([\d.]+) cm by ([\d.]+) cm", q.text)
    found = found or re.search(r"(\d+) centimetres long and (\d+) centimetres wide", q.text)
    assert found
    return [Fraction(edge) for edge in found.groups()]


def product(numbers: list[Fraction]) -> Fraction:
    made = Fraction(1)
    for number in numbers:
        made *= number
    return made


def volume(q: Asked) -> Fraction:
    return product(edges(q)) if "block" in q.text else q.of("cm^3")[0]


def two_of_density(q: Asked) -> tuple[Fraction, Fraction]:
    if "block" in q.text:
        return density(q), volume(q)
    mass = [n * (1000 if unit == "kg" else 1) for n, unit in q.amounts if unit in ("g", "kg")]
    found = [*mass, *q.of("g/cm^3"), *q.of("cm^3")]
    first, second = found
    return first, second


def piece(best: Callable[[tuple[str, Fraction, Fraction]], Fraction]) -> Method:
    def find(q: Asked) -> set[str]:
        found = re.findall(r"(\w+ [A-C]): ([\d.]+) g and ([\d.]+) cm\^3", q.text)
        pieces = [(name, Fraction(mass), Fraction(room)) for name, mass, room in found]
        return {max(pieces, key=best)[0]}

    return find


def pressed(q: Asked) -> tuple[Fraction, Fraction]:
    """Return the force, or the pressure, and the area."""
    if "long and" in q.text:
        force = re.search(r"force of ([\d.]+)", q.text)
        assert force
        return Fraction(force[1]), product(edges(q))
    first, second = q.n
    return first, second


# --- Currency.


def rates(q: Asked) -> list[Fraction]:
    return [Fraction(found) for found in re.findall(rf"£1 = [€$]({_NUMBER})", q.text)]


def others(q: Asked) -> list[Fraction]:
    rest = re.sub(rf"£1 = [€$]{_NUMBER}", "", q.text)
    return [Fraction(found) for found in re.findall(rf"[£€$]({_NUMBER})", rest)]


def to_pounds_too_large(q: Asked) -> set[Fraction]:
    if "changes the rest back" in q.text:
        pounds, spent = others(q)
        first, second = rates(q)
        return {(pounds * first - spent) * second}
    return {others(q)[0] * rates(q)[0]}


def rest(q: Asked) -> Fraction:
    pounds, spent = others(q)
    return pounds * rates(q)[0] - spent


# --- Units.


def change(q: Asked) -> tuple[Amount, str]:
    """Return the amount to change and the unit it is to have."""
    found = re.search(r"to (\w+)\.", q.text) or re.search(r"in (\w+)\.", q.text)
    assert found
    return q.amounts[0], WORDS[found[1].rstrip("s")]


def factor(a: str, b: str) -> Fraction:
    return Fraction(SIZES[a]) / SIZES[b]


def other_factors(q: Asked) -> set[Fraction]:
    """Return what other numbers of smaller units to a larger one give."""
    if "bows" in q.text or "How many" in q.text:
        large, small = sorted(q.amounts, key=lambda amount: -SIZES[amount.unit])
        return {large.n * f / small.n for f in FACTORS if f != factor(large.unit, small.unit)}
    given, wanted = change(q)
    right = factor(given.unit, wanted)
    more = q.n[1] if "+" in q.text else Fraction(0)
    return {
        (given.n * f if right > 1 else given.n / f) + more
        for f in FACTORS
        if f not in (right, 1 / right)
    }


def decimals_as_unit(q: Asked) -> set[Fraction]:
    whole, _, places = str(float(q.n[0])).partition(".")
    given, wanted = change(q)
    return {int(whole) * factor(given.unit, wanted) + int(places)}


def hundred_for_sixty(q: Asked) -> set[Fraction]:
    given, wanted = change(q)
    return {given.n * 100 if factor(given.unit, wanted) > 1 else given.n / 100}


def half_way(q: Asked) -> set[Fraction]:
    given, wanted = change(q)
    low, high = sorted((SIZES[given.unit], SIZES[wanted]))
    same = next(
        group
        for group in (("mm", "cm", "m", "km"), ("mg", "g", "kg", "t"), ("ml", "cl", "l"),
                      ("s", "min", "h", "day", "week"))
        if given.unit in group
    )  # fmt: skip
    return {given.n * factor(given.unit, u) for u in same if low < SIZES[u] < high}


def as_they_stand(q: Asked) -> set[Fraction]:
    if "+" in q.text:
        return {sum(q.n, Fraction(0))}
    return both_ways(*q.n)


def in_order(key: Callable[[Amount], Fraction]) -> Method:
    return lambda q: {tuple(sorted(q.amounts, key=key))}


def smaller_over_larger(q: Asked) -> set[Fraction]:
    small, large = sorted(amount.n * SIZES[amount.unit] for amount in q.amounts)
    return {small / large}


# --- Compound units.


def rate(q: Asked) -> tuple[Fraction, Fraction, Fraction]:
    """Return the amount, its time and the other number, another time or another amount."""
    first, time, other = q.n
    return first, time, other


def how_long(q: Asked) -> bool:
    return "How long" in q.text


def not_for_one(q: Asked) -> set[Fraction]:
    first, _, other = rate(q)
    longer = factor(q.amounts[2].unit, q.amounts[1].unit)
    return {first * other * longer}


# --- Inverse proportion.


def pair(q: Asked) -> tuple[Fraction, Fraction, Fraction]:
    """Return two numbers that belong together, and the one that changes, of the first's kind."""
    first, second, new = q.n
    if "lorry" in q.text:  # the time stands before the speed
        return second, first, new
    # Of rows with so many in each it is the second that changes.
    if re.search(r" (?:in each row|rows of|boxes of)", q.text):
        return second, first, new
    return first, second, new


def extra(q: Asked) -> bool:
    return "How many more" in q.text


def stopped(q: Asked) -> Fraction:
    """Return how many go on when some have stopped."""
    return q.n[0] - q.n[3]


RATES: dict[str, Method] = {
    "speed-multiplies": lambda q: {q.n[0] * q.n[1]},
    "speed-divides": lambda q: both_ways(q.n[0], q.n[1]),
    "speed-subtracts": lambda q: {abs(q.n[0] - q.n[1])},
    "speed-minutes-as-hours": minutes_as_hours,
    "speed-clock-decimal": as_hundredths,
    "speed-part-hour": lambda q: {q.of("km")[0] / q.of("h")[0]},
    "speed-mean-of-speeds": mean_speed,
    "speed-half-the-way": half_the_way,
    "speed-stop-counted": lambda q: {60 * q.of("km")[0] / q.minutes()},
    "speed-stop-added": lambda q: {60 * q.of("km")[0] / (q.minutes() + q.of("min")[-1])},
    "speed-hours-as-minutes": lambda q: {q.of("km")[0] / q.of("km/h")[0]},
    "density-multiplies": lambda q: {product([*two_of_density(q)])},
    "density-divides": lambda q: both_ways(*two_of_density(q)),
    "density-subtracts": lambda q: {abs(two_of_density(q)[0] - two_of_density(q)[1])},
    "density-adds-edges": lambda q: {density(q) * sum(edges(q))},
    "density-volume-as-mass": lambda q: {volume(q)},
    "density-kilograms-kept": lambda q: {q.of("kg")[0] / volume(q)},
    "density-hundred-grams": lambda q: {100 * q.of("kg")[0] / volume(q)},
    "density-mean": lambda q: {sum(q.of("g/cm^3")) / 2},
    "density-adds": lambda q: {sum(q.of("g/cm^3"), Fraction(0))},
    "density-heaviest": piece(lambda one: one[1]),
    "density-smallest": piece(lambda one: -one[2]),
    "pressure-multiplies": lambda q: {product([*pressed(q)])},
    "pressure-divides-the-other-way": lambda q: both_ways(*pressed(q)),
    "pressure-adds-edges": lambda q: {pressed(q)[0] / sum(edges(q))},
    "currency-divides": lambda q: {others(q)[0] / rates(q)[0]},
    "currency-multiplies": to_pounds_too_large,
    "currency-same-number": lambda q: {others(q)[0]},
    "currency-adds-the-rate": lambda q: (
        {others(q)[0] + rates(q)[0], abs(others(q)[0] - rates(q)[0])}
        if rates(q)
        else {abs(others(q)[0] - others(q)[1])}
    ),
    "currency-rate-upside-down": lambda q: {others(q)[1] / others(q)[0]},
    "currency-nothing-spent": lambda q: {others(q)[0] * rates(q)[0] / rates(q)[1]},
    "currency-first-rate": lambda q: {rest(q) / rates(q)[0]},
    "currency-one-change": lambda q: {others(q)[0] * rates(q)[1]},
    "currency-stops-at-pounds": lambda q: {others(q)[0] / rates(q)[0]},
    "currency-rates-swapped": lambda q: {others(q)[0] / rates(q)[1] * rates(q)[0]},
    "units-wrong-way": lambda q: {change(q)[0].n / factor(change(q)[0].unit, change(q)[1])},
    "units-wrong-factor": other_factors,
    "units-clock-decimal": decimals_as_unit,
    "units-hundred-for-sixty": hundred_for_sixty,
    "units-one-step": half_way,
    "units-not-changed": as_they_stand,
    "units-by-number": in_order(lambda amount: amount.n),
    "units-by-unit": in_order(lambda amount: Fraction(SIZES[amount.unit])),
    "units-divides-the-other-way": smaller_over_larger,
    "rates-multiplies": lambda q: {q.n[0] * q.n[1]},
    "rates-divides": lambda q: both_ways(q.n[0], q.n[2]),
    "rates-old-time": lambda q: {rate(q)[2] / rate(q)[1]},
    "rates-subtracts": lambda q: {abs(q.n[0] - max(q.n[1:]))},
    "rates-not-for-one": not_for_one,
    "rates-additive": lambda q: (
        {rate(q)[2] - rate(q)[0] + rate(q)[1]}
        if how_long(q)
        else {rate(q)[0] + rate(q)[2] - rate(q)[1]}
    ),
    "rates-units-ignored": lambda q: {rate(q)[0] / rate(q)[1] * rate(q)[2]},
    "rates-hundred-minutes": lambda q: {100 * rate(q)[0] / rate(q)[1] * rate(q)[2]},
    "rates-length-only": lambda q: {q.n[0] * 1000 if q.of("km/h") else q.n[0] / 1000},
    "rates-time-only": lambda q: {q.n[0] / 3600 if q.of("km/h") else q.n[0] * 3600},
    "rates-sixty-once": lambda q: {q.n[0] * 1000 / 60 if q.of("km/h") else q.n[0] * 60 / 1000},
    "inverse-as-direct": lambda q: {pair(q)[1] * pair(q)[2] / pair(q)[0]},
    "inverse-additive": lambda q: (
        {q.n[1] - q.n[2]} if extra(q) else {pair(q)[1] + pair(q)[0] - pair(q)[2]}
    ),
    "inverse-total": lambda q: {pair(q)[0] * pair(q)[1]},
    "inverse-all-not-extra": lambda q: {q.n[0] * q.n[1] / q.n[2]},
    "inverse-forgets-what-is-done": lambda q: {q.n[0] * q.n[1] / stopped(q)},
    "inverse-nothing-changes": lambda q: {q.n[1] - q.n[2]},
}
"""What each misconception of rates gives, in the unit that is asked for."""
