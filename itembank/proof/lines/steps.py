"""Checks that each line of working is true and follows, and that the last gives the key."""

from __future__ import annotations

from dataclasses import replace

from itembank.items.asks import Answered, FaultyWorking, WhoIsRight, kind_of
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.proof.claim.step_pictures import picture_fault
from itembank.proof.exact.exact_road import by_first_road
from itembank.proof.lines.line_rules import line_fault


def step_fault(item: Item) -> str:
    """Return what is wrong with the working of an item that has to have one, or ``""``.

    >>> from itembank.items.topics.registry import find_item
    >>> step_fault(find_item("equations.two-step/core/5"))
    ''
    """
    if all(step.maths is None for step in item.steps):
        return "there is no working"
    return working_fault(item)


def working_fault(item: Item) -> str:
    """Return what is wrong with the working of `item`, or ``""``; to have none is no fault.

    A line without letters has to be true; an equation or inequality has to have the solution of
    the question; an expression has to be worth what is asked; the last line, or the last lines
    together, have to hold the key. A line that is none of these is said to be past checking.

    >>> from dataclasses import replace
    >>> from itembank.items.topics.registry import find_item
    >>> item = find_item("fractions.add-unlike/core/12")
    >>> working_fault(item), working_fault(replace(item, steps=item.steps[:-1]))
    ('', 'the last line of the working does not give the key')
    """
    lines = [step.maths for step in item.steps if step.maths is not None]
    for number, line in enumerate(lines, start=1):
        try:
            # The key itself is proved by both roads; here only what leads to it.
            fault = "" if _answers(item, line) else line_fault(item.ask, line)
        except t.NotationError as error:
            fault = f"cannot be checked: {error}"
        if fault:
            return f"line {number} of the working {fault}"
    if clause := picture_fault(item):
        return clause
    if lines and not all(_gives(part, lines) for part in _worked_out(item)):
        return "the last line of the working does not give the key"
    return ""


def _answers(item: Item, line: t.Node) -> bool:
    """Tell whether a line is the answer itself: where one is judged, what its question comes to."""
    if not isinstance(item.ask, Answered | FaultyWorking | WhoIsRight):
        return line == item.key
    try:
        return not by_first_road(replace(item, ask=item.ask.of, key=line)).fault
    except t.NotationError:
        return False


def _worked_out(item: Item) -> tuple[t.Node, ...]:
    """Return what the last line has to hold: the key, but for the names that it is made of.

    Which statement is true, which card is odd and which line is wrong is said in words.
    """
    if not kind_of(item.ask).frame and not isinstance(
        item.ask, Answered | FaultyWorking | WhoIsRight
    ):
        return (item.key,)
    parts = item.key.parts if isinstance(item.key, t.Listing) else (item.key,)
    return tuple(part for part in parts if not isinstance(part, t.Label))


def _gives(key: t.Node, lines: list[t.Node]) -> bool:
    """Whether the last line holds the key, or its value; several answers may have a line each."""
    last = set(t.walk(lines[-1]))
    if key in last or (isinstance(key, t.Relation) and _turned(key) in last):
        return True
    if isinstance(key, t.Listing | t.Either):
        return all(_seen(part, lines) for part in key.parts)
    return False


def _seen(part: t.Node, lines: list[t.Node]) -> bool:
    if isinstance(part, t.Listing):
        return all(_seen(step, lines) for step in part.parts)
    return any(part in t.walk(line) for line in lines)


def _turned(key: t.Relation) -> t.Node:
    """Return the key with its sides changed over: 5 = x for x = 5."""
    op, right = key.rest[0]
    return t.Relation(right, ((op, key.first),)) if op == "=" and len(key.rest) == 1 else key
