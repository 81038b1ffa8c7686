"""Inverse proportion: the more there are, the less time it takes.

Key stage 3, ratio (England, 2013): "solve problems involving direct and inverse proportion,
including graphical and algebraic representations" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.ratio._inverse_mistakes import (
    ADDITIVE,
    ALL_OF_THEM,
    DIRECT,
    FORGETS_DONE,
    SAME_TIME,
    UNDIVIDED,
)
from generators.ratio._inverse_numbers import (
    challenge_fits,
    core_fits,
    gone_wrong,
    hours_done,
    more_wrong,
    simple_wrong,
    support_fits,
)
from generators.ratio._inverse_stories import JOURNEYS, ROWS, SUPPLIES, job_for
from generators.ratio._parts import amount
from generators.ratio._rates import written
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Slip, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_X = t.Sym("x")
_FIRST_NUMBERS = (
    4, 5, 6, 8, 9, 10, 12, 14, 15, 16, 18, 20, 24, 30, 36, 40, 45, 48, 60, 72, 90, 120,
)  # fmt: skip


@register
class InverseProportion(Topic):
    """A multiple; by way of one; how many more, with letters, and a change on the way."""

    id = "ratio.inverse-proportion"
    title = "Inverse proportion"
    statements = ("ratio.proportion",)
    misconceptions = (DIRECT, ADDITIVE, UNDIVIDED, ALL_OF_THEM, FORGETS_DONE, SAME_TIME)
    prerequisites = ("ratio.proportion",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                support_fits,
                kind=("job",),
                p=range(2, 13),
                n=(2, 3, 4, 5, 6, 8, 9, 10, 12, 15, 16, 18, 20, 24, 30, 36, 40, 45, 60, 80, 90),
                q=range(2, 13),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                core_fits,
                kind=("job",),
                p=range(3, 13),
                n=_FIRST_NUMBERS,
                q=range(4, 16),
            )
            .then(
                core_fits, kind=("supply",), p=range(6, 41, 4), n=range(4, 31, 2), q=range(8, 37, 4)
            )
            .then(
                core_fits,
                kind=("journey",),
                p=range(30, 81, 5),
                n=(2, 3, 4, 5, 6, 8),
                q=range(25, 81, 5),
            )
            .then(core_fits, kind=("rows",), p=range(8, 25), n=range(8, 33, 2), q=range(9, 31))
            .then(core_fits, kind=("letters",), p=range(4, 16), n=range(6, 31, 6), q=range(6, 22))
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                challenge_fits,
                kind=("more",),
                p=range(3, 16),
                n=(4, 5, 6, 8, 9, 10, 12, 14, 15, 16, 18, 20, 24, 30, 40, 45, 60, 90, 120),
                q=(2, 3, 4, 5, 6, 8, 9, 10, 12, 15, 18, 20, 30, 40, 45, 60, 80),
            ).then(
                challenge_fits,
                kind=("gone",),
                p=range(4, 13),
                n=(6, 9, 12, 15, 18, 24, 30, 36, 45, 60, 90),
                q=range(1, 9),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, p, n, q = values
        if kind == "more":
            return self._more(p, n, q)
        if kind == "letters":
            return self._letters(p, n, q)
        if kind == "gone":
            return self._gone(p, n, q)
        return self._simple(tier, kind, p, n, q)

    def _simple(self, tier: Tier, kind: str, p: int, n: int, q: int) -> Draft:
        turn, key = p + n + q, p * n // q
        first = unit = ""
        if kind == "job":
            job = job_for(n, key, turn)
            assert job is not None
            unit = job.unit
            text = (
                f"It takes {{p}} {job.who} {{n}} to {job.does}. How long would it take {{q}} "
                f"{job.who} at the same rate?"
            )
            whole = f"Multiply to find how long 1 of the {job.who} would take."
            share = f"Share it among {q}."
        elif kind == "supply":
            text, unit, _, _ = by_turns(SUPPLIES, turn)
            whole, share = "Multiply to find how long it would last 1.", f"Share it among {q}."
        elif kind == "journey":
            text, first, unit = by_turns(JOURNEYS, turn // 5), "km/h", "h"
            whole, share = "Multiply to find the distance.", "Divide by the new speed."
        else:
            text = by_turns(ROWS, turn)
            whole, share = "Multiply to find how many there are.", "Divide by the new number."
        shown_p, shown_q = amount(p, first), amount(q, first)
        shown_n, product = amount(n, unit), amount(p * n, "km" if kind == "journey" else unit)
        wrong: tuple[Fraction | int | None, ...] = simple_wrong(p, n, q)
        if kind == "rows":
            # It is the number in each row that changes, and with it the number of rows.
            wrong = (written(2 * p * q, n), *wrong[1:])
        by_product = (
            Step(whole, t.equals(t.times(shown_p, shown_n), product)),
            Step(share, t.equals(t.divide(product, shown_q), amount(key, unit))),
        )
        return Draft(
            prompt(text, p=shown_p, n=shown_n, q=shown_q),
            Find(_X, (t.equals(t.times(shown_p, shown_n), t.times(shown_q, _X)),)),
            amount(key, unit),
            "quantity" if unit else "integer",
            self._by_factor(p, n, q, unit) if tier is Tier.SUPPORT else by_product,
            _slips((DIRECT, ADDITIVE, UNDIVIDED), wrong, 2 * key, unit),
            (kind, p, n, q),
        )

    @staticmethod
    def _by_factor(p: int, n: int, q: int, unit: str) -> tuple[Step, ...]:
        """Return the working where one number is a multiple of the other."""
        time, key = amount(n, unit), amount(p * n // q, unit)
        if q > p:
            say = f"{q} is {q // p} times {p}, so divide the time by {q // p}."
            return (Step(say, t.equals(t.divide(time, t.Int(q // p)), key)),)
        say = f"{q} is {p} divided by {p // q}, so multiply the time by {p // q}."
        return (Step(say, t.equals(t.times(t.Int(p // q), time), key)),)

    def _more(self, p: int, n: int, q: int) -> Draft:
        job = job_for(n, q, p + n + q)
        assert job is not None
        needed, key = p * n // q, p * n // q - p
        count, first, second = t.Int(p), amount(n, job.unit), amount(q, job.unit)
        product = amount(p * n, job.unit)
        return Draft(
            prompt(
                f"It takes {{p}} {job.who} {{n}} to {job.does}. How many more {job.who} are needed "
                f"to {job.asks} in {{q}} at the same rate?",
                p=count,
                n=first,
                q=second,
            ),
            Find(
                _X,
                (t.equals(t.times(count, first), t.times(t.Bracket(t.add(count, _X)), second)),),
            ),
            t.Int(key),
            "integer",
            (
                Step(
                    "Multiply to find the time of 1 alone.",
                    t.equals(t.times(count, first), product),
                ),
                Step(
                    "Divide to find how many are needed.",
                    t.equals(t.divide(product, second), t.Int(needed)),
                ),
                Step(
                    "Subtract those there are.",
                    t.equals(t.sub(t.Int(needed), count), t.Int(key)),
                ),
            ),
            _slips((ALL_OF_THEM, ADDITIVE), more_wrong(p, n, q)[:2], 2 * key, ""),
            ("more", p, n, q),
        )

    def _letters(self, p: int, n: int, q: int) -> Draft:
        x, y = (t.Sym(name) for name in by_turns(("xy", "pq", "mn"), p + n + q))
        key = p * n // q
        product = t.times(t.Int(p), t.Int(n))
        return Draft(
            prompt(
                "{y} is inversely proportional to {x}. When {a}, {b}. Find {y} when {c}.",
                x=x,
                y=y,
                a=t.equals(x, t.Int(p)),
                b=t.equals(y, t.Int(n)),
                c=t.equals(x, t.Int(q)),
            ),
            Find(y, (t.equals(product, t.times(t.Int(q), y)),)),
            t.Int(key),
            "integer",
            (
                Step(
                    "In inverse proportion the product stays the same.",
                    t.equals(product, t.Int(p * n)),
                ),
                Step(
                    "Divide it by the new number.",
                    t.equals(t.divide(t.Int(p * n), t.Int(q)), t.Int(key)),
                ),
            ),
            _slips((DIRECT, ADDITIVE, UNDIVIDED), simple_wrong(p, n, q), 2 * key, ""),
            ("letters", p, n, q),
        )

    def _gone(self, p: int, n: int, q: int) -> Draft:
        done = hours_done(n)
        key = p * (n - done) // (p - q)
        job = job_for(n, key, p + n + q)
        assert job is not None
        count, gone = t.Int(p), t.Int(q)
        whole, part, left = (amount(value, job.unit) for value in (n, done, n - done))
        product = amount(p * (n - done), job.unit)
        return Draft(
            prompt(
                f"It takes {{p}} {job.who} {{n}} to {job.does}. After {{d}}, {{q}} of them "
                f"{'stop' if q > 1 else 'stops'}. How much longer do the others take at the same "
                "rate?",
                p=count,
                n=whole,
                d=part,
                q=gone,
            ),
            Find(
                _X,
                (
                    t.equals(
                        t.times(count, t.Bracket(t.sub(whole, part))),
                        t.times(t.Bracket(t.sub(count, gone)), _X),
                    ),
                ),
            ),
            amount(key, job.unit),
            "quantity",
            (
                Step("Find the time that was left.", t.equals(t.sub(whole, part), left)),
                Step(
                    "Multiply to find the time of 1 alone.", t.equals(t.times(count, left), product)
                ),
                Step("Find how many go on.", t.equals(t.sub(count, gone), t.Int(p - q))),
                Step(
                    "Share it among them.",
                    t.equals(t.divide(product, t.Int(p - q)), amount(key, job.unit)),
                ),
            ),
            _slips((FORGETS_DONE, SAME_TIME), gone_wrong(p, n, q), 2 * key, job.unit),
            ("gone", p, n, q),
        )


def _slips(
    mistakes: tuple[Misconception, ...],
    doubled: tuple[Fraction | int | None, ...],
    key: int,
    unit: str,
) -> tuple[Slip, ...]:
    pairs = (
        (mistake, None if not value or value <= 0 else amount(Fraction(value, 2), unit))
        for mistake, value in zip(mistakes, doubled, strict=True)
    )
    return slips(*pairs, key=amount(Fraction(key, 2), unit))
