"""An item: one question with its key, working, likely mistakes and address."""

from __future__ import annotations

from typing import TypeAlias

from itembank.data_class import dataclass
from itembank.figures.figure import Figure
from itembank.items.asks import (
    Ask,
    Choose,
    Common,
    Compare,
    Condition,
    Draw,
    ErrorInterval,
    Find,
    Give,
    Inequality,
    OfFigure,
    Order,
    Pick,
    Rewrite,
    Round,
    RoundReading,
    Sequence,
    Solve,
    Subject,
    Summary,
    Which,
)
from itembank.items.tier import Tier
from itembank.notation import tree as t

# The kinds of question stand with the item, for whoever writes a topic.
__all__ = [
    "Ask",
    "Choose",
    "Common",
    "Compare",
    "Condition",
    "Draft",
    "Draw",
    "ErrorInterval",
    "Find",
    "Give",
    "Inequality",
    "Item",
    "Misconception",
    "OfFigure",
    "Order",
    "Pick",
    "Rewrite",
    "Round",
    "RoundReading",
    "Run",
    "Sequence",
    "Slip",
    "Solve",
    "Step",
    "Subject",
    "Summary",
    "Tier",
    "Which",
    "prompt",
]

Run: TypeAlias = str | t.Node
"""A stretch of a prompt: plain text, or a piece of mathematics."""


@dataclass(frozen=True, slots=True)
class Misconception:
    """A named wrong method and what a teacher can ask a pupil who used it."""

    id: str
    name: str
    ask: str


@dataclass(frozen=True, slots=True)
class Slip:
    """The wrong answer a misconception gives on one item."""

    misconception: Misconception
    wrong: t.Node


@dataclass(frozen=True, slots=True)
class Step:
    """One line of working: what is done, in words, and the line it gives."""

    say: str
    maths: t.Node | None = None
    figure: Figure | None = None


@dataclass(frozen=True, slots=True)
class Draft:
    """What a topic makes from parameters; the topic adds address and tier to make an item.

    `constants` are whole numbers the mathematics needs though the prompt does not print
    them, such as the 180 degrees of a triangle. `twin` is equal for two questions that are
    the same in disguise (same parameters up to order). Without `marks` a question is worth what
    its working says (:mod:`itembank.items.marks`).
    """

    prompt: tuple[Run, ...]
    ask: Ask
    key: t.Node
    form: str
    steps: tuple[Step, ...]
    slips: tuple[Slip, ...]
    twin: tuple[object, ...]
    marks: int | None = None
    constants: tuple[int, ...] = ()
    figure: Figure | None = None
    key_figure: Figure | None = None
    accept: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Item:
    """A question as it will be printed, with all that is known about it.

    `accept` are words for how answers are marked where the trade's defaults do not fit
    (:mod:`itembank.marking.form.policy`). `figure` is printed with the question, `key_figure`
    with its answer: the same figure with what the answer adds.
    """

    address: str
    topic: str
    tier: Tier
    prompt: tuple[Run, ...]
    ask: Ask
    key: t.Node
    form: str
    steps: tuple[Step, ...]
    slips: tuple[Slip, ...]
    twin: tuple[object, ...]
    marks: int
    constants: tuple[int, ...]
    accept: tuple[str, ...] = ()
    figure: Figure | None = None
    key_figure: Figure | None = None


def prompt(text: str, **maths: t.Node) -> tuple[Run, ...]:
    """Return `text` as runs, each ``{name}`` replaced by the mathematics of that name.

    >>> from itembank.notation.tree import Int
    >>> prompt("Double {n}.", n=Int(7))
    ('Double ', Int(n=7), '.')
    """
    runs: list[Run] = []
    for piece in text.split("{"):
        name, closed, after = piece.partition("}")
        if closed:
            runs.append(maths[name])
            piece = after
        if piece:
            runs.append(piece)
    return tuple(runs)
