"""Conversion graphs told by one of their points: on, back, and what stands between."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators.graphs._conversion_mistakes import ADDS, SAME_NUMBER, STOPS
from generators.graphs._conversion_units import UNITS, Units
from generators.graphs._grids import number
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_ASKED = (
    "On a conversion graph {{a}} {source} are {{b}} {target}. How many {target} are {{n}} {source}?"
)
_TIMES = (2, 3, 4, 5, 6, 8, 10)


def _known(units: Units) -> tuple[int, int]:
    """Return a point of the graph that is told: a few squares along, and as many up."""
    few = 2 if units.x_step == 1 else 1
    return few * units.x_step, few * units.y_step


def _whole(at: int, times: int) -> bool:
    along, up = _known(UNITS[at])
    return Fraction(UNITS[at].top, UNITS[at].right) == Fraction(up, along)


def _between(at: int, halves: int) -> bool:
    """Keep amounts between, in halves, that are no multiple of the one that is told."""
    if not _whole(at, 1):
        return False
    along, up = _known(UNITS[at])
    first = Fraction(halves, 2)
    amount = first + _second(halves)
    value, part = amount * up / along, first * up / along
    if amount < along or 100 % value.denominator or 100 % part.denominator:
        return False
    if (halves // 2 + at) % 2:
        return False
    return len({value, amount, part, amount + up - along}) == 4


def _apart(at: int, times: int) -> bool:
    if not _whole(at, times):
        return False
    along, up = _known(UNITS[at])
    return len({along * times, up * times, up, along * times + up - along}) == 4


def _apart_back(at: int, times: int) -> bool:
    if not _whole(at, times):
        return False
    along, up = _known(UNITS[at])
    return len({along * times, up * times, along, up * times + along - up}) == 4


def _asked(
    names: tuple[str, str],
    told: tuple[int, int],
    amount: Fraction,
    steps: tuple[Step, ...],
    twin: tuple[object, ...],
) -> Draft:
    source, target = names
    key = number(amount * told[1] / told[0])
    nodes = [number(part) for part in (*told, amount)]
    added = amount + told[1] - told[0]
    return Draft(
        prompt(_ASKED.format(source=source, target=target), a=nodes[0], b=nodes[1], n=nodes[2]),
        # The line goes through (0, 0): as many times as far along is as many times as far up.
        Find(t.divide(t.times(nodes[1], nodes[2]), nodes[0])),
        key,
        "value",
        steps,
        slips(
            (SAME_NUMBER, nodes[2]),
            (STOPS, nodes[1]),
            (ADDS, number(added) if added > 0 else None),
            key=key,
        ),
        twin,
    )


def _on(topic: Topic, tier: Tier, at: int, times: int) -> Draft:
    """Return so many times the amount that is told."""
    units = UNITS[at]
    along, up = _known(units)
    steps = (
        Step(f"{along * times} is {times} times {along}."),
        Step(
            "So is the other amount.", t.equals(t.times(t.Int(up), t.Int(times)), t.Int(up * times))
        ),
    )
    names = (units.along, units.up)
    return _asked(names, (along, up), Fraction(along * times), steps, ("told on", at, times))


def _back(topic: Topic, tier: Tier, at: int, times: int) -> Draft:
    """Return so many times the amount that is told, read the other way."""
    units = UNITS[at]
    along, up = _known(units)
    steps = (
        Step(f"{up * times} is {times} times {up}."),
        Step(
            "So is the other.", t.equals(t.times(t.Int(along), t.Int(times)), t.Int(along * times))
        ),
    )
    return _told_back(units, along, up, times, steps, at)


def _told_back(
    units: Units, along: int, up: int, times: int, steps: tuple[Step, ...], at: int
) -> Draft:
    source, target = units.up, units.along
    nodes = [t.Int(part) for part in (along, up, up * times)]
    key = t.Int(along * times)
    added = up * times + along - up
    text = (
        f"On a conversion graph {{a}} {target} are {{b}} {source}. "
        f"How many {target} are {{n}} {source}?"
    )
    return Draft(
        prompt(text, a=nodes[0], b=nodes[1], n=nodes[2]),
        Find(t.divide(t.times(nodes[0], nodes[2]), nodes[1])),
        key,
        "value",
        steps,
        slips(
            (SAME_NUMBER, nodes[2]),
            (STOPS, nodes[0]),
            (ADDS, t.Int(added) if added > 0 else None),
            key=key,
        ),
        ("told back", at, times),
    )


def _part(topic: Topic, tier: Tier, at: int, halves: int) -> Draft:
    """Return two amounts together, which are no multiple of the one that is told."""
    units = UNITS[at]
    source, target = units.along, units.up
    along, up = _known(units)
    first, second = Fraction(halves, 2), _second(halves)
    both = first + second
    nodes = [number(part) for part in (along, up, first, second)]
    added, product = t.add(nodes[2], nodes[3]), number(both * up)
    key = number(both * up / along)
    gap = both + up - along
    return Draft(
        prompt(
            f"On a conversion graph {{a}} {source} are {{b}} {target}. "
            f"How many {target} are {{n}} and {{m}} {source} together?",
            a=nodes[0],
            b=nodes[1],
            n=nodes[2],
            m=nodes[3],
        ),
        Find(t.divide(t.times(nodes[1], t.Bracket(added)), nodes[0])),
        key,
        "value",
        (
            Step("Add the two amounts.", t.equals(added, number(both))),
            Step(
                f"Multiply by {up}, and divide by {along}.",
                t.equals(t.times(nodes[1], number(both)), product),
            ),
            Step("So it comes to this.", t.equals(t.divide(product, nodes[0]), key)),
        ),
        slips(
            (SAME_NUMBER, number(both)),
            (STOPS, number(first * up / along)),
            (ADDS, number(gap) if gap > 0 else None),
            key=key,
        ),
        ("told part", at, halves),
    )


def _second(halves: int) -> int:
    return 3 + halves % 7


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of conversion graphs with graphs told by a point at their ends."""
    every = range(len(UNITS))
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(_on, _apart, at=every, times=_TIMES),
        Tier.CORE: spaces[Tier.CORE].also(_back, _apart_back, at=every, times=_TIMES),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _part, _between, at=every, halves=range(5, 60, 2)
        ),
    }
