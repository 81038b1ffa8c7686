"""Units beside an answer whose key is a bare number: right ones, wrong ones, things counted.

Twenty-seven buses is 27 where buses are counted; 4 m is 4 where the question is about metres,
and 400 cm is 4 there as well, unless the question names the unit to give.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Item
from itembank.marking.worth.worth import unit_of
from itembank.notation import tree as t
from itembank.notation.units import UNITS, unit_known
from itembank.notation.value import exact
from itembank.text.late_pattern import late
from itembank.wording.story.amount_asked import About, about, words_of

STANDS_BESIDE = "The number is right: leave the unit out, for it stands beside the letter already."

_NOUN = late(r"\d[\d.,/ ]* ?([a-z]+)[ .!]*$", re.I)


def without_unit(item: Item, given: t.Node) -> tuple[t.Node, str]:
    """Return an answer without a unit that the key does without, and what is wrong with it.

    Nothing is changed where the key has a unit itself. The sentence is to be said only where
    the number is right.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> item = find_item("fractions.add-mixed/challenge/216")  # how many kilograms
    >>> [(line(part), fault) for part, fault in (
    ...     without_unit(item, parse(text)) for text in ("6 5/24 kg", "6 5/24 g"))]
    [('6 5/24', ''), ('6 5/24', 'The number is right, but the unit is not: it is in kilograms.')]
    """
    if not _has_unit(given) or _has_unit(item.key):
        return given, ""
    # A ratio compares its units itself: 4 cm : 20 m.
    if isinstance(given, t.Ratio) or any(isinstance(part, t.Ratio) for part in t.walk(given)):
        return given, ""
    subject = about(item)
    if subject.named and isinstance(given, t.MixedUnits):
        return given, ""
    faults: list[str] = []
    bare = _bare(given, lambda amount, unit: _without(subject, amount, unit, faults))
    return bare, faults[0] if faults else ""


def in_another_unit(item: Item, given: t.Node) -> str:
    """Return the unit to give an answer in that is right in another unit, or an empty string.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.parse import parse
    >>> item = find_item("fractions.add-mixed/challenge/216")  # 6 5/24, how many kilograms
    >>> in_another_unit(item, parse("6 5/24 kg")), in_another_unit(item, parse("7 kg"))
    ('', '')
    """
    if not isinstance(given, t.Quantity | t.Money | t.MixedUnits) or _has_unit(item.key):
        return ""
    subject = about(item)
    own = unit_of(given)
    for wanted in subject.units:
        unit = unit_known(wanted)
        # The unit itself is not another one: what is then wrong is the number.
        if own is None or own[0] != unit.dimension or (own[1] == unit.size):
            continue
        try:
            if exact(given) == exact(item.key) * unit.size:
                return unit.many
        except t.NotationError:
            return ""
    return ""


def _has_unit(node: t.Node) -> bool:
    return any(isinstance(part, t.Quantity | t.Money) for part in t.walk(node))


def _without(subject: About, amount: t.Node, unit: str, faults: list[str]) -> t.Node:
    if unit in subject.units:
        return amount
    own = unit_known(unit)
    for wanted in subject.units:
        named = unit_known(wanted)
        # 400 cm for 4, where metres are meant and not asked for, is right.
        if named.dimension == own.dimension and not subject.named:
            try:
                return decimal_node(exact(amount) * own.size / named.size)
            except t.NotationError:
                break
        faults.append(f"The number is right, but the unit is not: it is in {named.many}.")
        return amount
    if unit in subject.beside:
        faults.append(STANDS_BESIDE)
    elif subject.noun:
        faults.append(f"The number is right, but it is a number of {subject.noun}.")
    else:
        faults.append("The number is right, but that unit is not: leave it out.")
    return amount


def _bare(node: t.Node, change: Callable[[t.Node, str], t.Node]) -> t.Node:
    """Return an answer with every amount in it changed; calculations are left as they are."""
    match node:
        case t.Quantity(amount, unit):
            return change(amount, unit)
        case t.Money(amount, sign):
            return change(amount, sign)
        case t.MixedUnits(parts):
            last = parts[-1].unit
            try:
                worth = decimal_node(exact(node) / UNITS[last].size)
            except t.NotationError:
                return node
            return change(worth, last)
        case t.Neg(of):
            return t.Neg(_bare(of, change))
        case t.Sum(first, rest) if t.symbols(node):
            # 15n - 5 cm, an expression with its unit behind it.
            terms = [first, *(term for _, term in rest)]
            units = {_unit(term) for term in terms} - {""}
            if len(units) == 1:
                first, *others = [_amount(term) for term in terms]
                ops = [op for op, _ in rest]
                whole = t.Sum(first, tuple(zip(ops, others, strict=True)))
                return change(whole, units.pop())
        case t.Relation(first, rest):
            sides = tuple((op, _bare(side, change)) for op, side in rest)
            return t.Relation(_bare(first, change), sides)
        case t.Listing(parts) | t.Either(parts):
            return type(node)(tuple(_bare(part, change) for part in parts))
    return node


def _unit(node: t.Node) -> str:
    match node:
        case t.Quantity(_, unit) | t.Money(_, unit):
            return unit
    return ""


def _amount(node: t.Node) -> t.Node:
    return node.amount if isinstance(node, t.Quantity | t.Money) else node


def counted_wrongly(item: Item, answer: str) -> str:
    """Return what is wrong with the noun after a right number, or an empty string.

    A noun is wrong where the question asks for the number of something else and gives the
    number of what is typed: six pupils, where coaches are counted and pupils are given.

    >>> from itembank.items.topics.registry import find_item
    >>> item = find_item("equations.form-and-solve/support/777")
    >>> counted_wrongly(item, "6 boxes"), counted_wrongly(item, "6 lettuces")
    ('The number is right, but it is a number of lettuces, not of boxes.', '')
    """
    found = _NOUN.search(answer)
    if not found:
        return ""
    typed = found[1].lower()
    # Only what looks like a plural, so that a slip of the key is not taken for another noun.
    if len(typed) < 3 or not typed.endswith("s"):
        return ""
    noun = about(item).noun
    if not noun or noun == typed or not re.search(rf"# {typed}\b", words_of(item).lower()):
        return ""
    return f"The number is right, but it is a number of {noun}, not of {typed}."
