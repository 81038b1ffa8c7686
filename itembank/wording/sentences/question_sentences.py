"""Which sentences of a prompt ask for something."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.text.late_pattern import late
from itembank.wording.sentences.prompt import asks_with_mark, sentences, slotted

_COMMAND = late(
    r"(?:and |then |so |please |now |hence )*(?:work out|find|calculate|write|give|state|express|"
    r"determine|show|name|say|list|put|solve|complete|choose|estimate|change|convert|use|prove|"
    r"explain|increase|decrease|add|subtract|multiply|divide|round|simplify|expand|factorise|share|"
    r"how (?:much|many|far|long|old|tall|wide|big)|what|which|by how|in how|for how|after how)\b",
    re.I,
)
_SHARE = late(r"(?:share|divide|split)\b.*\bin(?:to)? the ratio\b", re.I)
_ANSWER_ONLY = late(
    r"(?:please )?(?:give|write|leave|express|state|show|round|put|use|include|do not|simplify)\b"
    r"(?: (?:your|the|each|all|any|both))*(?: \w+)? ?(?:answers?|working|results?|solutions?|"
    r"calculator|units?|index notation)?\b",
    re.I,
)


def questions(runs: Sequence[Run]) -> list[str]:
    """Return the sentences of a prompt that ask for something, and not only how to write it.

    >>> from itembank.notation.tree import Int
    >>> questions(("A bus has ", Int(40), " seats. How many are taken? Show your working."))
    ['How many are taken']
    """
    text = slotted(runs).text
    marked = asks_with_mark(text)
    found = []
    for sentence in sentences(text):
        if marked and _SHARE.match(sentence) and sentence not in marked:
            continue  # Share £60 in the ratio 2 : 3. How much …? tells what happens
        if sentence in marked or (
            _COMMAND.match(sentence) and not _only_about_the_answer(sentence)
        ):
            found.append(sentence)
    return found


def _only_about_the_answer(sentence: str) -> bool:
    match = _ANSWER_ONLY.match(sentence)
    return bool(
        match and re.search(r"answer|working|result|solution|calculator|unit|index", match[0])
    )
