"""Questions that a name answers: which construction it is, and what is as far or the nearest."""

from __future__ import annotations

from itertools import combinations

from generators.geometry import _construction_mistakes as m
from generators.geometry._constructions_drawn import (
    ANGLE,
    BISECTOR,
    FROM_POINT,
    NAMES,
    RIGHT,
    SIXTY,
    construction,
    letters_of,
    name_asked,
)
from itembank.items import kinds
from itembank.items.item import Draft, Misconception, Step
from itembank.notation import tree as t

_PAIRS = tuple(combinations(range(len(NAMES) - 1), 2))
"""Which two of the four other names are offered beside the right one."""
COUNT = len(NAMES) * len(_PAIRS)
"""How many sets of names there are."""
_WHY = {
    BISECTOR: "Equal arcs round both ends of the line cross twice, and these crossings are joined.",
    ANGLE: "An arc round the corner crosses both arms, and equal arcs start from there.",
    SIXTY: "Arcs round both ends are as wide as the line is long, so all three sides are equal.",
    RIGHT: "An arc round a point on the line crosses it twice, and equal arcs start from there.",
    FROM_POINT: "An arc round a point off the line crosses it twice, and equal arcs start there.",
}


def _mistaken(name: str, other: str) -> Misconception:
    if {name, other} == {BISECTOR, ANGLE}:
        return m.LINE_OR_ANGLE
    return m.ON_OR_OFF if {name, other} <= {BISECTOR, RIGHT, FROM_POINT} else m.ARCS_ALONE


def name(n: int, k: int) -> Draft:
    """Return the question which of three constructions is shown."""
    shape = NAMES[n % len(NAMES)]
    others = [label for label in NAMES if label != shape]
    wrongs = [others[at] for at in _PAIRS[n // len(NAMES)]]
    size = 50 + 4 * (n % 16) if shape == ANGLE else 40
    figure = construction(shape, n + 2 * k, halved=int(shape == ANGLE), size=size)
    a, b, c = kinds.shuffled([shape, *wrongs], n, k)
    return name_asked(
        figure,
        f"Which construction is shown: {a}, {b} or {c}?",
        shape,
        (Step(_WHY[shape]), Step("So it has this name.", t.Label(shape))),
        [(_mistaken(shape, wrong), wrong) for wrong in wrongs],
        ("name", shape, *sorted(wrongs), figure.letters, figure.size),
    )


def as_far(n: int, k: int) -> Draft:
    """Return the question what all points of the line that was drawn are as far from."""
    if k < 2:
        a, b, c, d, mid = letters_of(BISECTOR, n)
        of, key = (a, b) if k == 0 else (b, a)
        return name_asked(
            construction(BISECTOR, n),
            f"Every point on line {c}{d} is as far from {of} as from which point?",
            key,
            (
                Step(f"The line {c}{d} is the perpendicular bisector of {a}{b}."),
                Step(f"Fold along it: {of} falls on {key}.", t.Label(key)),
            ),
            [(m.ON_THE_LINE, mid), (m.CROSSING, c)],
            ("as far", of, key),
        )
    a, b, c, d = letters_of(ANGLE, n)[:4]
    of, key = (b + a, b + c) if k == 2 else (b + c, b + a)
    return name_asked(
        construction(ANGLE, n, halved=1, size=50 + 10 * n),
        f"Every point on line {b}{d} is as far from line {of} as from which line?",
        key,
        (
            Step(f"The line {b}{d} bisects angle {a}{b}{c}."),
            Step(f"Fold along it: {of} falls on {key}.", t.Label(key)),
        ),
        [(m.ON_THE_LINE, b + d), (m.CROSSING, d)],
        ("as far", of, key),
    )


def shortest(n: int, k: int) -> Draft:
    """Return the question which length is the distance from a point to a line."""
    a, b, p, q, foot = letters_of(FROM_POINT, n)
    wrongs = [(m.OTHER_END, p + a), (m.OTHER_END, p + b), (m.PAST_THE_LINE, p + q)]
    del wrongs[k]
    key = p + foot
    first, second, third = kinds.shuffled([key, *(wrong for _, wrong in wrongs)], n, k)
    return name_asked(
        construction(FROM_POINT, n),
        f"Which is the shortest distance from {p} to line {a}{b}: {first}, {second} or {third}?",
        key,
        (
            Step(f"The line {p}{q} is the perpendicular from {p} to line {a}{b}."),
            Step("The shortest way meets the line at a right angle.", t.Label(key)),
        ),
        wrongs,
        ("shortest", key, *sorted(wrong for _, wrong in wrongs)),
    )
