"""Finding the whole when a part of it is known."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators._bars import part_of_bar
from generators.fractions._whole_mistakes import (
    ADDS_DENOMINATOR,
    DENOMINATOR_ONLY,
    FRACTION_OF_LEFT,
    KNOWN_OUT,
    LEFT_AS_USED,
    OF_PART,
    ONE_PART,
)
from generators.fractions.of_quantity import BARE, amount
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

PART = (
    (
        "",
        "{f} of the buses at a depot are electric. That is {n} buses. "
        "How many buses does the depot have?",
    ),
    (
        "",
        "{f} of a club's members race. That is {n} members. How many members does the club have?",
    ),
    (
        "kg",
        "A gardener uses {f} of a full sack of compost. That is {n}. "
        "How many kilograms does a full sack hold?",
    ),
    (
        "£",
        "A junior season ticket costs {f} of the adult price. That is {n}. "
        "What is the adult price?",
    ),
    (
        "m",
        "A hose is rolled out to {f} of its length. That is {n}. "
        "How many metres long is the whole hose?",
    ),
)
LEFT = (
    (
        "",
        "{f} of the swimmers go home. Now {n} swimmers are left. "
        "How many swimmers were there at first?",
    ),
    (
        "",
        "{f} of the seedlings are sold. Now {n} seedlings are left. "
        "How many seedlings were there at first?",
    ),
    (
        "l",
        "A bus uses {f} of the fuel in its tank. Now {n} of fuel is left. "
        "How many litres were there at first?",
    ),
    (
        "£",
        "A club spends {f} of its money on floats. Now {n} is left. "
        "How much money was there at first?",
    ),
    (
        "kg",
        "A stall sells {f} of its potatoes. Now {n} of potatoes are left. "
        "How many kilograms were there at first?",
    ),
)

BARS = range(10, 10 + len(BARE))
"""Kinds of questions about a bar that is drawn: 10 and more, with these units."""
ON_BAR = "The bar is cut into equal parts. What is the value of the whole bar?"
ON_MARKS = "The marks show equal parts of the bar. What is the value of the whole bar?"


def _support(kind: int, d: int, m: int) -> bool:
    """Keep 1/d of a number is m; 2 + 2 = 2 × 2 would hide adding."""
    return not d == m == 2 and (kind == 0 or m > 3)


def _support_bar(kind: int, d: int, m: int) -> bool:
    """Keep a bar with one part known, other than the number of parts."""
    return m != d and (d - 1) * m != m + d and _fits(kind, d, 1, m)


def _core_bar(kind: int, d: int, a: int, m: int) -> bool:
    """Keep what a question in words could ask too, where the amount fits into its parts."""
    return _core(kind, d, a, m) and _fits(kind, d, a, a * m)


_SIGNS = (0, 190, 200, 70)
"""How wide the units of the amounts in a bar are, in hundredths of an em."""


def _fits(kind: int, d: int, a: int, known: int) -> bool:
    """Tell whether an amount fits into `a` of the `d` parts of a bar."""
    digits = 1 + (known > 9) + (known > 99)
    return 69 * digits + _SIGNS[kind - BARS.start] + 32 <= a * min(200, 1100 // d)


def _core(kind: int, d: int, a: int, m: int) -> bool:
    """Keep a/d of the whole is a × m, so that in a story every mistake comes out whole."""
    if a >= d or gcd(a, d) != 1:
        return False
    return (kind in (0, *BARS) or a * a * m % d == 0) and a * a != d and a * m != d


def _challenge(kind: int, d: int, a: int, m: int) -> bool:
    """Keep amounts left over for which both mistakes come out whole and differ from the key."""
    if a >= d or gcd(a, d) != 1 or d - a == a:
        return False
    left = (d - a) * m
    return left * d % a == 0 and left * a % d == 0 and d * m <= 600 and left > 4


@register
class FindWhole(Topic):
    """The whole from one part, from several parts, from what is left."""

    id = "fractions.find-whole"
    title = "Finding the whole from a part"
    statements = ("number.operators",)
    misconceptions = (
        OF_PART,
        ADDS_DENOMINATOR,
        ONE_PART,
        DENOMINATOR_ONLY,
        LEFT_AS_USED,
        FRACTION_OF_LEFT,
        KNOWN_OUT,
    )
    prerequisites = ("fractions.of-quantity",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=(0,), d=range(2, 13), m=range(2, 31)).then(
                _support_bar, kind=BARS, d=range(3, 9), m=range(3, 31)
            ),
            only=lambda kind, *_: kind < 10,
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core, kind=range(len(PART) + 1), d=range(3, 11), a=range(2, 10), m=range(2, 13)
            ).then(_core_bar, kind=BARS, d=range(3, 11), a=range(2, 9), m=range(2, 13)),
            only=lambda kind, *_: kind < 10,
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(_challenge, kind=range(len(LEFT)), d=range(3, 11), a=range(1, 8), m=range(2, 25))
        ),
    }
    spaces = kinds.with_working_spotted(
        spaces,
        "fractions.find-whole",
        kinds.working_goes_wrong({ADDS_DENOMINATOR: (e.added,), OF_PART: (e.turned,)}),
    )

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, d, *rest = values
        if tier is Tier.SUPPORT:
            (m,) = rest
            if kind in BARS:
                return self._on_bar(BARE[kind - BARS.start], d, 1, m)
            return self._unit_fraction(d, m)
        a, m = rest
        if kind in BARS:
            return self._on_bar(BARE[kind - BARS.start], d, a, m)
        return (
            self._from_part(kind, d, a, m) if tier is Tier.CORE else self._from_left(kind, d, a, m)
        )

    def _on_bar(self, unit: str, d: int, a: int, m: int) -> Draft:
        """Return the whole of a bar in `d` parts, `a` of which are worth a × m together."""
        known, part, key = amount(a * m, unit), amount(m, unit), amount(d * m, unit)
        figure = part_of_bar(d, a, known)
        whole = Step(
            f"The whole is {d} parts: multiply by {d}.", t.equals(t.times(part, t.Int(d)), key)
        )
        if a == 1:
            steps: tuple[Step, ...] = (whole,)
            wrong = slips(
                (KNOWN_OUT, amount((d - 1) * m, unit)), (ADDS_DENOMINATOR, amount(m + d, unit))
            )
        else:
            divided = t.equals(t.divide(known, t.Int(a)), part)
            steps = (Step(f"{a} parts are known: divide by {a} to find 1 part.", divided), whole)
            wrong = slips(
                (ONE_PART, part if d - a > 1 else None),
                (KNOWN_OUT, amount((d - a) * m, unit)),
                (DENOMINATOR_ONLY, amount(a * m * d, unit)),
            )
        text = (ON_BAR if a == 1 else ON_MARKS,)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "amount",
            steps,
            wrong,
            ("bar", unit, a, d, m),
            constants=(d, a),
            figure=figure,
        )

    def _unit_fraction(self, d: int, m: int) -> Draft:
        relation = t.equals(t.part_of(t.frac(1, d), t.Blank()), t.Int(m))
        steps = (
            Step(
                f"The whole is {d} parts like this, so multiply by {d}.",
                t.equals(t.times(t.Int(m), t.Int(d)), t.Int(d * m)),
            ),
        )
        wrong = slips((OF_PART, Fraction(m, d)), (ADDS_DENOMINATOR, m + d))
        text = prompt("Which number goes in the box?  {r}", r=relation)
        return Draft(
            text, Find(t.Blank(), (relation,)), t.Int(d * m), "integer", steps, wrong, (d, m)
        )

    def _from_part(self, kind: int, d: int, a: int, m: int) -> Draft:
        unit, words = PART[kind - 1] if kind else ("", "")
        f, known = t.frac(a, d), amount(a * m, unit)
        part_worth, key = amount(m, unit), amount(d * m, unit)
        steps = (
            Step(f"Divide by {a} to find 1 part.", t.equals(t.divide(known, t.Int(a)), part_worth)),
            Step(
                f"The whole is {d} parts: multiply by {d}.",
                t.equals(t.times(part_worth, t.Int(d)), key),
            ),
        )
        of_part = Fraction(a * a * m, d)
        wrong = slips(
            (ONE_PART, part_worth),
            (DENOMINATOR_ONLY, amount(a * m * d, unit)),
            (OF_PART, of_part if not unit else amount(of_part, unit)),
        )
        twin = (kind, a, d, m)
        if not kind:
            relation = t.equals(t.part_of(f, t.Blank()), known)
            text = prompt("Which number goes in the box?  {r}", r=relation)
            return Draft(text, Find(t.Blank(), (relation,)), key, "integer", steps, wrong, twin)
        x = t.Sym("x")
        text = prompt(words, f=f, n=known)
        model = t.equals(t.part_of(f, x), known)
        return Draft(text, Find(x, (model,)), key, "amount", steps, wrong, twin)

    def _from_left(self, kind: int, d: int, a: int, m: int) -> Draft:
        unit, words = LEFT[kind]
        f, left = t.frac(a, d), (d - a) * m
        known, part_worth, key = amount(left, unit), amount(m, unit), amount(d * m, unit)
        x = t.Sym("x")
        steps = [
            Step("Find the fraction that is left.", t.equals(t.sub(t.Int(1), f), t.frac(d - a, d))),
            Step(
                f"The whole is {d} parts: multiply by {d}.",
                t.equals(t.times(part_worth, t.Int(d)), key),
            ),
        ]
        if d - a > 1:
            share = t.equals(t.divide(known, t.Int(d - a)), part_worth)
            steps.insert(1, Step(f"Divide by {d - a} to find 1 part.", share))
        wrong = slips(
            (LEFT_AS_USED, amount(Fraction(left * d, a), unit)),
            (FRACTION_OF_LEFT, amount(left + Fraction(left * a, d), unit)),
        )
        model = t.equals(t.sub(x, t.part_of(f, x)), known)
        text = prompt(words, f=f, n=known)
        return Draft(text, Find(x, (model,)), key, "amount", tuple(steps), wrong, (kind, a, d, m))
