"""Ratios where the amount of one part is given."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators._bars import shares as bars_of
from generators._turns import by_turns
from generators.ratio._amounts_in_brief import ONE_PART
from generators.ratio._one_part_mistakes import ADDS, AS_TOTAL, GRAMS, OTHER_ONLY, UNDIVIDED
from generators.ratio._parts import TRIPLES, amount, turned, whole_ratio
from itembank.figures.kinds.number.bar_model import BarModel
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_A, _B, _C = t.Sym("a"), t.Sym("b"), t.Sym("c")
_PAIRS = tuple((a, b) for a in range(2, 10) for b in range(1, 10) if a != b and gcd(a, b) == 1)
_COUNTED = (
    "A flower bed has red and white tulips in the ratio {r}. There are {n} red tulips. "
    "How many are white?",
    "A club has juniors and seniors in the ratio {r}. There are {n} juniors. "
    "How many seniors are there?",
    "A depot has electric and diesel buses in the ratio {r}. There are {n} electric buses. "
    "How many are diesel?",
)
_MIXED = (
    (
        "Sand and compost are mixed in the ratio {r} by mass. The mix has {n} of compost. "
        "What is the mass of the whole mix?",
        "kg",
    ),
    (
        "A tank holds rainwater and tap water in the ratio {r}. It holds {n} of tap water. "
        "How many litres of water are in the tank?",
        "l",
    ),
    (
        "A club spends money on coaching and pool hire in the ratio {r}. "
        "Pool hire costs {n}. How much does it spend altogether?",
        "£",
    ),
)
_BLENDS = (
    "A breakfast mix has oats, nuts and seeds in the ratio {r} by mass. It has {n} of nuts. "
    "What is its total mass in kilograms?",
    "A potting mix has loam, bark and sand in the ratio {r} by mass. It has {n} of bark. "
    "What is its total mass in kilograms?",
    "A seed mix has rye, clover and vetch in the ratio {r} by mass. It has {n} of clover. "
    "What is its total mass in kilograms?",
)
_DRAWN = (
    ("The bars show the members of a club.", ("juniors", "seniors")),
    ("The bars show the bulbs in a bed.", ("tulips", "lilies")),
    ("The bars show the tickets that were sold.", ("singles", "returns")),
)


def _keep_other(pair: tuple[int, int], value: int) -> bool:
    return value not in pair


def _keep_all(pair: tuple[int, int], value: int) -> bool:
    # One part alone is found without dividing.
    return pair[0] > 1 and value not in pair


def _other_drawn(topic: Topic, tier: Tier, pair: tuple[int, int], value: int) -> Draft:
    """Return the question for the other of two bars, where the first says what it comes to."""
    a, b = pair
    lead, names = by_turns(_DRAWN, a + b + value)
    given, key = t.Int(a * value), t.Int(b * value)
    figure = _bars(names, pair, given)
    text = (f"{lead} How many {names[1]} are there?",)
    whole = value % (a + b) == 0
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (
            _worth(a, given, t.Int(value)),
            Step(
                f"The other bar has {_parts(b)}, so multiply by {b}.",
                t.equals(t.times(t.Int(b), t.Int(value)), key),
            ),
        ),
        slips(
            (ADDS, a * value + b - a),
            (UNDIVIDED, a * value * b),
            (AS_TOTAL, a * value // (a + b) * b if whole else None),
        ),
        ("other drawn", pair, value),
        figure=figure,
    )


def _all_drawn(topic: Topic, tier: Tier, pair: tuple[int, int], value: int) -> Draft:
    """Return the question for both bars together, where the first says what it comes to."""
    a, b = pair
    lead, names = by_turns(_DRAWN, a + b + value)
    given, key, count = t.Int(a * value), t.Int((a + b) * value), t.Int(a + b)
    figure = _bars(names, pair, given)
    text = (f"{lead} How many are there altogether?",)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (
            _worth(a, given, t.Int(value)),
            Step("Add to find the number of parts.", t.equals(t.add(t.Int(a), t.Int(b)), count)),
            Step("Multiply to find the whole.", t.equals(t.times(count, t.Int(value)), key)),
        ),
        slips((OTHER_ONLY, b * value), (UNDIVIDED, a * value * (a + b))),
        ("all drawn", pair, value),
        figure=figure,
    )


def _bars(names: tuple[str, str], pair: tuple[int, int], given: t.Node) -> BarModel:
    named = tuple(zip(map(str.capitalize, names), pair, strict=True))
    return bars_of(named, known=(0, given))


def _keep_blend(triple: tuple[int, int, int], value: int) -> bool:
    # The given part must not be a single part, or the slip of not dividing goes unseen.
    return turned(triple, sum(triple) + value)[1] != 1


@register
class OnePart(Topic):
    """The other part; then the total; then the total of three parts in another unit."""

    id = "ratio.one-part"
    title = "Using a ratio when one part is known"
    statements = ("ratio.division",)
    misconceptions = (ADDS, UNDIVIDED, AS_TOTAL, OTHER_ONLY, GRAMS)
    prerequisites = ("ratio.share",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(None, pair=_PAIRS, value=range(3, 13)).also(
                _other_drawn, _keep_other, pair=_PAIRS, value=range(3, 13)
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(None, pair=_PAIRS, halves=(5, 7, 8, 9, 11, 12, 13, 15, 16, 20)).also(
                _all_drawn, _keep_all, pair=_PAIRS, value=range(6, 19)
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(_keep_blend, triple=TRIPLES, value=(25, 35, 45, 55, 60, 75, 80, 110, 120, 150))
        ),
    }
    spaces = with_brief(spaces, ONE_PART)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._other(*values)
        return self._total(*values) if tier is Tier.CORE else self._blend(*values)

    def _other(self, pair: tuple[int, int], value: int) -> Draft:
        a, b = pair
        given, key, shown = t.Int(a * value), t.Int(b * value), whole_ratio(a, b)
        wrong: list[tuple[Misconception, t.Node]] = [
            (ADDS, t.Int(a * value + b - a)),
            (UNDIVIDED, t.Int(a * value * b)),
        ]
        # Only where the mistake comes out whole: a pupil who meets a fraction here turns back.
        if value % (a + b) == 0:
            wrong.append((AS_TOTAL, t.Int(a * value // (a + b) * b)))
        return Draft(
            prompt=prompt(by_turns(_COUNTED, a + b + value), r=shown, n=given),
            ask=Find(_B, (t.equals(t.Ratio((_A, _B)), shown), t.equals(_A, given))),
            key=key,
            form="integer",
            steps=(
                _worth(a, given, t.Int(value)),
                Step(
                    f"The other kind has {_parts(b)}, so multiply by {b}.",
                    t.equals(t.times(t.Int(b), t.Int(value)), key),
                ),
            ),
            slips=slips(*wrong),
            twin=("other", pair, value),
        )

    def _total(self, pair: tuple[int, int], halves: int) -> Draft:
        given_parts, other = pair
        worth = Fraction(halves, 2)
        text, unit = by_turns(_MIXED, other + given_parts + halves)
        count, shown = given_parts + other, whole_ratio(other, given_parts)
        given, key = amount(worth * given_parts, unit), amount(worth * count, unit)
        part_worth = amount(worth, unit)
        return Draft(
            prompt=prompt(text, r=shown, n=given),
            ask=Find(t.add(_A, _B), (t.equals(t.Ratio((_A, _B)), shown), t.equals(_B, given))),
            key=key,
            form="amount",
            steps=(
                _worth(given_parts, given, part_worth),
                Step(
                    "Add to find the number of parts.", t.equals(t.add(*shown.parts), t.Int(count))
                ),
                Step(
                    "Multiply to find the whole.", t.equals(t.times(t.Int(count), part_worth), key)
                ),
            ),
            slips=slips(
                (OTHER_ONLY, amount(worth * other, unit)),
                (UNDIVIDED, amount(worth * given_parts * count, unit)),
            ),
            twin=("total", pair, halves),
        )

    def _blend(self, triple: tuple[int, int, int], value: int) -> Draft:
        parts = turned(triple, sum(triple) + value)
        count, middle, shown = sum(parts), parts[1], whole_ratio(*parts)
        given, part_worth = amount(middle * value, "g"), amount(value, "g")
        whole, key = amount(count * value, "g"), amount(Fraction(count * value, 1000), "kg")
        return Draft(
            prompt=prompt(by_turns(_BLENDS, triple[0] + triple[1] + value), r=shown, n=given),
            ask=Find(
                t.add(_A, _B, _C), (t.equals(t.Ratio((_A, _B, _C)), shown), t.equals(_B, given))
            ),
            key=key,
            form="quantity",
            steps=(
                _worth(middle, given, part_worth),
                Step(
                    "Add to find the number of parts.", t.equals(t.add(*shown.parts), t.Int(count))
                ),
                Step(
                    "Multiply to find the whole.",
                    t.equals(t.times(t.Int(count), part_worth), whole),
                ),
                Step("Change grams to kilograms: divide by 1000.", t.equals(whole, key)),
            ),
            slips=slips(
                (OTHER_ONLY, amount(Fraction((count - middle) * value, 1000), "kg")),
                (UNDIVIDED, amount(Fraction(middle * value * count, 1000), "kg")),
                (GRAMS, amount(count * value, "kg")),
            ),
            twin=("blend", triple, value),
        )


def _parts(count: int) -> str:
    return "1 part" if count == 1 else f"{count} parts"


def _worth(count: int, given: t.Node, part_worth: t.Node) -> Step:
    """Return the line that finds one part from the given amount."""
    return Step(
        f"The given amount is {_parts(count)}, so divide to find one part.",
        t.equals(t.divide(given, t.Int(count)), part_worth),
    )
