"""Products of prime factors: of small numbers, of large ones, of products and of powers.

The programme of study for key stage 3 (England, 2013) asks pupils to "use the concepts and
vocabulary of prime numbers, factors …, prime factorisation, including using product notation and
the unique factorisation property" (from memory).
"""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction
from functools import cache
from typing import Any

from generators.number import _factor_mistakes as m
from generators.number._primes import (
    factors,
    in_index_form,
    is_prime,
    primes_of,
    product,
    written_out,
)
from itembank.items.item import Condition, Draft, Find, Give, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


class Kind(IntEnum):
    """What is to be written as a product of primes, or which prime is missing."""

    SMALL, BETWEEN = range(2)
    MIDDLE, BOX = range(2, 4)
    LARGE, PRODUCT, POWER = range(4, 7)


def _rich(n: int, most: int) -> bool:
    """Tell whether a number has three prime factors or more, none above a limit, not all alike."""
    return len(written_out(n)) >= 3 and primes_of(n)[-1][0] <= most and len(primes_of(n)) > 1


@cache
def _odd_between(a: int, b: int) -> int:
    """Return an odd number between two others that is not prime, 0 where there is none."""
    return next((n for n in range(a + 1, b) if n % 2 and not is_prime(n)), 0)


def _support(kind: int, a: int, b: int) -> bool:
    """Keep numbers up to 100, and gaps with two primes or more and an odd number that is none."""
    if kind == Kind.SMALL:
        return b == 10 and _rich(a, 19)
    inside = sum(is_prime(n) for n in range(a + 1, a + b))
    return a >= 8 and a % 2 == 0 and inside >= 2 and _odd_between(a, a + b) > 0


def _core(kind: int, a: int, b: int) -> bool:
    """Keep numbers of three figures, and products with a prime to be found."""
    if not _rich(a, 13):
        return False
    if kind == Kind.MIDDLE:
        return b == 0
    # The box stands for a prime that comes once; another prime is raised.
    primes = primes_of(a)
    return (
        b < len(primes)
        and len(primes) > 1
        and primes[b][1] == 1
        and any(k > 1 for _, k in primes)
        and not any(k == 2 == p for p, k in primes if k > 1)
    )


def _challenge(kind: int, a: int, b: int) -> bool:
    """Keep large numbers, products of two numbers that share a prime or more, and powers."""
    match kind:
        case Kind.LARGE:
            return b == 2 and a > 400 and _rich(a, 13) and len(written_out(a)) >= 5
        case Kind.PRODUCT:
            both = a <= 60 and 12 <= b < a and b <= 45 and not is_prime(a) and not is_prime(b)
            both = both and max(primes_of(a)[-1][0], primes_of(b)[-1][0]) <= 13
            both = both and len(primes_of(a)) > 1 < len(primes_of(b)) and (a + b) % 2 == 1
            return both and any(k > 1 for _, k in primes_of(a * b))
    return a in (6, 10, 12, 14, 15, 18, 20, 21, 22, 24, 35) and 2 <= b <= 6 and b != 2 + (a > 12)


@register
class PrimeFactors(Topic):
    """Small numbers and single primes; larger ones and boxes; then products and powers."""

    id = "number.prime-factors"
    title = "Products of prime factors"
    statements = ("number.primes",)
    prerequisites = ("number.factor-pairs",)
    misconceptions = (
        m.STOPS_BEFORE_PRIMES,
        m.EACH_ONCE,
        m.ONE_IS_PRIME,
        m.INDEX_TIMES,
        m.MISSES_A_BRANCH,
        m.ODD_FOR_PRIME,
        m.BEYOND,
        m.POWER_ON_ONE,
    )
    spare = "Numbers up to 100 with three prime factors or more are few."
    spaces = {
        Tier.SUPPORT: Space(_support, kind=tuple(Kind)[:2], a=range(8, 101), b=(6, 8, 10, 12, 14)),
        Tier.CORE: Space(_core, kind=tuple(Kind)[2:4], a=range(102, 701), b=range(4)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=tuple(Kind)[4:],
            a=(*range(6, 61), *range(420, 3001, 4), *range(405, 2500, 90)),
            b=range(2, 46),
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b = values
        twin = (int(kind), a, b)
        match kind:
            case Kind.BETWEEN:
                return _between(a, a + b, twin)
            case Kind.BOX:
                return _box(a, b, twin)
            case Kind.PRODUCT:
                return _of_product(a, b, twin)
            case Kind.POWER:
                return _of_power(a, b, twin)
        return _of_number(kind, a, twin)


def _stopped(n: int) -> t.Node:
    """Return the product of whoever stops early: the last two prime factors not yet split."""
    *kept, p, q = written_out(n)
    raised = [(r, kept.count(r)) for r in dict.fromkeys(kept)]
    return product((*raised, (p * q, 1)))


def _mistakes(n: int) -> list[Wrong]:
    primes = primes_of(n)
    wrong: list[Wrong] = [(m.STOPS_BEFORE_PRIMES, _stopped(n))]
    if all(k == 1 for _, k in primes):
        wrong.append((m.ONE_IS_PRIME, factors((1, *written_out(n)))))
        return wrong
    wrong.append((m.EACH_ONCE, product((p, 1) for p, _ in primes)))
    p, k = max(primes, key=lambda row: row[1])
    if (p, k) != (2, 2):  # 2 × 2 is 2 squared
        times = [q for q, j in primes for q in ([q] if j == 1 else [j, q])]
        wrong.append((m.INDEX_TIMES, factors(times)))
    return wrong


def _divided(n: int, target: t.Node) -> list[Step]:
    """Return working that divides by each prime as often as it goes, then writes powers."""
    steps, done, left, start = [], [], n, target
    for p, k in primes_of(n)[:-1]:
        done += [p] * k
        left //= p**k
        often = {1: "once", 2: "twice"}.get(k, f"{k} times")
        line = factors((*done, left))
        steps.append(Step(f"{p} goes into it {often}.", t.equals(start, line)))
        start = line
    if (out := factors(written_out(n))) != start:
        steps.append(Step("Split what is left into primes.", t.equals(start, out)))
        start = out
    if (key := in_index_form(n)) != start:
        steps.append(Step("Write equal factors as powers.", t.equals(start, key)))
    return steps


def _of_number(kind: int, n: int, twin: tuple[object, ...]) -> Draft:
    target = t.Int(n)
    what = "powers of its prime factors" if kind == Kind.LARGE else "its prime factors"
    return Draft(
        prompt(f"Write {{n}} as a product of {what}.", n=target),
        Find(target),
        in_index_form(n),
        "prime-powers" if kind == Kind.LARGE else "prime-factors",
        tuple(_divided(n, target)),
        slips(*_mistakes(n)),
        twin,
    )


def _between(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    x = t.Sym("x")
    key = next(n for n in range(a + 1, b) if is_prime(n))
    odd = _odd_between(a, b)
    after = next(n for n in range(b + 1, b + 30) if is_prime(n))
    steps = (
        Step(
            "Even numbers and multiples of 5 are out; try to divide the others by 3 and 7.",
            t.Relation(t.Int(a), (("<", t.Int(key)), ("<", t.Int(b)))),
        ),
        Step(f"Nothing but 1 and itself goes into {key}.", t.Int(key)),
    )
    return Draft(
        prompt("Write a prime number between {a} and {b}.", a=t.Int(a), b=t.Int(b)),
        Give(
            (x,),
            (t.Relation(t.Int(a), (("<", x), ("<", t.Int(b)))),),
            (Condition("prime"),),
        ),
        t.Int(key),
        "integer",
        steps,
        slips((m.ODD_FOR_PRIME, odd), (m.BEYOND, after)),
        twin,
    )


def _box(n: int, place: int, twin: tuple[object, ...]) -> Draft:
    """Ask for the prime that completes a product of powers."""
    primes = primes_of(n)
    box = t.Blank()
    rest = [prime for at, prime in enumerate(primes) if at != place]
    shown = t.times(*(product((factor,)) for factor in rest), box)
    asked = t.equals(t.Int(n), shown)
    known = n // primes[place][0]
    key = t.Int(primes[place][0])
    steps = (
        Step("Work out the part that is known.", t.equals(product(rest), t.Int(known))),
        Step(f"Divide {n} by it.", t.equals(box, t.divide(t.Int(n), t.Int(known)))),
        Step("Work it out.", t.equals(box, key)),
    )
    once, times = 1, 1
    for p, k in rest:
        once *= p
        times *= p if k == 1 else p * k
    wrong = slips((m.EACH_ONCE, Fraction(n, once)), (m.INDEX_TIMES, Fraction(n, times)))
    text = prompt("Find the number that goes in the box: {e}.", e=asked)
    return Draft(text, Find(box, (asked,)), key, "integer", steps, wrong, twin)


def _of_product(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    target = t.times(t.Int(a), t.Int(b))
    key = in_index_form(a * b)
    together = factors((*written_out(a), *written_out(b)))
    steps = (
        Step(f"Write {a} as a product of primes.", t.equals(t.Int(a), factors(written_out(a)))),
        Step(f"Write {b} as a product of primes.", t.equals(t.Int(b), factors(written_out(b)))),
        Step("Put all the factors together.", t.equals(target, together)),
        Step("Write equal factors as powers.", t.equals(together, key)),
    )
    raised = primes_of(a)
    wrong = slips(
        (m.STOPS_BEFORE_PRIMES, product((*raised, (b, 1)))),
        (m.EACH_ONCE, product((p, 1) for p, _ in primes_of(a * b))),
        key=key,
    )
    text = prompt("Without working it out, write {e} as a product of its prime factors.", e=target)
    return Draft(text, Find(target), key, "prime-factors", steps, wrong, twin)


def _of_power(a: int, n: int, twin: tuple[object, ...]) -> Draft:
    target = t.Power(t.Int(a), t.Int(n))
    primes = primes_of(a)
    key = product((p, k * n) for p, k in primes)
    steps = (
        Step(f"Write {a} as a product of primes.", t.equals(t.Int(a), in_index_form(a))),
        Step(f"Each prime stands there {n} times as often.", t.equals(target, key)),
    )
    first, *others = primes
    wrong = slips(
        (m.POWER_ON_ONE, product((first, *((p, k * n) for p, k in others)))),
        (m.STOPS_BEFORE_PRIMES, product(((a, 1), *((p, k * (n - 1)) for p, k in primes)))),
    )
    text = prompt("Write {e} as a product of powers of its prime factors.", e=target)
    return Draft(text, Find(target), key, "prime-powers", steps, wrong, twin)
