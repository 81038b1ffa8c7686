"""Map scales in several ways of writing: pairs to match, and the odd one among equal ones."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

from generators.measures._map_mistakes import THOUSAND, THOUSAND_IN_KM
from generators.ratio._parts import amount, whole_ratio
from itembank.items.item import Draft, Tier
from itembank.items.kinds.equal_ways import Way, odd_way_out, ways_matched
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_SCALES = (10_000, 20_000, 25_000, 40_000, 50_000, 100_000, 200_000, 250_000, 500_000)
_KM = 100_000
"""Centimetres in a kilometre."""
_THREES = tuple(combinations(range(len(_SCALES)), 3))


def _ratio(centimetres: int, ground: Fraction, unit: str) -> t.Ratio:
    return t.Ratio((amount(centimetres, "cm"), amount(ground, unit)))


def _plain(scale: Fraction) -> t.Ratio:
    return whole_ratio(1, int(scale))


def _in_kilometres(scale: int, centimetres: int = 1) -> t.Ratio:
    return _ratio(centimetres, Fraction(centimetres * scale, _KM), "km")


def _way(shown: t.Ratio, scale: Fraction) -> Way:
    plain = _plain(scale)
    if shown == plain:
        return Way(shown)
    return Way(shown, "Write both lengths in centimetres, and cancel.", t.equals(shown, plain))


def odd_scale(topic: Topic, tier: Tier, place: int, centimetres: int, which: int) -> Draft:
    """Return one scale in three ways, and one that takes too few centimetres for a kilometre."""
    scale = _SCALES[place]
    if which == 0:
        mistake, odd = THOUSAND_IN_KM, _way(_in_kilometres(100 * scale), Fraction(100 * scale))
    else:
        metres = _ratio(1, Fraction(scale, 1000), "m")
        mistake, odd = THOUSAND, _way(metres, Fraction(scale, 10))
    shown = (_plain(Fraction(scale)), _in_kilometres(scale, centimetres), _in_metres(scale))
    others = [_way(ratio, Fraction(scale)) for ratio in shown]
    return odd_way_out(odd, others, mistake, ("scales", scale, centimetres, which), "form")


def _in_metres(scale: int) -> t.Ratio:
    return _ratio(1, Fraction(scale, 100), "m")


def _odd_fits(place: int, centimetres: int, which: int) -> bool:
    """Keep scales whose ground is told in tenths or quarters of a kilometre."""
    ground = Fraction(centimetres * _SCALES[place], _KM)
    return ground.denominator in (1, 2, 4, 5, 10)


def scales_matched(topic: Topic, tier: Tier, three: int, which: int, order: int) -> Draft:
    """Return three scales in centimetres and kilometres to match with 1 : n."""
    scales = [_SCALES[place] for place in _THREES[three]]
    lengths = [(1, 2, 4)[(order + n) % 3] if tier is Tier.CORE else 1 for n in range(3)]
    return ways_matched(
        [
            (_in_kilometres(scale, length), _plain(Fraction(scale)))
            for scale, length in zip(scales, lengths, strict=True)
        ],
        _plain(Fraction(scales[which], 100)),
        called=("scale", "the equal ratio"),
        mistake=(THOUSAND_IN_KM, which),
        say=lambda _: "a kilometre is 100 000 cm.",
        twin=("scales", tier.value, *scales, which, order),
    )


def _match_fits(three: int, which: int, order: int) -> bool:
    scales = [_SCALES[place] for place in _THREES[three]]
    places = [Fraction((1, 2, 4)[(order + n) % 3] * s, _KM) for n, s in enumerate(scales)]
    short = all(ground.denominator in (1, 2, 4, 5, 10) for ground in places)
    return short and (three + which) % 3 == order and three % 3 == which


def _plain_fits(three: int, which: int, order: int) -> bool:
    return order == 0 and (three + which) % 2 == 0


def with_cards(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with scales on cards at the ends of support and core."""
    threes = {"three": range(len(_THREES)), "which": range(3), "order": range(3)}
    return {
        **spaces,
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(scales_matched, _plain_fits, **threes),
        Tier.CORE: spaces[Tier.CORE]
        .also(
            odd_scale,
            _odd_fits,
            place=range(len(_SCALES)),
            centimetres=(1, 2, 4, 5, 8, 10),
            which=(0, 1),
        )
        .also(scales_matched, _match_fits, **threes),
    }
