"""Whether everything of an item can be written: what cannot is found here, and not on a page."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.items.asks import asked
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.line import line


def writing_fault(item: Item) -> str:
    """Return what of an item has no line of text that reads back as it, or ``""``.

    A sum inside a sum, say, needs brackets: on a page it would be two other terms.

    >>> from dataclasses import replace
    >>> from itembank.items.item import Step
    >>> from itembank.items.topics.registry import find_item
    >>> item = find_item("equations.two-step/core/5")
    >>> writing_fault(item)
    ''
    >>> inside = t.Sum(t.Int(1), (("+", t.add(t.Int(2), t.Int(3))),))
    >>> writing_fault(replace(item, steps=(Step("Add.", inside),)))
    'line 1 of the working cannot be written: Sum cannot stand as a term of a sum without brackets.'
    """
    for what, node in _written(item):
        if why := _fault(node):
            return f"{what} cannot be written: {why}"
    return ""


def _written(item: Item) -> Iterator[tuple[str, t.Node]]:
    for run in item.prompt:
        if not isinstance(run, str):
            yield "the question", run
    yield "the key", item.key
    for node in asked(item.ask):
        yield "what is asked", node
    number = 0
    for step in item.steps:
        if step.maths is not None:
            number += 1
            yield f"line {number} of the working", step.maths
    for slip in item.slips:
        yield "a likely wrong answer", slip.wrong


def _fault(node: t.Node) -> str:
    for pence in (True, False):  # 3p may be three times p
        try:
            line(node, pence=pence)
            return ""
        except t.NotationError as error:
            why = str(error)
    return why
