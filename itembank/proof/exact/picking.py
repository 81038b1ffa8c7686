"""The first road to one of several solutions: the positive one, the larger share."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from itembank.items.forms.form_rules import number_node
from itembank.items.item import Find, Pick, Which
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.value import NotExact, exact
from itembank.proof.claim.finding import Finding, found, values_node
from itembank.proof.claim.key_solutions import value_given
from itembank.proof.exact.reckoning.elimination import answer
from itembank.proof.exact.reckoning.equations import solve, unknowns
from itembank.proof.exact.reckoning.surd import Surd, surd
from itembank.proof.exact.reckoning.tree_of import quotient_node

ONE = "the question has one answer"


def find_picked(ask: Pick, key: t.Node) -> Finding:
    """Return the solution or share that the question names, and whether the key is it.

    Raises:
        NotExact: the question has no such one, or several, or cannot be settled.

    >>> from itembank.items.item import Solve
    >>> from itembank.notation import parse
    >>> find_picked(Pick(Solve((parse("x^2 = 9"),)), "positive"), parse("x = -3")).fault
    'it comes to 3, the key says x = -3'
    """
    value = value_given(key)
    several = isinstance(value, t.Either | t.Listing)
    if isinstance(ask.of, Find):
        shares = list(answer(ask.of.target, ask.of.relations))
        share = shares[only(shares, ask.which)]
        if several:
            return found(number_node(share), key, False, ONE)
        return found(values_node((share,), value, False), key, exact(value) == share)
    letters = unknowns(ask.of.relations)
    if len(letters) != 1:
        raise NotExact("one of several solutions is picked in one letter only")
    (letter,) = letters
    roots = [solution[letter] for solution in solve(ask.of.relations)]
    root = roots[only([surd(root) for root in roots], ask.which)]
    if several:
        return found(quotient_node(root), key, False, ONE)
    if isinstance(key, t.Relation) and key.first != t.Sym(letter):
        return found(quotient_node(root), key, False, f"the question is about {letter}")
    return found(quotient_node(root), key, algebra(value) == root)


def only(values: Sequence[Any], which: Which) -> int:
    """Return the place of the one value that `which` names.

    Raises:
        NotExact: none is it, or several are.

    >>> only([3, -3], "negative"), only([24, 36], "largest")
    (1, 1)
    """
    if which in ("positive", "negative"):
        sign = 1 if which == "positive" else -1
        wanted = [i for i, value in enumerate(values) if _sign(value) == sign]
    else:
        best = (max if which == "largest" else min)(values, default=None)
        wanted = [i for i, value in enumerate(values) if value == best]
    # The larger of one number is no choice: the question meant several, and something is lost.
    if len(wanted) != 1 or (which in ("largest", "smallest") and len(values) < 2):
        raise NotExact(f"the question has {len(wanted)} answers that are the {which} one")
    return wanted[0]


def _sign(value: Any) -> int:
    return value.sign if isinstance(value, Surd) else (value > 0) - (value < 0)
