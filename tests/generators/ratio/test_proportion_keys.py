"""Keys on inverse proportion and rates found a third way: from the printed words."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from flint import fmpq

from itembank.items.item import Item
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import whole
from tests.generators.key_reader import NUMBER, exact, numbers, sample


def inverse(item: Item, text: str) -> str | fmpq:
    if "proportional" in text:
        first, other, second = numbers(text)
        return first * other / second
    if "stop" in text:
        # Unit jobs: each one at work does 1 a unit of time.
        many, time, passed, gone = numbers(text)
        left = many * time - many * passed
        return left / (many - gone)
    if "How many more" in text:
        many, time, less = numbers(text)
        return next(fmpq(k) for k in range(1, 200) if (many + k) * less == many * time)
    if "How many hours" in text and "lorry" in text:
        time, many, second = numbers(text)
    else:
        many, time, second = numbers(text)
    return next(fmpq(k) for k in range(1, 2000) if k * second == many * time)


PERIODS = {"h": 60, "min": 1, "s": fmpq(1, 60)}


def minutes(text: str) -> list[fmpq]:
    """Return the lengths of time in a text, in minutes."""
    found = re.findall(rf"({NUMBER}) h ({NUMBER}) min|({NUMBER}) (h|min|s)\b", text)
    return [
        exact(hours) * 60 + exact(rest) if hours else exact(time) * PERIODS[unit]
        for hours, rest, time, unit in found
    ]


def speed(item: Item, text: str) -> str | fmpq:
    lengths = [
        exact(n) * (1 if unit == "km" else fmpq(1, 1000))
        for n, unit in re.findall(rf"({NUMBER}) (km|m)(?![/\w])", text)
    ]
    rates = [
        exact(n) if unit == "km/h" else exact(n) * fmpq(36, 10)
        for n, unit in re.findall(rf"({NUMBER}) (km/h|m/s)", text)
    ]
    times = [time / 60 for time in minutes(text)]
    if "average speed" in text:
        if "comes back" in text:
            (far,) = lengths
            value = 2 * far / sum((far / rate for rate in rates), fmpq(0))
        elif "stop" in text:
            value = lengths[0] / (times[0] - times[1])
        else:
            value = sum(lengths, fmpq(0)) / sum(times, fmpq(0))
        return value if text.endswith("km/h.") else value * fmpq(10, 36)
    if "How many kilometres" in text or "How many metres" in text:
        value = rates[0] * times[0]
        return value if "kilometres" in text else 1000 * value
    value = lengths[0] / rates[0]
    return value * {"hours": 1, "minutes": 60, "seconds": 3600}[text.split()[-4]]


def density(item: Item, text: str) -> str | fmpq:
    plain = text.replace("^3", "").replace("cm³", "")
    if text.startswith("Which"):
        pieces = re.findall(rf"(Piece [ABC]): ({NUMBER}) g and ({NUMBER}) cm", plain)
        assert len(pieces) == 3
        return max(pieces, key=lambda piece: exact(piece[1]) / exact(piece[2]))[0]
    found = numbers(plain)
    if "mixes" in text:
        first, rate, second, other = found
        return (first * rate + second * other) / (first + second)
    if "newtons" in text:
        if "altogether" in text:
            return found[0] * found[1]
        if "rectangle" in text:
            return found[0] / (found[1] * found[2])
        return found[1] / found[0]
    if "measures" in text:
        long, wide, high, rate = found
        return long * wide * high * rate
    first, second = found
    if "Work out its density" in text:
        return first * (1000 if " kg " in text else 1) / second
    return first * second if "Work out the mass" in text else second / first


def currency(item: Item, text: str) -> str | fmpq:
    found = numbers(text)
    if "spends" in text:
        pounds, _, there, spent, _, back = found
        return (pounds * there - spent) / back
    if "dollars?" in text and "rates" in text:
        price, _, euros, _, dollars = found
        return price / euros * dollars
    if "gets" in text:
        return found[0] / found[1]
    given, _, rate = found
    return given / rate if "in pounds" in text else given * rate


SIZES = {"s": 1, "min": 60, "h": 3600}


def compound_units(item: Item, text: str) -> str | fmpq:
    if text.startswith("Change"):
        (rate,) = (exact(found) for found in re.findall(NUMBER, text))
        metres = rate * fmpq(1000, 3600) if "km/h" in text else rate
        return metres if text.endswith("second.") else metres * fmpq(3600, 1000)
    found = re.findall(rf"(£?)({NUMBER}) ?(kg|ml|m\^2|min|l|g|h|s)?(?![\w^])", text)
    times = [exact(n) * SIZES[unit] for _, n, unit in found if unit in SIZES]
    amounts = [exact(n) for sign, n, unit in found if sign or unit not in SIZES]
    if "How long" in text:
        unit = next(unit for _, _, unit in found if unit in SIZES)
        return times[0] * amounts[1] / amounts[0] / SIZES[unit]
    return amounts[0] * times[1] / times[0]


READERS: dict[str, Callable[[Item, str], str | fmpq]] = {
    "ratio.inverse-proportion": inverse,
    "ratio.speed": speed,
    "ratio.density": density,
    "ratio.currency": currency,
    "ratio.compound-units": compound_units,
}


@whole
@pytest.mark.parametrize("name", READERS)
def test_keys_are_found_again_from_what_is_printed(name: str) -> None:
    for item, text in sample(name):
        found = READERS[name](item, text)
        key = item.key.text if isinstance(item.key, t.Label) else line(item.key)
        said = key if isinstance(found, str) else exact(key)
        assert said == found, (item.address, text, key)
