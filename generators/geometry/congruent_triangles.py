"""Congruent triangles: the partner of a side or an angle, and the conditions SSS, SAS, ASA, RHS.

England's programme of study for key stage 3 (2013) asks pupils to "know and use the criteria for
congruence of triangles" (from memory). What is told never holds for certain by a drawing: the
triangles are not drawn accurately.
"""

from __future__ import annotations

import math
from typing import Any

from generators.geometry import _congruent_mistakes as m
from generators.geometry._angles import deg
from generators.geometry._congruent_drawn import (
    RIGHT,
    TRIANGLES,
    Pair,
    Parts,
    Sizes,
    Spots,
    length,
    pair,
    parts,
    right_spots,
    spots,
)
from generators.geometry._congruent_told import TOLD
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_ALL = frozenset((0, 1, 2))
_ROWS = range(len(TRIANGLES))


def _others(corner: int) -> tuple[int, int]:
    first, second = sorted(_ALL - {corner})
    return first, second


class Partner:
    """What makes the triangles congruent, and which kind of partner is asked for."""

    SAS_SIDE, SAS_ANGLE, ASA_SIDE, SSS_ANGLE = range(4)


class Why:
    """Which condition holds, or why none does."""

    SSS, SAS, ASA, RHS, LEGS, ANGLES, SAS_MOVED, ASA_MOVED = range(8)


class Hard:
    """What is asked in the challenge tier."""

    THIRD_ANGLE, SWINGING, FOUND_ANGLE = range(3)


def _support(kind: int, row: int, corner: int) -> bool:
    match kind:
        case Why.SSS | Why.ANGLES:
            return corner == 0
        case Why.LEGS:
            return corner == 2
        case Why.RHS:
            return corner < 2
    return True


def _core(kind: int, row: int, corner: int, other: int) -> bool:
    if kind == Partner.SAS_ANGLE and _crowded(corner, other):
        return False
    if kind == Partner.SSS_ANGLE and TRIANGLES[row].angles[(corner + other) % 3] == 60:
        return False
    return (kind != Partner.SAS_SIDE or other == 0) and (row + kind + corner + other) % 3 != 0


def _crowded(corner: int, other: int) -> bool:
    """Tell whether two angles would be told at the narrow end, where there is no room."""
    return corner == 2 and other == 1


def _elsewhere(kind: int, row: int, corner: int, other: int) -> bool:
    # The other angles stand too close to a side, and so does the last row's.
    return kind == Why.ASA_MOVED or (corner == 1 and row < len(TRIANGLES) - 1)


def _challenge(kind: int, row: int, corner: int, other: int) -> bool:
    return other == 0 if kind == Hard.SWINGING else not _crowded(corner, other)


_WORDS = {
    "SSS": "three sides are equal",
    "SAS": "two sides and the angle between them are equal",
    "ASA": "two angles and a side across from equal angles are equal",
    "RHS": "the right angle, the hypotenuse and another side are equal",
}
_CONGRUENT = "The triangles are congruent."
_IN_CM = "The lengths are in centimetres."
_ASKED = "Which condition shows that the triangles are congruent: SSS, SAS, ASA, RHS or none?"


@register
class CongruentTriangles(Topic):
    """The condition named; a partner found, or parts moved; a third angle, or a swinging side."""

    id = "geometry.congruent-triangles"
    title = "Congruent triangles"
    statements = ("geometry.congruence",)
    misconceptions = m.MISTAKES
    prerequisites = ("geometry.angles-in-triangles",)
    spare = "sixteen triangles with room for their labels, each told in eleven ways in support"
    spaces = {
        Tier.SUPPORT: Space(_support, kind=range(6), row=_ROWS, corner=range(3)),
        Tier.CORE: Space(_core, kind=range(4), row=_ROWS, corner=range(3), other=range(2)).then(
            _elsewhere,
            kind=(Why.SAS_MOVED, Why.ASA_MOVED),
            row=_ROWS,
            corner=range(3),
            other=(0,),
        ),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(3), row=_ROWS, corner=range(3), other=range(2)
        ),
    }
    spaces = with_brief(spaces, TOLD)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return _named(*values)
        if tier is Tier.CORE:
            moved = values[0] in (Why.SAS_MOVED, Why.ASA_MOVED)
            return _moved(*values[:3]) if moved else _partner(*values)
        kind, *rest = values
        return (_third_angle, _swinging, _found_angle)[kind](*rest)


def _place(*numbers: int) -> int:
    """Return how a pair is lettered and turned, another way for most questions."""
    return sum(number * factor for number, factor in zip(numbers, (7, 11, 13, 17), strict=False))


def _twice(sizes: Sizes) -> tuple[Spots, Spots]:
    return spots(sizes), spots(sizes)


def _size(kind: str, sizes: Sizes, at: int) -> t.Node:
    return length(sizes.sides[at]) if kind == "side" else deg(sizes.angles[at])


def _partner(kind: int, row: int, corner: int, other: int) -> Draft:
    """Return the question for a side or an angle that the congruent partner tells."""
    sizes, rest = TRIANGLES[row], _others(corner)
    if kind in (Partner.SAS_SIDE, Partner.SAS_ANGLE):
        told, why = parts(sizes, rest, (corner,)), "SAS"
    elif kind == Partner.ASA_SIDE:
        told, why = parts(sizes, (corner,), rest), "ASA"
    else:
        told, why = parts(sizes, _ALL), "SSS"
    what = "side" if kind in (Partner.SAS_SIDE, Partner.ASA_SIDE) else "angle"
    at = {
        Partner.SAS_SIDE: corner,
        Partner.SAS_ANGLE: rest[other],
        Partner.ASA_SIDE: rest[other],
        Partner.SSS_ANGLE: (corner + other) % 3,
    }[kind]
    sizes_of = sizes.sides if what == "side" else sizes.angles
    more = told.more(what, at, sizes_of[at])
    if kind == Partner.ASA_SIDE:
        more = more.more("side", rest[1 - other], sizes.sides[rest[1 - other]])
    made = pair(more, told, _twice(sizes), _place(kind, row, corner, other))
    name = made.side(1, at) if what == "side" else made.names[1][at]
    partner = made.side(0, at) if what == "side" else made.names[0][at]
    asked = "length of" if what == "side" else "size of angle"
    key = _size(what, sizes, at)
    known = more.sides if what == "side" else more.angles
    # By the alphabet A goes with P, B with Q and C with R.
    in_order = sorted(made.names[0])[sorted(made.names[1]).index(made.names[1][at])]
    by_letters = made.names[0].index(in_order)
    wrongs: list[Wrong] = [
        (m.LETTERS_IN_ORDER, _size(what, sizes, by_letters) if by_letters in known else None)
    ]
    wrongs += [(m.HAS_A_PARTNER, _size(what, sizes, k)) for k in known if k not in (at, by_letters)]
    if kind == Partner.SAS_ANGLE:
        wrongs.append((m.ENDS_SWAPPED, deg(sizes.angles[rest[1 - other]])))
    if kind == Partner.SSS_ANGLE:
        wrongs += [(m.ANGLES_ALIKE, deg(60)), (m.LEFT_TO_180, deg(180 - sizes.angles[at]))]
    thing = "Angle " if what == "angle" else ""
    small = "angle " if what == "angle" else ""
    steps = (
        Step(f"The triangles are congruent by {why}: {_WORDS[why]}."),
        Step(f"{thing}{name} goes with {small}{partner}.", key),
    )
    lead = f"{_CONGRUENT} {_IN_CM} " if what == "side" else f"{_CONGRUENT} "
    text = prompt(f"{lead}Work out the {asked} {name}.")
    form = "quantity" if what == "angle" else "integer" if isinstance(key, t.Int) else "decimal"
    return _draft(made, text, key, form, steps, wrongs, ("partner", kind, row, corner, other))


def _named(kind: int, row: int, corner: int) -> Draft:
    """Return the question which condition shows that the triangles are congruent."""
    sizes, rest = TRIANGLES[row], _others(corner)
    place = _place(kind, row, corner)
    wrong: list[Wrong]
    match kind:
        case Why.SSS:
            told = parts(sizes, _ALL)
            key, say, wrong = (
                "SSS",
                "Three sides are told.",
                [
                    (m.NEEDS_AN_ANGLE, t.Label("none")),
                    (m.COUNTS_SIDES, t.Label("SAS")),
                ],
            )
        case Why.SAS:
            told = parts(sizes, rest, (corner,))
            key, say = "SAS", "Two sides are told, and the angle between them."
            wrong = [(m.MIXED_LETTERS, t.Label("ASA")), (m.ONLY_SSS, t.Label("none"))]
        case Why.ASA:
            told = parts(sizes, (corner,), rest)
            key, say = "ASA", "Two angles are told, and the side between them."
            wrong = [(m.MIXED_LETTERS, t.Label("SAS")), (m.ONLY_SSS, t.Label("none"))]
        case Why.RHS | Why.LEGS:
            return _of_right_angles(kind, row, corner, place)
        case _:
            told = parts(sizes, (), _ALL)
            key, say = "none", "Three angles are told: one triangle may be larger than the other."
            wrong = [(m.ANGLES_ARE_ENOUGH, t.Label("ASA")), (m.THREE_IS_SSS, t.Label("SSS"))]
    made = pair(told, told, _twice(sizes), place)
    return _condition(made, key, [say], wrong, (kind, row, corner))


def _of_right_angles(kind: int, row: int, corner: int, place: int) -> Draft:
    """Return the condition for right-angled triangles: by the hypotenuse, or by the two legs."""
    sides = RIGHT[row]
    told = Parts({k: sides[k] for k in ((0, 1) if kind == Why.LEGS else (corner, 2))}, {2: 90})
    at = right_spots(sides)
    # The side across from corner 0 goes up, and the one across from corner 1 along.
    made = pair(told, told, (at, at), place)
    only: Wrong = (m.ONLY_SSS, t.Label("none"))
    if kind == Why.LEGS:
        said = "Two sides are told, and the right angle between them."
        wrong: list[Wrong] = [(m.RIGHT_IS_RHS, t.Label("RHS")), only]
        return _condition(made, "SAS", [said], wrong, (kind, row, corner))
    said = "Right angle, hypotenuse and another side are told."
    wrong = [(m.ANY_ANGLE, t.Label("SAS")), only]
    return _condition(made, "RHS", [said], wrong, (kind, row, corner))


def _moved(kind: int, row: int, corner: int) -> Draft:
    """Return the question where the same sizes stand at other places of the second triangle."""
    sizes, rest, place = TRIANGLES[row], _others(corner), _place(kind, row, corner)
    if kind == Why.ASA_MOVED:
        first = parts(sizes, (corner,), rest)
        second = Parts({rest[0]: sizes.sides[corner]}, first.angles)
        made = pair(first, second, _twice(sizes), place)
        said = ["Two angles and a side are told of each."]
        said += ["The equal sides are across from unlike angles, so this is not ASA."]
        wrong: list[Wrong] = [(m.ANY_SIDE, t.Label("ASA")), (m.MIXED_LETTERS, t.Label("SAS"))]
    else:
        first = parts(sizes, rest, (corner,))
        short, long = rest
        second = Parts(
            {short: sizes.sides[short], long: sizes.sides[long]}, {long: sizes.angles[corner]}
        )
        shape = _by_far_angle(sizes.sides[long], sizes.sides[short], sizes.angles[corner])
        made = pair(first, second, (spots(sizes), _put(shape, long, short)), place)
        said = ["Two sides and an angle are told of each."]
        said += ["In the second the angle is not between the sides, so this is not SAS."]
        wrong = [(m.ANY_ANGLE, t.Label("SAS")), (m.MIXED_LETTERS, t.Label("ASA"))]
    return _condition(made, "none", said, wrong, (kind, row, corner))


def _by_far_angle(across: int, beside: int, angle: int) -> Spots:
    """Return corners: of an angle, of the end of the side beside it, and of the third one."""
    turn = math.radians(angle)
    far = beside * math.cos(turn) + math.sqrt(across**2 - (beside * math.sin(turn)) ** 2)
    return (
        (0, 0),
        (round(beside * 50 * math.sin(turn)), round(beside * 50 * math.cos(turn))),
        (0, round(far * 50)),
    )


def _put(shape: Spots, at: int, across_beside: int) -> Spots:
    """Return corners in order: the angle's at `at`; the side beside it is across from the other."""
    (third,) = _ALL - {at, across_beside}
    found = {at: shape[0], third: shape[1], across_beside: shape[2]}
    return tuple(found[k] for k in range(3))


def _third_angle(row: int, corner: int, other: int) -> Draft:
    """Return the condition where each triangle tells two angles, and not the same two."""
    sizes, rest = TRIANGLES[row], _others(corner)
    first = parts(sizes, (corner,), rest)
    kept = rest[other]
    second = parts(sizes, (corner,), (corner, kept))
    place = _place(row, corner, other)
    made = pair(first, second, _twice(sizes), place)
    lost = rest[1 - other]
    line = _third(sizes, corner, kept, lost)
    steps = [
        Step("Find the third angle of the second triangle.", line),
        Step(f"ASA: {_WORDS['ASA']}.", t.Label("ASA")),
    ]
    return _draft(
        made,
        _asked(made),
        t.Label("ASA"),
        "name",
        tuple(steps),
        [(m.NO_THIRD_ANGLE, t.Label("none")), (m.MIXED_LETTERS, t.Label("SAS"))],
        ("third angle", row, corner, other),
    )


def _third(sizes: Sizes, first: int, second: int, third: int) -> t.Node:
    a, b, c = (deg(sizes.angles[k]) for k in (first, second, third))
    return t.equals(t.sub(deg(180), a, b), c)


def _swinging(row: int, corner: int, other: int) -> Draft:
    """Return the question where the angle is not between the sides, in both triangles."""
    sizes = TRIANGLES[row]
    short, long = ((0, 1), (0, 2), (1, 2))[corner]
    told = parts(sizes, (short, long), (short,))
    made = pair(told, told, _twice(sizes), _place(row, corner))
    said = [
        "Two sides are told, and an angle that is not between them.",
        "The shorter side can swing to another place, so two triangles are like that.",
    ]
    wrong: list[Wrong] = [(m.ANY_ANGLE, t.Label("SAS")), (m.MIXED_LETTERS, t.Label("ASA"))]
    return _condition(made, "none", said, wrong, ("swings", row, corner))


def _found_angle(row: int, corner: int, other: int) -> Draft:
    """Return the question for an angle by the partner of another one, and the sum of angles."""
    sizes, rest = TRIANGLES[row], _others(corner)
    told = parts(sizes, rest, (corner,))
    known, wanted = rest[other], rest[1 - other]
    more = told.more("angle", known, sizes.angles[known])
    made = pair(more, told, _twice(sizes), _place(row, corner, other))
    name, key = made.names[1][wanted], deg(sizes.angles[wanted])
    steps = (
        Step(f"The triangles are congruent by SAS: {_WORDS['SAS']}."),
        Step(
            f"Angle {made.names[1][known]} goes with angle {made.names[0][known]}: "
            f"{sizes.angles[known]}°."
        ),
        Step("The angles of a triangle come to 180°.", _third(sizes, corner, known, wanted)),
    )
    wrongs: list[Wrong] = [
        (m.STOPS_AT_PARTNER, deg(sizes.angles[known])),
        (m.HAS_A_PARTNER, deg(sizes.angles[corner])),
        (m.ADDS_AND_STOPS, deg(sizes.angles[known] + sizes.angles[corner])),
    ]
    text = prompt(f"{_CONGRUENT} Work out the size of angle {name}.")
    return _draft(
        made, text, key, "quantity", steps, wrongs, ("found angle", row, corner, other), (180,)
    )


def _asked(made: Pair) -> tuple[str | t.Node, ...]:
    return prompt(f"{_IN_CM} {_ASKED}" if made.figure.first.sides else _ASKED)


def _condition(
    made: Pair, key: str, said: list[str], wrongs: list[Wrong], twin: tuple[object, ...]
) -> Draft:
    *before, last = said
    steps = (*map(Step, before), Step(last, t.Label(key)))
    return _draft(made, _asked(made), t.Label(key), "name", steps, wrongs, ("condition", *twin))


def _draft(
    made: Pair,
    text: tuple[str | t.Node, ...],
    key: t.Node,
    form: str,
    steps: tuple[Step, ...],
    wrongs: list[Wrong],
    twin: tuple[object, ...],
    constants: tuple[int, ...] = (),
) -> Draft:
    return Draft(
        text,
        of_figure(made.figure, text),
        key,
        form,
        steps,
        slips(*wrongs, key=key),
        twin,
        figure=made.figure,
        constants=constants,
    )
