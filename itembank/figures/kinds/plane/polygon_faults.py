"""What can be wrong with a polygon: no shape, labels that lie, marks that are not so."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import combinations
from typing import TYPE_CHECKING

from itembank.figures.drawing import Exact
from itembank.figures.kinds.plane.polygon_drawn import without_place
from itembank.figures.kinds.plane.polygon_facts import (
    PolygonFacts,
    as_drawn,
    facts_of,
    height_square,
    labels_of,
    length_unit,
    lengths_drawn,
)
from itembank.figures.kinds.plane.polygon_no_shape import no_shape
from itembank.figures.kinds.plane.polygon_shape import Shape, shape_of
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.units import UNITS

if TYPE_CHECKING:
    from itembank.figures.kinds.plane.polygon import Polygon

NEAR = Fraction(1, 200)
"""By how much a length that is drawn to scale may be off: what no ruler shows."""
NEAR_DEGREES = 0.5


def polygon_fault(figure: Polygon) -> str:
    """Return what is wrong with a polygon, as a clause, or ``""``."""
    return (
        no_shape(figure)
        or _unknown_names(figure)
        or _bad_labels(figure)
        or _wrong_marks(figure)
        or _wrong_height(figure)
        or _contradiction(figure)
        or (_not_as_drawn(figure) if figure.accurate else _other_order(figure))
        or _no_room(figure)
    )


def _unknown_names(figure: Polygon) -> str:
    shape = shape_of(figure)
    marked = [side for group in (*figure.equal, *figure.parallel) for side in group]
    for side in [side for side, _ in figure.sides] + marked:
        if not shape.side(side):
            return f"it has no side {side[:9]}"
    for corner in [corner for corner, _ in figure.angles] + [*figure.right]:
        if len(corner) != 1 or corner not in shape.letters:
            return f"it has no corner {corner[:9]}"
    sides = [shape.side(side) for side, _ in figure.sides]
    angles = [corner for corner, _ in figure.angles] + [*figure.right]
    for kind, found in (("side", sides), ("angle", angles)):
        for name in found:
            if found.count(name) > 1:
                return f"the {kind} {name} is labelled or marked twice"
    for kind, groups in (("equal", figure.equal), ("parallel", figure.parallel)):
        held = [shape.side(side) for group in groups for side in group]
        if len(groups) > 2 or any(len(group) < 2 for group in groups):
            return f"there may be two groups of {kind} sides, each of two sides or more"
        if len({*held}) != len(held):
            return f"a side is marked as {kind} twice"
    return ""


def _bad_labels(figure: Polygon) -> str:
    height = figure.height.label if figure.height is not None else None
    lengths = [label for _, label in figure.sides] + ([height] if height is not None else [])
    units = {label.unit if isinstance(label, t.Quantity) else "" for label in lengths}
    bare = [label for label in lengths if not isinstance(label, t.Quantity)]
    if len(units - {""}) > 1:
        return "its lengths are to be in one unit"
    if any(unit and UNITS[unit].dimension != "length" for unit in units):
        return "its sides are to be labelled by lengths"
    if len(units) > 1 and any(not t.symbols(label) for label in bare):
        return "some of its lengths have a unit and some have none"
    for _, label in figure.angles:
        degrees = isinstance(label, t.Quantity) and label.unit == "°"
        if not degrees and not (_letter(label) or (t.symbols(label) and not _plain_sum(label))):
            return f"write the angle {shown_line(label)} with °"
    try:
        labels_of(figure)
    except t.NotationError:
        return "its labels are to be numbers, amounts or expressions in a letter"
    return letters_agree([*lengths, *(label for _, label in figure.angles)])


def letters_agree(labels: list[t.Node]) -> str:
    """Return what is wrong where a letter has a unit behind it in one place and not in another."""
    with_unit = {s for node in labels if isinstance(node, t.Quantity) for s in t.symbols(node)}
    without = {s for node in labels if not isinstance(node, t.Quantity) for s in t.symbols(node)}
    if both := sorted(with_unit & without):
        return f"{both[0]} stands with a unit in one label and without in another"
    return ""


def _letter(label: t.Node) -> bool:
    return isinstance(label, t.Sym)


def _plain_sum(label: t.Node) -> bool:
    """Tell whether a label is a sum with a bare number in it: (2x + 10) needs its degrees sign."""
    return isinstance(label, t.Sum)


def _wrong_marks(figure: Polygon) -> str:
    shape = shape_of(figure)
    for corner in figure.right:
        if not shape.square_corner(corner):
            return (
                f"{corner} is marked as a right angle and is drawn as {shape.degrees(corner):.1f}°"
            )
    for group in figure.equal:
        first, *others = (shape.side(side) for side in group)
        for second in others:
            ratio = float(Fraction(shape.square(first)) / shape.square(second)) ** 0.5
            if abs(ratio - 1) > NEAR:
                return (
                    f"{first} and {second} are marked as equal, and {first} is drawn "
                    f"{ratio:.2f} times as long as {second}"
                )
    for group in figure.parallel:
        first, *others = (shape.side(side) for side in group)
        for second in others:
            (a, b), (c, d) = shape.way(first), shape.way(second)
            if a * d - b * c:
                off = math.degrees(math.atan2(abs(float(a * d - b * c)), abs(float(a * c + b * d))))
                return (
                    f"{first} and {second} are marked as parallel, and are drawn {off:.1f}° apart"
                )
    return ""


def _wrong_height(figure: Polygon) -> str:
    height = figure.height
    if height is None:
        return ""
    shape = shape_of(figure)
    side = shape.side(height.side)
    if not side:
        return f"it has no side {height.side[:9]}"
    if len(height.corner) != 1 or height.corner not in shape.letters:
        return f"it has no corner {height.corner[:9]}"
    if height.corner in side:
        return f"{height.corner} is an end of {side}, so no height goes from it to that side"
    square = height_square(figure)
    for neighbour in shape.sides:
        if (
            height.corner in neighbour
            and {*neighbour} & {*side}
            and shape.square(neighbour) == square
        ):
            return f"the height from {height.corner} to {side} is the side {neighbour} itself"
    return ""


def _contradiction(figure: Polygon) -> str:
    """Return what the labels say together that no polygon has."""
    facts, shape = facts_of(figure), shape_of(figure)
    whole = 180 * (len(shape.letters) - 2)
    known = {c: a for c in shape.letters if (a := facts.angle(c)) is not None}
    told = {c: size for c in shape.letters if (size := _told(facts, c)) is not None}
    if not facts.solved.consistent:
        if len(told) == len(shape.letters) and sum(told.values()) != whole:
            total = float(sum(told.values()))
            return f"its angles add up to {total:g}°, and those of its kind to {whole}°"
        return "its labels cannot all be true together"
    for name, form in labels_of(figure).items():
        value = facts.solved.value(form)
        if value is not None and value <= 0:
            return f"by its labels {name} would be {float(value):g}, which is not more than 0"
    rest = [angle for corner, angle in known.items() if corner in told]
    if sum(rest) >= whole and len(rest) < len(shape.letters):
        return (
            f"the angles that are given add up to {float(sum(rest)):g}°, and all of them together "
            f"come to {whole}°: there is none left for the others"
        )
    if any(angle <= 0 or angle >= 360 for angle in known.values()):
        return "by its labels an angle would be no angle of a polygon"
    lengths = {s: far for s in shape.sides if (far := facts.length(s)) is not None}
    if any(far <= 0 for far in lengths.values()):
        return "by its labels a side would be no longer than 0"
    if len(lengths) == len(shape.sides):
        longest = max(lengths, key=lambda side: lengths[side])
        if 2 * lengths[longest] >= sum(lengths.values()):
            return f"its side {longest} is as long as its other sides together, so it is no shape"
    return _no_triangle(shape, lengths, known) if len(shape.letters) == 3 else ""


def _told(facts: PolygonFacts, corner: str) -> Exact | None:
    form = facts.corner(corner)
    return form.get("", 0) if not any(form) else None


def _no_triangle(shape: Shape, lengths: dict[str, Fraction], known: dict[str, Fraction]) -> str:
    """Return how three sides disagree with an angle, by the law of cosines."""
    if len(lengths) != 3:
        return ""
    for corner, angle in known.items():
        far = next(lengths[s] for s in shape.sides if corner not in s)
        a, b = (lengths[s] for s in shape.sides if corner in s)
        cosine = max(-1.0, min(1.0, float((a * a + b * b - far * far) / (2 * a * b))))
        found = math.degrees(math.acos(cosine))
        if abs(found - float(angle)) > NEAR_DEGREES:
            return f"the angle {corner} is {float(angle):g}°, and by its sides {found:.1f}°"
    return ""


def _not_as_drawn(figure: Polygon) -> str:
    lengths = lengths_drawn(figure)
    for label, value, square in lengths[1:]:
        first, worth, long = lengths[0]
        if as_drawn(worth, long, value, square):
            continue  # most are drawn exactly, and that is told in whole numbers
        drawn = worth * Fraction(math.sqrt(Fraction(square) / long))
        if abs(drawn / value - 1) > NEAR:
            size = UNITS[length_unit(figure)].size if length_unit(figure) else 1
            unit = f" {length_unit(figure)}".rstrip()
            kind = "height" if figure.height and label is figure.height.label else "side"
            return (
                f"the {kind} labelled {shown_line(label)} is drawn "
                f"{float(drawn / size):.3g}{unit} long, beside the one labelled {shown_line(first)}"
            )
    shape, facts = shape_of(figure), facts_of(figure)
    for corner in shape.letters:
        angle = facts.angle(corner)
        if angle is not None and abs(float(angle) - shape.degrees(corner)) > NEAR_DEGREES:
            printed = dict(figure.angles).get(corner)
            name = f"at {corner}" if printed is None else f"labelled {shown_line(printed)}"
            # A label that is a number says itself what the angle is.
            told = printed is not None and not t.symbols(printed)
            so = "" if told else f", and it is {float(angle):g}°"
            return f"the angle {name} is drawn as {shape.degrees(corner):.1f}°{so}"
    return ""


def _other_order(figure: Polygon) -> str:
    lengths = sorted(lengths_drawn(figure), key=lambda row: row[1])
    for (short, a, low), (long, b, high) in combinations(lengths, 2):
        if a < b and low >= high:
            return f"{shown_line(long)} is drawn no longer than {shown_line(short)}"
    shape, facts = shape_of(figure), facts_of(figure)
    known = [(c, float(size)) for c in shape.letters if (size := facts.angle(c)) is not None]
    for corner, angle in known:
        drawn = shape.degrees(corner)
        if kind_of_angle(angle) != kind_of_angle(drawn):
            return (
                f"the angle at {corner} is {kind_of_angle(angle)} ({angle:g}°), "
                f"and is drawn {kind_of_angle(drawn)}"
            )
    for (small, x), (large, y) in combinations(sorted(known, key=lambda row: row[1]), 2):
        if x < y and shape.degrees(small) >= shape.degrees(large):
            return (
                f"the angle at {large} ({y:g}°) is drawn no larger than the one at {small} ({x:g}°)"
            )
    return ""


def kind_of_angle(degrees: float) -> str:
    """Return what an angle is called by its size.

    >>> kind_of_angle(89), kind_of_angle(90), kind_of_angle(200)
    ('acute', 'right', 'reflex')
    """
    if abs(degrees - 90) < 1e-6:
        return "right"
    if degrees < 90:
        return "acute"
    return "obtuse" if degrees < 180 else "reflex"


def _no_room(figure: Polygon) -> str:
    if lost := without_place(figure):
        return f"there is no room for the label {lost[0]}"
    return ""
