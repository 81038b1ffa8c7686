"""Highest common factors: from lists, from products of primes, of three numbers, in stories.

The programme of study for key stage 3 (England, 2013) asks pupils to "use the concepts and
vocabulary of … common factors, common multiples, highest common factor, lowest common multiple"
(from memory).
"""

from __future__ import annotations

from enum import IntEnum
from math import gcd, lcm, prod
from typing import Any

from generators._turns import by_turns
from generators.number import _factor_mistakes as m
from generators.number._common import find_common, found_by_primes
from generators.number._primes import in_index_form, is_prime, primes_of
from generators.number._writing import apart
from itembank.items import kinds
from itembank.items.item import Common, Condition, Draft, Give, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


class Kind(IntEnum):
    """Of which numbers the highest common factor is asked."""

    TWO, ONE_IN_OTHER, ANY = range(3)
    PRIMES, THREE, STORY = range(3, 6)
    PRODUCTS, LARGE, SQUARES = range(6, 9)


def _stopped(h: int) -> int:
    """Return a common factor that is not the highest."""
    return h // primes_of(h)[0][0]


def _once(h: int) -> int:
    return prod(p for p, _ in primes_of(h))


def _support(kind: int, a: int, b: int) -> bool:
    """Keep pairs up to 60 with a common factor that is found from lists of factors."""
    if not a < b:
        return False
    h = gcd(a, b)
    match kind:
        case Kind.TWO:
            return 4 <= h < a and len(primes_of(h)) + primes_of(h)[0][1] > 2
        case Kind.ONE_IN_OTHER:
            return h == a >= 6 and b <= 6 * a and len(primes_of(a)) + primes_of(a)[0][1] > 2
    # The key is the least common factor above 1; one number has a factor the other has not.
    return h >= 4 and not is_prime(h) and h < a and a >= 12 and _of_one(a, b) > 0


def _of_one(a: int, b: int) -> int:
    """Return a factor of the first number that is none of the second; 0 if there is none."""
    return next((k for k in range(2, a) if a % k == 0 and b % k), 0)


def _core(kind: int, a: int, b: int, c: int) -> bool:
    """Keep pairs to be split into primes, threes, and stories."""
    if not a < b or max(primes_of(a)[-1][0], primes_of(b)[-1][0]) > 11:
        return False
    h = gcd(a, b)
    if kind == Kind.THREE:
        if not b < c or primes_of(c)[-1][0] > 11:
            return False
        h = gcd(h, c)
        return h >= 6 and h < a and apart(h, _stopped(h), gcd(a, b), lcm(a, b, c))
    suits = c == 54 and h >= 8 and h < a and max(k for _, k in primes_of(h)) > 1
    return suits and apart(h, _once(h), _stopped(h))


def _challenge(kind: int, a: int, b: int, c: int) -> bool:
    """Keep products that are given, large threes, and squares that fill a yard."""
    if not a < b or max(primes_of(a)[-1][0], primes_of(b)[-1][0]) > 13:
        return False
    h = gcd(a, b)
    if kind == Kind.LARGE:
        if not b < c or primes_of(c)[-1][0] > 13:
            return False
        h = gcd(h, c)
        return h >= 18 and h < a and max(k for _, k in primes_of(h)) > 1 and gcd(a, b) > h
    suits = c == 180 and h >= 12 and h < a and max(k for _, k in primes_of(h)) > 1
    return suits and apart(h, _once(h), _stopped(h), lcm(a, b))


_STORIES = (
    "A market garden has {a} bean plants and {b} pea plants. Every tray must hold as many bean "
    "plants as every other tray, and as many pea plants, with none left over. What is the "
    "greatest possible number of trays?",
    "A school kitchen has {a} apples and {b} pears. Every bowl must hold as many apples as every "
    "other bowl, and as many pears, with none left over. What is the greatest possible number of "
    "bowls?",
    "A library has {a} novels and {b} atlases. Every box must hold as many novels as every other "
    "box, and as many atlases, with none left over. What is the greatest possible number of "
    "boxes?",
    "A swimming club has {a} girls and {b} boys. Every team must have as many girls as every "
    "other team, and as many boys, with nobody left over. What is the greatest possible number "
    "of teams?",
)
_SQUARES = (
    "The yard of a bus depot is {a} metres by {b} metres. It is marked out in equal squares, with "
    "no space left over. What is the length, in metres, of the side of the largest square that "
    "fits?",
    "A field of a market garden is {a} metres by {b} metres. It is divided into equal squares, "
    "with no space left over. What is the length, in metres, of the side of the largest square "
    "that fits?",
    "Two ropes of {a} metres and {b} metres are cut into pieces of equal length, with nothing "
    "left over. What is the greatest possible length, in metres, of a piece?",
)
_FIRST = (
    24, 30, 32, 36, 40, 42, 45, 48, 54, 56, 60, 63, 64, 66, 70, 72, 75, 80, 84, 90, 96,
)  # fmt: skip
_SECOND = (
    36, 40, 45, 48, 54, 56, 60, 64, 72, 75, 80, 84, 88, 90, 96, 98, 100, 108, 120, 126,
)  # fmt: skip
_LARGER_FIRST = (
    72, 84, 90, 96, 108, 120, 126, 132, 144, 150, 156, 168, 180, 198, 210, 216, 240, 252,
)  # fmt: skip
_LARGER_SECOND = (
    108, 120, 126, 132, 140, 144, 156, 168, 180, 196, 200, 210, 216, 225, 234, 252, 264, 270,
    280, 288, 300, 315,
)  # fmt: skip


@register
class Hcf(Topic):
    """From lists of factors; from products of primes; of given products and large numbers."""

    id = "number.hcf"
    title = "Highest common factor"
    statements = ("number.primes",)
    prerequisites = ("number.prime-factors",)
    misconceptions = (
        m.GIVES_LCM,
        m.STOPS_TOO_SOON,
        m.NOT_ITSELF,
        m.COMMON_MULTIPLE,
        m.OF_ONE_ONLY,
        m.SHARED_ONCE,
        m.FIRST_TWO,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=tuple(Kind)[:3], a=range(6, 49), b=range(12, 73))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core,
                kind=tuple(Kind)[3:6],
                a=_FIRST,
                b=_SECOND,
                c=(54, 60, 72, 84, 90, 96, 108, 120, 132, 140),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=tuple(Kind)[6:],
                a=_LARGER_FIRST,
                b=_LARGER_SECOND,
                c=(180, 210, 240, 252, 270, 288, 300, 324, 336, 360, 396, 420, 450),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c = (*values, 0)[:4]
        twin = (int(kind), a, b, c)
        if kind == Kind.ANY:
            return _any(a, b, twin)
        numbers = (a, b, c) if kind in (Kind.THREE, Kind.LARGE) else (a, b)
        h = gcd(*numbers)
        wrong: list[Wrong] = [(m.GIVES_LCM, lcm(*numbers))]
        if kind == Kind.ONE_IN_OTHER:
            wrong.append((m.NOT_ITSELF, _stopped(h)))
        else:
            wrong.append((m.STOPS_TOO_SOON, _stopped(h)))
        if kind in (Kind.PRIMES, Kind.STORY, Kind.PRODUCTS, Kind.LARGE, Kind.SQUARES):
            wrong.append((m.SHARED_ONCE, _once(h)))
        if kind in (Kind.THREE, Kind.LARGE):
            wrong.append((m.FIRST_TWO, gcd(a, b)))
        shown: tuple[t.Node, ...] = tuple(map(t.Int, numbers))
        if kind == Kind.PRODUCTS:
            shown = tuple(map(in_index_form, numbers))
        steps = _lists(numbers, h) if tier is Tier.SUPPORT else _by_primes(kind, numbers, h)
        if kind == Kind.STORY:
            text = prompt(by_turns(_STORIES, a // 2 + b // 3), a=shown[0], b=shown[1])
        elif kind == Kind.SQUARES:
            text = prompt(by_turns(_SQUARES, a // 6 + b // 6), a=shown[0], b=shown[1])
        else:
            text = find_common("highest common factor", shown, kind == Kind.PRODUCTS)
        return Draft(text, Common(shown, "hcf"), t.Int(h), "integer", steps, slips(*wrong), twin)


def _listed(n: int) -> str:
    found = [str(k) for k in range(1, n + 1) if n % k == 0]
    return ", ".join(found[:-1]) + f" and {found[-1]}"


def _lists(numbers: tuple[int, ...], h: int) -> tuple[Step, ...]:
    steps = [Step(f"The factors of {n} are {_listed(n)}.") for n in numbers]
    return (*steps, Step("The largest number in both lists is the answer.", t.Int(h)))


def _by_primes(kind: int, numbers: tuple[int, ...], h: int) -> tuple[Step, ...]:
    why = {
        Kind.STORY: "The number has to go into both.",
        Kind.SQUARES: "The length has to go into both.",
    }
    say = "Take each prime that they share, to the lowest power."
    split = () if kind == Kind.PRODUCTS else numbers
    return found_by_primes(why.get(Kind(kind), ""), split, say, h)


def _any(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Ask for any common factor above 1."""
    x = t.Sym("x")
    key = next(k for k in range(2, a) if a % k == 0 == b % k)
    steps = (
        Step(f"{key} goes into {a}.", t.equals(t.Int(a), t.times(t.Int(key), t.Int(a // key)))),
        Step(f"{key} goes into {b}.", t.equals(t.Int(b), t.times(t.Int(key), t.Int(b // key)))),
        Step("So it is a common factor.", t.Int(key)),
    )
    ask = Give(
        (x,),
        (t.relate(x, ">", t.Int(1)),),
        (Condition("factor", (t.Int(a),)), Condition("factor", (t.Int(b),))),
    )
    wrong = slips((m.COMMON_MULTIPLE, lcm(a, b)), (m.OF_ONE_ONLY, _of_one(a, b)))
    text = prompt(
        "Write a common factor of {a} and {b} that is greater than {o}.",
        a=t.Int(a),
        b=t.Int(b),
        o=t.Int(1),
    )
    return Draft(text, ask, t.Int(key), "integer", steps, wrong, twin)
