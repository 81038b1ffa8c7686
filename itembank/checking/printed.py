"""Checks that what is proved is what is printed."""

from __future__ import annotations

from itembank.items.item import (
    Ask,
    Choose,
    Common,
    Compare,
    Find,
    Inequality,
    Item,
    Order,
    Rewrite,
    Round,
    Sequence,
    Solve,
    Subject,
)
from itembank.notation.tree import (
    Dec,
    Frac,
    Int,
    Label,
    Mixed,
    Money,
    Node,
    Product,
    Quantity,
    Ratio,
    Relation,
    Sym,
    children,
    walk,
)
from itembank.notation.units import CURRENCY, UNITS

ORDER_WORDS = {"ascending": "smallest first", "descending": "largest first"}
"""What a prompt has to say so that a list in one order is the only right answer."""


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
        case Rewrite(target, _) | Round(target, _, _):
            return (target,)
        case Solve(relations):
            return relations
        case Subject(relation, letter):
            return (relation, letter)
        case Sequence(terms):
            return terms
        case Common(numbers, _):
            return numbers


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
    text = "".join(run for run in item.prompt if isinstance(run, str))
    if isinstance(item.ask, Order) and ORDER_WORDS[item.ask.detail] not in text:
        return f"the prompt does not say {ORDER_WORDS[item.ask.detail]!r}"
    if isinstance(item.ask, Choose):
        for label, _ in item.ask.options:
            if label not in text and Label(label) not in shown:
                return f"the choice {label!r} is not named in the prompt"
    return ""


def mismatched(item: Item) -> str:
    """Return how the key's letter or units are not those of the question, or ``""``.

    Two answers worth the same number are not the same answer: y = 5 does not solve an
    equation in x, and 6 litres are not 6 kilograms.
    """
    key, ask = item.key, item.ask
    if isinstance(ask, Find) and isinstance(key, Relation) and key.first != ask.target:
        return f"the key is about {key.first!r}, the question about {ask.target!r}"
    printed = {kind for run in item.prompt if not isinstance(run, str) for kind in kinds(run)}
    in_key = kinds(key)
    if not in_key <= printed:
        return f"the key is in units of {_names(in_key - printed)}, which the prompt does not print"
    if isinstance(ask, Find) and not ask.relations and _keeps_units(ask.target):
        wanted = kinds(ask.target)
        if in_key != wanted:
            return f"the key is in units of {_names(in_key)}, the question in {_names(wanted)}"
    return ""


def kinds(node: Node) -> frozenset[str]:
    """Return the kinds of unit in a tree: length, mass, money ….

    >>> sorted(kinds(Ratio((Quantity(Int(3), "kg"), Money(Int(2))))))
    ['mass', 'money']
    """
    return frozenset(
        UNITS[part.unit].dimension if isinstance(part, Quantity) else CURRENCY[part.sign].dimension
        for part in walk(node)
        if isinstance(part, Quantity | Money)
    )


def _keeps_units(node: Node) -> bool:
    """Whether the answer has the units of the question: nothing is divided by a quantity."""
    for part in walk(node):
        if isinstance(part, Ratio):
            return False
        if isinstance(part, Frac) and kinds(part):
            return False
        if isinstance(part, Product) and any(op == "÷" and kinds(p) for op, p in part.rest):
            return False
    return True


def _names(found: frozenset[str]) -> str:
    return " and ".join(sorted(found)) or "no kind"


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
