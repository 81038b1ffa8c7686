"""Short questions about pie charts that nobody has to see: what an angle of them stands for."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.statistics import _chart_mistakes as m
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, degrees, told, whole
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_THINGS = (
    ("pupil", "pupils"),
    ("swimmer", "swimmers"),
    ("bus", "buses"),
    ("tree", "trees"),
    ("book", "books"),
)
_SHARED = (10, 12, 15, 18, 20, 24, 30, 36, 40, 45, 60, 72, 90, 120)


def _things(number: int) -> str:
    return by_turns(_THINGS, number)[1]


def _some(topic: Topic, tier: Tier, each: int, some: int) -> Draft:
    """Return the question for the angle of some, from that of one."""
    one_thing, things = by_turns(_THINGS, each + some)
    key, single, count = degrees(each * some), degrees(each), t.Int(some)
    return told(
        f"On a pie chart {{a}} stands for one {one_thing}. What angle stands for {{n}} {things}?",
        t.times(count, single),
        key,
        "quantity",
        [(f"Each has an angle of {each}°, so multiply.", t.equals(t.times(count, single), key))],
        [(m.TOTAL_AS_DEGREES, some), (m.OTHER_PART, 360 - each * some)],
        ("some", each, some),
        a=single,
        n=count,
    )


def _keep_some(each: int, some: int) -> bool:
    return (
        360 % each == 0
        and 360 // each - some not in (some, each * some)
        and each * some < 300
        and each != some
        and each * some != 180
    )


def _counted(topic: Topic, tier: Tier, each: int, some: int) -> Draft:
    """Return the question how many an angle stands for, from the angle of one."""
    one_thing, things = by_turns(_THINGS, each + some)
    key, single, angle = t.Int(some), degrees(each), degrees(each * some)
    return told(
        f"On a pie chart {{a}} stands for one {one_thing}. How many {things} does {{b}} stand for?",
        t.divide(angle, single),
        key,
        "integer",
        [(f"Each has an angle of {each}°, so divide.", t.equals(t.divide(angle, single), key))],
        [(m.ANGLE_AS_COUNT, each * some), (m.OTHER_PART, 360 // each - some)],
        ("counted", each, some),
        a=single,
        b=angle,
    )


def _angle(topic: Topic, tier: Tier, total: int, some: int) -> Draft:
    """Return the question for the angle of some, from how many there are in all."""
    things, each = _things(total + some), 360 // total
    key, count, all_ = degrees(each * some), t.Int(some), t.Int(total)
    return told(
        f"A pie chart shows {{n}} {things}. What angle stands for {{k}} of them?",
        t.times(t.divide(degrees(360), all_), count),
        key,
        "quantity",
        [
            (f"All {total} share 360°.", t.equals(t.divide(degrees(360), all_), degrees(each))),
            (f"Multiply by {some}.", t.equals(t.times(count, degrees(each)), key)),
        ],
        [
            (m.TOTAL_AS_DEGREES, some),
            (m.TURN_IS_180, Fraction(180 * some, total)),
            (m.OUT_OF_100, whole(Fraction(100 * some, total))),
        ],
        ("angle", total, some),
        (360,),
        n=all_,
        k=count,
    )


def _keep_angle(total: int, some: int) -> bool:
    return 1 < some < total * 5 // 6 and 2 * some != total and 360 * some != total * some


def _number(topic: Topic, tier: Tier, total: int, some: int) -> Draft:
    """Return the question how many an angle stands for, from how many there are in all."""
    things, angle = _things(total + some), 360 // total * some
    key, all_, part = t.Int(some), t.Int(total), number_node(Fraction(angle, 360))
    return told(
        f"A pie chart shows {{n}} {things}. How many {things} does an angle of {{a}} stand for?",
        t.times(t.divide(degrees(angle), degrees(360)), all_),
        key,
        "integer",
        [
            ("Write the angle as a fraction of 360°.", t.equals(t.frac(angle, 360), part)),
            ("Find that fraction of all.", t.equals(t.times(part, all_), key)),
        ],
        [
            (m.ANGLE_AS_COUNT, angle),
            (m.DIVIDES_BY_ANGLE, whole(Fraction(360, angle))),
            (m.OTHER_PART, total - some),
        ],
        ("number", total, some),
        (360,),
        n=all_,
        a=degrees(angle),
    )


def _fourth(topic: Topic, tier: Tier, a: int, b: int, c: int) -> Draft:
    """Return the question for the last angle of four."""
    known = [degrees(a), degrees(b), degrees(c)]
    added = a + b + c
    key = degrees(360 - added)
    return told(
        "Three of the four angles of a pie chart are {a}, {b} and {c}. What is the fourth?",
        t.sub(degrees(360), *known),
        key,
        "quantity",
        [
            ("Add the angles that are known.", t.equals(t.add(*known), degrees(added))),
            ("Subtract from 360°.", t.equals(t.sub(degrees(360), degrees(added)), key)),
        ],
        [
            (m.ADDS_ANGLES, added),
            (m.TURN_IS_180, 180 - added if added < 180 else None),
            (m.QUARTER_EACH, 90),
        ],
        ("fourth", *sorted((a, b, c))),
        (360,),
        a=known[0],
        b=known[1],
        c=known[2],
    )


def _keep_fourth(a: int, b: int, c: int) -> bool:
    return len({a, b, c}) == 3 and a + b + c < 340 and a + b + c != 180 and (a + b + c) % 3 == 0


def _all(topic: Topic, tier: Tier, total: int, some: int) -> Draft:
    """Return the question how many there are in all, from the number and angle of some."""
    things, angle = _things(total + some), 360 // total * some
    key, count, single = t.Int(total), t.Int(some), Fraction(360, total)
    return told(
        f"On a pie chart {{a}} stands for {{k}} {things}. "
        f"How many {things} does the whole chart show?",
        t.times(t.divide(degrees(360), degrees(angle)), count),
        key,
        "integer",
        [
            ("Find the angle of one.", t.equals(t.divide(degrees(angle), count), degrees(single))),
            ("Find how many share 360°.", t.equals(t.divide(degrees(360), degrees(single)), key)),
        ],
        [
            (m.TURN_IS_180, whole(Fraction(total, 2))),
            (m.OTHER_PART, total - some),
            (m.ANGLE_AS_COUNT, 360),
            (m.DIVIDES_BY_ANGLE, whole(Fraction(360, angle))),
        ],
        ("all", total, some),
        (360,),
        a=degrees(angle),
        k=count,
    )


def _other(topic: Topic, tier: Tier, each: int, some: int, others: int) -> Draft:
    """Return the question for the angle of others, from the number and angle of some."""
    things = _things(each + some + others)
    given, key = degrees(each * some), degrees(each * others)
    first, second, single = t.Int(some), t.Int(others), degrees(each)
    return told(
        f"On a pie chart {{a}} stands for {{k}} {things}. What angle stands for {{n}} {things}?",
        t.times(t.divide(given, first), second),
        key,
        "quantity",
        [
            ("Find the angle of one.", t.equals(t.divide(given, first), single)),
            (f"Multiply by {others}.", t.equals(t.times(second, single), key)),
        ],
        [
            (m.TOTAL_AS_DEGREES, others),
            (m.ADDS_FOR_MORE, each * some + others - some),
        ],
        ("other", each, some, others),
        a=given,
        k=first,
        n=second,
    )


def _keep_other(each: int, some: int, others: int) -> bool:
    return some != others and others % some > 0 and each * (some + others) < 350 and each != some


def _keep_all(total: int, some: int) -> bool:
    return some > 2 and total % some > 0 and some < total // 2


def _more(topic: Topic, tier: Tier, total: int, some: int, others: int) -> Draft:
    """Return the question how many more one angle stands for than another."""
    things, each = _things(total + some), 360 // total
    large, small = degrees(each * some), degrees(each * others)
    key, all_, apart = t.Int(some - others), t.Int(total), each * (some - others)
    single = t.divide(degrees(360), all_)
    return told(
        f"A pie chart shows {{n}} {things}. "
        f"How many more {things} does {{a}} stand for than {{b}}?",
        t.sub(t.divide(large, t.Bracket(single)), t.divide(small, t.Bracket(single))),
        key,
        "integer",
        [
            ("Find the angle of one.", t.equals(single, degrees(each))),
            ("Find how much larger the angle is.", t.equals(t.sub(large, small), degrees(apart))),
            ("Divide.", t.equals(t.divide(degrees(apart), degrees(each)), key)),
        ],
        [(m.DEGREES_FOR_MORE, apart), (m.ADDS_FOR_MORE, some + others), (m.READS_ONE_OF_TWO, some)],
        ("more", total, some, others),
        (360,),
        n=all_,
        a=large,
        b=small,
    )


def _keep_more(total: int, some: int, others: int) -> bool:
    return others < some - 1 and some + others < total and others != some - others


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _some, _keep_some, {"each": (2, 3, 4, 5, 6, 8, 9, 10, 12, 15), "some": range(3, 26, 2)}
        ),
        Brief(_counted, _keep_some, {"each": (3, 4, 5, 6, 9, 10, 12, 20), "some": range(4, 25, 4)}),
    ),
    Tier.CORE: (
        Brief(_angle, _keep_angle, {"total": _SHARED, "some": (5, 7, 8, 11, 14, 20, 25)}),
        Brief(_number, _keep_angle, {"total": _SHARED, "some": (3, 4, 6, 9, 10, 15)}),
        Brief(
            _other,
            _keep_other,
            {"each": (3, 4, 5, 6, 8, 10), "some": (6, 8, 9, 12), "others": (7, 10, 15, 20)},
        ),
        Brief(
            _fourth,
            _keep_fourth,
            {"a": (72, 84, 96, 105, 120), "b": (45, 60, 78, 90), "c": (36, 54, 63, 117)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(_all, _keep_all, {"total": _SHARED, "some": range(4, 29)}),
        Brief(
            _more,
            _keep_more,
            {
                "total": (20, 24, 36, 40, 60, 72, 90, 120),
                "some": (9, 11, 14, 17),
                "others": (4, 5, 6),
            },
        ),
    ),
}
"""The short questions of each tier."""
