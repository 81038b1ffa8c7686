"""Order of operations: which part of a calculation is worked out first.

The programme of study for key stage 3 (England, 2013) asks pupils to "use conventional notation
for the priority of operations, including brackets, powers, roots and reciprocals" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.number._order_mistakes import (
    ADDS_FIRST,
    IN_A_LINE,
    LEFT_TO_RIGHT,
    NO_BRACKETS,
    SQUARES_ALL,
    SQUARES_EACH,
    STOPS,
    TAKES_FIRST_OFF,
    TIMES_FIRST,
)
from generators.number._order_numbers import (
    Kind,
    challenge_fits,
    core_fits,
    support_fits,
    value_of,
    wrong_results,
)
from generators.number._order_wrong_lines import gone_wrong
from generators.number._writing import worked
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

# What is bought at two prices, and by whom.
_SHOPPING = (
    ("A swimming club buys", "caps", "pairs of goggles", "It pays with"),
    ("A school kitchen buys", "sacks of rice", "boxes of eggs", "It pays with"),
    ("An allotment society buys", "trays of seedlings", "bags of compost", "It pays with"),
    ("A bike workshop buys", "inner tubes", "tyres", "It pays with"),
    ("A library buys", "display boards", "book trolleys", "It pays with"),
    ("A bus depot buys", "mops", "buckets", "It pays with"),
)
_FIRST = (
    *range(2, 12), 14, 15, 18, 20, 24, 27, 30, 32, 35, 36, 40, 42, 45, 48, 54, 56,
)  # fmt: skip
_LONGER_FIRST = (
    *range(3, 13), 14, 15, 16, 18, 20, 21, 24, 27, 28, 30, 32, 35, *range(40, 131, 10),
)  # fmt: skip


@register
class OrderOfOperations(Topic):
    """Two operations; squares, bars and brackets; then three and more, and a missing number."""

    id = "number.order-of-operations"
    title = "Order of operations"
    statements = ("number.priority",)
    misconceptions = (
        LEFT_TO_RIGHT,
        NO_BRACKETS,
        ADDS_FIRST,
        TIMES_FIRST,
        SQUARES_ALL,
        SQUARES_EACH,
        IN_A_LINE,
        STOPS,
        TAKES_FIRST_OFF,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    support_fits,
                    kind=tuple(Kind)[:4],
                    a=range(3, 31),
                    b=range(2, 28),
                    c=range(2, 10),
                )
            ),
            gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    core_fits,
                    kind=tuple(Kind)[4:9],
                    a=_FIRST,
                    b=range(2, 12),
                    c=range(2, 11),
                    d=range(1, 10),
                ),
                only=lambda kind, *_: kind != 8,
            ),
            gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    challenge_fits,
                    kind=tuple(Kind)[9:],
                    a=_LONGER_FIRST,
                    b=range(2, 16),
                    c=range(2, 10),
                    d=range(2, 13),
                ),
                only=lambda kind, *_: kind != 11,
            ),
            gone_wrong,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c, d = (*values, 0)[:5]
        wrong = slips(*wrong_results(kind, a, b, c, d))
        key = t.Int(value_of(kind, a, b, c, d))
        twin = (int(kind), a, b, c, d)
        if kind == Kind.CHANGE:
            return _change(a, b, c, d, twin)
        if kind == Kind.BOX:
            return _box(a, b, d, twin)
        asked, lines = _calculation(kind, a, b, c, d)
        *between, (last, _) = lines
        steps = worked(asked, *between, (last, key))
        return Draft(
            prompt("Work out {e}.", e=asked), Find(asked), key, "integer", steps, wrong, twin
        )


def _calculation(
    kind: int, a: int, b: int, c: int, d: int
) -> tuple[t.Node, list[tuple[str, t.Node]]]:
    """Return the calculation as printed, and its working; the last line is the answer."""
    A, B, C, D = map(t.Int, (a, b, c, d))
    end = t.Int(value_of(kind, a, b, c, d))
    match kind:
        case Kind.PLUS_TIMES:
            return t.add(A, t.times(B, C)), [
                ("Multiply first.", t.add(A, t.Int(b * c))),
                ("Then add.", end),
            ]
        case Kind.MINUS_OVER:
            return t.sub(A, t.divide(B, C)), [
                ("Divide first.", t.sub(A, t.Int(b // c))),
                ("Then subtract.", end),
            ]
        case Kind.BRACKET_TIMES:
            return t.times(t.Bracket(t.sub(A, B)), C), [
                ("Work out the brackets first.", t.times(t.Int(a - b), C)),
                ("Then multiply.", end),
            ]
        case Kind.MINUS_PLUS:
            return t.Sum(A, (("-", B), ("+", C))), [
                (
                    "Adding and subtracting are of equal rank: work from left to right.",
                    t.add(t.Int(a - b), C),
                ),
                ("Then add.", end),
            ]
        case Kind.PLUS_SQUARE:
            return t.add(A, t.times(B, t.Power(C, t.Int(2)))), [
                ("Work out the square first.", t.add(A, t.times(B, t.Int(c * c)))),
                ("Then multiply.", t.add(A, t.Int(b * c * c))),
                ("Then add.", end),
            ]
        case Kind.BAR:
            return t.Frac(t.sub(A, B), t.add(C, D)), [
                ("Work out the numerator.", t.Frac(t.Int(a - b), t.add(C, D))),
                ("Work out the denominator.", t.Frac(t.Int(a - b), t.Int(c + d))),
                ("Then divide.", end),
            ]
        case Kind.OVER_TIMES:
            return t.Product(A, (("÷", B), ("×", C))), [
                (
                    "Multiplying and dividing are of equal rank: work from left to right.",
                    t.times(t.Int(a // b), C),
                ),
                ("Then multiply.", end),
            ]
        case Kind.MINUS_BRACKET:
            return t.sub(A, t.times(B, t.Bracket(t.sub(C, D)))), [
                ("Work out the brackets first.", t.sub(A, t.times(B, t.Int(c - d)))),
                ("Then multiply.", t.sub(A, t.Int(b * (c - d)))),
                ("Then subtract.", end),
            ]
        case Kind.SQUARE_INSIDE:
            inner = c + d * d
            return t.sub(A, t.times(B, t.Bracket(t.add(C, t.Power(D, t.Int(2)))))), [
                (
                    "Inside the brackets, work out the square first.",
                    t.sub(A, t.times(B, t.Bracket(t.add(C, t.Int(d * d))))),
                ),
                ("Add in the brackets.", t.sub(A, t.times(B, t.Int(inner)))),
                ("Then multiply.", t.sub(A, t.Int(b * inner))),
                ("Then subtract.", end),
            ]
        case Kind.LONG_BAR:
            top, bottom, three = a * a - b, c * d, t.Int(3)
            below = t.times(C, D)
            return t.sub(t.Frac(t.sub(t.Power(A, t.Int(2)), B), below), three), [
                (
                    "In the numerator, work out the square first.",
                    t.sub(t.Frac(t.sub(t.Int(a * a), B), below), three),
                ),
                ("Finish the numerator.", t.sub(t.Frac(t.Int(top), below), three)),
                ("Work out the denominator.", t.sub(t.Frac(t.Int(top), t.Int(bottom)), three)),
                ("Divide.", t.sub(t.Int(top // bottom), three)),
                ("Then subtract.", end),
            ]
    # (a + b)² − √(c²) × d
    squared = t.Power(t.Bracket(t.add(A, B)), t.Int(2))
    rooted = t.times(t.Root(t.Int(c * c)), D)
    return t.sub(squared, rooted), [
        (
            "Work out the brackets first.",
            t.sub(t.Power(t.Int(a + b), t.Int(2)), rooted),
        ),
        (
            "Then the square and the square root.",
            t.sub(t.Int((a + b) ** 2), t.times(C, D)),
        ),
        ("Then multiply.", t.sub(t.Int((a + b) ** 2), t.Int(c * d))),
        ("Then subtract.", end),
    ]


def _change(a: int, b: int, c: int, d: int, twin: tuple[object, ...]) -> Draft:
    """Return a story of so many things at two prices, paid with £100."""
    buyer, first, second, pays = by_turns(_SHOPPING, a + 2 * b + 3 * c + 5 * d)
    many, more = t.Int(a), t.Int(c)
    cost, price, paid = (t.Money(t.Int(n)) for n in (b, d, 100))
    left = t.sub(paid, t.times(many, cost), t.times(more, price))
    spent_first, spent_more = t.Money(t.Int(a * b)), t.Money(t.Int(c * d))
    key = t.Money(t.Int(100 - a * b - c * d))
    text = (
        f"{buyer} {{a}} {first} at {{b}} each and {{c}} {second} at {{d}} each. "
        f"{pays} {{p}}. How much change does it get?"
    )
    steps = (
        Step(f"Find what the {first} cost.", t.equals(t.times(many, cost), spent_first)),
        Step(f"Find what the {second} cost.", t.equals(t.times(more, price), spent_more)),
        Step("Take both from what is paid.", t.equals(t.sub(paid, spent_first, spent_more), key)),
    )
    wrong = slips(
        *(
            (mistake, _pounds(answer))
            for mistake, answer in wrong_results(Kind.CHANGE, a, b, c, d)
            if isinstance(answer, int)
        )
    )
    shown = prompt(text, a=many, b=cost, c=more, d=price, p=paid)
    return Draft(shown, Find(left), key, "money", steps, wrong, twin)


def _pounds(n: int) -> t.Node:
    node = t.Money(t.Int(abs(n)))
    return node if n >= 0 else t.Neg(node)


def _box(a: int, b: int, d: int, twin: tuple[object, ...]) -> Draft:
    """Return a + b × □ = b × d, whose box holds d − a ÷ b."""
    box = t.Blank()
    product = t.times(t.Int(b), box)
    asked = t.equals(t.add(t.Int(a), product), t.Int(b * d))
    rest = b * d - a
    key = t.Int(rest // b)
    steps = (
        Step(f"Take {a} from both sides.", t.equals(product, t.Int(rest))),
        Step(f"Divide both sides by {b}.", t.equals(box, key)),
    )
    wrong = slips(*wrong_results(Kind.BOX, a, b, 9, d))
    text = prompt("Find the number that goes in the box: {e}.", e=asked)
    return Draft(text, Find(box, (asked,)), key, "integer", steps, wrong, twin)
