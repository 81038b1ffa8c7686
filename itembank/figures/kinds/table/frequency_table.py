"""A frequency table: values, or kinds of thing, with how often each came."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import pairwise

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
from itembank.figures.kinds.chart.chart_names import Shown, folded, words_of
from itembank.figures.kinds.chart.chart_wordings import SORTS, counts_wording
from itembank.figures.kinds.table.table_cells import WIDEST, least_width, table_drawing
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.value import exact_or_none
from itembank.notation.words import words as said

MOST_COLUMNS, MOST_OFTEN = 9, 1000


@dataclass(frozen=True, slots=True)
class FrequencyTable(Figure):
    """One row of values, which are numbers or names, and one of how often each came.

    `heading` says what the values are, `counts` what is counted.

    >>> FrequencyTable("Goals", (t.Int(0), t.Int(1)), (3, 5)).counts
    'Frequency'
    """

    heading: str
    values: tuple[t.Node, ...]
    frequencies: tuple[int, ...]
    counts: str = "Frequency"


def _fault(figure: FrequencyTable) -> str:
    if not 2 <= len(figure.values) <= MOST_COLUMNS:
        return f"it may have 2 to {MOST_COLUMNS} values"
    if len(figure.values) != len(figure.frequencies):
        return "it has a frequency for each value"
    if any(not 0 <= count <= MOST_OFTEN for count in figure.frequencies):
        return f"frequencies are from 0 to {MOST_OFTEN}"
    if not sum(figure.frequencies):
        return "all of its frequencies are 0"
    if not figure.heading.strip() or not figure.counts.strip():
        return "both of its rows are to have a heading"
    names = [value.text for value in figure.values if isinstance(value, t.Label)]
    if names:
        if len(names) != len(figure.values):
            return "its values are all names, or all numbers"
        if found := name_fault(names, "values"):
            return found
    else:
        numbers = [exact_or_none(value) for value in figure.values]
        if any(number is None for number in numbers):
            return "its values are names in quotation marks, or numbers"
        if any(a >= b for a, b in pairwise(numbers)):  # type: ignore[operator]
            return "its numbers go up from left to right"
    if least_width(_shown(figure)) > WIDEST:
        return "its names and numbers take too much room"
    return ""


def _shown(figure: FrequencyTable) -> list[list[str | t.Node | None]]:
    top: list[str | t.Node | None] = [figure.heading]
    top += [value.text if isinstance(value, t.Label) else value for value in figure.values]
    return [top, [figure.counts, *map(t.Int, figure.frequencies)]]


def _numbers(figure: FrequencyTable) -> list[Fraction] | None:
    found = [exact_or_none(value) for value in figure.values]
    return None if None in found else [number for number in found if number is not None]


def _of_numbers(figure: FrequencyTable, name: str) -> Fraction | None:
    """Return what sums up all that was counted, where values are numbers.

    The *sum* is the total of the values, each as often as it came.
    """
    numbers = _numbers(figure)
    if numbers is None:
        return None
    pairs = [(n, f) for n, f in zip(numbers, figure.frequencies, strict=True) if f]
    count = sum(f for _, f in pairs)
    if name in ("mean", "sum"):
        added = sum((n * f for n, f in pairs), Fraction(0))
        return added / count if name == "mean" else added
    if name == "range":
        return pairs[-1][0] - pairs[0][0]
    if name == "median":
        row = [n for n, f in pairs for _ in range(f)]
        return (row[(count - 1) // 2] + row[count // 2]) / 2
    return None


def _read(figure: FrequencyTable, reading: Reading) -> t.Node:
    if reading == Reading("total"):
        return t.Int(sum(figure.frequencies))
    if reading.name == "value" and len(reading.of) == 1:
        for value, count in zip(figure.values, figure.frequencies, strict=True):
            if _named(value, reading.of[0]):
                return t.Int(count)
    if reading.name in ("largest", "smallest") and not reading.of:
        best = (max if reading.name == "largest" else min)(figure.frequencies)
        if figure.frequencies.count(best) == 1:
            return figure.values[figure.frequencies.index(best)]
    if not reading.of and (worth := _of_numbers(figure, reading.name)) is not None:
        return written_as(worth, *figure.values)
    raise not_shown(reading)


def _named(value: t.Node, text: str) -> bool:
    if isinstance(value, t.Label):
        return folded(value.text) == folded(text)
    return bool(re.fullmatch(r"-?\d{1,9}", text)) and exact_or_none(value) == int(text)


def _readings(figure: FrequencyTable) -> tuple[Reading, ...]:
    found = [Reading("total")]
    for value in figure.values:
        if isinstance(value, t.Label):
            found.append(Reading("value", (value.text,)))
        elif isinstance(value, t.Int):
            found.append(Reading("value", (str(value.n),)))
    for name, best in (("largest", max), ("smallest", min)):
        if figure.frequencies.count(best(figure.frequencies)) == 1:
            found.append(Reading(name))
    if _numbers(figure) is not None:
        found += [Reading(name) for name in ("mean", "median", "range", "sum")]
    return tuple(found)


def _words(figure: FrequencyTable) -> str:
    pairs = zip(figure.values, figure.frequencies, strict=True)
    # With its heads, as tables are read out: a row of numbers alone is hard to follow.
    parts = "; ".join(
        f"{figure.heading} {said(value)}, {figure.counts} {count}" for value, count in pairs
    )
    return f"A table gives {figure.heading}, and {figure.counts} for each: {parts}."


def _about_values(figure: FrequencyTable, text: str) -> None:
    """Refuse words that name something else than the values: the mean of the frequencies."""
    said = re.findall(r"[a-z0-9]+", text.casefold())
    own = words_of(figure.heading)
    for word in said:
        if word not in own and (word not in _OF_VALUES or word in words_of(figure.counts)):
            raise FigureError(f"its values are not called ‘{word}’")


_OF_VALUES = frozenset(("number", "of", "the", "value"))


def _average(name: str) -> Wording:
    def asks(figure: FrequencyTable, found: re.Match[str]) -> Asked:
        _about_values(figure, found["about"] or "")
        return Asked(t.Sym("r"), (("r", Reading(name)),))

    return Wording(
        rf"(?:what is|find|work out|calculate) the {name}(?P<about> [\w’' -]{{1,50}})?", asks
    )


def _mode(figure: FrequencyTable, found: re.Match[str]) -> Asked:
    if Reading("largest") not in _readings(figure):
        raise FigureError("two values come most often")
    _about_values(figure, found["about"] or "")
    return Asked(t.Sym("r"), (("r", Reading("largest")),))


def _shown_names(figure: FrequencyTable) -> Shown:
    names = tuple(value.text for value in figure.values if isinstance(value, t.Label))
    return Shown(names, (), figure.counts, sort=f"{figure.heading} {SORTS}")


def _sum_asked(figure: FrequencyTable, text: str) -> bool:
    """Tell whether the values are to be added up: *how many goals are there altogether*."""
    found = _SUM.fullmatch(text.casefold())
    thing = found and (found["first"] or found["second"])
    return bool(
        thing
        and _numbers(figure) is not None
        and {*thing.split()} <= words_of(figure.heading)
        and not {*thing.split()} & words_of(figure.counts)
    )


_SUM = re.compile(
    r"how many (?P<first>[a-z]+(?: [a-z]+)?) (?:are|were) there (?:altogether|in total|in all)|"
    r"(?:what is|find|work out) the total number of (?P<second>[a-z]+(?: [a-z]+)?)"
)
_COUNTS = counts_wording(_shown_names)


def _counted(figure: FrequencyTable, found: re.Match[str]) -> Asked:
    if _sum_asked(figure, found["all"]):
        return Asked(t.Sym("r"), (("r", Reading("sum")),))
    return _COUNTS.asks(figure, found)


FREQUENCY_TABLE = register_figure(
    FigureKind(
        "frequency table",
        FrequencyTable,
        fault=_fault,
        drawing=lambda figure: table_drawing(_shown(figure)),
        words=_words,
        printed=lambda figure: (*figure.values, *map(t.Int, figure.frequencies)),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(r"(?:what is|find|write down) the mode(?P<about> [\w’' -]{1,50})?", _mode),
            *map(_average, ("mean", "median", "range")),
            Wording(_COUNTS.pattern, _counted),
        ),
    )
)
