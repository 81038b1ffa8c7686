"""``itembank move``: a pupil who changes class or seat, or a whole change of sets."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.errors import ItembankError
from itembank.text.in_words import day_month_year

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.records.pupils.moves import Move

MOST = 2000
"""Moves in one list; a longer one is some other file."""


def move(
    from_: Annotated[
        str | None, typer.Argument(metavar="FROM", help="The seat now, as 8K/A3.")
    ] = None,
    to: Annotated[
        str | None, typer.Argument(metavar="TO", help="The seat to come, as 8L/C2; or ‘away’.")
    ] = None,
    sets: Annotated[
        Path | None,
        typer.Option("--list", metavar="FILE", help="A CSV with a line for each pupil: from, to."),
    ] = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="First day in the new seat; today.")
    ] = None,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
) -> None:
    """Move a pupil to another class or seat, or many pupils at once, with their history.

    What was recorded by seat counts for the new class from then on, in its plans and reports,
    and ‘forget’ of the new seat finds all of it. What was counted by hands stays. All moves of
    one list are made at the same moment, so that pupils can change places.
    ‘itembank undo CLASS’ takes the last list back.

    \b
    Examples:
      itembank move 8K/A3 8L/C2
      itembank move 8K/A3 away --date 2026-12-01
      itembank move --list sets.csv --date 2026-11-30
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.lesson_text import store_of, the_department
    from itembank.cli.words.wrapped import say
    from itembank.planning.calendar.days import parse_day
    from itembank.records.pupils.moves import move_seats
    from itembank.records.store.store import open_store
    from itembank.today import today

    if (sets is None) == (from_ is None) or (from_ is not None and to is None):
        raise ItembankError(
            "Say who moves where, as in: itembank move 8K/A3 8L/C2. Or name a list: --list FILE."
        )
    day = parse_day(date, today()) if date is not None else today()
    found = the_department(department)
    rows = _rows(sets) if sets is not None else [("", from_ or "", to or "")]
    moves, faults = [], []
    for where, old, new in rows:
        try:
            moves.append(_move(found, old, new, day))
        except ItembankError as error:
            faults.append(f"{where}{error}")
    if faults:
        raise ItembankError("\n".join([*faults, "Nobody was moved."]))
    unlisted = [one.source for one in moves if _unlisted(found, one)]
    with open_store(store_of(found.folder)) as store:
        known = move_seats(store, moves, unlisted)
    when = f"from {day_month_year(day)} on"
    if len(moves) == 1:
        say(f"Moved: {moves[0]}, {when}.")
    else:
        say(f"Moved: {len(moves)} pupils, {when}.")
    if known < len(moves):
        say(f"Nothing is recorded by seat yet of {len(moves) - known} of them.")
    classes = dict.fromkeys(one.to_class for one in moves if one.to_class)
    for name in classes:
        say(f"What was recorded of them counts for {name} now: ‘itembank report {name}’.")


def _rows(path: Path) -> list[tuple[str, str, str]]:
    """Return file and line, seat now and seat to come, from a CSV.

    Raises:
        ItembankError: it cannot be read, or a line has not two cells.
    """
    import csv
    import io

    from itembank.files.faults import decode_text

    found, faults = [], []
    reader = csv.reader(io.StringIO(decode_text(path), newline=""))
    try:
        lines = [(reader.line_num, [cell.strip() for cell in row]) for row in reader]
    except csv.Error as error:
        raise ItembankError(f"{path}: this cannot be read as a CSV: {error}.") from None
    for number, row in lines:
        cells = [cell for cell in row if cell]
        if not cells or (number == 1 and [one.casefold() for one in cells] == ["from", "to"]):
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
        raise ItembankError("\n".join([*faults[:20], "Nobody was moved."]))
    return found


def _move(found: Department, old: str, new: str, day: datetime.date) -> Move:
    """Return one move, both its seats checked.

    Raises:
        ItembankError: one of them is none.
    """
    from itembank.records.pupils.moves import AWAY, Move

    source = _seat(found, old, listed=False)
    target = ("", "") if new.casefold() == AWAY else _seat(found, new)
    return Move(*source, *target, day)


def _unlisted(found: Department, one: Move) -> bool:
    """Tell whether the seat that is left does not stand in department.toml (any more)."""
    seats = [seat.upper() for seat in found.find_class(one.from_class).plan.seats]
    return bool(seats) and one.from_seat not in seats


def _seat(found: Department, text: str, listed: bool = True) -> tuple[str, str]:
    from itembank.records.entries.teacher_text import seat_said

    name, slash, seat = text.rpartition("/")
    if not slash or not name or not seat:
        raise ItembankError(f"‘{text}’ is not a seat of a class. Write it as 8K/A3.")
    one = found.find_class(name)
    if fault := seat_said(seat, one.plan.seats if listed else ()):
        raise ItembankError(f"{text}: {fault}")
    return one.name, seat.upper()
