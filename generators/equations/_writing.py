"""How equations are written: letters, terms, sides and solutions as a school writes them."""

from __future__ import annotations

from generators._turns import by_turns
from generators.equations._words import Number
from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t

# No letter that looks like a digit, names a coin or a unit, or is a word (add a to both sides).
LETTERS = "xynckwbt"


def letter(*numbers: int) -> t.Sym:
    """Return the unknown's letter: it varies from item to item, but not at random.

    >>> letter(3, 4)
    Sym(name='t')
    """
    return t.Sym(by_turns(LETTERS, sum(numbers)))


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
