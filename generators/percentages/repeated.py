"""Repeated percentage change, compound interest among it.

Key stage 3, ratio (England, 2013): "solve problems involving percentage change" (from memory).
Compound interest itself is named by key stage 4: "set up, solve and interpret the answers in growth
and decay problems, including compound interest" (2014, from memory).
"""

from __future__ import annotations

from typing import Any

from generators._prices import thing
from generators._turns import by_turns
from generators.percentages._amounts import amount, multiplier, per_cent, wrong_amounts
from generators.percentages._as_percentage import wrong_percentages
from generators.percentages._changes import afterwards, multiplier_step, way
from generators.percentages._repeated_mistakes import (
    ADDS_UP,
    BACK_ONCE,
    BACK_SUM,
    CHANGE_ONLY,
    LEFT,
    ONCE,
    ONE_SHORT,
    SIMPLE,
    TOTAL,
)
from generators.percentages._repeated_numbers import (
    after_changes,
    earned_fits,
    earned_wrong,
    first_fits,
    first_wrong,
    interest_fits,
    overall_fits,
    overall_wrong,
    plain_wrong,
    story_fits,
    story_for,
)
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.measures.years import COMPOUND_INTEREST, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_SAVERS = ("Amina", "Callum", "Priya", "Tomasz", "Grace", "Yusuf", "Mei", "Owen")
_TWICE_FROM = (
    40, 50, 60, 80, 100, 120, 160, 200, 240, 300, 360, 400, 500, 600, 800, 1000, 1200, 1600,
    2000, 2400, 3000, 4000, 5000, 6000, 8000,
)  # fmt: skip
_SAVED = (
    100, 200, 300, 400, 500, 600, 800, 1000, 1500, 2000, 2500, 3000, 4000, 5000, 6000,
)  # fmt: skip
_SECOND_CHANGES = (
    -500, -400, -300, -250, -200, -150, -100, -50, 50, 100, 150, 200, 300, 400, 500,
)  # fmt: skip
_SAVED_FOR_INTEREST = (
    200, 300, 400, 500, 600, 800, 1000, 1500, 2000, 2500, 3000, 4000, 5000, 6000, 8000,
)  # fmt: skip
_THREE_TIMES_FROM = (
    64, 80, 100, 120, 160, 200, 400, 500, 800, 1000, 1600, 2000, 3000, 4000, 5000, 6000, 8000,
    9000, 10_000, 12_000, 16_000, 20_000, 24_000,
)  # fmt: skip
_BACK_TO = (
    80, 100, 200, 400, 500, 800, 1000, 1600, 2000, 3000, 4000, 5000, 6000, 8000, 10_000,
    12_000, 16_000, 20_000,
)  # fmt: skip


@register
class Repeated(Topic):
    """Twice; compound interest and the overall change; three times, interest earned, backwards."""

    id = "percentages.repeated"
    title = "Repeated percentage change"
    statements = ("ratio.percentage-change",)
    misconceptions = (
        SIMPLE,
        ONCE,
        ONE_SHORT,
        CHANGE_ONLY,
        TOTAL,
        ADDS_UP,
        LEFT,
        BACK_ONCE,
        BACK_SUM,
    )
    prerequisites = ("percentages.change",)
    later = {
        Tier.CORE: (Part(COMPOUND_INTEREST, lambda kind, p, n, k: kind == "interest"),),
        Tier.CHALLENGE: (Part(COMPOUND_INTEREST, lambda kind, p, n, k: kind == "earned"),),
    }
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                story_fits,
                kind=("story",),
                p=(-500, -400, -300, -250, -200, -100, 50, 100, 200, 250, 300, 500),
                n=_TWICE_FROM,
                k=(2,),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                interest_fits,
                kind=("interest",),
                p=(10, 20, 30, 40, 50, 60, 80, 100),
                n=_SAVED,
                k=(2, 3),
            ).then(
                overall_fits,
                kind=("overall",),
                p=(-500, -400, -300, -250, -200, -100, 100, 200, 250, 300, 400, 500),
                n=_SECOND_CHANGES,
                k=(2,),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                earned_fits,
                kind=("earned",),
                p=(10, 20, 30, 40, 50, 60, 80, 100),
                n=_SAVED_FOR_INTEREST,
                k=(2, 3),
            )
            .then(
                story_fits,
                kind=("story",),
                p=(-500, -300, -250, -200, -100, -50, 50, 100, 200, 250, 300, 500),
                n=_THREE_TIMES_FROM,
                k=(3,),
            )
            .then(
                first_fits,
                kind=("first",),
                p=(-500, -300, -250, -200, -100, 100, 200, 250, 300, 500),
                n=_BACK_TO,
                k=(2, 3),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, p, n, k = values
        if kind == "story":
            return self._story(p, n, k)
        if kind == "interest":
            return self._interest(p, n, k)
        if kind == "earned":
            return self._earned(p, n, k)
        return self._overall(p, n) if kind == "overall" else self._first(p, n, k)

    def _story(self, p: int, n: int, k: int) -> Draft:
        story = story_for(p, n, k)
        assert story is not None
        words = f"{story.told} {story.question}"
        return _at_the_end("story", words, p, n, k, story.unit, story.period)

    def _interest(self, p: int, n: int, k: int) -> Draft:
        words = (
            f"{_saver(n, p, k)} puts {{n}} in an account that pays {{p}} compound interest a "
            "year. How much is in the account after {k} years?"
        )
        return _at_the_end("interest", words, p, n, k, "£", "year")

    def _earned(self, p: int, n: int, k: int) -> Draft:
        x, first, end = t.Sym("x"), amount(100 * n, "£"), after_changes(n, p, k) or 0
        key = end - 100 * n
        return Draft(
            prompt(
                f"{_saver(n, p, k)} saves {{n}} at {{p}} compound interest a year. "
                "How much interest is earned in {k} years?",
                p=per_cent(p),
                n=first,
                k=t.Int(k),
            ),
            Find(x, (t.equals(x, t.sub(_grown(first, p, k), first)),)),
            amount(key, "£"),
            "money",
            (
                multiplier_step("Find the multiplier.", p),
                *_year_by_year(p, n, k, "£", "year"),
                Step(
                    "Subtract what there was at first.",
                    t.equals(t.sub(amount(end, "£"), first), amount(key, "£")),
                ),
            ),
            wrong_amounts("£", key, (SIMPLE, TOTAL, ONCE), earned_wrong(p, n, k)),
            ("earned", p, n, k),
            constants=(100,),
        )

    def _overall(self, p: int, q: int) -> Draft:
        x, overall = t.Sym("x"), p + q + p * q // 1000
        whole, first, second = per_cent(1000), per_cent(abs(p)), per_cent(abs(q))
        name = thing(60, abs(p) // 50 + abs(q) // 50)
        word = "increase" if overall > 0 else "decrease"
        product = t.times(t.Bracket(afterwards(p)), t.Bracket(afterwards(q)))
        change = t.sub(product, whole) if overall > 0 else t.sub(whole, product)
        end = multiplier(1000 + overall)
        return Draft(
            prompt(
                f"The price of {name} goes {way(p)} by {{p}}, and then the new price goes "
                f"{way(q)} by {{q}}. What is the overall percentage {word}?",
                p=first,
                q=second,
            ),
            Find(x, (t.equals(x, change),)),
            per_cent(abs(overall)),
            "percentage",
            (
                multiplier_step("Find the first multiplier.", p),
                multiplier_step("Find the second multiplier.", q),
                Step(
                    "Multiply the multipliers.",
                    t.equals(t.times(multiplier(1000 + p), multiplier(1000 + q)), end),
                ),
                Step(
                    "Find the difference from 1.",
                    t.equals(
                        t.sub(end, t.Int(1)) if overall > 0 else t.sub(t.Int(1), end),
                        multiplier(abs(overall)),
                        per_cent(abs(overall)),
                    ),
                ),
            ),
            wrong_percentages((ADDS_UP, LEFT, ONCE), overall_wrong(overall, p, q), abs(overall)),
            ("overall", p, q),
            constants=(100,),
        )

    def _first(self, p: int, n: int, k: int) -> Draft:
        story, x = story_for(p, n, k), t.Sym("x")
        assert story is not None
        unit, end = story.unit, after_changes(n, p, k) or 0
        shown, factor = amount(end, unit), multiplier(1000 + p)
        steps, value = [], end
        for back in range(k):
            before = value * 1000 // (1000 + p)
            say = "Divide by it to go back." if back == 0 else "Go back once more."
            steps.append(
                Step(say, t.equals(t.divide(amount(value, unit), factor), amount(before, unit)))
            )
            value = before
        return Draft(
            prompt(story.back, m=shown, p=per_cent(abs(p)), k=t.Int(k)),
            Find(x, (t.equals(_grown(x, p, k), shown),)),
            amount(100 * n, unit),
            "amount",
            (multiplier_step("Find the multiplier.", p), *steps),
            wrong_amounts(unit, 100 * n, (BACK_SUM, BACK_ONCE), first_wrong(end, p, k)),
            ("first", p, n, k),
            constants=(100,),
        )


def _at_the_end(kind: str, words: str, p: int, n: int, k: int, unit: str, period: str) -> Draft:
    """Return the question how much there is after k equal changes, one each `period`."""
    x, first, end = t.Sym("x"), amount(100 * n, unit), after_changes(n, p, k) or 0
    return Draft(
        prompt(words, n=first, p=per_cent(abs(p)), k=t.Int(k)),
        Find(x, (t.equals(x, _grown(first, p, k)),)),
        amount(end, unit),
        "money" if kind == "interest" else "amount",
        (multiplier_step("Find the multiplier.", p), *_year_by_year(p, n, k, unit, period)),
        wrong_amounts(unit, end, (SIMPLE, ONCE, ONE_SHORT, CHANGE_ONLY), plain_wrong(p, n, k)),
        (kind, p, n, k),
        constants=(100,),
    )


def _saver(n: int, p: int, k: int) -> str:
    return by_turns(_SAVERS, n // 100 + p // 10 + k)


def _grown(first: t.Node, p: int, k: int) -> t.Node:
    return t.times(first, t.Power(t.Bracket(afterwards(p)), t.Int(k)))


def _year_by_year(p: int, n: int, k: int, unit: str, period: str) -> list[Step]:
    factor, steps, value = multiplier(1000 + p), [], 100 * n
    for number in range(1, k + 1):
        after = value * (1000 + p) // 1000
        line = t.equals(t.times(amount(value, unit), factor), amount(after, unit))
        steps.append(Step(f"{period.capitalize()} {number}: multiply.", line))
        value = after
    return steps
