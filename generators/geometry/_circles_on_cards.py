"""The circumference and the area of a circle in several ways of writing: the odd one out."""

from __future__ import annotations

from generators.geometry import _circle_mistakes as m
from itembank.items.item import Draft, Misconception, Tier
from itembank.items.kinds.equal_ways import Way, odd_way_out
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_PI, _TWO = t.Sym("π"), t.Int(2)


def _length(number: int, unit: str) -> t.Quantity:
    return t.Quantity(t.Int(number), unit)


def _times_pi(number: int, unit: str = "") -> t.Node:
    product = t.juxt(t.Int(number), _PI)
    return t.Quantity(product, unit) if unit else product


def _way(shown: t.Node, worth: t.Node) -> Way:
    return Way(shown, "Write it as a multiple of π.", t.equals(shown, worth))


def odd_circumference(topic: Topic, tier: Tier, radius: int, unit: str, which: int) -> Draft:
    """Return a circumference in three ways, and one with radius and diameter changed over."""
    across = 2 * radius
    key = _times_pi(across, unit)
    wrong: tuple[Misconception, t.Node, int] = (
        (m.RADIUS_AS_DIAMETER, t.times(_PI, _length(radius, unit)), radius)
        if which == 0
        else (m.DIAMETER_AS_RADIUS, t.times(_TWO, _PI, _length(across, unit)), 2 * across)
    )
    mistake, odd, count = wrong
    others = (
        _way(t.times(_PI, _length(across, unit)), key),
        _way(t.times(_TWO, _PI, _length(radius, unit)), key),
        Way(key),
    )
    return odd_way_out(
        _way(odd, _times_pi(count, unit)), others, mistake, ("round", radius, unit, which)
    )


def odd_disc(topic: Topic, tier: Tier, radius: int, which: int) -> Draft:
    """Return the area of a circle in three ways, and one by a common mistake."""
    number, key = t.Int(radius), _times_pi(radius**2)
    wrong: tuple[Misconception, t.Node, t.Node] = (
        (m.DOUBLED, t.times(_TWO, _PI, number), _times_pi(2 * radius)),
        (
            m.DIAMETER_AS_RADIUS,
            t.times(_PI, t.Power(t.Int(2 * radius), _TWO)),
            _times_pi(4 * radius**2),
        ),
        (
            m.PI_SQUARED,
            t.Power(t.Bracket(t.times(_PI, number)), _TWO),
            t.juxt(t.Int(radius**2), t.Power(_PI, _TWO)),
        ),
    )[which]
    mistake, odd, worth = wrong
    others = (
        _way(t.times(_PI, t.Power(number, _TWO)), key),
        _way(t.times(_PI, number, number), key),
        Way(key),
    )
    return odd_way_out(_way(odd, worth), others, mistake, ("disc", radius, which))


def with_circumferences(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with circumferences on cards at the end of support."""
    return {
        **spaces,
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            odd_circumference,
            lambda radius, unit, which: (radius + len(unit) + which) % 2 == 0,
            radius=range(3, 50),
            unit=("cm", "m", "mm"),
            which=(0, 1),
        ),
    }


def with_discs(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with areas on cards at the end of support."""
    return {
        **spaces,
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            odd_disc, radius=(*range(3, 16), 20, 25, 30, 40, 50), which=range(3)
        ),
    }
