"""A two-way table: counts by two things at once, with totals, some cells left empty."""

from __future__ import annotations

import re

from itembank.data_class import dataclass
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.chart.chart_axis import name_fault
from itembank.figures.kinds.chart.chart_names import BINDING, folded
from itembank.figures.kinds.table.table_cells import WIDEST, least_width, table_drawing
from itembank.notation import tree as t
from itembank.notation.value import exact_or_none
from itembank.notation.words import words as said
from itembank.once import once
from itembank.text.in_words import in_full

MOST = 5
TOTAL = "Total"

Counts = tuple[tuple[t.Node | None, ...], ...]


@dataclass(frozen=True, slots=True)
class TwoWayTable(Figure):
    """Counts in rows and columns; the last row and the last column are totals.

    A cell that is None stands empty, and a letter stands for what is asked. What is not given is
    read where it follows from the totals, one cell after another.

    >>> TwoWayTable(("7M",), ("girls", "boys"), ((t.Int(14), None, t.Int(30)),) * 2).rows
    ('7M',)
    """

    rows: tuple[str, ...]
    columns: tuple[str, ...]
    cells: Counts


def _fault(figure: TwoWayTable) -> str:
    for names, what in ((figure.rows, "rows"), (figure.columns, "columns")):
        if not 1 <= len(names) <= MOST:
            return f"it may have 1 to {MOST} {what}, and their totals"
        if found := name_fault(names, what):
            return found
        if folded(TOTAL) in map(folded, names):
            return f"one of its {what} is called ‘{TOTAL}’, and that is there already"
    if len(figure.rows) + len(figure.columns) < 3:
        return "it needs two rows or two columns"
    if len(figure.cells) != len(figure.rows) + 1 or any(
        len(row) != len(figure.columns) + 1 for row in figure.cells
    ):
        return "it has a cell for each row and column, and for each total"
    letters = [cell for row in figure.cells for cell in row if isinstance(cell, t.Sym)]
    if len({*letters}) != len(letters):
        return "a letter stands in one cell"
    for row in figure.cells:
        for cell in row:
            if cell is None or isinstance(cell, t.Sym):
                continue
            value = exact_or_none(cell)
            if value is None or value < 0 or value.denominator != 1:
                return "its cells hold whole numbers or single letters, or nothing"
    if least_width(_shown(figure)) > WIDEST:
        return "its names and numbers take too much room: shorten the names"
    try:
        filled(figure)
    except FigureError as error:
        return str(error)
    return ""


def _shown(figure: TwoWayTable) -> list[list[str | t.Node | None]]:
    head: list[str | t.Node | None] = [None, *figure.columns, TOTAL]
    names = (*figure.rows, TOTAL)
    return [head, *([name, *row] for name, row in zip(names, figure.cells, strict=True))]


@once
def filled(figure: TwoWayTable) -> tuple[tuple[int | None, ...], ...]:
    """Return every cell that is given or follows from the totals, one after another.

    Raises
    ------
    FigureError
        If totals disagree, or a cell would have to be less than 0.
    """
    given = [
        [None if cell is None else exact_or_none(cell) for cell in row] for row in figure.cells
    ]
    grid = [[None if value is None else int(value) for value in row] for row in given]
    high, wide = len(grid), len(grid[0])
    lines = [[(r, c) for c in range(wide)] for r in range(high)]
    lines += [[(r, c) for r in range(high)] for c in range(wide)]
    new = True
    # A cell that follows may be all that another one lacked: on, until nothing new follows.
    while new:
        new = False
        for line in lines:
            *parts, total = line
            open_cells = [at for at in line if grid[at[0]][at[1]] is None]
            if len(open_cells) > 1:
                continue
            known = sum(grid[r][c] or 0 for r, c in parts)
            whole = grid[total[0]][total[1]]
            if not open_cells:
                if whole != known:
                    raise FigureError(f"a total says {whole}, and its cells come to {known}")
                continue
            ((r, c),) = open_cells
            value = known if (r, c) == total else (whole or 0) - known
            if value < 0:
                raise FigureError("its totals are less than what they are to hold")
            grid[r][c], new = value, True
    return tuple(map(tuple, grid))


def _place(figure: TwoWayTable, row: str, column: str) -> tuple[int, int] | None:
    rows = [folded(name) for name in (*figure.rows, TOTAL)]
    columns = [folded(name) for name in (*figure.columns, TOTAL)]
    if folded(row) in rows and folded(column) in columns:
        return rows.index(folded(row)), columns.index(folded(column))
    return None


def _read(figure: TwoWayTable, reading: Reading) -> t.Node:
    place = None
    if reading.name == "count" and len(reading.of) == 2:
        place = _place(figure, *reading.of)
    if reading.name == "letter" and len(reading.of) == 1:
        for r, row in enumerate(figure.cells):
            for c, cell in enumerate(row):
                if cell == t.Sym(reading.of[0]):
                    place = (r, c)
    if place is not None:
        value = filled(figure)[place[0]][place[1]]
        if value is not None:
            return t.Int(value)
    raise not_shown(reading)


def _readings(figure: TwoWayTable) -> tuple[Reading, ...]:
    grid = filled(figure)
    found = [
        Reading("count", (row, column))
        for r, row in enumerate((*figure.rows, TOTAL))
        for c, column in enumerate((*figure.columns, TOTAL))
        if grid[r][c] is not None
    ]
    letters = (
        cell.name
        for row, values in zip(figure.cells, grid, strict=True)
        for cell, value in zip(row, values, strict=True)
        if isinstance(cell, t.Sym) and value is not None
    )
    return (*found, *(Reading("letter", (name,)) for name in letters))


def _words(figure: TwoWayTable) -> str:
    out = [f"A two-way table has columns for {', '.join(figure.columns)} and the total."]
    for name, row in zip((*figure.rows, TOTAL), figure.cells, strict=True):
        parts = ["an empty cell" if cell is None else said(cell) for cell in row]
        label = "of totals" if name == TOTAL else f"of {name}"
        out.append(f"The row {label} holds: {'; '.join(parts)}.")
    return " ".join(out)


_WHOLE = re.compile(r"\b(?:altogether|in total|in all)\b", re.IGNORECASE)


def _names_in(text: str, names: tuple[str, ...]) -> tuple[list[str], str]:
    """Return which of some names a text holds, and what is left of it without them."""
    found = []
    for name in sorted(names, key=len, reverse=True):
        forms = "|".join(map(re.escape, (in_full(name), name)))
        pattern = rf"(?<!\w)(?:{forms})(?!\w)"
        if re.search(pattern, text, re.IGNORECASE):
            found.append(name)
            text = re.sub(pattern, " ", text, flags=re.IGNORECASE)
    return found, text


def _binds(word: str) -> bool:
    return word.casefold() in BINDING


def _count(figure: TwoWayTable, found: re.Match[str]) -> Asked:
    """Return the count of the one row and the one column that are named; none is all of them."""
    rows, left = _names_in(found["text"], figure.rows)
    columns, left = _names_in(left, figure.columns)
    whole = _WHOLE.search(left)
    strange = [word for word in re.findall(r"[\w’'-]+", _WHOLE.sub(" ", left)) if not _binds(word)]
    if strange:
        raise FigureError(f"‘{strange[0]}’ is not understood in a question about it")
    if len(rows) > 1 or len(columns) > 1:
        raise FigureError("it is not clear which cell of the table its words ask for")
    both_ways = {*map(folded, figure.rows)} & {*map(folded, figure.columns)}
    if any(folded(name) in both_ways for name in (*rows, *columns)):
        raise FigureError("what it names is both a row and a column of the table")
    if not rows and not columns and not whole:
        raise FigureError("its words name no row and no column of the table")
    names = (rows[0] if rows else TOTAL, columns[0] if columns else TOTAL)
    return Asked(t.Sym("r"), (("r", Reading("count", names)),))


def _letter(figure: TwoWayTable, found: re.Match[str]) -> Asked:
    return Asked(t.Sym("r"), (("r", Reading("letter", (found["name"],))),))


TWO_WAY_TABLE = register_figure(
    FigureKind(
        "two-way table",
        TwoWayTable,
        fault=_fault,
        drawing=lambda figure: table_drawing(_shown(figure)),
        words=_words,
        printed=lambda figure: tuple(
            cell for row in figure.cells for cell in row if cell is not None
        ),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                r"(?:what is|find|work out)(?: the value of| the number)? \{?(?P<name>[a-zA-Z])\}?",
                _letter,
            ),
            Wording(r"how many (?P<text>[\w’', -]{1,80})", _count),
        ),
    )
)
