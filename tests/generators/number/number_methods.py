"""Keys on number by python-flint, decimal arithmetic or counting out, from the printed text."""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal, localcontext
from typing import Any

from flint import fmpq

from itembank.figures.figure import kind_of
from itembank.items.item import Item
from itembank.notation import line
from tests.generators.number.number_reader import value

Answer = Any
"""A number, the key as it is written, several numbers, an expression, or what judges the key."""


def printed(item: Item) -> str:
    text = "".join(run if isinstance(run, str) else f"{{{line(run)}}}" for run in item.prompt)
    if item.figure is None:
        return text
    # A picture as it is read out to who cannot see it.
    return f"{text} {kind_of(item.figure).words(item.figure)}"


def same(answer: Answer, key: str) -> bool:
    if isinstance(answer, tuple):
        return answer == tuple(value(part) for part in key.split(", "))
    if isinstance(answer, str):
        return answer == key
    if callable(answer):
        return bool(answer(key))
    if isinstance(answer, Expression):
        return answer.says(key)
    return bool(answer == value(key))


def boxed(text: str) -> fmpq:
    """Return what goes in the box of an equation that is of the first degree in it.

    Its two sides differ by a linear function of the box, so two trials settle it.
    """
    left, right = text.split(" = ")

    def gap(trial: int) -> fmpq:
        put = f"({trial})"
        return value(left.replace("□", put)) - value(right.replace("□", put))

    at_two, at_three = gap(2), gap(3)
    slope = at_three - at_two
    found = 2 - at_two / slope
    assert gap(5) == at_two + 3 * slope  # it is of the first degree
    return found


def spoken(words: str) -> fmpq:
    """Return a number that is read out: negative 3 point 4."""
    text = words.replace("negative ", "-").replace(" point ", ".").replace(" ", "")
    return value(text)


def ordered(numbers: str, first: str) -> str:
    """Return a list in order, as its numbers are printed."""
    parts = numbers.split(", ")
    falling = first in ("largest", "heaviest", "longest")
    return ", ".join(sorted(parts, key=value, reverse=falling))


def signed(a: str, b: str) -> str:
    sign = "<" if value(a) < value(b) else ">" if value(a) > value(b) else "="
    return f"{a} {sign} {b}"


def digit_worth(digit: str, number: str) -> fmpq:
    whole, _, places = number.partition(".")
    assert (whole + places).count(digit) == 1
    assert digit in places
    return fmpq(int(digit), 10 ** (places.index(digit) + 1))


def marked(low: str, high: str, steps: str, at: str) -> fmpq:
    return spoken(low) + (spoken(high) - spoken(low)) * int(at) / int(steps)


def two_numbers(total: str, product: str) -> Answer:
    """Find two numbers by trying every whole number."""
    s, p = int(value(total)), int(value(product))
    found = [(n, s - n) for n in range(-200, 201) if n * (s - n) == p]
    assert len(found) == 2
    return tuple(fmpq(n) for n in max(found))  # the larger one first


class Expression:
    """An expression in letters, to be compared with another where they stand for numbers."""

    def __init__(self, text: str) -> None:
        self.text = text

    def at(self, start: int) -> fmpq:
        text, letters = self.text, sorted(set(re.findall("[a-z]", self.text)))
        text = re.sub(r"(?<=[\da-z])(?=[a-z])", "×", text)
        for place, letter in enumerate(letters):
            text = text.replace(letter, str(start + 4 * place))
        return value(text)

    def says(self, other: str) -> bool:
        letters = set(re.findall("[a-z]", self.text))
        assert set(re.findall("[a-z]", other)) == letters
        return all(self.at(n) == Expression(other).at(n) for n in (2, 3, 7))


def one_power(text: str, base: str) -> Callable[[str], bool]:
    """Tell whether a key is one power of the base, and worth what was asked."""

    def tells(key: str) -> bool:
        match = re.fullmatch(rf"{base}\^(\d+|\(-\d+\))", key)
        return match is not None and Expression(text).says(key)

    return tells


def worth(text: str) -> Decimal:
    """Return a number, a quotient or a product in the decimal module, to 60 figures."""
    with localcontext() as context:
        context.prec = 60
        found = value(text)
        return Decimal(int(found.p)) / Decimal(int(found.q))


def to_places(text: str, places: str) -> str:
    step = Decimal(1).scaleb(-int(places))
    return f"{worth(text).quantize(step, ROUND_HALF_UP):f}"


def to_nearest(text: str, step: str) -> str:
    size = Decimal(1 if step == "whole" else step)
    return f"{(worth(text) / size).quantize(Decimal(1), ROUND_HALF_UP) * size:f}"


def to_figures(text: str, figures: str) -> str:
    """Round in the decimal module, whose precision is counted in significant figures."""
    with localcontext() as context:
        context.prec, context.rounding = int(figures), ROUND_HALF_UP
        found = +worth(text)
        # 0.9 to two figures has them both; 8500 has no point.
        missing = int(figures) - len(found.as_tuple().digits)
        if missing > 0:
            found = found.quantize(Decimal(1).scaleb(found.as_tuple().exponent - missing))
        return f"{found:f}"


def standard(text: str) -> Callable[[str], bool]:
    """Tell whether a key is in standard form and worth what is asked."""

    def tells(key: str) -> bool:
        match = re.fullmatch(r"([1-9](?:\.\d*[1-9])?) × 10\^(\d+|\(-\d+\))", key)
        return match is not None and value(key) == value(text)

    return tells


def ordinary(text: str) -> str:
    """Move the digits of a number in standard form, as text."""
    match = re.fullmatch(r"(\d)(?:\.(\d+))? × 10\^(\d+|\(-\d+\))", text)
    assert match is not None
    digits, places = match[1] + (match[2] or ""), len(match[2] or "")
    power = int(match[3].strip("()")) - places
    if power >= 0:
        return digits + "0" * power
    digits = digits.rjust(1 - power, "0")
    return f"{digits[:power]}.{digits[power:]}"


def estimated(text: str) -> fmpq:
    """Round every number of a line, as text, and work it out; an index stays as it is."""

    def rough(match: re.Match[str]) -> str:
        return to_figures(match[0], "1")

    return value(re.sub(r"(?<!\^)(?<![\d.])\d+(?:\.\d+)?", rough, text))


def interval(letter: str, number: str, how: str, to: str) -> Callable[[str], bool]:
    """Tell whether the ends of a key are where rounding in the decimal module changes."""
    rule = ROUND_HALF_UP if how == "rounded" else ROUND_DOWN

    def come_to(x: Decimal) -> Decimal:
        if match := re.fullmatch(r"(\d) significant figures?", to):
            with localcontext() as context:
                context.prec, context.rounding = int(match[1]), rule
                return +x
        if match := re.fullmatch(r"(\d) decimal places?", to):
            return x.quantize(Decimal(1).scaleb(-int(match[1])), rule)
        size = Decimal(to.removeprefix("the nearest ").replace("whole number", "1"))
        return (x / size).quantize(Decimal(1), rule) * size

    def tells(key: str) -> bool:
        match = re.fullmatch(rf"([\d.]+) ≤ {letter} < ([\d.]+)", key)
        if match is None:
            return False
        low, high, shown = Decimal(match[1]), Decimal(match[2]), Decimal(number)
        little = Decimal("1e-9")
        inside = come_to(low) == shown == come_to(high - little)
        return inside and come_to(low - little) != shown != come_to(high)

    return tells


def prime(n: int) -> bool:
    return n > 1 and all(n % k for k in range(2, n))


def prime_product(text: str) -> Callable[[str], bool]:
    """Tell whether a key is a product of powers of primes that comes to the number."""

    def tells(key: str) -> bool:
        bases = [int(part.partition("^")[0]) for part in key.split(" × ")]
        return all(map(prime, bases)) and bases == sorted(set(bases)) and value(key) == value(text)

    return tells


def braces(text: str) -> list[int]:
    return [int(value(part)) for part in re.findall(r"\{(.+?)\}", text)]


def highest(text: str) -> fmpq:
    """Try every number from the smallest of them down."""
    numbers = braces(text)
    return fmpq(next(k for k in range(min(numbers), 0, -1) if not any(n % k for n in numbers)))


def lowest(text: str) -> fmpq:
    """Count up in the largest of them."""
    numbers = braces(text)
    step = max(numbers)
    return fmpq(next(k for k in range(step, 10**6, step) if not any(k % n for n in numbers)))


def the_other(factor: str, multiple: str, one: str) -> fmpq:
    """Try every number up to the multiple."""
    found = [
        n
        for n in range(1, int(multiple) + 1)
        if highest(f"{{{one}}} {{{n}}}") == int(factor)
        and lowest(f"{{{one}}} {{{n}}}") == int(multiple)
    ]
    assert len(found) == 1
    return fmpq(found[0])


def written_out(base: str, index: str) -> Callable[[str], bool]:
    return lambda key: key == " × ".join([base] * int(index))


def with_roots(numbers: str) -> str:
    """Return numbers and square roots in order of their squares."""
    parts = numbers.split(", ")

    def square(text: str) -> fmpq:
        return value(text[1:]) if text[0] == "√" else value(text) ** 2

    return ", ".join(sorted(parts, key=square))


def known(given: str, asked: str) -> fmpq:
    left, right = given.split(" = ")
    assert value(left) == value(right)  # what pupils are told is true
    return value(asked)


def how_often(large: str, small: str) -> fmpq:
    """Take the small amount off as often as it goes."""
    left, count = value(large), 0
    while left > 0:
        left -= value(small)
        count += 1
    assert left == 0
    return fmpq(count)
