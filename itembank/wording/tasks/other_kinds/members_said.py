"""Which sets the words of a prompt tell, by a list or by a rule, and what they ask of them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.asks.members import DASH, Members, SetSaid
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.sentences.prompt import SLOT, index_of, sentences, slotted

_RULE = (
    rf"(?:(?P<multiple>multiples of {SLOT})|(?P<factor>factors of {SLOT})|(?P<even>even numbers)|"
    rf"(?P<odd>odd numbers)|(?P<prime>prime numbers)|(?P<square>square numbers)|"
    rf"(?P<less>numbers less than {SLOT})|(?P<greater>numbers greater than {SLOT}))"
)
_THESE = rf"(?:{SLOT}|\(*[A-Z]['′)]*(?: ?[∩∪] ?\(*[A-Z]['′)]*)*)"
"""The set that is asked for: one piece of mathematics, or its letters and signs among the words."""
_UNIVERSAL = rf"The universal set is the whole numbers from (?P<low>{SLOT}) to (?P<high>{SLOT})"
_TOLD = rf"(?P<name>[A-Z]) (?:is the set of {_RULE}|has the members (?P<listed>{SLOT}))"
_LISTED = rf"List the members of (?P<list>{_THESE})"
_COUNTED = (
    rf"(?:How many members has (?P<has>{_THESE})|How many members are in (?P<among>{_THESE})|"
    rf"What is n\((?P<count>{_THESE})\))"
)
_WHOLE = late(
    rf"{_UNIVERSAL}\. "
    rf"(?P<sets>(?:[A-Z] (?:is the set of [a-z ]+{SLOT}?|has the members {SLOT})\. )+)"
    rf"(?:{_LISTED}\.|{_COUNTED}\?)"
)
_SET = late(rf"{_TOLD}\. ")
_PARTS = tuple(map(late, (_UNIVERSAL, _TOLD, _LISTED, _COUNTED)))
_BEGINS = "The universal set is"


def members_said(runs: Sequence[Run]) -> Members | None:
    """Return what a prompt asks of the sets that it tells, which is read whole, or None.

    The set that is asked for is a piece of mathematics, or stands among the words.

    >>> from itembank.items.item import prompt
    >>> from itembank.notation.tree import Int, Label
    >>> told = "The universal set is the whole numbers from {a} to {b}. A is the set of factors "
    >>> numbers = {"a": Int(1), "b": Int(9), "c": Int(8), "s": Label("A′")}
    >>> said = members_said(prompt(told + "of {c}. List the members of {s}.", **numbers))
    >>> said.sets[0].rule, said.detail
    ('factor', 'list')
    >>> members_said(prompt(told + "of {c}. What is n(A′)?", **numbers)).asked
    Label(text='A′')
    >>> members_said(prompt(told + "of {c} and of 6. List the members of {s}.", **numbers)) is None
    True
    """
    said = slotted(runs)
    found = _WHOLE.fullmatch(said.text)
    if found is None:
        return None
    sets: list[SetSaid] = []
    end = 0
    for match in _SET.finditer(found["sets"]):
        if match.start() != end:
            return None
        end = match.end()
        rule = next(name for name, words in match.groupdict().items() if words and name != "name")
        nodes = tuple(said.nodes[index_of(char)] for char in re.findall(SLOT, match[rule]))
        if rule == "listed":
            nodes = nodes[0].parts if isinstance(nodes[0], t.Listing) else nodes
        sets.append(SetSaid(match["name"], rule, nodes))
    names = [named.name for named in sets]
    if end != len(found["sets"]) or len({*names}) < len(names):
        return None
    low, high = (said.nodes[index_of(found[end])] for end in ("low", "high"))
    these = found["list"] or found["has"] or found["among"] or found["count"]
    asked = (
        said.nodes[index_of(these)]
        if re.fullmatch(SLOT, these)
        else t.Label(these.replace("'", DASH))
    )
    if not (isinstance(low, t.Int) and isinstance(high, t.Int) and isinstance(asked, t.Label)):
        return None
    return Members(low, high, tuple(sets), asked, "list" if found["list"] else "count")


def tells_sets(runs: Sequence[Run]) -> bool:
    """Tell whether a prompt begins by telling a universal set.

    >>> tells_sets(("The universal set is the whole numbers from ", t.Int(1))), tells_sets(("Add.",))
    (True, False)
    """
    return bool(runs) and isinstance(runs[0], str) and runs[0].lstrip().startswith(_BEGINS)


def unread_of_sets(runs: Sequence[Run]) -> str:
    """Return the first sentence of a prompt that is none about sets, its numbers as dots.

    It is ``""`` where each sentence is understood by itself.

    >>> unread_of_sets(("A is the set of even numbers. B is the set of even prime numbers.",))
    'B is the set of even prime numbers'
    """
    for sentence in sentences(slotted(runs).text):
        if not any(pattern.fullmatch(sentence) for pattern in _PARTS):
            return re.sub(SLOT, "…", sentence)
    return ""
