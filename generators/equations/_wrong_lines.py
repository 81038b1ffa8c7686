"""What comes of a wrong line: each mistake is carried out and its equation solved."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, letter_left, number_left, on_number_line
from generators.equations._words import Number
from generators.equations._writing import solution
from itembank.items.item import Misconception, Slip
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


def root(a: Number, b: Number, c: Number, d: Number) -> Fraction | None:
    """Return the solution of ``ax + b = cx + d``, or None where it has not just one.

    A wrong method writes a wrong line; this solves the line it wrote.

    >>> root(7, 0, -5, 24), root(2, 1, 2, 5)
    (Fraction(2, 1), None)
    """
    return over(d - b, a - c)


def letter_across(a: Number, b: Number, c: Number, d: Number) -> Fraction | None:
    """Return the answer to ``ax + b = cx + d`` when the unknown crosses with its sign unchanged.

    It crosses as in the right working: from the side with less to the side with more.

    >>> letter_across(7, 0, 5, 24), letter_across(2, 5, 5, -1)
    (Fraction(2, 1), Fraction(6, 7))
    """
    return root(a + c, b, 0, d) if a > c else root(0, b, a + c, d)


def number_across(a: Number, b: Number, c: Number, d: Number) -> Fraction | None:
    """Return the answer to ``ax + b = cx + d`` when a number crosses with its sign unchanged.

    It crosses away from the unknown, which is where the right working leaves it.

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


def solution_slips(x: t.Sym, value: Number, *wrongs: Wrong) -> tuple[Slip, ...]:
    """Return the wrong solutions ``x = …`` beside the right one, which a mistake may give too."""
    return slips(*wrongs, write=partial(solution, x), key=solution(x, value))


def over(top: Number, bottom: Number) -> Fraction | None:
    """Return the quotient, or None where a wrong method would divide by zero."""
    return Fraction(top) / bottom if bottom else None
