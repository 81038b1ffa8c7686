"""What trying a wrong answer out shows: in its equation, its sequence, by its size."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from itembank.items.asks import Common, Handlers, Sequence
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Item
from itembank.marking.typing.working.prompt_printed import equation_of
from itembank.marking.worth.worth import bounded, worths
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.clock import is_time
from itembank.notation.line import shown_line
from itembank.notation.quotients import UNIT, Quotient, number
from itembank.notation.value import exact, over


def right_side(given: t.Node, letter: t.Sym) -> t.Node | None:
    """Return what an answer says a letter is worth: a side of an equation, or all of it."""
    match given:
        case t.Relation(first, (("=", right),)):
            return right if first == letter else first if right == letter else None
        case t.Relation() | t.Listing() | t.Either():
            return None
    return given


def tried(item: Item, given: t.Node) -> str:
    """Return what trying the answer out shows, where it can be tried."""
    equation = equation_of(item)
    if equation is not None and len(equation.rest) == 1:
        return _put_in(equation, given)
    return TRYING.of(item.ask)(item.ask, given)


TRYING: Handlers[Callable[[Any, t.Node], str]] = Handlers(
    "trying", "trying out", otherwise=lambda ask, given: ""
)
"""What trying a wrong answer out shows, for each kind of question; nothing by itself."""


def term_tried(ask: Sequence, given: t.Node) -> str:
    """Return which term an expression in n misses, where it misses one."""
    if t.symbols(given) != {"n"} or not bounded(given):
        return ""
    for place, term in enumerate(ask.terms, start=1):
        got = exact_of(algebra(given, {"n": number(place)}))
        if got is not None and got != exact(term):
            return (
                f"Try it: with n = {place} it comes to {shown_line(number_node(got))}, and the "
                f"{('first', 'second', 'third', 'fourth', 'fifth')[min(place, 5) - 1]} "
                f"term is {shown_line(term)}."
                if place <= 5
                else ""
            )
    return ""


def _put_in(equation: t.Relation, given: t.Node) -> str:
    """Return what the two sides of an equation come to with the value that was given."""
    left, right = equation.first, equation.rest[0][1]
    (name,) = t.symbols(equation)
    value = right_side(given, t.Sym(name))
    if value is None or t.symbols(value):
        return ""
    known = {name: number(exact(value))}
    first, other = (exact_of(algebra(side, known)) for side in (left, right))
    # Both sides equal: the value solves this equation, and something else is wrong.
    if first is None or other is None or first == other:
        return ""
    shown = [shown_line(number_node(worth)) for worth in (exact(value), first, other)]
    # Longer numbers show a pupil nothing.
    if max(map(len, shown)) > 12:
        return ""
    return (
        f"Try it: with {name} = {shown[0]} the left side is {shown[1]} and the right "
        f"side {shown[2]}."
    )


def approximately(worth: Quotient) -> float | None:
    """Return about how large a surd is, or None where there are letters in it.

    >>> from itembank.notation.parse import parse
    >>> round(approximately(algebra(parse("2√3"))), 2), approximately(algebra(parse("2x")))
    (3.46, None)
    """
    if worth.letters():
        return None
    top, bottom = (
        sum(float(c) * root**0.5 for (_, root), c in side.items())
        for side in (worth.top, worth.bottom)
    )
    return top / bottom if bottom else None


def exact_of(worth: Quotient) -> Fraction | None:
    """Return a quotient as a rational number, or None where it is none."""
    if set(worth.top) <= {UNIT} and set(worth.bottom) <= {UNIT}:
        return over(worth.top.get(UNIT, 0), worth.bottom[UNIT])
    return None


def common_tried(ask: Common, given: t.Node) -> str:
    """Return why a number is not the highest common factor, or lowest common multiple."""
    numbers, detail = ask.numbers, ask.detail
    worth = exact(given)
    if worth.denominator != 1 or worth <= 0:
        return "The answer is a positive whole number."
    for node in numbers:
        n = exact(node)
        tried, number = shown_line(given), shown_line(node)
        if detail == "hcf" and n % worth:
            return f"{tried} is not a factor of {number}: try one that divides them all."
        if detail == "lcm" and worth % n:
            return f"{tried} is not a multiple of {number}: look on in its times table."
    if detail == "hcf":
        return "That is a common factor, but there is a larger one."
    return "That is a common multiple, but there is a smaller one."


def size_of(given: t.Node, key: t.Node) -> str:
    """Return whether a number is too large or too small."""
    match key:
        case t.Relation(t.Sym() as letter, (("=", right),)):
            value = right_side(given, letter)
            return size_of(value, right) if value is not None else ""
        case t.Relation() | t.Listing() | t.Either() | t.Ratio() | t.Label():
            return ""
    if isinstance(given, t.Relation | t.Listing | t.Either | t.Ratio | t.Label):
        return ""
    if t.symbols(given) and not t.symbols(key):
        return "The answer is a number, without letters."
    if not (bounded(given) and bounded(key)):
        return ""
    a, b = worths(given, key)
    if not isinstance(a, Fraction) or not isinstance(b, Fraction) or a == b:
        return ""
    if is_time(key):
        return "That is too late." if a > b else "That is too early."
    size = "large" if a > b else "small"
    return f"That is too {size}: check each step."
