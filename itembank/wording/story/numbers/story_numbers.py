"""Holds the model of a word problem to the figures, signs and units that its story prints.

A story is not read word by word; its model says what it asks. But nothing that could change the
answer is passed over: every number, in braces or not, in figures or in words, is used by the
model or said not to be needed; no sign or quantity stands outside braces; units agree.
"""

from __future__ import annotations

import re

from itembank.notation.line import shown_line
from itembank.wording.sentences.numbers_said import strange_signs
from itembank.wording.sentences.prompt import SLOT, index_of, slotted
from itembank.wording.story.numbers.printed_unused import printed_fault
from itembank.wording.story.numbers.said_unused import said_fault
from itembank.wording.story.numbers.story import Story
from itembank.wording.story.numbers.units_agree import units_fault


def story_fault(story: Story) -> str:
    """Return what the model leaves out of account, as a sentence, or ``""``.

    >>> from itembank.notation import parse
    >>> runs = ("Work out ", parse("2/5"), " of 30.")
    >>> story_fault(Story(runs, (parse("2/5"),)))
    '30 stands outside { }: put it in { } and use it in the model, or say in ‘not_needed’ why not.'
    """
    return _sign(story) or printed_fault(story) or said_fault(story) or units_fault(story)


def _sign(story: Story) -> str:
    said = slotted(story.runs)
    # An exchange rate, {£1} = {$1.25}, is given as it stands.
    found = strange_signs(re.sub(rf"(?<={SLOT}) ?= ?(?={SLOT})", " to ", said.text))
    if not found:
        return ""
    shown = re.sub(SLOT, lambda match: shown_line(said.nodes[index_of(match[0])]), found)
    return f"‘{shown}’ stands outside {{ }}: put all of a number or a sum in one pair of braces."
