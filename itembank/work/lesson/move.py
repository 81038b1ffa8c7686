"""Moves pupils to another class or seat, one or a whole change of sets, with their history."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError, SeveralErrors
from itembank.today import today
from itembank.work.lesson.results_store import open_results

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.records.pupils.homes import Move

MOST = 2000
"""Moves in one list; a longer one is some other file."""
MOST_FAULTS = 20
"""Faults of a list that are told."""


@dataclass(frozen=True, slots=True)
class Moved:
    """Who moved where from which day on, and of how many of them something is recorded."""

    moves: tuple[Move, ...]
    date: datetime.date
    recorded: int

    @property
    def classes(self) -> tuple[str, ...]:
        """Return the classes that pupils came to."""
        return tuple(dict.fromkeys(move.to_class for move in self.moves if move.to_class))


def move(
    department: Department,
    seats: Sequence[tuple[str, str]] = (),
    sets: Path | None = None,
    date: datetime.date | None = None,
) -> Moved:
    """Move pupils, all at the same moment: of `seats`, pairs as ("8K/A3", "8L/C2"), or of a CSV.

    In place of the second seat stands ‘away’ for a pupil who left. The moves count from `date`
    on, today where it is left out.

    Raises:
        ItembankError: what is wrong with any of them; nobody was moved.
    """
    from itembank.records.pupils.moves import move_seats

    day = date if date is not None else today()
    rows = _rows(sets) if sets is not None else [("", *pair) for pair in seats]
    moves: list[Move] = []
    faults: list[ItembankError] = []
    for where, old, new in rows:
        try:
            moves.append(_move(department, old, new, day))
        except ItembankError as error:
            faults.append(error.within(where))
    if faults:
        raise SeveralErrors([*faults, ItembankError("Nobody was moved.")])
    unlisted = [made.source for made in moves if _unlisted(department, made)]
    with open_results(department) as store:
        return Moved(tuple(moves), day, move_seats(store, moves, unlisted))


def _rows(path: Path) -> list[tuple[str, str, str]]:
    """Return file and line, seat now and seat to come, from a CSV.

    Raises:
        ItembankError: it cannot be read, or a line has not two cells.
    """
    from itembank.files.csv_text import csv_rows
    from itembank.files.faults import decode_text

    found, faults = [], []
    for place, (number, row) in enumerate(csv_rows(decode_text(path), str(path))):
        cells = [cell for cell in row if cell]
        if not place and [cell.casefold() for cell in cells] == ["from", "to"]:
            continue
        if len(cells) != 2:
            faults.append(f"{path}, line {number}: write two cells, as in 8K/A3,8L/C2.")
            continue
        found.append((f"{path}, line {number}: ", cells[0], cells[1]))
    if not found and not faults:
        faults.append(f"{path}: nobody is in it. Write a line for each pupil: 8K/A3,8L/C2.")
    if len(found) > MOST:
        faults = [f"{path}: {len(found)} lines; a list of moves has {MOST} at most."]
    if faults:
        raise ItembankError("\n".join([*faults[:MOST_FAULTS], "Nobody was moved."]))
    return found


def _move(department: Department, old: str, new: str, day: datetime.date) -> Move:
    """Return one move, both its seats checked.

    Raises:
        ItembankError: one of them is none.
    """
    from itembank.records.pupils.homes import AWAY, Move

    source = _seat(department, old, listed=False)
    target = ("", "") if new.casefold() == AWAY else _seat(department, new)
    return Move(*source, *target, day)


def _unlisted(department: Department, move: Move) -> bool:
    """Tell whether the seat that is left does not stand in department.toml (any more)."""
    seats = [seat.upper() for seat in department.find_class(move.from_class).plan.seats]
    return bool(seats) and move.from_seat not in seats


def _seat(department: Department, text: str, listed: bool = True) -> tuple[str, str]:
    from itembank.records.entries.teacher_text import seat_said

    name, slash, seat = text.rpartition("/")
    if not slash or not name or not seat:
        raise ItembankError(f"‘{text}’ is not a seat of a class. Write it as 8K/A3.")
    group = department.find_class(name)
    if fault := seat_said(seat, group.plan.seats if listed else ()):
        raise ItembankError(f"{text}: {fault}")
    return group.name, seat.upper()
