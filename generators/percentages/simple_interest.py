"""Simple interest.

Key stage 3, ratio (England, 2013): "solve problems involving percentage change, including …
simple interest in financial mathematics" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.percentages._amounts import amount, per_cent, wrong_amounts
from generators.percentages._as_percentage import wrong_percentages
from generators.percentages._interest_mistakes import (
    BY_RATE,
    INTEREST_ONLY,
    MONTHS,
    NO_TIME,
    OF_INTEREST,
    ONE_YEAR,
    POUNDS,
    TOTAL,
    WHOLE_YEAR,
    YEARLY_AS_RATE,
    YEARLY_AS_TIME,
)
from generators.percentages._interest_numbers import (
    backwards_fit,
    interest_of,
    months_fit,
    wrong_of_months,
    wrong_of_years,
    wrong_rates,
    wrong_savings,
    wrong_times,
    years_fit,
)
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_SAVERS = ("Amina", "Callum", "Priya", "Tomasz", "Grace", "Yusuf", "Mei", "Owen", "Zofia")
_MONTHS = (3, 4, 6, 8, 9, 15, 18)
_RATES = (10, 15, 20, 25, 30, 35, 40, 45, 50, 60)
_SAVINGS = (
    100, 150, 200, 240, 250, 300, 350, 400, 450, 500, 600, 700, 800, 900, 1200, 1500, 2000, 2400,
    3000, 3600, 4000, 5000,
)  # fmt: skip


@register
class SimpleInterest(Topic):
    """Interest of some years; all there is, and months; the rate, the time or the savings."""

    id = "percentages.simple-interest"
    title = "Simple interest"
    statements = ("ratio.percentage-change",)
    misconceptions = (
        ONE_YEAR,
        TOTAL,
        INTEREST_ONLY,
        POUNDS,
        MONTHS,
        WHOLE_YEAR,
        NO_TIME,
        YEARLY_AS_RATE,
        YEARLY_AS_TIME,
        BY_RATE,
        OF_INTEREST,
    )
    prerequisites = ("percentages.of-amount",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                years_fit,
                kind=("interest",),
                n=_SAVINGS[:16],
                p=(10, 20, 30, 40, 50, 60),
                k=(2, 3, 4),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                years_fit,
                kind=("total",),
                n=_SAVINGS,
                p=(10, 15, 20, 25, 30, 40, 50),
                k=(2, 3, 4, 5),
            ).then(
                months_fit, kind=("months",), n=_SAVINGS[2:18], p=(20, 30, 40, 50, 60), k=_MONTHS
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(backwards_fit, kind=("rate",), n=_SAVINGS, p=_RATES, k=(2, 3, 4, 5, 6))
            .then(backwards_fit, kind=("time",), n=_SAVINGS, p=_RATES, k=(2, 3, 4, 5, 6))
            .then(backwards_fit, kind=("savings",), n=_SAVINGS, p=_RATES, k=(2, 3, 4, 5))
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, n, p, k = values
        if kind in ("interest", "total"):
            return self._years(kind, n, p, k)
        if kind == "months":
            return self._months(n, p, k)
        return {"rate": self._rate, "time": self._time, "savings": self._savings}[kind](n, p, k)

    def _years(self, kind: str, n: int, p: int, k: int) -> Draft:
        x, saved, years, interest = t.Sym("x"), amount(100 * n, "£"), t.Int(k), interest_of(n, p, k)
        year = amount(n * p // 10, "£")
        earned = t.times(saved, per_cent(p), years)
        steps = [
            Step("Find the interest of 1 year.", t.equals(t.part_of(per_cent(p), saved), year)),
            Step(
                f"Multiply by {k} for {k} years.",
                t.equals(t.times(years, year), amount(interest, "£")),
            ),
        ]
        text = f"{_saver(n, p, k)} saves {{n}} at {{p}} simple interest a year. "
        if kind == "interest":
            text += "How much interest is that in {k} years?"
            key, mistakes = interest, (ONE_YEAR, TOTAL, POUNDS)
        else:
            text += "How much is in the account after {k} years?"
            key, mistakes = interest + 100 * n, (INTEREST_ONLY, ONE_YEAR, POUNDS)
            earned = t.add(saved, earned)
            steps.append(
                Step(
                    "Add it to what was saved.",
                    t.equals(t.add(saved, amount(interest, "£")), amount(key, "£")),
                )
            )
        return Draft(
            prompt(text, n=saved, p=per_cent(p), k=years),
            Find(x, (t.equals(x, earned),)),
            amount(key, "£"),
            "money",
            tuple(steps),
            wrong_amounts("£", key, mistakes, wrong_of_years(kind, n, p, k)),
            (kind, n, p, k),
        )

    def _months(self, n: int, p: int, k: int) -> Draft:
        x, saved, key = t.Sym("x"), amount(100 * n, "£"), n * p * k // 120
        year, part = amount(n * p // 10, "£"), t.frac(k, 12)
        simplest = t.frac(k // _GCD[k], 12 // _GCD[k])
        return Draft(
            prompt(
                f"{_saver(n, p, k)} saves {{n}} at {{p}} simple interest a year. "
                "How much interest is that in {k} months?",
                n=saved,
                p=per_cent(p),
                k=t.Int(k),
            ),
            Find(x, (t.equals(x, t.times(saved, per_cent(p), part)),)),
            amount(key, "£"),
            "money",
            (
                Step("Find the interest of 1 year.", t.equals(t.part_of(per_cent(p), saved), year)),
                Step("Write the months as a fraction of a year.", t.equals(part, simplest)),
                Step(
                    "Find that fraction of it.",
                    t.equals(t.part_of(simplest, year), amount(key, "£")),
                ),
            ),
            wrong_amounts("£", key, (MONTHS, WHOLE_YEAR), wrong_of_months(n, p, k)),
            ("months", n, p, k),
            constants=(12,),
        )

    def _rate(self, n: int, p: int, k: int) -> Draft:
        x, saved, years = t.Sym("x"), amount(100 * n, "£"), t.Int(k)
        interest, year = amount(interest_of(n, p, k), "£"), amount(n * p // 10, "£")
        total = amount(100 * n + interest_of(n, p, k), "£")
        return Draft(
            prompt(
                f"{_saver(n, p, k)} saves {{n}} at simple interest. After {{k}} years {{m}} is in "
                "the account. What is the yearly rate of interest, as a percentage?",
                n=saved,
                k=years,
                m=total,
            ),
            Find(x, (t.equals(t.add(saved, t.times(saved, x, years)), total),)),
            per_cent(p),
            "percentage",
            (
                Step("Find the interest.", t.equals(t.sub(total, saved), interest)),
                Step("Find the interest of 1 year.", t.equals(t.divide(interest, years), year)),
                Step(
                    "Write it as a fraction of the savings, out of 100.",
                    t.equals(t.frac(n * p // 1000, n), t.Frac(per_cent(p).of, t.Int(100))),
                ),
                Step(
                    "Out of 100 means per cent.",
                    t.equals(t.Frac(per_cent(p).of, t.Int(100)), per_cent(p)),
                ),
            ),
            wrong_percentages((NO_TIME, YEARLY_AS_RATE), wrong_rates(n, p, k), p),
            ("rate", n, p, k),
        )

    def _time(self, n: int, p: int, k: int) -> Draft:
        x, saved, key = t.Sym("x"), amount(100 * n, "£"), t.Int(k)
        interest, year = amount(interest_of(n, p, k), "£"), amount(n * p // 10, "£")
        total = amount(100 * n + interest_of(n, p, k), "£")
        return Draft(
            prompt(
                f"{_saver(n, p, k)} saves {{n}} at {{p}} simple interest a year. "
                "After how many years is {m} in the account?",
                n=saved,
                p=per_cent(p),
                m=total,
            ),
            Find(x, (t.equals(t.add(saved, t.times(saved, per_cent(p), x)), total),)),
            key,
            "integer",
            (
                Step("Find the interest.", t.equals(t.sub(total, saved), interest)),
                Step("Find the interest of 1 year.", t.equals(t.part_of(per_cent(p), saved), year)),
                Step("Find how many times it goes.", t.equals(t.divide(interest, year), key)),
            ),
            wrong_amounts("", 100 * k, (BY_RATE, YEARLY_AS_TIME), wrong_times(n, p, k)),
            ("time", n, p, k),
        )

    def _savings(self, n: int, p: int, k: int) -> Draft:
        x, saved, years = t.Sym("x"), amount(100 * n, "£"), t.Int(k)
        interest, year = amount(interest_of(n, p, k), "£"), amount(n * p // 10, "£")
        share = amount(n, "£")
        return Draft(
            prompt(
                f"{_saver(n, p, k)} saves at {{p}} simple interest a year. In {{k}} years the "
                "interest is {i}. How much was saved?",
                p=per_cent(p),
                k=years,
                i=interest,
            ),
            Find(x, (t.equals(t.times(x, per_cent(p), years), interest),)),
            saved,
            "money",
            (
                Step("Find the interest of 1 year.", t.equals(t.divide(interest, years), year)),
                Step("Divide to find 1%.", t.equals(t.divide(year, per_cent(p).of), share)),
                Step("Multiply to find 100%.", t.equals(t.times(t.Int(100), share), saved)),
            ),
            wrong_amounts("£", 100 * n, (NO_TIME, OF_INTEREST), wrong_savings(n, p, k)),
            ("savings", n, p, k),
        )


_GCD = {3: 3, 4: 4, 6: 6, 8: 4, 9: 3, 15: 3, 18: 6}


def _saver(n: int, p: int, k: int) -> str:
    return by_turns(_SAVERS, n // 50 + p // 5 + k)
