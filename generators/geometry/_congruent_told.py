"""Short questions about congruent triangles in words: partners by the order of letters, and sums.

Triangles that are *congruent in this order* have their corners paired first with first, second
with second and third with third. The alphabet pairs them otherwise, so the order has to be read.
"""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _congruent_mistakes as m
from generators.geometry import _misconceptions as angles
from generators.geometry._angle_drafts import valued
from generators.geometry._angles import deg
from generators.geometry._area_drafts import shortened
from generators.geometry._areas import length
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

_LETTERS = (("ABC", "PQR"), ("ABC", "DEF"), ("KLM", "XYZ"), ("DEF", "RST"))
_ORDERS = ((0, 2, 1), (2, 1, 0), (1, 0, 2), (1, 2, 0), (2, 0, 1))
"""Orders of the second triangle's letters: which of them goes with each corner of the first."""
_SIDES = ((4, 6, 7), (4, 7, 9), (5, 6, 9), (6, 8, 11), (7, 9, 13), (8, 9, 13), (6, 10, 13))
_TOLD = ((5, 7), (6, 9), (8, 11), (7, 12), (9, 13), (10, 14))
_SUM = "The angles of a triangle add up to 180°."


def _names(order: int, *numbers: int) -> tuple[str, str]:
    """Return the letters of both triangles: each corner's partner stands at its place."""
    first, second = by_turns(_LETTERS, order + sum(numbers))
    return first, "".join(second[at] for at in _ORDERS[order])


def _side(name: str, across: int) -> str:
    """Return the name of the side across from a corner."""
    return "".join(sorted(name[:across] + name[across + 1 :]))


def _in_order(first: str, second: str) -> str:
    return f"Triangles {first} and {second} are congruent in this order."


def _partner_moves(order: int, corner: int, turned: int, sizes: int) -> bool:
    """Keep those where the alphabet gives another partner, and half of them."""
    return _ORDERS[order][corner] != corner and (order + corner + turned + sizes) % 2 == 0


def _partner(topic: Topic, tier: Tier, order: int, corner: int, turned: int, sizes: int) -> Draft:
    first, second = _names(order, corner, sizes)
    # By the alphabet the side across from the other corner would be the partner.
    other = _ORDERS[order][corner]
    right, wrong = _TOLD[sizes] if turned else reversed(_TOLD[sizes])
    size = {corner: right, other: wrong}
    shown = {across: length(size[across], "cm") for across in size}
    early, late = sorted(size, key=lambda across: _side(first, across))
    mine, asked = _side(first, corner), _side(second, corner)
    added = corner if (order + sizes) % 2 else other
    both = t.add(shown[added], shown[corner])
    key = length(size[added] + right, "cm")
    return told(
        f"{_in_order(first, second)} {_side(first, early)} = {{a}} and "
        f"{_side(first, late)} = {{b}}. What is {_side(first, added)} + {asked}?",
        both,
        key,
        "quantity",
        [(f"By the order of the letters {asked} goes with {mine}.", t.equals(both, key))],
        [(m.LETTERS_IN_ORDER, size[added] + wrong), (m.PARTNER_ALONE, right)],
        ("partner told", order, corner, turned, sizes),
        a=shown[early],
        b=shown[late],
    )


def _sides_keep(sides: int, more: int, scale: int) -> bool:
    return (sides + more + scale) % 2 == 0


def _three(sides: int, more: int, scale: int) -> tuple[int, int, int]:
    """Return the sides of a triangle that is far from flat."""
    a, b, c = (scale * side for side in _SIDES[sides])
    return a + more, b + more, c + more


def _perimeter(topic: Topic, tier: Tier, sides: int, more: int, scale: int) -> Draft:
    a, b, c = _three(sides, more, scale)
    parts = [length(side, "cm") for side in (b, a, c)]
    key = length(a + b + c, "cm")
    return told(
        "A triangle has sides of {a}, {b} and {c}. What is the perimeter of a congruent triangle?",
        t.add(*parts),
        key,
        "quantity",
        [("A congruent triangle has the same sides. Add them.", t.equals(t.add(*parts), key))],
        [(m.BOTH_TOGETHER, 2 * (a + b + c)), (m.SIDE_LEFT_OUT, a + b)],
        ("perimeter told", a, b, c),
        (),
        **dict(zip("abc", parts, strict=True)),
    )


def _third_side(topic: Topic, tier: Tier, sides: int, more: int, scale: int) -> Draft:
    a, c, b = _three(sides, more, scale)
    around, first, second = (length(size, "cm") for size in (a + b + c, b, a))
    both, key = length(a + b, "cm"), length(c, "cm")
    return told(
        "A triangle of perimeter {p} is congruent to one with sides of {a} and {b}. "
        "Find the third side.",
        t.sub(around, first, second),
        key,
        "quantity",
        [
            ("Congruent triangles have the same sides. Add those told.", _sum(first, second, both)),
            ("The rest of the perimeter is the third side.", t.equals(t.sub(around, both), key)),
        ],
        [(m.SIDES_ADDED_ONLY, a + b), (m.ONE_SIDE_TAKEN, a + c)],
        ("third side told", a, b, c),
        p=around,
        a=first,
        b=second,
    )


def _sum(a: t.Node, b: t.Node, total: t.Node) -> t.Node:
    return t.equals(t.add(a, b), total)


def _angles_keep(order: int, corner: int, other: int, a: int, b: int) -> bool:
    key = 180 - a - b
    return corner != other and (order + corner + other + a + b) % 3 == 0 and key not in (a, b)


def _third_angle(
    topic: Topic, tier: Tier, order: int, corner: int, other: int, a: int, b: int
) -> Draft:
    first, second = _names(order, corner, other)
    last = 3 - corner - other
    by_letters = _ORDERS[order][other] == last
    wrong: list[Wrong] = [(m.ADDS_AND_STOPS, a + b)]
    # By the alphabet the angle of the second triangle would be the one that is asked for.
    wrong.append((m.LETTERS_IN_ORDER if by_letters else m.STOPS_AT_PARTNER, b))
    known, partner, added, key = (deg(size) for size in (a, b, a + b, 180 - a - b))
    paired = f"Angle {first[other]} is as large as its partner, angle {second[other]}. Add."
    return told(
        f"{_in_order(first, second)} Angle {first[corner]} = {{a}}, angle {second[other]} = {{b}}. "
        f"Find angle {first[last]}.",
        t.sub(deg(180), known, partner),
        key,
        "quantity",
        [
            (paired, _sum(known, partner, added)),
            (_SUM, t.equals(t.sub(deg(180), added), key)),
        ],
        wrong,
        ("third angle told", order, corner, other, a, b),
        (180,),
        a=known,
        b=partner,
    )


def _letter_keep(order: int, corner: int, a: int, c: int, x: int) -> bool:
    b = 180 - (a + c) * x
    return (
        a != c
        and a + c != 7  # leaving the number out would give no short decimal
        and 25 <= b < 110
        and b not in (a * x, c * x, x)
        and (order + corner + a + c + x) % 12 == 0
    )


def _letter(topic: Topic, tier: Tier, order: int, corner: int, a: int, c: int, x: int) -> Draft:
    first, second = _names(order, corner, a, x)
    p, q = sorted(set(second) - {second[corner]})
    b = 180 - (a + c) * x
    return valued(
        f"{_in_order(first, second)} Angles {first[corner]}, {p} and {q} are "
        "{a}, {b} and {c}. What is {x}?",
        "The partners of the three are all the angles of a triangle: 180°.",
        ((a, 0), (c, 0), (0, b)),
        x,
        [
            (angles.NUMBERS_LEFT_OUT, shortened(Fraction(180, a + c))),
            (angles.ANGLE_NOT_LETTER, c * x),
            (angles.NUMBERS_WRONG_WAY, shortened(Fraction(180 + b, a + c))),
        ],
    )


_BOTH = {"order": range(len(_ORDERS)), "corner": range(3)}
_LENGTHS = {"sides": range(len(_SIDES)), "more": range(3), "scale": (1, 2, 3)}
TOLD = {
    Tier.SUPPORT: (
        Brief(_partner, _partner_moves, {**_BOTH, "turned": (0, 1), "sizes": range(len(_TOLD))}),
        Brief(_perimeter, _sides_keep, _LENGTHS),
    ),
    Tier.CORE: (
        Brief(
            _third_angle,
            _angles_keep,
            {**_BOTH, "other": range(3), "a": (38, 52, 67), "b": (44, 71, 83)},
        ),
        Brief(_third_side, _sides_keep, _LENGTHS),
    ),
    Tier.CHALLENGE: (
        Brief(_letter, _letter_keep, {**_BOTH, "a": (2, 3, 4), "c": (2, 3, 5), "x": range(11, 31)}),
    ),
}
"""The short questions of each tier."""
