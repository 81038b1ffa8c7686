"""Sharing an amount in a given ratio."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.ratio._parts import COPRIME, TRIPLES, amount, swapped, turned, whole_ratio
from generators.ratio._share_mistakes import AS_FRACTION, EQUAL, ONE_SHARE, PARTS, REVERSED, STOPS
from generators.ratio._share_working import worth_of_a_part
from generators.ratio._shares_drawn import (
    more_fit,
    three_drawn,
    three_fit,
    two_drawn,
    two_fit,
    whole_parts_fit,
)
from itembank.items import kinds
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

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


@register
class Share(Topic):
    """Two shares; then three; then how much larger one share is than another."""

    id = "ratio.share"
    title = "Sharing an amount in a given ratio"
    statements = ("ratio.division",)
    misconceptions = (REVERSED, EQUAL, AS_FRACTION, PARTS, STOPS, ONE_SHARE)
    prerequisites = ("ratio.simplest-form",)
    spaces = {
        Tier.SUPPORT: Space(whole_parts_fit, pair=COPRIME, value=range(2, 13)).also(
            two_drawn, two_fit, pair=COPRIME, value=range(3, 13), asked=(0, 1)
        ),
        Tier.CORE: Space(None, triple=TRIPLES, value=range(3, 13)).also(
            three_drawn, three_fit, triple=TRIPLES, halves=range(7, 31, 3), asked=(0, 2)
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(None, triple=TRIPLES, quarters=(5, 6, 7, 9, 10, 11, 13, 14, 15, 18, 22)).also(
                three_drawn,
                more_fit,
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
                *worth_of_a_part((a, b), total, part_worth, ("First", "Second")),
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
                *worth_of_a_part(parts, total, t.Int(value), ("First", "Second", "Third")),
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
                *worth_of_a_part(parts, total, part_worth),
                Step("Find the largest share.", t.equals(t.times(t.Int(large), part_worth), top)),
                Step(
                    "Find the smallest share.", t.equals(t.times(t.Int(small), part_worth), bottom)
                ),
                Step("Subtract the smallest from the largest.", t.equals(t.sub(top, bottom), key)),
            ),
            slips=slips((ONE_SHARE, top), (STOPS, part_worth)),
            twin=("difference", triple, quarters),
        )
