"""Growing patterns of tiles: the next ones, one far on, which one has so many, and the rule.

England's programme of study for key stage 3 (2013) asks pupils to "generate terms of a sequence
from either a term-to-term or a position-to-term rule" and to "find the nth term" of arithmetic
sequences (from memory).
"""

from __future__ import annotations

from typing import Any

from itembank.figures.kinds.number.growing_pattern import GrowingPattern
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

TIMES_FIRST = Misconception(
    "sequences.pattern-times-first",
    "multiplies the tiles of pattern 1 by the number of the pattern",
    "Does pattern 2 have twice as many tiles as pattern 1? Count them.",
)
STEP_TOO_MANY = Misconception(
    "sequences.pattern-step-too-many",
    "adds the step once too often",
    "How many steps is it from pattern 1 to pattern 3?",
)
STEP_ALONE = Misconception(
    "sequences.pattern-step-alone",
    "multiplies the number of the pattern by the step, and leaves it at that",
    "What does your rule give for pattern 1? Is it the number of tiles that you see?",
)
STEP_TOO_FEW = Misconception(
    "sequences.pattern-step-too-few",
    "counts the steps from pattern 1 and gives their number",
    "How many steps is it from pattern 1 to pattern 2? Which pattern are you at then?",
)
SHARES_OUT = Misconception(
    "sequences.pattern-shares-out",
    "divides all the tiles by the step",
    "Which tiles were there before the first step?",
)
N_PLUS_STEP = Misconception(
    "sequences.pattern-n-plus-step",
    "adds the step to n instead of multiplying n by it",
    "What does your rule give for patterns 1, 2 and 3? By how much does it grow?",
)
FIRST_ADDED = Misconception(
    "sequences.pattern-first-added",
    "adds the tiles of pattern 1 to so many steps as the pattern's number",
    "What does your rule give for pattern 1? Is it the number of tiles that you see?",
)

_NAMES = ("squares", "dots")


def _tiles(first: int, more: int, number: int) -> int:
    return first + (number - 1) * more


def _pattern(first: int, more: int) -> GrowingPattern:
    return GrowingPattern(first, more, _NAMES[(first + more) % 2])  # type: ignore[arg-type]


def _next(first: int, more: int, number: int) -> bool:
    """Keep patterns where the wrong ways give other numbers than the right way."""
    return _apart(first, more, number)


def _apart(first: int, more: int, number: int) -> bool:
    right = _tiles(first, more, number)
    wrong = (first * number, right + more, more * number)
    return len({right, *wrong}) == 4


def _far(first: int, more: int, number: int) -> bool:
    return more > 1 and _apart(first, more, number)


def _which(what: int, first: int, more: int, number: int) -> bool:
    """Keep patterns to be found by their tiles, and rules, each of which stands once."""
    if what == 0:
        return number == _NUMBERS[0] and more > 1 and first != more
    tiles = _tiles(first, more, number)
    shared = tiles // more if tiles % more == 0 else -1
    return more > 1 and first != more and shared not in (number, number - 1)


_NUMBERS = (6, 8, 9, 11, 14, 16, 20, 21, 26, 32, 41, 51)


@register
class Patterns(Topic):
    """Patterns of tiles that grow by the same number each time."""

    id = "sequences.patterns"
    title = "Growing patterns"
    statements = ("algebra.sequences", "algebra.nth-term")
    misconceptions = (
        *(TIMES_FIRST, STEP_TOO_MANY, STEP_ALONE, STEP_TOO_FEW, SHARES_OUT),
        *(N_PLUS_STEP, FIRST_ADDED),
    )
    spaces = {
        Tier.SUPPORT: Space(_next, first=range(1, 7), more=range(1, 7), number=range(4, 11)),
        Tier.CORE: Space(
            _far,
            first=range(1, 7),
            more=range(1, 7),
            number=(12, 15, 18, 20, 24, 25, 30, 35, 40, 45, 50, 60, 75, 80, 100),
        ),
        Tier.CHALLENGE: Space(
            _which,
            what=range(2),
            first=range(1, 7),
            more=range(2, 7),
            number=_NUMBERS,
        ),
    }
    spaces = kinds.with_statements(spaces, 60)
    spaces = kinds.with_people_asked(spaces, "sequences.patterns")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is not Tier.CHALLENGE:
            return self._count(*values)
        what, *rest = values
        return self._found(*rest) if what else self._rule(*rest)

    def _count(self, first: int, more: int, number: int) -> Draft:
        figure = _pattern(first, more)
        tiles = _tiles(first, more, number)
        noun = "tiles" if (first + more) % 2 == 0 else "dots"
        text = prompt(f"How many {noun} are there in pattern {{k}}?", k=t.Int(number))
        steps = t.times(t.Int(number - 1), t.Int(more))
        return Draft(
            text,
            of_figure(figure, text),
            t.Int(tiles),
            "integer",
            (
                Step(
                    f"Pattern 1 has {first}, and each pattern has {more} more than the last. "
                    f"Pattern {number} is {number - 1} steps after pattern 1.",
                    t.equals(steps, t.Int((number - 1) * more)),
                ),
                Step(
                    "Add the steps to pattern 1.",
                    t.equals(t.add(t.Int(first), t.Int((number - 1) * more)), t.Int(tiles)),
                ),
            ),
            slips(
                (TIMES_FIRST, first * number),
                (STEP_TOO_MANY, tiles + more),
                (STEP_ALONE, more * number),
            ),
            (first, more, number),
            figure=figure,
        )

    def _found(self, first: int, more: int, number: int) -> Draft:
        figure = _pattern(first, more)
        tiles = _tiles(first, more, number)
        noun = "tiles" if (first + more) % 2 == 0 else "dots"
        text = prompt(f"Which pattern has {{all}} {noun}?", all=t.Int(tiles))
        wrong = [(STEP_TOO_FEW, t.Int(number - 1)), (STEP_TOO_MANY, t.Int(number + 1))]
        if tiles % more == 0:
            wrong.append((SHARES_OUT, t.Int(tiles // more)))
        return Draft(
            text,
            of_figure(figure, text),
            t.Int(number),
            "integer",
            (
                Step(
                    f"Pattern 1 has {first}. The others were added in steps.",
                    t.equals(t.add(t.Int(tiles), t.Neg(t.Int(first))), t.Int(tiles - first)),
                ),
                Step(
                    f"Each step adds {more}.",
                    t.equals(t.divide(t.Int(tiles - first), t.Int(more)), t.Int(number - 1)),
                ),
                Step(
                    f"{number - 1} steps after pattern 1 comes the pattern wanted.",
                    t.equals(t.add(t.Int(1), t.Int(number - 1)), t.Int(number)),
                ),
            ),
            slips(*wrong),
            ("which", first, more, number),
            figure=figure,
        )

    def _rule(self, first: int, more: int, _: int) -> Draft:
        figure = _pattern(first, more)
        noun = "tiles" if (first + more) % 2 == 0 else "dots"
        letter = t.Sym("n")
        text = prompt(f"Write an expression for the number of {noun} in pattern {{n}}.", n=letter)
        rest = first - more
        term = t.juxt(t.Int(more), letter)
        key = t.add(term, t.num(rest))
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "nth-term",
            (
                Step(f"Each pattern has {more} more than the last, so the rule begins {more}n."),
                Step(
                    f"{more} times 1 is {more}, and pattern 1 has {first}: "
                    + (f"add {rest}." if rest > 0 else f"take away {-rest}."),
                    key,
                ),
            ),
            slips(
                (N_PLUS_STEP, t.add(letter, t.Int(more))),
                (STEP_ALONE, term),
                (FIRST_ADDED, t.add(term, t.Int(first))),
            ),
            ("rule", first, more),
            figure=figure,
        )
