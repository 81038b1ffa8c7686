"""Reads a question that is followed by somebody's answer, to be judged.

The words after the question are a frame, read to the last of them; the question before it is
read like any other. What is not in the frame's very words is no such question.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.tasks.kinds_said import NAME, WHY

_BEFORE = late(
    rf"(?P<question>(?:.*[.?!:)])?)\s+(?:{NAME}) says (?:that )?(?:the|an) answer is\s+",
    re.I | re.S,
)
_AFTER = late(rf"\. True or false\?{WHY}\s*", re.I)


class AnswerSaid(NamedTuple):
    """The question that is answered, as it is printed, and the answer."""

    question: tuple[Run, ...]
    answer: t.Node


def answer_said(runs: Sequence[Run]) -> AnswerSaid | None:
    r"""Return the question and the answer of a prompt that asks whether the answer is right.

    None where it is no such prompt, or says more than the frame does.

    >>> from itembank.notation import parse
    >>> runs = (
    ...     "Round ", parse("3.47"), " to 1 decimal place.\nMei says the answer is ", parse("3.5"),
    ...     ". True or false? Be ready to say why.",
    ... )
    >>> said = answer_said(runs)
    >>> said.question[-1], said.answer == parse("3.5")
    (' to 1 decimal place.', True)
    >>> answer_said((*runs[:2], " to 1 decimal place.\nNobody says the answer is ", *runs[3:]))
    """
    if len(runs) < 3:
        return None
    *asked, before, answer, after = runs
    if not isinstance(before, str) or isinstance(answer, str) or not isinstance(after, str):
        return None
    found = _BEFORE.fullmatch(before)
    if found is None or not _AFTER.fullmatch(" ".join(after.split())):
        return None
    question = found["question"]
    # After a piece of mathematics a new line alone may end the question.
    if not question and not (asked and "\n" in before):
        return None
    return AnswerSaid((*asked, question) if question else tuple(asked), answer)
