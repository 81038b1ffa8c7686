"""An item: one question with its key, working, likely mistakes and address."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal, TypeAlias

from itembank.notation import tree as t

Run: TypeAlias = str | t.Node
"""A stretch of a prompt: plain text, or a piece of mathematics."""


class Tier(StrEnum):
    """Difficulty of follow-up work, easiest first."""

    SUPPORT = "support"
    CORE = "core"
    CHALLENGE = "challenge"


Which: TypeAlias = Literal["largest", "smallest", "positive", "negative"]
"""One of several solutions or shares."""


@dataclass(frozen=True, slots=True)
class Find:
    """Work out `target`, given that every relation holds.

    With no relations the target is worked out as it stands. With relations the letters
    (or the empty box) are unknowns; the target is an expression, a ratio or a list in them.
    """

    target: t.Node
    relations: tuple[t.Relation, ...] = ()


@dataclass(frozen=True, slots=True)
class Inequality:
    """Solve an inequality in one unknown."""

    relation: t.Relation


@dataclass(frozen=True, slots=True)
class Order:
    """Put `things` in order of size."""

    things: tuple[t.Node, ...]
    detail: Literal["ascending", "descending"] = "ascending"


@dataclass(frozen=True, slots=True)
class Compare:
    """Put the right sign, <, > or =, between two numbers; the key is the relation."""

    left: t.Node
    right: t.Node


@dataclass(frozen=True, slots=True)
class Choose:
    """Name the option that is worth the least or the greatest."""

    options: tuple[tuple[str, t.Node], ...]
    detail: Literal["least", "greatest"]


@dataclass(frozen=True, slots=True)
class Rewrite:
    """Write `target` in another way without changing its value, whatever its letters are worth."""

    target: t.Node
    detail: Literal["simplify", "expand", "factorise"]


@dataclass(frozen=True, slots=True)
class Solve:
    """Find every real solution of the equations, which are in one letter or several.

    The key is ``x = 3``; several solutions are an :class:`~itembank.notation.tree.Either`; in
    several letters each solution is a list, ``x = 2, y = 5``.
    """

    relations: tuple[t.Relation, ...]


@dataclass(frozen=True, slots=True)
class Pick:
    """Of the solutions of `of`, or of the parts of its target, give only the one that is named.

    *The positive solution*, *the larger share*: the key is that one, alone.
    """

    of: Find | Solve
    which: Which


@dataclass(frozen=True, slots=True)
class Subject:
    """Make `letter` the subject of a formula."""

    relation: t.Relation
    letter: t.Sym


@dataclass(frozen=True, slots=True)
class Sequence:
    """Give the nth term of a sequence, from its first terms, as an expression in n."""

    terms: tuple[t.Node, ...]


@dataclass(frozen=True, slots=True)
class Common:
    """Find the highest common factor or the lowest common multiple of whole numbers."""

    numbers: tuple[t.Node, ...]
    detail: Literal["hcf", "lcm"]


@dataclass(frozen=True, slots=True)
class Round:
    """Round `target` to `amount` decimal places or significant figures, or to the nearest `amount`.

    Halves are rounded away from zero (common practice in schools, no source). With `way` *down*
    the digits after the last that is kept are dropped, so that a number is truncated; *up* goes
    to the next one away from zero where anything was dropped.
    """

    target: t.Node
    detail: Literal["places", "figures", "nearest"]
    amount: int
    way: Literal["nearest", "down", "up"] = "nearest"


Ask: TypeAlias = (
    Find
    | Inequality
    | Order
    | Compare
    | Choose
    | Rewrite
    | Solve
    | Pick
    | Subject
    | Sequence
    | Common
    | Round
)
"""The question behind the words: what a proof starts from."""


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


@dataclass(frozen=True, slots=True)
class Item:
    """A question as it will be printed, with all that is known about it.

    `accept` are words for how answers are marked where the trade's defaults do not fit
    (:mod:`itembank.marking.form.policy`).
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
