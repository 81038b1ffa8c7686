"""Reflections of points without a picture: in the axes, in other lines, and mirrors to find."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.transformations._points import U, V, found_point, opposite, signed, told
from generators.transformations._reflect_mistakes import (
    BOTH_AXES,
    CHANGED_LINE,
    IN_AXIS,
    ON_THE_LINE,
    OTHER_AXIS,
)
from generators.transformations._shapes import pair
from itembank.items.asks.of_subject import Subject
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

X, Y = t.Sym("x"), t.Sym("y")
_IMAGE = (
    "What is the image of {p} after a reflection in {m}?",
    "The point {p} is reflected in {m}. Where is its image?",
)
_BEFORE = "After a reflection in {m}, a point is at {p}. Where was it before?"
_MIRROR = (
    "A reflection takes {p} to {q}. Write the equation of the mirror line.",
    "{q} is the mirror image of {p}. What is the equation of the mirror line?",
)


def _in_axis(what: int, way: int, x: int, y: int) -> bool:
    """Keep points off the axes whose coordinates differ in more than sign."""
    once = way < 2 or (x + y) % 3 == 0
    return 0 not in (x, y) and abs(x) != abs(y) and once and (x + 2 * y + way + what) % 2 == 0


def _in_level(what: int, k: int, x: int, y: int) -> bool:
    """Keep points off the mirror, where the wrong ways give other points."""
    if k == 0 or (x + 2 * y + 3 * k + what) % 13:
        return False
    at = (x, y)
    ends = {
        *(_image(what, k, at), _image(what, 0, at), _image(1 - what, k, at)),
        (k, y) if what == 0 else (x, k),
    }
    return 0 not in at and len(ends) == 4 and at not in ends


def _in_slope(falling: int, x: int, y: int) -> bool:
    """Keep points that y = x, y = −x and both axes take to different points."""
    return 0 not in (x, y) and abs(x) != abs(y) and (x + 2 * y + falling) % 5 == 0


def _halfway(what: int, x: int, y: int, far: int) -> bool:
    """Keep mirrors that are no axis, also those halfway between squares."""
    middle = Fraction(2 * (x, y)[what] + far, 2)
    return (
        far != 0
        and abs(far) > 1
        and middle not in (0, far, Fraction(far, 2))
        and 0 not in (x, y)
        and (x + 2 * y + far + what) % 11 == 0
    )


def _image(what: int, k: int, at: tuple[int, int]) -> tuple[int, int]:
    x, y = at
    return (2 * k - x, y) if what == 0 else (x, 2 * k - y)


def _axis(topic: Topic, tier: Tier, what: int, way: int, x: int, y: int) -> Draft:
    """Return a reflection in the y-axis (0) or the x-axis (1), on or back."""
    key = _image(what, 0, (x, y))
    stays, turns = (V, U)[what], (U, V)[what]
    value = (x, y)[what]
    letter, other = "xy"[what], "yx"[what]
    steps = (
        Step(
            f"In the {other}-axis the {other}-coordinate stays, and the {letter}-coordinate "
            "changes its sign.",
            pair(*key),
        ),
    )
    return found_point(
        (_BEFORE if way == 2 else _IMAGE[way]).replace("{m}", "the {l}-axis"),
        {"p": pair(x, y), "l": t.Sym(other)},
        (
            # As far on the other side: the mirror is halfway, at nought.
            t.equals(t.add(turns, signed(value)), t.Int(0)),
            t.equals(stays, t.num((y, x)[what])),
        ),
        key,
        steps,
        slips((OTHER_AXIS, pair(*_image(1 - what, 0, (x, y)))), (BOTH_AXES, pair(-x, -y))),
        ("told axis", what, way, x, y),
        (0,),
    )


def _level(topic: Topic, tier: Tier, what: int, k: int, x: int, y: int) -> Draft:
    """Return a reflection in x = k (0) or y = k (1)."""
    at = (x, y)
    key = _image(what, k, at)
    stays, turns = (V, U)[what], (U, V)[what]
    value, letter = at[what], "xy"[what]
    steps = (
        Step(
            f"The mirror is {'upright' if what == 0 else 'level'}. How far is the point from it?",
            t.equals(t.sub(t.num(max(k, value)), signed(min(k, value))), t.Int(abs(k - value))),
        ),
        Step(
            f"Go as far to the other side: the {letter}-coordinate changes.",
            t.equals(_on(k, k - value), t.num(key[what])),
        ),
        Step(f"The {'yx'[what]}-coordinate stays.", pair(*key)),
    )
    return found_point(
        by_turns(_IMAGE, x + y + k).replace("{m}", "the line {l}"),
        {"p": pair(x, y), "l": t.equals((X, Y)[what], t.num(k))},
        (
            t.equals(t.Frac(t.add(t.num(value), turns), t.Int(2)), t.num(k)),
            t.equals(stays, t.num((y, x)[what])),
        ),
        key,
        steps,
        slips(
            (IN_AXIS, pair(*_image(what, 0, at))),
            (CHANGED_LINE, pair(*_image(1 - what, k, at))),
            (ON_THE_LINE, pair(*((k, y) if what == 0 else (x, k)))),
        ),
        ("told level", what, k, x, y),
        (2,),
    )


def _on(start: int, by: int) -> t.Node:
    return t.add(t.num(start), t.Int(by)) if by > 0 else t.sub(t.num(start), t.Int(-by))


def _slope(topic: Topic, tier: Tier, falling: int, x: int, y: int) -> Draft:
    """Return a reflection in y = x, or in y = −x."""
    key = (-y, -x) if falling else (y, x)
    mirror = t.equals(Y, t.Neg(X) if falling else X)
    says = f"In the line {'y = −x' if falling else 'y = x'} the coordinates change places"
    says += " and signs." if falling else "."
    values = (opposite(y), opposite(x)) if falling else (t.num(y), t.num(x))
    return found_point(
        by_turns(_IMAGE, x + y).replace("{m}", "the line {l}"),
        {"p": pair(x, y), "l": mirror},
        (t.equals(U, values[0]), t.equals(V, values[1])),
        key,
        (Step(f"The point is {told((x, y))}."), Step(says, pair(*key))),
        slips((OTHER_AXIS, pair(x, -y)), (BOTH_AXES, pair(-x, -y))),
        ("told slope", falling, x, y),
    )


def _mirror(topic: Topic, tier: Tier, what: int, x: int, y: int, far: int) -> Draft:
    """Return the mirror line between a point and its image."""
    first = (x, y)
    last = (x + far, y) if what == 0 else (x, y + far)
    start, end = first[what], last[what]
    middle = Fraction(start + end, 2)
    letter, other = ((X, Y), (Y, X))[what]
    half = t.Frac(t.add(t.num(start), signed(end)), t.Int(2))
    key = t.equals(letter, decimal_node(middle))
    return Draft(
        prompt(by_turns(_MIRROR, x + y + far), p=pair(*first), q=pair(*last)),
        Subject(t.equals(letter, half), letter),
        key,
        "subject",
        (
            Step(
                f"The mirror lies halfway: add the two {'xy'[what]}-coordinates and halve.",
                t.equals(half, decimal_node(middle)),
            ),
            Step(f"It is {'an upright' if what == 0 else 'a level'} line.", key),
        ),
        slips(
            (CHANGED_LINE, t.equals(other, decimal_node(middle))),
            (IN_AXIS, t.equals(letter, t.Int(0))),
        ),
        ("told mirror", what, x, y, far),
        constants=(2,),
    )


def with_points(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of reflections with points told by their coordinates at their ends."""
    near = range(-6, 7)
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _axis, _in_axis, what=range(2), way=range(3), x=near, y=near
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _level, _in_level, what=range(2), k=range(-4, 6), x=near, y=near
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE]
        .also(_slope, _in_slope, falling=range(2), x=range(-8, 9), y=range(-8, 9))
        .also(_mirror, _halfway, what=range(2), x=range(-4, 6), y=range(-4, 6), far=range(-9, 10)),
    }
