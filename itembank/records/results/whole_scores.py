"""How a starter went as a whole, where only its scores or hands by band are known."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from sqlalchemy import Connection, Integer, cast, func, select

from itembank.data_class import dataclass
from itembank.records.store.store_tables import band_count, score

LEAST_VARIANCE = 0.25
"""Variance of scores, in marks², below which so few pupils are not believed to be alike."""


@dataclass(frozen=True, slots=True)
class Whole:
    """The scores of some pupils, as sums: of marks, and of their squares.

    `inside` is the variance of marks that comes of not knowing where in its band a pupil is.
    """

    total: float
    squares: float
    pupils: int
    out_of: int
    inside: float = 0.0

    def without(self, marks: Iterable[int]) -> Whole:
        """Return the same without the pupils who had these marks."""
        gone = list(marks)
        return replace(
            self,
            total=self.total - sum(gone),
            squares=self.squares - sum(mark * mark for mark in gone),
            pupils=self.pupils - len(gone),
        )

    @property
    def share(self) -> float:
        """Return the mean share of marks."""
        return self.total / self.pupils / self.out_of

    @property
    def variance(self) -> float:
        """Return the variance of the mean share of marks.

        >>> whole = Whole(12, 80, 2, 8)
        >>> whole.share, whole.variance
        (0.75, 0.0625)
        """
        mean = self.total / self.pupils
        # Of one pupil nothing shows how much pupils differ: by a quarter of the marks, say.
        spread = (
            (self.squares - self.total * mean) / (self.pupils - 1)
            if self.pupils > 1
            else (self.out_of / 4) ** 2
        )
        return (max(spread, LEAST_VARIANCE) / self.pupils + self.inside) / self.out_of**2


def of_scores(marks: Sequence[int], out_of: int) -> Whole:
    """Return how scores went together.

    >>> round(of_scores([4, 8, 6], 8).share, 3)
    0.75
    """
    return Whole(sum(marks), sum(mark * mark for mark in marks), len(marks), out_of)


def of_bands(counts: Sequence[tuple[int, int, int]], out_of: int) -> Whole:
    """Return the same from the lowest and the highest score and the pupils of each band.

    Each pupil counts by the middle of the band. Where in their band the pupils of a class are is
    not known, and may be alike for all of them, so that the variance of scores spread evenly
    over a band does not fall with the number of pupils.

    >>> found = of_bands([(0, 4, 8), (5, 6, 12), (7, 8, 9)], 8)
    >>> round(found.share, 3), round(found.variance, 3)
    (0.644, 0.014)
    """
    total = squares = inside = 0.0
    pupils = 0
    for lowest, highest, number in counts:
        middle = (lowest + highest) / 2
        pupils += number
        total += number * middle
        squares += number * middle * middle
        inside += number * ((highest - lowest + 1) ** 2 - 1) / 12
    return Whole(total, squares, pupils, out_of, inside / pupils if pupils else 0.0)


Wholes = dict[int | None, Whole]
"""How starters went as a whole, by entry."""


def wholes_of_scores(connection: Connection, entries: dict[int, int]) -> Wholes:
    """Return how the entries with scores went; `entries` gives the marks of each."""
    found: Wholes = {}
    # PostgreSQL's small integers end at 32,767, which is less than the square of 200 marks.
    marks = cast(score.c.marks, Integer)
    for row in connection.execute(
        select(
            score.c.entry_id,
            func.sum(score.c.marks),
            func.sum(marks * marks),
            func.count(),
        )
        .where(score.c.entry_id.in_(entries))
        .group_by(score.c.entry_id)
    ):
        found[row[0]] = Whole(float(row[1]), float(row[2]), row[3], entries[row[0]])
    return found


def wholes_of_bands(connection: Connection, entries: dict[int, int]) -> Wholes:
    """Return how the entries with hands by band went; `entries` gives the marks of each."""
    counts: dict[int, list[tuple[int, int, int]]] = {}
    for row in connection.execute(select(band_count).where(band_count.c.entry_id.in_(entries))):
        counts.setdefault(row.entry_id, []).append((row.lowest, row.highest, row.pupils))
    found = {number: of_bands(rows, entries[number]) for number, rows in counts.items()}
    return {number: whole for number, whole in found.items() if whole.pupils}
