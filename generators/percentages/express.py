"""Writing one quantity as a percentage of another.

Key stage 3, number (England, 2013): "express one quantity as a percentage of another, compare two
quantities using percentages, and work with percentages greater than 100%" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.percentages._amounts import amount, per_cent
from generators.percentages._as_percentage import (
    percentage_steps,
    tenths_of,
    wrong_percentages,
)
from itembank.figures.kinds.double_number_line import DoubleNumberLine, Pair
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Choose, Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

TOP_AS = Misconception(
    "percentages.top-as-percentage",
    "gives the part itself as the percentage",
    "Is the part more or less than a half of the whole? Is your percentage?",
)
LARGER_AS = Misconception(
    "percentages.larger-as-percentage",
    "gives the larger amount itself as the percentage",
    "How many times as large as the whole is this amount? Does your percentage fit?",
)
REST = Misconception(
    "percentages.gives-the-rest-percentage",
    "gives the percentage that is left over",
    "Which part does the question ask about? Is it more or less than a half?",
)
UPSIDE_DOWN = Misconception(
    "percentages.divides-the-other-way",
    "divides the whole by the part",
    "Which of the two amounts is the whole? Is the other one more or less than that?",
)
ADDS_UP = Misconception(
    "percentages.adds-to-a-hundred",
    "adds the same to both numbers until the whole is 100",
    "How do you make an equal fraction: by adding or by multiplying?",
)
UNITS_LOST = Misconception(
    "percentages.units-ignored",
    "divides the numbers without making the units the same",
    "Are both amounts in the same unit? Which is the larger amount?",
)
PART_TO_PART = Misconception(
    "percentages.part-to-part",
    "compares one part with the other part, and not with the whole",
    "How many are there altogether? What is your percentage a part of?",
)
CHANGE_ONLY = Misconception(
    "percentages.change-only",
    "gives the difference as a percentage, and leaves out the whole",
    "What is a number as a percentage of itself? Which of these two is larger?",
)
MOST_RIGHT = Misconception(
    "percentages.most-right",
    "chooses the most right answers, whatever they are out of",
    "Is 9 out of 100 better than 8 out of 10? What else matters?",
)
FEWEST_WRONG = Misconception(
    "percentages.fewest-wrong",
    "chooses the fewest wrong answers, whatever they are out of",
    "One wrong out of 2, or two wrong out of 10: which is better?",
)

_UNITS = ("", "£", "kg", "m", "", "g")
_TO_HUNDRED = (5, 10, 20, 25, 50, 200)
_WHOLES = (15, 30, 35, 40, 45, 60, 75, 80, 90, 120, 140, 150, 160, 180, 240, 250, 300, 320, 400)
_BIG = ((100, "m", "cm"), (100, "£", "p"), (1000, "kg", "g"), (60, "h", "min"), (1000, "l", "ml"))

_STORIES = (
    "Of the {n} drivers at a bus depot, {m} start work early. What percentage of the drivers "
    "start work early?",
    "A library has {n} desks. {m} of them are taken. What percentage of the desks are taken?",
    "A gardener plants {n} bulbs. {m} of them flower. What percentage of the bulbs flower?",
    "A bike workshop has {n} bikes. {m} of them need new tyres. What percentage of the bikes "
    "need new tyres?",
    "A school kitchen cooks {n} lunches. {m} of them are vegetarian. What percentage of the "
    "lunches are vegetarian?",
    "There are {n} lockers at a swimming pool. {m} of them are in use. What percentage of the "
    "lockers are in use?",
    "A market garden sows {n} seeds. {m} of them come up. What percentage of the seeds come up?",
)
_GROUPS = (
    "A swimming club has {m} adults and {r} children as members. What percentage of the members "
    "are adults?",
    "A bus depot has {m} electric buses and {r} diesel buses. What percentage of the buses are "
    "electric?",
    "A gardener plants {m} tulips and {r} daffodils. What percentage of the bulbs are tulips?",
    "A kitchen buys {m} apples and {r} pears. What percentage of the pieces of fruit are apples?",
    "A shelf holds {m} story books and {r} fact books. What percentage of the books are story "
    "books?",
)
_TEAMS = (
    ("Amira", "Ben", "Chloe"),
    ("Dan", "Esi", "Farah"),
    ("Gita", "Harry", "Idris"),
    ("Jin", "Kofi", "Lena"),
    ("Maya", "Noah", "Omar"),
)


_OUT_OF = ((10, 20, 50), (20, 25, 40), (10, 25, 40), (20, 40, 50), (25, 40, 60), (20, 30, 50))


def _plain_wrong(a: int, n: int) -> tuple[int | None, ...]:
    """Return what the mistakes give in tenths of a per cent: TOP_AS, REST, UPSIDE_DOWN, ADDS_UP."""
    added = 10 * (a + 100 - n) if n < 100 else None
    return 10 * a if a < 100 else None, tenths_of(n - a, n), tenths_of(n, a), added


def _apart(key: int | None, wrong: tuple[int | None, ...]) -> bool:
    return key is not None and len({w for w in wrong if w is not None and w != key}) > 1


def _support(kind: str, n: int, a: int) -> bool:
    """Keep parts of wholes that go into a hundred; on a line, parts by its steps."""
    if kind == "line":
        # Here a counts steps of ten, and n is the whole.
        return a in (2, 3, 4, 6, 7) and a * n not in (1000, 100 * a, 1000 - 100 * a)
    if not 0 < a < n or 2 * a == n or (n == 200 and a % 2):
        return False
    return _apart(tenths_of(a, n), _plain_wrong(a, n))


def _core(kind: str, n: int, a: int) -> bool:
    """Keep wholes that have to be cancelled first, and amounts in two units."""
    if kind == "story":
        # a counts hundredths.
        if n * a % 100:
            return False
        part = n * a // 100
        return part > 1 and 2 * part != n and _apart(10 * a, _plain_wrong(part, n))
    size, big, _ = _BIG[n % 10]
    whole = size * (n // 10)
    if whole * a % 100 or a == 50:
        return False
    part = whole * a // 100
    return not (big == "h" and part % 3) and part < size and _apart(10 * a, _units_wrong(part, n))


def _units_wrong(part: int, n: int) -> tuple[int | None, ...]:
    """Return what the mistakes give in tenths of a per cent: UNITS_LOST, TOP_AS, REST."""
    size, whole = _BIG[n % 10][0], n // 10
    top_as = 10 * part if part < 100 else None
    return tenths_of(part, whole), top_as, tenths_of(size * whole - part, size * whole)


def _challenge(kind: str, n: int, a: int, b: int) -> bool:
    """Keep two groups, more than the whole, and the best of three scores."""
    if kind == "groups":
        # n members, of whom a hundredths or halves of one are in the first group.
        if n * a % 200 or a == 100:
            return False
        part = n * a // 200
        return part > 1 and _apart(5 * a, _groups_wrong(part, n))
    if kind == "over":
        if n * a % 100:
            return False
        part = n * a // 100
        return _apart(10 * a, _over_wrong(part, n))
    # First, middle and last: a out of n, then more out of more.
    return _scores_fit(n, a, b)


def _groups_wrong(part: int, n: int) -> tuple[int | None, ...]:
    return tenths_of(part, n - part), tenths_of(n - part, n), 10 * part if part < 100 else None


def _over_wrong(part: int, n: int) -> tuple[int | None, ...]:
    return tenths_of(n, part), tenths_of(part - n, n), 10 * part


def _scores(n: int, a: int, b: int) -> tuple[tuple[int, int], ...]:
    """Return three scores: the fewest wrong answers, the best, the most right ones."""
    few, some, many = _OUT_OF[n % 10]
    return (few - b, few), (some * a // 100, some), (many * (a - n // 10) // 100, many)


def _scores_fit(n: int, a: int, b: int) -> bool:
    first, best, last = _scores(n, a, b)
    if best[1] * a % 100 or last[1] * (a - n // 10) % 100 or first[0] < 3:
        return False
    wrong = [out - right for right, out in (first, best, last)]
    return (
        first[0] * best[1] < best[0] * first[1]
        and first[0] < best[0] < last[0]
        and wrong[0] < wrong[1] < wrong[2]
        and first[0] * last[1] != last[0] * first[1]
    )


@register
class Express(Topic):
    """Out of a factor of 100; to be cancelled or in two units; two groups, and over 100%."""

    id = "percentages.express"
    title = "Writing one quantity as a percentage of another"
    statements = ("number.percentages",)
    misconceptions = (
        TOP_AS,
        LARGER_AS,
        REST,
        UPSIDE_DOWN,
        ADDS_UP,
        UNITS_LOST,
        PART_TO_PART,
        CHANGE_ONLY,
        MOST_RIGHT,
        FEWEST_WRONG,
    )
    prerequisites = ("fractions.decimals-percentages",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=("out",), n=_TO_HUNDRED, a=range(1, 200)).then(
                _support, kind=("line",), n=range(20, 310, 10), a=range(2, 8)
            ),
            only=lambda kind, *_: kind != "line",
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(_core, kind=("story",), n=_WHOLES, a=range(5, 96)).then(
                _core,
                kind=("units",),
                n=tuple(10 * whole + unit for unit in range(5) for whole in (2, 3, 4, 5, 6, 8)),
                a=(2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 35, 40, 45),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=("groups",),
                n=(
                    24,
                    32,
                    36,
                    40,
                    48,
                    56,
                    60,
                    64,
                    72,
                    75,
                    80,
                    96,
                    120,
                    125,
                    144,
                    150,
                    160,
                    180,
                    200,
                ),
                a=range(11, 180),
                b=(0,),
            )
            .then(
                _challenge,
                kind=("over",),
                n=(12, 15, 16, 20, 24, 25, 30, 32, 35, 36, 40, 45, 48, 60, 64, 75, 80, 120),
                a=(105, 110, 112, 115, 120, 125, 130, 135, 140, 150, 160, 175, 180, 225, 250),
                b=(0,),
            )
            .then(
                _challenge,
                kind=("scores",),
                n=tuple(10 * less + out for out in range(6) for less in range(2, 25)),
                a=range(60, 96),
                b=range(1, 6),
            ),
            only=lambda kind, *_: kind != "scores",
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, n, a, *more = values
        if kind == "out":
            return self._out(n, a)
        if kind == "line":
            return self._line(n, a)
        if kind == "story":
            return self._story(n, n * a // 100)
        if kind == "units":
            return self._units(n, a)
        if kind == "groups":
            return self._groups(n, n * a // 200)
        if kind == "over":
            return self._over(n, n * a // 100)
        return self._scores(n, a, more[0])

    def _out(self, n: int, a: int) -> Draft:
        unit = by_turns(_UNITS, n // 5 + a)
        part, whole = amount(100 * a, unit), amount(100 * n, unit)
        text = "Write {a} as a percentage of {n}." if a % 2 else "What percentage of {n} is {a}?"
        wrong = wrong_percentages(
            (TOP_AS, REST, UPSIDE_DOWN, ADDS_UP), _plain_wrong(a, n), 1000 * a // n
        )
        return Draft(
            prompt(text, a=part, n=whole),
            Find(t.divide(part, whole) if unit else t.frac(a, n)),
            per_cent(1000 * a // n),
            "percentage",
            percentage_steps(a, n),
            wrong,
            ("out", n, a),
        )

    def _line(self, n: int, a: int) -> Draft:
        # There is room for a unit only where the part stands apart from both ends.
        unit, part = by_turns(_UNITS if a in (3, 4, 6) else ("", "£"), n // 10 + a), n * a // 10
        figure = DoubleNumberLine(
            10,
            (
                Pair(a, t.Sym("x"), amount(100 * part, unit)),
                Pair(10, per_cent(1000), amount(100 * n, unit)),
            ),
        )
        text = prompt("Find the value of {x}. Give your answer as a percentage.", x=t.Sym("x"))
        return Draft(
            text,
            of_figure(figure, text),
            per_cent(100 * a),
            "percentage",
            (
                Step(
                    "Each step is one tenth of 100%.",
                    t.equals(t.divide(per_cent(1000), t.Int(10)), per_cent(100)),
                ),
                Step(
                    f"The part is {a} steps.",
                    t.equals(t.times(t.Int(a), per_cent(100)), per_cent(100 * a)),
                ),
            ),
            wrong_percentages((TOP_AS, REST), (10 * part, 1000 - 100 * a), 100 * a),
            ("line", n, a),
            figure=figure,
        )

    def _story(self, n: int, part: int) -> Draft:
        x = t.Sym("x")
        wrong = wrong_percentages(
            (TOP_AS, REST, UPSIDE_DOWN, ADDS_UP), _plain_wrong(part, n), 1000 * part // n
        )
        return Draft(
            prompt(by_turns(_STORIES, n // 5 + part), n=t.Int(n), m=t.Int(part)),
            Find(x, (t.equals(x, t.frac(part, n)),)),
            per_cent(1000 * part // n),
            "percentage",
            percentage_steps(part, n),
            wrong,
            ("story", n, part),
        )

    def _units(self, n: int, a: int) -> Draft:
        size, big, small = _BIG[n % 10]
        whole = n // 10
        part = size * whole * a // 100
        shown, small_whole = amount(100 * whole, big), amount(100 * size * whole, small)
        given = amount(100 * part, small)
        wrong = wrong_percentages((UNITS_LOST, TOP_AS, REST), _units_wrong(part, n), 10 * a)
        return Draft(
            prompt(
                "Write {a} as a percentage of {n}." if a % 2 else "What percentage of {n} is {a}?",
                a=given,
                n=shown,
            ),
            Find(t.divide(given, shown)),
            per_cent(10 * a),
            "percentage",
            (
                Step("Write both in the smaller unit.", t.equals(shown, small_whole)),
                *percentage_steps(part, size * whole),
            ),
            wrong,
            ("units", n, a),
        )

    def _groups(self, n: int, part: int) -> Draft:
        x, first, second = t.Sym("x"), t.Int(part), t.Int(n - part)
        wrong = wrong_percentages(
            (PART_TO_PART, REST, TOP_AS), _groups_wrong(part, n), 1000 * part // n
        )
        return Draft(
            prompt(by_turns(_GROUPS, n // 4 + part), m=first, r=second),
            Find(x, (t.equals(x, t.Frac(first, t.add(first, second))),)),
            per_cent(1000 * part // n),
            "percentage",
            (
                Step(
                    "Find how many there are altogether.", t.equals(t.add(first, second), t.Int(n))
                ),
                *percentage_steps(part, n),
            ),
            wrong,
            ("groups", n, part),
        )

    def _over(self, n: int, part: int) -> Draft:
        unit = by_turns(_UNITS, n + part)
        larger, whole = amount(100 * part, unit), amount(100 * n, unit)
        text = "Write {a} as a percentage of {n}." if n % 2 else "What percentage of {n} is {a}?"
        wrong = wrong_percentages(
            (UPSIDE_DOWN, CHANGE_ONLY, LARGER_AS), _over_wrong(part, n), 1000 * part // n
        )
        return Draft(
            prompt(text, a=larger, n=whole),
            Find(t.divide(larger, whole) if unit else t.frac(part, n)),
            per_cent(1000 * part // n),
            "percentage",
            percentage_steps(part, n),
            wrong,
            ("over", n, part),
        )

    def _scores(self, n: int, a: int, b: int) -> Draft:
        scores = _scores(n, a, b)
        turn = (n + a + b) % 3
        placed = scores[turn:] + scores[:turn]
        names = by_turns(_TEAMS, n // 10 + a + b)
        of = dict(zip(placed, names, strict=True))
        text = "Who has the highest percentage of right answers? " + " ".join(
            f"{name}: {{a{k}}} out of {{n{k}}}." for k, name in enumerate(names)
        )
        runs: dict[str, t.Node] = {}
        for k, (right, out) in enumerate(placed):
            runs[f"a{k}"], runs[f"n{k}"] = t.Int(right), t.Int(out)
        key = t.Label(of[scores[1]])
        return Draft(
            prompt(text, **runs),
            Choose(tuple((of[score], t.frac(*score)) for score in placed), "greatest"),
            key,
            "name",
            (
                *(
                    Step(
                        f"{of[right, out]}: write the score as a percentage.",
                        t.equals(t.frac(right, out), per_cent(1000 * right // out)),
                    )
                    for right, out in placed
                ),
                Step("Compare the percentages.", key),
            ),
            slips((FEWEST_WRONG, t.Label(of[scores[0]])), (MOST_RIGHT, t.Label(of[scores[2]]))),
            ("scores", *scores),
        )
