"""How expressions are written: terms as pairs of a coefficient and letters, and their trees."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from itertools import groupby
from typing import TypeAlias

from generators._turns import by_turns
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Misconception
from itembank.notation import tree as t

Term: TypeAlias = tuple[int | Fraction, str]
"""A coefficient and its letters, each as often as it is a factor: 3x² is (3, "xx")."""

# No letter that looks like a digit, names a coin or a unit, or is a word.
LETTERS = "xynkwbt"
PAIRS = ("xy", "bw", "nt", "ky", "wx", "kw")
"""Two letters of one question, in the order of the alphabet where they make a product."""


def letter(*numbers: int) -> str:
    """Return the letter of a question; it varies from item to item, but not at random.

    >>> letter(3, 4)
    'x'
    """
    return by_turns(LETTERS, sum(numbers))


def two_letters(*numbers: int) -> tuple[str, str]:
    """Return the two letters of a question, such as x and y."""
    first, second = iter(by_turns(PAIRS, sum(numbers)))
    return first, second


def term(coefficient: int | Fraction, letters: str) -> t.Node:
    """Return a term as it is written: a letter that comes twice is squared.

    >>> from itembank.notation.line import line
    >>> line(term(-3, "xxy")), line(term(1, "x")), line(term(Fraction(1, 4), "x"))
    ('-3x^2y', 'x', '(1/4)x')
    """
    factors = []
    for name, run in groupby(letters):
        count = len(list(run))
        factors.append(t.Sym(name) if count == 1 else t.Power(t.Sym(name), t.Int(count)))
    if not factors:
        return number_node(coefficient)
    return t.juxt(number_node(coefficient), *factors)


def expression(*terms: Term) -> t.Node:
    """Return terms joined by + and −; a term of 0 is left out.

    >>> from itembank.notation.line import line
    >>> line(expression((2, "x"), (-3, ""), (0, "y")))
    '2x - 3'
    """
    written = [term(*row) for row in terms if row[0]]
    return t.add(*written) if written else t.Int(0)


def collected(terms: Iterable[Term]) -> tuple[Term, ...]:
    """Return like terms collected, in the order in which each kind first comes.

    >>> collected([(6, "xy"), (2, "x"), (-4, "yx")])
    ((2, 'xy'), (2, 'x'))
    """
    found: dict[str, int | Fraction] = {}
    for coefficient, letters in terms:
        name = "".join(sorted(letters))
        found[name] = found.get(name, 0) + coefficient
    return tuple((value, name) for name, value in found.items() if value)


def multiplied(first: Iterable[Term], second: Iterable[Term]) -> tuple[Term, ...]:
    """Return each term of the first times each of the second, in this order, not collected.

    >>> multiplied([(1, "x"), (2, "")], [(1, "x"), (5, "")])
    ((1, 'xx'), (5, 'x'), (2, 'x'), (10, ''))
    """
    others = tuple(second)
    return tuple((a * b, "".join(sorted(m + n))) for a, m in first for b, n in others)


def bracket(*terms: Term) -> t.Bracket:
    """Return terms in a bracket."""
    return t.Bracket(expression(*terms))


def less(first: t.Node, *others: t.Node) -> t.Node:
    """Return `first`, which may be a sum, with others taken away.

    >>> from itembank.notation.line import line
    >>> line(less(expression((3, "x"), (4, "")), bracket((1, "x"), (-2, ""))))
    '3x + 4 - (x - 2)'
    """
    taken = t.sub(first, *others)
    assert isinstance(taken, t.Sum)
    return taken


def shown(node: t.Node) -> str:
    """Return mathematics as it may stand among words.

    >>> shown(expression((-3, "xx"), (2, "")))
    '−3x² + 2'
    """
    from itembank.notation.line import shown_line

    return shown_line(node).replace("-", "−").replace("^2", "²").replace("^3", "³")


def asking(which: Misconception, question: str) -> Misconception:
    """Return a misconception with a question of the item's own."""
    return Misconception(which.id, which.name, question)


def trying(which: Misconception, *names: str) -> Misconception:
    """Return a misconception that asks to try values: ten for one letter, 10 and 1 for two."""
    values = " and ".join(f"{name} = {value}" for name, value in zip(names, (10, 1), strict=False))
    return asking(which, f"Try {values} in the question and in your answer. Do they agree?")
