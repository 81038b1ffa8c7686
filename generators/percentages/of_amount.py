"""Finding a percentage of an amount.

Key stage 3, ratio and number (England, 2013): "define percentage as 'number of parts per hundred',
interpret percentages and percentage changes as a fraction or a decimal, interpret these
multiplicatively", and "work with percentages greater than 100%" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.percentages._amounts import amount, part_steps, per_cent, wrong_amounts
from generators.percentages._of_amount_mistakes import (
    ADDS,
    AND_UNITS,
    AS_ONE_HALF,
    DIVIDES,
    GIVES_PART,
    IGNORES_HUNDRED,
    LARGEST_AMOUNT,
    LARGEST_PERCENT,
    OF_WHOLE,
    PART_BEFORE_POINT,
    POINT,
    REST,
    REST_OF_ALL,
    SAME_SUM,
    STOPS,
    STOPS_AT_TEN,
    SUBTRACTS,
)
from generators.percentages._of_amount_numbers import (
    challenge_fits,
    challenge_wrong,
    core_fits,
    core_wrong,
    support_fits,
    support_wrong,
)
from generators.percentages._of_amount_wrong_lines import UNITS, gone_wrong
from generators.percentages._several_percentages import equal_sides, part_of_a_part, worth_the_most
from itembank.figures.kinds.number.double_number_line import DoubleNumberLine, Pair
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_AMOUNTS = (
    20, 30, 40, 50, 60, 70, 80, 90, 120, 140, 150, 160, 180, 200, 240, 250, 300, 320, 350, 360,
    400, 450, 480, 500, 600, 800,
)  # fmt: skip
_EASY = (10, 50, 100, 200, 250, 300, 400, 500, 600, 700, 750, 800, 900)
_FIVES = (150, 350, 450, 550, 650, 850, 950)
_SINGLE = (20, 30, 40, 60, 70, 80, 90, 110, 120, 130, 160, 180, 220, 240, 320, 360, 480, 620)
_OVER = (1050, 1100, 1150, 1200, 1250, 1300, 1400, 1500, 1600, 1750, 2200)
_HALVES = (5, 25, 75, 125, 175, 225, 325, 375, 625)

# What comes up, and how many do not.
_REST = (
    "A market garden sows {n} seeds. {p} of them come up. How many seeds do not come up?",
    "A library has {n} story books. {p} of them are on loan. How many are not on loan?",
    "A school kitchen cooks {n} meals. {p} of them are eaten. How many meals are left over?",
    "A bike workshop checks {n} bikes. {p} of them need new brakes. How many do not?",
    "A swimming club has {n} members. {p} of them swim on Fridays. How many do not?",
    "There are {n} seats in a theatre. {p} of them are taken. How many seats are free?",
)


def _others(space: Space) -> Space:
    """Return a tier with statements, pairs and wrong solutions at its end."""

    def bare(kind: str, p: int, n: int, *_: int) -> bool:
        return kind in ("sum", "over", "halves")

    def unit(kind: str, p: int, n: int, *_: int) -> str:
        return by_turns(UNITS, n // 10 + p // 5)

    matched = kinds.with_claims_and_matches(space, unit, only=bare)
    return kinds.with_wrong_solutions(matched, gone_wrong)


@register
class OfAmount(Topic):
    """By 10% and simple fractions; awkward percentages and the rest; parts of parts."""

    id = "percentages.of-amount"
    title = "Percentage of an amount"
    statements = ("number.operators",)
    misconceptions = (
        DIVIDES,
        SUBTRACTS,
        STOPS_AT_TEN,
        REST,
        POINT,
        AND_UNITS,
        IGNORES_HUNDRED,
        ADDS,
        STOPS,
        LARGEST_PERCENT,
        LARGEST_AMOUNT,
        OF_WHOLE,
        REST_OF_ALL,
        AS_ONE_HALF,
        PART_BEFORE_POINT,
        SAME_SUM,
        GIVES_PART,
    )
    prerequisites = ("fractions.of-quantity",)
    spaces = {
        Tier.SUPPORT: _others(Space(support_fits, kind=("sum", "line"), p=_EASY, n=_AMOUNTS)),
        Tier.CORE: _others(
            Space(core_fits, kind=("sum",), p=_FIVES + _SINGLE, n=_AMOUNTS, q=(0,), m=(0,))
            .then(core_fits, kind=("over",), p=_OVER, n=_AMOUNTS, q=(0,), m=(0,))
            .then(core_fits, kind=("rest",), p=_FIVES + _SINGLE, n=_AMOUNTS, q=(0,), m=(0,))
            .then(
                core_fits,
                kind=("choose",),
                p=(300, 400, 600, 700, 800, 900),
                n=(20, 30, 40, 50, 60, 80),
                q=(150, 200, 250, 300, 350, 450),
                m=(60, 80, 90, 120, 140, 160),
            )
        ),
        Tier.CHALLENGE: _others(
            Space(
                challenge_fits,
                kind=("nested",),
                p=(200, 250, 300, 350, 400, 450, 600, 700),
                n=(120, 160, 180, 200, 240, 300, 360, 400, 500, 600),
                q=(100, 150, 200, 250, 300, 400, 500, 600),
            )
            .then(challenge_fits, kind=("halves",), p=_HALVES, n=_AMOUNTS, q=(0,))
            .then(
                challenge_fits,
                kind=("equal",),
                p=(100, 150, 200, 300, 350, 400, 450, 600),
                n=(40, 60, 80, 90, 120, 160, 180, 200, 240),
                q=(30, 40, 50, 60, 75, 80, 120, 150, 160),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, p, n, *more = values
        if kind == "line":
            return self._line(p, n)
        if kind == "choose":
            return worth_the_most(p, n, *more)
        if kind == "rest":
            return self._rest(p, n)
        if kind == "nested":
            return part_of_a_part(p, n, more[0])
        if kind == "equal":
            return equal_sides(p, n, more[0])
        mistakes: tuple[Misconception, ...] = {
            "over": (IGNORES_HUNDRED, ADDS),
            "halves": (AS_ONE_HALF if p < 100 else POINT, PART_BEFORE_POINT),
        }.get(kind, (DIVIDES, POINT, AND_UNITS))
        found = core_wrong(kind, p, n)
        if tier is Tier.SUPPORT:
            mistakes, found = (DIVIDES, SUBTRACTS, STOPS_AT_TEN, REST), support_wrong(kind, p, n)
        elif tier is Tier.CHALLENGE:
            found = challenge_wrong(kind, p, n, 0)
        unit = by_turns(UNITS, n // 10 + p // 5)
        whole = amount(100 * n, unit)
        asked = t.part_of(per_cent(p), whole)
        steps = part_steps(p, 100 * n, unit)
        if kind == "over":
            more_than = amount((p - 1000) * n // 10, unit)
            steps = [
                Step(
                    "100% is the whole amount.", t.equals(t.part_of(per_cent(1000), whole), whole)
                ),
                Step(
                    "Find the rest of the percentage.",
                    t.equals(t.part_of(per_cent(p - 1000), whole), more_than),
                ),
                Step("Add them.", t.equals(t.add(whole, more_than), amount(p * n // 10, unit))),
            ]
        return Draft(
            prompt("Work out {e}.", e=asked),
            Find(asked),
            amount(p * n // 10, unit),
            "amount",
            tuple(steps),
            wrong_amounts(unit, p * n // 10, mistakes, found),
            (kind, p, n),
        )

    def _line(self, p: int, n: int) -> Draft:
        unit = by_turns(UNITS, n // 10 + p // 50)
        steps = 4 if p % 250 == 0 and p % 100 else 5 if p % 200 == 0 else 10
        at = p * steps // 1000
        figure = DoubleNumberLine(
            steps,
            (
                Pair(at, per_cent(p), t.Sym("x")),
                Pair(steps, per_cent(1000), amount(100 * n, unit)),
            ),
        )
        text = prompt("Find the value of {x}.", x=t.Sym("x"))
        return Draft(
            text,
            of_figure(figure, text),
            amount(p * n // 10, unit),
            "amount",
            _by_steps(steps, at, 100 * n, unit),
            wrong_amounts(
                unit,
                p * n // 10,
                (DIVIDES, SUBTRACTS, STOPS_AT_TEN, REST),
                support_wrong("line", p, n),
            ),
            ("line", p, n),
            figure=figure,
        )

    def _rest(self, p: int, n: int) -> Draft:
        whole, x = t.Int(n), t.Sym("x")
        part, left = p * n // 1000, n - p * n // 1000
        steps = part_steps(p, 100 * n, "")
        steps.append(
            Step("Subtract it from them all.", t.equals(t.sub(whole, t.Int(part)), t.Int(left)))
        )
        return Draft(
            prompt(by_turns(_REST, n // 10 + p // 10), n=whole, p=per_cent(p)),
            Find(x, (t.equals(x, t.sub(whole, t.part_of(per_cent(p), whole))),)),
            t.Int(left),
            "integer",
            tuple(steps),
            wrong_amounts("", 100 * left, (STOPS, SUBTRACTS), core_wrong("rest", p, n)),
            ("rest", p, n),
        )


def _by_steps(steps: int, at: int, whole: int, unit: str) -> tuple[Step, ...]:
    """Return the working on a line: one of its steps, and so many of them."""
    single, key = amount(whole // steps, unit), amount(whole * at // steps, unit)
    found = Step(
        f"100% is {steps} steps, so divide by {steps}.",
        t.equals(t.divide(amount(whole, unit), t.Int(steps)), single),
    )
    if at == 1:
        return (found,)
    return (found, Step(f"Multiply by {at}.", t.equals(t.times(t.Int(at), single), key)))
