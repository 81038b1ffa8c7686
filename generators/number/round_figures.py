"""Rounding to significant figures: large numbers, small ones, noughts inside, and carrying.

The programme of study for key stage 3 (England, 2013) asks pupils to "round numbers and measures
to an appropriate degree of accuracy [for example, to a number of decimal places or significant
figures]" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.number import _rounding as r
from generators.number._figures_numbers import (
    Kind,
    challenge_fits,
    core_fits,
    first_place,
    fraction_wrong,
    mistakes_of,
    number_of,
    place_of,
    product_of,
    product_wrong,
    quotient_of,
    rounded_to,
    support_fits,
)
from generators.number._rounding import Number
from generators.number._writing import decimal
from itembank.items import kinds
from itembank.items.item import Draft, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted

_STORIES = (
    "A swimming club’s pool holds {n} litres of water.",
    "A bus depot used {n} litres of fuel in a year.",
    "A market garden sold {n} carrots in a year.",
    "A library’s website had {n} visits in a year.",
    "The buses of a depot went {n} kilometres in a year.",
)


@register
class RoundFigures(Topic):
    """One figure; two and three with noughts among them; then fractions, products and nines."""

    id = "number.round-figures"
    title = "Rounding to significant figures"
    statements = ("number.rounding",)
    prerequisites = ("number.round-places",)
    misconceptions = (
        r.DROPS_NOUGHTS,
        r.LEADING_NOUGHTS,
        r.CUTS_OFF,
        r.ALWAYS_UP,
        r.IN_STEPS,
        r.COUNTS_PLACES,
        r.WRONG_PLACE,
        r.SKIPS_NOUGHTS,
        r.NO_CARRY,
        r.OTHER_WAY,
        r.TOO_EARLY,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(support_fits, kind=tuple(Kind)[:4], a=range(110, 990), b=range(1, 10))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                core_fits,
                kind=tuple(Kind)[4:8],
                a=(*range(11, 100), *range(101, 990, 8)),
                b=range(1, 10),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                challenge_fits,
                kind=tuple(Kind)[8:],
                a=range(1, 99),
                b=(*range(1, 10), 11, 12, 13, 17, 19, 23, 38, 56, 74, 92, 203, 306, 408),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b = values
        twin = (int(kind), a, b)
        if kind == Kind.FRACTION:
            return _fraction(a, b, twin)
        if kind == Kind.PRODUCT:
            return _multiplied(a, b, twin)
        number, figures = number_of(kind, a, b)
        node = number.node
        to = counted(figures, "significant figure")
        if kind == Kind.STORY:
            text = prompt(f"{by_turns(_STORIES, a + b)} Round this to {to}.", n=node)
        else:
            text = prompt(f"Round {{n}} to {to}.", n=node)
        return Draft(
            text,
            Round(node, "figures", figures),
            rounded_to(number, figures).node,
            "rounded",
            _steps(number, figures, tier is Tier.SUPPORT),
            slips(*r.nodes(mistakes_of(number, figures))),
            twin,
        )


_ORDINALS = ("first", "second", "third")


def _steps(number: Number, figures: int, brief: bool = False) -> tuple[Step, ...]:
    digits = str(number.units)
    key = rounded_to(number, figures)
    digit, after = digits[figures - 1], int(digits[figures])
    way = "5 or more: round up" if after >= 5 else "less than 5: round down"
    if place_of(number, figures) < 0:
        way += ", and fill up with noughts"
    first = f"The {_ORDINALS[figures - 1]} significant figure is the {digit}"
    if first_place(number) > 0:
        first += "; noughts at the front do not count"
    last = f"The next digit is {after}, which is {way}."
    if brief:
        return (Step(f"{first}. {last}", key.node),)
    return Step(f"{first}."), Step(last, key.node)


def _fraction(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    key = quotient_of(a, b, 2)
    target = t.frac(a, b)
    places = key.places + 1
    digits = Number(a * 10**places // b, places)
    last = digits.units % 10
    way = "5 or more: round up" if last >= 5 else "less than 5: round down"
    steps = (
        Step(f"Divide {a} by {b} as far as the third figure: {digits.said}…"),
        Step(f"The third is {last}, which is {way}.", key.node),
    )
    return Draft(
        prompt("Write {f} as a decimal, rounded to 2 significant figures.", f=target),
        Round(target, "figures", 2),
        key.node,
        "rounded",
        steps,
        slips(*r.nodes(fraction_wrong(a, b))),
        twin,
    )


def _multiplied(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    exact = product_of(a, b)
    key = rounded_to(exact, 2)
    target = t.times(decimal(a, 1), decimal(b, 4))
    steps = (
        Step("Multiply first.", t.equals(target, decimal(exact.units, 5))),
        *_steps(exact, 2),
    )
    return Draft(
        prompt("Work out {e}. Give your answer to 2 significant figures.", e=target),
        Round(target, "figures", 2),
        key.node,
        "rounded",
        steps,
        slips(*r.nodes(product_wrong(a, b))),
        twin,
    )
