"""Helpers of the equations strand: sides of equations, lines of working, wrong answers.

Every topic here builds its key from the solution it starts with; the working below solves
the printed equation again, one balance step a line, so each line has the same solution.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import TypeAlias

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, letter_left, number_left, on_number_line
from generators.equations._words import Number, shown, shown_term, size
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Misconception, Slip, Step
from itembank.notation import tree as t

Wrong: TypeAlias = tuple[Misconception, Number | None]

# No letter that looks like a digit, names a coin or a unit, or is a word (add a to both sides).
LETTERS = "xynckwbt"


def letter(*numbers: int) -> t.Sym:
    """Return the unknown's letter: it varies from item to item, but not at random.

    >>> letter(3, 4)
    Sym(name='t')
    """
    return t.Sym(LETTERS[sum(numbers) % len(LETTERS)])


def side(a: Number, x: t.Sym, b: Number = 0) -> t.Node:
    """Return ``ax + b`` as it is written: no 0, no coefficient of 1.

    >>> side(1, t.Sym("x"), -4)
    Sum(first=Sym(name='x'), rest=(('-', Int(n=4)),))
    """
    if not a:
        return number_node(b)
    term = t.juxt(number_node(a), x)
    return t.add(term, number_node(b)) if b else term


def lead(b: int, a: int, x: t.Sym) -> t.Node:
    """Return ``b + ax``, the number first; a negative `a` gives ``b − |a|x``."""
    return t.add(t.num(b), t.juxt(t.num(a), x))


def bracket(a: int, inside: t.Node) -> t.Node:
    """Return ``a(inside)``; a negative `a` carries its minus in front."""
    return t.juxt(t.num(a), t.Bracket(inside))


def terms(first: t.Node, *others: t.Node) -> t.Node:
    """Return the terms joined by + and −, where `first` may be a sum already.

    >>> x = t.Sym("x")
    >>> terms(side(2, x, 3), t.num(-1)) == terms(t.juxt(t.num(2), x), t.num(3), t.num(-1))
    True
    """
    if isinstance(first, t.Sum):
        more = t.add(first.first, *others)
        return t.Sum(first.first, first.rest + more.rest) if isinstance(more, t.Sum) else first
    return t.add(first, *others)


def swap(relation: t.Relation, turned: bool) -> t.Relation:
    """Return an equation with its sides exchanged where `turned` is true."""
    return t.equals(relation.rest[0][1], relation.first) if turned else relation


def solution(x: t.Sym, value: Number) -> t.Relation:
    """Return ``x = value``, a fraction in lowest terms where it is not whole."""
    return t.equals(x, number_node(value))


def take_number(b: Number) -> str:
    """Return the sentence that undoes ``+ b``."""
    if b > 0:
        return f"Subtract {shown(b)} from both sides."
    return f"Add {shown(-b)} to both sides."


def take_letter(a: Number, x: t.Sym) -> str:
    """Return the sentence that undoes ``+ ax``."""
    verb, word = ("Subtract", "from") if a > 0 else ("Add", "to")
    return f"{verb} {shown_term(size(a), x)} {word} both sides."


def balance(x: t.Sym, a: Number, b: Number, c: Number, d: Number) -> tuple[Step, ...]:
    """Return the working that solves ``ax + b = cx + d``, letters to the side with more.

    >>> for step in balance(t.Sym("x"), 5, 1, 2, 13):
    ...     print(step.say)
    Subtract 2x from both sides.
    Subtract 1 from both sides.
    Divide both sides by 3.
    """
    steps: list[Step] = []
    right = a < c
    if right:
        # Solve it as if turned round, so that the letter keeps a positive coefficient.
        a, b, c, d = c, d, a, b

    def line(left: t.Node, other: t.Node) -> t.Relation:
        return t.equals(other, left) if right else t.equals(left, other)

    if c:
        say = take_letter(c, x)
        a = a - c
        last = a == 1 and not b
        steps.append(Step(say, solution(x, d) if last else line(side(a, x, b), number_node(d))))
    if b:
        d = d - b
        last = a == 1
        steps.append(
            Step(take_number(b), solution(x, d) if last else line(side(a, x), number_node(d)))
        )
    if a != 1:
        steps.append(Step(f"Divide both sides by {shown(a)}.", solution(x, Fraction(d) / a)))
    elif not steps:
        steps.append(Step("Swap the sides.", solution(x, d)))
    return tuple(steps)


def root(a: Number, b: Number, c: Number, d: Number) -> Fraction | None:
    """Return the solution of ``ax + b = cx + d``, or None where it has not just one.

    A wrong method writes a wrong line; this solves the line it wrote.

    >>> root(7, 0, -5, 24), root(2, 1, 2, 5)
    (Fraction(2, 1), None)
    """
    return over(d - b, a - c)


def letter_across(a: Number, b: Number, c: Number, d: Number) -> Fraction | None:
    """Return the answer to ``ax + b = cx + d`` when the unknown crosses with its sign unchanged.

    It crosses as in :func:`balance`: from the side with less to the side with more.

    >>> letter_across(7, 0, 5, 24), letter_across(2, 5, 5, -1)
    (Fraction(2, 1), Fraction(6, 7))
    """
    return root(a + c, b, 0, d) if a > c else root(0, b, a + c, d)


def number_across(a: Number, b: Number, c: Number, d: Number) -> Fraction | None:
    """Return the answer to ``ax + b = cx + d`` when a number crosses with its sign unchanged.

    It crosses away from the unknown, which is where :func:`balance` leaves it.

    >>> number_across(8, -7, 2, 29), number_across(2, 5, 5, -1)
    (Fraction(11, 3), Fraction(4, 3))
    """
    return root(a - c, 0, 0, d + b) if a > c else root(0, d + b, c - a, 0)


def across(x: t.Sym, a: int, b: int, c: int, d: int) -> tuple[Wrong, Wrong]:
    """Return what comes of taking the unknown, or a number, across with its sign unchanged."""
    stays, goes = (a, c) if a > c else (c, a)
    with_letter, alone = (b, d) if a > c else (d, b)
    return (
        (asking(m.LETTER_ACROSS, letter_left(stays, goes, x)), letter_across(a, b, c, d)),
        (asking(m.NUMBER_ACROSS, number_left(with_letter, alone)), number_across(a, b, c, d)),
    )


def below_zero(first: int, taken: int) -> Misconception:
    """Return the mistake that makes a negative ``first − taken`` positive.

    In −43 − 2 no number is taken from a larger one: only the sign is lost.
    """
    which = m.SMALLER_FROM_LARGER if first * taken > 0 else m.ANSWER_SIGN
    return asking(which, on_number_line(first, -taken))


def slips(x: t.Sym, key: Number, *wrongs: Wrong) -> tuple[Slip, ...]:
    """Return the wrong solutions, one of each value; None marks a mistake that cannot show.

    Two mistakes that lead to the same wrong answer cannot be told apart, so only the first
    of them is kept. A mistake that happens to give the key cannot be told from none.
    """
    return tuple(Slip(which, solution(x, value)) for which, value in _distinct(key, wrongs))


def number_slips(key: Number, *wrongs: Wrong) -> tuple[Slip, ...]:
    """Return the wrong answers as plain numbers, one of each value, the key left out."""
    return tuple(Slip(which, number_node(value)) for which, value in _distinct(key, wrongs))


def _distinct(key: Number, wrongs: Iterable[Wrong]) -> list[tuple[Misconception, Number]]:
    found: dict[Number, Misconception] = {}
    for which, value in wrongs:
        if value is not None and value != key:
            found.setdefault(value, which)
    return [(which, value) for value, which in found.items()]


def over(top: Number, bottom: Number) -> Fraction | None:
    """Return the quotient, or None where a wrong method would divide by zero."""
    return Fraction(top) / bottom if bottom else None
