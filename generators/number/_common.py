"""How a common factor or multiple of two or three numbers is asked for, and found by primes."""

from __future__ import annotations

from generators.number._primes import in_index_form
from itembank.items.item import Run, Step, prompt
from itembank.notation import tree as t


def find_common(what: str, shown: tuple[t.Node, ...], as_products: bool) -> tuple[Run, ...]:
    """Return the words that ask for the highest or lowest common `what` of two or three numbers.

    >>> find_common("highest common factor", (t.Int(12), t.Int(18)), False)[0]
    'Find the highest common factor of '
    """
    names = dict(zip("abc", shown, strict=False))
    if as_products:
        told = "Two numbers are written as products of primes: {a} and {b}. "
        return prompt(f"{told}Find their {what}.", **names)
    listed = "{a}, {b} and {c}" if len(shown) > 2 else "{a} and {b}"
    return prompt(f"Find the {what} of {listed}.", **names)


def split_into_primes(numbers: tuple[int, ...]) -> list[Step]:
    """Return the lines that write each number as a product of primes.

    >>> [step.say for step in split_into_primes((12, 18))]
    ['Write 12 as a product of primes.', 'Write 18 as a product of primes.']
    """
    return [
        Step(f"Write {n} as a product of primes.", t.equals(t.Int(n), in_index_form(n)))
        for n in numbers
    ]
