"""Estimating by rounding each number to 1 significant figure: products, quotients, longer ones.

The programme of study for key stage 3 (England, 2013) asks pupils to "use approximation through
rounding to estimate answers" (from memory).
"""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.number._rounding import Number, rounded
from generators.number._writing import decimal
from itembank.items import kinds
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

DROPS_NOUGHTS = Misconception(
    "number.estimate-drops-the-noughts",
    "leaves out the noughts when rounding",
    "Is each rounded number about as large as the number it came from?",
)
CUTS_OFF = Misconception(
    "number.estimate-cuts-off",
    "cuts each number off after its first figure instead of rounding",
    "Which is nearer: the first figure as it stands, or one more?",
)
ONE_ONLY = Misconception(
    "number.estimate-rounds-one-number-only",
    "rounds one of the numbers only",
    "Which numbers have you rounded? Does the question say each number?",
)
EXACT = Misconception(
    "number.estimate-works-it-out",
    "works the sum out exactly instead of estimating",
    "What does the question ask you to do with each number first?",
)
TO_WHOLE = Misconception(
    "number.estimate-rounds-to-a-whole-number",
    "rounds a number below 1 to a whole number",
    "Which is the first figure of that number that is not a nought?",
)
DIVIDES_SMALLER = Misconception(
    "number.estimate-dividing-makes-smaller",
    "multiplies by a number below 1 where it should divide",
    "How many halves are there in 10? Is that more or less than 10?",
)
STOPS = Misconception(
    "number.estimate-leaves-the-denominator-out",
    "leaves the denominator out",
    "What does the line of the fraction tell you to do last?",
)
NOT_SQUARED = Misconception(
    "number.estimate-doubles-for-squares",
    "doubles where it should square",
    "What does the index 2 tell you to do?",
)
HALVES_FOR_ROOT = Misconception(
    "number.estimate-halves-for-a-root",
    "halves instead of taking the square root",
    "Multiply your root by itself. Where do you get to?",
)


class Kind(IntEnum):
    """What is estimated."""

    TIMES, OVER = range(2)
    BELOW_ONE, COST, SMALL_TIMES, ROOT = range(2, 6)
    BAR, BAR_BELOW_ONE, SQUARE = range(6, 9)


# As they are printed, in hundredths: tens and hundreds, ones, and numbers below 1.
_TENS = (1980, 3120, 4870, 5230, 6150, 7890, 8240, 1160, 2830, 3910, 20300, 29700, 41200, 58800)
_LARGE = (*_TENS, 7210, 34600, 61700, 18900)
_ONES = (390, 410, 520, 680, 213, 821, 287, 584, 770, 612)
_SMALL = (52, 48, 19, 21, 39, 41, 53, 18)


def _number(hundredths: int) -> Number:
    """Return a number without noughts at its end."""
    places = 2
    while places and hundredths % 10 == 0:
        hundredths, places = hundredths // 10, places - 1
    return Number(hundredths, places)


def _rough(hundredths: int) -> Number:
    """Return a number to 1 significant figure."""
    number = _number(hundredths)
    first = number.places - len(str(number.units)) + 1
    return rounded(number, first)


def _cut(hundredths: int) -> Fraction:
    number = _number(hundredths)
    first = number.places - len(str(number.units)) + 1
    return Number(number.units // 10 ** (number.places - first), first).value


def _worth(kind: int, a: Fraction, b: Fraction, c: Fraction) -> Fraction:
    match kind:
        case Kind.TIMES | Kind.COST | Kind.SMALL_TIMES:
            return a * b
        case Kind.OVER | Kind.BELOW_ONE:
            return a / b
        case Kind.BAR | Kind.BAR_BELOW_ONE:
            return a * b / c
        case Kind.SQUARE:
            return a * a / b
    return b * c  # the root of the first number is c


def _all(
    kind: int, a: int, b: int, c: int
) -> tuple[Fraction, list[tuple[Misconception, Fraction]]]:
    """Return the estimate, and what the mistakes come to."""
    x, y, z = (_rough(n).value if n else Fraction(0) for n in (a, b, c))
    key = _worth(kind, x, y, z)
    wrong: list[tuple[Misconception, Fraction]] = []
    dropped = [Fraction(_rough(n).units) if n else Fraction(0) for n in (a, b, c)]
    match kind:
        case Kind.ROOT:
            root = Fraction(int(float(x) ** 0.5 + 0.5))
            key = root * y
            wrong += [(HALVES_FOR_ROOT, x / 2 * y), (ONE_ONLY, root * Fraction(b, 100))]
            return key, wrong
        case Kind.SQUARE:
            wrong += [(NOT_SQUARED, 2 * x / y), (CUTS_OFF, _worth(kind, _cut(a), _cut(b), z))]
        case Kind.BELOW_ONE | Kind.BAR_BELOW_ONE:
            small = y if kind == Kind.BELOW_ONE else z
            wrong.append((DIVIDES_SMALLER, key * small * small))
            if small >= Fraction(1, 2):  # 0.52 is taken for 1; 0.48 would be taken for 0
                wrong.append((TO_WHOLE, key * small))
            wrong.append((CUTS_OFF, _worth(kind, *(_cut(n) if n else z for n in (a, b, c)))))
            wrong.append((DROPS_NOUGHTS, _worth(kind, *dropped)))
        case Kind.SMALL_TIMES:
            wrong += [(TO_WHOLE, x), (EXACT, Fraction(a * b, 10_000))]
        case Kind.BAR:
            wrong += [(STOPS, x * y), (DROPS_NOUGHTS, _worth(kind, *dropped))]
        case _:
            wrong += [
                (DROPS_NOUGHTS, _worth(kind, *dropped)),
                (CUTS_OFF, _worth(kind, _cut(a), _cut(b), z)),
            ]
            if kind != Kind.OVER:
                wrong.append((EXACT, Fraction(a * b, 10_000)))
    seen, kept = {key}, []
    for mistake, value in wrong:
        if value not in seen:
            seen.add(value)
            kept.append((mistake, value))
    return key, kept


def _good(kind: int, a: int, b: int, c: int = 0) -> bool:
    key, wrong = _all(kind, a, b, c)
    return key.denominator == 1 and key > 1 and len(wrong) >= 2


def _support(kind: int, a: int, b: int) -> bool:
    """Keep products, and quotients that come out whole."""
    return b in _ONES and a in _LARGE and _good(kind, a, b)


def _core(kind: int, a: int, b: int, c: int) -> bool:
    """Keep three numbers, numbers below 1, and what many things cost."""
    match kind:
        case Kind.ROOT:
            near = a in _NEAR and c == 390
            return near and b in (*_LARGE, *_ONES) and _good(kind, a, b)
        case Kind.BELOW_ONE | Kind.SMALL_TIMES:
            return a in _LARGE and b in (51, 52, 53, 54) and c == 390 and _good(kind, a, b)
    whole = a in (1900, 2100, 2800, 3200, 3800, 4200, 4800, 5300, 6100, 7900, 8200)
    return whole and b in _ONES and b < 1000 and c == 390 and _good(kind, a, b)


def _challenge(kind: int, a: int, b: int, c: int) -> bool:
    """Keep division by a number below 1, squares over a number, and roots."""
    match kind:
        case Kind.BAR_BELOW_ONE:
            return a in _LARGE and b in _ONES and c in _SMALL and _good(kind, a, b, c)
        case Kind.SQUARE:
            return c == 52 and a in _LARGE and a < 10000 and b in _ONES and _good(kind, a, b)
    return a in _LARGE and b in _TENS and a > b and c in _ONES and _good(kind, a, b, c)


_NEAR = (9700, 10400, 38500, 41300, 870, 910)
"""Numbers that round to 100, 400 and 9, in hundredths."""

_COSTS = (
    ("A market garden buys {n} trays at {p} each.", "the total cost"),
    ("A swimming club sells {n} tickets at {p} each.", "the total"),
    ("A school kitchen buys {n} bags of flour at {p} each.", "the total cost"),
    ("A bike workshop buys {n} brake cables at {p} each.", "the total cost"),
    ("A library buys {n} paperbacks at {p} each.", "the total cost"),
)
HOW = "by rounding each number to 1 significant figure"


@register
class Estimate(Topic):
    """Two numbers; three, or one below 1; then squares, roots and division by a number below 1."""

    id = "number.estimate"
    title = "Estimating answers"
    statements = ("number.estimation",)
    prerequisites = ("number.round-figures",)
    misconceptions = (
        DROPS_NOUGHTS,
        CUTS_OFF,
        EXACT,
        ONE_ONLY,
        TO_WHOLE,
        DIVIDES_SMALLER,
        STOPS,
        NOT_SQUARED,
        HALVES_FOR_ROOT,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=tuple(Kind)[:2], a=_LARGE, b=_ONES),
            only=lambda kind, *_: kind == 0,
        ),
        Tier.CORE: kinds.with_who_is_right(
            kinds.with_answers(
                Space(
                    _core,
                    kind=tuple(Kind)[2:6],
                    a=(
                        *_LARGE,
                        *_NEAR,
                        1900,
                        2100,
                        2800,
                        3200,
                        3800,
                        4200,
                        4800,
                        5300,
                        6100,
                        7900,
                        8200,
                    ),
                    b=(*_LARGE, *_ONES, 51, 52, 53, 54),
                    c=_ONES,
                )
            ),
            only=lambda kind, *_: kind != 5,
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=tuple(Kind)[6:],
                a=_LARGE,
                b=(*_LARGE, *_ONES),
                c=(*_SMALL, *_ONES),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c = (*values, 0)[:4]
        twin = (int(kind), a, b, c)
        key, mistakes = _all(kind, a, b, c)
        if kind == Kind.COST:
            return _cost(a, b, key, mistakes, twin)
        asked, target, lines = _calculation(kind, a, b, c)
        answer = t.num(int(key))
        steps = [Step("Round each number to 1 significant figure.", lines[0])]
        steps += [
            Step(say, t.equals(before, after)) for say, before, after in _chain(kind, lines, answer)
        ]
        return Draft(
            prompt(f"Estimate {{e}} {HOW}.", e=asked),
            Find(target),
            answer,
            "integer",
            tuple(steps),
            slips(*((mistake, _node(value)) for mistake, value in mistakes)),
            twin,
            constants=_constants(kind, a, b, c),
        )


def _constants(kind: int, a: int, b: int, c: int) -> tuple[int, ...]:
    three = kind in (Kind.BAR, Kind.BAR_BELOW_ONE)
    found: list[int] = []
    for n in (a, b, c) if three else (a, b):
        value = _rough(n).value
        found += [value.numerator, value.denominator]
    return tuple(found)


def _node(value: Fraction) -> t.Node | Fraction:
    """Return a number as a decimal where it ends soon, else as it is written exactly."""
    scaled = value * 10_000
    return decimal(int(scaled), 4) if scaled.denominator == 1 else value


def _hidden(hundredths: int) -> t.Node:
    """Return a rounded number as the proof has it: 1/2 for 0.5, which is printed nowhere."""
    value = _rough(hundredths).value
    if value.denominator == 1:
        return t.Int(value.numerator)
    return t.Bracket(t.frac(value.numerator, value.denominator))


def _shown(hundredths: int) -> t.Node:
    return _rough(hundredths).node


def _calculation(kind: int, a: int, b: int, c: int) -> tuple[t.Node, t.Node, list[t.Node]]:
    """Return the sum as printed, as the proof has it, and rounded, with what comes after."""
    first, second = _number(a).node, _number(b).node
    x, y = _hidden(a), _hidden(b)
    u, v = _shown(a), _shown(b)
    match kind:
        case Kind.TIMES | Kind.SMALL_TIMES:
            return t.times(first, second), t.times(x, y), [t.times(u, v)]
        case Kind.OVER | Kind.BELOW_ONE:
            return t.divide(first, second), t.divide(x, y), [t.divide(u, v)]
        case Kind.BAR | Kind.BAR_BELOW_ONE:
            third, z, w = _number(c).node, _hidden(c), _shown(c)
            product = decimal(int(_rough(a).value * _rough(b).value), 0)
            return (
                t.Frac(t.times(first, second), third),
                t.divide(t.Bracket(t.times(x, y)), z),
                [t.Frac(t.times(u, v), w), t.Frac(product, w)],
            )
        case Kind.SQUARE:
            two = t.Int(2)
            square = t.Int(int(_rough(a).value ** 2))
            return (
                t.Frac(t.Power(first, two), second),
                t.divide(t.Power(x, two), y),
                [t.Frac(t.Power(u, two), v), t.Frac(square, v)],
            )
    root = t.Int(int(float(_rough(a).value) ** 0.5 + 0.5))
    return (
        t.times(t.Root(first), second),
        t.times(t.Root(x), y),
        [t.times(t.Root(u), v), t.times(root, v)],
    )


_SAID = {
    Kind.BAR: "Multiply in the numerator.",
    Kind.BAR_BELOW_ONE: "Multiply in the numerator.",
    Kind.SQUARE: "Square first.",
    Kind.ROOT: "Take the square root.",
}


def _chain(kind: int, lines: list[t.Node], answer: t.Node) -> list[tuple[str, t.Node, t.Node]]:
    found = []
    if len(lines) > 1:
        found.append((_SAID[Kind(kind)], lines[0], lines[1]))
    multiplies = kind in (Kind.TIMES, Kind.SMALL_TIMES, Kind.ROOT)
    found.append(("Then multiply." if multiplies else "Then divide.", lines[-1], answer))
    return found


def _cost(
    a: int,
    b: int,
    key: Fraction,
    mistakes: list[tuple[Misconception, Fraction]],
    twin: tuple[object, ...],
) -> Draft:
    """Ask about how much many things cost."""
    story, total = by_turns(_COSTS, a // 100 + b)
    many, price = _number(a).node, money_node(Fraction(b, 100))
    about, each = _rough(a).node, t.Money(_rough(b).node)
    target = t.times(about, each)
    answer = money_node(key)
    steps = (
        Step("Round each number to 1 significant figure.", target),
        Step("Multiply.", t.equals(target, answer)),
    )
    written = slips(*((mistake, money_node(value)) for mistake, value in mistakes))
    text = prompt(f"{story} Estimate {total} {HOW}.", n=many, p=price)
    return Draft(
        text,
        Find(target),
        answer,
        "money",
        steps,
        written,
        twin,
        constants=_constants(Kind.COST, a, b, 0),
    )
