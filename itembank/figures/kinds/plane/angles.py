"""Angles on a line, round a point, where lines cross, and on parallel lines."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, drawing
from itembank.figures.figure import (
    NOT_ACCURATE,
    Figure,
    FigureKind,
    Reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.linear_facts import Facts, Form, form_of, less, plus
from itembank.figures.kinds.plane.angles_drawn import angles_sheet, without_place
from itembank.figures.kinds.plane.polygon_faults import kind_of_angle, letters_agree
from itembank.figures.kinds.unknown_asked import LETTER
from itembank.figures.written_as import in_unit
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.linear import linear
from itembank.notation.words import words as said
from itembank.once import once

MOST_ANGLES, LEAST = 6, 15
NEAR_DEGREES = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Angles(Figure):
    """Angles drawn with whole numbers of degrees, each with a label or none.

    *line*: `sizes` are those of all angles on it, from left to right; *point*: of all angles round
    it, clockwise from the top. *crossing* and *parallel* have one size, of the angle between the
    right part of a line and the upper part of the line that crosses it: it is number 1, and the
    others go on anticlockwise to 4; round the lower of two parallel lines they are numbered 5 to 8.
    `labels` go by these numbers, and so does `right`, which is marked by a square. All of it is
    turned anticlockwise by `turn` degrees.

    >>> Angles("line", (48, 132), ((1, t.Quantity(t.Int(48), "°")), (2, t.Sym("x")))).accurate
    False
    """

    arrangement: Literal["line", "point", "crossing", "parallel"]
    sizes: tuple[int, ...]
    labels: tuple[tuple[int, t.Node], ...] = ()
    right: tuple[int, ...] = ()
    turn: int = 0
    accurate: bool = False


def all_sizes(figure: Angles) -> tuple[int, ...]:
    """Return the size that each angle is drawn with, in order of their numbers."""
    if figure.arrangement in ("line", "point"):
        return figure.sizes
    (size,) = figure.sizes
    return (size, 180 - size) * (2 if figure.arrangement == "crossing" else 4)


def _fault(figure: Angles) -> str:
    return (
        _bad_sizes(figure) or _bad_labels(figure) or _contradiction(figure) or _as_drawn(figure)
    ) or (f"there is no room for the label {lost[0]}" if (lost := without_place(figure)) else "")


def _bad_sizes(figure: Angles) -> str:
    count = len(figure.sizes)
    if not 0 <= figure.turn < 360:
        return "it may be turned by 0 to 359 degrees"
    if figure.arrangement in ("line", "point"):
        whole = 180 if figure.arrangement == "line" else 360
        if not 2 <= count <= MOST_ANGLES:
            return f"it may have 2 to {MOST_ANGLES} angles"
        if sum(figure.sizes) != whole:
            where = "on a line" if whole == 180 else "round a point"
            return f"its sizes add up to {sum(figure.sizes)}°, and angles {where} to {whole}°"
    elif count != 1:
        return "it has one size: that of its first angle"
    if any(size < LEAST for size in all_sizes(figure)):
        return f"an angle is to be drawn with {LEAST}° or more"
    return ""


def _bad_labels(figure: Angles) -> str:
    count = len(all_sizes(figure))
    numbers = [number for number, _ in figure.labels] + [*figure.right]
    if any(not 1 <= number <= count for number in numbers):
        return f"its angles are numbered from 1 to {count}"
    if len({*numbers}) != len(numbers):
        return "an angle is labelled or marked twice"
    for _, label in figure.labels:
        if isinstance(label, t.Quantity) and label.unit != "°":
            return f"{shown_line(label)} is no angle"
        if not isinstance(label, t.Quantity) and (isinstance(label, t.Sum) or not t.symbols(label)):
            return f"write the angle {shown_line(label)} with °"
    try:
        for _, label in figure.labels:
            linear(label)
    except t.NotationError:
        return "its labels are to be degrees, or expressions in a letter"
    for number in figure.right:
        if all_sizes(figure)[number - 1] != 90:
            return (
                f"angle {number} is marked as a right angle and is drawn as "
                f"{all_sizes(figure)[number - 1]}°"
            )
    return letters_agree([label for _, label in figure.labels])


@once
def _forms(figure: Angles) -> tuple[Form, ...]:
    """Return what is known of each angle, in order of their numbers."""
    labels = dict(figure.labels)

    def form(number: int) -> Form:
        if number in figure.right:
            return {"": 90}
        label = labels.get(number)
        return {f"∠{number}": 1} if label is None else form_of(label)

    return tuple(form(k + 1) for k in range(len(all_sizes(figure))))


def _equations(figure: Angles) -> Iterator[Form]:
    forms = _forms(figure)
    if figure.arrangement in ("line", "point"):
        yield plus(*forms, {"": -sum(figure.sizes)})
        return
    for k in range(0, len(forms), 4):
        # Neighbours at a crossing make a straight line, and opposite angles are equal.
        yield plus(forms[k], forms[k + 1], {"": -180})
        yield less(forms[k], forms[k + 2])
        yield less(forms[k + 1], forms[k + 3])
    if figure.arrangement == "parallel":
        # One pair of corresponding angles: the crossings settle the other pairs.
        yield less(forms[0], forms[4])


@once
def _facts(figure: Angles) -> Facts:
    return Facts(_equations(figure))


@once
def _known(figure: Angles) -> list[tuple[int, Fraction]]:
    facts = _facts(figure)
    values = [(number, facts.value(form)) for number, form in enumerate(_forms(figure), 1)]
    return [(number, value) for number, value in values if value is not None]


def _contradiction(figure: Angles) -> str:
    if not _facts(figure).consistent:
        forms = _forms(figure)
        if figure.arrangement in ("line", "point") and not any(map(any, forms)):
            total = float(sum(form.get("", 0) for form in forms))
            where = "on a line" if figure.arrangement == "line" else "round a point"
            return f"its angles add up to {total:g}°, and angles {where} to {sum(figure.sizes)}°"
        return "its labels cannot all be true together"
    for number, value in _known(figure):
        if value <= 0:
            return f"by its labels angle {number} would be {float(value):g}°"
    return ""


def _as_drawn(figure: Angles) -> str:
    sizes = all_sizes(figure)
    known = _known(figure)
    for number, value in known:
        drawn = sizes[number - 1]
        label = dict(figure.labels).get(number)
        name = f"angle {number}" if label is None else f"the angle labelled {shown_line(label)}"
        if figure.accurate and abs(value - drawn) > NEAR_DEGREES:
            # A label that is a number says itself what the angle is.
            told = label is not None and not t.symbols(label)
            return f"{name} is drawn as {drawn}°" + (
                "" if told else f", and it is {float(value):g}°"
            )
        if kind_of_angle(float(value)) != kind_of_angle(drawn):
            return (
                f"{name} is {kind_of_angle(float(value))} ({float(value):g}°), and is drawn "
                f"{kind_of_angle(drawn)}"
            )
    ordered = sorted(known, key=lambda row: (row[1], sizes[row[0] - 1]))
    for (low, small), (high, large) in pairwise(ordered):
        if small < large and sizes[low - 1] >= sizes[high - 1]:
            return (
                f"angle {high} ({float(large):g}°) is drawn no larger than angle {low} "
                f"({float(small):g}°)"
            )
    return ""


def _drawing(figure: Angles) -> Drawing:
    return drawing(angles_sheet(figure).marks)


def _said(figure: Angles, numbers: range) -> str:
    labels = dict(figure.labels)
    parts = []
    for number in numbers:
        if number in figure.right:
            parts.append("a right angle")
        elif number in labels:
            parts.append(said(labels[number]))
        else:
            parts.append("one unlabelled")
    return f"{', '.join(parts[:-1])} and {parts[-1]}"


def _words(figure: Angles) -> str:
    count = len(all_sizes(figure))
    first = _said(
        figure, range(1, min(count, 4 if figure.arrangement == "parallel" else count) + 1)
    )
    out = {
        "line": f"A straight line is split into {count} angles, in this order: {first}.",
        "point": f"Round a point are {count} angles, in this order: {first}.",
        "crossing": f"Two straight lines cross. The four angles, in order round the crossing, are "
        f"{first}.",
        "parallel": "Two parallel lines are crossed by a straight line. The four angles, in order "
        f"round the first crossing, are {first}. ",
    }[figure.arrangement]
    if figure.arrangement == "parallel":
        out += (
            "Round the second crossing, in the same order and from the same direction, they are "
            f"{_said(figure, range(5, 9))}."
        )
    return out if figure.accurate else f"{out} {NOT_ACCURATE}."


def _read(figure: Angles, reading: Reading) -> t.Node:
    if reading.name == "angle" and len(reading.of) == 1:
        for number, label in figure.labels:
            if label == t.Sym(reading.of[0]):
                value = _facts(figure).value(_forms(figure)[number - 1])
                if value is not None:
                    return in_unit(value, "°")
    raise not_shown(reading)


def _readings(figure: Angles) -> tuple[Reading, ...]:
    names = dict.fromkeys(
        label.name
        for _, label in figure.labels
        if isinstance(label, t.Sym) and _facts(figure).value(linear(label)) is not None
    )
    return tuple(Reading("angle", (name,)) for name in names)


def _relations(figure: Angles) -> tuple[t.Relation, ...]:
    bare = [label for _, label in figure.labels if not isinstance(label, t.Quantity)]
    return _facts(figure).relations({name: "°" for label in bare for name in t.symbols(label)})


ANGLES = register_figure(
    FigureKind(
        "angles",
        Angles,
        fault=_fault,
        bears={"labels": (t.Quantity,)},
        drawing=_drawing,
        words=_words,
        printed=lambda figure: tuple(label for _, label in figure.labels),
        readings=_readings,
        read=_read,
        relations=_relations,
        wordings=(LETTER,),
        accurate=lambda figure: figure.accurate,
    )
)
