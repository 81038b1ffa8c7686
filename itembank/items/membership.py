"""Whether an answer is one of the many right answers to a question, by exact arithmetic.

Marking and the first road ask this one place; the second road has a decision of its own.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache
from itertools import permutations
from math import isqrt

from itembank.fraction import Fraction
from itembank.items.asks.give import CONDITIONS, Condition, Give
from itembank.items.forms.form_rules import number_node
from itembank.items.forms.number_forms import bare
from itembank.items.forms.value_forms import LARGEST_PRIME, is_prime
from itembank.notation import tree as t
from itembank.notation.algebra import algebra, number, rational
from itembank.notation.line import shown_line
from itembank.notation.linear import constant, linear
from itembank.notation.value import NotExact, exact

_SAID = {"<": "less than", ">": "more than", "≤": "at most", "≥": "at least", "=": "equal to"}


def given_values(ask: Give, answer: t.Node) -> tuple[t.Node, ...]:
    """Return the numbers that an answer gives, as written: one, or those of a list.

    Where several are asked for, a product or a sum gives each of its numbers, if the question
    multiplies or adds them. In a line of numbers that is no such thing the number counts that is
    not the question's own: 8 in 3 < 8, and both in 3 × 8 = 24.

    >>> from itembank.notation import parse
    >>> pair = Give((t.Sym("a"), t.Sym("b")), (parse("a × b = 24"),))
    >>> [len(given_values(pair, parse(text))) for text in ("4, 6", "4 × 6 = 24", "4 + 6", "5")]
    [2, 2, 1, 1]
    >>> given_values(Give((t.Sym("x"),), (parse("1/3 < x < 1/2"),)), parse("4/12 < 5/12 < 6/12"))
    (Frac(num=Int(n=5), den=Int(n=12)),)
    """
    match answer:
        case t.Bracket(of):
            return given_values(ask, of)
        case t.Listing(parts) | t.Either(parts):
            return tuple(value for part in parts for value in given_values(ask, part))
        case t.Relation(t.Sym(), (("=", value),)) | t.Relation(value, (("=", t.Sym()),)):
            return (value,)
        case t.Relation() if not t.symbols(answer):
            return _of_line(ask, t.children(answer)) or (answer,)
        case t.Product(first, rest) | t.Sum(first, rest) if len(ask.letters) > 1:
            plain = {op for op, _ in rest} in ({"×"}, {"+"})
            asked = (part for relation in ask.relations for part in t.walk(relation))
            if plain and any(type(part) is type(answer) for part in asked):
                return (first, *(part for _, part in rest))
    return (answer,)


def _of_line(ask: Give, sides: Sequence[t.Node]) -> tuple[t.Node, ...]:
    """Return the numbers that a line of numbers gives, none where it gives no one answer."""
    several = [found for side in sides if len(found := given_values(ask, side)) > 1]
    if several:
        return several[0] if len(several) == 1 else ()
    trees = (*ask.relations, *(node for condition in ask.conditions for node in condition.of))
    own = {exact(part) for tree in trees for part in t.walk(tree) if _is_number(part)}
    # By worth, so that 4/12 counts as the question's 1/3.
    loose = [side for side in sides if exact(side) not in own]
    return tuple(loose) if len(loose) == 1 else ()


def _is_number(node: t.Node) -> bool:
    return not isinstance(node, t.Relation) and not t.symbols(node)


def is_member(ask: Give, answer: t.Node) -> bool:
    """Tell whether an answer is right.

    Raises:
        NotExact: a number of it, or of the question, has no exact rational value.

    >>> from itembank.notation import parse
    >>> between = Give((t.Sym("x"),), (parse("1/3 < x < 1/2"),))
    >>> is_member(between, parse("2/5")), is_member(between, parse("1/2"))
    (True, False)
    """
    shown = given_values(ask, answer)
    if _false(answer) or len(shown) != len(ask.letters):
        return False
    return are_right(ask, [_number(node) for node in shown])


def are_right(ask: Give, values: Sequence[Fraction]) -> bool:
    """Tell whether numbers, as many as are asked for, are right in some order.

    It says nothing of why not, so it puts nothing into words: a search asks it hundreds of times.

    Raises:
        NotExact: a number of the question has no exact rational value.

    >>> from itembank.notation import parse
    >>> pair = Give((t.Sym("a"), t.Sym("b")), (parse("a × b = 24"),), (Condition("whole"),))
    >>> are_right(pair, [Fraction(6), Fraction(4)]), are_right(pair, [Fraction(3), Fraction(7)])
    (True, False)
    """
    if not all(_is_met(condition, values) for condition in ask.conditions):
        return False
    names = [letter.name for letter in ask.letters]
    return any(
        all(_holds(relation, dict(zip(names, order, strict=True))) for relation in ask.relations)
        for order in permutations(values)
    )


def unmet(ask: Give, answer: t.Node) -> str:
    """Return the first thing that keeps an answer from being right, or ``""``.

    It is a sentence without its capital and its full stop, and true. Numbers may be given in any
    order: they are right where some order of them is.

    Raises:
        NotExact: a number of the answer, or of the question, has no exact rational value.

    >>> from itembank.notation import parse
    >>> pair = Give((t.Sym("a"), t.Sym("b")), (parse("a × b = 24"),), (Condition("whole"),))
    >>> unmet(pair, parse("6, 4")), unmet(pair, parse("3, 7"))
    ('', '3 × 7 is 21, not 24')
    >>> unmet(pair, parse("2.4, 10")), unmet(pair, parse("24"))
    ('2.4 is not a whole number', 'two numbers are asked for')
    """
    shown = given_values(ask, answer)
    wanted = len(ask.letters)
    # First: in a line that is not true no number is an answer, even where one would do.
    if fault := _false(answer):
        return fault
    if len(shown) != wanted:
        return f"{_COUNTS.get(wanted, str(wanted))} asked for"
    values = [_number(node) for node in shown]
    if are_right(ask, values):
        return ""
    for condition in ask.conditions:
        if not _is_met(condition, values):
            return _condition_unmet(condition, shown, values)
    return _relations_unmet(ask, shown, values)


def _number(node: t.Node) -> Fraction:
    """Return what a number is worth; a time of day is none, though it has a value in sums."""
    if any(isinstance(part, t.ClockTime) for part in t.walk(node)):
        raise NotExact("a time of day is no number")
    return exact(node)


def _false(answer: t.Node) -> str:
    """Return that a line of numbers is not true, as 4 × 6 = 25 is not, or ``""``."""
    if not isinstance(answer, t.Relation) or t.symbols(answer):
        return ""
    left = exact(answer.first)
    for op, side in answer.rest:
        right = exact(side)
        if not _HOLDS[op](left, right):
            return f"{shown_line(answer)} is not true"
        left = right
    return ""


_COUNTS = {1: "one number is", 2: "two numbers are", 3: "three numbers are"}


def _is_met(condition: Condition, values: Sequence[Fraction]) -> bool:
    if condition.name == "different":
        return len({*values}) == len(values)
    of = [exact(node) for node in condition.of]
    return all(_MEETS[condition.name](value, *of) for value in values)


def _condition_unmet(
    condition: Condition, shown: Sequence[t.Node], values: Sequence[Fraction]
) -> str:
    if condition.name == "different":
        return "the numbers are not different"
    of = [exact(node) for node in condition.of]
    for node, value in zip(shown, values, strict=True):
        if not _MEETS[condition.name](value, *of):
            said = CONDITIONS[condition.name][1].format(*map(shown_line, condition.of))
            if condition.name == "factor" and value < 0:
                return f"{shown_line(node)} is less than 0, and factors are taken to be more than 0"
            return f"{shown_line(node)} is not {said}"
    return ""


def _whole(value: Fraction) -> bool:
    return value.denominator == 1


def _root(value: Fraction, index: int) -> bool:
    """Tell whether a number is the square or cube of a whole number above 0."""
    if not _whole(value) or value < 1:
        return False
    n = value.numerator
    if index == 2:
        return isqrt(n) ** 2 == n
    # In whole numbers, by halving: a float's cube root is a little off, and wrong for long ones.
    low, high = 1, 1 << (n.bit_length() // 3 + 1)
    while low < high:
        middle = (low + high) // 2
        low, high = (middle + 1, high) if middle**3 < n else (low, middle)
    return low**3 == n


def _prime(value: Fraction) -> bool:
    # Refused, not called composite: the other road asks a test that knows larger primes.
    if value > LARGEST_PRIME:
        raise NotExact("this is too large to tell whether it is prime")
    return _whole(value) and is_prime(value.numerator)


_MEETS: dict[str, Callable[..., bool]] = {
    "whole": _whole,
    "positive": lambda value: value > 0,
    "negative": lambda value: value < 0,
    "even": lambda value: _whole(value / 2),
    "odd": lambda value: _whole(value) and not _whole(value / 2),
    "prime": _prime,
    "square": lambda value: _root(value, 2),
    "cube": lambda value: _root(value, 3),
    "multiple": lambda value, of: _whole(value) and of != 0 and _whole(value / of),
    "factor": lambda value, of: _whole(value) and value > 0 and _whole(of / value),
}


def _holds(relation: t.Relation, at: dict[str, Fraction]) -> bool:
    """Tell whether a relation is true where its letters are worth what `at` says."""
    left = _worth(relation.first, at)
    for op, side in relation.rest:
        right = _worth(side, at)
        if not _HOLDS[op](left, right):
            return False
        left = right
    return True


def _relations_unmet(ask: Give, shown: Sequence[t.Node], values: Sequence[Fraction]) -> str:
    at = {letter.name: value for letter, value in zip(ask.letters, values, strict=True)}
    relation = next(relation for relation in ask.relations if not _holds(relation, at))
    if fault := _outside(ask, relation, shown, at):
        return fault
    left = relation.first
    for op, right in relation.rest:
        a, b = _worth(left, at), _worth(right, at)
        if not _HOLDS[op](a, b):
            break
        left = right
    written: dict[t.Node, t.Node] = {
        letter: t.Bracket(node) if isinstance(node, t.Neg | t.Sum | t.Product) else node
        for letter, node in zip(ask.letters, shown, strict=True)
    }
    return _untrue(ask, written, (left, a), op, (right, b))


def _outside(
    ask: Give, relation: t.Relation, shown: Sequence[t.Node], at: dict[str, Fraction]
) -> str:
    """Return how a number is not between two others, or ``""``: the relation says another thing."""
    match relation:
        case t.Relation(low, (("<" | "≤" as first, t.Sym(name)), ("<" | "≤" as second, high))):
            if name not in at or t.symbols(low) or t.symbols(high) or first != second:
                return ""
        case _:
            return ""
    value, ends = at[name], (exact(low), exact(high))
    place = "from {} to {}" if first == "≤" else "between {} and {}"
    written = shown_line(shown[[letter.name for letter in ask.letters].index(name)])
    said = f"{written} is not {place.format(shown_line(low), shown_line(high))}"
    for end, node, than in ((ends[0], low, "less"), (ends[1], high, "more")):
        if value == end and first == "<":
            return f"{said}: it is equal to {shown_line(node)}"
        if value < end if than == "less" else value > end:
            return f"{said}: it is {than} than {shown_line(node)}"
    return ""


def _worth(side: t.Node, at: dict[str, Fraction]) -> Fraction:
    """Return what a side of a relation is worth; the long way takes products of letters."""
    if isinstance(side, t.Sym) and side.name in at:
        return at[side.name]
    if at and not t.symbols(side):
        return _fixed(side)
    try:
        return constant(linear(side, at))
    except NotExact:
        return rational(algebra(side, {name: number(value) for name, value in at.items()}))


@lru_cache(maxsize=256)
def _fixed(side: t.Node) -> Fraction:
    """Return what a side without letters is worth, whatever stands for the letters of others."""
    return _worth(side, {})


_HOLDS: dict[str, Callable[[Fraction, Fraction], bool]] = {
    "<": lambda a, b: a < b,
    ">": lambda a, b: a > b,
    "≤": lambda a, b: a <= b,
    "≥": lambda a, b: a >= b,
    "=": lambda a, b: a == b,
    "≠": lambda a, b: a != b,
}
_TURNED = {"<": ">", ">": "<", "≤": "≥", "≥": "≤", "=": "=", "≠": "≠"}


def _untrue(
    ask: Give,
    written: dict[t.Node, t.Node],
    left: tuple[t.Node, Fraction],
    op: str,
    right: tuple[t.Node, Fraction],
) -> str:
    """Return a failed relation in words, the side with what was given first."""
    letters = {letter.name for letter in ask.letters}
    if not t.symbols(left[0]) & letters:
        left, op, right = right, _TURNED[op], left
    (side, worth), (other, _) = left, right
    limit = shown_line(t.replaced(other, written))
    what = shown_line(t.replaced(side, written))
    if side in ask.letters:
        said = f"{shown_line(bare(written[side]))} is"
        if op == "≠":
            return f"the answer has to be another number than {limit}"
    elif op == "=":
        return f"{what} is {shown_line(number_node(worth))}, not {limit}"
    else:
        said = f"{what} is {shown_line(number_node(worth))}, which is"
    return f"{said} {'' if op == '≠' else 'not '}{_SAID.get(op, 'equal to')} {limit}"


def others(found: Sequence[Sequence[Fraction]]) -> int:
    """Return how many of some answers differ, whatever the order of their numbers.

    >>> others([(Fraction(4), Fraction(6)), (Fraction(6), Fraction(4)), (Fraction(3), Fraction(8))])
    2
    """
    return len({tuple(sorted(values)) for values in found})
