"""Where points lie, told by coordinates: halfway, as far from two points, on a circle."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.geometry._loci_mistakes import ADDS_WAYS, CIRCLE, HALF_GAP, LONGER_WAY, ON_LINE
from generators.graphs._grids import number, pair
from generators.graphs._lines import signed
from itembank.items.asks.of_subject import Subject
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_AXIS = "Which point of the {l}-axis is as far from {a} as from {b}?"
_LINE = (
    "The points as far from {a} as from {b} make a line. What is its equation?",
    "What is the equation of the line of all points as far from {a} as from {b}?",
)
_RADIUS = (
    "A circle with centre {a} goes through {b}. What is its radius?",
    "How far is {b} from {a}?",
)
_TRIPLES = ((3, 4, 5), (6, 8, 10), (5, 12, 13), (8, 15, 17))


def _on_axis(what: int, a: int, b: int) -> bool:
    middle, half = Fraction(a + b, 2), Fraction(b - a, 2)
    whole = middle.denominator == 1
    return whole and b - a > 1 and len({middle, half, Fraction(2 * a - b)}) == 3 and a + b != 0


def _fold(what: int, a: int, b: int, side: int) -> bool:
    middle, half = Fraction(a + b, 2), Fraction(b - a, 2)
    apart = middle not in (half, 0, side) and b - a > 1 and side != 0
    return apart and (a + 2 * b + 3 * side + what) % 11 == 0


def _through(which: int, turned: int, right: int, up: int, x: int, y: int) -> bool:
    return (which + turned + x + 2 * y + right + 3 * up) % 13 == 0 and (x, y) != (0, 0)


def _point(topic: Topic, tier: Tier, what: int, a: int, b: int) -> Draft:
    """Return the point of an axis that is halfway between two of its points."""
    half = t.Frac(t.add(t.num(a), signed(b)), t.Int(2))
    middle = (a + b) // 2

    def placed(value: int) -> t.Listing:
        return pair(0, value) if what else pair(value, 0)

    target = t.pair(t.Int(0), half) if what else t.pair(half, t.Int(0))
    key = placed(middle)
    return Draft(
        prompt(_AXIS, l=t.Sym("xy"[what]), a=placed(a), b=placed(b)),
        Find(target),
        key,
        "point",
        (
            Step("It is halfway: add the two and halve.", t.equals(half, t.num(middle))),
            Step(f"It is on the {'xy'[what]}-axis.", key),
        ),
        slips((CIRCLE, placed(2 * a - b)), (HALF_GAP, placed((b - a) // 2))),
        ("told axis", what, a, b),
        constants=(2,),
    )


def _equation(topic: Topic, tier: Tier, what: int, a: int, b: int, side: int) -> Draft:
    """Return the line as far from one point as from another: x = k (0) or y = k (1)."""
    letter, other = (t.Sym("xy"[what]), t.Sym("yx"[what]))
    half = t.Frac(t.add(t.num(a), signed(b)), t.Int(2))
    middle = Fraction(a + b, 2)
    ends = [(side, v) if what else (v, side) for v in (a, b)]
    key = t.equals(letter, number(middle))
    return Draft(
        prompt(by_turns(_LINE, a + b + side), a=pair(*ends[0]), b=pair(*ends[1])),
        Subject(t.equals(letter, half), letter),
        key,
        "subject",
        (
            Step("It halves the way between them, at a right angle."),
            Step("Halfway: add the two and halve.", t.equals(half, number(middle))),
            Step(f"It is {'a level' if what else 'an upright'} line.", key),
        ),
        slips(
            (ON_LINE, t.equals(other, t.num(side))),
            (HALF_GAP, t.equals(letter, number(Fraction(b - a, 2)))),
        ),
        ("told fold", what, a, b, side),
        constants=(2,),
    )


def _radius(
    topic: Topic, tier: Tier, which: int, turned: int, right: int, up: int, x: int, y: int
) -> Draft:
    """Return how far a point is from another, along a slanted line."""
    p, q, r = _TRIPLES[which]
    wide, high = (q, p) if turned else (p, q)
    end = (x + right * wide, y + up * high)
    along, above = t.sub(t.num(end[0]), signed(x)), t.sub(t.num(end[1]), signed(y))
    squares = [t.Power(t.Bracket(part), t.Int(2)) for part in (along, above)]
    sides = t.add(t.Power(t.Int(wide), t.Int(2)), t.Power(t.Int(high), t.Int(2)))
    return Draft(
        prompt(by_turns(_RADIUS, x + y + which), a=pair(x, y), b=pair(*end)),
        Find(t.Root(t.add(*squares))),
        t.Int(r),
        "integer",
        (
            Step(f"It is {wide} along and {high} up or down."),
            Step("By Pythagoras' theorem, add the squares.", t.equals(sides, t.Int(r * r))),
            Step("Take the square root.", t.equals(t.Root(t.Int(r * r)), t.Int(r))),
        ),
        slips((LONGER_WAY, max(wide, high)), (ADDS_WAYS, wide + high)),
        ("told radius", which, turned, right, up, x, y),
        constants=(2,),
    )


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of loci with points told by their coordinates at their ends."""
    near = range(-3, 4)
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _point, _on_axis, what=range(2), a=range(1, 8), b=range(3, 18)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _equation, _fold, what=range(2), a=range(-4, 5), b=range(1, 10), side=range(-2, 6)
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _radius,
            _through,
            which=range(len(_TRIPLES)),
            turned=range(2),
            right=(1, -1),
            up=(1, -1),
            x=near,
            y=near,
        ),
    }
