"""Changing money from one currency to another, both ways.

Key stage 3, ratio (England, 2013): "solve problems involving direct … proportion", and "use
compound units … to solve problems" (from memory). The rates are plausible ones, and of no day.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._prices import capital, thing
from generators._turns import by_turns
from generators.ratio._parts import amount
from generators.ratio._rates import apart, written, wrong_amounts
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

DIVIDES = Misconception(
    "ratio.currency-divides",
    "divides by the rate where it should multiply",
    "You get more than 1 of them for each pound. So is the number larger or smaller?",
)
MULTIPLIES = Misconception(
    "ratio.currency-multiplies",
    "multiplies by the rate where it should divide",
    "One of them is worth less than a pound. So is the number larger or smaller?",
)
SAME = Misconception(
    "ratio.currency-same-number",
    "changes the sign and keeps the number",
    "How much is one pound worth? And two pounds?",
)
ADDS = Misconception(
    "ratio.currency-adds-the-rate",
    "adds or subtracts the rate",
    "The rate is for one pound. How many pounds are there?",
)
UPSIDE_DOWN = Misconception(
    "ratio.currency-rate-upside-down",
    "divides the pounds by the other money",
    "Does a pound buy more or less than 1 of them? What does your rate say?",
)
NOT_SPENT = Misconception(
    "ratio.currency-nothing-spent",
    "changes all of the money back",
    "How much is left after the spending?",
)
ONE_CHANGE = Misconception(
    "ratio.currency-one-change",
    "uses the second rate alone, as if the price were in pounds",
    "What is the price in pounds? Which of the rates is for pounds and dollars?",
)
FIRST_RATE = Misconception(
    "ratio.currency-first-rate",
    "uses the rate of the first change for both",
    "Which rate is there on the way back?",
)
IN_POUNDS = Misconception(
    "ratio.currency-stops-at-pounds",
    "gives the price in pounds",
    "In which currency does the question want the price?",
)
SWAPPED = Misconception(
    "ratio.currency-rates-swapped",
    "uses each rate for the other currency",
    "Which rate has the sign of the price that is given?",
)

_X = t.Sym("x")
_NAMES = {"€": ("euros", "euro"), "$": ("dollars", "dollar")}
_EURO = (108, 110, 112, 115, 116, 118, 120, 124, 125)
_DOLLAR = (120, 122, 124, 125, 126, 128, 130, 132, 135, 136, 140)
_PEOPLE = ("Amina", "Callum", "Priya", "Tomasz", "Grace", "Yusuf", "Mei", "Owen", "Zofia", "Kofi")
_ABROAD = {"€": ("Spain", "Ireland", "Greece", "Italy"), "$": ("New York", "Boston", "Chicago")}
_POUNDS: tuple[int, ...] = (
    15,
    20,
    25,
    30,
    35,
    40,
    45,
    50,
    60,
    65,
    70,
    75,
    80,
    90,
    110,
    120,
    140,
    150,
    160,
    180,
)
_POUNDS += (200, 240, 250, 300, 350)


def _there(kind: str, sign: str, rate: int, pounds: int) -> bool:
    """Keep rates of a currency, and mistakes that show."""
    if rate not in (_EURO if sign == "€" else _DOLLAR):
        return False
    return apart(Fraction(rate * pounds, 100), *_there_wrong(rate, pounds))


def _there_wrong(rate: int, pounds: int) -> tuple[Fraction | None, ...]:
    return written(100 * pounds, rate), Fraction(pounds), pounds + Fraction(rate, 100)


def _back(kind: str, sign: str, rate: int, pounds: int) -> bool:
    """Keep money changed back to pounds, and rates to find."""
    if rate not in (_EURO if sign == "€" else _DOLLAR):
        return False
    if kind == "rate":
        # The third wrong answer came later, and questions keep their places.
        return apart(Fraction(rate, 100), *_rate_wrong(rate, pounds)[:2])
    return apart(pounds, *_back_wrong(rate, pounds))


def _more_rates(kind: str, sign: str, rate: int, pounds: int) -> bool:
    """Keep every rate for some amounts: with few rates, neighbours would find the same one."""
    if rate not in (_EURO if sign == "€" else _DOLLAR):
        return False
    return apart(Fraction(rate, 100), *_rate_wrong(rate, pounds))


def _back_wrong(rate: int, pounds: int) -> tuple[Fraction | None, ...]:
    """Return what MULTIPLIES, SAME and ADDS give."""
    other = Fraction(rate * pounds, 100)
    return written(rate * rate * pounds, 10_000), other, other - Fraction(rate, 100)


def _rate_wrong(rate: int, pounds: int) -> tuple[Fraction | None, ...]:
    """Return what UPSIDE_DOWN, ADDS (the difference of the two amounts) and SAME give."""
    return written(100, rate), written((rate - 100) * pounds, 100), Fraction(rate * pounds, 100)


def _trip(kind: str, pounds: int, rate: int, other: int, part: int) -> bool:
    """Keep money changed, spent and changed back; and prices by way of pounds."""
    if kind == "across":
        if rate not in _EURO or other not in _DOLLAR or part:
            return False
        return apart(Fraction(other * pounds, 100), *_across_wrong(pounds, rate, other))
    if rate == other or part == 0:
        return False
    # part is what is left, in pounds at the second rate.
    left = Fraction(other * part, 100)
    spent = Fraction(rate * pounds, 100) - left
    if spent.denominator > 1 or spent <= 10 or part >= pounds:
        return False
    return apart(part, *_trip_wrong(pounds, rate, other, part))


def _trip_wrong(pounds: int, rate: int, other: int, part: int) -> tuple[Fraction | None, ...]:
    """Return what NOT_SPENT, FIRST_RATE and MULTIPLIES give."""
    return (
        written(rate * pounds, other),
        written(other * part, rate),
        written(other * other * part, 10_000),
    )


def _across_wrong(pounds: int, rate: int, other: int) -> tuple[Fraction | None, ...]:
    """Return what IN_POUNDS, SWAPPED and ONE_CHANGE give."""
    return (
        Fraction(pounds),
        written(rate * rate * pounds, 100 * other),
        written(rate * other * pounds, 10_000),
    )


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
            Space(_there, kind=("there",), sign=("€", "$"), rate=range(108, 141), pounds=_POUNDS)
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _back,
                kind=("back", "rate"),
                sign=("€", "$"),
                rate=range(108, 141),
                pounds=_POUNDS,
            ).then(
                _more_rates,
                kind=("rate",),
                sign=("€", "$"),
                rate=range(108, 141),
                pounds=_POUNDS[::3],
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _trip,
                kind=("trip",),
                pounds=(60, 80, 100, 120, 150, 160, 200, 250, 300, 400),
                rate=(110, 115, 120),
                other=(116, 120, 125),
                part=range(15, 200, 5),
            ).then(
                _trip,
                kind=("across",),
                pounds=(
                    15,
                    20,
                    25,
                    30,
                    35,
                    40,
                    45,
                    50,
                    60,
                    75,
                    80,
                    90,
                    120,
                    140,
                    150,
                    180,
                    200,
                    250,
                ),
                rate=_EURO[::2],
                other=_DOLLAR[::2],
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
        return self._trip(*more) if kind == "trip" else self._across(*more)

    def _there(self, sign: str, rate: int, pounds: int) -> Draft:
        each, given = amount(Fraction(rate, 100), sign), amount(pounds, "£")
        pound, key = amount(1, "£"), Fraction(rate * pounds, 100)
        who, place = _who(rate + pounds), by_turns(_ABROAD[sign], rate + pounds // 5)
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
            wrong_amounts(sign, key, (DIVIDES, SAME, ADDS), _there_wrong(rate, pounds)),
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
            wrong_amounts("£", pounds, (MULTIPLIES, SAME, ADDS), _back_wrong(rate, pounds)),
            ("back", sign, rate, pounds),
        )

    def _rate(self, sign: str, rate: int, pounds: int) -> Draft:
        each, paid = amount(Fraction(rate, 100), sign), amount(pounds, "£")
        got, pound = amount(Fraction(rate * pounds, 100), sign), amount(1, "£")
        return Draft(
            prompt(
                f"{_who(rate + pounds)} gets {{g}} for {{n}}. How many {_NAMES[sign][0]} is that "
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
                sign, Fraction(rate, 100), (UPSIDE_DOWN, ADDS, SAME), _rate_wrong(rate, pounds)
            ),
            ("rate", sign, rate, pounds),
        )

    def _trip(self, pounds: int, rate: int, other: int, part: int) -> Draft:
        there, back = (amount(Fraction(value, 100), "€") for value in (rate, other))
        pound, paid = amount(1, "£"), amount(pounds, "£")
        got, left = Fraction(rate * pounds, 100), Fraction(other * part, 100)
        spent, y = amount(got - left, "€"), t.Sym("y")
        return Draft(
            prompt(
                f"{_who(pounds + part + rate)} changes {{n}} to euros at {{a}} = {{b}}, spends "
                "{s}, and changes the rest back at {a} = {c}. How many pounds is that?",
                n=paid,
                a=pound,
                b=there,
                s=spent,
                c=back,
            ),
            Find(
                _X,
                (
                    t.equals(t.Ratio((pound, paid)), t.Ratio((there, y))),
                    t.equals(t.Ratio((pound, _X)), t.Ratio((back, t.sub(y, spent)))),
                ),
            ),
            amount(part, "£"),
            "money",
            (
                Step(
                    "Multiply to change the pounds to euros.",
                    t.equals(t.times(t.Int(pounds), there), amount(got, "€")),
                ),
                Step(
                    "Subtract what is spent.",
                    t.equals(t.sub(amount(got, "€"), spent), amount(left, "€")),
                ),
                Step(
                    "Divide to change the rest back to pounds.",
                    t.equals(t.divide(amount(left, "€"), back), t.Int(part)),
                ),
                Step(
                    "So it is that many pounds.",
                    t.equals(t.times(t.Int(part), pound), amount(part, "£")),
                ),
            ),
            wrong_amounts(
                "£",
                part,
                (NOT_SPENT, FIRST_RATE, MULTIPLIES),
                _trip_wrong(pounds, rate, other, part),
            ),
            ("trip", pounds, rate, other, part),
        )

    def _across(self, pounds: int, rate: int, other: int, _: int) -> Draft:
        euro, dollar = amount(Fraction(rate, 100), "€"), amount(Fraction(other, 100), "$")
        pound, given = amount(1, "£"), amount(Fraction(rate * pounds, 100), "€")
        key, y = Fraction(other * pounds, 100), t.Sym("y")
        name = thing(pounds, pounds // 5 + rate + other)
        return Draft(
            prompt(
                f"{capital(name)} costs {{n}}. The exchange rates are {{a}} = {{b}} and {{a}} = "
                "{c}. What is the price in dollars?",
                n=given,
                a=pound,
                b=euro,
                c=dollar,
            ),
            Find(
                _X,
                (
                    t.equals(t.Ratio((pound, y)), t.Ratio((euro, given))),
                    t.equals(t.Ratio((pound, y)), t.Ratio((dollar, _X))),
                ),
            ),
            amount(key, "$"),
            "money",
            (
                Step(
                    "Divide to find the number of pounds.",
                    t.equals(t.divide(given, euro), t.Int(pounds)),
                ),
                Step(
                    "So this is the price in pounds.",
                    t.equals(t.times(t.Int(pounds), pound), amount(pounds, "£")),
                ),
                Step(
                    "Multiply to change pounds to dollars.",
                    t.equals(t.times(t.Int(pounds), dollar), amount(key, "$")),
                ),
            ),
            wrong_amounts(
                "$", key, (IN_POUNDS, SWAPPED, ONE_CHANGE), _across_wrong(pounds, rate, other)
            ),
            ("across", pounds, rate, other),
        )


def _who(turn: int) -> str:
    return by_turns(_PEOPLE, turn)
