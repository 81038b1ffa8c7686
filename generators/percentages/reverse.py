"""Finding the whole from a percentage, and the original amount before a change.

Key stage 3, ratio (England, 2013): "solve problems involving percentage change, including:
percentage increase, decrease and original value problems" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._prices import capital, the, thing
from generators._turns import by_turns
from generators.percentages._amounts import amount, multiplier, per_cent, wrong_amounts
from generators.percentages._changes import afterwards
from generators.percentages._reverse_mistakes import (
    ADDS_BOTH,
    OF_NEW,
    OF_PART,
    ONE_BACK,
    PLAIN,
    REST,
    STOPS,
    WRONG_PART,
    WRONG_WAY,
)
from generators.percentages._reverse_numbers import (
    challenge_fits,
    change_wrong,
    core_fits,
    land_wrong,
    off_wrong,
    support_fits,
    twice_wrong,
)
from generators.percentages._reverse_stories import FALLS, LAND, RAISED, REDUCED, RISES
from generators.percentages._whole_from_part import (
    back_to_whole,
    in_a_story,
    of_a_number,
    on_a_line,
)
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_WHOLES = (
    20, 28, 36, 40, 44, 50, 60, 70, 80, 90, 120, 140, 150, 160, 180, 200, 240, 300,
)  # fmt: skip
_CHANGES = (
    -400, -350, -300, -250, -200, -150, -100, -50, 50, 100, 150, 200, 250, 350, 400,
)  # fmt: skip
_OLD_PRICES = (
    12, 15, 18, 20, 24, 25, 28, 30, 35, 36, 40, 45, 50, 56, 60, 65, 70, 75, 80, 90,
)  # fmt: skip
_BEFORE_OFF = (
    16, 18, 20, 24, 28, 30, 36, 40, 45, 48, 50, 60, 64, 70, 75, 80, 90, 120, 140, 150, 200,
)  # fmt: skip
_BEFORE_TWO_RISES = (
    20, 25, 30, 40, 50, 60, 70, 75, 80, 90, 100, 120, 125, 140, 150, 160, 180, 200, 240, 250,
    280, 300, 320, 350, 360, 400, 450, 480, 500,
)  # fmt: skip


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
                support_fits,
                kind=("number",),
                p=(50, 100, 200, 250, 300, 400, 600, 750),
                n=_WHOLES,
            )
            .then(support_fits, kind=("line",), p=(200, 300, 400, 600, 700), n=range(20, 310, 10))
            .then(
                support_fits,
                kind=("story",),
                p=(100, 200, 250, 300, 400, 600),
                n=(30, 40, 60, 70, 80, 90, 120, 140, 160, 180, 200),
            ),
            only=lambda kind, *_: kind != "line",
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                core_fits,
                kind=("count",),
                p=_CHANGES,
                n=(40, 60, 80, 120, 140, 160, 180, 200, 220, 240, 260, 280, 300, 320, 360, 400),
            )
            .then(
                core_fits,
                kind=("price",),
                p=(-400, -350, -300, -250, -200, -150, -100, -50, 50, 100, 150, 200, 250),
                n=_OLD_PRICES,
            )
            .then(
                core_fits,
                kind=("off",),
                p=(50, 100, 150, 200, 250, 300, 350, 400),
                n=_BEFORE_OFF,
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                challenge_fits,
                kind=("twice",),
                p=(50, 100, 150, 200, 250),
                n=_BEFORE_TWO_RISES,
                q=(50, 100, 200, 250, 300),
            ).then(
                challenge_fits,
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
            return of_a_number(p, n)
        if kind == "line":
            return on_a_line(p, n)
        if kind == "story":
            return in_a_story(p, n)
        if kind in ("count", "price"):
            return self._before(kind, p, n)
        if kind == "twice":
            return self._twice(p, n, more[0])
        if kind == "land":
            return self._land(p, n, more[0])
        return self._off(p, n)

    def _before(self, kind: str, p: int, n: int) -> Draft:
        unit, x = ("£" if kind == "price" else ""), t.Sym("x")
        now, share = n * (1000 + p) // 10, per_cent(abs(p))
        turn = n // 5 + abs(p) // 50
        if kind == "count":
            text = by_turns(FALLS if p < 0 else RISES, turn)
        else:
            # Tax is added at one rate only, the standard one of the United Kingdom.
            text = by_turns(REDUCED if p < 0 else RAISED if p == 200 else RAISED[:1], turn)
            name = thing(n, turn)
            text = text.replace("{thing}", name).replace("{Thing}", capital(name))
        left = afterwards(p)
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
            wrong_amounts(unit, 100 * n, (OF_NEW, PLAIN, WRONG_WAY), change_wrong(p, n)),
            (kind, p, n),
            constants=(100,),
        )

    def _twice(self, p: int, n: int, q: int) -> Draft:
        x, end = t.Sym("x"), n * (1000 + p) * (1000 + q) // 10_000
        middle = n * (1000 + p) // 10
        name = thing(n, n // 5 + p // 50 + q // 50)
        shown = amount(end, "£")
        factors = [t.Bracket(afterwards(rise)) for rise in (p, q)]
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
                    t.equals(afterwards(q), multiplier(1000 + q)),
                ),
                Step(
                    "Divide by it to undo the last rise.",
                    t.equals(t.divide(shown, multiplier(1000 + q)), amount(middle, "£")),
                ),
                Step(
                    "Find the multiplier of the first rise.",
                    t.equals(afterwards(p), multiplier(1000 + p)),
                ),
                Step(
                    "Divide by it to undo the first rise.",
                    t.equals(
                        t.divide(amount(middle, "£"), multiplier(1000 + p)), amount(100 * n, "£")
                    ),
                ),
            ),
            wrong_amounts("£", 100 * n, (ADDS_BOTH, ONE_BACK), twice_wrong(p, n, q)),
            ("twice", p, n, q),
            constants=(100,),
        )

    def _land(self, p: int, n: int, q: int) -> Draft:
        x, left = t.Sym("x"), 1000 - p - q
        part = amount(left * n // 10, "m^2")
        rest = t.sub(per_cent(1000), per_cent(p), per_cent(q))
        return Draft(
            prompt(
                by_turns(LAND, p // 50 + q // 50 + n // 20), p=per_cent(p), q=per_cent(q), m=part
            ),
            Find(x, (t.equals(t.part_of(t.Bracket(rest), x), part),)),
            amount(100 * n, "m^2"),
            "quantity",
            (
                Step("Find the percentage of the given part.", t.equals(rest, per_cent(left))),
                *back_to_whole(left, left * n // 10, "m^2"),
            ),
            wrong_amounts("m^2", 100 * n, (WRONG_PART, OF_PART), land_wrong(p, n, q)),
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
            wrong_amounts("£", key, (STOPS, OF_PART), off_wrong(p, n)),
            ("off", p, n),
        )
