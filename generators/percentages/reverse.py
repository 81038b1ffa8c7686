"""Finding the whole from a percentage, and the original amount before a change.

Key stage 3, ratio (England, 2013): "solve problems involving percentage change, including:
percentage increase, decrease and original value problems" (from memory).
"""

from __future__ import annotations

from math import gcd
from typing import Any

from generators._prices import capital, the, thing
from generators._turns import by_turns
from generators.percentages._amounts import (
    amount,
    apart,
    hundredths,
    multiplier,
    per_cent,
    plain,
    wrong_amounts,
)
from itembank.figures.kinds.double_number_line import DoubleNumberLine, Pair
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

OF_PART = Misconception(
    "percentages.percentage-of-the-part",
    "finds the percentage of the part that is given",
    "Is the given number the whole or a part of it? So is the whole larger or smaller?",
)
REST = Misconception(
    "percentages.finds-the-rest",
    "finds the rest, and not the whole",
    "Draw a bar for the whole. Which part of it have you found?",
)
PLAIN = Misconception(
    "percentages.back-by-the-number",
    "adds or subtracts the percentage as a plain number",
    "Is 10% of every amount 10? What is it of 50?",
)
OF_NEW = Misconception(
    "percentages.percentage-of-the-new",
    "takes the percentage of the new amount to go back",
    "The change was a percentage of which amount: the old or the new?",
)
WRONG_WAY = Misconception(
    "percentages.changes-again",
    "makes the same change once more instead of going back",
    "Was the amount before larger or smaller than it is now?",
)
ADDS_BOTH = Misconception(
    "percentages.adds-the-percentages-back",
    "adds the two percentages and goes back by the sum",
    "The second rise is a percentage of which price?",
)
ONE_BACK = Misconception(
    "percentages.goes-back-once",
    "goes back by the last change only",
    "How many changes were there? Which have you undone?",
)
WRONG_PART = Misconception(
    "percentages.wrong-part",
    "takes the given part to be the percentages that are named",
    "Which percentage do the given ones stand for? Is it named in the question?",
)
STOPS = Misconception(
    "percentages.stops-at-the-old",
    "gives the old price and not the price now",
    "Which price does the last sentence ask for: the old or the new one?",
)

_UNITS = ("", "£", "kg", "", "m", "g")
_PARTS = (
    "{p} of the members of a swimming club are beginners. There are {m} beginners. "
    "How many members are there altogether?",
    "{p} of the buses of a depot are electric. There are {m} electric buses. "
    "How many buses are there altogether?",
    "{p} of the seeds in a tray come up. {m} seedlings come up. How many seeds were sown?",
    "{p} of the maps that a library owns are on loan. {m} maps are on loan. "
    "How many maps does the library own?",
    "{p} of the lunches of a school kitchen are vegetarian. It cooks {m} vegetarian lunches. "
    "How many lunches does it cook?",
)
_FALLS = (
    "The number of members of a swimming club falls by {p} to {m}. How many members were there "
    "before?",
    "The number of passengers on a bus route falls by {p} to {m} a day. How many passengers a day "
    "were there before?",
    "The number of seats in a hall is cut by {p} to {m}. How many seats were there before?",
)
_RISES = (
    "The number of members of a library rises by {p} to {m}. How many members were there before?",
    "The number of plants on a stall rises by {p} to {m}. How many plants were there before?",
    "The number of bikes mended in a month rises by {p} to {m}. How many were mended the month "
    "before?",
)
_REDUCED = (
    "In a sale the price of {thing} is reduced by {p}. The sale price is {m}. What was the price "
    "before the sale?",
    "{Thing} is sold with {p} off for {m}. What is the full price?",
)
_RAISED = (
    "The price of {thing} goes up by {p}. It now costs {m}. What did it cost before?",
    "With tax of {p} added, {thing} costs {m}. What does it cost without the tax?",
)
_LAND = (
    "In a market garden {p} of the land is planted with beans and {q} with peas. The other {m} are "
    "planted with herbs. How many square metres of land are there altogether?",
    "On a school field {p} of the land is for football and {q} for running. The other {m} are a "
    "garden. How many square metres of land are there altogether?",
    "In a park {p} of the land is grass and {q} is wood. The other {m} are flower beds. "
    "How many square metres of land are there altogether?",
)


def _support(kind: str, p: int, n: int) -> bool:
    """Keep wholes n of which p tenths of a per cent come to a whole number."""
    if p * n % 1000 or (kind == "story" and n < 30) or p * n == 1000:
        return False
    if kind == "line" and (p % 100 or p in (100, 500, 800, 900) or n > 300):
        return False
    return apart(100 * n, *_part_wrong(p, n))


def _part_wrong(p: int, n: int) -> tuple[int | None, ...]:
    """Return what OF_PART, REST and PLAIN give, in hundredths."""
    part = p * n // 1000
    return hundredths(p * part, 1000), hundredths(n - part), hundredths(10 * part + p, 10)


def _core(kind: str, p: int, n: int) -> bool:
    """Keep old amounts n changed by p tenths of a per cent, up or down, or what is left of n."""
    if kind == "off":
        return p * n % 1000 == 0 and apart(n * (1000 - p) // 10, *_off_wrong(p, n))
    if kind == "count" and (p * n % 1000 or n < 40):
        return False
    if kind == "price" and p * n % 100:
        return False
    new = n * (1000 + p)
    return (new % 10) == 0 and apart(100 * n, *_change_wrong(p, n))


def _change_wrong(p: int, n: int) -> tuple[int | None, ...]:
    """Return what OF_NEW, PLAIN and WRONG_WAY give, in hundredths."""
    new = n * (1000 + p)
    return (
        hundredths(new * (1000 - p), 1_000_000),
        hundredths(new - 100 * p, 1000),
        hundredths(new * (1000 + p), 1_000_000),
    )


def _challenge(kind: str, p: int, n: int, q: int) -> bool:
    """Keep two rises, and the rest of a whole."""
    if kind == "twice":
        end = n * (1000 + p) * (1000 + q)
        return p != q and end % 100_000 == 0 and apart(100 * n, *_twice_wrong(p, n, q))
    left = 1000 - p - q
    if left <= 0 or p == q or left * n % 1000 or left == 500:
        return False
    return apart(100 * n, *_land_wrong(p, n, q))


def _twice_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    end = n * (1000 + p) * (1000 + q)
    return hundredths(end, 1000 * (1000 + p + q)), hundredths(n * (1000 + p), 1000)


def _land_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    left = (1000 - p - q) * n // 1000
    return hundredths(1000 * left, p + q), hundredths(left * (1000 - p - q), 1000)


def _off_wrong(p: int, n: int) -> tuple[int | None, ...]:
    off = p * n // 1000
    return 100 * n, hundredths(off * (1000 - p), 1000)


@register
class Reverse(Topic):
    """The whole from a part; what was there before a change; before two, and from the rest."""

    id = "percentages.reverse"
    title = "Finding the whole from a percentage"
    statements = ("ratio.percentage-change",)
    misconceptions = (
        OF_PART,
        REST,
        PLAIN,
        OF_NEW,
        WRONG_WAY,
        ADDS_BOTH,
        ONE_BACK,
        WRONG_PART,
        STOPS,
    )
    prerequisites = ("percentages.of-amount", "percentages.change")
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                _support,
                kind=("number",),
                p=(50, 100, 200, 250, 300, 400, 600, 750),
                n=(
                    20,
                    28,
                    36,
                    40,
                    44,
                    50,
                    60,
                    70,
                    80,
                    90,
                    120,
                    140,
                    150,
                    160,
                    180,
                    200,
                    240,
                    300,
                ),
            )
            .then(_support, kind=("line",), p=(200, 300, 400, 600, 700), n=range(20, 310, 10))
            .then(
                _support,
                kind=("story",),
                p=(100, 200, 250, 300, 400, 600),
                n=(30, 40, 60, 70, 80, 90, 120, 140, 160, 180, 200),
            ),
            only=lambda kind, *_: kind != "line",
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core,
                kind=("count",),
                p=(
                    -400,
                    -350,
                    -300,
                    -250,
                    -200,
                    -150,
                    -100,
                    -50,
                    50,
                    100,
                    150,
                    200,
                    250,
                    350,
                    400,
                ),
                n=(40, 60, 80, 120, 140, 160, 180, 200, 220, 240, 260, 280, 300, 320, 360, 400),
            )
            .then(
                _core,
                kind=("price",),
                p=(-400, -350, -300, -250, -200, -150, -100, -50, 50, 100, 150, 200, 250),
                n=(
                    12,
                    15,
                    18,
                    20,
                    24,
                    25,
                    28,
                    30,
                    35,
                    36,
                    40,
                    45,
                    50,
                    56,
                    60,
                    65,
                    70,
                    75,
                    80,
                    90,
                ),
            )
            .then(
                _core,
                kind=("off",),
                p=(50, 100, 150, 200, 250, 300, 350, 400),
                n=(
                    *(
                        16,
                        18,
                        20,
                        24,
                        28,
                        30,
                        36,
                        40,
                        45,
                        48,
                        50,
                        60,
                        64,
                        70,
                        75,
                        80,
                        90,
                        120,
                        140,
                    ),
                    *(150, 200),
                ),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=("twice",),
                p=(50, 100, 150, 200, 250),
                n=(
                    *(
                        20,
                        25,
                        30,
                        40,
                        50,
                        60,
                        70,
                        75,
                        80,
                        90,
                        100,
                        120,
                        125,
                        140,
                        150,
                        160,
                        180,
                    ),
                    *(200, 240, 250, 280, 300, 320, 350, 360, 400, 450, 480, 500),
                ),
                q=(50, 100, 200, 250, 300),
            ).then(
                _challenge,
                kind=("land",),
                p=(100, 150, 200, 250, 300, 350, 400, 450),
                n=(200, 240, 300, 360, 400, 500, 600, 800),
                q=(100, 150, 200, 250, 300, 350, 400),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, p, n, *more = values
        if kind == "number":
            return self._number(p, n)
        if kind == "line":
            return self._line(p, n)
        if kind == "story":
            return self._story(p, n)
        if kind in ("count", "price"):
            return self._before(kind, p, n)
        if kind == "twice":
            return self._twice(p, n, more[0])
        if kind == "land":
            return self._land(p, n, more[0])
        return self._off(p, n)

    def _number(self, p: int, n: int) -> Draft:
        unit = by_turns(_UNITS, n // 4 + p // 50)
        part, whole, x = amount(p * n // 10, unit), amount(100 * n, unit), t.Sym("x")
        what = "amount" if unit else "number"
        return Draft(
            prompt(
                f"{{p}} of {'an' if unit else 'a'} {what} is {{m}}. What is the {what}?",
                p=per_cent(p),
                m=part,
            ),
            Find(x, (t.equals(t.part_of(per_cent(p), x), part),)),
            whole,
            "amount",
            back_to_whole(p, p * n // 10, unit),
            wrong_amounts(
                unit, 100 * n, zip((OF_PART, REST, PLAIN), _part_wrong(p, n), strict=True)
            ),
            ("number", p, n),
        )

    def _line(self, p: int, n: int) -> Draft:
        unit = by_turns(("", "£"), n // 10 + p // 100)
        steps = 5 if p % 200 == 0 else 10
        at = p * steps // 1000
        figure = DoubleNumberLine(
            steps,
            (
                Pair(at, per_cent(p), amount(p * n // 10, unit)),
                Pair(steps, per_cent(1000), t.Sym("x")),
            ),
        )
        text = prompt("Find the value of {x}.", x=t.Sym("x"))
        return Draft(
            text,
            of_figure(figure, text),
            amount(100 * n, unit),
            "amount",
            back_to_whole(p, p * n // 10, unit),
            wrong_amounts(
                unit, 100 * n, zip((OF_PART, REST, PLAIN), _part_wrong(p, n), strict=True)
            ),
            ("line", p, n),
            figure=figure,
        )

    def _story(self, p: int, n: int) -> Draft:
        part, x = t.Int(p * n // 1000), t.Sym("x")
        return Draft(
            prompt(by_turns(_PARTS, n // 10 + p // 50), p=per_cent(p), m=part),
            Find(x, (t.equals(t.part_of(per_cent(p), x), part),)),
            t.Int(n),
            "integer",
            back_to_whole(p, p * n // 10, ""),
            wrong_amounts("", 100 * n, zip((OF_PART, REST), _part_wrong(p, n)[:2], strict=True)),
            ("story", p, n),
        )

    def _before(self, kind: str, p: int, n: int) -> Draft:
        unit, x = ("£" if kind == "price" else ""), t.Sym("x")
        now, share = n * (1000 + p) // 10, per_cent(abs(p))
        turn = n // 5 + abs(p) // 50
        if kind == "count":
            text = by_turns(_FALLS if p < 0 else _RISES, turn)
        else:
            # Tax is added at one rate only, the standard one of the United Kingdom.
            text = by_turns(_REDUCED if p < 0 else _RAISED if p == 200 else _RAISED[:1], turn)
            name = thing(n, turn)
            text = text.replace("{thing}", name).replace("{Thing}", capital(name))
        whole = per_cent(1000)
        left = t.sub(whole, share) if p < 0 else t.add(whole, share)
        shown = amount(now, unit)
        return Draft(
            prompt(text, p=share, m=shown),
            Find(x, (t.equals(t.part_of(t.Bracket(left), x), shown),)),
            amount(100 * n, unit),
            "money" if unit else "integer",
            (
                Step(
                    "Find what percentage of the old amount there is now.",
                    t.equals(left, per_cent(1000 + p)),
                ),
                *back_to_whole(1000 + p, now, unit),
            ),
            wrong_amounts(
                unit, 100 * n, zip((OF_NEW, PLAIN, WRONG_WAY), _change_wrong(p, n), strict=True)
            ),
            (kind, p, n),
            constants=(100,),
        )

    def _twice(self, p: int, n: int, q: int) -> Draft:
        x, end = t.Sym("x"), n * (1000 + p) * (1000 + q) // 10_000
        middle = n * (1000 + p) // 10
        name = thing(n, n // 5 + p // 50 + q // 50)
        shown = amount(end, "£")
        factors = [t.Bracket(t.add(per_cent(1000), per_cent(share))) for share in (p, q)]
        return Draft(
            prompt(
                f"The price of {name} goes up by {{p}}, and then the new price goes up by {{q}}. "
                f"{capital(the(name))} now costs {{m}}. What did it cost at first?",
                p=per_cent(p),
                q=per_cent(q),
                m=shown,
            ),
            Find(x, (t.equals(t.times(x, *factors), shown),)),
            amount(100 * n, "£"),
            "money",
            (
                Step(
                    "Find the multiplier of the last rise.",
                    t.equals(t.add(per_cent(1000), per_cent(q)), multiplier(1000 + q)),
                ),
                Step(
                    "Divide by it to undo the last rise.",
                    t.equals(t.divide(shown, multiplier(1000 + q)), amount(middle, "£")),
                ),
                Step(
                    "Find the multiplier of the first rise.",
                    t.equals(t.add(per_cent(1000), per_cent(p)), multiplier(1000 + p)),
                ),
                Step(
                    "Divide by it to undo the first rise.",
                    t.equals(
                        t.divide(amount(middle, "£"), multiplier(1000 + p)), amount(100 * n, "£")
                    ),
                ),
            ),
            wrong_amounts(
                "£", 100 * n, zip((ADDS_BOTH, ONE_BACK), _twice_wrong(p, n, q), strict=True)
            ),
            ("twice", p, n, q),
            constants=(100,),
        )

    def _land(self, p: int, n: int, q: int) -> Draft:
        x, left = t.Sym("x"), 1000 - p - q
        part = amount(left * n // 10, "m^2")
        rest = t.sub(per_cent(1000), per_cent(p), per_cent(q))
        return Draft(
            prompt(
                by_turns(_LAND, p // 50 + q // 50 + n // 20), p=per_cent(p), q=per_cent(q), m=part
            ),
            Find(x, (t.equals(t.part_of(t.Bracket(rest), x), part),)),
            amount(100 * n, "m^2"),
            "quantity",
            (
                Step("Find the percentage of the given part.", t.equals(rest, per_cent(left))),
                *back_to_whole(left, left * n // 10, "m^2"),
            ),
            wrong_amounts(
                "m^2", 100 * n, zip((WRONG_PART, OF_PART), _land_wrong(p, n, q), strict=True)
            ),
            ("land", p, n, q),
            constants=(100,),
        )

    def _off(self, p: int, n: int) -> Draft:
        x, y = t.Sym("x"), t.Sym("y")
        off, key = p * n // 10, n * (1000 - p) // 10
        name = thing(n, n // 2 + p // 50)
        shown = amount(off, "£")
        return Draft(
            prompt(
                f"With {{p}} off, {name} costs {{m}} less than before. What does it cost now?",
                p=per_cent(p),
                m=shown,
            ),
            Find(y, (t.equals(t.part_of(per_cent(p), x), shown), t.equals(y, t.sub(x, shown)))),
            amount(key, "£"),
            "money",
            (
                *back_to_whole(p, off, "£", "the old price"),
                Step(
                    "Subtract what is taken off.",
                    t.equals(t.sub(amount(100 * n, "£"), shown), amount(key, "£")),
                ),
            ),
            wrong_amounts("£", key, zip((STOPS, OF_PART), _off_wrong(p, n), strict=True)),
            ("off", p, n),
        )


def back_to_whole(tenths: int, part: int, unit: str, whole: str = "the whole") -> tuple[Step, ...]:
    """Return the working from a part to the whole, by a share that goes into both.

    Parameters
    ----------
    tenths
        What the part is, in tenths of a per cent of the whole.
    part
        The part, in hundredths.
    unit
        Its unit.
    whole
        What the whole is called.

    >>> [step.say for step in back_to_whole(600, 2400, "")]
    ['60% is 3 lots of 20%, so divide by 3 to find 20%.', 'Multiply by 5 to find the whole.']
    """
    share = gcd(tenths, 1000)
    if part * share % tenths:
        share = 10
    lots, times = tenths // share, 1000 // share
    single = amount(part // lots, unit)
    steps = []
    if lots > 1:
        say = f"{plain(tenths)}% is {lots} lots of {plain(share)}%, so divide by {lots} to find "
        steps.append(
            Step(
                f"{say}{plain(share)}%.",
                t.equals(t.divide(amount(part, unit), t.Int(lots)), single),
            )
        )
    say = f"Multiply by {times} to find {whole}."
    return (
        *steps,
        Step(say, t.equals(t.times(t.Int(times), single), amount(part // lots * times, unit))),
    )
