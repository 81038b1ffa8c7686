"""A sample-space grid: two lists of outcomes, and in each cell what the two come to."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from typing import Literal

from itembank.data_class import dataclass
from itembank.figures.drawing import Area, Drawing, Mark, Point, Stroke, Text, drawing, rectangle
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.figures.label_room import room
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import ParseError, parse_written
from itembank.notation.value import exact
from itembank.notation.words import words as said
from itembank.once import once

MOST = 8


@dataclass(frozen=True, slots=True)
class SampleSpace(Figure):
    """Each of `first` with each of `second`, all equally likely: their sum, difference or product.

    The difference is the larger less the smaller. With *pairs* a cell shows both.

    >>> dice = tuple(map(t.Int, range(1, 7)))
    >>> line(_read(SampleSpace(dice, dice, "sum"), Reading("outcomes", ("is", "7"))))
    '6'
    """

    first: tuple[t.Node, ...]
    second: tuple[t.Node, ...]
    rule: Literal["sum", "difference", "product", "pairs"] = "sum"


RULES: dict[str, Callable[[Fraction, Fraction], Fraction]] = {
    "sum": lambda a, b: a + b,
    "difference": lambda a, b: abs(a - b),
    "product": lambda a, b: a * b,
}
_SIGN = {"sum": "+", "difference": "−", "product": "×", "pairs": ""}
_NAMED = {"total": "sum", "sum": "sum", "product": "product", "difference": "difference"}

TESTS: dict[str, Callable[[Fraction, Fraction], bool]] = {
    "is": lambda value, bound: value == bound,
    "more than": lambda value, bound: value > bound,
    "less than": lambda value, bound: value < bound,
    "at least": lambda value, bound: value >= bound,
    "at most": lambda value, bound: value <= bound,
    "multiple of": lambda value, bound: bound > 0 and (value / bound).denominator == 1,
    "even": lambda value, _: (value / 2).denominator == 1,
    "odd": lambda value, _: value.denominator == 1 and value % 2 == 1,
}


def _fault(figure: SampleSpace) -> str:
    for outcomes in (figure.first, figure.second):
        if not 2 <= len(outcomes) <= MOST:
            return f"each of its lists has 2 to {MOST} outcomes"
        if figure.rule != "pairs":
            try:
                values = [exact(node) for node in outcomes]
            except t.NotationError:
                return f"a {figure.rule} needs numbers"
            if any(value.denominator != 1 or abs(value) > 100 for value in values):
                return "its numbers are to be whole and at most 100"
        elif any(not isinstance(node, t.Int | t.Sym) or room(node).width > 2 for node in outcomes):
            return "outcomes are whole numbers or single letters"
        elif len({*outcomes}) < len(outcomes):
            return "of pairs each outcome stands once in its list"
    return ""


def _cell(figure: SampleSpace, a: t.Node, b: t.Node) -> t.Node:
    if figure.rule == "pairs":
        return t.Listing((a, b))
    return written_as(RULES[figure.rule](exact(a), exact(b)))


def _drawing(figure: SampleSpace) -> Drawing:
    cells = [[_cell(figure, a, b) for a in figure.first] for b in figure.second]
    contents = [*figure.first, *figure.second, *(node for row in cells for node in row)]
    wide = max(room(node).width for node in contents) + Fraction(1, 2)
    high = Fraction(5, 4)
    marks: list[Mark] = []

    def cell(column: int, row: int, content: t.Node | str, role: str) -> None:
        x, y = column * wide, -row * high
        head = role != "cell"
        corners = rectangle(x, y - high, x + wide, y)
        marks.append(Area(corners, f"{role} box", weight="normal" if head else "faint"))
        if content != "":
            marks.append(Text(Point(x + wide / 2, y - high / 2), content, role=role))

    cell(0, 0, _SIGN[figure.rule], "rule")
    for column, node in enumerate(figure.first, 1):
        cell(column, 0, node, "first")
    for row, (node, values) in enumerate(zip(figure.second, cells, strict=True), 1):
        cell(0, row, node, "second")
        for column, value in enumerate(values, 1):
            cell(column, row, value, "cell")
    # What is added stands apart from the sums, as names do in other tables.
    across, down = (len(figure.first) + 1) * wide, -(len(figure.second) + 1) * high
    marks.append(Stroke((Point(0, -high), Point(across, -high)), "head line", "heavy"))
    marks.append(Stroke((Point(wide, 0), Point(wide, down)), "head line", "heavy"))
    return drawing(marks)


def _words(figure: SampleSpace) -> str:
    lists = [", ".join(map(said, some)) for some in (figure.first, figure.second)]
    shows = {"pairs": "both of them", "difference": "their difference"}.get(
        figure.rule, f"their {figure.rule}"
    )
    return (
        f"A table has a column for each of {lists[0]}, and a row for each of {lists[1]}. Each "
        f"cell shows {shows}. All cells are equally likely."
    )


@once
def _values(figure: SampleSpace) -> tuple[Fraction, ...]:
    rule = RULES[figure.rule]
    first, second = (tuple(map(exact, row)) for row in (figure.first, figure.second))
    return tuple(rule(a, b) for a in first for b in second)


def _read(figure: SampleSpace, reading: Reading) -> t.Node:
    if reading == Reading("outcomes"):
        return t.Int(len(figure.first) * len(figure.second))
    if reading.name == "outcomes" and reading.of[0] in TESTS and figure.rule != "pairs":
        test, *bounds = reading.of
        try:
            bound = exact(parse_written(bounds[0])) if bounds else Fraction(0)
        except (ParseError, t.NotationError):
            raise not_shown(reading) from None
        # Even and odd take no number, and all other tests take one.
        if bool(bounds) != (test in ("even", "odd")):
            return t.Int(sum(TESTS[test](value, bound) for value in _values(figure)))
    raise not_shown(reading)


def _readings(figure: SampleSpace) -> tuple[Reading, ...]:
    if figure.rule == "pairs":
        return (Reading("outcomes"),)
    values = sorted({*_values(figure)})
    middle = line(written_as(values[len(values) // 2]))
    return (
        Reading("outcomes"),
        *(Reading("outcomes", ("is", line(written_as(value)))) for value in values),
        *(Reading("outcomes", (test, middle)) for test in TESTS if test not in ("even", "odd")),
        Reading("outcomes", ("even",)),
        Reading("outcomes", ("odd",)),
    )


def _which(figure: Figure, found: re.Match[str]) -> Reading:
    """Return the outcomes that a question is about."""
    assert isinstance(figure, SampleSpace)
    groups = found.groupdict()
    noun = groups["noun"].casefold()
    if _NAMED.get(noun, figure.rule) != figure.rule or figure.rule == "pairs":
        raise FigureError(f"it shows no {noun}")
    kind = (groups.get("kind") or "").casefold()
    if kind:
        return Reading("outcomes", (kind,))
    size = " ".join((groups.get("size") or "is").casefold().split())
    test = {"greater than": "more than", "of": "is", "a multiple of": "multiple of"}.get(size, size)
    return Reading("outcomes", (test, groups["n"]))


def _count(figure: Figure, found: re.Match[str]) -> Asked:
    return Asked(t.Sym("r"), (("r", _which(figure, found)),))


def _probability(figure: Figure, found: re.Match[str]) -> Asked:
    return Asked(
        t.Frac(t.Sym("r"), t.Sym("n")),
        (("r", _which(figure, found)), ("n", Reading("outcomes"))),
    )


_NOUN = r"(?P<noun>total|sum|score|product|difference)"
_N = r"\{(?P<n>[^}]*)\}"
_SIZE = r"(?P<size>more than|greater than|less than|at least|at most|a multiple of)"
_IS = r"(?:what is|find|work out|write down) the probability"
# Each way to say which outcomes: after *is*, and with *a* before the noun.
_ISES = (rf"(?:equal to )?{_N}", rf"{_SIZE} {_N}", r"(?:an )?(?P<kind>even|odd)(?: number)?")
_WITHS = (
    rf"a {_NOUN} of {_N}",
    rf"a {_NOUN} (?:of |that is )?{_SIZE} {_N}",
    rf"an (?P<kind>even|odd) {_NOUN}",
)

SAMPLE_SPACE = register_figure(
    FigureKind(
        "sample space",
        SampleSpace,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: (*figure.first, *figure.second),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                r"how many (?:possible |equally likely )?outcomes are there(?: in total)?",
                asks_reading("outcomes"),
            ),
            *(Wording(rf"{_IS} that the {_NOUN} is {way}", _probability) for way in _ISES),
            *(Wording(rf"{_IS} of (?:getting |scoring )?{way}", _probability) for way in _WITHS),
            *(
                Wording(rf"how many (?:of the )?outcomes (?:give|have) {way}", _count)
                for way in _WITHS
            ),
        ),
    )
)
