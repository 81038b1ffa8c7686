"""Changing money from one currency to another, both ways.

Key stage 3, ratio (England, 2013): "solve problems involving direct … proportion", and "use
compound units … to solve problems" (from memory). The rates are plausible ones, and of no day.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._prices import capital, thing
from generators._turns import by_turns
from generators.ratio._currency_mistakes import (
    ADDS,
    DIVIDES,
    FIRST_RATE,
    IN_POUNDS,
    MULTIPLIES,
    NOT_SPENT,
    ONE_CHANGE,
    SAME,
    SWAPPED,
    UPSIDE_DOWN,
)
from generators.ratio._currency_numbers import (
    DOLLAR,
    EURO,
    back_fits,
    back_wrong,
    more_rates_fit,
    rate_wrong,
    there_fits,
    there_wrong,
    trip_fits,
)
from generators.ratio._parts import amount
from generators.ratio._rates import wrong_amounts
from generators.ratio._two_exchanges import across, person, trip
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_X = t.Sym("x")
_NAMES = {"€": ("euros", "euro"), "$": ("dollars", "dollar")}
_ABROAD = {"€": ("Spain", "Ireland", "Greece", "Italy"), "$": ("New York", "Boston", "Chicago")}
_POUNDS = (
    15, 20, 25, 30, 35, 40, 45, 50, 60, 65, 70, 75, 80, 90, 110, 120, 140, 150, 160, 180, 200, 240,
    250, 300, 350,
)  # fmt: skip
_PRICES = (
    15, 20, 25, 30, 35, 40, 45, 50, 60, 75, 80, 90, 120, 140, 150, 180, 200, 250,
)  # fmt: skip


@register
class Currency(Topic):
    """From pounds; to pounds, and the rate; there and back, and from one currency to another."""

    id = "ratio.currency"
    title = "Changing money at an exchange rate"
    statements = ("ratio.proportion", "number.units")
    misconceptions = (
        DIVIDES,
        MULTIPLIES,
        SAME,
        ADDS,
        UPSIDE_DOWN,
        NOT_SPENT,
        ONE_CHANGE,
        FIRST_RATE,
        IN_POUNDS,
        SWAPPED,
    )
    prerequisites = ("ratio.proportion",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                there_fits, kind=("there",), sign=("€", "$"), rate=range(108, 141), pounds=_POUNDS
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                back_fits,
                kind=("back", "rate"),
                sign=("€", "$"),
                rate=range(108, 141),
                pounds=_POUNDS,
            ).then(
                more_rates_fit,
                kind=("rate",),
                sign=("€", "$"),
                rate=range(108, 141),
                pounds=_POUNDS[::3],
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                trip_fits,
                kind=("trip",),
                pounds=(60, 80, 100, 120, 150, 160, 200, 250, 300, 400),
                rate=(110, 115, 120),
                other=(116, 120, 125),
                part=range(15, 200, 5),
            ).then(
                trip_fits,
                kind=("across",),
                pounds=_PRICES,
                rate=EURO[::2],
                other=DOLLAR[::2],
                part=(0,),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, *more = values
        if kind == "there":
            return self._there(*more)
        if kind in ("back", "rate"):
            return self._back(*more) if kind == "back" else self._rate(*more)
        return trip(*more) if kind == "trip" else across(*more)

    def _there(self, sign: str, rate: int, pounds: int) -> Draft:
        each, given = amount(Fraction(rate, 100), sign), amount(pounds, "£")
        pound, key = amount(1, "£"), Fraction(rate * pounds, 100)
        who, place = person(rate + pounds), by_turns(_ABROAD[sign], rate + pounds // 5)
        many = _NAMES[sign][0]
        return Draft(
            prompt(
                f"{who} goes to {place} and changes {{n}} to {many}. The exchange rate is {{a}} = "
                f"{{b}}. How many {many} is that?",
                n=given,
                a=pound,
                b=each,
            ),
            Find(_X, (t.equals(t.Ratio((pound, given)), t.Ratio((each, _X))),)),
            amount(key, sign),
            "money",
            (
                Step(
                    f"Each pound is worth so many {many}, so multiply.",
                    t.equals(t.times(t.Int(pounds), each), amount(key, sign)),
                ),
            ),
            wrong_amounts(sign, key, (DIVIDES, SAME, ADDS), there_wrong(rate, pounds)),
            ("there", sign, rate, pounds),
        )

    def _back(self, sign: str, rate: int, pounds: int) -> Draft:
        each, given = amount(Fraction(rate, 100), sign), amount(Fraction(rate * pounds, 100), sign)
        pound, name = amount(1, "£"), thing(pounds, rate + pounds // 5)
        place = by_turns(_ABROAD[sign], rate + pounds // 5)
        return Draft(
            prompt(
                f"{capital(name)} costs {{n}} in {place}. The exchange rate is {{a}} = {{b}}. "
                "What is the price in pounds?",
                n=given,
                a=pound,
                b=each,
            ),
            Find(_X, (t.equals(t.Ratio((pound, _X)), t.Ratio((each, given))),)),
            amount(pounds, "£"),
            "money",
            (
                Step(
                    f"Divide by the {_NAMES[sign][0]} that one pound is worth.",
                    t.equals(t.divide(given, each), t.Int(pounds)),
                ),
                Step(
                    "So it is that many pounds.",
                    t.equals(t.times(t.Int(pounds), pound), amount(pounds, "£")),
                ),
            ),
            wrong_amounts("£", pounds, (MULTIPLIES, SAME, ADDS), back_wrong(rate, pounds)),
            ("back", sign, rate, pounds),
        )

    def _rate(self, sign: str, rate: int, pounds: int) -> Draft:
        each, paid = amount(Fraction(rate, 100), sign), amount(pounds, "£")
        got, pound = amount(Fraction(rate * pounds, 100), sign), amount(1, "£")
        return Draft(
            prompt(
                f"{person(rate + pounds)} gets {{g}} for {{n}}. How many {_NAMES[sign][0]} is that "
                "for {a}?",
                g=got,
                n=paid,
                a=pound,
            ),
            Find(_X, (t.equals(t.Ratio((paid, pound)), t.Ratio((got, _X))),)),
            each,
            "money",
            (
                Step(
                    "Divide by the number of pounds.",
                    t.equals(t.divide(got, t.Int(pounds)), each),
                ),
            ),
            wrong_amounts(
                sign, Fraction(rate, 100), (UPSIDE_DOWN, ADDS, SAME), rate_wrong(rate, pounds)
            ),
            ("rate", sign, rate, pounds),
        )
