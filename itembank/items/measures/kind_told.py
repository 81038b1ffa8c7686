"""What a teacher calls the kind of a question: *true or false*, *missing number*, *match pairs*."""

from __future__ import annotations

from collections.abc import Iterable

from itembank.items.asks import Ask, Find, Pick, kind_of
from itembank.items.asks.of_figure import READ_A_PICTURE
from itembank.notation import tree as t

WORK_OUT, WORD_PROBLEM = "work it out", "word problem"
MISSING = "missing number"
PICTURE = READ_A_PICTURE
PLAIN = frozenset({WORK_OUT, WORD_PROBLEM})
"""The kinds that a page has most of; all others are there for a change."""


def kind_told(ask: Ask, prompt: Iterable[str | t.Node]) -> str:
    """Return what a teacher calls the kind of a question.

    >>> from itembank.items.topics.registry import find_item
    >>> topics = ("equations.one-step", "fractions.equivalent", "ratio.share")
    >>> items = [find_item(f"{topic}/support/3") for topic in topics]
    >>> [kind_told(item.ask, item.prompt) for item in items]
    ['work it out', 'missing number', 'word problem']
    """
    told = kind_of(ask).told
    asked = ask.of if isinstance(ask, Pick) else ask
    if told or not isinstance(asked, Find):
        return told or WORK_OUT
    if isinstance(asked.target, t.Blank):
        return MISSING
    printed = {run for run in prompt if not isinstance(run, str)}
    return WORK_OUT if _bare(asked, printed) else WORD_PROBLEM


def _bare(ask: Find, printed: set[t.Node]) -> bool:
    """Tell whether what is asked stands on the page, if in a larger piece of mathematics."""
    there = {part for run in printed for part in t.walk(run)}
    return all(relation in there for relation in ask.relations) and (
        ask.target in there or isinstance(ask.target, t.Sym)
    )
