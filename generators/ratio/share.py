"""Sharing an amount in a given ratio."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.ratio._common import COPRIME, TRIPLES, amount, swapped, turned, whole_ratio
from itembank.items.forms import money_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.registry import register
from itembank.items.slips import slips
from itembank.items.space import Space
from itembank.items.topic import Topic
from itembank.notation.tree import Int, Listing, Node, Ratio, Sym, add, divide, equals, sub, times

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

_A, _B, _C = Sym("a"), Sym("b"), Sym("c")
_BOTH, _ALL = Ratio((_A, _B)), Ratio((_A, _B, _C))
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


def _keep_support(pair: tuple[int, int], value: int) -> bool:
    return value != pair[0] and value != pair[1]


@register
class Share(Topic):
    """Two shares; then three; then how much larger one share is than another."""

    id = "ratio.share"
    title = "Sharing an amount in a given ratio"
    misconceptions = (REVERSED, EQUAL, AS_FRACTION, PARTS, STOPS, ONE_SHARE)
    prerequisites = ("ratio.simplest-form",)
    spaces = {
        Tier.SUPPORT: Space(_keep_support, pair=COPRIME, value=range(2, 13)),
        Tier.CORE: Space(None, triple=TRIPLES, value=range(3, 13)),
        Tier.CHALLENGE: Space(
            None, triple=TRIPLES, quarters=(5, 6, 7, 9, 10, 11, 13, 14, 15, 18, 22)
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._two(*values)
        return self._three(*values) if tier is Tier.CORE else self._difference(*values)

    def _two(self, pair: tuple[int, int], value: int) -> Draft:
        a, b = swapped(pair, sum(pair) + value)
        unit = _UNITS[(pair[0] * 2 + pair[1] + value) % 4]
        whole, parts = (a + b) * value, whole_ratio(a, b)
        total = amount(whole, unit)
        one, first, second = amount(value, unit), amount(a * value, unit), amount(b * value, unit)
        half = amount(Fraction(whole, 2), unit)
        wrong: list[tuple[Misconception, Node]] = [
            (REVERSED, Listing((second, first))),
            (EQUAL, Listing((half, half))),
        ]
        # Only where that fraction of the whole is whole, and is not a half as well.
        if a < b and value % b == 0 and 2 * a != b:
            taken = whole * a // b
            wrong.append((AS_FRACTION, Listing((amount(taken, unit), amount(whole - taken, unit)))))
        return Draft(
            prompt=prompt("Share {n} in the ratio {r}.", n=total, r=parts),
            ask=Find(Listing((_A, _B)), (equals(add(_A, _B), total), equals(_BOTH, parts))),
            key=Listing((first, second)),
            form="amounts",
            steps=(
                *_one_part((a, b), total, one),
                Step("Multiply to find the first share.", equals(times(Int(a), one), first)),
                Step("Multiply to find the second share.", equals(times(Int(b), one), second)),
                Step("Write the shares in the order of the ratio.", Listing((first, second))),
            ),
            slips=slips(*wrong),
            twin=("two", pair, value),
        )

    def _three(self, triple: tuple[int, int, int], value: int) -> Draft:
        parts = turned(triple, sum(triple) + value)
        count, whole = sum(parts), sum(parts) * value
        shares = tuple(Int(part * value) for part in parts)
        wrong: list[tuple[Misconception, Node]] = [
            (REVERSED, Listing(shares[::-1])),
            (PARTS, Listing(tuple(map(Int, parts)))),
        ]
        if whole % 3 == 0 and count != 3:
            wrong.append((EQUAL, Listing((Int(whole // 3),) * 3)))
        story = _PLANTED[(triple[1] + value) % 3]
        shown, total = whole_ratio(*parts), Int(whole)
        return Draft(
            prompt=prompt(story, n=total, r=shown),
            ask=Find(
                Listing((_A, _B, _C)),
                (equals(add(_A, _B, _C), total), equals(_ALL, shown)),
            ),
            key=Listing(shares),
            form="amounts",
            steps=(
                *_one_part(parts, total, Int(value)),
                *(
                    Step(
                        f"Multiply to find the {place} share.",
                        equals(times(Int(part), Int(value)), Int(part * value)),
                    )
                    for place, part in zip(("first", "second", "third"), parts, strict=True)
                ),
                Step("Write the shares in the order of the ratio.", Listing(shares)),
            ),
            slips=slips(*wrong),
            twin=("three", triple, value),
        )

    def _difference(self, triple: tuple[int, int, int], quarters: int) -> Draft:
        parts = turned(triple, sum(triple) + quarters)
        small, _, large = triple
        worth = Fraction(quarters, 4)
        text, names = _PAID[(triple[1] + quarters) % 3]
        letters = (_A, _B, _C)
        big, little = parts.index(large), parts.index(small)
        text = text.replace("{big}", names[big]).replace("{small}", names[little])
        factor = (10, 15, 20, 25)[quarters % 4]
        shown, total = whole_ratio(*(p * factor for p in parts)), money_node(worth * sum(parts))
        top, bottom = money_node(worth * large), money_node(worth * small)
        key, one = money_node(worth * (large - small)), money_node(worth)
        return Draft(
            prompt=prompt(text, n=total, r=shown),
            ask=Find(
                sub(letters[big], letters[little]),
                (equals(add(_A, _B, _C), total), equals(_ALL, shown)),
            ),
            key=key,
            form="money",
            steps=(
                Step(
                    f"Divide every part of the ratio by {factor}.",
                    equals(shown, whole_ratio(*parts)),
                ),
                *_one_part(parts, total, one),
                Step("Find the largest share.", equals(times(Int(large), one), top)),
                Step("Find the smallest share.", equals(times(Int(small), one), bottom)),
                Step("Subtract the smallest from the largest.", equals(sub(top, bottom), key)),
            ),
            slips=slips((ONE_SHARE, top), (STOPS, one)),
            twin=("difference", triple, quarters),
        )


def _one_part(parts: tuple[int, ...], total: Node, one: Node) -> tuple[Step, Step]:
    """Return the lines that lead to the value of one part."""
    count = Int(sum(parts))
    return (
        Step("Add to find the number of parts.", equals(add(*map(Int, parts)), count)),
        Step("Divide to find what one part is worth.", equals(divide(total, count), one)),
    )
