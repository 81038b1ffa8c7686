"""How pupils thought they did, by seat, from a CSV file."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path

from itembank.files.csv_text import csv_rows
from itembank.files.faults import Fault, FileFaults, decode_text
from itembank.people.seats import heading_fault, seat_fault
from itembank.records.entries.teacher_text import seat_said, view_level


def read_view_file(path: Path, seats: Collection[str]) -> dict[str, str]:
    """Read a CSV with a seat code and an own view in each row.

    Raises:
        FileFaults: the file cannot be read, or rows of it are wrong; every fault with its line.
    """
    file = str(path)
    faults: list[Fault] = []
    found: dict[str, str] = {}
    for place, (line, cells) in enumerate(csv_rows(decode_text(path), file)):
        level = view_level(cells[1]) if len(cells) == 2 else ""
        if not place and not level and not any(cell.isdigit() for cell in cells[0]):
            if fault := next(filter(None, map(heading_fault, cells)), ""):
                raise FileFaults([Fault(file, line, fault)])
            continue
        if len(cells) != 2 or (cells[1] and not level):
            message = "A row holds a seat code and sure, partly or not sure."
            faults.append(Fault(file, line, message))
        elif fault := seat_said(cells[0], seats):
            faults.append(Fault(file, line, fault, matter="seats of the class"))
        elif cells[0].upper() in found:
            faults.append(Fault(file, line, f"Seat {cells[0]} is there twice. Keep one."))
        elif level:
            found[cells[0].upper()] = level
    if faults:
        raise FileFaults(faults)
    if not found:
        raise FileFaults([Fault(file, 0, "There is no own view here. Write rows as A1,sure.")])
    return found


def strangers(text: str, seats: Collection[str], file: str) -> list[Fault]:
    """Return a fault for each seat code that is none of the class's, with its line.

    What is no seat code at all is left to those who read the sheet.
    """
    found = []
    for number, (first, *_) in csv_rows(text, file):
        if not seat_fault(first) and (said := seat_said(first, seats)):
            found.append(Fault(file, number, said, matter="seats of the class"))
    return found
