"""A pie chart: sectors clockwise from the top, with their angles, of a total that may be given."""

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
from itembank.figures.kinds.chart.chart_held import COUNTED_PEOPLE, PEOPLE
from itembank.figures.kinds.chart.chart_names import (
    Shown,
    asked,
    folded,
    names_fault,
    titles_fault,
    with_sizes,
    words_of,
)
from itembank.figures.kinds.chart.chart_readings import Cells, chart_read, chart_readings
from itembank.figures.kinds.chart.chart_wordings import SORTS
from itembank.figures.kinds.chart.pie_drawn import labels_of, pie_drawing, too_near
from itembank.figures.written_as import written_as
from itembank.notation import tree as t

LARGEST = 10**6
_LEAST = 15


@dataclass(frozen=True, slots=True)
class PieChart(Figure):
    """Sectors by their names and whole degrees, in order clockwise from the top.

    `counted` says what is counted, and `total` how many there are in all (0 where it is not
    said). A sector in `letters` has a letter in place of its angle; a sector of 90° has the mark
    of a right angle.

    >>> PieChart((("Bus", 150), ("Walk", 90), ("Cycle", 120)), "pupils", 24).total
    24
    """

    sectors: tuple[tuple[str, int], ...]
    counted: str = ""
    total: int = 0
    title: str = ""
    letters: tuple[tuple[str, str], ...] = ()


def _fault(figure: PieChart) -> str:
    names = tuple(name for name, _ in figure.sectors)
    if wrong := names_fault(names) or titles_fault(figure.counted, figure.title):
        return wrong
    for name, degrees in figure.sectors:
        if not _LEAST <= degrees < 360:
            return f"the angle of ‘{name}’ is {degrees}°: a sector has {_LEAST}° to 345°"
    if (whole := sum(degrees for _, degrees in figure.sectors)) != 360:
        return f"its angles add up to {whole}°, not to 360°"
    if not 0 <= figure.total <= LARGEST:
        return f"its total may be 1 to {LARGEST:,}, or 0 where it is not said"
    if figure.total and not figure.counted:
        return "its total needs a name: say what is counted"
    for name, degrees in figure.sectors:
        if figure.total * degrees % 360:
            return f"of {figure.total}, an angle of {degrees}° for ‘{name}’ is no whole number"
    if len(figure.letters) > 1:
        return "only one angle can be a letter: 360° settles no more"
    for name, letter in figure.letters:
        if name not in names:
            return f"it has no sector called ‘{name[:30]}’"
        if not re.fullmatch("[a-z]", letter):
            return "the letter of an angle is a small letter"
    if near := too_near(figure):
        return f"the labels of ‘{near[0]}’ and ‘{near[1]}’ do not fit side by side"
    return ""


def _cells(figure: PieChart) -> Cells:
    if not figure.total:
        return {(name,): degrees for name, degrees in figure.sectors}
    return {(name,): figure.total * degrees // 360 for name, degrees in figure.sectors}


def _read(figure: PieChart, reading: Reading) -> t.Node:
    if reading == Reading("each") and figure.total:
        return t.Quantity(written_as(Fraction(360, figure.total)), "°")
    if reading.name in ("angle", "fraction") and len(reading.of) == 1:
        for name, degrees in figure.sectors:
            if folded(name) == folded(reading.of[0]):
                if reading.name == "angle":
                    return t.Quantity(t.Int(degrees), "°")
                return t.frac(degrees, 360)
        raise not_shown(reading)
    if reading.name in ("value", "total") and not figure.total:
        raise FigureError("it does not say how many there are in all")
    return chart_read(_cells(figure), reading)


def _readings(figure: PieChart) -> tuple[Reading, ...]:
    names = [name for name, _ in figure.sectors]
    counts = [
        reading
        for reading in chart_readings(_cells(figure))
        if figure.total or reading.name not in ("value", "total")
    ]
    counts += [Reading("each")] if figure.total else []
    return (
        *counts,
        *(Reading("angle", (name,)) for name in names),
        *(Reading("fraction", (name,)) for name in names),
    )


def _relations(figure: PieChart) -> tuple[t.Relation, ...]:
    if not figure.letters:
        return ()
    letters = dict(figure.letters)
    sizes: list[t.Node] = [
        t.Sym(letters[name]) if name in letters else t.Int(degrees)
        for name, degrees in figure.sectors
    ]
    return (t.equals(t.add(*sizes), t.Int(360)),)


def _words(figure: PieChart) -> str:
    of = f" of {figure.title}" if figure.title else ""
    out = [f"A pie chart{of} has {len(figure.sectors)} sectors."]
    if figure.total:
        out.append(f"The whole circle stands for {figure.total} {figure.counted}.")
    letters = dict(figure.letters)
    for name, degrees in figure.sectors:
        if name in letters:
            size = f"{letters[name]} degrees"
        else:
            size = "a right angle" if degrees == 90 else f"{degrees} degrees"
        out.append(f"The angle of the sector {name} is {size}.")
    return " ".join(out)


def _printed(figure: PieChart) -> tuple[t.Node, ...]:
    total = (t.Int(figure.total),) if figure.total else ()
    sizes = [label.content for label in labels_of(figure) if label.role == "angle"]
    names = [t.Label(name) for name, _ in figure.sectors]
    return (*total, *(size for size in sizes if not isinstance(size, str)), *names)


def _asked(figure: PieChart, found: re.Match[str]) -> Asked:
    names = tuple(name for name, _ in figure.sectors)
    what = asked(
        Shown(names, (), figure.counted, f"{figure.title} pie", f"{SORTS} sector angle"),
        found["all"],
    )
    if isinstance(what.target, t.Frac):
        # A fraction of the circle, whatever it stands for.
        return Asked(t.Sym("r"), (("r", Reading("fraction", what.readings[0][1].of)),))
    return with_sizes(figure, what, found["all"])


def _letter(figure: PieChart, found: re.Match[str]) -> Asked:
    if found["letter"] not in [letter for _, letter in figure.letters]:
        raise FigureError(f"no angle of it is called ‘{found['letter']}’")
    return Asked(t.Sym(found["letter"]))


def _each(figure: PieChart, found: re.Match[str]) -> Asked:
    """Return the degrees for one of those that are counted: *for one sector* asks another thing."""
    counted = found["one"].casefold()
    shown = words_of(figure.counted)
    if counted not in shown and not (counted in PEOPLE and shown & COUNTED_PEOPLE):
        raise FigureError(f"it does not count ‘{counted}’")
    return asks_reading("each")(figure, found)


_NAME = r"(?:the )?(?:sector (?:for |of |called )?)?(?P<name>[\w :–’'-]{1,14}?)(?: sector)?"

PIE_CHART = register_figure(
    FigureKind(
        "pie chart",
        PieChart,
        fault=_fault,
        drawing=pie_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        relations=_relations,
        wordings=(
            Wording(
                rf"(?:what is|work out|find) the (?:size of the )?angle (?:of|for|in) {_NAME}|"
                r"what angle (?:stands for|represents|shows) (?P<other>[\w :–’'-]{1,14}?)",
                lambda figure, found: asks_reading("angle", "name" if found["name"] else "other")(
                    figure, found
                ),
            ),
            Wording(
                r"(?:how many degrees|what angle) (?:stands? for|represents?|shows?) "
                r"(?:each|one|1) (?P<one>[\w’'-]+)",
                _each,
            ),
            Wording(
                r"(?:what is|work out|find) (?:the value of |the size of )?\{(?P<letter>[a-z])\}",
                _letter,
            ),
            Wording(
                r"(?P<all>(?:how many|what fraction|what (?:is|was) the total|what is the "
                r"difference|which|(?:on|in|at|for|by) which|find|work out) .+)",
                _asked,
            ),
        ),
    )
)
