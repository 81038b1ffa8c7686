"""Money that is changed twice: there and back, and from one foreign currency to another."""

from __future__ import annotations

from fractions import Fraction

from generators._prices import capital, thing
from generators._turns import by_turns
from generators.ratio._currency_mistakes import (
    FIRST_RATE,
    IN_POUNDS,
    MULTIPLIES,
    NOT_SPENT,
    ONE_CHANGE,
    SWAPPED,
)
from generators.ratio._currency_numbers import across_wrong, trip_wrong
from generators.ratio._parts import amount
from generators.ratio._rates import wrong_amounts
from itembank.items.item import Draft, Find, Step, prompt
from itembank.notation import tree as t

_X = t.Sym("x")
_PEOPLE = ("Amina", "Callum", "Priya", "Tomasz", "Grace", "Yusuf", "Mei", "Owen", "Zofia", "Kofi")


def trip(pounds: int, rate: int, other: int, part: int) -> Draft:
    """Return the question how many pounds are left when part of a sum is spent abroad."""
    there, back = (amount(Fraction(value, 100), "€") for value in (rate, other))
    pound, paid = amount(1, "£"), amount(pounds, "£")
    got, left = Fraction(rate * pounds, 100), Fraction(other * part, 100)
    spent, y = amount(got - left, "€"), t.Sym("y")
    return Draft(
        prompt(
            f"{person(pounds + part + rate)} changes {{n}} to euros at {{a}} = {{b}}, spends "
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
            trip_wrong(pounds, rate, other, part),
        ),
        ("trip", pounds, rate, other, part),
    )


def across(pounds: int, rate: int, other: int, _: int) -> Draft:
    """Return the question for a price in dollars, told in euros with both rates for the pound."""
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
            "$", key, (IN_POUNDS, SWAPPED, ONE_CHANGE), across_wrong(pounds, rate, other)
        ),
        ("across", pounds, rate, other),
    )


def person(turn: int) -> str:
    """Return a name, another for the next turn."""
    return by_turns(_PEOPLE, turn)
