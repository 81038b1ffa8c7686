"""Which mean, median, mode or range the words of a prompt ask for, and of which list."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.items.asks.summary import Summary
from itembank.items.item import Run
from itembank.wording.tasks.reader import read_prompt
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sums.list_sums import summary_of
from itembank.wording.tasks.sums.sums import NotBuilt


def summary_asked(runs: Sequence[Run]) -> Summary | None:
    """Return the summary that a prompt asks for, which is read whole, or None.

    >>> from itembank.items.item import prompt
    >>> from itembank.notation import parse
    >>> row = parse("3, 9, 5")
    >>> summary_asked(prompt("Find the range of {row}.", row=row)).detail
    'range'
    >>> summary_asked(prompt("Find the range of {row} and double it.", row=row)) is None
    True
    """
    reading = read_prompt(runs)
    if reading.unread or reading.where or not isinstance(reading.saying, Saying):
        return None
    nodes = [run for run in runs if not isinstance(run, str)]
    try:
        return summary_of(reading.saying.build, tuple(nodes[place] for place in reading.args))
    except NotBuilt:
        return None
