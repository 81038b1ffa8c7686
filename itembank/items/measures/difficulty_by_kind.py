"""What makes each kind of question hard, beside the numbers in it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import log2
from typing import Any, NamedTuple

from itembank.figures.figure import drawn, printed_on
from itembank.items.asks import (
    Choose,
    Draw,
    Find,
    Handlers,
    Inequality,
    Members,
    OfFigure,
    Rewrite,
)
from itembank.items.asks.members import DASH, MEET, UNION
from itembank.items.measures.tally import Tally
from itembank.notation import tree as t

Features = dict[str, float]


class Asking(NamedTuple):
    """What makes one kind of question hard.

    `counts` are features of its own; `relations` are the equations behind it; `solved` tells
    whether an equation that is printed has to be solved, not only put numbers in; `valued` says
    that letters may be given their values; `compared` that the numbers printed are held against
    one another; `whole_list` that a list is one answer.
    """

    counts: Callable[[Any, Tally], Features] = lambda ask, printed: {}
    relations: Callable[[Any], tuple[t.Relation, ...]] = lambda ask: ()
    solved: Callable[[Any, Tally], bool] = lambda ask, printed: False
    valued: bool = False
    compared: bool = False
    whole_list: bool = False


def alone(relation: t.Relation) -> bool:
    """Tell whether a letter stands alone on a side, so that its value is given or worked out."""
    return any(isinstance(side, t.Sym | t.Blank) for side in _sides(relation))


def _sides(relation: t.Relation) -> Iterable[t.Node]:
    return (relation.first, *(side for _, side in relation.rest))


def _has_to_be_solved(ask: Find, printed: Tally) -> bool:
    wanted = t.symbols(ask.target)
    return bool(printed.letters - {"□"}) and any(
        not alone(relation)
        and not isinstance(relation.first, t.Ratio)
        and t.symbols(relation) & wanted
        for relation in ask.relations
    )


def _rewriting(ask: Rewrite, printed: Tally) -> Features:
    if ask.detail != "factorise":
        return {"rewrite": 1.0}
    return {"rewrite": 1.0, "factorise": 1.0, "leading number": float(_leads(ask.target))}


def _leads(target: t.Node) -> bool:
    """Tell whether a quadratic to factorise has a number before the square."""
    if not isinstance(target, t.Sum):
        return False
    first = target.first
    return (
        len(target.rest) > 1
        and isinstance(first, t.Juxt)
        and isinstance(first.factors[0], t.Int)
        and any(isinstance(factor, t.Power) for factor in first.factors)
    )


def _inequality(ask: Inequality, printed: Tally) -> Features:
    return {"inequality": 1.0, "sign turns": float(printed.taken > 0)}


def _choosing(ask: Choose, printed: Tally) -> Features:
    return {"choose": 1.0, "more options": max(0.0, len(ask.options) - 2.0)}


def _of_cards(count: int) -> Features:
    return {"choose": 1.0, "more options": max(0.0, count - 2.0)}


def _of_sets(ask: Members) -> Features:
    """Count the rules that have to be carried out, and the signs of the set that is asked for."""
    rules = sum(named.rule != "listed" for named in ask.sets)
    signs = sum(sign in MEET + UNION + DASH for sign in ask.asked.text)
    return {"choose": 1.0, "common": float(rules), "more options": float(signs)}


def _reading_off(ask: OfFigure | Draw, printed: Tally) -> Features:
    # What there is to take in: each doubling of the marks drawn counts as much as the last.
    return {"read": 1.0, "drawn": log2(len(drawn(ask.figure).marks))}


def _unknown_of_figure(ask: OfFigure, printed: Tally) -> bool:
    """Tell whether an equation has to be solved that the figure's labels make, as 3x + 15 does.

    A letter alone names what is asked for, as an angle x. What is asked for may be a reading, as a
    perimeter, for which the letter is found on the way.
    """
    # A relation printed on a figure is the equation of a line, whose letters are no unknowns.
    return any(
        isinstance(part, t.Sum | t.Juxt) and t.symbols(part) - {"π"}
        for label in printed_on(ask.figure)
        if not isinstance(label, t.Relation)
        for part in t.walk(label)
    )


COUNTED = dict.fromkeys(
    (
        *("inequality", "sign turns", "rewrite", "factorise", "leading number", "subject"),
        *("sequence", "common", "choose", "more options", "round", "give", "read", "drawn"),
        "listed",
    ),
    0.0,
)
"""What the kinds of question count for themselves, where it is not there."""
ASKING: Handlers[Asking] = Handlers("difficulty", "difficulty", otherwise=Asking())
"""What makes each kind of question hard; one that has nothing here is as hard as its numbers."""

FIND = Asking(relations=lambda ask: ask.relations, solved=_has_to_be_solved, valued=True)
OF_FIGURE = Asking(_reading_off, solved=_unknown_of_figure)
ROUND_READING = Asking(
    lambda ask, printed: {**_reading_off(ask.of, printed), "round": 1.0},
    solved=lambda ask, printed: _unknown_of_figure(ask.of, printed),
)
DRAW = Asking(_reading_off)
SOLVE = Asking(relations=lambda ask: ask.relations, solved=lambda ask, printed: True)
ERROR_INTERVAL = Asking(lambda ask, printed: {"inequality": 1.0, "round": 1.0})
INEQUALITY = Asking(_inequality, lambda ask: (ask.relation,), lambda ask, printed: True)
REWRITE = Asking(_rewriting)
CHOOSE = Asking(_choosing)
ORDER = Asking(compared=True, whole_list=True)
COMPARE = Asking(compared=True)
SUBJECT = Asking(lambda ask, printed: {"subject": 1.0})
SEQUENCE = Asking(lambda ask, printed: {"sequence": 1.0})
COMMON = Asking(lambda ask, printed: {"common": 1.0})
ROUND = Asking(lambda ask, printed: {"round": 1.0})
GIVE = Asking(lambda ask, printed: {"give": 1.0}, compared=True)
EXAMPLE = Asking(lambda ask, printed: {"give": 1.0})
SUMMARY = Asking(lambda ask, printed: {"listed": float(len(ask.numbers))})
TRUE_OR_FALSE = Asking(lambda ask, printed: {"choose": 1.0}, compared=True)
JUDGED = Asking(
    lambda ask, printed: {**ASKING.of(ask.of).counts(ask.of, printed), "choose": 1.0},
    lambda ask: ASKING.of(ask.of).relations(ask.of),
    lambda ask, printed: ASKING.of(ask.of).solved(ask.of, printed),
)
ODD_ONE_OUT = Asking(lambda ask, printed: _of_cards(len(ask.cards)), compared=True)
MATCH = Asking(lambda ask, printed: _of_cards(len(ask.cards)), compared=True, whole_list=True)
MEMBERS = Asking(lambda ask, printed: _of_sets(ask))
FAULTY_LINE = Asking(
    lambda ask, printed: {"choose": 1.0},
    solved=lambda ask, printed: isinstance(ask.question, t.Relation),
    whole_list=True,
)
