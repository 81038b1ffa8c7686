"""How a common factor or multiple of two or three numbers is asked for, and found by primes."""

from __future__ import annotations

from generators.number._primes import in_index_form, primes_of, product
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


def found_by_primes(why: str, split: tuple[int, ...], say: str, found: int) -> tuple[Step, ...]:
    """Return the steps to a common factor or multiple: numbers to `split`, then primes to take.

    >>> told = found_by_primes("It goes into both.", (12, 18), "Take what they share.", 6)
    >>> [step.say for step in told][:2]
    ['It goes into both.', 'Write 12 as a product of primes.']
    """
    key, taken = t.Int(found), product(primes_of(found))
    return (
        *((Step(why),) if why else ()),
        *(
            Step(f"Write {n} as a product of primes.", t.equals(t.Int(n), in_index_form(n)))
            for n in split
        ),
        # A prime is its own product: there is nothing to show.
        Step(say, t.equals(taken, key) if taken != key else key),
    )
