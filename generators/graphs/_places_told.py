"""Points told by their coordinates without a picture: beside others, corners and midpoints."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.graphs._grids import Spot, number, pair
from generators.graphs._lines import signed
from generators.graphs._misconceptions import SIGN_LOST, SWAPPED
from generators.graphs._place_mistakes import (
    HALF_THE_WAY,
    LEVEL,
    MIDDLE_AGAIN,
    NOT_HALVED,
    ONE_STEP,
    OTHER_ORDER,
    OTHER_WAY,
)
from itembank.items.item import Draft, Find, Slip, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import plural

_BESIDE = (
    "A is {p}. B is {a} {n} to the {w} of A and {u} {m} {h}. Where is B?",
    "From {p} go {a} {n} {w} and {u} {m} {h}. Where are you now?",
)
_CORNER = (
    "Three corners of a rectangle are {a}, {b} and {c}. Where is the fourth?",
    "{a}, {b} and {c} are corners of a rectangle. What is its fourth corner?",
)
_FOURTH = "ABCD is a parallelogram: A is {a}, B is {b} and C is {c}. Where is D?"
_MIDDLE = ("What is the midpoint of {a} and {b}?", "Which point is halfway between {a} and {b}?")
_END = "M is the midpoint of AB. A is {a} and M is {m}. Where is B?"


def _near(x: int, y: int, across: int, up: int) -> bool:
    """Keep places of the first quadrant, also with their coordinates swapped another place."""
    u, v = x + across, y + up
    apart = 0 not in (across, up) and min(u, v) > 0 and u != v
    return apart and len({(u, v), (v, u), (x - across, y - up)}) == 3 and (x + y + up) % 8 == 0


def _rectangle(x: int, y: int, wide: int, high: int, turn: int) -> bool:
    """Keep rectangles over more than one quadrant whose last corner has a minus."""
    last = _round(x, y, wide, high, turn)[3]
    u, v = last
    return (
        wide != high
        and 0 not in (x, y, x + wide, y + high)
        and u not in (v, -v)
        and min(last) < 0
        and (x + 2 * y + wide + high + turn) % 9 == 0
    )


def _round(x: int, y: int, wide: int, high: int, turn: int) -> list[Spot]:
    """Return the corners of a rectangle in order round it, from one of them."""
    corners = [(x, y), (x + wide, y), (x + wide, y + high), (x, y + high)]
    return corners[turn:] + corners[:turn]


def _slanted(x: int, y: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep slanted parallelograms, of whose wrong corners none is the right one."""
    mixed = 31 * x + 17 * y + 7 * a + 13 * b + 19 * c + 29 * d
    if mixed % 23 or 0 in (a, b, c, d) or abs(a * d - b * c) < 5:
        return False
    u, v = x + a + c, y + b + d
    last = (u, v)
    other = (x + c - a, y + d - b)
    level = (x + a, y + d)
    return u != v and len({last, other, level, (v, u), (x, y)}) == 5


def _whole_middle(a: int, b: int, c: int, d: int) -> bool:
    sums = (a + c, b + d)
    apart = a != c and b != d and sums[0] != sums[1]
    near = (abs(a - c), abs(b - d)) not in (sums, sums[::-1])
    return apart and near and sums[0] % 2 == 0 == sums[1] % 2 and (a + 2 * b + 3 * c + d) % 7 == 0


def _far_end(a: int, b: int, x: int, y: int) -> bool:
    far, high = 2 * x - a, 2 * y - b
    ends = {(far, high), (a, b), (x, y), (x - a, y - b), (high, far)}
    apart = len(ends) == 5 and x != a and y != b and 0 not in (far, high, a, b, x, y)
    return apart and min(a, b, x, y) < 0 and (a + 2 * b + 3 * x + 5 * y) % 17 == 0


def _beside(topic: Topic, tier: Tier, x: int, y: int, across: int, up: int) -> Draft:
    """Return where a place is that lies beside another."""
    wide, high = abs(across), abs(up)
    key = (x + across, y + up)
    along = t.add(t.num(x), t.Int(wide)) if across > 0 else t.sub(t.num(x), t.Int(wide))
    above = t.add(t.num(y), t.Int(high)) if up > 0 else t.sub(t.num(y), t.Int(high))
    return Draft(
        prompt(
            by_turns(_BESIDE, x + y + across)
            .replace("{w}", "right" if across > 0 else "left")
            .replace("{h}", "up" if up > 0 else "down")
            .replace("{n}", plural(wide, "square"))
            .replace("{m}", plural(high, "square")),
            p=pair(x, y),
            a=t.Int(wide),
            u=t.Int(high),
        ),
        Find(t.pair(along, above)),
        pair(*key),
        "point",
        (
            Step("The first number says how far along.", t.equals(along, t.num(key[0]))),
            Step("The second says how far up.", t.equals(above, t.num(key[1]))),
        ),
        slips((SWAPPED, pair(key[1], key[0])), (OTHER_WAY, pair(x - across, y - up))),
        ("told beside", x, y, across, up),
    )


def _rectangle_told(
    topic: Topic, tier: Tier, x: int, y: int, wide: int, high: int, turn: int
) -> Draft:
    """Return the fourth corner of a rectangle with level and upright sides."""
    first, second, third, last = _round(x, y, wide, high, turn)
    return _corner(
        by_turns(_CORNER, x + y + wide),
        (first, second, third),
        last,
        (
            Step("Two corners have one x-coordinate, and two the other."),
            Step("It is so with the y-coordinates: take those that are there once.", pair(*last)),
        ),
        slips(
            (SWAPPED, pair(last[1], last[0])),
            (SIGN_LOST, pair(abs(last[0]), abs(last[1]))),
        ),
        ("told rectangle", x, y, wide, high, turn),
    )


def _parallelogram_told(
    topic: Topic, tier: Tier, x: int, y: int, a: int, b: int, c: int, d: int
) -> Draft:
    """Return the fourth corner of a slanted parallelogram; B is at (x, y)."""
    first, second, third = (x + a, y + b), (x, y), (x + c, y + d)
    last = (x + a + c, y + b + d)
    return _corner(
        _FOURTH,
        (first, second, third),
        last,
        (
            Step(f"From B to A it is {_way(a, b)}."),
            Step("From C to D it is as far, the same way.", pair(*last)),
        ),
        slips(
            (OTHER_ORDER, pair(x + c - a, y + d - b)),
            (SWAPPED, pair(last[1], last[0])),
            (LEVEL, pair(x + a, y + d)),
        ),
        ("told parallelogram", x, y, a, b, c, d),
    )


def _way(across: int, up: int) -> str:
    return (
        f"{abs(across)} {'right' if across > 0 else 'left'} and "
        f"{abs(up)} {'up' if up > 0 else 'down'}"
    )


def _corner(
    text: str,
    corners: tuple[Spot, Spot, Spot],
    last: Spot,
    steps: tuple[Step, ...],
    wrong: tuple[Slip, ...],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question for the fourth corner D: its diagonals AC and BD halve each other."""
    a, b, c = corners
    target = t.pair(
        *(t.sub(t.add(t.num(u), signed(w)), signed(v)) for u, v, w in zip(a, b, c, strict=True))
    )
    return Draft(
        prompt(text, a=pair(*a), b=pair(*b), c=pair(*c)),
        Find(target),
        pair(*last),
        "point",
        steps,
        wrong,
        twin,
    )


def _middle(topic: Topic, tier: Tier, a: int, b: int, c: int, d: int) -> Draft:
    """Return the midpoint of two points."""
    halves = [t.Frac(t.add(t.num(u), signed(v)), t.Int(2)) for u, v in ((a, c), (b, d))]
    values = (Fraction(a + c, 2), Fraction(b + d, 2))
    key = pair(*values)
    return Draft(
        prompt(by_turns(_MIDDLE, a + b), a=pair(a, b), b=pair(c, d)),
        Find(t.pair(*halves)),
        key,
        "point",
        tuple(
            Step(f"Add the {letter}-coordinates and halve.", t.equals(half, number(value)))
            for letter, half, value in zip("xy", halves, values, strict=True)
        ),
        slips(
            (SWAPPED, pair(values[1], values[0])),
            (HALF_THE_WAY, pair(Fraction(abs(a - c), 2), Fraction(abs(b - d), 2))),
            (NOT_HALVED, pair(a + c, b + d)),
            key=key,
        ),
        ("told middle", a, b, c, d),
        constants=(2,),
    )


def _other_end(topic: Topic, tier: Tier, a: int, b: int, x: int, y: int) -> Draft:
    """Return the other end of a segment from one end and its midpoint."""
    far, high = 2 * x - a, 2 * y - b
    letters = (t.Sym("u"), t.Sym("v"))
    key = pair(far, high)
    return Draft(
        prompt(_END, a=pair(a, b), m=pair(x, y)),
        Find(
            t.pair(*letters),
            tuple(
                t.equals(t.Frac(t.add(t.num(end), letter), t.Int(2)), t.num(middle))
                for end, letter, middle in zip((a, b), letters, (x, y), strict=True)
            ),
        ),
        key,
        "point",
        (
            Step("From A to M, how far along?", t.equals(t.sub(t.num(x), signed(a)), t.num(x - a))),
            Step("And how far up?", t.equals(t.sub(t.num(y), signed(b)), t.num(y - b))),
            Step("Go as far again from M to B.", key),
        ),
        slips(
            (MIDDLE_AGAIN, pair(Fraction(a + x, 2), Fraction(b + y, 2))),
            (ONE_STEP, pair(x - a, y - b)),
            (SWAPPED, pair(high, far)),
            key=key,
        ),
        ("told end", a, b, x, y),
        constants=(2,),
    )


def with_places(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of coordinates with points told in words at their ends."""
    size = (1, 2, 3, -1, -2, 4)
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _beside, _near, x=range(1, 8), y=range(1, 8), across=range(-4, 5), up=range(-4, 5)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _rectangle_told,
            _rectangle,
            x=range(-5, 4),
            y=range(-5, 4),
            wide=range(2, 8),
            high=range(2, 7),
            turn=range(4),
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _parallelogram_told,
            _slanted,
            x=range(-3, 4),
            y=range(-3, 4),
            a=(-3, -2, 1, 2),
            b=(1, 2, 3, -1),
            c=size,
            d=size,
        ),
    }


def with_middles(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of midpoints with points told in few words at their ends."""
    return {
        **spaces,
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _middle, _whole_middle, a=range(1, 9), b=range(1, 9), c=range(3, 13), d=range(2, 12)
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _other_end, _far_end, a=range(-6, 10), b=range(-6, 8), x=range(-5, 7), y=range(-5, 6)
        ),
    }
