"""Phrases about the answer, after a command or in a sentence of their own."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.items.asks.of_figure import OF_ANSWER
from itembank.items.item import Run
from itembank.text.needed_letters import Needing
from itembank.wording.sentences.phrases import phrase
from itembank.wording.sentences.prompt import sentences, slotted
from itembank.wording.tasks.answers.answer_tails import (
    ASIDES,
    GLUE,
    GLUE_AND_ANSWER,
    METHODS,
    TAILS,
)


def unread_of_answer(runs: Sequence[Run]) -> str:
    """Return the first sentence about the answer that is not understood to its last word, or ``""``.

    >>> unread_of_answer(("Read it. Give your answer to 1 decimal place.",))
    ''
    >>> unread_of_answer(("Read it. Give your answer plus 3.",))
    'Give your answer plus 3'
    """
    for sentence in sentences(slotted(runs).text):
        about = OF_ANSWER.fullmatch(sentence)
        if about and not (is_aside(sentence) or about_the_answer(sentence)):
            return sentence
    return ""


def is_aside(sentence: str) -> bool:
    """Whether a whole sentence says how to work or to write, and nothing of what is asked.

    >>> is_aside("Show your working"), is_aside("Work it out")
    (True, False)
    """
    return any(phrase(aside).fullmatch(sentence) for aside in ASIDES)


def about_the_answer(sentence: str) -> bool:
    """Whether a sentence is nothing but phrases about the answer."""
    at = 0
    words = " " + sentence
    while at < len(words):
        end = end_of_phrase(words, at)
        if end is None:
            return False
        at = end
    return True


def end_of_phrase(text: str, at: int, task: str = "") -> int | None:
    """Return where the longest phrase about the answer that starts at `at` ends, or None."""
    starts = {
        match.end() for glue in (GLUE, GLUE_AND_ANSWER) if (match := phrase(glue).match(text, at))
    }
    known = _ALL if task in ("solve", "find-letter") else _TAILS
    ends = [
        match.end()
        for place in known.of(text)
        for start in starts
        if (match := phrase(_PHRASES[place]).match(text, start)) and match.end() > at
    ]
    return max(ends, default=None)


_TAILS = Needing(TAILS)
_ALL = Needing((*TAILS, *METHODS))
_PHRASES = tuple(rf"(?:{tail})(?!\w|[.,]\d)" for tail in (*TAILS, *METHODS))
