"""Percentage increase and decrease.

Key stage 3, ratio (England, 2013): "solve problems involving percentage change, including:
percentage increase, decrease and original value problems" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._prices import capital, the, thing
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
    profit_wrong,
    support_fits,
    three_shops,
    twice_wrong,
)
from generators.percentages._change_stories import GOODS, GROWS, SALES, SHRINKS
from generators.percentages._changes import afterwards, multiplier_step, way
from itembank.items import kinds
from itembank.items.item import Choose, Draft, Find, Step, Tier, prompt
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
            return self._twice(p, n, more[0])
        if kind == "shops":
            return self._shops(p, n, more[0])
        return self._profit(p, n, more[0])

    def _by_part(self, kind: str, p: int, n: int) -> Draft:
        unit = by_turns(_UNITS, n // 10 + p // 50)
        old, new = amount(100 * n, unit), amount(new_amount(kind, p, n), unit)
        part = amount(n * p // 10, unit)
        return Draft(
            prompt(_ORDER[kind], n=old, p=per_cent(p)),
            Find(_changed(kind, old, p)),
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
            Find(_changed(kind, old, p)),
            amount(key, unit),
            "amount",
            (
                _as_multiplier(sign * p),
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
            (_as_multiplier(sign * p),),
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
            Find(x, (t.equals(x, _changed(kind, old, p)),)),
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

    def _twice(self, p: int, n: int, q: int) -> Draft:
        x, old = t.Sym("x"), amount(100 * n, "£")
        first, second = amount(n * (1000 + p) // 10, "£"), n * (1000 + p) * (1000 + q) // 10_000
        name = thing(n, n // 20 + p // 50 + q // 50)
        text = (
            f"{capital(name)} costs {{n}}. The price goes {way(p)} by {{p}}, and then the new "
            f"price goes {way(q)} by {{q}}. What does {the(name)} cost in the end?"
        )
        share, other = per_cent(abs(p)), per_cent(abs(q))
        factors = (t.Bracket(afterwards(change)) for change in (p, q))
        return Draft(
            prompt(text, n=old, p=share, q=other),
            Find(x, (t.equals(x, t.times(old, *factors)),)),
            amount(second, "£"),
            "money",
            (
                _as_multiplier(p),
                Step(
                    "Multiply the first price.", t.equals(t.times(old, multiplier(1000 + p)), first)
                ),
                _as_multiplier(q, "after the second change"),
                Step(
                    "Multiply the new price.",
                    t.equals(t.times(first, multiplier(1000 + q)), amount(second, "£")),
                ),
            ),
            wrong_amounts("£", second, (ADDS_BOTH, ONE_CHANGE), twice_wrong(p, n, q)),
            ("twice", p, n, q),
            constants=(100,),
        )

    def _shops(self, p: int, n: int, q: int) -> Draft:
        shops = three_shops(n, p, q)
        turn = (p // 50 + n // 2 + q) % 3
        placed = shops[turn:] + shops[:turn]
        names = {shop: f"Shop {letter}" for shop, letter in zip(placed, "ABC", strict=True)}
        name = thing(n, n + q)
        text = f"Three shops sell the same {the(name)[4:]}. " + " ".join(
            f"{names[shop]}: {{n{k}}} with {{p{k}}} off." for k, shop in enumerate(placed)
        )
        text += " Which shop is the cheapest?"
        runs: dict[str, t.Node] = {}
        for k, (price, off) in enumerate(placed):
            runs[f"n{k}"], runs[f"p{k}"] = amount(100 * price, "£"), per_cent(off)
        key = t.Label(names[shops[1]])
        return Draft(
            prompt(text, **runs),
            Choose(
                tuple(
                    (names[price, off], _changed("down", amount(100 * price, "£"), off))
                    for price, off in placed
                ),
                "least",
            ),
            key,
            "name",
            (
                *(
                    Step(
                        f"{names[price, off]}: multiply by what is left.",
                        t.equals(
                            t.times(amount(100 * price, "£"), multiplier(1000 - off)),
                            amount(price * (1000 - off) // 10, "£"),
                        ),
                    )
                    for price, off in placed
                ),
                Step("Choose the lowest price.", key),
            ),
            slips((MOST_OFF, t.Label(names[shops[0]])), (LOWEST_BEFORE, t.Label(names[shops[2]]))),
            ("shops", p, n, q),
        )

    def _profit(self, p: int, n: int, q: int) -> Draft:
        fits = [goods for goods in GOODS if goods[2] <= 3 * q and q <= 2 * goods[2]]
        goods, short, _ = by_turns(fits or GOODS[:1], n // 5 + p // 50 + q // 20)
        each = q + p * q // 1000
        cost, taken = n * q, n * each
        paid, price = amount(cost, "£"), amount(each, "£") if each >= 100 else _pence(each)
        in_pounds, gain = amount(taken, "£"), amount(taken - cost, "£")
        x, count = t.Sym("x"), t.Int(n)
        profit = t.sub(t.times(count, price), paid)
        return Draft(
            prompt(
                f"A stall buys {{n}} {goods} for {{c}} and sells all the {short} at {{e}} each. "
                "What is the percentage profit?",
                n=count,
                c=paid,
                e=price,
            ),
            Find(x, (t.equals(x, t.divide(t.Bracket(profit), paid)),)),
            per_cent(p),
            "percentage",
            (
                Step("Find how much is taken.", t.equals(t.times(count, price), in_pounds)),
                Step("Find the profit.", t.equals(t.sub(in_pounds, paid), gain)),
                Step(
                    "Divide by what was paid.",
                    t.equals(t.divide(gain, paid), multiplier(p)),
                ),
                Step("Multiply by 100 for per cents.", t.equals(multiplier(p), per_cent(p))),
            ),
            wrong_percentages((COST_OF_ONE, CHANGE_AS, NEW_AS), profit_wrong(cost, taken), p),
            ("profit", p, n, q),
        )


_ORDER = {"up": "Increase {n} by {p}.", "down": "Decrease {n} by {p}."}


def _pence(pence: int) -> t.Money:
    return t.Money(t.Int(pence), "p")


def _changed(kind: str, old: t.Node, p: int) -> t.Node:
    part = t.part_of(per_cent(p), old)
    return t.add(old, part) if kind == "up" else t.sub(old, part)


def _last_step(kind: str, old: t.Node, part: t.Node, new: t.Node) -> Step:
    if kind == "up":
        return Step("Add it on.", t.equals(t.add(old, part), new))
    return Step("Subtract it.", t.equals(t.sub(old, part), new))


def _as_multiplier(p: int, when: str = "afterwards") -> Step:
    """Return how the multiplier of a change of p tenths of a per cent is found."""
    return multiplier_step(f"Find what percentage there is {when}, as a decimal.", p)
