"""Whether the words say of two amounts that they belong together, or that one is without the other.

*£416 for a coach and £6 for each pupil*, *2 shirts and 3 ties* are added; *the empty tin weighs 50 g*
and *gets £4.50 change* are taken away, wherever in a model they stand.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT, index_of, slotted
from itembank.wording.story.asked.direction import bare, says_down

_AND = late(
    rf"\b(?:costs?|charges?|charged|pays?|buys?|bought|bill|fare)\b[^.?]*?({SLOT})(?: (?!and\b|plus\b)[a-z'-]+){{0,5}} (?:and|plus)(?: then)? (?:an? [a-z]+ )?({SLOT})",
    re.I,
)
_AND_ASKED = late(
    rf"\bhow much (?:do|does|will|would|did) ({SLOT})(?: [a-z'-]+){{1,2}} and ({SLOT})(?: [a-z'-]+){{1,2}} cost",
    re.I,
)
_WITHOUT = late(
    rf"\bempty [a-z]+ (?:(?:has|with) a (?:mass|weight) of|weighs|is) ({SLOT})|({SLOT}) (?:in )?change\b(?! for)",
    re.I,
)
_MORE = late(rf"(?<!needs )(?<!need )({SLOT}) more\b(?! than| [a-z]+ than)([^.,;?]*)", re.I)
_NOT_ADDED = late(r"\b(?:change|cheaper|dearer|more|less|difference|sav\w+|discount|off)\b", re.I)


def sum_said_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return how a model takes away what the words put together, or the other way, or ``""``."""
    said = slotted(runs)
    signs = list(_signs(model))
    if not signs:
        return ""
    if not _NOT_ADDED.search(said.text):
        for pattern in (_AND, _AND_ASKED):
            for match in pattern.finditer(said.text):
                first, two = (said.nodes[index_of(char)] for char in match.groups())
                if any(op == "-" and first in before and two in term for before, op, term in signs):
                    return "The words put the two amounts together, and the model takes one away."
    for match in _MORE.finditer(said.text):
        node = said.nodes[index_of(match[1])]
        if says_down(match[2]):
            continue  # 7 more get off
        if any(op == "-" and term == (node,) for _, op, term in signs):
            return "The words say ‘… more’, and the model takes that amount away."
    for match in _WITHOUT.finditer(said.text):
        node = said.nodes[index_of(match[1] or match[2])]
        if any(op == "+" and term == (node,) for _, op, term in signs):
            words = " ".join(re.sub(SLOT, "…", match[0]).split())
            return f"The words say ‘{words}’, and the model adds that amount."
    return ""


def _signs(model: Modelled) -> Iterator[tuple[tuple[t.Node, ...], str, tuple[t.Node, ...]]]:
    """Yield what each sum of a model has added before a term, the term's sign, and what it has."""
    for part in model.parts():
        if isinstance(part, t.Sum):
            before = _held(part.first)
            for op, term in part.rest:
                yield before, op, _held(term)
                before = (*before, *_held(term)) if op == "+" else before


def _held(term: t.Node) -> tuple[t.Node, ...]:
    node = bare(term)
    if isinstance(node, t.Product):
        return (bare(node.first), *(bare(factor) for _, factor in node.rest))
    return (node,)
