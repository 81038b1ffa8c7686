"""Keys on percentages found a third way: from the printed words, in python-flint's rationals."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest
from flint import fmpq

from itembank.figures.kinds.number.double_number_line import DoubleNumberLine
from itembank.items.item import Item
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import whole
from tests.generators.key_reader import NUMBER, exact, numbers, sample


def on_the_line(figure: Any) -> fmpq:
    """Return what the letter of a double number line stands for: both lines begin at 0."""
    assert isinstance(figure, DoubleNumberLine)
    rows = [(pair.at, pair.over, pair.under) for pair in figure.pairs]
    for over in (True, False):
        row = [(at, top if over else low) for at, top, low in rows]
        known = next((at, line(n)) for at, n in row if n is not None and not isinstance(n, t.Sym))
        for at, node in row:
            if isinstance(node, t.Sym):
                return exact(known[1]) * at / known[0]
    raise AssertionError("no letter")


def of_amount(item: Item, text: str) -> str | fmpq:
    if item.figure is not None:
        return on_the_line(item.figure)
    if text.startswith("Work out"):
        share, whole = numbers(text)
        return share * whole / 100
    if text.startswith("Which is worth the most"):
        found = re.findall(rf"([ABC]): ({NUMBER})% of £({NUMBER})", text)
        assert len(found) == 3
        return max(found, key=lambda each: exact(each[1]) * exact(each[2]))[0]
    if "□" in text:
        share, whole, other = numbers(text)
        return share * whole / other
    whole, share, *more = numbers(text)
    kept = share * whole / 100
    if more:
        return kept - kept * more[0] / 100
    return whole - kept


SMALLER = {"cm": 1, "m": 100, "p": 1, "£": 100, "g": 1, "kg": 1000, "min": 1, "h": 60}
SMALLER |= {"ml": 1, "l": 1000, "": 1}


def in_smaller(text: str) -> fmpq:
    """Return an amount in pence, centimetres, grams, minutes or millilitres."""
    found = re.fullmatch(rf"(£?)({NUMBER})(p?) ?([a-z]*)", text)
    assert found, text
    return exact(found[2]) * SMALLER[found[1] or found[3] or found[4]]


def express(item: Item, text: str) -> str | fmpq:
    if item.figure is not None:
        return on_the_line(item.figure)
    if text.startswith("Who"):
        scores = re.findall(r"(\w+): (\d+) out of (\d+)", text)
        assert len(scores) == 3
        return max(scores, key=lambda score: fmpq(int(score[1]), int(score[2])))[0]
    asked = re.fullmatch(r"What percentage of (.+) is (.+)\?", text)
    if asked is None and (found := re.fullmatch(r"Write (.+) as a percentage of (.+)\.", text)):
        return 100 * in_smaller(found[1]) / in_smaller(found[2])
    if asked:
        return 100 * in_smaller(asked[2]) / in_smaller(asked[1])
    first, second = numbers(text)
    if " and " in text.partition("What")[0]:
        return 100 * first / (first + second)
    return 100 * min(first, second) / max(first, second)


def change(item: Item, text: str) -> str | fmpq:
    if text.startswith("What decimal"):
        sign = 1 if "increase" in text else -1
        return 1 + sign * numbers(text)[0] / 100
    if found := re.findall(rf"(Shop [ABC]): £({NUMBER}) with ({NUMBER})% off", text):
        assert len(found) == 3
        return min(found, key=lambda shop: exact(shop[1]) * (100 - exact(shop[2])))[0]
    if "percentage profit" in text:
        each = re.search(rf"at (£?)({NUMBER})p? each", text)
        assert each
        count, cost, _ = numbers(text)
        income = count * exact(each[2]) / (1 if each[1] else 100)
        return 100 * (income - cost) / cost
    if "percentage increase" in text or "percentage decrease" in text:
        old, new = numbers(text)
        return 100 * (new - old if "increase" in text else old - new) / old
    if "and then" in text:
        amount, *shares = numbers(text)
        for share, way in zip(shares, re.findall("goes (up|down)", text), strict=True):
            amount += (1 if way == "up" else -1) * amount * share / 100
        return amount
    amount, share = numbers(text)
    more = re.search("Increase|go up| more", text)
    return amount * (100 + (1 if more else -1) * share) / 100


def reverse(item: Item, text: str) -> str | fmpq:
    if item.figure is not None:
        return on_the_line(item.figure)
    if "square metres" in text:
        share, other, left, *_ = numbers(text.replace("m^2", ""))
        return left / (100 - share - other) * 100
    if "less than before" in text:
        share, off = numbers(text)
        return off / share * (100 - share)
    if "and then" in text:
        share, other, end = numbers(text)
        return end / ((1 + share / 100) * (1 + other / 100))
    share, now = numbers(text)
    if re.search("goes up|rises|added", text):
        return now / (1 + share / 100)
    if re.search("reduced|falls|cut| off ", text):
        return now / (1 - share / 100)
    return now * 100 / share


def repeated(item: Item, text: str) -> str | fmpq:
    if "overall" in text:
        end = fmpq(1)
        for share, way in zip(numbers(text), re.findall("goes (up|down)", text), strict=True):
            end += (1 if way == "up" else -1) * end * share / 100
        return abs(end - 1) * 100
    (share,) = (exact(found) for found in re.findall(rf"({NUMBER})%", text))
    (times,) = (int(found) for found in re.findall(r"(\d+) (?:days|weeks|months|years)\b", text))
    (given,) = (n for n in numbers(text) if n not in (share, times))
    fall = re.search("loses|used|takes|sells", text)
    backwards = "at first" in text
    value = given
    for _ in range(times):
        factor = 1 + (-1 if fall else 1) * share / 100
        value = value / factor if backwards else value * factor
    return value - given if "earned" in text else value


def simple_interest(item: Item, text: str) -> str | fmpq:
    if found := re.search(rf"saves £({NUMBER}) at simple .* (\d+) years £({NUMBER}) is", text):
        saved, years, end = map(exact, found.groups())
        rates = (fmpq(rate, 2) for rate in range(1, 40))
        return next(rate for rate in rates if saved + saved * rate / 100 * years == end)
    if found := re.search(rf"saves £({NUMBER}) at ({NUMBER})% .* many years is £({NUMBER})", text):
        saved, rate, end = map(exact, found.groups())
        return next(fmpq(y) for y in range(1, 99) if saved + saved * rate / 100 * y == end)
    if found := re.search(rf"saves at ({NUMBER})% .* In (\d+) years .* £({NUMBER})\.", text):
        rate, years, interest = map(exact, found.groups())
        return interest / years / rate * 100
    found = re.search(rf"saves £({NUMBER}) at ({NUMBER})% .* (\d+) (years|months)", text)
    assert found, text
    saved, rate, time = map(exact, found.groups()[:3])
    interest = sum((saved * rate / 100 / 12 for _ in range(int(time.p) * 12)), fmpq(0))
    if found[4] == "months":
        interest /= 12
    return saved + interest if "in the account" in text else interest


READERS: dict[str, Callable[[Item, str], str | fmpq]] = {
    "percentages.of-amount": of_amount,
    "percentages.express": express,
    "percentages.change": change,
    "percentages.reverse": reverse,
    "percentages.repeated": repeated,
    "percentages.simple-interest": simple_interest,
}


@whole
@pytest.mark.parametrize("name", READERS)
def test_keys_are_found_again_from_what_is_printed(name: str) -> None:
    for item, text in sample(name):
        found = READERS[name](item, text)
        key = item.key.text if isinstance(item.key, t.Label) else line(item.key)
        said = key if isinstance(found, str) else exact(key)
        assert said == found, (item.address, text, key)
