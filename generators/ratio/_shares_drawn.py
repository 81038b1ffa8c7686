"""Shares drawn as bars with their total."""

from __future__ import annotations

from fractions import Fraction

from generators._bars import shares as bars_of
from generators._turns import by_turns
from generators.ratio._parts import TWO_SORTS, swapped, turned
from generators.ratio._share_mistakes import EQUAL, ONE_SHARE, REVERSED, STOPS
from generators.ratio._share_working import worth_of_a_part
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_DRAWN_THREE = (
    ("The bars show how a prize is shared.", "get", ("juniors", "seniors", "masters")),
    ("The bars show what some things cost.", "cost", ("seeds", "tools", "pots")),
    ("The bars show what some things cost.", "cost", ("brushes", "mops", "buckets")),
)


def two_fit(pair: tuple[int, int], value: int, asked: int) -> bool:
    """Keep pairs whose shares are several parts."""
    # Where a share is a single part, who stops at one part is right.
    return 1 not in pair and whole_parts_fit(pair, value)


def three_fit(triple: tuple[int, int, int], halves: int, asked: int) -> bool:
    """Keep threes whose shares are several parts, and not as many as a part is worth."""
    return 1 not in triple and sum(triple) <= 18 and halves // 2 not in triple


def more_fit(triple: tuple[int, int, int], halves: int, asked: int) -> bool:
    """Keep threes of which two differ by several parts."""
    # Where the difference is a single part, who stops at one part is right.
    return three_fit(triple, halves, asked) and triple[2] - triple[asked] > 1


def two_drawn(topic: Topic, tier: Tier, pair: tuple[int, int], value: int, asked: int) -> Draft:
    """Return the question for one of two shares, which are drawn as bars with their total."""
    parts = swapped(pair, sum(pair) + value)
    lead, names = by_turns(TWO_SORTS, pair[0] + value)
    whole, key = t.Int(sum(parts) * value), t.Int(parts[asked] * value)
    figure = bars_of(zip(_capitals(names), parts, strict=True), whole)
    text = (f"{lead} How many {names[asked]} are there?",)
    half = sum(parts) * value % 2 == 0
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (
            *worth_of_a_part(parts, whole, t.Int(value)),
            Step(
                f"The bar of {names[asked]} has {parts[asked]} parts, so multiply.",
                t.equals(t.times(t.Int(parts[asked]), t.Int(value)), key),
            ),
        ),
        slips(
            (REVERSED, parts[1 - asked] * value),
            (STOPS, value),
            (EQUAL, sum(parts) * value // 2 if half else None),
        ),
        ("two drawn", pair, value, asked),
        figure=figure,
    )


def three_drawn(
    topic: Topic, tier: Tier, triple: tuple[int, int, int], halves: int, asked: int
) -> Draft:
    """Return the question for one of three shares, or how much more one is than another."""
    parts = turned(triple, sum(triple) + halves)
    worth = Fraction(halves, 2)
    lead, verb, names = by_turns(_DRAWN_THREE, triple[1] + halves)
    whole, part_worth = money_node(worth * sum(parts)), money_node(worth)
    figure = bars_of(zip(_capitals(names), parts, strict=True), whole)
    first = worth_of_a_part(parts, whole, part_worth)
    if tier is Tier.CORE:
        key = money_node(worth * parts[asked])
        text = (f"{lead} How much do the {names[asked]} {verb}?",)
        last: tuple[Step, ...] = (
            Step(
                f"The bar of {names[asked]} has {parts[asked]} parts, so multiply.",
                t.equals(t.times(t.Int(parts[asked]), part_worth), key),
            ),
        )
        third = worth * sum(parts) / 3
        # Who shares equally stops where it does not come out in pence.
        comes_out = (100 * third).denominator == 1 and third != worth * parts[asked]
        other = money_node(worth * parts[2 - asked])
        wrong = slips(
            (STOPS, part_worth),
            (REVERSED, other),
            (EQUAL, money_node(third) if comes_out and other != money_node(third) else None),
        )
    else:
        big, little = parts.index(triple[2]), parts.index(triple[asked])
        top, bottom = money_node(worth * parts[big]), money_node(worth * parts[little])
        key = money_node(worth * (parts[big] - parts[little]))
        text = (f"{lead} How much more do the {names[big]} {verb} than the {names[little]}?",)
        last = (
            Step("Find the larger share.", t.equals(t.times(t.Int(parts[big]), part_worth), top)),
            Step(
                "Find the smaller share.",
                t.equals(t.times(t.Int(parts[little]), part_worth), bottom),
            ),
            Step("Subtract the smaller from the larger.", t.equals(t.sub(top, bottom), key)),
        )
        wrong = slips((ONE_SHARE, top), (STOPS, part_worth))
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "money",
        (*first, *last),
        wrong,
        ("three drawn", str(tier), triple, halves, asked),
        figure=figure,
    )


def _capitals(names: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(map(str.capitalize, names))


def whole_parts_fit(pair: tuple[int, int], value: int) -> bool:
    """Keep parts that are not the worth of a part, and mistakes that show."""
    # What a part is worth is not a number of the ratio, so that the two can be told apart.
    return value != pair[0] and value != pair[1]
