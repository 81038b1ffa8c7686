"""Takes what is forgotten out of one exported table, however a spreadsheet has saved it since.

A table may hold two million rows, so it is read row by row, and written anew only if something
in it has to go.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from itembank.files.csv_text import as_meant
from itembank.people.seats import seat_fault
from itembank.records.exporting import TAKEN_BACK
from itembank.records.forget.resaved import Table, open_table
from itembank.records.pupils.whom import Whom
from itembank.text.folding import folded, same_name
from itembank.text.whole_number import whole_number

Counts = Mapping[tuple[int, int], tuple[int, int]]
"""Right answers and answers given, by entry and question, as the store has them now."""
_OURS = {
    *("class", "date", "period", "entry", "kind", "made_at", "state", "marks", "question"),
    *("address", "topic", "tier", "prompt", "letter", "name", "lowest", "highest", "pupils"),
    *(
        "right",
        "out_of",
        "seat",
        "misconception",
        "level",
        "unsure",
        "asked",
        "to_class",
        "to_seat",
    ),
}
"""Headings of columns whose cells are no sentences about pupils."""


@dataclass(slots=True)
class Cleaned:
    """What became of a table: whether it was written anew, and what a person should look at."""

    changed: bool = False
    doubts: list[str] = field(default_factory=list)


def clean_table(
    path: Path, whom: Whom, counts: Callable[[], Counts], known: Collection[str] | None = None
) -> Cleaned:
    """Take what is forgotten out of a table; `counts` tells what the store counts without it.

    `known` are the classes of the store, as names are compared: a row of no such class may be of
    one that is called otherwise by now, so that a person has to look. None doubts nothing.

    Raises:
        OSError: it cannot be read or written; it is as it was.
        ValueError: it is no table that this tool wrote.
    """
    done = Cleaned()
    table = open_table(path)
    change = _Change(table, whom, counts, known)
    # Looked through first: most tables hold nothing of what is to go, and stay untouched.
    done.changed = any(new != old for old, new in change.rows())
    if done.changed:
        table.write(new for _, new in change.rows() if new is not None)
    done.doubts = change.doubts
    return done


class _Change:
    """What becomes of each row."""

    def __init__(
        self,
        table: Table,
        whom: Whom,
        counts: Callable[[], Counts],
        known: Collection[str] | None,
    ) -> None:
        self.table, self.whom, self.known = table, whom, known
        place = table.column
        self.seat, self.question = place("seat"), place("question")
        self.right, self.out_of, self.entry = place("right"), place("out_of"), place("entry")
        sums = None not in (self.question, self.right, self.out_of, self.entry)
        self.counts = counts() if whom.seat and sums and self.seat is None else None
        self.notes = [n for n, head in enumerate(table.heads) if head not in _OURS]
        self.doubts: list[str] = []
        self._days: dict[str, datetime.date | None] = {}
        self._loose = False

    def rows(self) -> Iterator[tuple[list[str], list[str] | None]]:
        """Yield each row with what it is to be, None where it is to go."""
        self.doubts = []
        strange: set[str] = set()
        undated: set[str] = set()
        unknown: set[str] = set()
        self._loose = self._seat_lost_zeros()
        class_at, date_at = self.table.heads.index("class"), self.table.heads.index("date")
        for row in self.table.rows():
            if self._is_move(row):
                yield row, None
                continue
            if self.whom.class_name and not same_name(_said(row[class_at]), self.whom.class_name):
                unknown |= self._perhaps_theirs(row, self._day(row[date_at]))
                yield row, row
                continue
            day = self._day(row[date_at])
            if self.whom.before is not None or self.whom.since is not None:
                if day is None:
                    undated.add(row[date_at])
                    yield row, row
                    continue
                if not self.whom.of_lesson(self.whom.class_name, day):
                    yield row, row
                    continue
            if self.whom.seat and self.seat is not None:
                cell = _said(row[self.seat])
                if self._is_seat(cell):
                    yield row, None
                    continue
                if cell and seat_fault(cell):
                    strange.add(cell)
            elif not self.whom.seat:
                yield row, None
                continue
            yield row, self._without(row)
        if undated:
            self.doubts.append(f"it has days that cannot be read, such as ‘{min(undated)[:30]}’")
        if unknown:
            self.doubts.append(
                f"it has rows of ‘{min(unknown)[:30]}’, a class that the results do not know: it "
                "may be an earlier name"
            )
        if strange:
            self.doubts.append(
                f"it has seats that are no codes, such as ‘{min(strange)[:30]}’, which a "
                "spreadsheet may have changed"
            )

    def _is_move(self, row: list[str]) -> bool:
        """Tell whether a row says that the pupil of the seat, or one of the class, moved.

        Earlier and later moves than what is to be forgotten stay, as they do in the store.
        """
        places = self._places()
        if len(places) < 2 or not self.whom.class_name:
            return False
        if self._is_apart(row) and not (self.whom.seat and self._is_taken_back(row)):
            return False
        return any(
            same_name(_said(row[at]), self.whom.class_name)
            and (not self.whom.seat or (seat is not None and self._is_seat(_said(row[seat]))))
            for at, seat in places
        )

    def _is_apart(self, row: list[str]) -> bool:
        """Tell whether a move is of another time than what is to be forgotten."""
        day = self._day(row[self.table.heads.index("date")])
        since, end = self.whom.since, self.whom.before
        if day is None:
            return False
        if since is not None and day < since:
            return True
        # The move with which a pupil's time in a seat ended is of that very day.
        return end is not None and (day > end or (day == end and not self.whom.seat))

    def _is_taken_back(self, row: list[str]) -> bool:
        """Tell whether a move is one that was not so: on what day is then nothing to go by."""
        state = self.table.column("state")
        return state is not None and _said(row[state]) == TAKEN_BACK

    def _perhaps_theirs(self, row: list[str], day: datetime.date | None) -> set[str]:
        """Return the names in a row of another class that may be earlier ones of theirs."""
        if day is not None and not self.whom.of_lesson(self.whom.class_name, day):
            return set()
        found = set()
        for at, seat in self._places():
            name = _said(row[at])
            if self.known is None or not name or folded(name) in self.known:
                continue
            if self.whom.seat and seat is not None:
                theirs = self._is_seat(_said(row[seat]))
            else:
                theirs = not self.whom.seat or self._without(row) != row
            if theirs:
                found.add(name)
        return found

    def _places(self) -> list[tuple[int, int | None]]:
        """Return the columns of a class and its seat: two pairs where the table is of moves."""
        found = [(self.table.heads.index("class"), self.seat)]
        to_class, to_seat = self.table.column("to_class"), self.table.column("to_seat")
        return found if to_class is None or to_seat is None else [*found, (to_class, to_seat)]

    def _day(self, cell: str) -> datetime.date | None:
        if cell not in self._days:
            self._days[cell] = self.table.date(cell)
        return self._days[cell]

    def _is_seat(self, cell: str) -> bool:
        if self.whom.of_seat(cell):
            return True
        return self._loose and whole_number(cell) == whole_number(self.whom.seat)

    def _seat_lost_zeros(self) -> bool:
        """Tell whether seat 01 stands in the table as 1: it is not there as it was written."""
        if not (self.whom.seat.isdigit() and self.whom.seat.startswith("0")) or self.seat is None:
            return False
        return not any(self.whom.of_seat(_said(row[self.seat])) for row in self.table.rows())

    def _without(self, row: list[str]) -> list[str] | None:
        """Return a row of the class without the seat: its counts, and what its notes say."""
        new = row
        if self.counts is not None:
            entry, number = (whole_number(row[n].strip()) for n in (self.entry, self.question))  # type: ignore[index]
            fresh = self.counts.get((entry, number)) if entry and number else None
            if fresh is None:
                return None
            new = [*row]
            new[self.right], new[self.out_of] = str(fresh[0]), str(fresh[1])  # type: ignore[index]
        if self.whom.seat and self.whom.is_word:
            for at in [*self.notes, *range(len(self.table.heads), len(row))]:
                if self.whom.said_in(row[at]):
                    new = [*new]
                    new[at] = self.whom.cut_from(row[at])
        return new


def _said(cell: str) -> str:
    return as_meant(cell).strip()
