"""Repeated percentage change, compound interest among it.

Key stage 3, ratio (England, 2013): "solve problems involving percentage change" (from memory).
Compound interest itself is named by key stage 4: "set up, solve and interpret the answers in growth
and decay problems, including compound interest" (2014, from memory).
"""

from __future__ import annotations

from typing import Any, NamedTuple

from generators._prices import thing
from generators._turns import by_turns
from generators.percentages._amounts import amount, apart, multiplier, per_cent, wrong_amounts
from generators.percentages._as_percentage import wrong_percentages
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.measures.years import COMPOUND_INTEREST, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

SIMPLE = Misconception(
    "percentages.repeated-of-the-first",
    "takes the percentage of the first amount every time",
    "The second change is a percentage of which amount?",
)
ONCE = Misconception(
    "percentages.repeated-once",
    "makes the change only once",
    "How many times does the amount change? Which have you worked out?",
)
ONE_SHORT = Misconception(
    "percentages.repeated-one-short",
    "makes the change one time too few",
    "Write the amount after each change. How many changes are there?",
)
CHANGE_ONLY = Misconception(
    "percentages.repeated-change-only",
    "gives the change and not the amount",
    "Does the question ask for the amount at the end, or for the change?",
)
TOTAL = Misconception(
    "percentages.repeated-total",
    "gives the whole amount at the end and not the interest",
    "How much of that was there at the beginning?",
)
ADDS_UP = Misconception(
    "percentages.adds-the-percentages-up",
    "adds or subtracts the percentages",
    "Start with £10. What is it after the first change? The second is a part of which amount?",
)
LEFT = Misconception(
    "percentages.repeated-what-is-left",
    "gives the end as a percentage of the beginning, and not the change",
    "Does the question ask what there is at the end, or by how much it changed?",
)
BACK_ONCE = Misconception(
    "percentages.repeated-back-once",
    "goes back by one change only",
    "How many times did the amount change? How often have you gone back?",
)
BACK_SUM = Misconception(
    "percentages.repeated-back-by-the-sum",
    "goes back by the percentages added up",
    "Try your answer: change it step by step. Do you come to the end amount?",
)


class _Story(NamedTuple):
    """A story told forwards and backwards, whose amount changes each `period`.

    `most` is the largest change that is plausible, in tenths of a per cent.
    """

    unit: str
    told: str
    question: str
    period: str
    most: int
    back: str


_GROWTH = (
    _Story(
        "cm",
        "A bamboo shoot is {n} tall. It grows by {p} each day.",
        "How tall is it after {k} days?",
        "day",
        300,
        "A bamboo shoot grows by {p} each day. After {k} days it is {m} tall. "
        "How tall was it at first?",
    ),
    _Story(
        "",
        "A swimming club has {n} members. The number rises by {p} each year.",
        "How many members are there after {k} years?",
        "year",
        300,
        "The number of members of a swimming club rises by {p} each year. After {k} years there "
        "are {m}. How many were there at first?",
    ),
    _Story(
        "£",
        "The yearly rent of a workshop is {n}. It rises by {p} each year.",
        "What is the rent after {k} years?",
        "year",
        100,
        "The yearly rent of a workshop rises by {p} each year. After {k} years it is {m}. "
        "What was it at first?",
    ),
    _Story(
        "",
        "A bus route has {n} passengers a day. The number rises by {p} each year.",
        "How many passengers a day are there after {k} years?",
        "year",
        300,
        "The number of passengers a day on a bus route rises by {p} each year. After {k} years "
        "there are {m}. How many were there at first?",
    ),
    _Story(
        "",
        "The web page of a library has {n} visitors a week. The number rises by {p} each month.",
        "How many visitors a week are there after {k} months?",
        "month",
        500,
        "The number of visitors a week to the web page of a library rises by {p} each month. "
        "After {k} months there are {m}. How many were there at first?",
    ),
)
_DECAY = (
    _Story(
        "£",
        "A van is worth {n}. It loses {p} of its value each year.",
        "What is it worth after {k} years?",
        "year",
        300,
        "A van loses {p} of its value each year. After {k} years it is worth {m}. "
        "What was it worth at first?",
    ),
    _Story(
        "l",
        "A tank holds {n} of water. Each day {p} of the water in it is used.",
        "How much water is left after {k} days?",
        "day",
        500,
        "Each day {p} of the water in a tank is used. After {k} days {m} are left. "
        "How much water was there at first?",
    ),
    _Story(
        "",
        "There are {n} weeds in a pond. Each week a gardener takes out {p} of them.",
        "How many are left after {k} weeks?",
        "week",
        500,
        "Each week a gardener takes {p} of the weeds out of a pond. After {k} weeks {m} are left. "
        "How many were there at first?",
    ),
    _Story(
        "£",
        "A tractor is worth {n}. It loses {p} of its value each year.",
        "What is it worth after {k} years?",
        "year",
        300,
        "A tractor loses {p} of its value each year. After {k} years it is worth {m}. "
        "What was it worth at first?",
    ),
    _Story(
        "",
        "A shop has {n} old maps. Each month it sells {p} of the maps it has.",
        "How many are left after {k} months?",
        "month",
        500,
        "Each month a shop sells {p} of the old maps it has. After {k} months {m} are left. "
        "How many were there at first?",
    ),
)
_SAVERS = ("Amina", "Callum", "Priya", "Tomasz", "Grace", "Yusuf", "Mei", "Owen")
_SIZES = {"cm": (20, 120), "£": (1500, 30_000), "l": (200, 2000), "": (100, 9000)}


def _after(n: int, p: int, k: int) -> int | None:
    """Return n changed k times by p tenths of a per cent, in hundredths, if each step is exact."""
    value = 100 * n
    for _ in range(k):
        value, rest = divmod(value * (1000 + p), 1000)
        if rest:
            return None
    return value


def _whole_after(n: int, p: int, k: int) -> bool:
    return all((_after(n, p, times) or 1) % 100 == 0 for times in range(1, k + 1))


def _story(p: int, n: int, k: int) -> _Story | None:
    fits = [
        story
        for story in (_GROWTH if p > 0 else _DECAY)
        if _SIZES[story.unit][0] <= n <= _SIZES[story.unit][1]
        and abs(p) <= story.most
        and (story.unit or _whole_after(n, p, k))
    ]
    return by_turns(fits, n // 20 + abs(p) // 10 + k) if fits else None


def _story_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep equal changes of which each comes out, in a story that suits the numbers."""
    end = _after(n, p, k)
    if end is None or _story(p, n, k) is None:
        return False
    return apart(end, *_plain_wrong(p, n, k))


def _plain_wrong(p: int, n: int, k: int) -> tuple[int | None, ...]:
    """Return what SIMPLE, ONCE, ONE_SHORT and CHANGE_ONLY give, in hundredths."""
    end, simple = _after(n, p, k), n * (1000 + k * p)
    short = _after(n, p, k - 1) if k > 2 else None
    return (
        simple // 10 if simple > 0 and simple % 10 == 0 else None,
        _after(n, p, 1),
        short,
        abs(end - 100 * n) if end is not None else None,
    )


def _interest_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep savings of which each year's amount comes out in pence."""
    end = _after(n, p, k)
    return end is not None and apart(end, *_plain_wrong(p, n, k))


def _earned_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep interest that comes out in pence every year."""
    end = _after(n, p, k)
    return end is not None and apart(end - 100 * n, *_earned_wrong(p, n, k))


def _overall_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep two changes, p and n, that come to a whole number of tenths and do not cancel."""
    if p * n % 1000 or (p > 0 and n > 0 and p >= n):
        return False
    overall = p + n + p * n // 1000
    return overall != 0 and _apart_overall(overall, p, n)


def _first_fits(kind: str, p: int, n: int, k: int) -> bool:
    """Keep beginnings from which each change comes out, in a story that suits the numbers."""
    end = _after(n, p, k)
    if end is None or _story(p, n, k) is None:
        return False
    return apart(100 * n, *_first_wrong(end, p, k))


def _earned_wrong(p: int, n: int, k: int) -> tuple[int | None, ...]:
    """Return what SIMPLE, TOTAL and ONCE give."""
    return k * p * n // 10, _after(n, p, k), p * n // 10


def _apart_overall(overall: int, p: int, n: int) -> bool:
    wrong = _overall_wrong(overall, p, n)
    return len({w for w in wrong if w is not None and w != abs(overall)}) > 1


def _overall_wrong(overall: int, p: int, n: int) -> tuple[int | None, ...]:
    """Return what ADDS_UP, LEFT and ONCE give, in tenths of a per cent."""
    added = abs(p + n) or None
    return added, 1000 + overall, abs(p)


def _first_wrong(end: int, p: int, k: int) -> tuple[int | None, ...]:
    """Return what BACK_SUM and BACK_ONCE give."""
    by_sum, rest = divmod(end * 1000, max(1000 + k * p, 1))
    once, left = divmod(end * 1000, 1000 + p)
    fair = 1000 + k * p > 0
    return None if rest or not fair else by_sum, None if left else once


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
                _story_fits,
                kind=("story",),
                p=(-500, -400, -300, -250, -200, -100, 50, 100, 200, 250, 300, 500),
                n=(
                    *(
                        40,
                        50,
                        60,
                        80,
                        100,
                        120,
                        160,
                        200,
                        240,
                        300,
                        360,
                        400,
                        500,
                        600,
                        800,
                        1000,
                    ),
                    *(1200, 1600, 2000, 2400, 3000, 4000, 5000, 6000, 8000),
                ),
                k=(2,),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _interest_fits,
                kind=("interest",),
                p=(10, 20, 30, 40, 50, 60, 80, 100),
                n=(
                    100,
                    200,
                    300,
                    400,
                    500,
                    600,
                    800,
                    1000,
                    1500,
                    2000,
                    2500,
                    3000,
                    4000,
                    5000,
                    6000,
                ),
                k=(2, 3),
            ).then(
                _overall_fits,
                kind=("overall",),
                p=(-500, -400, -300, -250, -200, -100, 100, 200, 250, 300, 400, 500),
                n=(
                    -500,
                    -400,
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
                    300,
                    400,
                    500,
                ),
                k=(2,),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _earned_fits,
                kind=("earned",),
                p=(10, 20, 30, 40, 50, 60, 80, 100),
                n=(
                    200,
                    300,
                    400,
                    500,
                    600,
                    800,
                    1000,
                    1500,
                    2000,
                    2500,
                    3000,
                    4000,
                    5000,
                    6000,
                    8000,
                ),
                k=(2, 3),
            )
            .then(
                _story_fits,
                kind=("story",),
                p=(-500, -300, -250, -200, -100, -50, 50, 100, 200, 250, 300, 500),
                n=(
                    *(
                        64,
                        80,
                        100,
                        120,
                        160,
                        200,
                        400,
                        500,
                        800,
                        1000,
                        1600,
                        2000,
                        3000,
                        4000,
                        5000,
                    ),
                    *(6000, 8000, 9000, 10_000, 12_000, 16_000, 20_000, 24_000),
                ),
                k=(3,),
            )
            .then(
                _first_fits,
                kind=("first",),
                p=(-500, -300, -250, -200, -100, 100, 200, 250, 300, 500),
                n=(
                    *(
                        80,
                        100,
                        200,
                        400,
                        500,
                        800,
                        1000,
                        1600,
                        2000,
                        3000,
                        4000,
                        5000,
                        6000,
                        8000,
                    ),
                    *(10_000, 12_000, 16_000, 20_000),
                ),
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
        story, x = _story(p, n, k), t.Sym("x")
        assert story is not None
        unit, end = story.unit, _after(n, p, k) or 0
        first = amount(100 * n, unit)
        return Draft(
            prompt(f"{story.told} {story.question}", n=first, p=per_cent(abs(p)), k=t.Int(k)),
            Find(x, (t.equals(x, _grown(first, p, k)),)),
            amount(end, unit),
            "amount",
            (_multiplier_step(p), *_year_by_year(p, n, k, unit, story.period)),
            wrong_amounts(
                unit,
                end,
                zip((SIMPLE, ONCE, ONE_SHORT, CHANGE_ONLY), _plain_wrong(p, n, k), strict=True),
            ),
            ("story", p, n, k),
            constants=(100,),
        )

    def _interest(self, p: int, n: int, k: int) -> Draft:
        x, first, end = t.Sym("x"), amount(100 * n, "£"), _after(n, p, k) or 0
        return Draft(
            prompt(
                f"{_saver(n, p, k)} puts {{n}} in an account that pays {{p}} compound interest a "
                "year. How much is in the account after {k} years?",
                n=first,
                p=per_cent(p),
                k=t.Int(k),
            ),
            Find(x, (t.equals(x, _grown(first, p, k)),)),
            amount(end, "£"),
            "money",
            (_multiplier_step(p), *_year_by_year(p, n, k, "£", "year")),
            wrong_amounts(
                "£",
                end,
                zip((SIMPLE, ONCE, ONE_SHORT, CHANGE_ONLY), _plain_wrong(p, n, k), strict=True),
            ),
            ("interest", p, n, k),
            constants=(100,),
        )

    def _earned(self, p: int, n: int, k: int) -> Draft:
        x, first, end = t.Sym("x"), amount(100 * n, "£"), _after(n, p, k) or 0
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
                _multiplier_step(p),
                *_year_by_year(p, n, k, "£", "year"),
                Step(
                    "Subtract what there was at first.",
                    t.equals(t.sub(amount(end, "£"), first), amount(key, "£")),
                ),
            ),
            wrong_amounts(
                "£", key, zip((SIMPLE, TOTAL, ONCE), _earned_wrong(p, n, k), strict=True)
            ),
            ("earned", p, n, k),
            constants=(100,),
        )

    def _overall(self, p: int, q: int) -> Draft:
        x, overall = t.Sym("x"), p + q + p * q // 1000
        whole, first, second = per_cent(1000), per_cent(abs(p)), per_cent(abs(q))
        name = thing(60, abs(p) // 50 + abs(q) // 50)
        word = "increase" if overall > 0 else "decrease"
        product = t.times(t.Bracket(_one_change(p)), t.Bracket(_one_change(q)))
        change = t.sub(product, whole) if overall > 0 else t.sub(whole, product)
        end = multiplier(1000 + overall)
        return Draft(
            prompt(
                f"The price of {name} goes {_way(p)} by {{p}}, and then the new price goes "
                f"{_way(q)} by {{q}}. What is the overall percentage {word}?",
                p=first,
                q=second,
            ),
            Find(x, (t.equals(x, change),)),
            per_cent(abs(overall)),
            "percentage",
            (
                _multiplier_step(p, "first "),
                _multiplier_step(q, "second "),
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
            wrong_percentages((ADDS_UP, LEFT, ONCE), _overall_wrong(overall, p, q), abs(overall)),
            ("overall", p, q),
            constants=(100,),
        )

    def _first(self, p: int, n: int, k: int) -> Draft:
        story, x = _story(p, n, k), t.Sym("x")
        assert story is not None
        unit, end = story.unit, _after(n, p, k) or 0
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
            (_multiplier_step(p), *steps),
            wrong_amounts(
                unit, 100 * n, zip((BACK_SUM, BACK_ONCE), _first_wrong(end, p, k), strict=True)
            ),
            ("first", p, n, k),
            constants=(100,),
        )


def _way(p: int) -> str:
    return "up" if p > 0 else "down"


def _saver(n: int, p: int, k: int) -> str:
    return by_turns(_SAVERS, n // 100 + p // 10 + k)


def _one_change(p: int) -> t.Node:
    share = per_cent(abs(p))
    return t.add(per_cent(1000), share) if p > 0 else t.sub(per_cent(1000), share)


def _grown(first: t.Node, p: int, k: int) -> t.Node:
    return t.times(first, t.Power(t.Bracket(_one_change(p)), t.Int(k)))


def _multiplier_step(p: int, which: str = "") -> Step:
    return Step(
        f"Find the {which}multiplier.",
        t.equals(_one_change(p), per_cent(1000 + p), multiplier(1000 + p)),
    )


def _year_by_year(p: int, n: int, k: int, unit: str, period: str) -> list[Step]:
    factor, steps, value = multiplier(1000 + p), [], 100 * n
    for number in range(1, k + 1):
        after = value * (1000 + p) // 1000
        line = t.equals(t.times(amount(value, unit), factor), amount(after, unit))
        steps.append(Step(f"{period.capitalize()} {number}: multiply.", line))
        value = after
    return steps
