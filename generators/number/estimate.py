"""Estimating by rounding each number to 1 significant figure: products, quotients, longer ones.

The programme of study for key stage 3 (England, 2013) asks pupils to "use approximation through
rounding to estimate answers" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.number._estimate_mistakes import (
    CUTS_OFF,
    DIVIDES_SMALLER,
    DROPS_NOUGHTS,
    EXACT,
    HALVES_FOR_ROOT,
    NOT_SQUARED,
    ONE_ONLY,
    STOPS,
    TO_WHOLE,
)
from generators.number._estimate_numbers import (
    LARGE,
    NEAR,
    ONES,
    SMALL,
    Kind,
    answers_of,
    challenge_fits,
    core_fits,
    number_of,
    rough,
    support_fits,
)
from generators.number._writing import decimal
from itembank.items import kinds
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

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
            Space(support_fits, kind=tuple(Kind)[:2], a=LARGE, b=ONES),
            only=lambda kind, *_: kind == 0,
        ),
        Tier.CORE: kinds.with_who_is_right(
            kinds.with_answers(
                Space(
                    core_fits,
                    kind=tuple(Kind)[2:6],
                    a=(
                        *LARGE,
                        *NEAR,
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
                    b=(*LARGE, *ONES, 51, 52, 53, 54),
                    c=ONES,
                )
            ),
            only=lambda kind, *_: kind != 5,
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                challenge_fits,
                kind=tuple(Kind)[6:],
                a=LARGE,
                b=(*LARGE, *ONES),
                c=(*SMALL, *ONES),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c = (*values, 0)[:4]
        twin = (int(kind), a, b, c)
        key, mistakes = answers_of(kind, a, b, c)
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
        value = rough(n).value
        found += [value.numerator, value.denominator]
    return tuple(found)


def _node(value: Fraction) -> t.Node | Fraction:
    """Return a number as a decimal where it ends soon, else as it is written exactly."""
    scaled = value * 10_000
    return decimal(int(scaled), 4) if scaled.denominator == 1 else value


def _hidden(hundredths: int) -> t.Node:
    """Return a rounded number as the proof has it: 1/2 for 0.5, which is printed nowhere."""
    value = rough(hundredths).value
    if value.denominator == 1:
        return t.Int(value.numerator)
    return t.Bracket(t.frac(value.numerator, value.denominator))


def _shown(hundredths: int) -> t.Node:
    return rough(hundredths).node


def _calculation(kind: int, a: int, b: int, c: int) -> tuple[t.Node, t.Node, list[t.Node]]:
    """Return the sum as printed, as the proof has it, and rounded, with what comes after."""
    first, second = number_of(a).node, number_of(b).node
    x, y = _hidden(a), _hidden(b)
    u, v = _shown(a), _shown(b)
    match kind:
        case Kind.TIMES | Kind.SMALL_TIMES:
            return t.times(first, second), t.times(x, y), [t.times(u, v)]
        case Kind.OVER | Kind.BELOW_ONE:
            return t.divide(first, second), t.divide(x, y), [t.divide(u, v)]
        case Kind.BAR | Kind.BAR_BELOW_ONE:
            third, z, w = number_of(c).node, _hidden(c), _shown(c)
            product = decimal(int(rough(a).value * rough(b).value), 0)
            return (
                t.Frac(t.times(first, second), third),
                t.divide(t.Bracket(t.times(x, y)), z),
                [t.Frac(t.times(u, v), w), t.Frac(product, w)],
            )
        case Kind.SQUARE:
            two = t.Int(2)
            square = t.Int(int(rough(a).value ** 2))
            return (
                t.Frac(t.Power(first, two), second),
                t.divide(t.Power(x, two), y),
                [t.Frac(t.Power(u, two), v), t.Frac(square, v)],
            )
    root = t.Int(int(float(rough(a).value) ** 0.5 + 0.5))
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
    many, price = number_of(a).node, money_node(Fraction(b, 100))
    about, each = rough(a).node, t.Money(rough(b).node)
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
