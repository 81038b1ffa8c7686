"""Which sets the words of a prompt tell, by a list or by a rule, and what they ask of them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.asks.members import Members, SetSaid
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.sentences.prompt import SLOT, index_of, slotted

_RULE = (
    rf"(?:(?P<multiple>multiples of {SLOT})|(?P<factor>factors of {SLOT})|(?P<even>even numbers)|"
    rf"(?P<odd>odd numbers)|(?P<prime>prime numbers)|(?P<square>square numbers)|"
    rf"(?P<less>numbers less than {SLOT})|(?P<greater>numbers greater than {SLOT}))"
)
_WHOLE = late(
    rf"The universal set is the whole numbers from (?P<low>{SLOT}) to (?P<high>{SLOT})\. "
    rf"(?P<sets>(?:[A-Z] (?:is the set of [a-z ]+{SLOT}?|has the members {SLOT})\. )+)"
    rf"(?:(?P<list>List the members of) (?P<these>{SLOT})\.|"
    rf"How many members has (?P<counted>{SLOT})\?)"
)
_SET = late(rf"(?P<name>[A-Z]) (?:is the set of {_RULE}|has the members (?P<listed>{SLOT}))\. ")


def members_said(runs: Sequence[Run]) -> Members | None:
    """Return what a prompt asks of the sets that it tells, which is read whole, or None.

    >>> from itembank.items.item import prompt
    >>> from itembank.notation.tree import Int, Label
    >>> told = "The universal set is the whole numbers from {a} to {b}. A is the set of factors "
    >>> numbers = {"a": Int(1), "b": Int(9), "c": Int(8), "s": Label("A′")}
    >>> said = members_said(prompt(told + "of {c}. List the members of {s}.", **numbers))
    >>> said.sets[0].rule, said.detail
    ('factor', 'list')
    >>> members_said(prompt(told + "of {c} and of 6. List the members of {s}.", **numbers)) is None
    True
    """
    said = slotted(runs)
    found = _WHOLE.fullmatch(said.text)
    if found is None:
        return None
    sets: list[SetSaid] = []
    end = 0
    for each in _SET.finditer(found["sets"]):
        if each.start() != end:
            return None
        end = each.end()
        rule = next(name for name, words in each.groupdict().items() if words and name != "name")
        nodes = tuple(said.nodes[index_of(char)] for char in re.findall(SLOT, each[rule]))
        if rule == "listed":
            nodes = nodes[0].parts if isinstance(nodes[0], t.Listing) else nodes
        sets.append(SetSaid(each["name"], rule, nodes))
    names = [each.name for each in sets]
    if end != len(found["sets"]) or len({*names}) < len(names):
        return None
    low, high, asked = (
        said.nodes[index_of(char)]
        for char in (found["low"], found["high"], found["these"] or found["counted"])
    )
    if not (isinstance(low, t.Int) and isinstance(high, t.Int) and isinstance(asked, t.Label)):
        return None
    return Members(low, high, tuple(sets), asked, "list" if found["list"] else "count")
