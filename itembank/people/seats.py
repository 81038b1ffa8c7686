"""Seat codes: how pupils appear in this tool, and how names are kept out of it."""

from __future__ import annotations

import re

from itembank.text.characters import name_fault, shown

_CODE = re.compile(r"(?=.*\d)[A-Za-z0-9][A-Za-z0-9-]{0,7}")
_NAMES = re.compile(r"\b(fore|sur|first|last|full)? ?names?\b|\bpupils?\b|\bstudents?\b", re.I)
_BIRTH = re.compile(r"\b(dob|d\.o\.b\.?|births?|birthdays?|born|age)\b", re.I)
_DATE = re.compile(r"\d{1,4}[-/. ]\d{1,2}[-/. ]\d{1,4}")


def seat_fault(code: str) -> str:
    """Return why a text is not a seat code, or an empty string.

    A code has a number in it, no spaces, and 8 characters at most.

    >>> seat_fault("A1"), seat_fault("12b")
    ('', '')
    >>> print(seat_fault("Sam"))
    ‘Sam’ is not a seat code. This tool takes no pupils' names: use a code with a number in it \
and no spaces, 8 characters at most, such as A1.
    """
    if not code:
        return "The seat code is missing."
    if _DATE.fullmatch(code):
        return no_names(f"‘{code}’ looks like a date of birth")
    if _CODE.fullmatch(code):
        return ""
    if like := name_fault(code):
        return f"‘{shown(code)}’ is not a seat code: {like}"
    return no_names(f"‘{shown(code)}’ is not a seat code")


def heading_fault(cell: str) -> str:
    """Return why a column with this heading is refused, or an empty string.

    >>> heading_fault("seat"), heading_fault("Date of birth")[:30]
    ('', 'A heading speaks of dates of b')
    """
    said = cell.replace("_", " ")
    if _BIRTH.search(said):
        return no_names("A heading speaks of dates of birth or ages")
    return no_names("A heading speaks of names") if _NAMES.search(said) else ""


def no_names(what: str) -> str:
    """Return the explanation that goes with anything that looks like a name."""
    return (
        f"{what}. This tool takes no pupils' names: use a code with a number in it and no "
        "spaces, 8 characters at most, such as A1."
    )


def seat_order(code: str) -> tuple[tuple[str, int], ...]:
    """Return a sort key that puts A2 before A10.

    >>> sorted(["B1", "A10", "A2"], key=seat_order)
    ['A2', 'A10', 'B1']
    """
    parts = re.findall(r"([^0-9]*)([0-9]*)", code)
    return tuple((text.upper(), int(digits or 0)) for text, digits in parts if text or digits)
