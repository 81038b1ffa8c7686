"""Terms of sequences, multiples, primes and times said in words.

*The next term*, *the 10th term*, *the first five multiples of* {7}, *the next prime after* {23}:
the number that is meant is found here and stands in the tree that is worked out. A sequence is
gone on with where its steps are all alike (three terms or more) or its ratios are (four or more).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from functools import partial
from itertools import count, pairwise
from math import gcd, isqrt

from itembank.notation.clock import times_in
from itembank.notation.tree import (
    Bracket,
    ClockTime,
    Frac,
    Int,
    Juxt,
    Listing,
    Node,
    Power,
    Product,
    Relation,
    Sum,
    Sym,
    children,
    symbols,
)
from itembank.notation.value import exact
from itembank.wording.arithmetic import Saying
from itembank.wording.numbers import ORDINALS
from itembank.wording.phrases import COUNTS
from itembank.wording.sums import Built, NotBuilt, as_part, less

Words = Mapping[str, str]
MOST = 1000
"""No term further on than this is worked out, and no number larger than its square looked at."""

_PLACES = {**ORDINALS, "twentieth": 20, "thirtieth": 30, "fiftieth": 50, "hundredth": 100}
_PLACE = rf"(?P<place>\d{{1,4}}(?:st|nd|rd|th)|{'|'.join(_PLACES)})"
_HOW_MANY = rf"(?P<many>{'|'.join(COUNTS)}|\d{{1,2}})"


def _place(words: Words) -> int:
    said = words["place"]
    place = _PLACES.get(said) or int(re.sub(r"\D", "", said))
    if not 1 <= place <= MOST:
        raise NotBuilt("That term is too far on to be worked out here.")
    return place


def _many(words: Words) -> int:
    said = words.get("many", "")
    found = COUNTS.get(said) or (int(said) if said else 1)
    if not 1 <= found <= 12:
        raise NotBuilt("That is more terms than are worked out here.")
    return found


def _number(node: Node) -> int:
    value = Fraction(0) if symbols(node) else exact(node)
    if not isinstance(node, Int) or value <= 0 or value > MOST**2:
        raise NotBuilt("This takes a positive whole number that is not too large.")
    return node.n


def _listed(nodes: Sequence[Node]) -> tuple[Node, ...]:
    parts = nodes[0].parts if len(nodes) == 1 and isinstance(nodes[0], Listing) else tuple(nodes)
    if len(parts) < 3 or any(symbols(part) for part in parts):
        raise NotBuilt("A sequence takes three numbers or more, to see how it goes on.")
    return parts


def _after_the_last(parts: Sequence[Node], steps: int) -> Built:
    """Return the term so many steps after the last that is printed."""
    values = [exact(part) for part in parts]
    last, before = parts[-1], parts[-2]
    if len({b - a for a, b in pairwise(values)}) == 1:
        step = Bracket(less(last, before)[0])
        more: Node = step if steps == 1 else Product(Int(steps), (("×", step),))
        return Sum(as_part(last), (("+", more),)), (steps,)
    if len(parts) > 3 and all(values) and len({b / a for a, b in pairwise(values)}) == 1:
        ratio: Node = Bracket(Product(as_part(last), (("÷", as_part(before)),)))
        times: Node = ratio if steps == 1 else Power(ratio, Int(steps))
        return Product(as_part(last), (("×", times),)), (steps,)
    raise NotBuilt("How this sequence goes on is not known: its steps are not all alike.")


def _next(words: Words, *nodes: Node) -> Built:
    parts, many = _listed(nodes), _many(words)
    made = [_after_the_last(parts, step) for step in range(1, many + 1)]
    if many == 1:
        return made[0]
    return Listing(tuple(node for node, _ in made)), tuple(range(1, many + 1))


def _term(words: Words, *nodes: Node) -> Built:
    return _term_at(_place(words), nodes)


def _numbered_term(place: Node, *nodes: Node) -> Built:
    return _term_at(_number(place), nodes)


def _term_at(place: int, nodes: Sequence[Node]) -> Built:
    if len(nodes) == 1 and symbols(nodes[0]) == {"n"}:
        return _with_n(nodes[0], place), (place,)
    parts = _listed(nodes)
    if place <= len(parts):
        raise NotBuilt("That term is printed.")
    return _after_the_last(parts, place - len(parts))


def _first_terms(words: Words, *nodes: Node) -> Built:
    if len(nodes) != 1 or symbols(nodes[0]) != {"n"} or not words.get("many"):
        raise NotBuilt("The first terms come from an nth term, and it has to be said how many.")
    many = _many(words)
    return Listing(tuple(_with_n(nodes[0], n) for n in range(1, many + 1))), tuple(
        range(1, many + 1)
    )


def _with_n(node: Node, n: int, letter: str = "n") -> Node:
    """Return an expression with a number for n: 5n − 2 with 10 is 5 × 10 − 2."""
    match node:
        case Sym(name) if name == letter:
            return Int(n)
        case Juxt(factors):
            first, *rest = (_with_n(factor, n, letter) for factor in factors)
            return Product(first, tuple(("×", factor) for factor in rest))
        case Sum(first, terms):
            return Sum(
                _with_n(first, n, letter),
                tuple((op, _bracketed(_with_n(term, n, letter))) for op, term in terms),
            )
        case Product(first, terms):
            return Product(
                _with_n(first, n, letter),
                tuple((op, _with_n(term, n, letter)) for op, term in terms),
            )
        case Power(base, exponent):
            return Power(_with_n(base, n, letter), _with_n(exponent, n, letter))
        case Bracket(of):
            return Bracket(_with_n(of, n, letter))
        case Frac(top, bottom):
            return Frac(_with_n(top, n, letter), _with_n(bottom, n, letter))
    if any(symbols(child) for child in children(node)):
        raise NotBuilt("A term of this sequence is not worked out here.")
    return node


def _bracketed(node: Node) -> Node:
    return Bracket(node) if isinstance(node, Sum) else node


def _first_multiples(words: Words, number: Node) -> Built:
    n, many = _number(number), _many(words)
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
        _number(part)
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
    n = _count_of_factors(_number(number))
    return Int(n), (n,)


def _between(words: Words, *nodes: Node) -> Built:
    """Return the multiples, primes, squares … between two numbers, or below one.

    Whether *between* takes in its ends is not said, so none of them may be of the kind.
    """
    kind = words.get("kind", "")
    of = _number(nodes[0]) if not kind else 0
    ends = [_number(node) for node in (nodes if kind else nodes[1:])]
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


def _line_at(line: Node, x: int) -> Node:
    """Return y of a straight line y = … at a whole number x.

    Raises:
        NotBuilt: it is no equation y = …, or no straight line.
    """
    match line:
        case Relation(Sym("y"), (("=", side),)) if symbols(side) <= {"x"}:
            values = [exact(_with_n(side, k, "x")) for k in range(5)]
            if len({b - a for a, b in pairwise(values)}) == 1:
                return Bracket(_with_n(side, x, "x"))
    raise NotBuilt("This is read off a straight line that is given as y = ….")


def _gradient(line: Node) -> Built:
    """Return by how much y grows where x grows by 1, from 0 to 1."""
    return Sum(_line_at(line, 1), (("-", _line_at(line, 0)),)), (0, 1)


def _intercept(line: Node) -> Built:
    return _line_at(line, 0), (0,)


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
    way, start = _way(words), _number(limit)
    is_one = next(test for kind, test in _KINDS if words["kind"].startswith(kind))
    for n in count(start + way, way):
        if n <= 0 or n > 2 * MOST**2:
            raise NotBuilt("There is no such number.")
        if is_one(n):
            return Int(n), (n,)
    raise AssertionError


def _multiple_beyond(words: Words, of: Node, limit: Node) -> Built:
    way, n, start = _way(words), _number(of), _number(limit)
    times = start // n + 1 if way > 0 else (start - 1) // n
    if times < 1:
        raise NotBuilt("There is no such multiple.")
    return Product(Int(n), (("×", Int(times)),)), (times,)


def _time_between(start: Node, end: Node) -> Built:
    if not isinstance(start, ClockTime) or not isinstance(end, ClockTime):
        raise NotBuilt("How long it is takes two times of day.")
    if exact(end) <= exact(start):
        raise NotBuilt("The second time is not after the first on the same day.")
    return Sum(end, (("-", start),)), ()


def _time_moved(sign: str) -> Callable[[Node, Node], Built]:
    def build(by: Node, start: Node) -> Built:
        moved = Sum(start, ((sign, by),))  # type: ignore[arg-type]
        if not isinstance(start, ClockTime) or times_in(moved) != 1:
            raise NotBuilt("What time it is takes a length of time and a time of day.")
        return moved, ()

    return build


_IN = (
    r"(?: (?:of|in|for)(?: (?:this|the|each))?(?: (?:linear|arithmetic|geometric|number|following))?"
    r"(?: (?:sequence|pattern|list))?(?: of numbers)?)"
)
_SAID = r"(?: (?:with|whose|that has)(?: (?:the|an))? n\s?th term(?: (?:is|of|rule))?)"
_TERMS = r"(?:terms?|numbers?)"
_FROM_TO = r"(?:(?:between|from) <M> (?:and|to|until|till) <M>)"
_ALL = r"(?:all(?: of)? )?the(?: positive)?"
_THERE = r"(?: (?:is it|are there|is there|are|pass|passes))?"

TERM_SAYINGS = (
    Saying(rf"<FIND> the next (?:{_HOW_MANY} )?{_TERMS}{_IN}:? <Ms>", _next),
    Saying(rf"<FIND> the next (?:{_HOW_MANY} )?{_TERMS}{_IN}?", _next, "", True),
    Saying(rf"(?:what|which) (?:number|term)? ?comes next{_IN}?:? <Ms>", partial(_next, {})),
    Saying(rf"(?:what|which) (?:number|term)? ?comes next{_IN}?", partial(_next, {}), "", True),
    Saying(rf"continue (?:this|the) sequence for (?:{_HOW_MANY} )(?:more )?terms", _next, "", True),
    Saying(rf"<FIND> the {_PLACE} {_TERMS}{_IN}{_SAID}?:? <Ms>", _term),
    Saying(rf"<FIND> the {_PLACE} {_TERMS}{_IN}?", _term, "", True),
    Saying(rf"<FIND> the <M>(?:st|nd|rd|th) {_TERMS}{_IN}{_SAID}?:? <Ms>", _numbered_term),
    Saying(rf"<FIND> the first {_HOW_MANY} {_TERMS}{_IN}{_SAID}?:? <M>", _first_terms),
    Saying(rf"<FIND> the first {_HOW_MANY} {_TERMS}{_IN}?", _first_terms, "", True),
    Saying(rf"(?:list|write out) the first {_HOW_MANY} {_TERMS}{_IN}{_SAID}?:? <M>", _first_terms),
    Saying(rf"<FIND> the first {_HOW_MANY} multiples of <NP>", _first_multiples),
    Saying(rf"list the first {_HOW_MANY} multiples of <NP>", _first_multiples),
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
    Saying(
        r"<FIND> the gradient of(?: the)?(?: (?:straight )?line| graph)?(?: (?:of|with equation))? <NP>",
        _gradient,
    ),
    Saying(
        r"<FIND> the y-?\s?intercept of(?: the)?(?: (?:straight )?line| graph)?(?: (?:of|with equation))? <NP>",
        _intercept,
    ),
    Saying(rf"how long(?: is it| is there| passes)? {_FROM_TO}", _time_between),
    Saying(rf"how (?:much time|many (?:minutes|hours|seconds)){_THERE} {_FROM_TO}", _time_between),
    Saying(
        rf"<FIND> the (?:time|length of time|number of minutes|time difference) {_FROM_TO}",
        _time_between,
    ),
    Saying(r"what(?: time is| is the time)(?: it)? <M> (?:after|later than) <M>", _time_moved("+")),
    Saying(
        r"what(?: time is| is the time)(?: it)? <M> (?:before|earlier than) <M>", _time_moved("-")
    ),
)
