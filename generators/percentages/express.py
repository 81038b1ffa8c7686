"""Writing one quantity as a percentage of another.

Key stage 3, number (England, 2013): "express one quantity as a percentage of another, compare two
quantities using percentages, and work with percentages greater than 100%" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.percentages._amounts import amount, per_cent
from generators.percentages._as_percentage import percentage_steps, wrong_percentages
from generators.percentages._express_mistakes import (
    ADDS_UP,
    CHANGE_ONLY,
    FEWEST_WRONG,
    LARGER_AS,
    MOST_RIGHT,
    PART_TO_PART,
    REST,
    TOP_AS,
    UNITS_LOST,
    UPSIDE_DOWN,
)
from generators.percentages._express_numbers import (
    BIG,
    challenge_fits,
    core_fits,
    groups_wrong,
    over_wrong,
    plain_wrong,
    support_fits,
    three_scores,
    units_wrong,
)
from generators.percentages._express_stories import GROUPS, STORIES, TEAMS
from itembank.figures.kinds.number.double_number_line import DoubleNumberLine, Pair
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Choose, Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_UNITS = ("", "£", "kg", "m", "", "g")
_TO_HUNDRED = (5, 10, 20, 25, 50, 200)
_WHOLES = (15, 30, 35, 40, 45, 60, 75, 80, 90, 120, 140, 150, 160, 180, 240, 250, 300, 320, 400)
_TWO_GROUPS = (
    24, 32, 36, 40, 48, 56, 60, 64, 72, 75, 80, 96, 120, 125, 144, 150, 160, 180, 200,
)  # fmt: skip


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
            Space(support_fits, kind=("out",), n=_TO_HUNDRED, a=range(1, 200)).then(
                support_fits, kind=("line",), n=range(20, 310, 10), a=range(2, 8)
            ),
            only=lambda kind, *_: kind != "line",
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(core_fits, kind=("story",), n=_WHOLES, a=range(5, 96)).then(
                core_fits,
                kind=("units",),
                n=tuple(10 * whole + unit for unit in range(5) for whole in (2, 3, 4, 5, 6, 8)),
                a=(2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 35, 40, 45),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                challenge_fits,
                kind=("groups",),
                n=_TWO_GROUPS,
                a=range(11, 180),
                b=(0,),
            )
            .then(
                challenge_fits,
                kind=("over",),
                n=(12, 15, 16, 20, 24, 25, 30, 32, 35, 36, 40, 45, 48, 60, 64, 75, 80, 120),
                a=(105, 110, 112, 115, 120, 125, 130, 135, 140, 150, 160, 175, 180, 225, 250),
                b=(0,),
            )
            .then(
                challenge_fits,
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
            (TOP_AS, REST, UPSIDE_DOWN, ADDS_UP), plain_wrong(a, n), 1000 * a // n
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
            (TOP_AS, REST, UPSIDE_DOWN, ADDS_UP), plain_wrong(part, n), 1000 * part // n
        )
        return Draft(
            prompt(by_turns(STORIES, n // 5 + part), n=t.Int(n), m=t.Int(part)),
            Find(x, (t.equals(x, t.frac(part, n)),)),
            per_cent(1000 * part // n),
            "percentage",
            percentage_steps(part, n),
            wrong,
            ("story", n, part),
        )

    def _units(self, n: int, a: int) -> Draft:
        size, big, small = BIG[n % 10]
        whole = n // 10
        part = size * whole * a // 100
        shown, small_whole = amount(100 * whole, big), amount(100 * size * whole, small)
        given = amount(100 * part, small)
        wrong = wrong_percentages((UNITS_LOST, TOP_AS, REST), units_wrong(part, n), 10 * a)
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
            (PART_TO_PART, REST, TOP_AS), groups_wrong(part, n), 1000 * part // n
        )
        return Draft(
            prompt(by_turns(GROUPS, n // 4 + part), m=first, r=second),
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
            (UPSIDE_DOWN, CHANGE_ONLY, LARGER_AS), over_wrong(part, n), 1000 * part // n
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
        scores = three_scores(n, a, b)
        turn = (n + a + b) % 3
        placed = scores[turn:] + scores[:turn]
        names = by_turns(TEAMS, n // 10 + a + b)
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
