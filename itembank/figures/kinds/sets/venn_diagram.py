"""A Venn diagram: two sets in a rectangle that stands for all, with how many are in each region."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawing import Arc, Area, Drawing, Mark, Point, Text, drawing, rectangle
from itembank.figures.figure import (
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.sets.set_notation import BOTH, FIRST, NEITHER, SECOND, SETS, regions_of
from itembank.figures.kinds.sets.venn_asked import CHANCE, COUNTS, chance_of_sets
from itembank.figures.label_room import room
from itembank.notation import tree as t

LARGEST = 999
MOST_MEMBERS = 3
LONGEST_NAME = 10


@dataclass(frozen=True, slots=True)
class VennDiagram(Figure):
    """Two sets, called `first` and `second`, and what is in each region.

    Each region holds how many are in it, one number, or with `members` the numbers themselves. A
    region without a number is left to be found from the `total`, which is printed where it is
    given.

    >>> figure = VennDiagram("French", "Spanish", (12,), (5,), (8,), (3,))
    >>> _read(figure, Reading("in", ("French",)))
    Int(n=17)
    """

    first: str
    second: str
    first_only: tuple[int, ...]
    both: tuple[int, ...]
    second_only: tuple[int, ...]
    neither: tuple[int, ...]
    members: bool = False
    total: int | None = None


def _regions(figure: VennDiagram) -> dict[str, tuple[int, ...]]:
    return {
        f"{figure.first} only": figure.first_only,
        "both": figure.both,
        f"{figure.second} only": figure.second_only,
        "neither": figure.neither,
    }


def _fault(figure: VennDiagram) -> str:
    names = (figure.first, figure.second)
    if any(not re.fullmatch(r"[A-Za-z][A-Za-z ]*", name) for name in names):
        return "its sets are named by letters or words"
    if any(len(name) > LONGEST_NAME for name in names):
        return f"the name of a set has at most {LONGEST_NAME} letters"
    if names[0].casefold() == names[1].casefold():
        return "its two sets have one name"
    if _names_end(figure) > _SECOND_NAMES[-1]:
        return "the names of its sets do not fit side by side: shorten them"
    regions = _regions(figure)
    most = MOST_MEMBERS if figure.members else 1
    for name, held in regions.items():
        if len(held) > most:
            many = f"at most {most} members" if figure.members else "one number"
            return f"the region of {name} may hold {many}"
        least, largest = (-99, 99) if figure.members else (0, LARGEST)
        if any(not least <= number <= largest for number in held):
            return f"a number in it stands between {least} and {largest}"
    shown = [number for held in regions.values() for number in held]
    if figure.members:
        if twice := [number for number in shown if shown.count(number) > 1]:
            return f"{twice[0]} stands in it twice"
        counted, lacking = len(shown), 0
    else:
        counted, lacking = sum(shown), sum(not held for held in regions.values())
    if lacking > 1 or (lacking and figure.total is None):
        return "it leaves out a number that nothing gives: at most one, with a total"
    if figure.total is not None and not 0 <= figure.total <= 4 * LARGEST:
        return "its total is too large, or less than 0"
    if figure.total is not None and (
        figure.total < counted if lacking else figure.total != counted
    ):
        return f"its regions come to {counted}, and the total is {figure.total}"
    return ""


def _counts(figure: VennDiagram) -> dict[str, int]:
    regions = _regions(figure)
    if figure.members:
        return {name: len(held) for name, held in regions.items()}
    known = sum(held[0] for held in regions.values() if held)
    return {
        name: held[0] if held else (figure.total or 0) - known for name, held in regions.items()
    }


_RADIUS = 3
_LEFT, _RIGHT = Point(Fraction(39, 10), Fraction(7, 2)), Point(Fraction(69, 10), Fraction(7, 2))
_WIDE, _HIGH = 13, 8
_ROW = Fraction(11, 10)
_PLACES = {0: Fraction(5, 2), 1: Fraction(27, 5), 2: Fraction(83, 10), 3: Fraction(115, 10)}
"""How far to the right the numbers of each region stand."""


_FIRST_NAME, _SECOND_NAMES = Fraction(1, 2), (Fraction(52, 5), Fraction(25, 2))
"""Where the first name begins, and where the second may end: over its circle, or at the corner."""


def _names_end(figure: VennDiagram) -> Fraction:
    """Return how far to the right both names reach at least, one beside the other."""
    wide = sum(room(name, bold=True).width for name in (figure.first, figure.second))
    return _FIRST_NAME + wide + Fraction(1, 2)


def _drawing(figure: VennDiagram) -> Drawing:
    second_at = _SECOND_NAMES[_names_end(figure) > _SECOND_NAMES[0]]
    marks: list[Mark] = [Area(rectangle(0, 0, _WIDE, _HIGH), "all")]
    for centre in (_LEFT, _RIGHT):
        rim = Point(centre.x + _RADIUS, centre.y)
        marks.append(Arc(centre, _RADIUS, rim, rim, "set"))
    for name, x, across in (
        (figure.first, _FIRST_NAME, "left"),
        (figure.second, second_at, "right"),
    ):
        place = Point(x, _HIGH - Fraction(3, 4))
        marks.append(Text(place, name, across, role="name", bold=True))  # type: ignore[arg-type]
    for column, held in enumerate(_regions(figure).values()):
        top = _LEFT.y + _ROW * Fraction(len(held) - 1, 2)
        for row, number in enumerate(held):
            place = Point(_PLACES[column], top - row * _ROW)
            marks.append(Text(place, t.num(number), role="number"))
    if figure.members:
        marks.append(Text(Point(0, -Fraction(1, 4)), "Members", "left", "top", "kind"))
    if figure.total is not None:
        place = Point(_WIDE, -Fraction(1, 4))
        marks.append(Text(place, f"Total {figure.total}", "right", "top", "total"))
    return drawing(marks)


def _words(figure: VennDiagram) -> str:
    out = [f"A Venn diagram has two sets, {figure.first} and {figure.second}, that overlap."]
    for name, held in _regions(figure).items():
        where = {"both": "In both sets", "neither": "In neither set"}.get(
            name, f"In {name.removesuffix(' only')} only"
        )
        shown = ", ".join(str(number).replace("-", "minus ") for number in held)
        nothing = "no members" if figure.members else "no number is given"
        out.append(f"{where}: {shown or nothing}.")
    if figure.members:
        out.append("The numbers are the members themselves.")
    if figure.total is not None:
        out.append(f"The total is {figure.total}.")
    return " ".join(out)


def _read(figure: VennDiagram, reading: Reading) -> t.Node:
    first, both, second, neither = _counts(figure).values()
    total = first + both + second + neither
    alone = dict(
        zip((figure.first.casefold(), figure.second.casefold()), (first, second), strict=True)
    )
    found: int | None = None
    match reading:
        case Reading("count" | "members" as what, (sets,)):
            return _of_sets(figure, what, regions_of(sets, figure.first, figure.second))
        case Reading("both" | "either" | "neither" | "total" as what, ()):
            either = first + both + second
            found = {"both": both, "either": either, "neither": neither, "total": total}[what]
        case Reading("in" | "not in" | "only in" as what, (name,)) if name.casefold() in alone:
            only = alone[name.casefold()]
            found = {"in": only + both, "only in": only, "not in": total - only - both}[what]
    if found is None:
        raise not_shown(reading)
    return t.Int(found)


def _of_sets(figure: VennDiagram, what: str, wanted: frozenset[str]) -> t.Node:
    """Return how many are in some regions, or which: in order, the smallest first."""
    names = (FIRST, BOTH, SECOND, NEITHER)
    if what == "count":
        counts = zip(names, _counts(figure).values(), strict=True)
        return t.Int(sum(count for name, count in counts if name in wanted))
    if not figure.members:
        raise FigureError("it shows how many are in each region, and not which")
    held = zip(names, _regions(figure).values(), strict=True)
    found = sorted(number for name, numbers in held if name in wanted for number in numbers)
    if len(found) < 2:
        raise FigureError("a list of members has at least two")
    return t.Listing(tuple(map(t.num, found)))


def _readings(figure: VennDiagram) -> tuple[Reading, ...]:
    names = (figure.first, figure.second)
    return (
        *_of_letters(figure),
        *(Reading(what) for what in ("both", "either", "neither", "total")),
        *(Reading(what, (name,)) for what in ("in", "not in", "only in") for name in names),
    )


def _of_letters(figure: VennDiagram) -> tuple[Reading, ...]:
    """Return what is read of sets in symbols, where letters name them."""
    a, b = figure.first, figure.second
    if not (len(a) == len(b) == 1 and a.isupper() and b.isupper()):
        return ()
    every = (f"{a} ∩ {b}", f"{a} ∪ {b}", f"{a}′", f"{b}′ ∩ {a}", f"({a} ∪ {b})′", f"{a}′ ∪ {b}")
    found = [Reading("count", (sets,)) for sets in every]
    for sets in every if figure.members else ():
        regions = regions_of(sets, a, b)
        held = zip((FIRST, BOTH, SECOND, NEITHER), _regions(figure).values(), strict=True)
        if sum(len(numbers) for name, numbers in held if name in regions) > 1:
            found.append(Reading("members", (sets,)))
    return tuple(found)


_SETS = rf'\{{?"?{SETS}"?\}}?'
_FIND = r"(?:what is|find|work out|write down)"

VENN_DIAGRAM = register_figure(
    FigureKind(
        "Venn diagram",
        VennDiagram,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: tuple(t.num(n) for held in _regions(figure).values() for n in held),
        readings=_readings,
        read=_read,
        sets=frozenset({"members"}),
        wordings=(
            *COUNTS,
            Wording(
                rf"(?:list|write down) the members of {_SETS}", asks_reading("members", "sets")
            ),
            Wording(rf"{_FIND} n\({_SETS}\)", asks_reading("count", "sets")),
            Wording(
                rf"{_FIND} (?:P\({_SETS}\)|the probability that (?:it|the number) is in "
                rf"{_SETS.replace('<sets>', '<other>')})",
                lambda figure, found: chance_of_sets(figure, found),
            ),
            CHANCE,
        ),
    )
)
