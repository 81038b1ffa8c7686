"""The mean of a list, a missing value, and how one more value changes it.

England's programme of study for key stage 3 (2013) asks pupils to "describe, interpret and compare
observed distributions of a single variable through: ... appropriate measures of central tendency
(mean, mode, median)" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.statistics import _average_mistakes as m
from generators.statistics._lists import and_list, listed, total, twice_median
from generators.statistics._means_changed import one_joins, two_groups, which_joined
from itembank.items import kinds
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

# How far each number lies from the mean: such a row adds up to 0.
_EVEN = (
    (-3, 2, -1, 2),
    (4, -2, 1, -3),
    (-5, 1, 6, -2),
    (3, -4, 3, -2),
    (2, 5, -3, -4),
    (-1, -4, 7, -2),
    (-4, 3, 2, -3, 2),
    (1, -5, 4, 3, -3),
    (5, -2, -4, 3, -2),
    (-1, 6, -3, -4, 2),
    (2, 2, -5, -3, 4),
    (-6, 1, 3, 4, -2),
    (3, 3, -1, -6, 1),
    (-2, 7, -4, 1, -2),
)
# Rows that add up to a half, or a quarter and three quarters, of how many there are.
_UNEVEN = (
    (-3, 2, 4, -1),
    (5, -2, 1, -2),
    (-4, 3, 6, -3),
    (-1, 4, -3, 2),
    (4, -5, 1, 3),
    (2, -3, 5, -1),
    (1, 6, -2, -4),
    (-5, 3, 2, 3),
    (-4, 3, 5, 1, -2),
    (2, -3, 4, -1, 2),
)
_WORDS = {3: "Three", 4: "Four", 5: "Five"}
_LAST = {4: "fourth", 5: "fifth", 6: "sixth"}


def _numbers(base: int, pattern: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(base + step for step in pattern)


def _plain(pattern: int, base: int) -> bool:
    """Keep lists whose mean is neither the median nor one of the numbers."""
    numbers = _numbers(base, _EVEN[pattern])
    return min(numbers) > 0 and twice_median(numbers) != 2 * base and base not in numbers


class _Core:
    """The kinds of core question."""

    ZERO, UNEVEN, MISSING = range(3)


def _core(kind: int, pattern: int, base: int) -> bool:
    if kind == _Core.ZERO:  # four numbers with a mean that 4/5 leaves whole, and a 0
        numbers = _numbers(base, _EVEN[pattern])
        return pattern < 6 and base % 5 == 0 and min(numbers) > 0
    if kind == _Core.UNEVEN:
        if pattern >= len(_UNEVEN):
            return False
        numbers = _numbers(base, _UNEVEN[pattern])
        mean = Fraction(sum(numbers), len(numbers))
        return min(numbers) > 0 and twice_median(numbers) not in (2 * mean, 2 * (mean // 1))
    numbers = _numbers(base, _EVEN[pattern])
    return min(numbers) > 0 and numbers[-1] != base


class _Challenge:
    """The kinds of challenge question."""

    JOINS, WHICH, TOGETHER = range(3)


def _challenge(kind: int, count: int, mean: int, other: int, rise: int) -> bool:
    if kind == _Challenge.TOGETHER:  # count and rise: how many of each; mean and other: the means
        all_of_them = count + rise
        whole = (count * mean + rise * other) % all_of_them == 0
        apart = other > 0 and abs(mean - other) > 2 and count < rise
        return whole and apart and (mean + other) % 2 == 0
    if other != 0:
        return False
    # One more value, with which the mean rises by a whole number.
    return 1 <= rise <= 4 and count >= 3


@register
class Mean(Topic):
    """The mean of a list; then a missing number; then what one more value does."""

    id = "statistics.mean"
    title = "The mean"
    statements = ("statistics.averages",)
    misconceptions = (
        *(m.TOTAL_ONLY, m.MEDIAN_FOR_MEAN, m.HALVES_TOTAL, m.LEAVES_OUT_ZERO, m.ROUNDS_MEAN),
        *(m.MEAN_AGAIN, m.STOPS_AT_TOTAL, m.MEAN_OF_MEANS, m.OLD_COUNT, m.RISE_ONLY),
    )
    spaces = {
        Tier.SUPPORT: Space(_plain, pattern=range(len(_EVEN)), base=range(6, 32)),
        Tier.CORE: Space(_core, kind=range(3), pattern=range(len(_EVEN)), base=range(7, 41)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            count=range(3, 11),
            mean=range(6, 26),
            other=(0, *range(8, 26)),
            rise=range(1, 11),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "statistics.mean",
        kinds.working_goes_wrong(
            {m.TOTAL_ONLY: (e.cut_short,), m.HALVES_TOTAL: (e.divided_by_two,)}
        ),
    )
    spaces = kinds.with_people_asked(spaces, "statistics.mean")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            pattern, base = values
            return _of_list(_numbers(base, _EVEN[pattern]), pattern + base, values)
        kind, *rest = values
        if tier is Tier.CHALLENGE:
            build = (one_joins, which_joined, two_groups)[kind]
            return build(*rest)
        pattern, base = rest
        if kind == _Core.ZERO:
            numbers = list(_numbers(base, _EVEN[pattern]))
            numbers.insert(1 + base % 3, 0)
            return _of_list(tuple(numbers), pattern + base // 5, values)
        if kind == _Core.UNEVEN:
            return _of_list(_numbers(base, _UNEVEN[pattern]), pattern + base, values)
        return _missing(_numbers(base, _EVEN[pattern]), base)


def _of_list(numbers: tuple[int, ...], turn: int, twin: tuple[int, ...]) -> Draft:
    text, ask = listed(numbers, "mean", turn)
    whole, count = sum(numbers), len(numbers)
    mean = Fraction(whole, count)
    key = decimal_node(mean)
    steps = (
        Step("Add the numbers.", t.equals(total(numbers), t.Int(whole))),
        Step(
            f"There are {count} numbers: divide by {count}.",
            t.equals(t.divide(t.Int(whole), t.Int(count)), key),
        ),
    )
    wrong: list[tuple[Any, Fraction | int]] = [
        (m.TOTAL_ONLY, whole),
        (m.MEDIAN_FOR_MEAN, Fraction(twice_median(numbers), 2)),
        (m.HALVES_TOTAL, Fraction(whole, 2)),
    ]
    if 0 in numbers:
        wrong.append((m.LEAVES_OUT_ZERO, Fraction(whole, count - 1)))
    elif mean.denominator > 1:
        wrong.append((m.ROUNDS_MEAN, mean // 1))
    return Draft(
        text,
        ask,
        key,
        "integer" if mean.denominator == 1 else "decimal",
        steps,
        slips(*wrong, write=decimal_node, key=key),
        ("list", *sorted(numbers)),
    )


# Each names all of them, those that are known, and the one that is asked for.
_MISSING = (
    (
        "The mean of {n} numbers is {m}. {Four} of them are {row}. What is the {fifth} number?",
        0,
        10_000,
    ),
    (
        "A bus makes {n} trips. It is late by a mean of {m} minutes. On {four} trips it is late by "
        "{row} minutes. By how many minutes is it late on the {fifth} trip?",
        0,
        25,
    ),
    (
        "The mean age of {n} swimmers is {m}. {Four} of them are {row} years old. "
        "How old is the {fifth} swimmer?",
        8,
        60,
    ),
    (
        "A gardener fills {n} baskets with a mean of {m} apples. {Four} of the baskets hold {row} "
        "apples. How many apples are in the {fifth} basket?",
        10,
        60,
    ),
)


def _missing(numbers: tuple[int, ...], mean: int) -> Draft:
    *known, value = numbers
    count = len(numbers)
    fitting = [w for w, low, high in _MISSING if low <= min(numbers) and max(numbers) <= high]
    words = by_turns(fitting, sum(n * n for n in numbers) + mean)
    four = _WORDS[count - 1]
    words = words.replace("{Four}", four).replace("{four}", four.lower())
    words = words.replace("{fifth}", _LAST[count])
    words = words.replace("{row}", and_list("r", count - 1))
    n, m_, x = t.Int(count), t.Int(mean), t.Sym("x")
    shown = {f"r{place}": t.Int(number) for place, number in enumerate(known)}
    left = t.Bracket(t.add(*shown.values(), x))
    key = t.Int(value)
    return Draft(
        prompt(words, n=n, m=m_, **shown),
        Find(x, (t.equals(t.divide(left, n), m_),)),
        key,
        "integer",
        (
            Step(
                "Find the total of all of them.",
                t.equals(t.times(n, m_), t.Int(count * mean)),
            ),
            Step("Add those that are known.", t.equals(total(known), t.Int(sum(known)))),
            Step("Subtract.", t.equals(t.sub(t.Int(count * mean), t.Int(sum(known))), key)),
        ),
        slips((m.MEAN_AGAIN, mean), (m.STOPS_AT_TOTAL, count * mean), key=key),
        ("missing", mean, *sorted(numbers)),
    )
