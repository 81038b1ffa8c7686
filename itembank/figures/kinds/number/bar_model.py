"""A bar model: parts in a whole, a comparison, or shares in a ratio, as bars in boxes."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.data_class import dataclass
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
from itembank.figures.kinds.number.bars_drawn import bar_model_drawing, box_room
from itembank.figures.written_as import in_unit, measures, unit_of
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import exact
from itembank.notation.words import words as said

MOST_ROWS, MOST_UNITS = 4, 24


@dataclass(frozen=True, slots=True)
class Box:
    """A part of a bar: so many units long, with what stands in it, shaded or not."""

    units: int = 1
    label: t.Node | None = None
    shaded: bool = False


@dataclass(frozen=True, slots=True)
class Bar:
    """A bar of boxes, with its name at the left and what it comes to at the right."""

    boxes: tuple[Box, ...]
    name: str = ""
    total: t.Node | None = None


@dataclass(frozen=True, slots=True)
class BarModel(Figure):
    """Bars one under another, all to one scale; `total` is what they all come to together.

    A box of two units is worth twice as much as a box of one. Somewhere an amount is given: in a
    box, for a bar, or for all.

    >>> two, three = (Bar((Box(),) * n, name) for n, name in ((2, "Ana"), (3, "Ben")))
    >>> BarModel((two, three), t.Int(40)).total
    Int(n=40)
    """

    bars: tuple[Bar, ...]
    total: t.Node | None = None


def units(bar: Bar) -> int:
    """Return how many units long a bar is."""
    return sum(box.units for box in bar.boxes)


def _given(figure: BarModel) -> list[tuple[t.Node, int, str]]:
    """Return each amount that is given, with how many units it is for, and what it is for."""
    found = []
    for number, bar in enumerate(figure.bars, 1):
        name = f"‘{bar.name}’" if bar.name else f"bar {number}"
        found += [(box.label, box.units, f"a box of {name}") for box in bar.boxes if box.label]
        if bar.total is not None:
            found.append((bar.total, units(bar), name))
    if figure.total is not None:
        found.append((figure.total, sum(map(units, figure.bars)), "all bars"))
    return [(node, count, what) for node, count, what in found if not t.symbols(node)]


def _fault(figure: BarModel) -> str:
    if not 1 <= len(figure.bars) <= MOST_ROWS:
        return f"it may have 1 to {MOST_ROWS} bars"
    for bar in figure.bars:
        if not 1 <= len(bar.boxes) <= MOST_UNITS or any(box.units < 1 for box in bar.boxes):
            return f"a bar may have 1 to {MOST_UNITS} boxes, each of one unit or more"
        if units(bar) > MOST_UNITS:
            return f"a bar may be at most {MOST_UNITS} units long"
    names = [bar.name.casefold() for bar in figure.bars]
    if len(names) > 1 and len({*names}) != len(names):
        return "its bars are to have different names"
    given = _given(figure)
    try:
        scales = {exact(node) / count for node, count, _ in given}
    except t.NotationError:
        return "its amounts are to be numbers, amounts of money or quantities"
    if not given:
        return "it gives no amount: in a box, for a bar, or for all"
    # Each is worth so many of its base unit, and as many metres as pounds would seem to agree.
    if len({measures(node) for node, _, _ in given}) > 1:
        return "its amounts are to be of one sort: all money, or all lengths, or bare numbers"
    if len(scales) > 1:
        (first, n, what), (other, m, where) = (
            given[0],
            next(
                amount
                for amount in given
                if exact(amount[0]) / amount[1] != exact(given[0][0]) / given[0][1]
            ),
        )
        return (
            f"its amounts disagree: {shown_line(first)} for {n} units of {what}, and "
            f"{shown_line(other)} for {m} of {where}"
        )
    if min(scales) <= 0:
        return "its amounts are to be more than 0"
    return box_room(figure)


def scale(figure: BarModel) -> Fraction:
    """Return what one unit is worth, in the base unit of the amounts."""
    node, count, _ = _given(figure)[0]
    return exact(node) / count


def _value(figure: BarModel, count: int) -> t.Node:
    node, _, _ = _given(figure)[0]
    return in_unit(scale(figure) * count, unit_of(node))


def _bar(figure: BarModel, name: str) -> Bar | None:
    return next((bar for bar in figure.bars if bar.name.casefold() == name.casefold()), None)


def _read(figure: BarModel, reading: Reading) -> t.Node:
    if reading == Reading("part"):
        return _value(figure, 1)
    if reading == Reading("whole"):
        return _value(figure, sum(map(units, figure.bars)))
    dark = sum(box.units for bar in figure.bars for box in bar.boxes if box.shaded)
    if reading == Reading("shaded") and dark:
        return _value(figure, dark)
    if reading.name == "bar" and len(reading.of) == 1 and (bar := _bar(figure, reading.of[0])):
        return _value(figure, units(bar))
    raise not_shown(reading)


def _readings(figure: BarModel) -> tuple[Reading, ...]:
    dark = any(box.shaded for bar in figure.bars for box in bar.boxes)
    return (
        Reading("part"),
        Reading("whole"),
        *((Reading("shaded"),) if dark else ()),
        *(Reading("bar", (bar.name,)) for bar in figure.bars if bar.name),
    )


def _first_shaded(bar: Bar) -> int:
    """Return how many boxes are shaded where they are the first ones, else 0."""
    dark = [box.shaded for box in bar.boxes]
    count = sum(dark)
    return count if all(dark[:count]) else 0


def _words(figure: BarModel) -> str:
    out = []
    for number, bar in enumerate(figure.bars, 1):
        name = f"The bar of {bar.name}" if bar.name else f"Bar {number}"
        if len(figure.bars) == 1 and not bar.name:
            name = "A bar"
        sizes = [box.units for box in bar.boxes]
        if len({*sizes}) == 1 and sizes[0] == 1:
            count = len(sizes)
            cut = "1 part" if count == 1 else f"{count} equal parts"
        else:
            *most, last = (f"{size}" for size in sizes)
            lengths = f"{', '.join(most)} and {last}" if most else last
            cut = f"parts that are {lengths} equal units long"
            if not most:
                cut = f"1 part that is {last} equal units long"
        out.append(f"{name} has {cut}.")
        first = _first_shaded(bar)
        if first > 1:
            out.append(f"Its first {first} parts are shaded.")
        for place, box in enumerate(bar.boxes, 1):
            notes = [f"says {said(box.label)}"] if box.label is not None else []
            notes += ["is shaded"] if box.shaded and first < 2 else []
            if notes:
                out.append(f"Its part {place} {' and '.join(notes)}.")
        if bar.total is not None:
            out.append(f"All of it is {said(bar.total)}.")
    if len(figure.bars) > 1:
        out.append("All parts of one unit are the same size.")
    if figure.total is not None:
        whole = "Both bars together are" if len(figure.bars) == 2 else "All bars together are"
        out.append(f"{whole if len(figure.bars) > 1 else 'The whole bar is'} {said(figure.total)}.")
    return " ".join(out)


def _printed(figure: BarModel) -> tuple[t.Node, ...]:
    labels = [box.label for bar in figure.bars for box in bar.boxes]
    labels += [bar.total for bar in figure.bars] + [figure.total]
    names = [t.Label(bar.name) for bar in figure.bars if bar.name]
    return (*(label for label in labels if label is not None), *names)


_NAME = r"(?P<name>[\w’' -]{1,30}?)"


def _named(figure: BarModel, found: re.Match[str]) -> Asked:
    """Return the question for one bar, by its name."""
    group = next(name for name in ("name", "other", "kind") if found[name])
    return asks_reading("bar", group)(figure, found)


def _two(figure: BarModel, found: re.Match[str]) -> Asked:
    """Return how much more one bar is than another."""
    both = (("m", Reading("bar", (found["more"],))), ("n", Reading("bar", (found["fewer"],))))
    more, fewer = (exact(_read(figure, reading)) for _, reading in both)
    if more <= fewer:
        raise FigureError(f"{found['more']} is not more than {found['fewer']}")
    return Asked(t.sub(t.Sym("m"), t.Sym("n")), both)


def _share(figure: BarModel, found: re.Match[str]) -> Asked:
    """Return what fraction of all bars together one of them is."""
    both = (("m", Reading("bar", (found["name"],))), ("n", Reading("whole")))
    return Asked(t.Frac(t.Sym("m"), t.Sym("n")), both)


BAR_MODEL = register_figure(
    FigureKind(
        "bar model",
        BarModel,
        fault=_fault,
        bears=dict.fromkeys(("bars", "total"), (t.Quantity, t.Money, t.Percent)),
        drawing=bar_model_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                r"(?:what|how much) is (?:each|one) (?:equal )?part(?: worth)?|"
                r"work out the value of (?:each|one) (?:equal )?part",
                asks_reading("part"),
            ),
            Wording(
                r"(?:what is|how much is|work out) the (?:value of the )?(?:whole(?: bar)?|total)|"
                r"how (?:much|many) (?:are|is) there altogether",
                asks_reading("whole"),
            ),
            Wording(
                r"(?:what is|how much is|work out) the (?:shaded part|value of the shaded parts?)|"
                r"how much (?:of the bar )?is shaded",
                asks_reading("shaded"),
            ),
            Wording(
                rf"(?:what is|how much is|work out) {_NAME}[’']s (?:share|part|bar|amount)|"
                r"how (?:much|many) (?:money )?(?:does|do) (?:the )?(?P<other>[\w -]{1,30}?) "
                r"(?:get|have|receive|cost)|"
                r"how (?:much|many) (?P<kind>[\w -]{1,30}?) (?:are|is) (?:there|used)",
                _named,
            ),
            Wording(
                r"how (?:much|many) more (?:(?:are|is) there (?:of )?)?(?:do |does )?(?:the )?"
                r"(?P<more>[\w -]{1,30}?)(?: get| have| receive| cost)? than (?:the )?"
                r"(?P<fewer>[\w -]{1,30}?)(?: are there| is there)?",
                _two,
            ),
            Wording(
                rf"what fraction of (?:the (?:total|whole)|all of them) (?:is|are) {_NAME}", _share
            ),
        ),
    )
)
