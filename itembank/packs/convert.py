"""Items to the pack's data and back: trees become faces, and lines become trees again."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Literal, cast

from itembank.items import item as items
from itembank.items.difficulty import difficulty
from itembank.items.forms import FORMS, form_words
from itembank.items.item import Item, Tier
from itembank.items.topic import Topic
from itembank.notation.line import line
from itembank.notation.mathml import mathml
from itembank.notation.parse import ParseError, parse
from itembank.notation.tree import Node, NotationError, Relation
from itembank.notation.words import words
from itembank.packs.model import (
    Ask,
    Band,
    Key,
    MathRun,
    Maths,
    Misconception,
    NextTask,
    PackItem,
    Run,
    Step,
    TextRun,
)
from itembank.planning import bands as planning

LOOKED_AT = 16
"""How many items of a tier are looked at for the misconceptions it can show."""


class Mismatch(NotationError):
    """A stored piece of mathematics whose faces do not say the same thing."""


class Faces:
    """Writes trees in their three faces, each tree once: a pack repeats many of its numbers."""

    def __init__(self) -> None:
        self._written: dict[Node, Maths] = {}

    def maths(self, node: Node) -> Maths:
        """Return the faces of a tree."""
        found = self._written.get(node)
        if found is None:
            found = Maths(mathml=mathml(node), line=line(node), words=words(node))
            self._written[node] = found
        return found

    def run(self, run: items.Run) -> Run:
        """Return a stretch of a prompt."""
        if isinstance(run, str):
            return TextRun(text=run)
        faces = self.maths(run)
        return MathRun(mathml=faces.mathml, line=faces.line, words=faces.words)


def pack_item(item: Item, topic: Topic, faces: Faces, marks: int | None = None) -> PackItem:
    """Return an item as it stands in a pack; `marks` takes the place of the item's own.

    Starter questions are worth one mark each, whatever they would be worth on a sheet.
    """
    key = faces.maths(item.key)
    shown = {slip.misconception.id for slip in item.slips}
    return PackItem(
        address=item.address,
        topic=item.topic,
        topic_title=topic.title,
        tier=item.tier.value,
        marks=item.marks if marks is None else marks,
        difficulty=difficulty(item),
        prompt=[faces.run(run) for run in item.prompt],
        key=Key(
            mathml=key.mathml,
            line=key.line,
            words=key.words,
            form=item.form,
            form_words=form_words(item.form),
        ),
        ask=pack_ask(item),
        steps=[
            Step(say=step.say, maths=None if step.maths is None else faces.maths(step.maths))
            for step in item.steps
        ],
        misconceptions=[
            Misconception(
                id=slip.misconception.id,
                name=slip.misconception.name,
                wrong=faces.maths(slip.wrong),
                ask=slip.misconception.ask,
            )
            for slip in item.slips
        ],
        untested=[
            one.name
            for one in topic.misconceptions
            if one.id not in shown and one.id in at_home(topic, item.tier)
        ],
    )


@cache
def at_home(topic: Topic, tier: Tier) -> frozenset[str]:
    """Return the ids of the misconceptions that a tier of a topic can show.

    A blind spot is worth a teacher's time only if another question of the tier would have
    shown it. They are looked for in a few items, evenly spaced over the tier's space.
    """
    count = len(topic.spaces[tier])
    places = range(0, count, max(1, count // LOOKED_AT))
    return frozenset(
        slip.misconception.id for place in places for slip in topic.item(tier, place).slips
    )


def pack_ask(item: Item) -> Ask:
    """Return the question behind an item's words, in line notation."""
    constants = list(item.constants)
    match item.ask:
        case items.Find(target, relations):
            return Ask(
                kind="find",
                target=[line(target)],
                relations=[line(one) for one in relations],
                constants=constants,
            )
        case items.Inequality(relation):
            return Ask(kind="inequality", target=[line(relation)], constants=constants)
        case items.Order(things, detail):
            return Ask(
                kind="order",
                target=[line(thing) for thing in things],
                detail=detail,
                constants=constants,
            )
        case items.Compare(left, right):
            return Ask(kind="compare", target=[line(left), line(right)], constants=constants)
        case items.Choose(options, detail):
            return Ask(
                kind="choose",
                target=[line(node) for _, node in options],
                labels=[label for label, _ in options],
                detail=detail,
                constants=constants,
            )


def pack_band(band: planning.Band) -> Band:
    """Return a band of the plan as the pack holds it; the two have the same field names."""
    task = {name: getattr(band.task, name) for name in NextTask.model_fields}
    rest = {name: getattr(band, name) for name in Band.model_fields if name != "task"}
    return Band(**rest, task=NextTask(**task))


def read_maths(maths: Maths) -> Node:
    """Return the tree that a stored line writes.

    Raises:
        NotationError: the line cannot be read, or another face says something else.
    """
    try:
        node = parse(maths.line)
    except ParseError as error:
        raise NotationError(f"the line ‘{maths.line}’ cannot be read: {error}") from None
    if line(node) != maths.line:
        raise Mismatch(f"the line ‘{maths.line}’ should be written ‘{line(node)}’")
    for face, written in (("MathML", mathml(node)), ("words", words(node))):
        if getattr(maths, face.lower()) != written:
            raise Mismatch(f"the {face} and the line ‘{maths.line}’ do not say the same")
    return node


def read_item(stored: PackItem) -> Item:
    """Return a stored item as an item that can be proved again.

    The proofs start from what is stored, not from the address: what is printed is what counts.

    Raises:
        NotationError: a line cannot be read, faces differ, or the question makes no sense.
    """
    if stored.key.form not in FORMS:
        raise NotationError(f"there is no form called ‘{stored.key.form}’")
    if stored.key.form_words != form_words(stored.key.form):
        raise Mismatch(f"form_words does not describe the form ‘{stored.key.form}’")
    return Item(
        address=stored.address,
        topic=stored.topic,
        tier=Tier(stored.tier),
        prompt=tuple(
            run.text if isinstance(run, TextRun) else read_maths(run) for run in stored.prompt
        ),
        ask=_read_ask(stored.ask),
        key=read_maths(stored.key),
        form=stored.key.form,
        steps=tuple(
            items.Step(step.say, None if step.maths is None else read_maths(step.maths))
            for step in stored.steps
        ),
        slips=tuple(
            items.Slip(items.Misconception(one.id, one.name, one.ask), read_maths(one.wrong))
            for one in stored.misconceptions
        ),
        twin=(stored.address,),
        marks=stored.marks,
        constants=tuple(stored.ask.constants),
    )


def _read_ask(ask: Ask) -> items.Ask:
    nodes = [parse(text) for text in ask.target]
    if ask.relations and ask.kind != "find":
        raise NotationError(f"a question to {ask.kind} has no relations")
    match ask.kind:
        case "find":
            relations = [_relation(text) for text in ask.relations]
            return items.Find(_only(nodes, 1)[0], tuple(relations))
        case "inequality":
            _only(nodes, 1)
            return items.Inequality(_relation(ask.target[0]))
        case "order":
            direction = _detail(ask, ("ascending", "descending"))
            return items.Order(tuple(nodes), cast(Literal["ascending", "descending"], direction))
        case "compare":
            left, right = _only(nodes, 2)
            return items.Compare(left, right)
        case "choose":
            if not nodes or len(ask.labels) != len(nodes):
                raise NotationError("a choice needs a label for each option")
            extreme = _detail(ask, ("least", "greatest"))
            options = tuple(zip(ask.labels, nodes, strict=True))
            return items.Choose(options, cast(Literal["least", "greatest"], extreme))


def _relation(text: str) -> Relation:
    node = parse(text)
    if not isinstance(node, Relation):
        raise NotationError(f"‘{text}’ is not an equation or an inequality")
    return node


def _only(nodes: Sequence[Node], count: int) -> Sequence[Node]:
    if len(nodes) != count:
        raise NotationError(f"the ask has {len(nodes)} targets where it needs {count}")
    return nodes


def _detail(ask: Ask, known: tuple[str, str]) -> str:
    if ask.detail not in known:
        raise NotationError(f"the detail of a question to {ask.kind} is {' or '.join(known)}")
    return ask.detail
