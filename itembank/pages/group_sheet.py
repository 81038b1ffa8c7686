"""Sheets to pin up after a starter: for each band its seats and what they do next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from .paper import WIDTH, LoosePaper, heading_part, text_part

TEXT = 18.0
SEATS = 30.0
"""Size of a seat code, in points: to be found from a step away."""
CAUTION = "A band is a teaching aid, not a grade."


@dataclass(frozen=True, slots=True)
class GroupPart:
    """A band's name with its letter, the seats in it, and what they do next."""

    name: str
    seats: Sequence[str]
    task: str


def group_sheets(title: str, groups: Sequence[GroupPart]) -> bytes:
    """Return a tagged PDF with a page for each group. The same data always give the same bytes."""
    paper = LoosePaper(title, CAUTION, TEXT)
    size = paper.size
    for number, group in enumerate(groups):
        if number:
            paper.new_page()
        pupils = "1 pupil" if len(group.seats) == 1 else f"{len(group.seats)} pupils"
        paper.place(
            [
                heading_part(f"{group.name}: {pupils}", size, 1),
                text_part(title, WIDTH, size, after=size),
                text_part(group.task, WIDTH, size, after=1.2 * size),
                # Three spaces keep one code from running into the next at this size.
                text_part(" \u2002 ".join(group.seats) or "Nobody", WIDTH, SEATS, bold=True),
            ]
        )
    return paper.finish()
