"""Checks that what is proved is what is printed."""

from __future__ import annotations

from itembank.items.item import Ask, Choose, Compare, Find, Inequality, Item, Order
from itembank.notation.tree import (
    Dec,
    Frac,
    Int,
    Label,
    Mixed,
    Node,
    Ratio,
    Sym,
    children,
)


def asked(ask: Ask) -> tuple[Node, ...]:
    """Return every tree the question is about."""
    match ask:
        case Find(target, relations):
            return (target, *relations)
        case Inequality(relation):
            return (relation,)
        case Order(things, _):
            return things
        case Compare(left, right):
            return (left, right)
        case Choose(options, _):
            return tuple(node for _, node in options)
    raise TypeError(ask)


def unprinted(item: Item) -> str:
    """Return what the proof would use that the prompt does not print, or ``""``.

    A tree of the question is printed if it stands in the prompt, whole. If it does not, the
    question is a model of a word problem, and then each of its numbers has to be printed or
    be one of the constants the item declares.
    """
    shown: set[Node] = set()
    for run in item.prompt:
        if not isinstance(run, str):
            _gather(run, shown)
    for node in asked(item.ask):
        missing = _missing(node, shown, item.constants)
        if missing is not None:
            return f"the proof uses {missing!r}, which the prompt does not print"
    if isinstance(item.ask, Choose):
        text = "".join(run for run in item.prompt if isinstance(run, str))
        for label, _ in item.ask.options:
            if label not in text and Label(label) not in shown:
                return f"the choice {label!r} is not named in the prompt"
    return ""


def _gather(node: Node, into: set[Node]) -> None:
    into.add(node)
    for child in children(node):
        _gather(child, into)


def _missing(node: Node, shown: set[Node], constants: tuple[int, ...]) -> Node | None:
    if node in shown or isinstance(node, Sym):
        return None
    if isinstance(node, Int) and node.n in constants:
        return None
    if isinstance(node, Int | Dec | Mixed):
        return node
    # A fraction or ratio of numbers is one number on the page; parts of two others are not it.
    if isinstance(node, Frac | Ratio) and all(isinstance(c, Int) for c in children(node)):
        loose = [c for c in children(node) if _missing(c, shown, constants) is not None]
        return node if loose else None
    for child in children(node):
        missing = _missing(child, shown, constants)
        if missing is not None:
            return missing
    return None
