"""Holds what a story's question asks to the model: left over, the larger share, how much more.

The words here change which number is the answer. For each there is something that a model must
do if it answers that question; where it does not, a person decides, and the word is named. The
other way about, a model that takes away at the end must be asked for something that is left,
lost, or a difference.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.kinds.kind_asked import kind_fault
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.story.asked.direction import before_fault, direction_fault
from itembank.wording.story.asked.facts import fact_fault
from itembank.wording.story.asked.fractions_of_things import part_fault
from itembank.wording.story.asked.letter_asked import another_letter_fault
from itembank.wording.story.asked.letters_bound import bound_fault
from itembank.wording.story.asked.part_or_whole import (
    changed_from_fault,
    part_or_whole_fault,
    simple_interest_fault,
)
from itembank.wording.story.asked.parts_named import other_part, part_named_fault, ratio_order_fault
from itembank.wording.story.asked.question_rules import rule_fault
from itembank.wording.story.asked.shapes_asked import shape_fault
from itembank.wording.story.asked.sums_said import sum_said_fault
from itembank.wording.story.asked.taken_away import free_fault, rest_fault, taken_fault


def asked_fault(runs: Sequence[Run], model: Modelled, *, taken: bool = True) -> str:
    """Return what the question asks that the model does not do, as a sentence, or ``""``.

    `taken` says to ask as well that a model which ends by taking away is asked for what is left.
    """
    asking = questions(runs)
    if not asking:
        return "The words do not ask for anything that is understood: end with a question."
    if len(asking) > 1 and not _one_in_two(asking):
        return f"Two things are asked for: ‘{_readable(asking[1])}’ is one too many."
    words = _readable(asking[-1])
    if _TWO.search(words):
        return f"Two things are asked for in one sentence: ‘{words}’."
    money = any(
        isinstance(part, t.Money)
        for run in runs
        if not isinstance(run, str)
        for part in t.walk(run)
    )
    for fault in (
        other_part(runs, model, _GOES_WITH.sub("", _CONDITION.sub("", words))),
        ratio_order_fault(runs, model, words),
        part_named_fault(runs, model, words),
        part_fault(runs, model, words),
        kind_fault(model.key, words, money),
        bound_fault(runs, model, words),
        rest_fault(runs, model, words),
        shape_fault(runs, model, words),
        simple_interest_fault(runs, model),
        part_or_whole_fault(model, words),
        changed_from_fault(runs, model, words),
        another_letter_fault(runs, model, words),
        fact_fault(runs, model, words),
        direction_fault(runs, model),
        before_fault(runs, model, words),
        free_fault(runs, model),
        sum_said_fault(runs, model),
    ):
        if fault:
            return fault
    if fault := rule_fault(model, words):
        return fault
    return taken_fault(runs, model, words) if taken else ""


# If there are 21 litres of blue paint, how many litres of red are there: red is asked for.
# How much butter is needed with 400 g of flour: butter is asked for.
_GOES_WITH = late(
    r"\b(?:with|to go with|for|using) (?:every |each )?… of [a-z-]+(?=$| in the\b)", re.I
)

_CONDITION = late(
    r"^(?:if|when|given that|since) [^,]*, (?=(?:how|what|which|find|work out|calculate)\b)", re.I
)

_TWO = late(
    r"\band (?:also )?(?:how (?:much|many|far|long)|what|which|find|work out|write down|when|where)\b",
    re.I,
)


def _readable(sentence: str) -> str:
    return re.sub(SLOT, "…", sentence)


def _one_in_two(asking: Sequence[str]) -> bool:
    """Whether a second sentence only says again what the first asks: *Give its position*."""
    return len(asking) == 2 and bool(
        re.match(
            r"(?:give|write|state|find|work out) (?:its|this|the) (?:position|term number)",
            asking[1],
            re.I,
        )
    )
