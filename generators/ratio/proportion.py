"""Direct proportion: recipes, costs and exchange."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators._turns import by_turns
from generators.ratio._parts import amount
from itembank.items import kinds
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

ADDS = Misconception(
    "ratio.proportion-additive",
    "adds the same number to both amounts, or takes it from both",
    "If one amount doubles, what should happen to the other? What does your method do?",
)
UNDIVIDED = Misconception(
    "ratio.proportion-undivided",
    "multiplies by the new number without finding the amount for one",
    "Is the amount in the question for one, or for several? What is it for one?",
)
EUROS_KEPT = Misconception(
    "ratio.proportion-euros-kept",
    "compares the prices in euros and gives the difference in euros as pounds",
    "Which sign belongs to the numbers you subtracted: £ or €? Which does the question ask for?",
)
PRICE_ONLY = Misconception(
    "ratio.proportion-price-only",
    "gives the second price in pounds, not how much cheaper it is",
    "Read the last sentence again. Which two prices does it compare?",
)
NO_EXCHANGE = Misconception(
    "ratio.proportion-no-exchange",
    "compares pounds with euros as if they were worth the same",
    "What does the rate in the question tell you? Where have you used it?",
)

_X = t.Sym("x")
_RECIPES = (
    ("A recipe for {p} people needs {n} of flour. How much flour is needed for {q} people?", "g"),
    ("A smoothie for {p} people needs {n} of milk. How much milk is needed for {q} people?", "ml"),
)
_COSTS = (
    "A market garden sells {p} trays of plants for {n}. How much do {q} trays cost at that rate?",
    "A swimming club pays {n} for {p} floats. How much do {q} floats cost at that rate?",
    "A depot sells {p} bus tickets for {n}. How much do {q} bus tickets cost at that rate?",
)
_ABROAD = (
    "The exchange rate is {a} = {b}. A pump costs {n} in one shop and {e} in a second shop. "
    "How much cheaper is it in the second shop, in pounds?",
    "The exchange rate is {a} = {b}. A pool clock costs {n} in one shop and {e} in a second shop. "
    "How much cheaper is it in the second shop, in pounds?",
    "The exchange rate is {a} = {b}. A bus part costs {n} from one firm and {e} from a second "
    "firm. How much cheaper is it from the second firm, in pounds?",
)
_PER_PERSON = (25, 30, 40, 45, 60, 75, 80)


def _keep_cost(few: int, many: int, price: int) -> bool:
    # Neither number is a multiple of the other, so that the way is by one.
    return many % few != 0 and few % many != 0 and gcd(few, many) == 1


def _keep_exchange(rate: int, price: int, less: int) -> bool:
    euros = rate * price
    here = 100 * (price + less)
    # The slips have to give amounts of pounds that differ from the key and from each other.
    straight = euros - here if euros > here else here - euros
    risen = euros * rate // 100 - here
    if rate * rate * price % 100:
        return False
    return straight not in (0, 100 * less, risen) and risen > 0 and risen != 100 * less


@register
class Proportion(Topic):
    """A whole multiple; then by way of one; then an exchange and a comparison."""

    id = "ratio.proportion"
    title = "Direct proportion: recipes, costs and exchange"
    statements = ("ratio.proportion", "ratio.multiplicative")
    misconceptions = (ADDS, UNDIVIDED, NO_EXCHANGE, EUROS_KEPT, PRICE_ONLY)
    prerequisites = ("ratio.unit-form",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(None, few=range(2, 7), multiple=range(2, 6), portion=_PER_PERSON, story=range(2))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _keep_cost,
                few=range(3, 10),
                many=range(4, 15),
                price=(115, 125, 145, 175, 185, 225, 260),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _keep_exchange,
                rate=(110, 115, 120, 125),
                price=(20, 24, 28, 30, 32, 36, 40, 44, 45, 48, 50, 55, 60, 64, 70, 80),
                less=(2, 3, 4, 5, 7, 8, 9),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._recipe(*values)
        return self._cost(*values) if tier is Tier.CORE else self._exchange(*values)

    def _recipe(self, few: int, multiple: int, portion: int, story: int) -> Draft:
        text, unit = _RECIPES[story]
        many, given = few * multiple, few * portion
        shown, key = amount(given, unit), amount(given * multiple, unit)
        return Draft(
            prompt=prompt(text, p=t.Int(few), n=shown, q=t.Int(many)),
            ask=Find(_X, (_same(t.Int(few), t.Int(many), shown),)),
            key=key,
            form="quantity",
            steps=(
                Step(
                    "Find how many times as large the new number is.",
                    t.equals(t.divide(t.Int(many), t.Int(few)), t.Int(multiple)),
                ),
                Step(
                    "Multiply the amount by the same number.",
                    t.equals(t.times(t.Int(multiple), shown), key),
                ),
            ),
            slips=slips(
                (ADDS, amount(given + many - few, unit)), (UNDIVIDED, amount(given * many, unit))
            ),
            twin=("recipe", few, multiple, portion, story),
        )

    def _cost(self, few: int, many: int, price: int) -> Draft:
        unit_price, given = money_node(Fraction(price, 100)), money_node(Fraction(price * few, 100))
        key = money_node(Fraction(price * many, 100))
        added = Fraction(price * few, 100) + many - few
        return Draft(
            prompt=prompt(
                by_turns(_COSTS, few + many + price), p=t.Int(few), n=given, q=t.Int(many)
            ),
            ask=Find(_X, (_same(t.Int(few), t.Int(many), given),)),
            key=key,
            form="money",
            steps=(
                Step(
                    "Divide to find the cost of one.",
                    t.equals(t.divide(given, t.Int(few)), unit_price),
                ),
                Step(
                    f"Multiply to find the cost of {many}.",
                    t.equals(t.times(t.Int(many), unit_price), key),
                ),
            ),
            slips=slips(
                (UNDIVIDED, money_node(Fraction(price * few * many, 100))),
                (ADDS, money_node(added)),
            ),
            twin=("cost", few, many, price),
        )

    def _exchange(self, rate: int, price: int, less: int) -> Draft:
        pound, euro = money_node(1), amount(Fraction(rate, 100), "€")
        here, there = money_node(price + less), amount(Fraction(rate * price, 100), "€")
        second = money_node(price)
        straight = abs(Fraction(rate * price, 100) - price - less)
        in_euros = Fraction(rate * less, 100)
        return Draft(
            prompt=prompt(by_turns(_ABROAD, rate + price + less), a=pound, b=euro, n=here, e=there),
            ask=Find(t.sub(here, _X), (t.equals(t.Ratio((pound, _X)), t.Ratio((euro, there))),)),
            key=money_node(less),
            form="money",
            steps=(
                Step(
                    "Each pound is worth that many euros, so divide to change euros to pounds.",
                    t.equals(t.divide(there, euro), t.Int(price)),
                ),
                Step(
                    "So this is the second price in pounds.",
                    t.equals(t.times(t.Int(price), pound), second),
                ),
                Step(
                    "Subtract it from the first price.",
                    t.equals(t.sub(here, second), money_node(less)),
                ),
            ),
            slips=slips(
                (NO_EXCHANGE, money_node(straight)),
                (EUROS_KEPT, money_node(in_euros)),
                (PRICE_ONLY, second),
            ),
            twin=("exchange", rate, price, less),
        )


def _same(few: t.Node, many: t.Node, given: t.Node) -> t.Relation:
    """Return the relation behind the words: both numbers change in the same ratio."""
    return t.equals(t.Ratio((few, many)), t.Ratio((given, _X)))
