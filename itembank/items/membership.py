"""Whether an answer is one of the many right answers to a question, by exact arithmetic.

Marking and the first road ask this one place; the second road has a decision of its own.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import permutations

from itembank.items.asks.give import Give
from itembank.items.number_conditions import condition_unmet, is_met
from itembank.items.relations_unmet import HOLDS, holds, relations_unmet
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import NotExact, exact


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
    >>> from itembank.items.asks import Condition
    >>> pair = Give((t.Sym("a"), t.Sym("b")), (parse("a × b = 24"),), (Condition("whole"),))
    >>> are_right(pair, [Fraction(6), Fraction(4)]), are_right(pair, [Fraction(3), Fraction(7)])
    (True, False)
    """
    if not all(is_met(condition, values) for condition in ask.conditions):
        return False
    names = [letter.name for letter in ask.letters]
    return any(
        all(holds(relation, dict(zip(names, order, strict=True))) for relation in ask.relations)
        for order in permutations(values)
    )


def unmet(ask: Give, answer: t.Node) -> str:
    """Return the first thing that keeps an answer from being right, or ``""``.

    It is a sentence without its capital and its full stop, and true. Numbers may be given in any
    order: they are right where some order of them is.

    Raises:
        NotExact: a number of the answer, or of the question, has no exact rational value.

    >>> from itembank.notation import parse
    >>> from itembank.items.asks import Condition
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
        if not is_met(condition, values):
            return condition_unmet(condition, shown, values)
    return relations_unmet(ask, shown, values)


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
        if not HOLDS[op](left, right):
            return f"{shown_line(answer)} is not true"
        left = right
    return ""


_COUNTS = {1: "one number is", 2: "two numbers are", 3: "three numbers are"}


def others(found: Sequence[Sequence[Fraction]]) -> int:
    """Return how many of some answers differ, whatever the order of their numbers.

    >>> others([(Fraction(4), Fraction(6)), (Fraction(6), Fraction(4)), (Fraction(3), Fraction(8))])
    2
    """
    return len({tuple(sorted(values)) for values in found})
