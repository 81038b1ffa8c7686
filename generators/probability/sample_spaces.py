"""Sample spaces: all outcomes of two spinners in a table, and how likely a result is.

England's programme of study for key stage 3 (2013) asks pupils to "generate theoretical sample
spaces for single and combined events with equally likely, mutually exclusive outcomes and use
these to calculate theoretical probabilities" (from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from typing import Any, Literal, NamedTuple

from generators.probability import _misconceptions as m
from generators.probability._outcomes_in_brief import BRIEF, ONE_OF_TWO
from generators.probability.single import SIMPLEST
from itembank.figures.kinds.chance.sample_space import SampleSpace
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_LISTS = (
    (1, 2, 3), (1, 2, 3, 4), (2, 3, 4), (1, 3, 5), (2, 4, 6), (2, 3, 5, 7), (1, 2, 4, 8),
    (3, 4, 5, 6), (1, 4, 5), (2, 5, 6, 9),
)  # fmt: skip

Rule = Literal["sum", "difference", "product"]
_NOUNS: dict[Rule, str] = {"sum": "total", "difference": "difference", "product": "product"}
_RULES: dict[Rule, Callable[[int, int], int]] = {
    "sum": lambda a, b: a + b,
    "difference": lambda a, b: abs(a - b),
    "product": lambda a, b: a * b,
}
_TESTS: dict[str, Callable[[int, int], bool]] = {
    "": lambda value, bound: value == bound,
    "more than ": lambda value, bound: value > bound,
    "less than ": lambda value, bound: value < bound,
    "at least ": lambda value, bound: value >= bound,
    "at most ": lambda value, bound: value <= bound,
    "a multiple of ": lambda value, bound: value % bound == 0,
    "even": lambda value, bound: value % 2 == 0,
    "odd": lambda value, bound: value % 2 == 1,
}
_OFF_BY_ONE = {
    "more than ": "at least ",
    "at least ": "more than ",
    "less than ": "at most ",
    "at most ": "less than ",
}
_PARITY = ("even", "odd")


class _Count(NamedTuple):
    """What a table holds: its cells, those that fit, and those of likely mistakes."""

    cells: tuple[int, ...]
    fits: int
    off: int
    kinds: int
    kinds_fit: int


@lru_cache(maxsize=4096)
def _count(first: int, second: int, rule: Rule, test: str, bound: int) -> _Count:
    made = _RULES[rule]
    cells = tuple(made(a, b) for b in _LISTS[second] for a in _LISTS[first])
    kinds = {*cells}
    fits = _TESTS[test]
    near = _TESTS[_OFF_BY_ONE.get(test, test)]
    return _Count(
        cells,
        sum(fits(value, bound) for value in cells),
        sum(near(value, bound) for value in cells),
        len(kinds),
        sum(fits(value, bound) for value in kinds),
    )


def _support(first: int, second: int, test: str, bound: int) -> bool:
    """Keep totals that stand in several cells."""
    if (test in _PARITY) != (bound == 0):
        return False
    found = _count(first, second, "sum", test, bound)
    others = len(found.cells) - found.fits
    return found.fits > 1 and others > 1 and len({found.fits, others, found.kinds_fit}) == 3


def _core(first: int, second: int, test: str, bound: int) -> bool:
    return (test in _PARITY) == (bound == 0) and _fine(first, second, "sum", test, bound)


def _challenge(first: int, second: int, rule: Rule, test: str, bound: int) -> bool:
    if first == second:
        return False
    return (test in _PARITY) == (bound == 0) and _fine(first, second, rule, test, bound)


def _fine(first: int, second: int, rule: Rule, test: str, bound: int) -> bool:
    found = _count(first, second, rule, test, bound)
    total = len(found.cells)
    return (
        0 < found.fits < total and 2 * found.fits != total and len(_wrong(found, first, second)) > 1
    )


def _wrong(found: _Count, first: int, second: int) -> list[tuple[Any, Fraction]]:
    total = len(found.cells)
    right = Fraction(found.fits, total)
    sides = len(_LISTS[first]) + len(_LISTS[second])
    made = [
        (m.TOTALS_ALIKE, Fraction(found.kinds_fit, found.kinds)),
        (m.NOT_ASKED, 1 - right),
        (m.COUNT_OF_CELLS, Fraction(found.fits, total - found.fits)),
    ]
    if found.fits < sides:
        made.append((m.ADDS_OUTCOMES, Fraction(found.fits, sides)))
    if found.off != found.fits:
        made.append((m.BOUND_TOO, Fraction(found.off, total)))
    return [(mistake, value) for mistake, value in made if value != right]


@register
class SampleSpaces(Topic):
    """Outcomes counted in a table; how likely a total is; products and differences."""

    id = "probability.sample-spaces"
    title = "Sample spaces"
    statements = ("probability.sample-spaces",)
    prerequisites = ("probability.single",)
    misconceptions = (
        ONE_OF_TWO,
        *(m.ADDS_OUTCOMES, m.TOTALS_ALIKE, m.BOUND_TOO, m.NOT_ASKED, m.COUNT_OF_CELLS),
        m.COUNTS_ONCE,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            first=range(len(_LISTS)),
            second=range(len(_LISTS)),
            test=("", "even", "odd"),
            bound=(0, *range(3, 14)),
        ),
        Tier.CORE: Space(
            _core,
            first=range(5),
            second=range(len(_LISTS)),
            test=("", "more than ", "less than ", "even", "odd"),
            bound=(0, *range(4, 11)),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            first=range(1, len(_LISTS)),
            second=range(5),
            rule=("product", "difference"),
            test=("at least ", "at most ", "a multiple of "),
            bound=(2, 3, 4, 5, 6, 8, 10, 12),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = with_brief(spaces, BRIEF)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            first, second, rule, test, bound = values
            return _likely(first, second, rule, test, bound)
        first, second, test, bound = values
        if tier is Tier.CORE:
            return _likely(first, second, "sum", test, bound)
        return _how_many(first, second, test, bound)


def _figure(first: int, second: int, rule: Rule) -> SampleSpace:
    across, down = (tuple(map(t.Int, _LISTS[place])) for place in (first, second))
    return SampleSpace(across, down, rule)


def _lead(rule: Rule) -> str:
    return f"The table shows the {_NOUNS[rule]}s for a red spinner and a blue spinner."


def _how_many(first: int, second: int, test: str, bound: int) -> Draft:
    found = _count(first, second, "sum", test, bound)
    figure = _figure(first, second, "sum")
    if test in _PARITY:
        text = prompt(f"{_lead('sum')} How many of the outcomes give an {test} total?")
        said = f"Count the cells with an {test} total."
    else:
        text = prompt(
            f"{_lead('sum')} How many of the outcomes give a total of {{n}}?", n=t.Int(bound)
        )
        said = f"Count the cells that show {bound}."
    key = t.Int(found.fits)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (Step(said, key),),
        slips(
            (m.COUNTS_ONCE, found.kinds_fit),
            (m.NOT_ASKED, len(found.cells) - found.fits),
            key=key,
        ),
        ("count", first, second, test, bound),
        figure=figure,
    )


def _likely(first: int, second: int, rule: Rule, test: str, bound: int) -> Draft:
    found = _count(first, second, rule, test, bound)
    figure = _figure(first, second, rule)
    noun, total = _NOUNS[rule], len(found.cells)
    what = test if test in _PARITY else f"{test}{{n}}"
    text = prompt(
        f"{_lead(rule)} What is the probability that the {noun} is {what}?" + SIMPLEST,
        n=t.Int(bound),
    )
    key = number_node(Fraction(found.fits, total))
    written = t.frac(found.fits, total)
    across, down = len(_LISTS[first]), len(_LISTS[second])
    shown = test if test in _PARITY else f"{test}{bound}"
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "lowest-terms",
        (
            Step(
                "Find how many cells there are.",
                t.equals(t.times(t.Int(down), t.Int(across)), t.Int(total)),
            ),
            Step(
                f"The {noun} is {shown} in {found.fits} of them.",
                written if written == key else t.equals(written, key),
            ),
        ),
        slips(*_wrong(found, first, second), write=number_node, key=key),
        (rule, first, second, test, bound),
        figure=figure,
    )
