"""Which condition shows that two triangles are congruent, or that none does."""

from __future__ import annotations

import math

from generators.geometry import _congruent_mistakes as m
from generators.geometry._congruent_drawn import (
    RIGHT,
    TRIANGLES,
    Pair,
    Parts,
    Spots,
    pair,
    parts,
    right_spots,
    spots,
)
from generators.geometry._congruent_questions import (
    ALL,
    IN_CM,
    WORDS,
    draft,
    others,
    place_of,
    third_angle_line,
    twice,
)
from itembank.items.item import Draft, Step, prompt
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

_ASKED = "Which condition shows that the triangles are congruent: SSS, SAS, ASA, RHS or none?"


class Why:
    """Which condition holds, or why none does."""

    SSS, SAS, ASA, RHS, LEGS, ANGLES, SAS_MOVED, ASA_MOVED = range(8)


def named(kind: int, row: int, corner: int) -> Draft:
    """Return the question which condition shows that the triangles are congruent."""
    sizes, rest = TRIANGLES[row], others(corner)
    place = place_of(kind, row, corner)
    wrong: list[Wrong]
    match kind:
        case Why.SSS:
            told = parts(sizes, ALL)
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
            told = parts(sizes, (), ALL)
            key, say = "none", "Three angles are told: one triangle may be larger than the other."
            wrong = [(m.ANGLES_ARE_ENOUGH, t.Label("ASA")), (m.THREE_IS_SSS, t.Label("SSS"))]
    made = pair(told, told, twice(sizes), place)
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


def moved(kind: int, row: int, corner: int) -> Draft:
    """Return the question where the same sizes stand at other places of the second triangle."""
    sizes, rest, place = TRIANGLES[row], others(corner), place_of(kind, row, corner)
    if kind == Why.ASA_MOVED:
        first = parts(sizes, (corner,), rest)
        second = Parts({rest[0]: sizes.sides[corner]}, first.angles)
        made = pair(first, second, twice(sizes), place)
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
    (third,) = ALL - {at, across_beside}
    found = {at: shape[0], third: shape[1], across_beside: shape[2]}
    return tuple(found[k] for k in range(3))


def third_angle(row: int, corner: int, other: int) -> Draft:
    """Return the condition where each triangle tells two angles, and not the same two."""
    sizes, rest = TRIANGLES[row], others(corner)
    first = parts(sizes, (corner,), rest)
    kept = rest[other]
    second = parts(sizes, (corner,), (corner, kept))
    place = place_of(row, corner, other)
    made = pair(first, second, twice(sizes), place)
    lost = rest[1 - other]
    line = third_angle_line(sizes, corner, kept, lost)
    steps = [
        Step("Find the third angle of the second triangle.", line),
        Step(f"ASA: {WORDS['ASA']}.", t.Label("ASA")),
    ]
    return draft(
        made,
        _asked(made),
        t.Label("ASA"),
        "name",
        tuple(steps),
        [(m.NO_THIRD_ANGLE, t.Label("none")), (m.MIXED_LETTERS, t.Label("SAS"))],
        ("third angle", row, corner, other),
    )


def swinging(row: int, corner: int, other: int) -> Draft:
    """Return the question where the angle is not between the sides, in both triangles."""
    sizes = TRIANGLES[row]
    short, long = ((0, 1), (0, 2), (1, 2))[corner]
    told = parts(sizes, (short, long), (short,))
    made = pair(told, told, twice(sizes), place_of(row, corner))
    said = [
        "Two sides are told, and an angle that is not between them.",
        "The shorter side can swing to another place, so two triangles are like that.",
    ]
    wrong: list[Wrong] = [(m.ANY_ANGLE, t.Label("SAS")), (m.MIXED_LETTERS, t.Label("ASA"))]
    return _condition(made, "none", said, wrong, ("swings", row, corner))


def _asked(made: Pair) -> tuple[str | t.Node, ...]:
    return prompt(f"{IN_CM} {_ASKED}" if made.figure.first.sides else _ASKED)


def _condition(
    made: Pair, key: str, said: list[str], wrongs: list[Wrong], twin: tuple[object, ...]
) -> Draft:
    *before, last = said
    steps = (*map(Step, before), Step(last, t.Label(key)))
    return draft(made, _asked(made), t.Label(key), "name", steps, wrongs, ("condition", *twin))
