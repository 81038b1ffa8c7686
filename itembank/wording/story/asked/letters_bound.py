"""Letters of a model bound to the things they count, and what a question says of them.

In *{2} adult tickets and {3} child tickets cost {£26}* with 2a + 3c = 26, the letter before
which the 2 stands is the adult ticket's.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT, index_of, slotted
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.story.asked.parts_named import mentions

_SIGNS = {"less": "-", "minus": "-", "plus": "+", "more than": "+", "times": "×", "divided by": "÷"}
_OPERATION = late(rf"\b(?P<word>less|minus|plus|times|divided by) ({SLOT})", re.I)


def bound_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how the question asks for another thing than the letter that is found, or ``""``."""
    said = slotted(runs)
    asking = questions(runs)
    for match in _OPERATION.finditer(asking[-1] if asking else ""):
        if not _operates(model, _SIGNS[match["word"].lower()], said.nodes[index_of(match[2])]):
            return f"The question says ‘{match['word']}’, and the model does not do that."
    target = model.target
    things = _things(said.text, said.nodes, model)
    if not isinstance(target, t.Sym) or target.name not in things:
        return ""
    named = {letter for letter, noun in things.items() if mentions(words, noun)}
    if named and target.name not in named:
        return f"The question asks for {things[named.pop()]}, but {target.name} is {things[target.name]}."
    if len(named) > 1:
        return "The question names several things, and the model finds one."
    return ""


def _operates(model: Modelled, sign: str, number: t.Node) -> bool:
    return any(
        isinstance(part, t.Sum | t.Product)
        and any(op == sign and node == number for op, node in part.rest)
        for part in model.parts()
    )


def _things(text: str, nodes: Sequence[t.Node], model: Modelled) -> dict[str, str]:
    """Return the word for what each letter counts, where the numbers before them tell it."""
    letters: dict[int, set[str]] = {}
    for part in model.parts():
        match part:
            case t.Juxt((t.Int(n), t.Sym(name))):
                letters.setdefault(n, set()).add(name)
    found: dict[str, str] = {}
    for match in re.finditer(rf"({SLOT}) ([a-z]+)", text, re.I):
        match nodes[index_of(match[1])]:
            case t.Int(n) if len(letters.get(n, ())) == 1:
                (letter,) = letters[n]
                if found.setdefault(letter, match[2]) != match[2]:
                    return {}  # it stands beside two things: nothing is known
    return found if len(set(found.values())) == len(found) else {}
