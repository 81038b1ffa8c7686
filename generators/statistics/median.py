"""The median of a list: an odd number of values, an even number, and a missing one.

England's programme of study for key stage 3 (2013) asks pupils to "describe, interpret and compare
observed distributions of a single variable through: ... appropriate measures of central tendency
(mean, mode, median)" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._scatter import scattered
from generators._turns import by_turns
from generators.statistics import _average_mistakes as m
from generators.statistics._lists import listed, row, twice_median
from itembank.items import kinds
from itembank.items.asks.summary import Summary
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Run, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _odd(count: int, seed: int) -> bool:
    """Keep lists whose median is neither the mean nor the middle one as it is printed."""
    numbers = scattered(seed, count, 3, 31 if seed % 3 else 40)
    median = sorted(numbers)[count // 2]
    apart = len({*numbers}) >= count - 1 and numbers.count(median) == 1
    wrong = {numbers[count // 2], count // 2 + 1}
    return apart and len(wrong) == 2 and median not in wrong and count * median != sum(numbers)


def _even(count: int, seed: int) -> bool:
    """Keep lists whose two middle numbers differ, and are not the middle ones as printed."""
    numbers = scattered(seed, count, 5, 20 if seed % 3 else 60)
    inner = sorted(numbers)
    low, high = inner[count // 2 - 1], inner[count // 2]
    printed = numbers[count // 2 - 1] + numbers[count // 2]
    return 1 <= high - low <= 6 and len({*numbers}) >= count - 1 and printed != low + high


def _challenge(kind: int, count: int, seed: int) -> bool:
    if kind == 0:
        numbers = _cold(count, seed)
        inner = sorted(numbers)
        wrong = sorted(numbers, key=abs)
        low, high = inner[count // 2 - 1], inner[count // 2]
        # Some of each sign, and the middle two in doubt.
        return (
            3 <= sum(n < 0 for n in numbers) < count
            and len({*numbers}) == count
            and 0 < high - low < 7
            and wrong[count // 2 - 1] + wrong[count // 2] != low + high
        )
    numbers = _ordered(count, seed)
    low, high = numbers[count // 2 - 1], numbers[count // 2]
    return high - low >= 2 and len({*numbers}) == count and (high - low) % 2 == 0


def _cold(count: int, seed: int) -> tuple[int, ...]:
    return scattered(seed, count, -9, 8)


def _ordered(count: int, seed: int) -> tuple[int, ...]:
    return tuple(sorted(scattered(seed, count, 4, 40)))


@register
class Median(Topic):
    """The middle of a list in order; of an even number; and a missing number by the median."""

    id = "statistics.median"
    title = "The median"
    statements = ("statistics.averages",)
    misconceptions = (
        *(m.NOT_IN_ORDER, m.MEAN_FOR_MEDIAN, m.LOWER_MIDDLE, m.UPPER_MIDDLE, m.IGNORES_SIGN),
        *(m.MEDIAN_AGAIN, m.DOUBLES_MEDIAN, m.PLACE_FOR_VALUE),
    )
    spaces = {
        Tier.SUPPORT: Space(_odd, count=(5, 7), seed=range(320)),
        Tier.CORE: Space(_even, count=(6, 8), seed=range(260)),
        Tier.CHALLENGE: Space(_challenge, kind=range(3), count=(6, 8), seed=range(260)),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_people_asked(spaces, "statistics.median")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            count, seed = values
            numbers = scattered(seed, count, 3, 31 if seed % 3 else 40)
            return _of_list(numbers, *listed(numbers, "median", seed))
        if tier is Tier.CORE:
            count, seed = values
            numbers = scattered(seed, count, 5, 20 if seed % 3 else 60)
            return _of_list(numbers, *listed(numbers, "median", seed))
        kind, count, seed = values
        if kind == 0:
            numbers = _cold(count, seed)
            shown = row(numbers)
            text = prompt(by_turns(_COLD, seed), row=shown)
            return _of_list(numbers, text, Summary(shown.parts, "median"))
        return _missing(_ordered(count, seed), kind == 1, seed)


_COLD = (
    "These are temperatures in degrees: {row}. Find the median.",
    "Find the median of {row}.",
    "Here are the temperatures in a cold store: {row}. Find the median.",
)


def _of_list(numbers: tuple[int, ...], text: tuple[Run, ...], ask: Summary) -> Draft:
    count, inner = len(numbers), sorted(numbers)
    half = count // 2
    median = Fraction(twice_median(numbers), 2)
    key = decimal_node(median)
    steps = [Step("Write the numbers in order.", row(inner))]
    mean = Fraction(sum(numbers), count)
    terminates = not _rest(mean.denominator)
    wrong: list[tuple[Any, Fraction | int]]
    if count % 2:
        steps.append(Step(f"The middle one is number {half + 1} of {count}.", key))
        wrong = [(m.NOT_IN_ORDER, numbers[half]), (m.PLACE_FOR_VALUE, half + 1)]
    else:
        low, high = inner[half - 1], inner[half]
        steps.append(Step("There are two in the middle.", row((low, high))))
        added = t.Bracket(t.add(t.num(low), _inside(high)))
        steps.append(
            Step("The median is half way between them.", t.equals(t.divide(added, t.Int(2)), key))
        )
        wrong = [
            (m.NOT_IN_ORDER, Fraction(numbers[half - 1] + numbers[half], 2)),
            (m.LOWER_MIDDLE, low),
            (m.UPPER_MIDDLE, high),
        ]
    if any(number < 0 for number in numbers):
        size = sorted(numbers, key=abs)
        wrong.append((m.IGNORES_SIGN, Fraction(size[half - 1] + size[half], 2)))
    elif terminates:
        wrong.append((m.MEAN_FOR_MEDIAN, mean))
    return Draft(
        text,
        ask,
        key,
        "integer" if median.denominator == 1 else "decimal",
        tuple(steps),
        slips(*wrong, write=decimal_node, key=key),
        ("list", *inner),
    )


def _inside(number: int) -> t.Node:
    """Return a number as it stands after a plus sign."""
    return t.Bracket(t.num(number)) if number < 0 else t.Int(number)


def _rest(bottom: int) -> bool:
    """Tell whether a denominator makes a decimal that recurs."""
    for factor in (2, 5):
        while bottom % factor == 0:
            bottom //= factor
    return bottom > 1


_MISSING = (
    "These numbers are in order: {row}. Their median is {m}. What is the value of {x}?",
    "Swimmers’ lengths, in order, are {row}. The median is {m}. Find {x}.",
    "A bus was late by these numbers of minutes, in order: {row}. The median is {m}. Find {x}.",
    "A gardener counts flowers on plants. In order, the numbers are {row}. The median is {m}. "
    "Find {x}.",
)


def _missing(numbers: tuple[int, ...], lower: bool, seed: int) -> Draft:
    count = len(numbers)
    half = count // 2
    low, high = numbers[half - 1], numbers[half]
    value, known = (low, high) if lower else (high, low)
    median = (low + high) // 2
    x = t.Sym(by_turns(("x", "n", "y", "k"), seed))
    place = half - 1 if lower else half
    parts = [x if at == place else t.Int(number) for at, number in enumerate(numbers)]
    middle = (x, t.Int(known)) if lower else (t.Int(known), x)
    m_, key = t.Int(median), t.equals(x, t.Int(value))
    return Draft(
        prompt(by_turns(_MISSING, seed), row=t.Listing(tuple(parts)), m=m_, x=x),
        Find(x, (t.equals(t.divide(t.Bracket(t.add(*middle)), t.Int(2)), m_),)),
        key,
        "solution",
        (
            Step(
                "The median is half way between the two in the middle.",
                t.equals(t.divide(t.Bracket(t.add(*middle)), t.Int(2)), m_),
            ),
            Step("Double the median.", t.equals(t.add(*middle), t.Int(2 * median))),
            Step(f"Subtract {known}.", key),
        ),
        slips(
            (m.MEDIAN_AGAIN, t.equals(x, m_)),
            (m.DOUBLES_MEDIAN, t.equals(x, t.Int(2 * median))),
            key=key,
        ),
        ("missing", lower, *numbers),
        constants=(2,),
    )
