"""Sharing an amount in a given ratio."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._bars import shares as bars_of
from generators._turns import by_turns
from generators.ratio._parts import COPRIME, TRIPLES, amount, swapped, turned, whole_ratio
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

REVERSED = Misconception(
    "ratio.share-reversed",
    "finds the shares and gives them in the other order",
    "Which number of the ratio comes first? Is your first amount the one that goes with it?",
)
EQUAL = Misconception(
    "ratio.share-equal",
    "shares equally, without looking at the ratio",
    "If the shares were equal, what would the ratio be?",
)
AS_FRACTION = Misconception(
    "ratio.share-as-fraction",
    "takes the ratio a : b as the fraction a/b of the whole amount",
    "How many parts are there altogether? What fraction of the whole is the first share?",
)
PARTS = Misconception(
    "ratio.share-parts-for-amounts",
    "gives the numbers of the ratio as the amounts",
    "Add up your amounts. Do they make the number in the question?",
)
STOPS = Misconception(
    "ratio.share-one-part",
    "finds the value of one part and stops",
    "What does that number stand for? How many of those parts does each share have?",
)
ONE_SHARE = Misconception(
    "ratio.share-not-difference",
    "gives the largest share, not how much larger it is",
    "Read the last sentence again. What are you asked to compare?",
)

_A, _B, _C = t.Sym("a"), t.Sym("b"), t.Sym("c")
_BOTH, _ALL = t.Ratio((_A, _B)), t.Ratio((_A, _B, _C))
_UNITS = ("£", "kg", "cm", "l")

_PLANTED = (
    "A market garden plants {n} bulbs: tulips, lilies and irises in the ratio {r}. "
    "How many of each does it plant?",
    "A swimming club has {n} members: juniors, seniors and masters in the ratio {r}. "
    "How many are there of each?",
    "A bus depot sells {n} tickets: single, return and weekly in the ratio {r}. "
    "How many of each does it sell?",
)
_PAID = (
    (
        "Juniors, seniors and masters share a prize of {n} in the ratio {r}. "
        "How much more do the {big} get than the {small}?",
        ("juniors", "seniors", "masters"),
    ),
    (
        "The costs of seeds, tools and pots are in the ratio {r}. They cost {n} altogether. "
        "How much more do the {big} cost than the {small}?",
        ("seeds", "tools", "pots"),
    ),
    (
        "The costs of brushes, mops and buckets are in the ratio {r}. They cost {n} altogether. "
        "How much more do the {big} cost than the {small}?",
        ("brushes", "mops", "buckets"),
    ),
)


_DRAWN_TWO = (
    ("The bars show the members of a club.", ("juniors", "seniors")),
    ("The bars show the bulbs in a bed.", ("tulips", "lilies")),
    ("The bars show the tickets that were sold.", ("singles", "returns")),
)
_DRAWN_THREE = (
    ("The bars show how a prize is shared.", "get", ("juniors", "seniors", "masters")),
    ("The bars show what some things cost.", "cost", ("seeds", "tools", "pots")),
    ("The bars show what some things cost.", "cost", ("brushes", "mops", "buckets")),
)


def _keep_drawn(pair: tuple[int, int], value: int, asked: int) -> bool:
    # Where a share is a single part, who stops at one part is right.
    return 1 not in pair and _keep_support(pair, value)


def _keep_three_drawn(triple: tuple[int, int, int], halves: int, asked: int) -> bool:
    return 1 not in triple and sum(triple) <= 18 and halves // 2 not in triple


def _keep_more_drawn(triple: tuple[int, int, int], halves: int, asked: int) -> bool:
    # Where the difference is a single part, who stops at one part is right.
    return _keep_three_drawn(triple, halves, asked) and triple[2] - triple[asked] > 1


def _two_drawn(topic: Topic, tier: Tier, pair: tuple[int, int], value: int, asked: int) -> Draft:
    """Return the question for one of two shares, which are drawn as bars with their total."""
    parts = swapped(pair, sum(pair) + value)
    lead, names = by_turns(_DRAWN_TWO, pair[0] + value)
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
            *_one_part(parts, whole, t.Int(value)),
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


def _three_drawn(
    topic: Topic, tier: Tier, triple: tuple[int, int, int], halves: int, asked: int
) -> Draft:
    """Return the question for one of three shares, or how much more one is than another."""
    parts = turned(triple, sum(triple) + halves)
    worth = Fraction(halves, 2)
    lead, verb, names = by_turns(_DRAWN_THREE, triple[1] + halves)
    whole, part_worth = money_node(worth * sum(parts)), money_node(worth)
    figure = bars_of(zip(_capitals(names), parts, strict=True), whole)
    first = _one_part(parts, whole, part_worth)
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


def _keep_support(pair: tuple[int, int], value: int) -> bool:
    # What a part is worth is not a number of the ratio, so that the two can be told apart.
    return value != pair[0] and value != pair[1]


@register
class Share(Topic):
    """Two shares; then three; then how much larger one share is than another."""

    id = "ratio.share"
    title = "Sharing an amount in a given ratio"
    statements = ("ratio.division",)
    misconceptions = (REVERSED, EQUAL, AS_FRACTION, PARTS, STOPS, ONE_SHARE)
    prerequisites = ("ratio.simplest-form",)
    spaces = {
        Tier.SUPPORT: Space(_keep_support, pair=COPRIME, value=range(2, 13)).also(
            _two_drawn, _keep_drawn, pair=COPRIME, value=range(3, 13), asked=(0, 1)
        ),
        Tier.CORE: Space(None, triple=TRIPLES, value=range(3, 13)).also(
            _three_drawn, _keep_three_drawn, triple=TRIPLES, halves=range(7, 31, 3), asked=(0, 2)
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(None, triple=TRIPLES, quarters=(5, 6, 7, 9, 10, 11, 13, 14, 15, 18, 22)).also(
                _three_drawn,
                _keep_more_drawn,
                triple=TRIPLES,
                halves=range(9, 41, 4),
                asked=(0, 1),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._two(*values)
        return self._three(*values) if tier is Tier.CORE else self._difference(*values)

    def _two(self, pair: tuple[int, int], value: int) -> Draft:
        a, b = swapped(pair, sum(pair) + value)
        unit = by_turns(_UNITS, pair[0] * 2 + pair[1] + value)
        whole, parts = (a + b) * value, whole_ratio(a, b)
        total = amount(whole, unit)
        part_worth, first, second = (
            amount(value, unit),
            amount(a * value, unit),
            amount(b * value, unit),
        )
        half = amount(Fraction(whole, 2), unit)
        wrong: list[tuple[Misconception, t.Node]] = [
            (REVERSED, t.Listing((second, first))),
            (EQUAL, t.Listing((half, half))),
        ]
        # Only where that fraction of the whole is whole, and is not a half as well.
        if a < b and value % b == 0 and 2 * a != b:
            taken = whole * a // b
            wrong.append(
                (AS_FRACTION, t.Listing((amount(taken, unit), amount(whole - taken, unit))))
            )
        return Draft(
            prompt=prompt("Share {n} in the ratio {r}.", n=total, r=parts),
            ask=Find(t.Listing((_A, _B)), (t.equals(t.add(_A, _B), total), t.equals(_BOTH, parts))),
            key=t.Listing((first, second)),
            form="amounts",
            steps=(
                *_one_part((a, b), total, part_worth, ("First", "Second")),
                Step(
                    "Multiply to find the first share.",
                    t.equals(t.times(t.Int(a), part_worth), first),
                ),
                Step(
                    "Multiply to find the second share.",
                    t.equals(t.times(t.Int(b), part_worth), second),
                ),
                Step("Write the shares in the order of the ratio.", t.Listing((first, second))),
            ),
            slips=slips(*wrong),
            twin=("two", pair, value),
        )

    def _three(self, triple: tuple[int, int, int], value: int) -> Draft:
        parts = turned(triple, sum(triple) + value)
        count, whole = sum(parts), sum(parts) * value
        shares = tuple(t.Int(part * value) for part in parts)
        wrong: list[tuple[Misconception, t.Node]] = [
            (REVERSED, t.Listing(shares[::-1])),
            (PARTS, t.Listing(tuple(map(t.Int, parts)))),
        ]
        # A pupil who shares equally stops where it does not come out; 1 : 1 : 1 would be right.
        if whole % 3 == 0 and count != 3:
            wrong.append((EQUAL, t.Listing((t.Int(whole // 3),) * 3)))
        story = by_turns(_PLANTED, triple[1] + value)
        shown, total = whole_ratio(*parts), t.Int(whole)
        return Draft(
            prompt=prompt(story, n=total, r=shown),
            ask=Find(
                t.Listing((_A, _B, _C)),
                (t.equals(t.add(_A, _B, _C), total), t.equals(_ALL, shown)),
            ),
            key=t.Listing(shares),
            form="amounts",
            steps=(
                *_one_part(parts, total, t.Int(value), ("First", "Second", "Third")),
                *(
                    Step(
                        f"Multiply to find the {place} share.",
                        t.equals(t.times(t.Int(part), t.Int(value)), t.Int(part * value)),
                    )
                    for place, part in zip(("first", "second", "third"), parts, strict=True)
                ),
                Step("Write the shares in the order of the ratio.", t.Listing(shares)),
            ),
            slips=slips(*wrong),
            twin=("three", triple, value),
        )

    def _difference(self, triple: tuple[int, int, int], quarters: int) -> Draft:
        parts = turned(triple, sum(triple) + quarters)
        small, _, large = triple
        worth = Fraction(quarters, 4)
        text, names = by_turns(_PAID, triple[1] + quarters)
        letters = (_A, _B, _C)
        big, little = parts.index(large), parts.index(small)
        text = text.replace("{big}", names[big]).replace("{small}", names[little])
        # The ratio is printed large, so that cancelling it is the first step of a challenge.
        factor = by_turns((10, 15, 20, 25), quarters)
        shown, total = whole_ratio(*(p * factor for p in parts)), money_node(worth * sum(parts))
        top, bottom = money_node(worth * large), money_node(worth * small)
        key, part_worth = money_node(worth * (large - small)), money_node(worth)
        return Draft(
            prompt=prompt(text, n=total, r=shown),
            ask=Find(
                t.sub(letters[big], letters[little]),
                (t.equals(t.add(_A, _B, _C), total), t.equals(_ALL, shown)),
            ),
            key=key,
            form="money",
            steps=(
                Step(
                    f"Divide every part of the ratio by {factor}.",
                    t.equals(shown, whole_ratio(*parts)),
                ),
                *_one_part(parts, total, part_worth),
                Step("Find the largest share.", t.equals(t.times(t.Int(large), part_worth), top)),
                Step(
                    "Find the smallest share.", t.equals(t.times(t.Int(small), part_worth), bottom)
                ),
                Step("Subtract the smallest from the largest.", t.equals(t.sub(top, bottom), key)),
            ),
            slips=slips((ONE_SHARE, top), (STOPS, part_worth)),
            twin=("difference", triple, quarters),
        )


def _one_part(
    parts: tuple[int, ...], total: t.Node, part_worth: t.Node, names: tuple[str, ...] = ()
) -> tuple[Step, Step]:
    """Return the lines that lead to the value of one part, with bars where shares have names."""
    count = t.Int(sum(parts))
    figure = bars_of(zip(names, parts, strict=True), total) if names else None
    return (
        Step("Add to find the number of parts.", t.equals(t.add(*map(t.Int, parts)), count)),
        Step(
            "Divide to find what one part is worth.",
            t.equals(t.divide(total, count), part_worth),
            figure,
        ),
    )
