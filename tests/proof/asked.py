"""Items made from lines of text, for the tests of what is proved."""

from __future__ import annotations

from itembank.items.item import (
    Ask,
    Common,
    Find,
    Inequality,
    Item,
    Order,
    Rewrite,
    Round,
    Sequence,
    Solve,
    Subject,
    Tier,
)
from itembank.notation import Listing, Node, Relation, Sym, parse_together


def asked(kind: str, question: str, key: str, form: str = "") -> Item:
    """Return an item; the lines of its question are parted by semicolons."""
    *nodes, answer = parse_together([*question.split(";"), key])
    word, _, amount = kind.partition(" ")
    usual = {
        "subject": "subject",
        "solve": "roots",
        "find": "expression",
        "inequality": "inequality",
        "order": "list",
        "places": "rounded",
        "figures": "rounded",
        "nearest": "rounded",
    }
    return Item(
        "bank:item",
        "a.b",
        Tier.CORE,
        ("Do this, smallest first: ", *nodes),
        _ask(word, nodes, int(amount or 0)),
        answer,
        form or usual.get(word, "expression"),
        (),
        (),
        ("a",),
        1,
        (),
    )


def _ask(word: str, nodes: list[Node], amount: int) -> Ask:
    first, parts = nodes[0], nodes[0].parts if isinstance(nodes[0], Listing) else tuple(nodes)
    relations = tuple(node for node in nodes if isinstance(node, Relation))
    match word:
        case "find":
            return Find(first, relations)
        case "expand" | "factorise" | "simplify":
            return Rewrite(first, word)
        case "solve":
            return Solve(relations)
        case "inequality":
            return Inequality(relations[0])
        case "subject":
            assert isinstance(nodes[1], Sym)
            return Subject(relations[0], nodes[1])
        case "sequence":
            return Sequence(parts)
        case "hcf" | "lcm":
            return Common(parts, word)
        case "places" | "figures" | "nearest":
            return Round(first, word, amount)
        case "order":
            return Order(parts)
    raise AssertionError(word)
