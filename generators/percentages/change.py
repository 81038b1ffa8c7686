"""Percentage increase and decrease.

Key stage 3, ratio (England, 2013): "solve problems involving percentage change, including:
percentage increase, decrease and original value problems" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._prices import capital, thing
from generators._turns import by_turns
from generators.percentages._amounts import (
    amount,
    hundredths,
    multiplier,
    part_steps,
    per_cent,
    wrong_amounts,
)
from generators.percentages._as_percentage import percentage_steps, wrong_percentages
from generators.percentages._change_mistakes import (
    ADDS_BOTH,
    BY_NEW,
    CHANGE_AS,
    COST_OF_ONE,
    LOWEST_BEFORE,
    MOST_OFF,
    NEW_AS,
    ONE_CHANGE,
    PART_ONLY,
    PLAIN,
    POINT,
    STOPS,
    WRONG_WAY,
)
from generators.percentages._change_numbers import (
    challenge_fits,
    change_wrong,
    core_fits,
    found_wrong,
    new_amount,
    support_fits,
)
from generators.percentages._change_stories import GROWS, SALES, SHRINKS
from generators.percentages._changes import afterwards, changed
from generators.percentages._shop_changes import (
    as_multiplier,
    cheapest_shop,
    percentage_profit,
    two_changes,
)
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_UNITS = ("", "£", "kg", "", "g", "m", "£", "ml")
_AMOUNTS = (20, 30, 40, 50, 60, 70, 80, 90, 120, 140, 150, 160, 180, 200, 240, 250, 300, 360, 400)
_EASY = (50, 100, 200, 250, 300, 400, 500, 600, 700, 750)
_AWKWARD = (20, 30, 40, 60, 70, 80, 120, 150, 180, 240, 350)

_RISES = (50, 80, 100, 120, 150, 200, 240, 250, 300, 350, 400, 450, 600, 750)
_FALLS = (-50, -80, -100, -120, -150, -200, -240, -250, -300, -350, -360, -400, -450, -600)
_BEFORE_SALES = (
    9, 12, 14, 16, 18, 22, 24, 26, 28, 32, 34, 36, 42, 46, 48, 54, 58, 62, 66, 72, 84,
)  # fmt: skip
_BEFORE_FOUND = (
    20, 25, 40, 50, 60, 75, 80, 120, 125, 140, 150, 160, 175, 200, 240, 250, 300, 400,
)  # fmt: skip


@register
class Change(Topic):
    """By the part; by a multiplier, and finding the percentage; two changes, shops and profit."""

    id = "percentages.change"
    title = "Percentage increase and decrease"
    statements = ("ratio.percentage-change",)
    misconceptions = (
        PLAIN,
        STOPS,
        WRONG_WAY,
        POINT,
        PART_ONLY,
        CHANGE_AS,
        BY_NEW,
        NEW_AS,
        ADDS_BOTH,
        ONE_CHANGE,
        MOST_OFF,
        LOWEST_BEFORE,
        COST_OF_ONE,
    )
    prerequisites = ("percentages.of-amount",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(support_fits, kind=("up", "down"), p=_EASY, n=_AMOUNTS)
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(core_fits, kind=("up", "down"), p=_AWKWARD, n=_AMOUNTS)
            .then(
                core_fits,
                kind=("multiplier",),
                p=(*range(20, 100, 10), *range(110, 500, 40)),
                n=(1, -1),
            )
            .then(
                core_fits,
                kind=("sale",),
                p=(50, 100, 150, 200, 250, 300, 350, 400),
                n=_BEFORE_SALES,
            )
            .then(
                core_fits,
                kind=("find",),
                p=_RISES + _FALLS,
                n=_BEFORE_FOUND,
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                challenge_fits,
                kind=("twice",),
                p=(-250, -200, -100, 50, 100, 200, 250),
                n=(40, 60, 80, 120, 160, 200, 240, 300, 400, 600),
                q=(-250, -200, -150, -100, -50, 50, 100, 200),
            )
            .then(
                challenge_fits,
                kind=("shops",),
                p=(150, 200, 250, 300, 350),
                n=range(24, 260, 4),
                q=range(4, 60, 4),
            )
            .then(
                challenge_fits,
                kind=("profit",),
                p=(200, 250, 300, 350, 400, 450, 500, 600, 750),
                n=(15, 20, 24, 25, 30, 40, 50, 60, 80),
                q=(20, 40, 50, 60, 80, 120, 150, 160, 200),
            ),
            only=lambda kind, *_: kind != "shops",
        ),
    }
    spaces = kinds.with_working_spotted(
        spaces,
        "percentages.change",
        kinds.working_goes_wrong({WRONG_WAY: (e.turned,), STOPS: (e.cut_short,)}),
    )

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, p, n, *more = values
        if kind in ("up", "down"):
            return self._by_part(kind, p, n) if tier is Tier.SUPPORT else self._times(kind, p, n)
        if kind == "multiplier":
            return self._multiplier(p, n)
        if kind == "sale":
            return self._sale(p, n)
        if kind == "find":
            return self._find(p, n)
        if kind == "twice":
            return two_changes(p, n, more[0])
        if kind == "shops":
            return cheapest_shop(p, n, more[0])
        return percentage_profit(p, n, more[0])

    def _by_part(self, kind: str, p: int, n: int) -> Draft:
        unit = by_turns(_UNITS, n // 10 + p // 50)
        old, new = amount(100 * n, unit), amount(new_amount(kind, p, n), unit)
        part = amount(n * p // 10, unit)
        return Draft(
            prompt(_ORDER[kind], n=old, p=per_cent(p)),
            Find(changed(kind, old, p)),
            new,
            "amount",
            (*part_steps(p, 100 * n, unit), _last_step(kind, old, part, new)),
            wrong_amounts(
                unit, new_amount(kind, p, n), (PLAIN, STOPS, WRONG_WAY), change_wrong(kind, p, n)
            ),
            (kind, p, n),
        )

    def _times(self, kind: str, p: int, n: int) -> Draft:
        unit = by_turns(_UNITS, n // 10 + p // 10)
        old, key = amount(100 * n, unit), new_amount(kind, p, n)
        sign = 1 if kind == "up" else -1
        point = hundredths(n * (1000 + sign * 10 * p), 1000) if p < 100 else None
        wrong = (*change_wrong(kind, p, n)[:2], point)
        return Draft(
            prompt(_ORDER[kind], n=old, p=per_cent(p)),
            Find(changed(kind, old, p)),
            amount(key, unit),
            "amount",
            (
                as_multiplier(sign * p),
                Step(
                    "Multiply.",
                    t.equals(t.times(old, multiplier(1000 + sign * p)), amount(key, unit)),
                ),
            ),
            wrong_amounts(unit, key, (PLAIN, STOPS, POINT), wrong),
            (kind, p, n),
        )

    def _multiplier(self, p: int, sign: int) -> Draft:
        verb = "increase" if sign > 0 else "decrease"
        point = multiplier(1000 + sign * 10 * p) if p < 100 else None
        return Draft(
            prompt(
                f"What decimal do you multiply an amount by, to {verb} it by {{p}}?", p=per_cent(p)
            ),
            Find(afterwards(sign * p)),
            multiplier(1000 + sign * p),
            "decimal",
            (as_multiplier(sign * p),),
            slips(
                (PART_ONLY, multiplier(p)),
                (WRONG_WAY, multiplier(1000 - sign * p)),
                (POINT, point),
                key=multiplier(1000 + sign * p),
            ),
            ("multiplier", p, sign),
            constants=(100,),
        )

    def _sale(self, p: int, n: int) -> Draft:
        x, old = t.Sym("x"), amount(100 * n, "£")
        turn = (n // 2 + p // 50) % 4
        sign, name = (-1, 1)[turn > 1], thing(n, n + p // 50)
        kind = "up" if sign > 0 else "down"
        text = SALES[turn].replace("{Thing}", capital(name)).replace("{thing}", name)
        key = new_amount(kind, p, n)
        part, new = amount(n * p // 10, "£"), amount(key, "£")
        return Draft(
            prompt(text, n=old, p=per_cent(p)),
            Find(x, (t.equals(x, changed(kind, old, p)),)),
            new,
            "money",
            (
                Step(f"Find {p // 10}%.", t.equals(t.part_of(per_cent(p), old), part)),
                _last_step(kind, old, part, new),
            ),
            wrong_amounts("£", key, (PLAIN, STOPS, WRONG_WAY), change_wrong(kind, p, n)),
            ("sale", p, n),
        )

    def _find(self, p: int, n: int) -> Draft:
        table, word = (SHRINKS, "decrease") if p < 0 else (GROWS, "increase")
        fits = [row for row in table if row[2] <= n <= row[3]]
        unit, story, _, _ = by_turns(fits, n // 5 + p // 10)
        new = n + p * n // 1000
        old_shown, new_shown = amount(100 * n, unit), amount(100 * new, unit)
        change = abs(new - n)
        apart_by = t.sub(new_shown, old_shown) if p > 0 else t.sub(old_shown, new_shown)
        x = t.Sym("x")
        return Draft(
            prompt(f"{story} What is the percentage {word}?", a=old_shown, b=new_shown),
            Find(x, (t.equals(x, t.divide(t.Bracket(apart_by), old_shown)),)),
            per_cent(abs(p)),
            "percentage",
            (
                Step(f"Find the {word}.", t.equals(apart_by, amount(100 * change, unit))),
                *percentage_steps(change, n),
            ),
            wrong_percentages((CHANGE_AS, BY_NEW, NEW_AS), found_wrong(n, new), abs(p)),
            ("find", p, n),
        )


_ORDER = {"up": "Increase {n} by {p}.", "down": "Decrease {n} by {p}."}


def _last_step(kind: str, old: t.Node, part: t.Node, new: t.Node) -> Step:
    if kind == "up":
        return Step("Add it on.", t.equals(t.add(old, part), new))
    return Step("Subtract it.", t.equals(t.sub(old, part), new))
