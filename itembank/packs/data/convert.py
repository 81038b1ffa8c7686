"""Items to the pack's data and back: trees become faces, and lines become trees again."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from itembank.figures.figure import Figure
from itembank.items import item as items
from itembank.items.asks import kind_of
from itembank.items.forms.form_rules import form_words
from itembank.items.item import Item, Tier
from itembank.items.marks import step_marks
from itembank.items.measures.difficulty import difficulty
from itembank.items.wrong_answers import causes
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.mathml import mathml
from itembank.notation.words import words
from itembank.packs.data.asks import has_letter_p, pack_ask
from itembank.packs.data.pack import Band, NextTask
from itembank.packs.data.pack_item import (
    Key,
    MathRun,
    Maths,
    Misconception,
    PackItem,
    Picture,
    Proved,
    Run,
    Source,
    Step,
    TextRun,
)
from itembank.packs.data.source import Source as ItemSource
from itembank.planning.bands import bands as planning

FROM_PRINT: Proved = "from the printed mathematics"
FROM_WORDS: Proved = "from a model of the words"
LOOKED_AT = 16
"""How many items of a tier are looked at for the misconceptions it can show."""


class Faces:
    """Writes trees in their three faces, each tree once: a pack repeats many of its numbers."""

    def __init__(self) -> None:
        self._written: dict[tuple[t.Node, bool], Maths] = {}

    def maths(self, node: t.Node, pence: bool = True) -> Maths:
        """Return the faces of a tree; with `pence` false, p is a letter in its line."""
        found = self._written.get((node, pence))
        if found is None:
            text = line(node, pence=pence)
            found = Maths(mathml=mathml(node), line=text, words=words(node))
            self._written[node, pence] = found
        return found

    def run(self, run: items.Run, pence: bool = True) -> Run:
        """Return a stretch of a prompt."""
        if isinstance(run, str):
            return TextRun(text=run)
        faces = self.maths(run, pence)
        return MathRun(mathml=faces.mathml, line=faces.line, words=faces.words)


def pack_item(
    item: Item,
    topic: ItemSource,
    faces: Faces,
    marks: int | None = None,
    source: Source | None = None,
    title: str | None = None,
    asked_only: bool = False,
) -> PackItem:
    """Return an item as it stands in a pack; `marks` takes the place of the item's own.

    Starter questions are worth one mark each, whatever they would be worth on a sheet. Without
    `source` the item was generated; without `title` the topic is called what its source says.
    `asked_only`: without its working and its wrong answers, which a slide does not show.
    """
    if asked_only:
        item = replace(item, steps=(), slips=())
    pence = not has_letter_p(item)
    key = faces.maths(item.key, pence)
    shown = shown_by(item)
    worth = item.marks if marks is None else marks
    earned = step_marks(item.prompt, item.steps, worth)
    return PackItem(
        address=item.address,
        topic=item.topic,
        topic_title=topic.title if title is None else title,
        tier=item.tier.value,
        marks=worth,
        difficulty=difficulty(item),
        prompt=[faces.run(run, pence) for run in item.prompt],
        picture=picture(item.figure),
        key=Key(
            mathml=key.mathml,
            line=key.line,
            words=key.words,
            form=item.form,
            form_words=form_words(item.form),
        ),
        key_picture=picture(item.key_figure),
        ask=pack_ask(item),
        steps=[
            Step(
                say=step.say,
                maths=None if step.maths is None else faces.maths(step.maths, pence),
                picture=picture(step.figure),
                marks=number,
            )
            for step, number in zip(item.steps, earned, strict=True)
        ],
        misconceptions=[
            Misconception(
                id=slip.misconception.id,
                name=slip.misconception.name,
                wrong=faces.maths(slip.wrong, pence),
                ask=slip.misconception.ask,
            )
            for slip in item.slips
        ],
        untested=[
            misconception.name
            for misconception in topic.misconceptions
            if not asked_only
            and misconception.id not in shown
            and misconception.id in at_home(topic, item.tier)
        ],
        accept=list(item.accept),
        source=source or generated(item),
    )


def picture(figure: Figure | None) -> Picture | None:
    """Return a figure as the pack holds it."""
    if figure is None:
        return None
    from itembank.figures.figure import words as figure_words
    from itembank.figures.figure_data import to_data

    return Picture(data=to_data(figure), words=figure_words(figure))


def generated(item: Item, bank: str = "") -> Source:
    """Return the source of a generated item, which `bank` may have named."""
    printed = {run for run in item.prompt if not isinstance(run, str)}
    words = not printed.issuperset(kind_of(item.ask).model(item.ask))
    return Source(kind="generated", bank=bank, proved=FROM_WORDS if words else FROM_PRINT)


@cache
def at_home(topic: ItemSource, tier: Tier) -> frozenset[str]:
    """Return the ids of the misconceptions that a tier of a topic can show.

    A blind spot is worth a teacher's time only if another question of the tier would have
    shown it. They are looked for in a few items, evenly spaced over the tier's space.
    """
    count = len(topic.spaces[tier])
    places = range(0, count, max(1, count // LOOKED_AT))
    return frozenset().union(*(shown_by(topic.item(tier, place)) for place in places))


def shown_by(item: Item) -> frozenset[str]:
    """Return the ids of the misconceptions that an answer to an item may show."""
    return frozenset(name for slip in item.slips for name in causes(slip.misconception.id))


def pack_band(band: planning.Band) -> Band:
    """Return a band of the plan as the pack holds it; the two have the same field names."""
    task = {name: getattr(band.task, name) for name in NextTask.model_fields}
    rest = {name: getattr(band, name) for name in Band.model_fields if name != "task"}
    return Band(**rest, task=NextTask(**task))
