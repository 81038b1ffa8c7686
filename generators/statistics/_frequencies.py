"""The frequency tables that questions are about, and what they come to."""

from __future__ import annotations

from typing import NamedTuple

from generators._scatter import unlike


class Story(NamedTuple):
    heading: str
    counts: str
    lead: str
    thing: str
    first: int


STORIES = (
    Story("Goals", "Matches", "The table shows a club’s goals in its matches.", "goals", 0),
    Story("Minutes", "Trips", "The table shows how late a bus was on its trips.", "minutes", 0),
    Story("Flowers", "Plants", "The table shows the flowers on some plants.", "flowers", 1),
    Story("Books", "Readers", "The table shows the books that readers borrow.", "books", 1),
    Story("Age", "Members", "The table shows the ages of a club’s members.", "age", 11),
    Story("Repairs", "Bikes", "The table shows the repairs that bikes needed.", "repairs", 0),
    Story("Eggs", "Nests", "The table shows the eggs in the nests of hens.", "eggs", 1),
)  # fmt: skip


class Table(NamedTuple):
    """The values and their frequencies."""

    values: tuple[int, ...]
    often: tuple[int, ...]

    @property
    def number(self) -> int:
        return sum(self.often)

    @property
    def total(self) -> int:
        return sum(v * f for v, f in zip(self.values, self.often, strict=True))

    def in_place(self, place: int) -> int:
        """Return the value at a place of the ordered list, counted from 1."""
        for value, count in zip(self.values, self.often, strict=True):
            place -= count
            if place <= 0:
                return value
        raise ValueError("the place is beyond the list")

    def twice_median(self) -> int:
        return self.in_place((self.number + 1) // 2) + self.in_place(self.number // 2 + 1)


def table_of(story: int, size: int, seed: int) -> Table:
    """Return the table of a story with so many values in a row, by its number."""
    first = STORIES[story].first
    return Table(tuple(range(first, first + size)), unlike(story + len(STORIES) * seed, size, 1, 9))


def table_with_gaps(story: int, seed: int) -> Table:
    """Return a table whose values go up in steps of one to three: its range is to be found."""
    plain = table_of(story, 4, seed)
    values = [plain.values[0]]
    for step in unlike(seed, 3, 1, 3):
        values.append(values[-1] + step)
    return Table(tuple(values), plain.often)
