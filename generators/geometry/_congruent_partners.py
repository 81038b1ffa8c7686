"""A side or an angle of a triangle, told by its partner in a congruent one."""

from __future__ import annotations

from generators.geometry import _congruent_mistakes as m
from generators.geometry._angles import deg
from generators.geometry._congruent_drawn import TRIANGLES, Sizes, length, pair, parts
from generators.geometry._congruent_questions import (
    ALL,
    CONGRUENT,
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


class Partner:
    """What makes the triangles congruent, and which kind of partner is asked for."""

    SAS_SIDE, SAS_ANGLE, ASA_SIDE, SSS_ANGLE = range(4)


def size(kind: str, sizes: Sizes, at: int) -> t.Node:
    return length(sizes.sides[at]) if kind == "side" else deg(sizes.angles[at])


def partner(kind: int, row: int, corner: int, other: int) -> Draft:
    """Return the question for a side or an angle that the congruent partner tells."""
    sizes, rest = TRIANGLES[row], others(corner)
    if kind in (Partner.SAS_SIDE, Partner.SAS_ANGLE):
        told, why = parts(sizes, rest, (corner,)), "SAS"
    elif kind == Partner.ASA_SIDE:
        told, why = parts(sizes, (corner,), rest), "ASA"
    else:
        told, why = parts(sizes, ALL), "SSS"
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
    made = pair(more, told, twice(sizes), place_of(kind, row, corner, other))
    name = made.side(1, at) if what == "side" else made.names[1][at]
    other_name = made.side(0, at) if what == "side" else made.names[0][at]
    asked = "length of" if what == "side" else "size of angle"
    key = size(what, sizes, at)
    known = more.sides if what == "side" else more.angles
    # By the alphabet A goes with P, B with Q and C with R.
    in_order = sorted(made.names[0])[sorted(made.names[1]).index(made.names[1][at])]
    by_letters = made.names[0].index(in_order)
    wrongs: list[Wrong] = [
        (m.LETTERS_IN_ORDER, size(what, sizes, by_letters) if by_letters in known else None)
    ]
    wrongs += [(m.HAS_A_PARTNER, size(what, sizes, k)) for k in known if k not in (at, by_letters)]
    if kind == Partner.SAS_ANGLE:
        wrongs.append((m.ENDS_SWAPPED, deg(sizes.angles[rest[1 - other]])))
    if kind == Partner.SSS_ANGLE:
        wrongs += [(m.ANGLES_ALIKE, deg(60)), (m.LEFT_TO_180, deg(180 - sizes.angles[at]))]
    thing = "Angle " if what == "angle" else ""
    small = "angle " if what == "angle" else ""
    steps = (
        Step(f"The triangles are congruent by {why}: {WORDS[why]}."),
        Step(f"{thing}{name} goes with {small}{other_name}.", key),
    )
    lead = f"{CONGRUENT} {IN_CM} " if what == "side" else f"{CONGRUENT} "
    text = prompt(f"{lead}Work out the {asked} {name}.")
    form = "quantity" if what == "angle" else "integer" if isinstance(key, t.Int) else "decimal"
    return draft(made, text, key, form, steps, wrongs, ("partner", kind, row, corner, other))


def found_angle(row: int, corner: int, other: int) -> Draft:
    """Return the question for an angle by the partner of another one, and the sum of angles."""
    sizes, rest = TRIANGLES[row], others(corner)
    told = parts(sizes, rest, (corner,))
    known, wanted = rest[other], rest[1 - other]
    more = told.more("angle", known, sizes.angles[known])
    made = pair(more, told, twice(sizes), place_of(row, corner, other))
    name, key = made.names[1][wanted], deg(sizes.angles[wanted])
    steps = (
        Step(f"The triangles are congruent by SAS: {WORDS['SAS']}."),
        Step(
            f"Angle {made.names[1][known]} goes with angle {made.names[0][known]}: "
            f"{sizes.angles[known]}°."
        ),
        Step(
            "The angles of a triangle come to 180°.", third_angle_line(sizes, corner, known, wanted)
        ),
    )
    wrongs: list[Wrong] = [
        (m.STOPS_AT_PARTNER, deg(sizes.angles[known])),
        (m.HAS_A_PARTNER, deg(sizes.angles[corner])),
        (m.ADDS_AND_STOPS, deg(sizes.angles[known] + sizes.angles[corner])),
    ]
    text = prompt(f"{CONGRUENT} Work out the size of angle {name}.")
    return draft(
        made, text, key, "quantity", steps, wrongs, ("found angle", row, corner, other), (180,)
    )
