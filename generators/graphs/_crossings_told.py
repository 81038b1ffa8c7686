"""Where two lines cross, told without a picture: an upright or level line, and two slanted ones."""

from __future__ import annotations

from collections.abc import Mapping

from generators._turns import by_turns
from generators.graphs._crossing_mistakes import AT_AXIS, SIGN_OF_X
from generators.graphs._grids import pair
from generators.graphs._lines import X, Y, equation, right_side, said
from generators.graphs._misconceptions import SWAPPED
from itembank.items.item import Draft, Find, Slip, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_WHERE = (
    "Where do the lines {e} and {f} cross?",
    "What are the coordinates of the point where {e} and {f} cross?",
)


def _with_upright(level: int, m: int, c: int, x: int) -> bool:
    """Keep points off the axes that are others with their coordinates swapped."""
    y = m * x + c
    apart = abs(m) > 1 and 0 not in (x, y, c) and x not in (y, -y) and c not in (x, y)
    return apart and (m + 2 * c + 3 * x + level) % 7 == 0


def _slanted(m: int, n: int, x: int, c: int) -> bool:
    """Keep a rising line and one less steep or falling, which cross off the axes."""
    y = m * x + c
    d = y - n * x
    apart = 0 not in (x, y, c, d) and x not in (y, -y) and c != y and m != n and n != 0
    return apart and abs(y) < 20 and abs(d) < 20 and (m + 2 * n + 3 * x + c) % 11 == 0


def _summed(m: int, p: int, x: int, c: int) -> bool:
    """Keep a line y = mx + c and one px + y = r, which cross off the axes."""
    y = m * x + c
    apart = 0 not in (x, y, c, p * x + y) and x not in (y, -y) and c != y and p != -m
    return apart and abs(y) < 20 and (m + 2 * p + 3 * x + c) % 13 == 0


def _crossing(
    e: t.Relation,
    f: t.Relation,
    at: tuple[int, int],
    steps: tuple[Step, ...],
    wrong: tuple[Slip, ...],
    twin: tuple[object, ...],
) -> Draft:
    return Draft(
        prompt(by_turns(_WHERE, sum(at)), e=e, f=f),
        Find(t.pair(X, Y), (e, f)),
        pair(*at),
        "point",
        steps,
        wrong,
        twin,
    )


def _upright(topic: Topic, tier: Tier, level: int, m: int, c: int, x: int) -> Draft:
    """Return where a line crosses one that is upright, or level."""
    y = m * x + c
    line = equation(m, c)
    other = t.equals(Y, t.num(y)) if level else t.equals(X, t.num(x))
    if level:
        steps = (
            Step(
                f"Every point of the level line has y = {said(y)}.",
                t.equals(right_side(m, c), t.num(y)),
            ),
            Step("Solve for x.", t.equals(X, t.num(x))),
            Step("Write x first, then y.", pair(x, y)),
        )
    else:
        steps = (
            Step(f"Every point of the upright line has x = {said(x)}."),
            Step(f"Put {said(x)} for x in the other equation.", t.equals(Y, t.num(y))),
            Step("Write x first, then y.", pair(x, y)),
        )
    return _crossing(
        line,
        other,
        (x, y),
        steps,
        slips((SWAPPED, pair(y, x)), (AT_AXIS, pair(0, c)), (SIGN_OF_X, pair(-x, y))),
        ("told upright", level, m, c, x),
    )


def _slanted_both(topic: Topic, tier: Tier, m: int, n: int, x: int, c: int) -> Draft:
    """Return where two lines y = mx + c cross."""
    y = m * x + c
    d = y - n * x
    return _crossing(
        equation(m, c),
        equation(n, d),
        (x, y),
        (
            Step(
                "Where they cross, y is the same on both.",
                t.equals(right_side(m, c), right_side(n, d)),
            ),
            Step("Solve for x.", t.equals(X, t.num(x))),
            Step("Put it into one of the equations.", t.equals(Y, t.num(y))),
            Step("Write x first, then y.", pair(x, y)),
        ),
        slips((SWAPPED, pair(y, x)), (AT_AXIS, pair(0, c)), (SIGN_OF_X, pair(-x, y))),
        ("told slanted", m, n, x, c),
    )


def _with_sum(topic: Topic, tier: Tier, m: int, p: int, x: int, c: int) -> Draft:
    """Return where y = mx + c crosses px + y = r."""
    y = m * x + c
    r = p * x + y
    px = X if p == 1 else t.juxt(t.Int(p), X)
    other = t.equals(t.add(px, Y), t.num(r))
    return _crossing(
        equation(m, c),
        other,
        (x, y),
        (
            Step(f"Make y the subject of the second: y = {said(r)} − {'' if p == 1 else p}x."),
            Step(
                "Where they cross, y is the same on both.",
                t.equals(right_side(m, c), right_side(-p, r)),
            ),
            Step("Solve for x.", t.equals(X, t.num(x))),
            Step("Put it into one of the equations.", t.equals(Y, t.num(y))),
            Step("Write x first, then y.", pair(x, y)),
        ),
        slips((SWAPPED, pair(y, x)), (AT_AXIS, pair(0, c)), (SIGN_OF_X, pair(-x, y))),
        ("told sum", m, p, x, c),
    )


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of crossings with lines told by their equations at their ends."""
    slopes = (-3, -2, 2, 3, 4)
    near = (-4, -3, -2, -1, 1, 2, 3, 4)
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _upright,
            _with_upright,
            level=range(1),
            m=(2, 3, 4, 5),
            c=range(-6, 7),
            x=(-3, -2, -1, 1, 2, 3, 4, 5),
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _upright,
            _with_upright,
            level=range(1, 2),
            m=slopes,
            c=range(-8, 9),
            x=(-3, -2, -1, 1, 2, 3, 4, 5),
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE]
        .also(_slanted_both, _slanted, m=(2, 3, 4), n=(-3, -2, -1, 1), x=near, c=range(-7, 9))
        .also(_with_sum, _summed, m=(1, 2, 3), p=(1, 2, 3), x=near, c=range(-7, 9)),
    }
