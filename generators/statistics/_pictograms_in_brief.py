"""Short questions about pictograms that nobody has to see: what squares of a key stand for."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.statistics import _chart_mistakes as m
from itembank.items.forms.form_rules import simplest_node
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told, whole
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_THINGS = ("buses", "books", "swimmers", "trees", "trays")
_EACH = (2, 4, 5, 6, 8, 10, 12, 20)


def _squares(topic: Topic, tier: Tier, each: int, count: int) -> Draft:
    """Return the question how many things some whole squares stand for."""
    things = by_turns(_THINGS, each + count)
    single, n, key = t.Int(each), t.Int(count), t.Int(each * count)
    return told(
        f"A square of a pictogram stands for {{k}} {things}. "
        f"How many {things} do {{n}} squares show?",
        t.times(n, single),
        key,
        "integer",
        [(f"Each square stands for {each}, so multiply.", t.equals(t.times(n, single), key))],
        [(m.IGNORES_KEY, count), (m.PART_IS_ONE, each + count)],
        ("squares", each, count),
        k=single,
        n=n,
    )


def _needed(topic: Topic, tier: Tier, each: int, count: int) -> Draft:
    """Return the question how many squares some things need."""
    things = by_turns(_THINGS, each + count)
    single, n, key = t.Int(each), t.Int(each * count), t.Int(count)
    return told(
        f"A square of a pictogram stands for {{k}} {things}. How many squares show {{n}} {things}?",
        t.divide(n, single),
        key,
        "integer",
        [(f"Each square stands for {each}, so divide.", t.equals(t.divide(n, single), key))],
        [(m.THINGS_FOR_SQUARES, each * count), (m.IGNORES_KEY, each)],
        ("needed", each, count),
        k=single,
        n=n,
    )


def _parts(topic: Topic, tier: Tier, each: int, count: int, quarters: int) -> Draft:
    """Return the question how many things some squares and a part of one stand for."""
    things = by_turns(_THINGS, each + count)
    squares = Fraction(4 * count + quarters, 4)
    part = Fraction(quarters, 4)
    single, n, key = t.Int(each), simplest_node(squares), t.Int(int(each * squares))
    whole_ones, rest = t.Int(each * count), t.Int(int(each * part))
    return told(
        f"A square of a pictogram stands for {{k}} {things}. "
        f"How many {things} do {{n}} squares show?",
        t.times(n, single),
        key,
        "integer",
        [
            (
                "Find what the whole squares stand for.",
                t.equals(t.times(t.Int(count), single), whole_ones),
            ),
            (
                "Find what the part stands for.",
                t.equals(t.times(simplest_node(part), single), rest),
            ),
            ("Add.", t.equals(t.add(whole_ones, rest), key)),
        ],
        [
            (m.LEAVES_OUT_PART, each * count),
            (m.PART_AS_WHOLE, each * (count + 1)),
            (m.PART_IS_ONE, each * count + 1),
        ],
        ("parts", each, count, quarters),
        k=single,
        n=n,
    )


def _keep_parts(each: int, count: int, quarters: int) -> bool:
    return each * quarters % 4 == 0 and each * quarters != 4


def _key_of(topic: Topic, tier: Tier, each: int, count: int, quarters: int) -> Draft:
    """Return the question what one square stands for, from squares and a part of one."""
    things = by_turns(_THINGS, each + count)
    squares = Fraction(4 * count + quarters, 4)
    n, given, key = simplest_node(squares), t.Int(int(each * squares)), t.Int(each)
    top, bottom = t.Int(squares.numerator), t.Int(squares.denominator)
    small = t.Int(each // squares.denominator)
    pieces = {2: "halves", 4: "quarters"}[squares.denominator]
    return told(
        f"In a pictogram {{n}} squares stand for {{g}} {things}. "
        "How many does one square stand for?",
        t.divide(given, n),
        key,
        "integer",
        [
            (f"Find how many {pieces} there are.", t.equals(n, t.Frac(top, bottom))),
            ("Divide by that.", t.equals(t.divide(given, top), small)),
            (f"One square has {bottom.n} {pieces}.", t.equals(t.times(bottom, small), key)),
        ],
        [
            (m.LEAVES_OUT_PART, whole(Fraction(given.n, count))),
            (m.PART_AS_WHOLE, whole(Fraction(given.n, count + 1))),
            (m.PART_IS_ONE, each // squares.denominator),
            (m.THINGS_FOR_SQUARES, given.n),
        ],
        ("key", each, count, quarters),
        n=n,
        g=given,
    )


def _keep_key(each: int, count: int, quarters: int) -> bool:
    return each * quarters % 4 == 0 and each % Fraction(quarters, 4).denominator == 0


def _from_other(
    topic: Topic, tier: Tier, each: int, first: int, count: int, quarters: int
) -> Draft:
    """Return the question how many things squares stand for, from what others stand for."""
    things = by_turns(_THINGS, each + count + first)
    squares = Fraction(4 * count + quarters, 4)
    n, known, given = simplest_node(squares), t.Int(first), t.Int(first * each)
    single, key = t.Int(each), t.Int(int(each * squares))
    return told(
        f"In a pictogram {{a}} squares show {{g}} {things}. "
        f"How many {things} do {{n}} squares show?",
        t.times(t.divide(given, known), n),
        key,
        "integer",
        [
            ("Find what one square stands for.", t.equals(t.divide(given, known), single)),
            (
                "Find what the part of a square stands for.",
                t.equals(
                    t.times(simplest_node(squares - count), single),
                    t.Int(int(each * (squares - count))),
                ),
            ),
            (
                "Add it to the whole squares.",
                t.equals(
                    t.add(
                        t.times(t.Int(count), single),
                        t.Int(int(each * (squares - count))),
                    ),
                    key,
                ),
            ),
        ],
        [
            (m.LEAVES_OUT_PART, each * count),
            (m.PART_AS_WHOLE, each * (count + 1)),
            (m.PART_IS_ONE, each * count + 1),
        ],
        ("other", each, first, count, quarters),
        a=known,
        g=given,
        n=n,
    )


def _keep_from_other(each: int, first: int, count: int, quarters: int) -> bool:
    return first not in (count, each) and _keep_parts(each, count, quarters)


BRIEF = {
    Tier.SUPPORT: (
        Brief(_squares, lambda each, count: each != count, {"each": _EACH, "count": range(3, 10)}),
        Brief(
            _needed, lambda each, count: each != count, {"each": _EACH, "count": range(4, 12, 3)}
        ),
    ),
    Tier.CORE: (
        Brief(
            _parts,
            _keep_parts,
            {"each": (*_EACH, 14, 16, 30), "count": range(2, 9), "quarters": (1, 2, 3)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(_key_of, _keep_key, {"each": _EACH, "count": range(2, 7), "quarters": (1, 2, 3)}),
        Brief(
            _from_other,
            _keep_from_other,
            {"each": (4, 6, 8, 10), "first": (3, 5, 7), "count": (2, 4, 6), "quarters": (1, 2, 3)},
        ),
    ),
}
"""The short questions of each tier."""
