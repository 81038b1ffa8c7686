"""An item that a pool offers for a pack: what is asked of it is measured, or read, once."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Any

from itembank.figures.figure import drawn
from itembank.items.item import Item
from itembank.items.measures.difficulty import difficulty
from itembank.items.measures.kind_told import kind_told
from itembank.items.measures.looks import Look, look, structure
from itembank.notation import tree as t
from itembank.packs.data.source import (
    Source,
)
from itembank.packs.sources.bank_source import Question

FULL = 32
"""Characters that stand on a line of half a slide."""


@dataclass(frozen=True)
class Candidate:
    """An item of a source, with the parameters it was made from.

    What is measured of it is measured once, when it is first asked for: many are looked at
    for each that is taken.
    """

    item: Item
    index: int
    values: tuple[Any, ...]
    source: Source

    @property
    def can_be_looked_at(self) -> bool:
        """Whether it can be read and measured; of what a bank holds that may have to be tried."""
        return True

    @cached_property
    def difficulty(self) -> float:
        """How hard the item is."""
        return difficulty(self.item)

    @cached_property
    def look(self) -> Look:
        """What a pupil sees of it at a glance."""
        return look(self.item)

    @cached_property
    def length(self) -> int:
        """About how many characters its prompt is long, a fraction counting as three."""
        lines, high = [0], [False]
        for run in self.item.prompt:
            if isinstance(run, str):
                first, *more = run.split("\n")
                lines[-1] += len(first)
                lines += map(len, more)
                high += [False] * len(more)
            else:
                lines[-1] += 3 * sum(not t.children(part) for part in t.walk(run))
                high[-1] |= any(isinstance(part, t.Frac | t.Mixed) for part in t.walk(run))
        if len(lines) == 1:
            return lines[0]
        # A line that ends early takes the room of a whole one, and of two where it is high.
        return sum(
            max(length, FULL) + FULL * tall for length, tall in zip(lines, high, strict=True)
        )

    @cached_property
    def figure_size(self) -> tuple[float, float] | None:
        """How wide and how high what is drawn of it is, in ems of its labels; None without."""
        figure = self.item.key_figure or self.item.figure
        if figure is None:
            return None
        drawing = drawn(figure)
        return float(drawing.width), float(drawing.height)

    @cached_property
    def kind(self) -> str:
        """What a teacher calls its kind."""
        return kind_told(self.item.ask, self.item.prompt)

    @cached_property
    def structure(self) -> tuple[object, ...]:
        """What it has in common with items solved by the same steps."""
        return structure(self.item)


class BankCandidate(Candidate):
    """A question of a bank, which is read only when more is asked of it than its address."""

    # The base would be given the item, which is read here only when somebody asks for it.
    def __init__(self, question: Question, index: int, values: tuple[Any, ...], source: Source):
        for name, value in (
            *(("question", question), ("index", index), ("values", values)),
            ("source", source),
        ):
            object.__setattr__(self, name, value)

    question: Question

    @property
    def item(self) -> Item:
        """The question itself."""
        return self.question.item

    @cached_property
    def can_be_looked_at(self) -> bool:
        """Whether it can be read and measured."""
        if self.question.settled:
            return True
        if self.question.unreadable:
            return False
        try:
            _ = self.look, self.difficulty, self.structure
        except Exception:  # no key was proved yet, so anything at all may stand in it
            return False
        return True


def address_of(candidate: Candidate) -> str:
    """Return the address of a candidate, without reading it where it stands in a bank."""
    return (
        candidate.question.address
        if isinstance(candidate, BankCandidate)
        else candidate.item.address
    )
