"""The rows of a sheet shared over its pages, with the working room that they get on each.

Ten follow-up questions at the usual size take two sides at most, and no page holds one question
alone, as long as any way of setting them allows it: what does not fit so in rows as they look
best is tried with more questions beside each other, and then with less room for working.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from itembank.errors import ItembankError
from itembank.packs.data.pack_item import PackItem
from itembank.pages.parts.questions.even_split import evenest
from itembank.pages.parts.sheet.rows import Row, rows

LEAST_SHARE = 0.45
"""Least working room, as a share of what a question would like, where all looks as it should."""
TIGHT_SHARE = 0.3
"""Least working room where a sheet would take a side too many or leave a question alone."""
EASY_SHARE = 0.8
"""With at least this share of its working room a sheet stays on fewer sides."""
HEAD_ALONE = 0.65
"""A first page with more room left than this, as a share of a whole page, has a head alone."""
MOST_SHARE = 2.0
"""With more than this the page looks empty rather than roomy."""


class Room(NamedTuple):
    """What a sheet has for its questions, in points.

    `first` is the room on the page already begun, `full` that on the others, `sides` how many
    pages there may be. `tight` is the least share of working room that may be kept to that end.
    """

    first: float
    full: float
    sides: int
    tight: float = TIGHT_SHARE

    @property
    def below_examples(self) -> bool:
        """Whether so little is left of the first page that more than a head stands on it."""
        return self.first <= HEAD_ALONE * self.full


class Shared(NamedTuple):
    """Rows page by page, and the share of working room that all of them can have."""

    pages: list[list[Row]]
    share: float

    def alone(self, room: Room) -> int:
        """How many pages hold one question alone, of a sheet that has more.

        A first page with its head alone looks like a sheet that went wrong: it counts as two.
        Where a sheet takes a side too many anyway, one question below its worked examples is not
        alone: without it a part of that page would be empty.
        """
        counts = [sum(len(row.cells) for row in page) for page in self.pages]
        bare = not counts[0] and not room.below_examples
        too_many = len(counts) > room.sides
        single = counts[1:] if room.below_examples and too_many else counts
        return (single.count(1) if sum(counts) > 1 else 0) + 2 * bare


def on_pages(
    items: Sequence[PackItem], size: float, least: float, room: Room, topics: bool = True
) -> Shared:
    """Return the questions of a sheet in rows, page by page; with `topics` these are named.

    Raises:
        ItembankError: one question alone is too long for a page.
    """
    made = rows(items, size, least, topics)
    best = share_out(made, room)
    if _faults(best, room) == (False, 0):
        return best
    close = rows(items, size, least, topics, close=True)
    for way, floor in ((close, LEAST_SHARE), (made, room.tight), (close, room.tight)):
        other = share_out(way, room, floor)
        # Of ways with as many faults the one tried first looks best.
        if _faults(other, room) < _faults(best, room):
            best = other
    return best


def _faults(shared: Shared, room: Room) -> tuple[bool, int]:
    """Tell whether rows take a side too many, and how many pages hold one question."""
    return len(shared.pages) > room.sides, shared.alone(room)


def share_out(made: Sequence[Row], room: Room, least: float = LEAST_SHARE) -> Shared:
    """Return rows page by page, as evenly filled as can be.

    As few pages as leave room enough are taken; more than there may be only where the `least`
    share of working room leaves no other way.

    Raises:
        ItembankError: one row alone is too long for a page.
    """
    _refuse_too_long(made, room.full, least)
    for pages in range(1, len(made) + 2):
        floor = least if pages >= room.sides else EASY_SHARE
        rooms = [room.first, *[room.full] * (pages - 1)]
        ways = [_evenly(made, rooms, floor)]
        if pages > 1:
            later = _evenly(made, rooms[1:], floor)
            ways.append([[], *later] if later else None)
        found = [Shared(way, _least_share(way, rooms)) for way in ways if way]
        if found:
            return min(found, key=lambda shared: shared.alone(room))
    return Shared([[]], MOST_SHARE)


def _refuse_too_long(made: Sequence[Row], full: float, least: float) -> None:
    for row in made:
        if row.height(least) > full:
            cell = max(row.cells, key=lambda cell: cell.block.height)
            raise ItembankError(
                f"Question {cell.number} ({cell.item.address}) is too long for a side of a "
                "sheet. Choose another question or shorten its words."
            )


def _least_share(pages: Sequence[Sequence[Row]], rooms: Sequence[float]) -> float:
    shares = (share_of(page, high) for page, high in zip(pages, rooms, strict=True) if page)
    return min(MOST_SHARE, *shares)


def share_of(page: Sequence[Row], room: float) -> float:
    """Return the share of working room that the rows of a page can all have."""
    return (room - sum(row.height(0.0) for row in page)) / sum(row.wish for row in page)


def _evenly(made: Sequence[Row], rooms: Sequence[float], floor: float) -> list[list[Row]] | None:
    """Return the rows shared evenly over pages with so much room, or None below the floor."""

    def fullness(group: range, place: int) -> float:
        share = share_of([made[i] for i in group], rooms[place])
        return floor / share if share > 0 else 2.0

    def alone(group: range) -> bool:
        return sum(len(made[i].cells) for i in group) == 1 < len(made)

    groups = evenest(len(made), len(rooms), fullness, alone)
    return [[made[i] for i in group] for group in groups] if groups else None
