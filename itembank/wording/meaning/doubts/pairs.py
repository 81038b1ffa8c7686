"""Numbers that belong together: the time of a speed, the two sides of 11 cm, the minus of −6."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS
from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import late_search
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.numbers_said import CARDINALS
from itembank.wording.sentences.prompt import SLOT, index_of, slotted
from itembank.wording.sentences.question_sentences import questions

_SO_MANY_OF = late(
    r"\b(?P<count>two|three|four|five|six|seven|eight|nine|ten) (?:[a-z'-]+ ){0,2}?[a-z'-]+ (?:of|at|costing|that cost|weighing|each) "
    rf"(?P<amount>{SLOT})",
    re.I,
)
_GAP_ASKED = r"\bdifference\b|\brange\b|\bby how (?:much|many)\b|\bhow (?:much|many)(?: \w+)? (?:warmer|colder|hotter|cooler|higher|lower)\b"


def pair_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return which numbers that belong together the model takes apart, or ``""``."""
    asking = questions(runs)
    said = slotted(runs)
    return (
        _of_other_clause(said.text, said.nodes, model)
        or _so_many_of(said.text, said.nodes, model)
        or _part_of_it(said.text, said.nodes, model)
        or _minus_left_out(said.nodes, model, asking[-1] if asking else "")
    )


def _inner(node: t.Node) -> t.Node:
    while isinstance(node, t.Bracket):
        node = node.of
    return node


def _measure(node: t.Node) -> str:
    match node:
        case t.Quantity(_, unit):
            return UNITS[unit].dimension
        case t.Money(_, sign):
            return CURRENCY[sign].dimension
    return ""


def _of_other_clause(text: str, nodes: Sequence[t.Node], model: Modelled) -> str:
    """Return how a number of one clause is multiplied by one of the next, or ``""``.

    In *at 5 km/h for 2 h and then at 3 km/h for 4 h* each speed has a time of its own.
    """
    clauses = []
    for clause in re.split(r",|;|\.|\band\b|\bthen\b", text):
        inside = [nodes[index_of(char)] for char in re.findall(SLOT, clause)]
        if len(inside) == 2 and all(_measure(node) for node in inside):
            clauses.append(inside)
    if len(clauses) != 2 or [_measure(n) for n in clauses[0]] != [_measure(n) for n in clauses[1]]:
        return ""
    (a, b), (c, d) = clauses
    if _measure(a) == _measure(b) or len({a, b, c, d}) != 4:
        return ""
    for part in model.parts():
        if isinstance(part, t.Product):
            factors = {_inner(f) for f in (part.first, *(f for _, f in part.rest))}
            # All the distance ÷ all the time is a mean; all the speeds × all the times is nothing.
            multiplied = {_inner(f) for f in (part.first, *(f for op, f in part.rest if op != "÷"))}
            sums = {node for f in multiplied if isinstance(f, t.Sum) for node in t.walk(f)}
            for first, mate, other in ((a, b, d), (c, d, b)):
                if first in factors and other in factors and mate not in factors:
                    return "The model puts together numbers that the words say of different parts."
                if first in sums and mate in sums | factors and {a, c} <= sums and {b, d} <= sums:
                    return "The model adds the two parts before it works each of them out."
    return ""


def _so_many_of(text: str, nodes: Sequence[t.Node], model: Modelled) -> str:
    for match in _SO_MANY_OF.finditer(text):
        count = t.Int(int(CARDINALS[match["count"].lower()]))
        amount = nodes[index_of(match["amount"])]
        own = {amount, getattr(amount, "amount", amount)}
        others = {n for n in nodes if n not in own and _measure(n) == _measure(amount)}
        others |= {n.amount for n in others if isinstance(n, t.Quantity | t.Money)}
        for part in model.parts():
            if isinstance(part, t.Product) and len(part.rest) == 1 and part.rest[0][0] == "×":
                factors = {part.first, part.rest[0][1]}
                if count in factors and factors & others and not factors & own:
                    return f"The words say ‘{match['count']}’ of another amount than the model takes so often."
    return ""


def _part_of_it(text: str, nodes: Sequence[t.Node], model: Modelled) -> str:
    """Return how a part *of it* is taken of what is left of it, or ``""``."""
    if late_search(r"\b(?:rest|remain\w*|left of|what is left)\b(?= |$)[^?]*\.", text):
        return ""
    for match in re.finditer(rf"({SLOT}) of (?:it|them|this|these)\b", text):
        part = nodes[index_of(match[1])]
        for product in model.parts():
            if isinstance(product, t.Product) and len(product.rest) == 1:
                factors = [product.first, product.rest[0][1]]
                beside = [_inner(f) for f in factors if f != part]
                rest = beside[0] if beside and part in factors else None
                if isinstance(rest, t.Sum) and not model.inverse and _takes(rest):
                    return "The words take a part of the whole, and the model takes it of what is left."
    return ""


def _takes(total: t.Sum) -> bool:
    return any(op == "-" for op, _ in total.rest)


def _minus_left_out(nodes: Sequence[t.Node], model: Modelled, words: str) -> str:
    """Return how a difference from −6 is reckoned from 6, or ``""``."""
    if not late_search(_GAP_ASKED, words):
        return ""
    below = {node.of for node in nodes if isinstance(node, t.Neg)}
    below |= {
        type(node)(node.amount.of, _unit(node))
        for node in nodes
        if isinstance(node, t.Quantity | t.Money) and isinstance(node.amount, t.Neg)
    }
    bare = below | {n.amount for n in below if isinstance(n, t.Quantity | t.Money)}
    for part in model.parts():
        if isinstance(part, t.Sum) and len(part.rest) == 1 and part.rest[0][0] == "-":
            first, second = _inner(part.first), _inner(part.rest[0][1])
            if (second in bare) != (first in bare) and not isinstance(first, t.Neg):
                return "A number below zero is taken as one above it: a minus that is printed is left out."
    return ""


def _unit(node: t.Quantity | t.Money) -> str:
    return node.unit if isinstance(node, t.Quantity) else node.sign
