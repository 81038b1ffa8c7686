"""Choosing the best value of three packs."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.ratio._parts import amount
from itembank.items.forms.form_rules import decimal_node, money_node
from itembank.items.item import Choose, Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

LOWEST = Misconception(
    "ratio.value-lowest-price",
    "chooses the pack with the lowest price",
    "You pay least for that pack. How many do you get for your money?",
)
BIGGEST = Misconception(
    "ratio.value-biggest-pack",
    "takes the biggest pack to be the best value",
    "Is a big pack always cheaper for each gram? How could you check?",
)
DEAREST = Misconception(
    "ratio.value-dearest-unit",
    "finds the price of the same amount of each and chooses the highest",
    "Find the price of the same amount of each. Would you rather pay more or less for it?",
)
UNITS_LOST = Misconception(
    "ratio.value-units-ignored",
    "divides by the numbers without making the units the same",
    "Which packs are in grams, and which in kilograms? How many grams make a kilogram?",
)

_NAMES = ("Pack A", "Pack B", "Pack C")
_TURNS = ((0, 1, 2), (1, 2, 0), (2, 0, 1), (0, 2, 1), (1, 0, 2), (2, 1, 0))
_THINGS = ("pansies", "roses", "bulbs", "swim passes")
_GOODS = ("plant food", "dried fruit", "grass seed", "mixed nuts")


def _keep(
    sizes: tuple[int, ...], price: int, order: tuple[int, int, int], less: int, more: int
) -> bool:
    """Keep packs whose prices rise with their sizes, as in a shop.

    `order` is the pack of middling value, the best and the worst. The smallest pack (support), the
    largest (core) or the one in grams (challenge) lies between the other two.
    """
    middle, good, bad = order
    rates = [0, 0, 0]
    rates[middle], rates[good], rates[bad] = price, price - less, price + more
    return sizes[0] * rates[0] < sizes[1] * rates[1] < sizes[2] * rates[2]


@register
class BestValue(Topic):
    """By number of things; then by mass; then by mass in different units."""

    id = "ratio.best-value"
    title = "Choosing the best value"
    statements = ("ratio.compound-units",)
    misconceptions = (LOWEST, BIGGEST, DEAREST, UNITS_LOST)
    prerequisites = ("ratio.proportion",)
    # An order names, by size, the pack of middling value, the best and the worst. The pack
    # that a slip of the tier points at is never the best, so that the slip always shows.
    spaces = {
        Tier.SUPPORT: Space(
            _keep,
            sizes=((2, 3, 5), (3, 4, 6), (4, 5, 8), (4, 6, 10), (3, 5, 8), (5, 8, 12)),
            price=(60, 75, 80, 95, 120),
            order=((0, 1, 2), (0, 2, 1)),
            less=(2, 4, 5),
            more=(2, 3, 5),
        ),
        Tier.CORE: Space(
            _keep,
            sizes=((200, 300, 500), (250, 400, 700), (300, 450, 600), (150, 400, 500)),
            price=(32, 40, 46, 58, 64, 76),
            order=((2, 0, 1), (2, 1, 0)),
            less=(2, 4, 6),
            more=(2, 4, 6),
        ),
        Tier.CHALLENGE: Space(
            _keep,
            sizes=((500, 800, 1200), (600, 900, 1500), (400, 1200, 2500), (750, 1500, 2000)),
            price=(32, 40, 46, 58),
            order=((0, 1, 2), (0, 2, 1), (2, 0, 1), (2, 1, 0)),
            less=(2, 4, 6),
            more=(2, 4, 6),
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        sizes, price, order, less, more = values
        middle, good, bad = order
        rates = [price] * 3
        rates[good], rates[bad] = price - less, price + more
        turn = by_turns(_TURNS, sizes[1] // 5 + price + less + more // 2 + good)
        label = {size: _NAMES[turn.index(size)] for size in range(3)}
        # The price of one thing, or of 100 grams, and how many of those a pack holds.
        counts = [Fraction(size) if tier is Tier.SUPPORT else Fraction(size, 100) for size in sizes]
        prices = [_pence(int(rates[i] * counts[i])) for i in range(3)]
        shown = [_shown(tier, sizes[i], i == middle) for i in range(3)]
        goods = by_turns(
            _THINGS if tier is Tier.SUPPORT else _GOODS,
            price // 2 + sizes[0] // 5 + less // 2 + more,
        )
        text = " ".join(f"{_NAMES[i]}: {{n{i}}} for {{p{i}}}." for i in range(3))
        text = f"Which pack of {goods} is the best value? {text}"
        runs: dict[str, t.Node] = {}
        for place, size in enumerate(turn):
            runs[f"n{place}"], runs[f"p{place}"] = shown[size], prices[size]
        wrong = [(DEAREST, t.Label(label[bad]))]
        slip = {Tier.SUPPORT: LOWEST, Tier.CORE: BIGGEST, Tier.CHALLENGE: UNITS_LOST}[tier]
        wrong.append((slip, t.Label(label[middle])))
        key = t.Label(label[good])
        measure = "one" if tier is Tier.SUPPORT else "100 g"
        ranked = [_pence(rates[i]) for i in (good, middle, bad)]
        return Draft(
            prompt=prompt(text, **runs),
            ask=Choose(
                tuple((label[size], t.divide(prices[size], shown[size])) for size in turn), "least"
            ),
            key=key,
            form="name",
            steps=(
                *(
                    Step(
                        f"{label[size]}: write the mass in grams.",
                        t.equals(shown[size], amount(sizes[size], "g")),
                    )
                    for size in turn
                    if tier is Tier.CHALLENGE and size != middle
                ),
                *(
                    Step(
                        f"{label[size]}: divide to find the price of {measure}.",
                        _unit_price(prices[size], decimal_node(counts[size]), rates[size]),
                    )
                    for size in turn
                ),
                Step(
                    "Put these prices in order.",
                    t.Relation(ranked[0], (("<", ranked[1]), ("<", ranked[2]))),
                ),
                Step(f"The best value is the pack where {measure} costs least.", key),
            ),
            slips=slips(*wrong),
            twin=(sizes, price, order, less, more),
        )


def _pence(pence: int) -> t.Money:
    """Return a price as a shop writes it: pence below a pound, pounds from there."""
    return t.Money(t.Int(pence), "p") if pence < 100 else money_node(Fraction(pence, 100))


def _unit_price(price: t.Money, count: t.Node, pence: int) -> t.Relation:
    """Return the division that gives a unit price, in the sign of the price and then as sold."""
    pounds = money_node(Fraction(pence, 100))
    same = pounds if price.sign == "£" else t.Money(t.Int(pence), "p")
    sold = _pence(pence)
    return t.equals(t.divide(price, count), same, *(() if same == sold else (sold,)))


def _shown(tier: Tier, size: int, middle: bool) -> t.Node:
    """Return the size as printed: in the challenge one pack is in grams, the others not."""
    if tier is Tier.SUPPORT:
        return t.Int(size)
    if tier is Tier.CORE or middle:
        return amount(size, "g")
    return amount(Fraction(size, 1000), "kg")
