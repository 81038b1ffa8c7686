"""Large-print copies: for whom, as a class, a plan or a command line says it.

In a ``[[classes]]`` table of ``department.toml`` or in a plan file::

    large_print = 2               # so many copies
    large_print = ["A3", "C5"]    # or one for each of these seats

They are printed beside the class's own papers, which stay as they are. ``0`` is none, whatever
the class or the plan has. Older files may say ``true``, which is one copy, or ``false``, which is
none, as an empty list is.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.files.toml_table import Table
from itembank.people.seats import seat_fault
from itembank.planning.department.class_plan import spread_seats
from itembank.text.characters import shown_value
from itembank.text.whole_number import whole_number

MOST_COPIES = 30
KEY = "large_print"


@dataclass(frozen=True, slots=True)
class LargePrint:
    """The copies in large print: the seat that each is for, empty where none is named.

    >>> LargePrint(("A3", "C5")), LargePrint.copies(2).seats, LargePrint()
    (LargePrint(seats=('A3', 'C5')), ('', ''), LargePrint(seats=()))
    """

    seats: tuple[str, ...] = ()

    @classmethod
    def copies(cls, count: int) -> LargePrint:
        """Return so many copies for nobody in particular."""
        return cls(("",) * count)


def read_large_print(row: Table) -> LargePrint | None:
    """Read the copies that a table of a file asks for, noting faults; None where it says nothing.

    Whether the class has these seats is for :func:`note_strange_seats`.
    """
    value = row.any(KEY)
    if value is None:
        return None
    # Before whole numbers: to Python, true is the number 1 as well.
    if isinstance(value, bool):
        return LargePrint.copies(int(value))
    if isinstance(value, int):
        if fault := _count_fault(value):
            row.fault(KEY, fault)
            return None
        return LargePrint.copies(value)
    if not isinstance(value, list):
        row.fault(
            KEY,
            f"‘{KEY}’ must be a number of copies or a list of seats, such as 2 or "
            f'["A3", "C5"], not {shown_value(value)}.',
        )
        return None
    found: dict[str, str] = {}
    for seat in value:
        word = str(seat)
        for fault in _add_seats(found, seat):
            row.fault(KEY, fault, word)
    if fault := _count_fault(len(found)):
        row.fault(KEY, fault)
    return LargePrint(tuple(found.values()))


def note_strange_seats(row: Table, copies: LargePrint | None, of_class: Collection[str]) -> None:
    """Note a fault for each seat that a class which lists its seats does not have."""
    for seat in strange_seats(copies, of_class):
        row.fault(KEY, no_such_seat(seat, of_class), seat)


def typed_large_print(text: str) -> LargePrint:
    """Return the copies that somebody typed: a number of them, or seats with commas between.

    None are wanted where it says 0, or none in words; no seat is called that, since a seat's code
    has a number in it.

    Raises:
        ItembankError: it is neither, or too many.

    >>> typed_large_print("2").seats, typed_large_print("A3, C5").seats
    (('', ''), ('A3', 'C5'))
    >>> typed_large_print("0") == typed_large_print("none") == LargePrint()
    True
    >>> typed_large_print("3,").seats  # a comma makes a seat of a number
    ('3',)
    """
    typed = text.strip()
    if typed.casefold() == "none":
        return LargePrint()
    count = whole_number(typed.removeprefix("-"))
    if count is not None:
        if fault := _count_fault(-count if typed.startswith("-") else count):
            raise ItembankError(fault)
        return LargePrint.copies(count)
    found: dict[str, str] = {}
    words = [word.strip() for word in typed.split(",") if word.strip()]
    if not words or typed.startswith("-"):
        raise ItembankError(
            "Large print is a number of copies, such as 2, or seats, such as A3,C5."
        )
    for word in words:
        for fault in _add_seats(found, word):
            raise ItembankError(fault)
    if fault := _count_fault(len(found)):
        raise ItembankError(fault)
    return LargePrint(tuple(found.values()))


def strange_seats(copies: LargePrint | None, of_class: Collection[str]) -> list[str]:
    """Return the seats that a class does not have; none where it does not list its seats.

    >>> strange_seats(LargePrint(("a3", "Z9", "")), ["A1", "A2", "A3"])
    ['Z9']
    """
    # Seat codes are said aloud, where capitals are not heard.
    known = {seat.upper() for seat in of_class}
    if not known or copies is None:
        return []
    return [seat for seat in copies.seats if seat and seat.upper() not in known]


def no_such_seat(seat: str, of_class: Iterable[str]) -> str:
    """Return the words that say a class has no such seat, and which it has."""
    return (
        f"Large print is asked for seat {seat}, which the class does not have. "
        f"Its seats are {join_words(tuple(of_class))}."
    )


def _count_fault(count: int) -> str:
    """Return why so many copies are not made, or an empty string."""
    if 0 <= count <= MOST_COPIES:
        return ""
    return f"Large print in {count} copies is not made. Ask for 1 to {MOST_COPIES}, or 0 for none."


def _add_seats(found: dict[str, str], value: object) -> list[str]:
    """Add a seat or a row of seats to those found; return what is wrong with them."""
    if not isinstance(value, str):
        return [f'A seat is a code in quotation marks, such as "A3", not {shown_value(value)}.']
    codes = spread_seats(value)
    if not codes:
        return [f'‘{value}’ is not a seat or a row of seats. Write "A1" or "A1-A6".']
    faults = []
    for code in codes:
        if fault := seat_fault(code):
            faults.append(fault)
        elif code.upper() in found:
            faults.append(f"Seat {code} is named twice for large print. Name it once.")
        else:
            found[code.upper()] = code
    return faults
