"""Pythagoras' theorem as calculations to match with their answers."""

from __future__ import annotations

from itertools import combinations

from generators.geometry._pythagoras_mistakes import SIDES_ADDED, SIDES_SUBTRACTED
from itembank.items.item import Draft, Tier
from itembank.items.kinds.equal_ways import ways_matched
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_TRIPLES = (
    *((3, 4, 5), (5, 12, 13), (8, 15, 17), (7, 24, 25), (6, 8, 10), (9, 12, 15), (12, 16, 20)),
    *((15, 20, 25), (10, 24, 26), (9, 40, 41), (20, 21, 29), (12, 35, 37), (16, 30, 34)),
    *((18, 24, 30), (21, 28, 35), (15, 36, 39), (24, 32, 40)),
)
_THREES = tuple(combinations(range(len(_TRIPLES)), 3))


def _told(three: int, turn: int) -> list[tuple[int, str, int, int]]:
    """Return three calculations, each as two sides, the sign between their squares, the third."""
    found = []
    for place, index in enumerate(_THREES[three]):
        a, b, c = _TRIPLES[index]
        if (place + turn) % 3 == 0:
            found.append((a, "+", b, c))
        elif (place + turn + three) % 2:
            found.append((c, "-", a, b))
        else:
            found.append((c, "-", b, a))
    return found


def _wrong(first: int, sign: str, other: int) -> int:
    return first + other if sign == "+" else first - other


def _fits(three: int, turn: int, which: int) -> bool:
    """Keep calculations with four different answers, that of the mistake among them."""
    told = _told(three, turn)
    first, sign, other, _ = told[which]
    answers = {key for *_, key in told} | {_wrong(first, sign, other)}
    return len(answers) == 4 and (three + 5 * turn + 7 * which) % 101 == 0


def roots_matched(topic: Topic, tier: Tier, three: int, turn: int, which: int) -> Draft:
    """Return three roots of a sum or a difference of squares to match with what they come to."""
    told = _told(three, turn)
    pairs: list[tuple[t.Node, t.Node]] = []
    for first, sign, other, key in told:
        squares = [t.Power(t.Int(side), t.Int(2)) for side in (first, other)]
        under = t.add(*squares) if sign == "+" else t.sub(*squares)
        pairs.append((t.Root(under), t.Int(key)))
    first, sign, other, _ = told[which]
    return ways_matched(
        pairs,
        t.Int(_wrong(first, sign, other)),
        called=("calculation", "its answer"),
        mistake=(SIDES_ADDED if sign == "+" else SIDES_SUBTRACTED, which),
        say=lambda n: f"what stands under the root comes to {told[n][3] ** 2}.",
        twin=("roots", *told, which),
    )


def with_roots(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with calculations to match at the end of core."""
    return {
        **spaces,
        Tier.CORE: spaces[Tier.CORE].also(
            roots_matched, _fits, three=range(len(_THREES)), turn=range(3), which=range(3)
        ),
    }
