"""Which way a printed amount moves something: it has risen by 11 degrees, £30 is paid out."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation.tree import Bracket, Node, Sum
from itembank.wording.modelled import Modelled
from itembank.wording.prompt import SLOT, index_of, sentences, slotted

_UP = (
    r"ris(?:e|es|en|ing)|rose|increas\w*|gain\w*|warmer|hotter|grow\w*|grew|added|adds|deposit\w*|"
    r"pa(?:ys?|id) in|g(?:e|o)ts? on|joins?|joined|earn\w*|receiv\w*|climb\w*|up by|goes up|went up"
)
_DOWN = (
    r"f(?:a|e)ll(?:s|en)?|drop\w*|decreas\w*|los(?:e|es|t|ing)|cooler|colder|shr(?:i|u)nk\w*|"
    r"withdr(?:a|e)w\w*|pa(?:ys?|id) (?:out|back)|spend\w*|spent|g(?:e|o)ts? off|leaves|left|reduced by|"
    r"taken out|takes out|used|uses|given away|gives away|sold|sells|eaten|eats|down by|goes down|went down"
)
_UP_WORD, _DOWN_WORD = re.compile(rf"\b(?:{_UP})\b", re.I), re.compile(rf"\b(?:{_DOWN})\b", re.I)


def direction_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return how an amount is added that the words take away, or the other way, or ``""``.

    Only terms of a sum that is worked out forwards are looked at: found from an equation,
    operations run backwards.
    """
    target = model.target
    if model.inverse or not isinstance(target, Sum):
        return ""
    said = slotted(runs)
    signs = {bare(term): op for op, term in target.rest}
    for sentence in sentences(said.text):
        for clause in re.split(r",| and | but | then ", sentence):
            slots = re.findall(SLOT, clause)
            if len(slots) != 1:
                continue
            number = said.nodes[index_of(slots[0])]
            op = signs.get(bare(number))
            up, down = _UP_WORD.search(clause), _DOWN_WORD.search(clause)
            if op == "-" and up and not down:
                return f"The words say ‘{up[0]}’, and the model takes that amount away."
            if op == "+" and down and not up:
                return f"The words say ‘{down[0]}’, and the model adds that amount."
    return ""


def bare(node: Node) -> Node:
    """Return a tree without the brackets around it."""
    return bare(node.of) if isinstance(node, Bracket) else node
