"""Mistakes of the bank to start from, carried out again from the printed question by their names.

Only the names that say a method in full have one here; the rest of the bank is read by people.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from math import gcd, lcm, prod
from pathlib import Path

from itembank.bank.read.load import read_bank

BANK = Path(__file__).parents[2] / "banks" / "key-stage-3"
Terms = list[tuple[int, Fraction, int, int]]


def braces(prompt: str) -> list[str]:
    return re.findall(r"\{([^{}]*)\}", prompt)


def numbers(prompt: str) -> list[Fraction]:
    """Return every number in braces, a mixed number as one, units left out."""
    text = " ; ".join(braces(prompt))
    found = re.findall(r"(?:(\d+) )?(\d+)/(\d+)|(\d+(?:\.\d+)?)", text)
    return [Fraction(n) if n else int(w or 0) + Fraction(int(a), int(b)) for w, a, b, n in found]


def fractions(prompt: str) -> Terms:
    """Return the proper fractions of a sum with their signs, numerators and denominators."""
    found = re.findall(r"([+-]?) ?(\d+)/(\d+)", braces(prompt)[0])
    return [
        (-1 if sign == "-" else 1, Fraction(int(a), int(b)), int(a), int(b)) for sign, a, b in found
    ]


def across(prompt: str) -> Fraction:
    terms = fractions(prompt)
    return Fraction(
        abs(sum(s * a for s, _, a, _ in terms)), abs(sum(s * b for s, _, _, b in terms))
    )


def kept(prompt: str) -> Fraction:
    terms = fractions(prompt)
    return Fraction(sum(s * a for s, _, a, _ in terms), lcm(*(b for *_, b in terms)))


def whole(prompt: str) -> list[int]:
    return [int(number) for number in numbers(prompt)]


def quotient(prompt: str) -> Fraction:
    first, second = numbers(prompt)
    return first / second


def one_part(prompt: str) -> Fraction:
    part, amount = numbers(prompt)
    return amount / part.denominator


SUM = r"^\{[^{}×÷^□]*/[^{}×÷^□]* [+-] [^{}×÷^□]*\}"
HCF, LCM = "highest common factor of", "lowest common multiple of"

# What is asked, the name of the mistake, and the method.
METHODS: tuple[tuple[str, str, Callable[[str], Fraction | int]], ...] = (
    (SUM, "adds the numerators and adds the denominators", across),
    (SUM, "subtracts the numerators and subtracts the denominators", across),
    (SUM, "changes the denominators? but not the numerators?", kept),
    (
        r"^\{\d+/\d+( × \d+/\d+)+\}",
        "adds the numerators and adds the denominators",
        lambda prompt: Fraction(
            sum(a for _, _, a, _ in fractions(prompt)), sum(b for *_, b in fractions(prompt))
        ),
    ),
    (
        r"^\{\d+/\d+ × \d+/\d+\}",
        "multiplies by the reciprocal of the second fraction, as if dividing",
        quotient,
    ),
    (
        r"^\{[\d /]+ ÷ [\d /]+\}",
        "multiplies by the (second )?(fraction|number)( instead of by its reciprocal)?",
        lambda prompt: prod(numbers(prompt)),
    ),
    (
        r"^\{\d+/\d+ ÷ \d+/\d+\}",
        "takes the reciprocal of the first fraction instead of the second",
        lambda prompt: 1 / quotient(prompt),
    ),
    (r"^\{\d+/\d+ of £?\d+( kg)?\}", "stops after finding one part", one_part),
    (
        r"^\{\d+/\d+ of £?\d+( kg)?\}",
        "divides by the numerator and multiplies by the denominator",
        lambda prompt: numbers(prompt)[1] / numbers(prompt)[0],
    ),
    (
        r"^\{\d+% of £?\d+( kg)?\}",
        "divides by the percentage",
        lambda prompt: numbers(prompt)[1] / numbers(prompt)[0],
    ),
    (HCF, "gives the lowest common multiple", lambda prompt: lcm(*whole(prompt))),
    (LCM, "gives the highest common factor", lambda prompt: gcd(*whole(prompt))),
    (LCM, "multiplies the numbers together", lambda prompt: prod(whole(prompt))),
    (LCM, "stops after the first two numbers", lambda prompt: lcm(*whole(prompt)[:2])),
    (
        "^Increase|^Decrease",
        "(adds|takes away) £?\\d+( g)? instead of \\d+%",
        lambda prompt: (
            numbers(prompt)[0] + (1 if "Increase" in prompt else -1) * numbers(prompt)[1]
        ),
    ),
    ("average speed in (km/h|m/s)", "divides the time by the distance", lambda p: 1 / quotient(p)),
)


def test_a_mistake_of_the_bank_is_what_its_named_method_gives() -> None:
    seen: dict[str, int] = {}
    for entry in read_bank(BANK).entries():
        item = entry.item
        asked = item.prompt.removeprefix("Work out ")
        for slip in item.misconceptions:
            for shape, name, method in METHODS:
                if not (re.search(shape, asked) and re.fullmatch(name, slip.name)):
                    continue
                (wrong,) = numbers("{" + slip.wrong + "}")
                assert wrong == method(item.prompt), (item.id, item.prompt, slip.name, slip.wrong)
                seen[name] = seen.get(name, 0) + 1
    # No method here is idle: each is that of at least one mistake of the bank.
    assert set(seen) == {name for _, name, _ in METHODS}
    assert sum(seen.values()) >= 55, seen
