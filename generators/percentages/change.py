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
    apart,
    hundredths,
    multiplier,
    part_steps,
    per_cent,
    wrong_amounts,
)
from generators.percentages._as_percentage import (
    percentage_steps,
    tenths_of,
    wrong_percentages,
)
from itembank.items import kinds
from itembank.items.item import Choose, Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

PLAIN = Misconception(
    "percentages.change-by-the-number",
    "adds or subtracts the percentage as a plain number",
    "What is 10% of the amount? Is that always 10?",
)
STOPS = Misconception(
    "percentages.change-stops-too-soon",
    "gives the change and not the new amount",
    "You have found the change. What does the question ask for?",
)
WRONG_WAY = Misconception(
    "percentages.change-wrong-way",
    "subtracts for an increase, or adds for a decrease",
    "Should the new amount be more or less than the old one?",
)
POINT = Misconception(
    "percentages.reads-units-as-tens",
    "writes a one-figure percentage as tenths, so that 6% becomes 0.6",
    "What is 10% as a decimal? So what is 1%?",
)
PART_ONLY = Misconception(
    "percentages.multiplier-of-the-part",
    "gives the multiplier for the change alone",
    "What percentage of the amount is there after the change?",
)
CHANGE_AS = Misconception(
    "percentages.change-as-percentage",
    "gives the change itself as the percentage",
    "What is 10% of the old amount? Does your answer fit with that?",
)
BY_NEW = Misconception(
    "percentages.divides-by-the-new",
    "divides the change by the new amount",
    "The change is a part of which amount: the old or the new?",
)
NEW_AS = Misconception(
    "percentages.gives-what-is-left",
    "gives the new amount as a percentage of the old one",
    "Does the question ask what there is now, or by how much it changed?",
)
ADDS_BOTH = Misconception(
    "percentages.adds-the-percentages",
    "adds or subtracts the two percentages",
    "The second percentage is a part of which price?",
)
ONE_CHANGE = Misconception(
    "percentages.stops-after-the-first",
    "stops after the first change",
    "How many changes are there? Which have you worked out?",
)
MOST_OFF = Misconception(
    "percentages.most-off",
    "chooses the shop that takes off the largest percentage",
    "Is half off a dear thing always cheaper than nothing off a cheap one?",
)
LOWEST_BEFORE = Misconception(
    "percentages.lowest-before",
    "chooses the lowest price before the reduction",
    "What does each shop charge after the reduction?",
)
COST_OF_ONE = Misconception(
    "percentages.profit-on-the-sales",
    "divides the profit by what was taken, and not by what was paid",
    "Profit is a percentage of which amount: what was paid, or what was taken?",
)

_UNITS = ("", "£", "kg", "", "g", "m", "£", "ml")
_AMOUNTS = (20, 30, 40, 50, 60, 70, 80, 90, 120, 140, 150, 160, 180, 200, 240, 250, 300, 360, 400)
_EASY = (50, 100, 200, 250, 300, 400, 500, 600, 700, 750)
_AWKWARD = (20, 30, 40, 60, 70, 80, 120, 150, 180, 240, 350)

_RISES = (50, 80, 100, 120, 150, 200, 240, 250, 300, 350, 400, 450, 600, 750)
_FALLS = (-50, -80, -100, -120, -150, -200, -240, -250, -300, -350, -360, -400, -450, -600)

_GROWS = (
    ("", "The number of members of a swimming club goes up from {a} to {b}.", 20, 900),
    ("£", "The price of a term of swimming lessons goes up from {a} to {b}.", 40, 250),
    ("cm", "A sunflower grows from {a} to {b} in June.", 20, 150),
    ("", "The number of passengers on a bus route goes up from {a} a day to {b} a day.", 60, 990),
    ("kg", "The potato harvest of an allotment goes up from {a} to {b}.", 20, 250),
    ("", "The number of children's books in a library goes up from {a} to {b}.", 150, 990),
)
_SHRINKS = (
    ("", "On Monday {a} people catch the early bus. On Friday {b} people catch it.", 12, 80),
    ("kg", "A sack of compost holds {a}. After a week there are {b} in it.", 20, 60),
    ("£", "The heating of a greenhouse cost {a} in January and {b} in March.", 60, 300),
    ("", "The number of visitors to a market garden goes down from {a} to {b}.", 60, 900),
    ("cm", "The water in a pond is {a} deep in May and {b} deep in August.", 40, 150),
    ("min", "A bus journey took {a}. On a new road it takes {b}.", 12, 90),
)
_SALES = (
    "{Thing} costs {n}. In a sale the price is reduced by {p}. What is the sale price?",
    "{Thing} costs {n}. Members of a club get {p} off. What does a member pay?",
    "{Thing} costs {n}. Next year the price will go up by {p}. What will it cost then?",
    "A shop buys {thing} for {n} and sells it for {p} more. What is the selling price?",
)
_GOODS = (
    ("tomato plants", "plants", 110),
    ("herb pots", "pots", 90),
    ("strawberry plants", "plants", 80),
    ("bread rolls", "rolls", 30),
    ("bus badges", "badges", 120),
    ("swimming caps", "caps", 240),
)


def _support(kind: str, p: int, n: int) -> bool:
    """Keep changes that come to whole numbers."""
    return p * n % 1000 == 0 and apart(_key(kind, p, n), *_change_wrong(kind, p, n))


def _key(kind: str, p: int, n: int) -> int:
    return n * (1000 + p if kind == "up" else 1000 - p) // 10


def _change_wrong(kind: str, p: int, n: int) -> tuple[int | None, ...]:
    """Return what PLAIN, STOPS and WRONG_WAY give, in hundredths."""
    sign = 1 if kind == "up" else -1
    plain = hundredths(10 * n + sign * p, 10)
    return plain, hundredths(n * p, 1000), hundredths(n * (1000 - sign * p), 1000)


def _core(kind: str, p: int, n: int) -> bool:
    """Keep changes by a multiplier, multipliers, prices, and percentages of change to find."""
    if kind == "multiplier":
        # n tells an increase (1) from a decrease (−1).
        return n in (1, -1)
    if kind in ("up", "down"):
        point = hundredths(n * (1000 + (10 * p if kind == "up" else -10 * p)), 1000)
        wrong = (*_change_wrong(kind, p, n)[:2], point if p < 100 else None)
        return p * n % 100 == 0 and apart(_key(kind, p, n), *wrong)
    if kind == "sale":
        return p * n % 10 == 0 and p * n % 1000 != 0 and n >= 8 and p % 50 == 0
    # p is a change in tenths of a per cent, with its sign.
    if p * n % 1000 or p == 0:
        return False
    new = n + p * n // 1000
    table = _SHRINKS if p < 0 else _GROWS
    return any(low <= n <= high for _, _, low, high in table) and _found_apart(n, new)


def _found_apart(old: int, new: int) -> bool:
    key = tenths_of(abs(new - old), old)
    return len({w for w in _found_wrong(old, new) if w is not None and w != key}) > 1


def _found_wrong(old: int, new: int) -> tuple[int | None, ...]:
    """Return what CHANGE_AS, BY_NEW and NEW_AS give, in tenths of a per cent."""
    change = abs(new - old)
    return 10 * change if change < 100 else None, tenths_of(change, new), tenths_of(new, old)


def _challenge(kind: str, p: int, n: int, q: int) -> bool:
    """Keep two changes, the cheapest of three shops, and profits."""
    if kind == "twice":
        return n * (1000 + p) * (1000 + q) % 10_000 == 0 and 0 not in (p, q) and _twice(p, n, q)
    if kind == "shops":
        return _cheapest(n, p, q)
    # n things bought at q pence each, sold with a gain of p.
    return p * q % 1000 == 0 and _profit_fits(p, n, q)


def _twice(p: int, n: int, q: int) -> bool:
    """Keep two changes that can happen to a price, and whose mistakes differ from the end."""
    middle, end = n * (1000 + p) // 10, n * (1000 + p) * (1000 + q) // 10_000
    if n * (1000 + p) % 10 or (p < 0 and q == -p):
        return False
    return apart(end, *_twice_wrong(p, n, q), middle)


def _twice_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what ADDS_BOTH and ONE_CHANGE give, in hundredths."""
    return hundredths(n * (1000 + p + q), 1000), hundredths(n * (1000 + p), 1000)


def _shops(n: int, p: int, q: int) -> tuple[tuple[int, int], ...]:
    """Return price and percentage off of three shops: most off, the cheapest, least before."""
    return (n + q, p + 150), (n, p), (n - q // 2, p - 150)


def _cheapest(n: int, p: int, q: int) -> bool:
    shops = _shops(n, p, q)
    if any(price * off % 100 or off <= 0 for price, off in shops):
        return False
    first, best, last = (price * (1000 - off) for price, off in shops)
    return best < first and best < last and first != last and 5 * max(first, last) < 6 * best


def _profit_fits(p: int, n: int, q: int) -> bool:
    each = q + p * q // 1000
    if n * q % 100 or n * each % 10:
        return False
    cost, taken = n * q, n * each
    gain = taken - cost
    # As a percentage: of what was taken; the gain in pounds; what was taken of what was paid.
    key, wrong = tenths_of(gain, cost), _profit_wrong(cost, taken)
    return len({w for w in wrong if w is not None and w != key}) > 1


def _profit_wrong(cost: int, taken: int) -> tuple[int | None, ...]:
    gain = taken - cost
    in_pounds = gain // 10 if gain % 100 == 0 else None
    return tenths_of(gain, taken), in_pounds, tenths_of(taken, cost)


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
            Space(_support, kind=("up", "down"), p=_EASY, n=_AMOUNTS)
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(_core, kind=("up", "down"), p=_AWKWARD, n=_AMOUNTS)
            .then(
                _core,
                kind=("multiplier",),
                p=(*range(20, 100, 10), *range(110, 500, 40)),
                n=(1, -1),
            )
            .then(
                _core,
                kind=("sale",),
                p=(50, 100, 150, 200, 250, 300, 350, 400),
                n=(
                    9,
                    12,
                    14,
                    16,
                    18,
                    22,
                    24,
                    26,
                    28,
                    32,
                    34,
                    36,
                    42,
                    46,
                    48,
                    54,
                    58,
                    62,
                    66,
                    72,
                    84,
                ),
            )
            .then(
                _core,
                kind=("find",),
                p=_RISES + _FALLS,
                n=(
                    20,
                    25,
                    40,
                    50,
                    60,
                    75,
                    80,
                    120,
                    125,
                    140,
                    150,
                    160,
                    175,
                    200,
                    240,
                    250,
                    300,
                    400,
                ),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=("twice",),
                p=(-250, -200, -100, 50, 100, 200, 250),
                n=(40, 60, 80, 120, 160, 200, 240, 300, 400, 600),
                q=(-250, -200, -150, -100, -50, 50, 100, 200),
            )
            .then(
                _challenge,
                kind=("shops",),
                p=(150, 200, 250, 300, 350),
                n=range(24, 260, 4),
                q=range(4, 60, 4),
            )
            .then(
                _challenge,
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
        old, new = amount(100 * n, unit), amount(_key(kind, p, n), unit)
        part = amount(n * p // 10, unit)
        last = (
            Step("Add it on.", t.equals(t.add(old, part), new))
            if kind == "up"
            else Step("Subtract it.", t.equals(t.sub(old, part), new))
        )
        return Draft(
            prompt(_ORDER[kind], n=old, p=per_cent(p)),
            Find(_changed(kind, old, p)),
            new,
            "amount",
            (*part_steps(p, 100 * n, unit), last),
            wrong_amounts(
                unit,
                _key(kind, p, n),
                zip((PLAIN, STOPS, WRONG_WAY), _change_wrong(kind, p, n), strict=True),
            ),
            (kind, p, n),
        )

    def _times(self, kind: str, p: int, n: int) -> Draft:
        unit = by_turns(_UNITS, n // 10 + p // 10)
        old, key = amount(100 * n, unit), _key(kind, p, n)
        sign = 1 if kind == "up" else -1
        point = hundredths(n * (1000 + sign * 10 * p), 1000) if p < 100 else None
        wrong = (*_change_wrong(kind, p, n)[:2], point)
        return Draft(
            prompt(_ORDER[kind], n=old, p=per_cent(p)),
            Find(_changed(kind, old, p)),
            amount(key, unit),
            "amount",
            (
                *_multiplier_steps(sign * p),
                Step(
                    "Multiply.",
                    t.equals(t.times(old, multiplier(1000 + sign * p)), amount(key, unit)),
                ),
            ),
            wrong_amounts(unit, key, zip((PLAIN, STOPS, POINT), wrong, strict=True)),
            (kind, p, n),
        )

    def _multiplier(self, p: int, sign: int) -> Draft:
        verb, op = ("increase", t.add) if sign > 0 else ("decrease", t.sub)
        point = multiplier(1000 + sign * 10 * p) if p < 100 else None
        return Draft(
            prompt(
                f"What decimal do you multiply an amount by, to {verb} it by {{p}}?", p=per_cent(p)
            ),
            Find(op(per_cent(1000), per_cent(p))),
            multiplier(1000 + sign * p),
            "decimal",
            _multiplier_steps(sign * p),
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
        text = _SALES[turn].replace("{Thing}", capital(name)).replace("{thing}", name)
        key = _key(kind, p, n)
        part, new = amount(n * p // 10, "£"), amount(key, "£")
        return Draft(
            prompt(text, n=old, p=per_cent(p)),
            Find(x, (t.equals(x, _changed(kind, old, p)),)),
            new,
            "money",
            (
                Step(f"Find {p // 10}%.", t.equals(t.part_of(per_cent(p), old), part)),
                Step("Add it on.", t.equals(t.add(old, part), new))
                if sign > 0
                else Step("Subtract it.", t.equals(t.sub(old, part), new)),
            ),
            wrong_amounts(
                "£", key, zip((PLAIN, STOPS, WRONG_WAY), _change_wrong(kind, p, n), strict=True)
            ),
            ("sale", p, n),
        )

    def _find(self, p: int, n: int) -> Draft:
        table, word = (_SHRINKS, "decrease") if p < 0 else (_GROWS, "increase")
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
            wrong_percentages((CHANGE_AS, BY_NEW, NEW_AS), _found_wrong(n, new), abs(p)),
            ("find", p, n),
        )

    def _twice(self, p: int, n: int, q: int) -> Draft:
        x, old = t.Sym("x"), amount(100 * n, "£")
        first, second = amount(n * (1000 + p) // 10, "£"), n * (1000 + p) * (1000 + q) // 10_000
        name = thing(n, n // 20 + p // 50 + q // 50)
        text = (
            f"{capital(name)} costs {{n}}. The price goes {_way(p)} by {{p}}, and then the new "
            f"price goes {_way(q)} by {{q}}. What does {the(name)} cost in the end?"
        )
        share, other = per_cent(abs(p)), per_cent(abs(q))
        factors = (
            t.Bracket((t.add if p > 0 else t.sub)(per_cent(1000), share)),
            t.Bracket((t.add if q > 0 else t.sub)(per_cent(1000), other)),
        )
        return Draft(
            prompt(text, n=old, p=share, q=other),
            Find(x, (t.equals(x, t.times(old, *factors)),)),
            amount(second, "£"),
            "money",
            (
                *_multiplier_steps(p),
                Step(
                    "Multiply the first price.", t.equals(t.times(old, multiplier(1000 + p)), first)
                ),
                *_multiplier_steps(q, "after the second change"),
                Step(
                    "Multiply the new price.",
                    t.equals(t.times(first, multiplier(1000 + q)), amount(second, "£")),
                ),
            ),
            wrong_amounts(
                "£",
                second,
                zip((ADDS_BOTH, ONE_CHANGE), _twice_wrong(p, n, q), strict=True),
            ),
            ("twice", p, n, q),
            constants=(100,),
        )

    def _shops(self, p: int, n: int, q: int) -> Draft:
        shops = _shops(n, p, q)
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
        fits = [goods for goods in _GOODS if goods[2] <= 3 * q and q <= 2 * goods[2]]
        goods, short, _ = by_turns(fits or _GOODS[:1], n // 5 + p // 50 + q // 20)
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
            wrong_percentages((COST_OF_ONE, CHANGE_AS, NEW_AS), _profit_wrong(cost, taken), p),
            ("profit", p, n, q),
        )


_ORDER = {"up": "Increase {n} by {p}.", "down": "Decrease {n} by {p}."}


def _way(p: int) -> str:
    return "up" if p > 0 else "down"


def _pence(pence: int) -> t.Money:
    return t.Money(t.Int(pence), "p")


def _changed(kind: str, old: t.Node, p: int) -> t.Node:
    part = t.part_of(per_cent(p), old)
    return t.add(old, part) if kind == "up" else t.sub(old, part)


def _multiplier_steps(p: int, when: str = "afterwards") -> tuple[Step, ...]:
    """Return how the multiplier of a change of p tenths of a per cent is found."""
    whole, share = per_cent(1000), per_cent(abs(p))
    line = t.add(whole, share) if p > 0 else t.sub(whole, share)
    return (
        Step(
            f"Find what percentage there is {when}, as a decimal.",
            t.equals(line, per_cent(1000 + p), multiplier(1000 + p)),
        ),
    )
