"""The question behind an item's words, to the pack's data and back."""

from __future__ import annotations

from typing import Any

from itembank.figures.figure import Figure, Reading
from itembank.items.asks import (
    KINDS,
    Answered,
    FaultyWorking,
    Find,
    Pick,
    Solve,
    Stored,
    WhoIsRight,
    asked,
    kind_of,
)
from itembank.items.asks import Ask as ItemAsk
from itembank.items.asks.ask_kind import relation
from itembank.items.forms.form_rules import FORMS
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse_written
from itembank.packs.data.pack_item import Ask, Condition, FigureReading


def pack_ask(item: Item) -> Ask:
    """Return the question behind an item's words, in line notation."""
    pence = not has_letter_p(item)

    def lines(nodes: tuple[t.Node, ...]) -> list[str]:
        return [line(node, pence=pence) for node in nodes]

    # One of several solutions, and an answer to be judged, stand under the name of what is asked.
    of = item.ask.of if isinstance(item.ask, Answered | FaultyWorking | WhoIsRight) else item.ask
    of = of.of if isinstance(of, Pick) else of
    stored = kind_of(item.ask).store(item.ask)
    fields: dict[str, Any] = {
        "kind": kind_of(of).name,
        "target": lines(stored.target),
        "relations": lines(stored.relations),
        "detail": stored.detail,
        "labels": list(stored.labels),
        "pick": stored.pick,
        "answers": lines(stored.answers),
        "answer_form": stored.form,
        "way": stored.way,
        "conditions": [Condition(name=name, of=lines(nodes)) for name, nodes in stored.conditions],
        "readings": [
            FigureReading(letter=letter, name=reading.name, of=list(reading.of))
            for letter, reading in stored.readings
        ],
        "constants": list(item.constants),
    }
    return Ask(**fields)


def has_letter_p(item: Item) -> bool:
    """Tell whether p is a letter in an item, so that 3p in it is three times p, not pence."""
    nodes = [run for run in item.prompt if not isinstance(run, str)]
    nodes += [item.key, *asked(item.ask), *(slip.wrong for slip in item.slips)]
    nodes += [step.maths for step in item.steps if step.maths is not None]
    return any("p" in t.symbols(node) for node in nodes)


def read_ask(
    ask: Ask, pence: bool, figure: Figure | None = None, key_figure: Figure | None = None
) -> ItemAsk:
    """Return a stored question; with `pence` false, p is a letter in its lines.

    Raises:
        NotationError: a line cannot be read, or the question makes no sense.
    """

    def nodes(texts: list[str]) -> tuple[t.Node, ...]:
        return tuple(parse_written(text, pence=pence) for text in texts)

    kind = KINDS[ask.kind]
    stored = Stored(
        nodes(ask.target),
        tuple(relation(node) for node in nodes(ask.relations)),
        ask.detail,
        tuple(ask.labels),
        ask.way,
        ask.pick,
        tuple((condition.name, nodes(condition.of)) for condition in ask.conditions),
        figure,
        key_figure,
        tuple(
            (reading.letter, Reading(reading.name, tuple(reading.of))) for reading in ask.readings
        ),
    )
    if stored.relations and not kind.relations:
        raise t.NotationError(f"a question to {ask.kind} has no relations")
    if stored.conditions and not (kind.many or kind.conditions):
        raise t.NotationError(f"a question to {ask.kind} has no conditions")
    of = kind.restore(stored)
    if ask.pick:
        if not isinstance(of, Find | Solve):
            raise t.NotationError(f"a question to {ask.kind} has nothing to pick from")
        of = Pick(of, ask.pick)
    return _answered(ask, of, nodes(ask.answers)) if ask.answers else of


def _answered(ask: Ask, of: ItemAsk, answers: tuple[t.Node, ...]) -> ItemAsk:
    """Return the question whether an answer is right, or whose of several."""
    if ask.answer_form not in FORMS:
        raise t.NotationError(f"there is no form called ‘{ask.answer_form}’")
    if len(answers) == 1:
        return Answered(of, answers[0], ask.answer_form)
    if not ask.labels:
        return FaultyWorking(of, answers, ask.answer_form)
    if len(ask.labels) != len(answers):
        raise t.NotationError("of several answers each has the name of who gives it")
    return WhoIsRight(of, tuple(zip(ask.labels, answers, strict=True)), ask.answer_form)
