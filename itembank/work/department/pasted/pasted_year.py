"""The school year pasted from a spreadsheet or a page: terms, and days off.

A row is read as words and days, wherever they stand in it. One day or two with words make a day
off or a term: a time of more than a fortnight is a term unless its words speak of a holiday. A
term may also be told line by line: its name, when it starts, its half term, when it ends.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import DAY, Closed, Term
from itembank.text.in_words import long_day
from itembank.work.department.pasted.pasted_cells import Pasted, Row, Sheet, sheet_of
from itembank.work.department.pasted.pasted_days import (
    coming_school_year,
    days_in,
    school_year_of,
)
from itembank.work.department.wrong import Wrong

HEADS = {
    "what": "terms?|name|holidays?|event|what|description|period|date type|occasion|closed|day off",
    "first": "first|first day|from|starts?|start date|begins?|opens?|date from|term starts?",
    "last": "last|last day|to|until|ends?|end date|finish(es)?|closes?|date to|term ends?",
    "days": "dates?|when|days?|day off",
    "half": "half ?term( holiday| break| dates)?|mid term break",
    "kind": "kind|type",
}
LONGEST_OFF = 16
"""Days that days off within a term take at most, weekends and all; terms are longer."""
_OFF = re.compile(
    r"half ?-?term|holiday|inset|training|bank|closed|break|day off|staff|polling|easter|"
    r"christmas|may day|occasional|closure|vacation|non.?pupil|\bpd\b|twilight",
    re.I,
)
_HOLIDAY = re.compile(r"holiday|break|vacation|closed|closure", re.I)
_HALF_TERM = re.compile(r"half\s*-?\s*term", re.I)
_BEGINS = re.compile(r"\b(starts?|begins?|opens?|first day|start of|beginning of)\b", re.I)
_ENDS = re.compile(r"\b(ends?|closes?|last day|end of|finish(?:es)?|breaks? up)\b", re.I)
_EDGES = re.compile(r"^(?:[\s:,;.()–—-]|\b(?:to|from|until|till|and|on|inclusive)\b)+|(?:[\s:,;.()"
                    r"–—-]|\b(?:to|from|until|till|and|on|inclusive)\b)+$", re.I)  # fmt: skip
_WEEKDAY = re.compile(r"\b(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?\b", re.I)
_YEARS = re.compile(r"\b20\d\d(?:\s*[/–-]\s*(?:20)?\d\d)?\b")


@dataclass(frozen=True, slots=True)
class PastedYear:
    """The terms and days off of a school year, in order."""

    terms: tuple[Term, ...] = ()
    closed: tuple[Closed, ...] = ()


@dataclass(frozen=True, slots=True)
class _Told:
    """Some days that a row tells of, with its words; `kind` is what a column says they are."""

    row: Row
    words: str
    days: tuple[datetime.date, ...]
    kind: str = ""


def read_pasted_year(text: str, today: datetime.date) -> Pasted[PastedYear]:
    r"""Return the terms and days off of a pasted table; dates without a year are of one year.

    Raises:
        ItembankError: there is more than a school has, or it is no table.

    >>> text = "Half term\tMon 26 Oct\tFri 30 Oct\nAutumn\t3 Sep 2026\t18 Dec 2026"
    >>> year = read_pasted_year(text, datetime.date(2026, 11, 28)).found
    >>> year.terms[0].name, year.closed[0].why, f"{year.closed[0].first:%d %b %Y}"
    ('Autumn', 'Half term', '26 Oct 2026')
    """
    sheet = sheet_of(text, HEADS)
    year = _school_year(sheet, today)
    wrong: list[Wrong] = []
    terms: list[Term] = []
    off: list[tuple[Row, Closed]] = []
    named = ""
    begun: tuple[str, datetime.date] | None = None
    for told in _told(sheet, year, wrong):
        words, days = told.words, told.days
        if not days:
            if named_here := _term_name(words):
                named = named_here
            continue
        if len(days) > 2:
            message = "Three days or more stand here. Give each term and each holiday its own row."
            wrong.append(Wrong("year", message, row=told.row.number))
            continue
        first, last = days[0], days[-1]
        if last < first:
            message = f"This ends on {long_day(last)}, before it begins on {long_day(first)}."
            wrong.append(Wrong("year", message, row=told.row.number))
        elif len(days) == 1 and _BEGINS.search(words) and not _OFF.search(words):
            begun = (_term_name(words) or named or "Term", first)
        elif len(days) == 1 and _ENDS.search(words) and begun and not _HALF_TERM.search(words):
            terms.append(Term(begun[0], begun[1], last))
            begun = None
        elif _is_term(told):
            terms.append(Term(_term_name(words) or named or f"Term {len(terms) + 1}", first, last))
        else:
            off.append((told.row, Closed(first, last, (words or "day off")[:60])))
    if begun:
        message = f"{begun[0]} starts on {long_day(begun[1])}, and nothing says when it ends."
        wrong.append(Wrong("year", message))
    terms = _told_apart(sorted(terms, key=lambda term: term.first))
    closed, remarks = _within(terms, off, wrong)
    # Days off alone may be all that is new: who calls adds them to the terms that are there.
    if not terms and not closed and not wrong:
        message = "There is no term here. Give each a row: Autumn, its first and its last day."
        wrong.append(Wrong("year", message))
    return Pasted(PastedYear(tuple(terms), closed), tuple(wrong), tuple(remarks))


def _school_year(sheet: Sheet, today: datetime.date) -> int:
    """Return the school year that dates without a year are of: that of those with one."""
    for row in sheet.rows:
        if match := re.search(r"\b(\d{1,2})[/. -](\d{1,2})[/. -](20\d\d)\b", row.text):
            return int(match[3]) if int(match[2]) >= 8 else int(match[3]) - 1
        if re.search(r"[a-z]{3,}\.? 20\d\d|\b20\d\d-\d\d|\d{5}", row.text, re.I):
            try:
                days, _ = days_in(row.text, coming_school_year(today))
            except ItembankError:
                continue
            if days and str(days[-1].year) in row.text:
                return school_year_of(days[-1])
    for text in sheet.above:
        if match := re.search(r"\b(20\d\d)\s*[/–-]\s*(?:20)?\d\d\b", text):
            return int(match[1])
    return coming_school_year(today)


def _told(sheet: Sheet, year: int, wrong: list[Wrong]) -> Iterator[_Told]:
    """Yield what each row tells, the cell of a half term apart from the rest of its row."""
    half = sheet.column("half")
    kind = sheet.column("kind")
    dated = [column for name in ("first", "last", "days") for column in sheet.columns.get(name, ())]
    for row in sheet.rows:
        cells = {column: cell for column, cell in enumerate(row.cells) if cell}
        if half is not None and (text := cells.pop(half, "")):
            days = _days(row, {half: text}, year, wrong)
            if days and days[1]:
                yield _Told(row, "half term", days[1])
        said = cells.pop(kind, "") if kind is not None else ""
        found = _days(row, cells, year, wrong)
        if found is None:
            continue
        if not found[1] and any(column in cells for column in dated):
            message = "No day can be read here. Write it as in 7 Sep 2026."
            wrong.append(Wrong("year", message, row=row.number))
            continue
        yield _Told(row, found[0], found[1], said)


def _days(
    row: Row, cells: dict[int, str], year: int, wrong: list[Wrong]
) -> tuple[str, tuple[datetime.date, ...]] | None:
    """Return the words of some cells and the days in them; None where one is no day."""
    words: list[str] = []
    found: list[datetime.date] = []
    for column, cell in cells.items():
        try:
            days, rest = days_in(cell, year)
        except ItembankError as error:
            wrong.append(Wrong("year", str(error), row=row.number, column=column + 1, typed=cell))
            return None
        found += days
        if rest := _EDGES.sub("", _WEEKDAY.sub("", rest)):
            words.append(rest)
    return " ".join(words), tuple(found)


def _is_term(told: _Told) -> bool:
    if told.kind:
        return "term" in told.kind.casefold() and not _HALF_TERM.search(told.kind)
    length = (told.days[-1] - told.days[0]).days
    return length > LONGEST_OFF and not _HOLIDAY.search(told.words)


def _term_name(words: str) -> str:
    """Return a term's name from the words of its row: ``Autumn`` from ``Autumn term starts``."""
    plain = re.sub(_BEGINS, "", re.sub(_ENDS, "", re.sub(_YEARS, "", words)))
    plain = " ".join(plain.split()).strip(" :,-–")
    short = re.sub(r"\s*\bterms?\b(?!\s*\d)", "", plain, flags=re.I).strip()
    return (short or "")[:40]


def _told_apart(terms: list[Term]) -> list[Term]:
    """Return terms of which no two have one name: the second Autumn is Autumn 2."""
    seen: dict[str, int] = {}
    found = []
    for term in terms:
        seen[term.name] = seen.get(term.name, 0) + 1
        number = seen[term.name]
        name = term.name if number == 1 else f"{term.name} {number}"
        found.append(Term(name, term.first, term.last))
    return found


def _within(
    terms: list[Term], off: list[tuple[Row, Closed]], wrong: list[Wrong]
) -> tuple[tuple[Closed, ...], list[str]]:
    """Return the days off that lie within terms; those between terms are free in any case."""
    found: list[Closed] = []
    remarks: list[str] = []
    for row, closed in off:
        days = [
            closed.first + DAY * number for number in range((closed.last - closed.first).days + 1)
        ]
        held = [
            [day for day in days if term.first <= day <= term.last and day.weekday() < 5]
            for term in terms
        ]
        inside = [within for within in held if within]
        free = [
            day
            for day in days
            if day.weekday() < 5 and not any(term.first <= day <= term.last for term in terms)
        ]
        if not terms:
            found.append(closed)
        elif not inside:
            remarks.append(f"‘{closed.why}’ lies outside the terms: it is free in any case.")
        elif free and len(days) > LONGEST_OFF // 2:
            message = (
                f"‘{closed.why}’ begins or ends within a term: {long_day(inside[0][0])} is a day "
                "of term too. Mend one of them."
            )
            wrong.append(Wrong("year", message, row=row.number))
        else:
            found += [Closed(within[0], within[-1], closed.why) for within in inside]
    unique = dict.fromkeys(sorted(found, key=lambda closed: (closed.first, closed.last)))
    return tuple(unique), remarks
