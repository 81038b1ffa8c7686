"""Multiples, factors and primes said in words: *the first five multiples of* {7}, *the next prime*.

The number that is meant is found here, by trying every number, and stands in the tree that is
worked out.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import partial
from itertools import count
from math import gcd, isqrt

from itembank.notation.tree import Int, Listing, Node, Product, symbols
from itembank.notation.value import exact
from itembank.wording.sentences.phrases import COUNTS
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sums.sums import Built, NotBuilt

Words = Mapping[str, str]
MOST = 1000
"""No term further on than this is worked out, and no number larger than its square looked at."""

HOW_MANY = rf"(?P<many>{'|'.join(COUNTS)}|\d{{1,2}})"


def how_many(words: Words) -> int:
    """Return how many the words name, 1 where they name none."""
    said = words.get("many", "")
    found = COUNTS.get(said) or (int(said) if said else 1)
    if not 1 <= found <= 12:
        raise NotBuilt("From 1 to 12 terms are worked out here.")
    return found


def whole_number(node: Node) -> int:
    """Return a positive whole number that is not too large to look at."""
    value = Fraction(0) if symbols(node) else exact(node)
    if not isinstance(node, Int) or value <= 0 or value > MOST**2:
        raise NotBuilt("This takes a positive whole number that is not too large.")
    return node.n


def _first_multiples(words: Words, number: Node) -> Built:
    n, many = whole_number(number), how_many(words)
    if not words.get("many"):
        raise NotBuilt("It has to be said how many multiples.")
    products = tuple(Product(Int(n), (("×", Int(k)),)) for k in range(1, many + 1))
    return Listing(products), tuple(range(1, many + 1))


def _is_prime(n: int) -> bool:
    return n > 1 and all(n % k for k in range(2, isqrt(n) + 1))


_KINDS: tuple[tuple[str, Callable[[int], bool]], ...] = (
    ("prime", _is_prime),
    ("square", lambda n: n > 0 and isqrt(n) ** 2 == n),
    ("cube", lambda n: any(k**3 == n for k in range(1, 101))),
    ("even", lambda n: n % 2 == 0),
    ("odd", lambda n: n % 2 == 1),
)


def _factors(*nodes: Node) -> Built:
    """Return the factors that whole numbers have in common, all of them, smallest first.

    Two ways have to find as many: trying every number, and the exponents of the primes.
    """
    numbers = [
        whole_number(part)
        for node in nodes
        for part in (node.parts if isinstance(node, Listing) else (node,))
    ]
    found = [k for k in range(1, min(numbers) + 1) if all(n % k == 0 for n in numbers)]
    if len(found) != _count_of_factors(gcd(*numbers)) or len(found) < 2:
        raise NotBuilt("This number has no list of factors to write down.")
    return Listing(tuple(Int(k) for k in found)), tuple(found)


def _count_of_factors(n: int) -> int:
    how_many, prime = 1, 2
    while n > 1:
        exponent = 0
        while n % prime == 0:
            n, exponent = n // prime, exponent + 1
        how_many *= exponent + 1
        prime += 1
    return how_many


def _how_many_factors(number: Node) -> Built:
    n = _count_of_factors(whole_number(number))
    return Int(n), (n,)


def _between(words: Words, *nodes: Node) -> Built:
    """Return the multiples, primes, squares … between two numbers, or below one.

    Whether *between* takes in its ends is not said, so none of them may be of the kind.
    """
    kind = words.get("kind", "")
    of = whole_number(nodes[0]) if not kind else 0
    ends = [whole_number(node) for node in (nodes if kind else nodes[1:])]
    low, high = (0, ends[0]) if len(ends) == 1 else (ends[0], ends[1])
    if high > 1000:
        raise NotBuilt("These are more numbers than are listed here.")

    def fits(n: int) -> bool:
        return n % of == 0 if of else next(t for k, t in _KINDS if kind.startswith(k))(n)

    if fits(high) or (low and fits(low)):
        raise NotBuilt("Whether the ends are to be listed is not said.")
    found = [n for n in range(low + 1, high) if fits(n)]
    if len(found) < 2 or kind in ("even", "odd"):
        raise NotBuilt("There are not two such numbers to list.")
    return Listing(tuple(Int(n) for n in found)), tuple(found)


_UP = ("next", "first", "smallest", "lowest", "least")
_DOWN = ("previous", "last", "largest", "biggest", "highest", "greatest")
_ABOVE = ("after", "above", "greater than", "bigger than", "larger than", "more than", "over")
_SIDE = (
    r"(?:(?:that|which) (?:is|comes) )?(?P<side>after|above|greater than|bigger than|larger than|"
    r"more than|over|before|below|less than|smaller than|under)"
)
_WHICH = rf"(?:(?P<which>{'|'.join((*_UP, *_DOWN))}) )"


def _way(words: Words) -> int:
    """Return 1 or −1, the way to count on, where the words go one way only."""
    which, side = words.get("which", ""), words["side"]
    up = side in _ABOVE
    if which and (which in _UP) is not up:
        raise NotBuilt(f"The {which} number {side} another is no one number.")
    if not which and side not in ("after", "before"):
        raise NotBuilt(f"There are many numbers {side} another.")
    return 1 if up else -1


def _number_beyond(words: Words, limit: Node) -> Built:
    way, start = _way(words), whole_number(limit)
    is_one = next(test for kind, test in _KINDS if words["kind"].startswith(kind))
    for n in count(start + way, way):
        if n <= 0 or n > 2 * MOST**2:
            raise NotBuilt("There is no such number.")
        if is_one(n):
            return Int(n), (n,)
    raise AssertionError


def _multiple_beyond(words: Words, of: Node, limit: Node) -> Built:
    way, n, start = _way(words), whole_number(of), whole_number(limit)
    times = start // n + 1 if way > 0 else (start - 1) // n
    if times < 1:
        raise NotBuilt("There is no such multiple.")
    return Product(Int(n), (("×", Int(times)),)), (times,)


_ALL = r"(?:all(?: of)? )?the(?: positive)?"

WHOLE_NUMBER_SAYINGS = (
    Saying(rf"<FIND> the first {HOW_MANY} multiples of <NP>", _first_multiples),
    Saying(rf"list the first {HOW_MANY} multiples of <NP>", _first_multiples),
    Saying(rf"<FIND> {_ALL} factors of <NP>", _factors, any_order=True),
    Saying(rf"list {_ALL} factors of <NP>", _factors, any_order=True),
    Saying(
        r"how many factors (?:does <NP> have|has <NP>(?: got)?|are there of <NP>)",
        _how_many_factors,
    ),
    *(
        Saying(rf"{verb} {_ALL} {what} {where}", build, any_order=True)
        for verb in ("<FIND>", "list")
        for what, build in (
            ("(?P<kind>prime|square|cube)(?: numbers?|s)?", _between),
            ("multiples of <NP>", partial(_between, {})),
        )
        for where in ("between <NP> and <NP>", "(?:less than|below|under|smaller than) <NP>")
    ),
    Saying(rf"<FIND> {_ALL} common factors of <NPs>", _factors, any_order=True),
    Saying(rf"list {_ALL} common factors of <NPs>", _factors, any_order=True),
    Saying(
        rf"<FIND> the {_WHICH}?(?P<kind>prime|square|cube|even|odd)(?: number)? {_SIDE} <NP>",
        _number_beyond,
    ),
    Saying(
        r"(?:what|which) (?P<kind>prime|square|cube|even|odd)(?: number)? comes (?:(?P<which>next|straight|just|immediately) )?(?P<side>after|before) <NP>",
        lambda words, limit: _number_beyond({**words, "which": ""}, limit),
    ),
    Saying(rf"<FIND> the {_WHICH}multiple of <M> {_SIDE} <NP>", _multiple_beyond),
)
