"""The question behind an item's words, to the pack's data and back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from itembank.items import item as items
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse_written
from itembank.packs.data.pack import Ask
from itembank.proof.claim.printed import asked


def pack_ask(item: Item) -> Ask:
    """Return the question behind an item's words, in line notation."""
    pence = not has_letter_p(item)

    def ask(kind: str, *target: t.Node, **rest: object) -> Ask:
        lines = [line(node, pence=pence) for node in target]
        fields = {"kind": kind, "target": lines, "constants": list(item.constants), **rest}
        return Ask.model_validate(fields)

    match item.ask:
        case items.Find(target, relations):
            return ask("find", target, relations=[line(one, pence=pence) for one in relations])
        case items.Inequality(relation):
            return ask("inequality", relation)
        case items.Order(things, detail):
            return ask("order", *things, detail=detail)
        case items.Compare(left, right):
            return ask("compare", left, right)
        case items.Choose(options, detail):
            nodes, labels = [node for _, node in options], [label for label, _ in options]
            return ask("choose", *nodes, labels=labels, detail=detail)
        case items.Rewrite(target, detail):
            return ask("rewrite", target, detail=detail)
        case items.Solve(relations):
            return ask("solve", relations=[line(one, pence=pence) for one in relations])
        case items.Pick(of, which):
            return pack_ask(replace(item, ask=of)).model_copy(update={"pick": which})
        case items.Subject(relation, letter):
            return ask("subject", relation, letter)
        case items.Sequence(terms):
            return ask("sequence", *terms)
        case items.Common(numbers, detail):
            return ask("common", *numbers, detail=detail)
        case items.Round(target, detail, amount, way):
            return ask("round", target, t.Int(amount), detail=detail, way=way)


def has_letter_p(item: Item) -> bool:
    """Tell whether p is a letter in an item, so that 3p in it is three times p, not pence."""
    nodes = [run for run in item.prompt if not isinstance(run, str)]
    nodes += [item.key, *asked(item.ask), *(slip.wrong for slip in item.slips)]
    nodes += [step.maths for step in item.steps if step.maths is not None]
    return any("p" in t.symbols(node) for node in nodes)


def read_ask(ask: Ask, pence: bool) -> items.Ask:
    """Return a stored question; with `pence` false, p is a letter in its lines.

    Raises:
        NotationError: a line cannot be read, or the question makes no sense.
    """
    if not ask.pick:
        return _read_ask(ask, pence)
    of = _read_ask(ask, pence)
    if not isinstance(of, items.Find | items.Solve):
        raise t.NotationError(f"a question to {ask.kind} has nothing to pick from")
    return items.Pick(of, ask.pick)


def _read_ask(ask: Ask, pence: bool) -> items.Ask:
    nodes = [parse_written(text, pence=pence) for text in ask.target]
    if ask.relations and ask.kind not in ("find", "solve"):
        raise t.NotationError(f"a question to {ask.kind} has no relations")
    relations = tuple(_relation(parse_written(text, pence=pence)) for text in ask.relations)
    match ask.kind:
        case "find":
            return items.Find(_only(nodes, 1)[0], relations)
        case "inequality":
            return items.Inequality(_relation(_only(nodes, 1)[0]))
        case "order":
            return items.Order(tuple(nodes), _detail(ask, ("ascending", "descending")))
        case "compare":
            left, right = _only(nodes, 2)
            return items.Compare(left, right)
        case "choose":
            if not nodes or len(ask.labels) != len(nodes):
                raise t.NotationError("a choice needs a label for each option")
            options = tuple(zip(ask.labels, nodes, strict=True))
            return items.Choose(options, _detail(ask, ("least", "greatest")))
        case "rewrite":
            return items.Rewrite(
                _only(nodes, 1)[0], _detail(ask, ("simplify", "expand", "factorise"))
            )
        case "solve":
            _only(nodes, 0)
            if not relations:
                raise t.NotationError("there is nothing to solve")
            return items.Solve(relations)
        case "subject":
            formula, letter = _only(nodes, 2)
            if not isinstance(letter, t.Sym):
                raise t.NotationError("only a letter can be made the subject")
            return items.Subject(_relation(formula), letter)
        case "sequence":
            return items.Sequence(tuple(nodes))
        case "common":
            return items.Common(tuple(nodes), _detail(ask, ("hcf", "lcm")))
        case "round":
            target, amount = _only(nodes, 2)
            if not isinstance(amount, t.Int):
                raise t.NotationError("a number is rounded to a whole number of places")
            to = _detail(ask, ("places", "figures", "nearest"))
            return items.Round(target, to, amount.n, ask.way)


def _relation(node: t.Node) -> t.Relation:
    if not isinstance(node, t.Relation):
        raise t.NotationError(f"‘{line(node)}’ is not an equation or an inequality")
    return node


def _only(nodes: Sequence[t.Node], count: int) -> Sequence[t.Node]:
    if len(nodes) != count:
        raise t.NotationError(f"the ask has {len(nodes)} targets where it needs {count}")
    return nodes


def _detail(ask: Ask, known: tuple[str, ...]) -> Any:
    if ask.detail not in known:
        raise t.NotationError(f"the detail of a question to {ask.kind} is {' or '.join(known)}")
    return ask.detail
