"""Holds what words call the numbers beside them to what those numbers are.

*Which of these fractions is the largest:* {1/2, 0.9, 2/3}*?* is asked of fractions alone, and 0.9
is written as none. A person decides what is meant.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.value import exact_or_none
from itembank.text.late_pattern import late
from itembank.wording.sentences.prompt import SLOT, index_of, slotted


def _whole(node: t.Node) -> bool:
    return isinstance(node, t.Int)


def _decimal(node: t.Node) -> bool:
    return isinstance(node, t.Dec)


def _part(node: t.Node, fits: Callable[[int, int], bool]) -> bool:
    match node:
        case t.Frac(t.Int(top), t.Int(bottom)):
            return fits(top, bottom)
    return False


_KINDS: dict[str, Callable[[t.Node], bool]] = {
    "integer": _whole,
    "whole number": _whole,
    "mixed number": lambda node: isinstance(node, t.Mixed),
    "mixed fraction": lambda node: isinstance(node, t.Mixed),
    "improper fraction": lambda node: _part(node, lambda top, bottom: top >= bottom),
    "top-heavy fraction": lambda node: _part(node, lambda top, bottom: top >= bottom),
    "proper fraction": lambda node: _part(node, lambda top, bottom: top < bottom),
    "unit fraction": lambda node: _part(node, lambda top, bottom: top == 1),
    "fraction": lambda node: isinstance(node, t.Frac | t.Mixed),
    "recurring decimal": lambda node: isinstance(node, t.Dec) and bool(node.recurring),
    "terminating decimal": lambda node: isinstance(node, t.Dec) and not node.recurring,
    "decimal number": _decimal,
    "decimal": _decimal,
    "percentage": lambda node: isinstance(node, t.Percent),
}
_NOUN = rf"(?P<kind>{'|'.join(_KINDS)})s?"
_BESIDE = late(rf"\b{_NOUN}:? ?(?P<nodes>{SLOT}(?:(?:, and |, | and )(?:the )?{SLOT})*)", re.I)
_ANYWHERE = late(
    rf"(?<!as )(?<!as a )(?<!as an )(?<!to )(?<!into )(?<!to a )(?<!into a )\b{_NOUN}\b", re.I
)
_PLAIN = (t.Int, t.Dec, t.Percent, t.Frac, t.Mixed)
"""Numbers that are written in one of these ways; of a sum or an expression nothing is said."""


def noun_fault(runs: Sequence[Run], compared: bool) -> str:
    """Return a noun that some number beside it is not, as a sentence, or ``""``.

    `compared` says that the numbers are put in order, or one of them chosen: then nouns that stand
    anywhere are held to all of them, and each has to be one of the kinds that are named.

    >>> from itembank.notation import parse
    >>> noun_fault(("Find the sum of the integers ", parse("3, 2.5, 4"), "."), False)
    'The words speak of integers, and 2.5 is written as none.'
    >>> noun_fault(("Put the fractions and decimals ", parse("1/2, 0.4"), " in order."), True)
    ''
    """
    said = slotted(runs)
    if compared:
        kinds = [found["kind"].casefold() for found in _ANYWHERE.finditer(said.text)]
        return _fault(kinds, said.nodes) if kinds else ""
    for found in _BESIDE.finditer(said.text):
        nodes = [said.nodes[index_of(char)] for char in re.findall(SLOT, found["nodes"])]
        if fault := _fault([found["kind"].casefold()], nodes):
            return fault
    return ""


def _fault(kinds: Sequence[str], nodes: Sequence[t.Node]) -> str:
    from itembank.proof.claim.finding import text

    for node in _numbers(nodes):
        if not any(_KINDS[kind](node) for kind in kinds):
            return f"The words speak of {kinds[0]}s, and {text(node)} is written as none."
    return ""


def _numbers(nodes: Sequence[t.Node]) -> Iterator[t.Node]:
    for node in nodes:
        for part in node.parts if isinstance(node, t.Listing) else (node,):
            bare = part
            while isinstance(bare, t.Neg | t.Bracket):
                bare = bare.of
            if isinstance(bare, _PLAIN) and exact_or_none(bare) is not None:
                yield bare
