"""A pattern of squares in rows, some shaded and some with letters: for its symmetry."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawing import Area, Drawing, Mark, Point, Text, drawing, rectangle
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Said,
    Wording,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.symmetry.symmetry_asked import LINES, ORDER, PATTERN
from itembank.figures.kinds.symmetry.symmetry_found import Cell, Symmetry, of_cells, of_cells_alone
from itembank.notation import tree as t

MOST_ROWS, MOST_COLUMNS, MOST_LETTERS = 6, 8, 6
_HIGHEST = Fraction(4)


@dataclass(frozen=True, slots=True)
class ShadedSquares(Figure):
    """Squares in `rows` of `columns`, some of them `shaded`, some with letters instead.

    Squares are counted from 0 along each row from the top left.

    >>> ShadedSquares(3, 3, (0, 4, 8)).letters
    ()
    """

    rows: int
    columns: int
    shaded: tuple[int, ...]
    letters: tuple[tuple[str, int], ...] = ()


def _fault(figure: ShadedSquares) -> str:
    if not (2 <= figure.rows <= MOST_ROWS and 2 <= figure.columns <= MOST_COLUMNS):
        return f"it may have 2 to {MOST_ROWS} rows of 2 to {MOST_COLUMNS} squares"
    if not figure.shaded:
        return "at least one square is shaded"
    if len(figure.letters) > MOST_LETTERS:
        return f"at most {MOST_LETTERS} squares have letters"
    if any(len(name) != 1 or not "A" <= name <= "Z" for name, _ in figure.letters):
        return "its squares are to be named by single capital letters"
    if len({name for name, _ in figure.letters}) != len(figure.letters):
        return "two squares have one letter"
    every = [*figure.shaded, *(place for _, place in figure.letters)]
    last = figure.rows * figure.columns - 1
    if any(not 0 <= place <= last for place in every):
        return f"the squares are counted from 0 to {last}"
    if len({*every}) != len(every):
        return "a square is shaded or lettered twice"
    return ""


def _side(figure: ShadedSquares) -> Fraction:
    """Return the side of a square: one with a letter has room for it."""
    return Fraction(21, 20) if figure.letters else min(Fraction(1), _HIGHEST / figure.rows)


def _drawing(figure: ShadedSquares) -> Drawing:
    side = _side(figure)
    marks: list[Mark] = []
    letters = {place: name for name, place in figure.letters}
    for place in range(figure.rows * figure.columns):
        row, column = divmod(place, figure.columns)
        x, y = column * side, (figure.rows - 1 - row) * side
        dark = place in figure.shaded
        corners = rectangle(x, y, x + side, y + side)
        marks.append(Area(corners, "shaded" if dark else "square", "shade" if dark else "none"))
        if place in letters:
            middle = Point(x + side / 2, y + side / 2)
            marks.append(Text(middle, letters[place], role="letter"))
    return drawing(marks)


def _words(figure: ShadedSquares) -> str:
    out = [f"A pattern has {figure.rows} rows of {figure.columns} squares."]
    for row in range(figure.rows):
        first = row * figure.columns
        dark = [
            str(place - first + 1)
            for place in sorted(figure.shaded)
            if first <= place < first + figure.columns
        ]
        if not dark:
            out.append(f"In row {row + 1} no square is shaded.")
        elif len(dark) == 1:
            out.append(f"In row {row + 1} square {dark[0]} is shaded.")
        elif len(dark) == figure.columns:
            out.append(f"In row {row + 1} all squares are shaded.")
        else:
            places = f"{', '.join(dark[:-1])} and {dark[-1]}"
            out.append(f"In row {row + 1} squares {places} are shaded.")
    for name, place in figure.letters:
        row, column = divmod(place, figure.columns)
        out.append(f"{name} is square {column + 1} of row {row + 1}.")
    return " ".join(out)


def _cells(figure: ShadedSquares, more: int | None = None) -> frozenset[Cell]:
    places = (*figure.shaded, *(() if more is None else (more,)))
    return frozenset(divmod(place, figure.columns) for place in places)


def symmetry_of(figure: ShadedSquares, more: int | None = None) -> Symmetry:
    """Return the symmetry of the pattern, with one more square shaded if it is given."""
    return of_cells(figure.rows, figure.columns, _cells(figure, more))


def _read(figure: ShadedSquares, reading: Reading) -> t.Node:
    if reading in (Reading("lines of symmetry"), Reading("order of rotation")):
        found = symmetry_of(figure)
        if found != of_cells_alone(_cells(figure)):
            # Whoever looks at the shaded squares alone would count otherwise.
            raise FigureError(
                "its shaded squares have another symmetry without the squares round them"
            )
        return t.Int(found.lines if reading.name == "lines of symmetry" else found.order)
    if reading.name in ("square for lines", "square for order") and len(reading.of) == 1:
        wanted = int(reading.of[0]) if reading.of[0].isdecimal() else -1
        lines = reading.name == "square for lines"
        fitting = []
        for name, place in figure.letters:
            whole, alone = symmetry_of(figure, place), of_cells_alone(_cells(figure, place))
            if any((found.lines if lines else found.order) == wanted for found in (whole, alone)):
                fitting.append((name, whole, alone))
        if len(fitting) == 1 and fitting[0][1] == fitting[0][2]:
            return t.Label(fitting[0][0])
    raise not_shown(reading)


def _readings(figure: ShadedSquares) -> tuple[Reading, ...]:
    maybe = [Reading("lines of symmetry"), Reading("order of rotation")]
    for count in ("1", "2", "4"):
        maybe += [Reading("square for lines", (count,)), Reading("square for order", (count,))]
    found = []
    for reading in maybe:
        try:
            _read(figure, reading)
        except FigureError:
            continue
        found.append(reading)
    return tuple(found)


def _for(figure: Figure, found: re.Match[str]) -> Asked:
    """Return which square is asked for: the number said is that of the lines, or the order."""
    count = found["lines"] or found["order"]
    if found["lines"] and (found["noun"].casefold() == "lines") != (count != "1"):
        raise FigureError("it is not said how many lines the pattern is to have")
    name = "square for lines" if found["lines"] else "square for order"
    return Asked(t.Sym("r"), (("r", Reading(name, (count,))),))


def _whole(name: str) -> Said:
    return lambda figure, found: Asked(t.Sym("r"), (("r", Reading(name)),))


SHADED_SQUARES = register_figure(
    FigureKind(
        "shaded squares",
        ShadedSquares,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: tuple(t.Label(name) for name, _ in figure.letters),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(rf"{LINES} {PATTERN} have", _whole("lines of symmetry")),
            Wording(rf"(?:{ORDER}) {PATTERN}(?: have)?", _whole("order of rotation")),
            Wording(
                r"which (?:one )?(?:lettered )?square should be shaded (?:too|as well),? so that "
                rf"{PATTERN} has (?:exactly \{{(?P<lines>\d)\}} (?P<noun>lines?) of symmetry|"
                r"rotational symmetry of order \{(?P<order>\d)\})",
                _for,
            ),
        ),
    )
)
