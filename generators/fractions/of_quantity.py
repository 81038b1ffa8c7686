"""Finding a fraction of a quantity."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._bars import whole_bar
from generators.fractions._of_quantity_mistakes import (
    NUMERATOR_FIRST,
    OF_FIRST,
    OF_REST,
    OF_WHOLE,
    ONE_PART,
    REST,
    TAKES_DENOMINATOR,
    USED,
)
from generators.fractions._of_quantity_numbers import challenge_fits, core_fits, support_fits
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import plural

BARE = ("", "kg", "cm", "£")
"""Units of the bare questions; an empty one is a plain number."""

ONE_STEP = (
    ("", "A depot has {n} buses. {f} of them are electric. How many buses are electric?"),
    ("", "A gardener sows {n} seeds. {f} of them come up. How many seeds come up?"),
    ("", "A club has {n} members. {f} of them race. How many members race?"),
    ("kg", "A sack holds {n} of compost. A gardener uses {f} of it. How many kilograms are used?"),
    (
        "£",
        "A season ticket for the pool costs {n}. A junior ticket costs {f} of that. "
        "How much does a junior ticket cost?",
    ),
    ("km", "A bus route is {n} long. {f} of it is in town. How many kilometres are in town?"),
)
OF_THE_REST = (
    "A depot has {n} buses. {f} of them are electric and {g} of the rest are hybrid. "
    "How many are hybrid?",
    "A gardener has {n} plants. {f} of them are beans and {g} of the rest are peas. "
    "How many are peas?",
    "A club has {n} members. {f} of them are adults and {g} of the rest are teenagers. "
    "How many are teenagers?",
)
THE_REST = (
    "A depot has {n} buses. {f} of them are electric, {g} of them are hybrid "
    "and the rest are diesel. "
    "How many are diesel?",
    "A gardener has {n} plants. {f} of them are beans, {g} of them are peas "
    "and the rest are herbs. "
    "How many are herbs?",
    "A club has {n} members. {f} of them are adults, {g} of them are teenagers "
    "and the rest are younger. "
    "How many are younger?",
)
BARS = range(10, 10 + len(BARE))
"""Kinds of questions about a bar that is drawn: 10 and more, with the units of the bare ones."""
ON_BAR = "The bar is cut into equal parts. What is the value of the shaded {parts}?"
FIRST = ((1, 2), (1, 3), (2, 3), (1, 4), (3, 4), (1, 5), (2, 5), (3, 5))
SECOND = ((1, 2), (1, 3), (2, 3), (1, 4), (3, 4), (1, 5), (2, 5), (3, 8))


def _gone_wrong(unit: int, d: int, m: int) -> tuple[kinds.WrongSolution, ...]:
    """Return how a unit fraction of a number or an amount is found wrongly."""
    if unit in BARS:
        return ()
    whole = amount(d * m, BARE[unit])
    taken = t.sub(whole, amount(d, BARE[unit]))
    return (kinds.WrongSolution(TAKES_DENOMINATOR, (taken, amount(d * m - d, BARE[unit]))),)


def _others(space: Space) -> Space:
    """Return the first tier with statements, pairs and wrong solutions at its end."""

    def bare(unit: int, *_: int) -> bool:
        return unit not in BARS

    return kinds.with_wrong_solutions(
        kinds.with_claims_and_matches(space, lambda unit, *_: unit, only=bare),
        _gone_wrong,
    )


@register
class OfQuantity(Topic):
    """A fraction of a number or an amount, of what is left, and what is left after two."""

    id = "fractions.of-quantity"
    title = "Finding a fraction of a quantity"
    statements = ("number.operators",)
    misconceptions = (
        REST,
        TAKES_DENOMINATOR,
        ONE_PART,
        NUMERATOR_FIRST,
        OF_WHOLE,
        OF_FIRST,
        USED,
        OF_REST,
    )
    spaces = {
        Tier.SUPPORT: _others(
            Space(support_fits, unit=range(len(BARE)), d=(3, 4, 5, 6, 8, 10), m=range(2, 13)).then(
                support_fits, unit=BARS, d=(3, 4, 5, 6, 8, 10), m=range(2, 13)
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                core_fits,
                kind=range(len(ONE_STEP)),
                d=(3, 4, 5, 6, 8, 9, 10),
                a=range(2, 10),
                m=range(3, 13),
            ).then(core_fits, kind=BARS, d=(3, 4, 5, 6, 8, 9, 10), a=range(2, 10), m=range(3, 13)),
            only=lambda kind, *_: kind < 10,
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(challenge_fits, kind=range(6), f=FIRST, g=SECOND, m=range(1, 13))
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._unit_fraction(*values)
        if tier is Tier.CORE:
            return self._several(*values)
        kind, f, g, m = values
        return self._of_rest(kind, f, g, m) if kind < 3 else self._left(kind - 3, f, g, m)

    def _unit_fraction(self, unit: int, d: int, m: int) -> Draft:
        if unit in BARS:
            return self._on_bar(BARE[unit - BARS.start], d, 1, m)
        whole, key = amount(d * m, BARE[unit]), amount(m, BARE[unit])
        asked = t.part_of(t.frac(1, d), whole)
        divided = t.equals(asked, t.divide(whole, t.Int(d)), key)
        steps = (Step(f"Divide by {d}.", divided, whole_bar(d, 1, whole)),)
        wrong = slips(
            (REST, amount(d * m - m, BARE[unit])),
            (TAKES_DENOMINATOR, amount(d * m - d, BARE[unit])),
        )
        text = prompt("Work out {e}.", e=asked)
        return Draft(text, Find(asked), key, "amount", steps, wrong, (unit, d, m))

    def _on_bar(self, unit: str, d: int, a: int, m: int) -> Draft:
        """Return the value of `a` shaded parts of a bar in `d`, whose whole is given."""
        n = d * m
        whole, part, key = amount(n, unit), amount(m, unit), amount(a * m, unit)
        figure = whole_bar(d, a, whole)
        divided = t.equals(t.divide(whole, t.Int(d)), part)
        text = (ON_BAR.format(parts=plural(a, "part")),)
        if a == 1:
            steps: tuple[Step, ...] = (
                Step(f"There are {d} equal parts, so divide by {d}.", divided),
            )
            wrong = slips((REST, amount(n - m, unit)), (TAKES_DENOMINATOR, amount(n - d, unit)))
        else:
            steps = (
                Step(f"There are {d} equal parts, so divide by {d} to find 1 part.", divided),
                Step(
                    f"{a} parts are shaded: multiply by {a}.",
                    t.equals(t.times(part, t.Int(a)), key),
                ),
            )
            by_top = amount(n // a * d, unit) if n % a == 0 else None
            wrong = slips(
                (ONE_PART, part), (REST, amount(n - a * m, unit)), (NUMERATOR_FIRST, by_top)
            )
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

    def _several(self, kind: int, d: int, a: int, m: int) -> Draft:
        if kind in BARS:
            return self._on_bar(BARE[kind - BARS.start], d, a, m)
        unit, words = ONE_STEP[kind]
        n = d * m
        whole, f, x = amount(n, unit), t.frac(a, d), t.Sym("x")
        part, key = amount(m, unit), amount(a * m, unit)
        steps = (
            Step(
                f"Divide by {d} to find 1 part.",
                t.equals(t.divide(whole, t.Int(d)), part),
                whole_bar(d, a, whole),
            ),
            Step(f"Multiply by {a} to find {a} parts.", t.equals(t.times(part, t.Int(a)), key)),
        )
        by_top = amount(n // a * d, unit) if n % a == 0 else None
        wrong = slips((ONE_PART, part), (REST, amount(n - a * m, unit)), (NUMERATOR_FIRST, by_top))
        return Draft(
            prompt(words, n=whole, f=f),
            Find(x, (t.equals(x, t.part_of(f, whole)),)),
            key,
            "amount",
            steps,
            wrong,
            (kind, a, d, m),
        )

    def _of_rest(self, story: int, f: tuple[int, int], g: tuple[int, int], m: int) -> Draft:
        (a, b), (c, d) = f, g
        n = b * d * m
        first, x = n * a // b, t.Sym("x")
        rest = n - first
        key = rest * c // d
        whole, p, q = t.Int(n), t.frac(a, b), t.frac(c, d)
        steps = (
            Step("Find the first part.", t.equals(t.part_of(p, whole), t.Int(first))),
            Step(
                "Take it away to find the rest.", t.equals(t.sub(whole, t.Int(first)), t.Int(rest))
            ),
            Step(
                "Find the second fraction of the rest.",
                t.equals(t.part_of(q, t.Int(rest)), t.Int(key)),
            ),
        )
        wrong = slips((OF_WHOLE, n * c // d), (OF_FIRST, first * c // d))
        model = t.equals(x, t.part_of(q, t.Bracket(t.sub(whole, t.part_of(p, whole)))))
        text = prompt(OF_THE_REST[story], n=whole, f=p, g=q)
        return _story(text, x, model, key, steps, wrong, (0, story, f, g, n))

    def _left(self, story: int, f: tuple[int, int], g: tuple[int, int], m: int) -> Draft:
        (a, b), (c, d) = f, g
        n = b * d * m
        first, second, x = n * a // b, n * c // d, t.Sym("x")
        left = n - first - second
        whole, p, q = t.Int(n), t.frac(a, b), t.frac(c, d)
        steps = (
            Step("Find the first part.", t.equals(t.part_of(p, whole), t.Int(first))),
            Step("Find the second part.", t.equals(t.part_of(q, whole), t.Int(second))),
            Step(
                "Take both parts away.",
                t.equals(t.sub(whole, t.Int(first), t.Int(second)), t.Int(left)),
            ),
        )
        of_rest = (n - first) * c // d
        wrong = slips((USED, first + second), (OF_REST, n - first - of_rest))
        model = t.equals(x, t.Sum(whole, (("-", t.part_of(p, whole)), ("-", t.part_of(q, whole)))))
        text = prompt(THE_REST[story], n=whole, f=p, g=q)
        return _story(text, x, model, left, steps, wrong, (1, story, f, g, n))


def amount(n: Fraction | int, unit: str) -> t.Node:
    """Return a whole amount in a unit; an empty unit gives a plain number.

    >>> amount(3, "kg"), amount(3, "")
    (Quantity(amount=Int(n=3), unit='kg'), Int(n=3))
    """
    whole = t.Int(int(n))
    if unit == "£":
        return t.Money(whole)
    return t.Quantity(whole, unit) if unit else whole


def _story(
    text: Any,
    x: t.Sym,
    model: t.Relation,
    key: int,
    steps: tuple[Step, ...],
    wrong: Any,
    twin: tuple[object, ...],
) -> Draft:
    return Draft(text, Find(x, (model,)), t.Int(key), "integer", steps, wrong, twin)
