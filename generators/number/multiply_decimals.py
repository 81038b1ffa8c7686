"""Multiplying decimals: where the point goes, by tens, from a known product, and backwards.

The programme of study for key stage 3 (England, 2013) asks pupils to "use the four operations,
including formal written methods, applied to integers, decimals …" and to "understand and use place
value for decimals" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._in_figures import in_figures
from generators._turns import by_turns
from generators.number import _point_mistakes as m
from generators.number._product_numbers import Kind, challenge_fits, core_fits, support_fits
from generators.number._writing import decimal, work_out, worked
from itembank.items import kinds
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted

# Prices a kilogram, of what is sold by weight.
_SOLD = (
    ("A market garden sells carrots at", "carrots"),
    ("A farm shop sells cherries at", "cherries"),
    ("A school kitchen buys rice at", "rice"),
    ("An allotment society sells leeks at", "leeks"),
    ("A market stall sells plums at", "plums"),
)
# How far the two numbers of a known product are shifted: powers of ten below them.
_SHIFTS = ((1, 1), (2, 1), (1, 2), (2, 0), (0, 2), (2, 2), (3, 1), (1, 0))


@register
class MultiplyDecimals(Topic):
    """By whole numbers and tens; by decimals; from a known product, powers and boxes."""

    id = "number.multiply-decimals"
    title = "Multiplying decimals"
    statements = ("number.operations", "number.place-value")
    misconceptions = (
        m.BEGINS_WITH_NOUGHT,
        m.FORGETS_POINT,
        m.ONE_PLACE,
        m.ONE_TOO_MANY,
        m.ADDS_NOUGHT,
        m.WRONG_WAY,
        m.PARTS_APART,
        m.TIMES_INDEX,
        m.MAKES_LARGER,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(
                support_fits,
                kind=tuple(Kind)[:3],
                a=(*range(2, 10), *range(11, 100, 4), *range(104, 990, 23)),
                b=range(1, 13),
            )
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(
                core_fits,
                kind=tuple(Kind)[3:7],
                a=(*range(2, 100), *range(105, 330, 5)),
                b=range(2, 39),
            ),
            only=lambda kind, *_: kind != 6,
        ),
        Tier.CHALLENGE: Space(
            challenge_fits,
            kind=tuple(Kind)[7:],
            a=(*range(2, 20), 21, 23, 27, 34, 36, 37, 43, 46, 58),
            b=(*range(12, 60), 62, 63, 67, 68, 72, 73, 78, 79, 82, 84, 86, 89, 93, 96, 98),
            shift=range(len(_SHIFTS)),
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, shift = (*values, 0)[:4]
        twin = (int(kind), a, b, shift)
        match kind:
            case Kind.BY_TENS:
                return _by_tens(a, b, twin)
            case Kind.COST:
                return _cost(a, b, twin)
            case Kind.KNOWN:
                return _known(a, b, *_SHIFTS[shift], twin)
            case Kind.POWER:
                return _power(a, b - 10, shift + 1, twin)
            case Kind.BOX:
                return _box(a, b, twin)
            case Kind.THREE:
                return _three(a, b // 10, b % 10, twin)
        return _product(kind, a, b, twin)


_PLACES = {
    Kind.TENTHS_BY_WHOLE: (1, 0),
    Kind.TENTHS: (1, 1),
    Kind.LONGER: (1, 1),
    Kind.HUNDREDTHS: (2, 1),
    Kind.TWO_DIGITS: (1, 1),
}


def _product(kind: int, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    first, second = _PLACES[Kind(kind)]
    places, whole = first + second, a * b
    point = f"The question has {counted(places, 'decimal place')}, so has the product."
    asked = t.times(decimal(a, first), decimal(b, second))
    key = decimal(whole, places)
    steps = (
        Step("Multiply without the points.", t.equals(t.times(t.Int(a), t.Int(b)), t.Int(whole))),
        Step(point, t.equals(asked, key)),
    )
    wrong: list[tuple[Any, t.Node]] = []
    if kind == Kind.TENTHS_BY_WHOLE:
        wrong = [(m.BEGINS_WITH_NOUGHT, t.Dec("0", str(whole))), (m.FORGETS_POINT, t.Int(whole))]
    else:
        wrong = [(m.ONE_PLACE, decimal(whole, places - 1))]
        if kind == Kind.TENTHS:
            wrong.append((m.FORGETS_POINT, t.Int(whole)))
        if kind == Kind.HUNDREDTHS:
            wrong.append((m.ONE_TOO_MANY, decimal(whole, places + 1)))
        if kind in (Kind.LONGER, Kind.TWO_DIGITS):
            # 1.4 × 0.3 as 1 × 0 and 4 × 3
            after = (a % 10) * (b % 10)
            ahead = (a // 10) * (b // 10)
            wrong.append((m.PARTS_APART, t.Dec(str(ahead), str(after))))
            wrong.append((m.FORGETS_POINT, t.Int(whole)))
    return work_out(asked, key, steps, wrong, twin)


def _by_tens(a: int, power: int, twin: tuple[object, ...]) -> Draft:
    """Return a number of hundredths by 10, 100 or 1000."""
    ten = t.Int(10**power)
    number = decimal(a, 2)
    asked = t.times(number, ten)
    key = decimal(a * 10**power, 2)
    steps = worked(asked, (f"Each digit moves {counted(power, 'place')} to the left.", key))
    text = t.Dec(str(a // 100), f"{a % 100:02d}".rstrip("0") + "0" * power)
    wrong = (
        (m.ADDS_NOUGHT, text),
        (m.WRONG_WAY, decimal(a, 2 + power)),
        (m.ONE_PLACE, decimal(a * 10 ** (power + 1), 2)),
    )
    return work_out(asked, key, steps, wrong, twin)


def _cost(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return the price of so many tenths of a kilogram at so many pence a kilogram."""

    def pounds(tenths_of_pence: int) -> t.Money:
        return money_node(Fraction(tenths_of_pence, 1000))

    sells, what = by_turns(_SOLD, a // 5 + b)
    price, mass = pounds(10 * a), decimal(b, 1)
    asked = t.times(price, mass)
    key = pounds(a * b)
    text = prompt(
        f"{sells} {{p}} a kilogram. How much do {{n}} kilograms of {what} cost?", p=price, n=mass
    )
    steps = (
        Step("Multiply without the points.", t.equals(t.times(t.Int(a), t.Int(b)), t.Int(a * b))),
        Step("The two numbers have 3 decimal places.", t.equals(asked, key)),
    )
    wrong = slips((m.ONE_PLACE, pounds(10 * a * b)), (m.ONE_TOO_MANY, _rounded(a * b)))
    return Draft(text, Find(asked), key, "money", steps, wrong, twin)


def _rounded(tenths_of_pence: int) -> t.Node:
    """Return a tenth of an amount, as pounds and whole pence."""
    return money_node(Fraction((tenths_of_pence + 50) // 100, 100))


def _known(a: int, b: int, down_a: int, down_b: int, twin: tuple[object, ...]) -> Draft:
    """Return a product to be found from one that is given."""
    given = t.equals(t.times(t.Int(a), t.Int(b)), t.Int(a * b))
    asked = t.times(decimal(a, down_a), decimal(b, down_b))
    places = down_a + down_b
    key = decimal(a * b, places)
    text = prompt("You are told that {g}. Use this to work out {e}.", g=given, e=asked)
    steps = []
    for n, down in ((a, down_a), (b, down_b)):
        if down:
            steps.append(
                Step(
                    f"{n} is divided by {in_figures(10**down)}.",
                    t.equals(t.divide(t.Int(n), t.Int(10**down)), decimal(n, down)),
                )
            )
    steps.append(
        Step(f"So the product is divided by {in_figures(10**places)}.", t.equals(asked, key))
    )
    wrong = slips(
        (m.ONE_PLACE, decimal(a * b, places - 1)), (m.ONE_TOO_MANY, decimal(a * b, places + 1))
    )
    return Draft(text, Find(asked, (given,)), key, "decimal", tuple(steps), wrong, twin)


def _power(a: int, index: int, places: int, twin: tuple[object, ...]) -> Draft:
    """Return a power of a decimal: 0.2³."""
    base = decimal(a, places)
    asked = t.Power(base, t.Int(index))
    key = decimal(a**index, places * index)
    steps = worked(
        asked,
        ("Write the power as a product.", t.times(base, *[base] * (index - 1))),
        (f"There are {places * index} decimal places in all.", key),
    )
    wrong = (
        (m.TIMES_INDEX, decimal(a * index, places)),
        (m.ONE_PLACE, decimal(a**index, places * index - 1)),
    )
    return work_out(asked, key, steps, wrong, twin)


def _box(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return □ × 0.a = a product in hundredths, so that the box holds b tenths."""
    box, factor, product = t.Blank(), decimal(a, 1), decimal(a * b, 2)
    asked = t.equals(t.times(box, factor), product)
    key = decimal(b, 1)
    steps = (
        Step(f"Divide both sides by 0.{a}.", t.equals(box, t.divide(product, factor))),
        Step(
            "Multiply both numbers by 10, and divide.",
            t.equals(box, t.divide(decimal(a * b, 1), t.Int(a))),
        ),
        Step("Work it out.", t.equals(box, key)),
    )
    wrong = slips((m.MAKES_LARGER, decimal(a * a * b, 3)), (m.ONE_TOO_MANY, decimal(b, 2)))
    text = prompt("Find the number that goes in the box: {e}.", e=asked)
    return Draft(text, Find(box, (asked,)), key, "decimal", steps, wrong, twin)


def _three(a: int, c: int, d: int, twin: tuple[object, ...]) -> Draft:
    """Return a product of three numbers of tenths."""
    first, second, third = (decimal(n, 1) for n in (a, c, d))
    asked = t.times(first, second, third)
    key = decimal(a * c * d, 3)
    steps = worked(
        asked,
        ("Multiply the first two.", t.times(decimal(a * c, 2), third)),
        ("There are 3 decimal places in all.", key),
    )
    wrong = ((m.ONE_PLACE, decimal(a * c * d, 2)), (m.BEGINS_WITH_NOUGHT, decimal(a * c * d, 1)))
    return work_out(asked, key, steps, wrong, twin)
