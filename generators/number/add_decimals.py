"""Adding and subtracting decimals: in columns, with unlike places, in stories and backwards.

The programme of study for key stage 3 (England, 2013) asks pupils to "use the four operations,
including formal written methods, applied to integers, decimals …" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.number import _point_mistakes as m
from generators.number._decimals_added import (
    MORE_STORIES,
    Kind,
    Mistake,
    answers_of,
    challenge_fits,
    core_fits,
    numbers_compared,
    support_fits,
)
from generators.number._writing import decimal, exact_decimal, worked
from itembank.items import kinds
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_ASKED = (
    "How much heavier is the first?",
    "How much longer is the first?",
    "How much longer did the first take?",
    "How much heavier is the first?",
)
# Two things that cost from £2 to £13 each.
_BOUGHT = (
    ("A gardener buys a trowel for", "a bag of bulbs for", "gardener"),
    ("A swimmer buys a pair of goggles for", "a towel for", "swimmer"),
    ("A cyclist buys a bell for", "a pump for", "cyclist"),
    ("A cook buys a sieve for", "an apron for", "cook"),
    ("A reader buys a paperback for", "a notebook for", "reader"),
)
_HUNDREDTHS = (
    135, 164, 247, 275, 318, 365, 389, 426, 455, 483, 572, 615, 658, 736, 745, 861, 895, 1026,
    1138, 1245, 1364, 1415, 1575, 1628, 1743,
)  # fmt: skip


@register
class AddDecimals(Topic):
    """With as many places; with unlike places; then three numbers, boxes and change."""

    id = "number.add-decimals"
    title = "Adding and subtracting decimals"
    statements = ("number.operations",)
    prerequisites = ("number.order-decimals",)
    misconceptions = (
        m.PARTS_APART,
        m.NO_CARRY,
        m.SMALL_FROM_LARGE,
        m.NOT_REDUCED,
        m.RIGHT_ALIGNED,
        m.BROUGHT_DOWN,
        m.ADDS,
        m.ADDS_FIRST,
        m.SAME_OPERATION,
        m.FIRST_ONLY,
        m.ADDS_SECOND,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(
                support_fits,
                kind=tuple(Kind)[:3],
                a=range(130, 990, 10),
                b=(*range(120, 600, 10), *(n for n in range(115, 600, 17) if n % 10)),
            )
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(
                core_fits,
                kind=tuple(Kind)[3:6],
                a=(*range(220, 1000, 30), 300, 500, 600, 800, 900, 1000, 1100, 1200),
                b=(*range(113, 900, 19), *range(121, 900, 38)),
            ),
            only=lambda kind, *_: kind != 5,
        ),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(
                challenge_fits,
                kind=tuple(Kind)[6:],
                a=(270, 340, 460, 530, 590, 680, 720, 840, 910, 960, 1230, 1370, 1480),
                b=_HUNDREDTHS,
                c=(60, 340, 2000, 5000),
            ),
            only=lambda kind, *_: kind == 6,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c = (*values, 0)[:4]
        key, mistakes = answers_of(kind, a, b, c)
        twin = (int(kind), a, b, c)
        if kind == Kind.MORE:
            return _more(a, b, twin)
        if kind == Kind.CHANGE:
            return _change(a, b, c, key, mistakes, twin)
        first, second, third = decimal(a, 2), decimal(b, 2), decimal(c, 2)
        wrong = slips(*_written(mistakes))
        steps: tuple[Step, ...]
        if kind in (Kind.BOX_PLUS, Kind.BOX_MINUS):
            box = t.Blank()
            if kind == Kind.BOX_PLUS:
                asked = t.equals(t.add(box, first), second)
                undone = t.sub(second, first)
                say = f"Subtract {_said(a)} from both sides."
            else:
                asked = t.equals(t.sub(first, box), second)
                undone = t.sub(first, second)
                say = "The box is what has to be taken off."
            steps = (
                Step(say, t.equals(box, undone)),
                Step("Line up the points and subtract.", t.equals(box, decimal(key, 2))),
            )
            text = prompt("Find the number that goes in the box: {e}.", e=asked)
            return Draft(text, Find(box, (asked,)), decimal(key, 2), "decimal", steps, wrong, twin)
        if kind == Kind.THREE:
            asked_sum: t.Node = t.Sum(first, (("-", second), ("+", third)))
            steps = worked(
                asked_sum,
                ("Work from left to right.", t.add(decimal(a - b, 2), third)),
                ("Line up the points and add.", decimal(key, 2)),
            )
        else:
            adds = kind in (Kind.PLUS, Kind.UNLIKE_PLUS)
            asked_sum = (t.add if adds else t.sub)(first, second)
            lines: list[tuple[str, t.Node]] = []
            if kind not in (Kind.PLUS, Kind.MINUS):
                padded = exact_decimal(a, 2)
                lines.append(
                    (
                        "Write both with two decimal places.",
                        (t.add if adds else t.sub)(padded, second),
                    )
                )
            say = "Line up the points and " + ("add." if adds else "subtract.")
            steps = worked(asked_sum, *lines, (say, decimal(key, 2)))
        return Draft(
            prompt("Work out {e}.", e=asked_sum),
            Find(asked_sum),
            decimal(key, 2),
            "decimal",
            steps,
            wrong,
            twin,
        )


def _written(mistakes: list[Mistake]) -> list[Wrong]:
    return [(mistake, decimal(answer, 2)) for mistake, answer in mistakes]


def _said(hundredths: int) -> str:
    whole, rest = divmod(hundredths, 100)
    return f"{whole}.{rest:02d}".rstrip("0").rstrip(".")


def _more(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    told, a, b = numbers_compared(a, b)
    first, second, unit, _ = MORE_STORIES[told]
    key, mistakes = answers_of(Kind.MORE, a, b, 0)

    def amount(hundredths: int) -> t.Node:
        return t.Quantity(decimal(hundredths, 2), unit)

    asked = t.sub(amount(a), amount(b))
    text = prompt(f"{first} {{a}}. {second} {{b}}. {_ASKED[told]}", a=amount(a), b=amount(b))
    padded = t.sub(t.Quantity(exact_decimal(a, 2), unit), amount(b))
    steps = worked(
        asked,
        ("Write both with two decimal places.", padded),
        ("Line up the points and subtract.", amount(key)),
    )
    wrong = slips(*((mistake, amount(answer)) for mistake, answer in mistakes), key=amount(key))
    return Draft(text, Find(asked), amount(key), "quantity", steps, wrong, twin)


def _change(
    a: int, b: int, c: int, key: int, mistakes: list[Mistake], twin: tuple[object, ...]
) -> Draft:
    def pounds(pence: int) -> t.Node:
        return money_node(Fraction(pence, 100))

    buys, also, who = by_turns(_BOUGHT, a // 10 + b // 5 + c // 1000)
    asked = t.sub(pounds(c), pounds(a), pounds(b))
    text = prompt(
        f"{buys} {{a}} and {also} {{b}}. The {who} pays with {{c}}. How much change is there?",
        a=pounds(a),
        b=pounds(b),
        c=pounds(c),
    )
    steps = (
        Step("Add the two prices.", t.equals(t.add(pounds(a), pounds(b)), pounds(a + b))),
        Step("Subtract from what is paid.", t.equals(t.sub(pounds(c), pounds(a + b)), pounds(key))),
    )
    wrong = slips(*((mistake, pounds(answer)) for mistake, answer in mistakes))
    return Draft(text, Find(asked), pounds(key), "money", steps, wrong, twin)
