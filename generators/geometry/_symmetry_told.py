"""Symmetry without a picture: a corner from another one, and from a turn to the order."""

from __future__ import annotations

from collections.abc import Mapping

from generators.geometry._symmetry_mistakes import (
    CHANGED_LETTER,
    REFLECTED_ACROSS,
    REFLECTED_OVER,
    TURNED,
)
from generators.graphs._grids import pair
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_LINE = "A shape has a corner at {p} and the line of symmetry {l}. Where is another corner?"
_TURN = (
    "A shape has a corner at {p} and rotational symmetry of order 2 about {c}. "
    "Where is another corner?"
)
U, V = t.Sym("u"), t.Sym("v")


def _mirror(what: int, k: int, x: int, y: int) -> bool:
    at = (x, y)
    ends = {_over(what, k, at), _over(1 - what, k, at), (2 * k - x, 2 * k - y), at}
    return len(ends) == 4 and k != 0 and (what + k + x + 2 * y) % 6 == 0


def _over(what: int, k: int, at: tuple[int, int]) -> tuple[int, int]:
    return (2 * k - at[0], at[1]) if what == 0 else (at[0], 2 * k - at[1])


def _centre(u: int, v: int, x: int, y: int) -> bool:
    apart = x != u and y != v and (u, v) != (0, 0)
    return apart and (u + 2 * v + 3 * x + 5 * y) % 11 == 0


def _halfway(start: int, letter: t.Node, middle: int) -> t.Relation:
    return t.equals(t.Frac(t.add(t.num(start), letter), t.Int(2)), t.num(middle))


def _by_line(topic: Topic, tier: Tier, what: int, k: int, x: int, y: int) -> Draft:
    """Return the corner across a line of symmetry x = k (0) or y = k (1)."""
    at = (x, y)
    key = pair(*_over(what, k, at))
    turned, kept = ((U, V), (V, U))[what]
    far = abs(at[what] - k)
    return Draft(
        prompt(_LINE, l=t.equals(t.Sym("xy"[what]), t.num(k)), p=pair(x, y)),
        Find(
            t.pair(U, V),
            (_halfway(at[what], turned, k), t.equals(kept, t.num(at[1 - what]))),
        ),
        key,
        "point",
        (
            Step(f"The line is {'level' if what else 'upright'}, and {far} from the corner."),
            Step("Its mirror image lies as far on the other side.", key),
        ),
        slips(
            (CHANGED_LETTER, pair(*_over(1 - what, k, at))),
            (TURNED, pair(2 * k - x, 2 * k - y)),
        ),
        ("told line", what, k, x, y),
        constants=(2,),
    )


def _by_turn(topic: Topic, tier: Tier, u: int, v: int, x: int, y: int) -> Draft:
    """Return the corner to which half a turn takes another."""
    key = pair(2 * u - x, 2 * v - y)
    return Draft(
        prompt(_TURN, c=pair(u, v), p=pair(x, y)),
        Find(t.pair(U, V), (_halfway(x, U, u), _halfway(y, V, v))),
        key,
        "point",
        (
            Step("Order 2: it looks the same after half a turn."),
            Step("The corner goes as far beyond the centre, straight on.", key),
        ),
        slips(
            (REFLECTED_ACROSS, pair(2 * u - x, y)),
            (REFLECTED_OVER, pair(x, 2 * v - y)),
        ),
        ("told turn", u, v, x, y),
        constants=(2,),
    )


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of symmetry with shapes told in words at the end of the challenge."""
    near = range(-4, 7)
    return {
        **spaces,
        Tier.CHALLENGE: spaces[Tier.CHALLENGE]
        .also(_by_line, _mirror, what=range(2), k=range(-2, 4), x=range(-3, 6), y=range(-3, 5))
        .also(_by_turn, _centre, u=range(-1, 4), v=range(-1, 3), x=near, y=range(-3, 5)),
    }
