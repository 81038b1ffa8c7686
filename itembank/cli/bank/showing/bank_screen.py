"""What looking into a bank takes on the screen: a bar for long work, prompts as text."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

from itembank.cli.words.bar import Bar
from itembank.cli.words.wrapped import tied

T = TypeVar("T")


def with_bar(work: Callable[[Bar], T]) -> T:
    """Return what `work` returns; the bar it is given is taken away again."""
    bar = Bar()
    try:
        return work(bar)
    finally:
        bar.clear()


def asked_text(asked: Sequence[str | Sequence[str]]) -> str:
    """Return a prompt in pieces as one line of text.

    >>> asked_text(["Work out ", ["3/4 + 1/6"], "."]).replace(chr(160), " ")
    'Work out 3/4 + 1/6.'
    """
    return "".join(part if isinstance(part, str) else tied(part[0]) for part in asked)
