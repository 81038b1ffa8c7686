"""Similar shapes in few words: lengths, shadows, areas, and scale factors back."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _similar_mistakes as m
from generators.geometry._areas import length, said_question
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_FACTORS = tuple(Fraction(n, 2) for n in (3, 5, 7)) + tuple(Fraction(n, 5) for n in (6, 8, 12))
_WORDS = (
    "A rectangle of {a} by {b} is similar to one of {c} by {x}. What is {x}?",
    "A photo of {a} by {b} is enlarged to {c} by {x}. What is {x}?",
)
_SHADOWS = (
    ("post", "tree"),
    ("stick", "wall"),
    ("fence", "shed"),
    ("gate", "lamp post"),
)
_PAIRS = ((2, 3), (2, 5), (3, 4), (3, 5), (4, 5), (2, 7), (3, 7), (5, 6))


def _sides(a: int, b: int, factor: Fraction) -> bool:
    """Keep rectangles whose second has short sides, where adding shows."""
    c, d = a * factor, b * factor
    wrong = {d, b + c - a, b / factor, factor}
    return a != b and 10 % c.denominator == 0 == 10 % d.denominator and len(wrong) == 4


def _support(k: int, a: int, b: int) -> bool:
    return _sides(a, b, Fraction(k)) and (k + a + 2 * b) % 3 == 0


def _core(factor: int, a: int, b: int) -> bool:
    return _sides(a, b, _FACTORS[factor]) and (factor + a + 2 * b) % 11 == 0


def _shadow(post: int, factor: int, long: int) -> bool:
    """Keep shadows of which the second is so many times the first."""
    high, near, times = Fraction(post, 2), Fraction(long, 2), Fraction(factor, 2)
    tall, far = high * times, near * times
    short = 10 % tall.denominator == 0 == 10 % far.denominator
    # Where a post is as long as its shadow, adding gives the right answer.
    return (
        high != near
        and tall != far - near
        and short
        and tall < 30
        and (post + factor + long) % 8 > 0
    )


def _area(k: int, area: int) -> bool:
    return len({k * area, 2 * k * area, k * k * area, area}) == 4 and (k + area) % 3 == 0


def _areas(k: int, area: int) -> bool:
    squared = k * k
    return len({k, squared, Fraction(squared, 2)}) == 3 and (k + area) % 2 == 0


def _lengths(pair: int, size: int, side: int) -> bool:
    p, q = _PAIRS[pair]
    key, wrong = Fraction(side * q, p), Fraction(side * q * q, p * p)
    added = side + (q * q - p * p) * size
    return (
        side % p == 0
        and len({key, wrong, Fraction(side * p, q), Fraction(added)}) == 4
        and 100 % wrong.denominator == 0
    )


def _wrong(value: Fraction) -> Fraction | None:
    return value if 100 % value.denominator == 0 else None


def _rectangles(a: int, b: int, factor: Fraction, twin: tuple[object, ...]) -> Draft:
    first, second, third = (length(v, "cm") for v in (a, b, a * factor))
    key, scale = length(b * factor, "cm"), length(factor, "")
    found = t.divide(third, first)
    return said_question(
        by_turns(_WORDS, a + b),
        t.times(second, t.Bracket(found)),
        key,
        [
            Step("Find the scale factor.", t.equals(found, scale)),
            Step("Multiply by it.", t.equals(t.times(scale, second), key)),
        ],
        [
            (m.ADDITIVE, b + a * factor - a),
            (m.INVERSE, _wrong(b / factor)),
            (m.FACTOR_ONLY, factor),
        ],
        twin,
        a=first,
        b=second,
        c=third,
        x=t.Sym("x"),
    )


def _whole(topic: Topic, tier: Tier, k: int, a: int, b: int) -> Draft:
    return _rectangles(a, b, Fraction(k), ("told whole", k, a, b))


def _part(topic: Topic, tier: Tier, factor: int, a: int, b: int) -> Draft:
    return _rectangles(a, b, _FACTORS[factor], ("told part", factor, a, b))


def _tall(topic: Topic, tier: Tier, post: int, factor: int, long: int) -> Draft:
    """Return how much taller something is, from two shadows at the same time."""
    small, large = by_turns(_SHADOWS, post + long)
    high, near, times = Fraction(post, 2), Fraction(long, 2), Fraction(factor, 2)
    far, scale = near * times, length(times, "")
    known, first, second = (length(v, "m") for v in (high, near, far))
    tall, key = length(high * times, "m"), length(high * times - high, "m")
    found = t.divide(second, first)
    return said_question(
        f"At noon a {small} of {{a}} has a shadow of {{b}}, and a {large} has one of {{c}}. "
        f"How much taller is the {large}?",
        t.sub(t.times(known, t.Bracket(found)), known),
        key,
        [
            Step("How many times as long is the second shadow?", t.equals(found, scale)),
            Step("It is as many times as tall.", t.equals(t.times(scale, known), tall)),
            Step("Subtract.", t.equals(t.sub(tall, known), key)),
        ],
        [(m.ADDITIVE, far - near), (m.WHOLE_FOR_REST, high * times)],
        ("told shadow", post, factor, long),
        a=known,
        b=first,
        c=second,
    )


def _grown(topic: Topic, tier: Tier, k: int, area: int) -> Draft:
    """Return an area after an enlargement."""
    given, key = length(area, "cm^2"), length(k * k * area, "cm^2")
    factor = t.Int(k)
    squared = t.Power(factor, t.Int(2))
    return said_question(
        by_turns(
            (
                "A shape with area {a} is enlarged by scale factor {k}. What is its area now?",
                "All lengths of a shape with area {a} are multiplied by {k}. What is its new area?",
            ),
            area,
        ),
        t.times(given, squared),
        key,
        [
            Step(
                "An area grows by the square of the scale factor.", t.equals(squared, t.Int(k * k))
            ),
            Step("Multiply.", t.equals(t.times(t.Int(k * k), given), key)),
        ],
        [(m.NOT_SQUARED, k * area), (m.FACTOR_DOUBLED, 2 * k * area)],
        ("told area", k, area),
        (2,),
        a=given,
        k=factor,
    )


def _factor(topic: Topic, tier: Tier, k: int, area: int) -> Draft:
    """Return the scale factor of the lengths from two areas."""
    first, second = length(area, "cm^2"), length(k * k * area, "cm^2")
    found = t.divide(second, first)
    return said_question(
        by_turns(
            (
                "An enlargement takes an area of {a} to {b}. What is its scale factor?",
                "A shape with area {a} is enlarged to one with area {b}. What is the scale factor?",
            ),
            area,
        ),
        t.Root(found),
        t.Int(k),
        [
            Step("How many times as large is the area?", t.equals(found, t.Int(k * k))),
            Step("Take the square root.", t.equals(t.Root(t.Int(k * k)), t.Int(k))),
        ],
        [(m.NOT_ROOTED, k * k), (m.HALVED_FOR_ROOT, Fraction(k * k, 2))],
        ("told factor", k, area),
        a=first,
        b=second,
    )


def _side(topic: Topic, tier: Tier, pair: int, size: int, side: int) -> Draft:
    """Return a side of a shape from that of a similar one and both areas."""
    p, q = _PAIRS[pair]
    first, second = length(p * p * size, "cm^2"), length(q * q * size, "cm^2")
    known, key = length(side, "cm"), length(Fraction(side * q, p), "cm")
    found = t.divide(second, first)
    ratio = t.frac(q * q, p * p)
    return said_question(
        "Similar shapes have areas {a} and {b}. A side of the first is {c}. How long is it in the "
        "second?",
        t.times(known, t.Root(found)),
        key,
        [
            Step("How many times as large is the area?", t.equals(found, ratio)),
            Step("Take the square root.", t.equals(t.Root(ratio), t.frac(q, p))),
            Step("Multiply by it.", t.equals(t.times(known, t.frac(q, p)), key)),
        ],
        [
            (m.RATIO_OF_AREAS, _wrong(Fraction(side * q * q, p * p))),
            (m.AREA_DIFFERENCE, side + (q * q - p * p) * size),
        ],
        ("told side", pair, size, side),
        a=first,
        b=second,
        c=known,
    )


def with_lengths(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of similar shapes with short questions at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _whole, _support, k=range(2, 6), a=range(2, 11), b=range(3, 13)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _part, _core, factor=range(len(_FACTORS)), a=range(2, 16), b=range(3, 17)
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _tall, _shadow, post=range(2, 12), factor=(3, 5, 7, 9, 11), long=range(2, 23)
        ),
    }


def with_areas(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of areas of similar shapes with short questions at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(_grown, _area, k=range(3, 11), area=range(2, 41)),
        Tier.CORE: spaces[Tier.CORE].also(_factor, _areas, k=range(3, 13), area=range(2, 25)),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _side, _lengths, pair=range(len(_PAIRS)), size=range(1, 5), side=range(2, 31)
        ),
    }
