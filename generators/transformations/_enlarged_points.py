"""Enlargements of points without a picture: on, back, and the scale factor to find."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.transformations._enlarge_mistakes import (
    ADDS_FACTOR,
    FROM_ORIGIN,
    FROM_POINT,
    ONE_COORDINATE,
    UPSIDE_DOWN,
)
from generators.transformations._points import U, V, found_point, signed
from generators.transformations._shapes import pair, ways
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_IMAGE = (
    "What is the image of {p} after an enlargement by scale factor {k}, centre {c}?",
    "An enlargement has centre {c} and scale factor {k}. Where does it take {p}?",
)
_BEFORE = "An enlargement by scale factor {k}, centre {c}, takes A to {p}. Where is A?"
_FACTOR = (
    "An enlargement with centre {c} takes {p} to {q}. What is its scale factor?",
    "{q} is the image of {p} after an enlargement, centre {c}. What is the scale factor?",
)


def _grown(k: int, x: int, y: int) -> bool:
    """Keep points that grow to others than by adding, or in one direction alone."""
    return (x + k, y + k) != (k * x, k * y) and x != y and (x + 2 * y + k) % 2 == 0


def _before(back: int, k: int, x: int, y: int) -> bool:
    """Keep points with a minus, and pairs of a point and its image, for a factor to find."""
    if 0 in (x, y) or abs(x) == abs(y) or (x + 2 * y + k + back) % 2:
        return False
    return min(x, y) < 0 if back < 2 else abs(k * x - x) != k


def _centred(back: int, k: int, x: int, y: int, u: int, v: int) -> bool:
    """Keep centres off the origin and off the point's own lines, where each wrong way shows."""
    if (
        (x + 2 * y + 3 * u + 5 * v + k + back) % (7 if back else 37)
        or 0 in (u, v, x, y)
        or x == u
        or y == v
    ):
        return False
    a, b = u + k * (x - u), v + k * (y - v)
    if back:  # the image (a, b) is told, and the point is asked for
        # From the origin too the point would have whole coordinates: nothing there looks wrong.
        whole = a % k == 0 == b % k and (a // k, b // k) != (x, y)
        return whole and max(abs(a), abs(b)) < 20
    return len({(a, b), (k * x, k * y), (x + k * (x - u), y + k * (y - v)), (x, y)}) == 4


def _times(k: int, value: int) -> t.Relation:
    return t.equals(t.times(t.Int(k), signed(value)), t.num(k * value))


def _from_origin(topic: Topic, tier: Tier, k: int, x: int, y: int) -> Draft:
    """Return where an enlargement from the origin takes a point."""
    key = (k * x, k * y)
    return found_point(
        by_turns(_IMAGE, x + y),
        {"p": pair(x, y), "k": t.Int(k), "c": pair(0, 0)},
        (t.equals(U, t.times(t.Int(k), t.num(x))), t.equals(V, t.times(t.Int(k), t.num(y)))),
        key,
        (Step("Multiply the x-coordinate.", _times(k, x)), Step("And the other.", _times(k, y))),
        slips((ADDS_FACTOR, pair(x + k, y + k)), (ONE_COORDINATE, pair(k * x, y))),
        ("told image", k, x, y),
    )


def _to_origin(topic: Topic, tier: Tier, back: int, k: int, x: int, y: int) -> Draft:
    """Return the point before an enlargement from the origin, or its scale factor (2)."""
    if back == 2:
        return _factor(k, x, y, grows=(x + y) % 3 > 0)
    a, b = k * x, k * y
    factor = t.Int(k)
    return found_point(
        _BEFORE,
        {"p": pair(a, b), "k": factor, "c": pair(0, 0)},
        (t.equals(t.times(factor, U), t.num(a)), t.equals(t.times(factor, V), t.num(b))),
        (x, y),
        (
            Step(f"The coordinates were multiplied by {k}. Divide.", _shared(a, k)),
            Step("And the other.", _shared(b, k)),
        ),
        slips((UPSIDE_DOWN, pair(k * a, k * b)), (ADDS_FACTOR, pair(a - k, b - k))),
        ("told before", k, x, y),
    )


def _shared(value: int, k: int) -> t.Relation:
    return t.equals(t.divide(t.num(value), t.Int(k)), t.num(value // k))


def _factor(k: int, x: int, y: int, *, grows: bool) -> Draft:
    """Return the scale factor that takes one point to another: a whole number or one over it."""
    near, far = (x, y), (k * x, k * y)
    start, end = (near, far) if grows else (far, near)
    factor = Fraction(k) if grows else Fraction(1, k)
    letter = t.Sym("k")
    quotient = t.frac(abs(end[0]), abs(start[0]))
    return Draft(
        prompt(by_turns(_FACTOR, x + y + k), p=pair(*start), q=pair(*end), c=pair(0, 0)),
        Find(
            letter,
            tuple(
                t.equals(t.times(letter, signed(a)), t.num(b))
                for a, b in zip(start, end, strict=True)
            ),
        ),
        number_node(factor),
        "number",
        (
            Step("How far across from the centre is each point?"),
            Step("Divide: how far the image is by how far the point is.", _same(quotient, factor)),
        ),
        slips((UPSIDE_DOWN, 1 / factor), (ADDS_FACTOR, end[0] - start[0]), write=number_node),
        ("told factor", start, end),
    )


def _same(quotient: t.Node, factor: Fraction) -> t.Node:
    written = number_node(factor)
    return quotient if quotient == written else t.equals(quotient, written)


def _about(topic: Topic, tier: Tier, back: int, k: int, x: int, y: int, u: int, v: int) -> Draft:
    """Return an enlargement from another centre, on or back."""
    a, b = u + k * (x - u), v + k * (y - v)
    factor = t.Int(k)
    start, end = ((U, V), (t.num(a), t.num(b))) if back else ((t.num(x), t.num(y)), (U, V))
    relations = tuple(
        t.equals(
            t.sub(last, signed(centre)),
            t.times(factor, t.Bracket(t.sub(first, signed(centre)))),
        )
        for first, last, centre in zip(start, end, (u, v), strict=True)
    )
    if back:
        key, told = (x, y), (a, b)
        wrong = slips(
            (UPSIDE_DOWN, pair(u + k * (a - u), v + k * (b - v))),
            (FROM_ORIGIN, pair(a // k, b // k)),
        )
        steps = (
            Step(f"From the centre to the image: {ways(a - u, b - v)}."),
            Step(f"Divide that by {k}: {ways(x - u, y - v)}."),
            Step("Go that far from the centre.", pair(*key)),
        )
    else:
        key, told = (a, b), (x, y)
        wrong = slips(
            (FROM_ORIGIN, pair(k * x, k * y)),
            (FROM_POINT, pair(x + k * (x - u), y + k * (y - v))),
        )
        steps = (
            Step(f"From the centre to the point: {ways(x - u, y - v)}."),
            Step(f"{k} times that is {ways(a - u, b - v)}."),
            Step("Go that far from the centre.", pair(*key)),
        )
    return found_point(
        _BEFORE if back else by_turns(_IMAGE, x + y + u),
        {"p": pair(*told), "k": factor, "c": pair(u, v)},
        relations,
        key,
        steps,
        wrong,
        ("told centre", back, k, x, y, u, v),
    )


def with_points(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of enlargements with points told by their coordinates at their ends."""
    near, about = range(-5, 6), range(-4, 6)
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _from_origin, _grown, k=range(2, 6), x=range(1, 8), y=range(1, 8)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _to_origin, _before, back=range(1, 3), k=range(2, 6), x=near, y=near
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _about, _centred, back=range(2), k=range(2, 5), x=near, y=near, u=about, v=about
        ),
    }
