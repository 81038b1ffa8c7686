"""Seat codes pasted from a spreadsheet; whatever looks like a name is refused, and not repeated.

Pupils stand in this tool under seat codes alone. What is refused here is not shown again, since
it may be a pupil's name.
"""

from __future__ import annotations

import re

from itembank.people.seats import heading_fault, seat_fault
from itembank.planning.department.class_plan import spread_seats
from itembank.text.folding import folded
from itembank.work.department.pasted.pasted_cells import Pasted, sheet_of
from itembank.work.department.wrong import Wrong

NO_NAMES = (
    "This is not a seat code. Pupils appear here by where they sit, never by name: A1 is the "
    "first seat of row A. Give the codes, as in A1-A6, or how many seats there are; which pupil "
    "sits where stays with you."
)
_DATE = re.compile(r"\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}")
HEADS = {
    "class": "class|classes|class name|group|teaching group|set",
    "seats": r"seats?( codes?)?|codes?|seat rows?|places?|row \w+|column \w+|desks?",
}


def read_seat_cell(typed: str) -> tuple[tuple[str, ...], str]:
    """Return the seat codes that stand in a cell, or why there are none.

    >>> read_seat_cell("A1–A3, b1")
    (('A1', 'A2', 'A3', 'b1'), '')
    >>> read_seat_cell("Sam")[1][:28]
    'This is not a seat code. Pup'
    """
    found: list[str] = []
    if _DATE.search(typed):
        return (), NO_NAMES
    text = re.sub(r"\s*(?:[-–—]|\bto\b)\s*", "-", typed)
    for part in filter(None, re.split(r"[\s,;&]+", text)):
        codes = spread_seats(part) if part.count("-") == 1 else [part]
        if not codes or any(seat_fault(code) for code in codes):
            return (), NO_NAMES
        found += codes
    return tuple(found), ""


def read_pasted_seats(text: str, classes: tuple[str, ...]) -> Pasted[dict[str, tuple[str, ...]]]:
    r"""Return the seats of classes, by the class's name; a list without a class is the only one's.

    Raises:
        ItembankError: there is more than a school has, or it is no table.

    >>> read_pasted_seats("Class\tSeats\n8k\tA1-A2\n\tB1", ("8K", "8L")).found
    {'8K': ('A1', 'A2', 'B1')}
    """
    sheet = sheet_of(text, HEADS)
    wrong = [
        Wrong("classes", fault, row=0, column=column + 1)
        for column, head in sheet.unknown
        if (fault := heading_fault(head))
    ]
    if wrong:
        return Pasted({}, tuple(wrong))
    names = {folded(name): name for name in classes}
    found: dict[str, list[str]] = {}
    class_column = sheet.column("class")
    if not sheet.columns and any(folded(row.cell(0)) in names for row in sheet.rows):
        class_column = 0
    current = classes[0] if class_column is None and len(classes) == 1 else ""
    if class_column is None and not current:
        message = "Whose seats are these? Put the class before them, in a column of its own."
        return Pasted({}, (Wrong("classes", message),))
    for row in sheet.rows:
        if typed := row.cell(class_column):
            current = names.get(folded(typed), "")
            if not current:
                message = "There is no such class among the answers."
                wrong.append(
                    Wrong("classes", message, row=row.number, column=(class_column or 0) + 1)
                )
        for column, cell in enumerate(row.cells):
            used = column in sheet.columns.get("seats", ()) or not sheet.columns
            if not cell or column == class_column or not used or not current:
                continue
            codes, fault = read_seat_cell(cell)
            if fault:
                wrong.append(Wrong("classes", fault, row=row.number, column=column + 1))
            found.setdefault(current, []).extend(codes)
    for name, codes_there in found.items():
        twice = {code for code in codes_there if codes_there.count(code) > 1}
        if twice:
            message = f"{name} has the seat {sorted(twice)[0]} twice."
            wrong.append(Wrong("classes", message))
    return Pasted({name: tuple(codes) for name, codes in found.items()}, tuple(wrong))
