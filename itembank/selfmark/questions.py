"""A question as the page's marker needs it: everything that its words settle, settled here."""

from __future__ import annotations

import re
from dataclasses import fields
from typing import Any

from itembank.items.asks import Common, Compare, Equivalent, Give, Sequence, asked
from itembank.items.item import Item
from itembank.marking.form.policy import policy
from itembank.marking.typing.answer_setting import setting
from itembank.marking.typing.working.prompt_printed import equation_of, printed_values
from itembank.marking.worth.letters_unknown import is_expression
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.typed_maths import tidy
from itembank.notation import tree as t
from itembank.selfmark.tables import pattern, plain
from itembank.wording.story.amount_asked import about, words_of

_COUNTED = re.compile(r"# ([a-z]+)\b")


def tree_data(node: t.Node) -> list[Any]:
    """Return a tree as nested lists: its kind, then its fields; whole numbers as texts.

    >>> from itembank.notation import parse
    >>> tree_data(parse("x + 1/2"))
    ['Sum', ['Sym', 'x'], [['+', ['Frac', ['Int', '1'], ['Int', '2']]]]]
    """
    exact = isinstance(node, t.Int | t.Mixed)
    data: list[Any] = [type(node).__name__]
    for field in fields(node):
        value = getattr(node, field.name)
        data.append(str(value) if exact else _field_data(value))
    return data


def _field_data(value: Any) -> Any:
    if isinstance(value, tuple):
        return [_field_data(part) for part in value]
    return value if isinstance(value, str | int | type(None)) else tree_data(value)


def question_data(item: Item) -> dict[str, Any]:
    """Return what marks answers to one question, in what JSON can hold."""
    ask, kind = item.ask, marking_of(item.ask)
    known, how, subject = setting(item), policy(item), about(item)
    equation = equation_of(item)
    many = kind.unmet is not None
    shown = [run for run in item.prompt if not isinstance(run, str)]
    every_letter = [
        letters for letters in (frozenset("n"), frozenset("xy")) if kind.for_letters(letters)
    ]
    return {
        "key": tree_data(item.key),
        "form": item.form,
        "letters": sorted(known.letters),
        "words": " ".join(run for run in item.prompt if isinstance(run, str)),
        "estimate": known.about_how_many,
        "shown": [tree_data(run) for run in shown],
        "names": list(kind.names(ask)),
        "reads": kind.reads,
        "drawn": kind.drawn,
        "cards": kind.cards(ask),
        "partners": kind.partners(ask),
        "sign": kind.sign,
        "range": kind.range or item.form == "inequality",
        "repeated": kind.repeated,
        "equals_nothing": is_expression(item.key),
        "ordered": kind.ordered(ask),
        "rounds": kind.rounded(ask) is not None,
        "leads": pattern(kind.leads) if kind.leads is not None else None,
        "for_letters": {0: "", 1: "n", 2: "all"}[len(every_letter)],
        "target": _tree(kind.target(ask)),
        "asked_target": _tree(getattr(ask, "target", None)),
        "equation": _tree(equation),
        "printed": {name: plain(worth) for name, worth in printed_values(item).items()},
        "numbers": [tree_data(node) for node in asked(ask)] if isinstance(ask, Compare) else [],
        "terms": [tree_data(node) for node in ask.terms] if isinstance(ask, Sequence) else None,
        "common": (
            {"numbers": [tree_data(node) for node in ask.numbers], "detail": ask.detail}
            if isinstance(ask, Common)
            else None
        ),
        "equivalent": _tree(ask.target) if many and isinstance(ask, Equivalent) else None,
        "give": _give(ask) if many and isinstance(ask, Give) else None,
        "policy": {field.name: plain(getattr(how, field.name)) for field in fields(how)},
        "about": {
            "units": sorted(subject.units),
            "named": subject.named,
            "noun": subject.noun,
            "beside": sorted(subject.beside),
        },
        "nouns": sorted(set(_COUNTED.findall(words_of(item).lower()))),
        "slips": [
            [tree_data(tidy(slip.wrong)), slip.misconception.ask, slip.misconception.id]
            for slip in item.slips
        ],
    }


def _tree(node: t.Node | None) -> list[Any] | None:
    return None if node is None else tree_data(node)


def _give(ask: Give) -> dict[str, Any]:
    return {
        "letters": [letter.name for letter in ask.letters],
        "relations": [tree_data(relation) for relation in ask.relations],
        "conditions": [
            [condition.name, [tree_data(node) for node in condition.of]]
            for condition in ask.conditions
        ],
    }
