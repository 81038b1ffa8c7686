"""Order of operations: which part of a calculation is worked out first.

The programme of study for key stage 3 (England, 2013) asks pupils to "use conventional notation
for the priority of operations, including brackets, powers, roots and reciprocals" (from memory).
"""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.number._writing import apart, worked
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

LEFT_TO_RIGHT = Misconception(
    "number.operations-left-to-right",
    "works from left to right, whatever the operations are",
    "Which operation comes first: the one on the left, or the multiplication or division?",
)
NO_BRACKETS = Misconception(
    "number.operations-ignores-brackets",
    "works the sum out as if there were no brackets",
    "What do brackets tell you to do first?",
)
ADDS_FIRST = Misconception(
    "number.operations-adds-first",
    "takes addition to come before subtraction",
    "You have £10, spend £4, then get £3. How much have you now?",
)
TIMES_FIRST = Misconception(
    "number.operations-multiplies-before-dividing",
    "takes multiplication to come before division",
    "What is 8 ÷ 4 × 2, from left to right?",
)
SQUARES_ALL = Misconception(
    "number.operations-squares-too-much",
    "squares everything that stands in front of the index",
    "Which number does the small 2 belong to?",
)
SQUARES_EACH = Misconception(
    "number.operations-squares-each",
    "squares the numbers in the brackets one by one, and not their sum",
    "What is 1 + 2? What is (1 + 2) squared? Is it 1 + 4?",
)
IN_A_LINE = Misconception(
    "number.operations-types-in-a-line",
    "divides only the two numbers next to the line of the fraction",
    "Which numbers stand above the line, and which below it? What is each worth?",
)
STOPS = Misconception(
    "number.operations-stops",
    "stops before the whole sum is worked out",
    "Which numbers of the question have you used? Are there any left?",
)
TAKES_FIRST_OFF = Misconception(
    "number.operations-takes-off-the-first-only",
    "takes off the first cost and adds the second",
    "Is the second cost paid as well? What does that do to the change?",
)


class Kind(IntEnum):
    """How a calculation is built."""

    PLUS_TIMES, MINUS_OVER, BRACKET_TIMES, MINUS_PLUS = range(4)
    PLUS_SQUARE, BAR, OVER_TIMES, MINUS_BRACKET, CHANGE = range(4, 9)
    SQUARE_INSIDE, LONG_BAR, BOX, SQUARE_AND_ROOT = range(9, 13)


# What is bought at two prices, and by whom.
_SHOPPING = (
    ("A swimming club buys", "caps", "pairs of goggles", "It pays with"),
    ("A school kitchen buys", "sacks of rice", "boxes of eggs", "It pays with"),
    ("An allotment society buys", "trays of seedlings", "bags of compost", "It pays with"),
    ("A bike workshop buys", "inner tubes", "tyres", "It pays with"),
    ("A library buys", "display boards", "book trolleys", "It pays with"),
    ("A bus depot buys", "mops", "buckets", "It pays with"),
)


def _wrong(kind: int, a: int, b: int, c: int, d: int) -> tuple[Wrong, ...]:
    """Return what the mistakes come to, for the filter and for the item."""
    match kind:
        case Kind.PLUS_TIMES:
            return ((LEFT_TO_RIGHT, (a + b) * c), (STOPS, b * c))
        case Kind.MINUS_OVER:
            return ((LEFT_TO_RIGHT, Fraction(a - b, c)), (STOPS, b // c))
        case Kind.BRACKET_TIMES:
            return ((NO_BRACKETS, a - b * c), (STOPS, a - b))
        case Kind.MINUS_PLUS:
            return ((ADDS_FIRST, a - b - c), (STOPS, a - b))
        case Kind.PLUS_SQUARE:
            return ((SQUARES_ALL, a + (b * c) ** 2), (LEFT_TO_RIGHT, (a + b) * c * c))
        case Kind.BAR:
            return ((IN_A_LINE, a - Fraction(b, c) + d), (STOPS, Fraction(a - b, c)))
        case Kind.OVER_TIMES:
            return ((TIMES_FIRST, Fraction(a, b * c)), (STOPS, a // b))
        case Kind.MINUS_BRACKET:
            return ((LEFT_TO_RIGHT, (a - b) * (c - d)), (NO_BRACKETS, a - b * c - d))
        case Kind.CHANGE:
            return ((TAKES_FIRST_OFF, 100 - a * b + c * d), (STOPS, 100 - a * b))
        case Kind.SQUARE_INSIDE:
            return (
                (LEFT_TO_RIGHT, (a - b) * (c + d * d)),
                (SQUARES_ALL, a - b * (c + d) ** 2),
            )
        case Kind.LONG_BAR:
            return (
                (IN_A_LINE, a * a - Fraction(b, c) * d - 3),
                (STOPS, (a * a - b) // (c * d)),
            )
        case Kind.BOX:
            # From left to right: a + b, and then times the box.
            return ((LEFT_TO_RIGHT, Fraction(b * d, a + b)), (STOPS, b * d - a))
    return (
        (SQUARES_EACH, a * a + b * b - c * d),
        (LEFT_TO_RIGHT, ((a + b) ** 2 - c) * d),
    )


def _value(kind: int, a: int, b: int, c: int, d: int) -> int:
    """Return what the calculation comes to; for the box, what goes into it."""
    match kind:
        case Kind.PLUS_TIMES:
            return a + b * c
        case Kind.MINUS_OVER:
            return a - b // c
        case Kind.BRACKET_TIMES:
            return (a - b) * c
        case Kind.MINUS_PLUS:
            return a - b + c
        case Kind.PLUS_SQUARE:
            return a + b * c * c
        case Kind.BAR:
            return (a - b) // (c + d)
        case Kind.OVER_TIMES:
            return a // b * c
        case Kind.MINUS_BRACKET:
            return a - b * (c - d)
        case Kind.CHANGE:
            return 100 - a * b - c * d
        case Kind.SQUARE_INSIDE:
            return a - b * (c + d * d)
        case Kind.LONG_BAR:
            return (a * a - b) // (c * d) - 3
        case Kind.BOX:
            return d - a // b
    return (a + b) ** 2 - c * d


def _told_apart(kind: int, a: int, b: int, c: int, d: int) -> bool:
    value = _value(kind, a, b, c, d)
    return value > 1 and apart(value, *(answer for _, answer in _wrong(kind, a, b, c, d)))


def _support(kind: int, a: int, b: int, c: int) -> bool:
    """Keep small calculations of two operations in which no number comes twice."""
    if not apart(a, b, c):
        return False
    match kind:
        case Kind.PLUS_TIMES:
            suits = a <= 20 and b <= 12
        case Kind.MINUS_OVER:
            suits = a > b and b % c == 0 and b > 2 * c
        case Kind.BRACKET_TIMES:
            suits = b < a <= 20 and a - b > 2 and c != a - b
        case _:
            suits = a > b + c and b > c
    return suits and _told_apart(kind, a, b, c, 0)


def _core(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep calculations with a square, a fraction bar, a division first or brackets; a story."""
    if not apart(a, b, c) or d in (a, b, c):
        return False
    match kind:
        case Kind.PLUS_SQUARE:
            suits = d == 1 and b <= 6 and c >= 3 and a <= 20 and b != 2
        case Kind.BAR:
            suits = a > b and c > 1 and d > 1 and (a - b) % (c + d) == 0 and a - b > c + d
        case Kind.OVER_TIMES:
            suits = d == 1 and a % b == 0 and 1 < c != a // b > 2 and b > 1
        case Kind.MINUS_BRACKET:
            suits = 1 < d < c <= 12 and 1 < b <= 6 and c - d > 1 and a > b * (c - d)
        case _:
            # So many at so much each: 2 to 9 things at £2 to £12; both cost some of the £100.
            suits = 2 <= a <= 9 and 2 <= b <= 12 and c >= 2 <= d <= 9 and 30 < a * b + c * d < 98
    return suits and _told_apart(kind, a, b, c, d)


def _challenge(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep calculations of three operations or more, and sums that are worked out backwards."""
    if not apart(a, b, c, d):
        return False
    match kind:
        case Kind.SQUARE_INSIDE:
            suits = b <= 5 and c <= 9 and 2 < d <= 5 and a > b * (c + d * d) and a % 10 == 0
        case Kind.LONG_BAR:
            suits = (
                5 <= a <= 12
                and b <= 20
                and c <= 6
                and d <= 6
                and (a * a - b) % (c * d) == 0
                and (a * a - b) // (c * d) > 4
            )
        case Kind.BOX:
            # a + b × □ = b × d, where a is a multiple of b.
            suits = a % b == 0 and c == 9 and 3 <= b <= 9 and a // b < d - 2 and b * d != 2 * a
        case _:
            suits = 3 <= a <= 7 and 3 <= b <= 7 and c in (4, 5, 6, 8) and 2 < d <= 12 and a != b
    return suits and _told_apart(kind, a, b, c, d)


def _gone_wrong(kind: int, a: int, b: int, c: int, d: int = 0) -> tuple[kinds.WrongSolution, ...]:
    """Return how calculations are written that are done in the wrong order."""
    wrong, A, B, C, D = kinds.WrongSolution, *map(t.Int, (a, b, c, d))
    two, inner = t.Int(2), c + d * d
    match kind:
        case Kind.PLUS_TIMES:
            return (wrong(LEFT_TO_RIGHT, (t.times(t.Int(a + b), C), t.Int((a + b) * c))),)
        case Kind.MINUS_OVER if a > b and (a - b) % c == 0:
            return (wrong(LEFT_TO_RIGHT, (t.divide(t.Int(a - b), C), t.Int((a - b) // c))),)
        case Kind.BRACKET_TIMES:
            return (wrong(NO_BRACKETS, (t.sub(A, t.Int(b * c)), t.num(a - b * c))),)
        case Kind.MINUS_PLUS:
            return (wrong(ADDS_FIRST, (t.sub(A, t.Int(b + c)), t.num(a - b - c))),)
        case Kind.PLUS_SQUARE:
            squared, all_squared = t.Int(c * c), t.Int((b * c) ** 2)
            lines = (t.add(A, t.times(B, squared)), t.times(t.Int(a + b), squared))
            return (
                wrong(LEFT_TO_RIGHT, (*lines, t.Int((a + b) * c * c)), 2),
                wrong(
                    SQUARES_ALL,
                    (
                        t.add(A, t.Power(t.Int(b * c), two)),
                        t.add(A, all_squared),
                        t.Int(a + (b * c) ** 2),
                    ),
                ),
            )
        case Kind.OVER_TIMES if a % (b * c) == 0:
            return (wrong(TIMES_FIRST, (t.divide(A, t.Int(b * c)), t.Int(a // (b * c)))),)
        case Kind.MINUS_BRACKET:
            rest = t.Int(c - d)
            lines = (t.sub(A, t.times(B, rest)), t.times(t.num(a - b), rest))
            open_ = t.Sum(A, (("-", t.Int(b * c)), ("-", D)))
            return (
                wrong(LEFT_TO_RIGHT, (*lines, t.num((a - b) * (c - d))), 2),
                wrong(NO_BRACKETS, (open_, t.num(a - b * c - d))),
            )
        case Kind.SQUARE_INSIDE:
            lines = (t.sub(A, t.times(B, t.Int(inner))), t.times(t.num(a - b), t.Int(inner)))
            power = t.sub(A, t.times(B, t.Power(t.Int(c + d), two)))
            squared_sum = t.sub(A, t.times(B, t.Int((c + d) ** 2)))
            return (
                wrong(LEFT_TO_RIGHT, (*lines, t.num((a - b) * inner)), 2),
                wrong(SQUARES_ALL, (power, squared_sum, t.num(a - b * (c + d) ** 2))),
            )
        case Kind.SQUARE_AND_ROOT:
            rooted = t.times(t.Root(t.Int(c * c)), D)
            start = t.Sum(t.Power(A, two), (("+", t.Power(B, two)), ("-", rooted)))
            then = t.Sum(t.Int(a * a), (("+", t.Int(b * b)), ("-", t.Int(c * d))))
            return (wrong(SQUARES_EACH, (start, then, t.num(a * a + b * b - c * d))),)
    return ()


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
            kinds.with_matches(
                kinds.with_claims(
                    Space(
                        _support,
                        kind=tuple(Kind)[:4],
                        a=range(3, 31),
                        b=range(2, 28),
                        c=range(2, 10),
                    )
                )
            ),
            _gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_matches(
                kinds.with_claims(
                    Space(
                        _core,
                        kind=tuple(Kind)[4:9],
                        a=(
                            *range(2, 12),
                            14,
                            15,
                            18,
                            20,
                            24,
                            27,
                            30,
                            32,
                            35,
                            36,
                            40,
                            42,
                            45,
                            48,
                            54,
                            56,
                        ),
                        b=range(2, 12),
                        c=range(2, 11),
                        d=range(1, 10),
                    ),
                    only=lambda kind, *_: kind != 8,
                ),
                only=lambda kind, *_: kind != 8,
            ),
            _gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            kinds.with_matches(
                kinds.with_claims(
                    Space(
                        _challenge,
                        kind=tuple(Kind)[9:],
                        a=(
                            *range(3, 13),
                            14,
                            15,
                            16,
                            18,
                            20,
                            21,
                            24,
                            27,
                            28,
                            30,
                            32,
                            35,
                            *range(40, 131, 10),
                        ),
                        b=range(2, 16),
                        c=range(2, 10),
                        d=range(2, 13),
                    ),
                    only=lambda kind, *_: kind != 11,
                ),
                only=lambda kind, *_: kind != 11,
            ),
            _gone_wrong,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c, d = (*values, 0)[:5]
        wrong = slips(*_wrong(kind, a, b, c, d))
        key = t.Int(_value(kind, a, b, c, d))
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
    end = t.Int(_value(kind, a, b, c, d))
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
            for mistake, answer in _wrong(Kind.CHANGE, a, b, c, d)
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
    wrong = slips(*_wrong(Kind.BOX, a, b, 9, d))
    text = prompt("Find the number that goes in the box: {e}.", e=asked)
    return Draft(text, Find(box, (asked,)), key, "integer", steps, wrong, twin)
