"""A construction with ruler and compasses: lines, arcs, and the points where they cross."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, drawing
from itembank.figures.figure import Figure, FigureKind, Reading, not_shown, register_figure
from itembank.figures.kinds.construction.construction_asked import WORDINGS
from itembank.figures.kinds.construction.construction_drawn import construction_sheet, without_place
from itembank.figures.kinds.construction.construction_facts import HALVED, LETTERS, Shown, shown
from itembank.figures.kinds.construction.construction_said import words_of
from itembank.figures.kinds.linear_facts import Facts, Form, form_of, less, plus
from itembank.figures.written_as import in_unit, unit_of
from itembank.notation import tree as t
from itembank.notation.linear import linear
from itembank.notation.tree.written import shown_line
from itembank.notation.units import UNITS
from itembank.once import once

_SIZES = {"perpendicular bisector": (30, 60), "angle bisector": (30, 150)}
_TWICE = 60
"""An angle that is bisected twice has to be so large, or its letters have no room."""


@dataclass(frozen=True, slots=True)
class Construction(Figure):
    """A construction, the letters of its points, and what is given of it.

    `letters` stand for the points of ``construction_facts.LETTERS`` in that order. `given` holds
    names of lengths (AB) and angles (angle ABC), each with what it is. An angle is bisected
    `halved` times. `size` is what is drawn: the angle ABC that is bisected, or, of a perpendicular
    bisector, the angle CAB. With `joined` its C is joined to A and B. All of it is turned
    anticlockwise by `turn` degrees.

    >>> Construction("perpendicular bisector", "ABCDM").halved
    0
    """

    shape: Literal[
        "perpendicular bisector",
        "angle bisector",
        "equilateral triangle",
        "perpendicular at a point on a line",
        "perpendicular from a point to a line",
    ]
    letters: str
    given: tuple[tuple[str, t.Node], ...] = ()
    halved: int = 0
    size: int = 40
    joined: bool = False
    turn: int = 0


def facts_of(figure: Construction) -> Shown:
    """Return what follows from a construction, under its own letters."""
    return shown(figure.shape, figure.letters, figure.halved, figure.joined)


def named(figure: Construction, name: str) -> tuple[str, str] | None:
    """Return whether a length or an angle is called so, and its name as it stands in the facts."""
    facts = facts_of(figure)
    bare = name.removeprefix("angle ")
    sort = "length" if bare == name else "angle"
    for called in (bare, bare[::-1]):
        if called in (facts.lengths if sort == "length" else facts.angles):
            return sort, called
    return None


def _fault(figure: Construction) -> str:
    return (
        _bad_shape(figure) or _bad_letters(figure) or _bad_given(figure) or _contradiction(figure)
    ) or (f"there is no room for {lost[0]}" if (lost := without_place(figure)) else "")


def _bad_shape(figure: Construction) -> str:
    most = HALVED.get(figure.shape, 0)
    least = 1 if figure.shape == "angle bisector" else 0
    if not least <= figure.halved <= most:
        return f"its angle may be bisected {least} to {most} times"
    if not 0 <= figure.turn < 360:
        return "it may be turned by 0 to 359 degrees"
    if figure.joined and figure.shape != "perpendicular bisector":
        return "only points of a perpendicular bisector are joined to the ends of the line"
    low, high = _SIZES.get(figure.shape, (40, 40))
    if figure.halved == HALVED["angle bisector"] and figure.shape == "angle bisector":
        low = _TWICE
    if not low <= figure.size <= high:
        return f"it is drawn with a size of {low} to {high} degrees"
    return ""


def _bad_letters(figure: Construction) -> str:
    count = 3 + figure.halved if figure.shape in HALVED else len(LETTERS[figure.shape])
    if len(figure.letters) != count or len({*figure.letters}) != count:
        return f"it needs {count} letters, each another"
    if any(not "A" <= letter <= "Z" for letter in figure.letters):
        return "its points have capital letters"
    return ""


def _bad_given(figure: Construction) -> str:
    if len(figure.given) > 2:
        return "at most two sizes are given"
    for name, amount in figure.given:
        sort = named(figure, name)
        if sort is None:
            return f"it has no {name[:20]} of which it could say something"
        if not isinstance(amount, t.Quantity):
            return f"write {name} with its unit"
        if UNITS[amount.unit].dimension != sort[0]:
            return f"{shown_line(amount)} is no {sort[0]}"
        try:
            linear(amount)
        except t.NotationError:
            return "what is given is to be an amount, or an expression in a letter"
    if len({named(figure, name) for name, _ in figure.given}) != len(figure.given):
        return "something is given twice"
    if len({letter for _, amount in figure.given for letter in t.symbols(amount)}) > 1:
        return "what is given has one letter at most"
    if all(t.symbols(amount) for _, amount in figure.given) and len(figure.given) > 1:
        return "one of two sizes that are given has no letter"
    if len({unit_of(amount) for name, amount in figure.given if len(name) == 2}) > 1:
        return "its lengths are to be in one unit"
    return ""


def _form(figure: Construction, sort: str, name: str) -> Form:
    """Return a length or an angle by what all of its kind hang on."""
    if sort == "length":
        group, count = facts_of(figure).lengths[name]
        return {f"length {group}": count}
    degrees, times = facts_of(figure).angles[name]
    return {name: count for name, count in (("", degrees), ("size", times)) if count}


def _equations(figure: Construction) -> Iterator[Form]:
    for name, amount in figure.given:
        found = named(figure, name)
        assert found is not None
        yield less(form_of(amount), _form(figure, *found))


@once
def _settled(figure: Construction) -> Facts:
    return Facts(_equations(figure))


def _contradiction(figure: Construction) -> str:
    facts = _settled(figure)
    if not facts.consistent:
        return "what is given cannot all be true together"
    letters = {letter for _, amount in figure.given for letter in t.symbols(amount)}
    for letter in letters:
        if facts.value({letter: 1}) is None:
            return f"what is given does not settle {letter}"
    for name, amount in figure.given:
        value = facts.value(form_of(amount))
        if value is not None and value <= 0:
            return f"{name} would not be more than 0"
    size = facts.value({"size": 1})
    if size is not None and size != figure.size:
        return f"it is drawn with {figure.size}°, and by what is given that is {float(size):g}°"
    return ""


def construction_drawing(figure: Construction) -> Drawing:
    """Return what is drawn of a construction, however large it is."""
    return drawing(construction_sheet(figure).marks)


def _value(figure: Construction, name: str) -> t.Node | None:
    """Return a length or an angle that what is given settles."""
    found = named(figure, name)
    value = None if found is None else _settled(figure).value(plus(_form(figure, *found)))
    if found is None or value is None:
        return None
    if found[0] == "angle":
        return in_unit(value, "°")
    return in_unit(value, next(unit_of(amount) for name, amount in figure.given if len(name) == 2))


def _as_far(figure: Construction, name: str) -> str | None:
    """Return what all points of the line that is drawn are as far from as from another."""
    letters = figure.letters
    if figure.shape == "perpendicular bisector" and name in letters[:2]:
        return letters[:2].replace(name, "")
    if figure.shape == "angle bisector" and figure.halved == 1:
        arms = {f"{letters[1]}{letters[0]}", f"{letters[1]}{letters[2]}"}
        if name in arms:
            return (arms - {name}).pop()
    return None


def _from_it(figure: Construction) -> tuple[str, ...]:
    """Return the lengths from the point to others, that of the perpendicular last."""
    if figure.shape != "perpendicular from a point to a line":
        return ()
    a, b, p, q, n = tuple(figure.letters)
    return (p + a, p + b, p + q, p + n)


def _simple(figure: Construction) -> bool:
    """Tell whether one construction is shown and not two of them."""
    return figure.halved == (figure.shape == "angle bisector") and not figure.joined


def _read(figure: Construction, reading: Reading) -> t.Node:
    found: t.Node | None = None
    if reading.name in ("length", "angle") and len(reading.of) == 1:
        name = reading.of[0] if reading.name == "length" else f"angle {reading.of[0]}"
        found = _value(figure, name)
    elif reading.name == "construction" and figure.shape in reading.of and _simple(figure):
        found = t.Label(figure.shape)
    elif reading.name == "as far" and len(reading.of) == 1:
        length = _as_far(figure, reading.of[0])
        found = None if length is None else t.Label(length)
    elif reading.name == "shortest" and {*reading.of} <= {*_from_it(figure)}:
        shortest = _from_it(figure)[-1:]
        found = t.Label(shortest[0]) if {*shortest} & {*reading.of} else None
    if found is None:
        raise not_shown(reading)
    return found


def _readings(figure: Construction) -> tuple[Reading, ...]:
    facts, letters = facts_of(figure), figure.letters
    found = [Reading("length", (name,)) for name in facts.lengths if _value(figure, name)]
    found += [Reading("angle", (name,)) for name in facts.angles if _value(figure, f"angle {name}")]
    if _simple(figure):
        found.append(Reading("construction", (figure.shape,)))
    pairs = (*letters[:2], letters[1::-1], letters[1:3])
    found += [Reading("as far", (name,)) for name in pairs if _as_far(figure, name)]
    if offered := _from_it(figure):
        found.append(Reading("shortest", offered))
    return tuple(found)


def _relations(figure: Construction) -> tuple[t.Relation, ...]:
    return _settled(figure).relations({})


CONSTRUCTION = register_figure(
    FigureKind(
        "construction",
        Construction,
        fault=_fault,
        bears={"given": (t.Quantity,)},
        drawing=construction_drawing,
        words=words_of,
        printed=lambda figure: tuple(amount for _, amount in figure.given),
        readings=_readings,
        read=_read,
        relations=_relations,
        wordings=WORDINGS,
    )
)
