"""The mode and the range of a list, and a missing number by the range.

England's programme of study for key stage 3 (2013) asks pupils to "describe, interpret and compare
observed distributions of a single variable through: ... appropriate measures of central tendency
(mean, mode, median) and spread (range, consideration of outliers)" (from memory).
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

Number = int | Fraction


def _modes(numbers: tuple[int, ...]) -> tuple[int, list[int]]:
    """Return how often the most frequent number comes, and which have as much."""
    most = max(map(numbers.count, numbers))
    return most, sorted({n for n in numbers if numbers.count(n) == most})


def _short(mode: bool, seed: int) -> bool:
    numbers = _few(mode, seed)
    if mode:
        most, modes = _modes(numbers)
        wrong = {most, max(numbers), twice_median(numbers) // 2}
        # 2 of one number, and the rest different.
        return most == 2 and len(modes) == 1 and modes[0] not in wrong and len(wrong) == 3
    return _clear(numbers)


def _few(mode: bool, seed: int) -> tuple[int, ...]:
    return scattered(seed, 7, 3, 18) if mode else scattered(seed, 6, 4, 50)


def _clear(numbers: tuple[int, ...]) -> bool:
    """Keep lists whose range is neither their largest number nor the ends' difference."""
    spread = max(numbers) - min(numbers)
    ends = abs(numbers[0] - numbers[-1])
    return len({*numbers}) == len(numbers) and len({spread, ends, max(numbers)}) == 3 and ends > 0


def _core(kind: int, seed: int) -> bool:
    if kind == 0:  # many numbers, two of which come often
        numbers = scattered(seed, 10, 5, 13)
        most, modes = _modes(numbers)
        second = sorted((numbers.count(n) for n in {*numbers}), reverse=True)[1]
        wrong = {most, max(numbers), twice_median(numbers) // 2}
        close = most == 3 and second == 2 and len(modes) == 1
        return close and modes[0] not in wrong and len(wrong) == 3
    if kind == 1:  # temperatures on both sides of 0
        numbers = scattered(seed, 6, -12, 14)
        low, high = min(numbers), max(numbers)
        wrong = {high + low, high, abs(numbers[0] - numbers[-1])}
        return low < 0 < high + low and len(wrong) == 3 and len({*numbers}) == 6
    return _ragged(seed) is not None


def _ragged(seed: int) -> tuple[Fraction, ...] | None:
    """Return lengths with one or two decimal places, the most digits in the middle; or None."""
    tenths = scattered(seed, 3, 4, 19)
    hundredths = scattered(seed + 5000, 2, 32, 189)
    numbers = (
        *(Fraction(n, 10) for n in tenths[:2]),
        *(Fraction(n, 100) for n in hundredths),
        Fraction(tenths[2], 10),
    )
    if len({*numbers}) < 5 or any(n % 10 == 0 for n in (*tenths, *hundredths)):
        return None
    if len({*map(int, numbers)}) > 1:
        return None
    by_digits = sorted(numbers, key=_digits)
    wrong = by_digits[-1] - by_digits[0]
    spread = max(numbers) - min(numbers)
    fine = wrong > 0 and len({spread, wrong, max(numbers)}) == 3
    return numbers if fine else None


def _digits(number: Fraction) -> int:
    """Return a number's places after the point as if they were a whole number."""
    tenths = number % 1 * 10
    return int(tenths) if tenths.denominator == 1 else int(tenths * 10)


def _missing(largest: bool, sort: int, seed: int) -> bool:
    numbers = _row_for(sort, seed)
    spread = max(numbers) - min(numbers)
    value = max(numbers) if largest else min(numbers)
    known = [n for n in numbers if n != value]
    if len(known) < 4 or len({*known}) < 4:
        return False
    wrong_end = _wrong_end(known, spread, largest)
    negatives = sort != 1 or min(known) < 0 < max(known)
    return negatives and len({spread, value, wrong_end}) == 3 and value != 0


def _row_for(sort: int, seed: int) -> tuple[Number, ...]:
    if sort == 0:
        return scattered(seed, 5, 6, 40)
    if sort == 1:
        return scattered(seed, 5, -9, 9)
    return tuple(Fraction(n, 10) for n in scattered(seed, 5, 11, 49))


def _wrong_end(known: list[Number], spread: Number, largest: bool) -> Number:
    return max(known) + spread if largest else min(known) - spread


@register
class ModeAndRange(Topic):
    """What comes most often and how far the numbers spread; then a number by the range."""

    id = "statistics.mode-and-range"
    title = "The mode and the range"
    statements = ("statistics.averages",)
    misconceptions = (
        *(m.FREQUENCY_FOR_MODE, m.LARGEST_FOR_MODE, m.MEDIAN_FOR_MODE, m.ENDS_OF_LIST),
        *(m.LARGEST_FOR_RANGE, m.SIGN_LOST, m.LONGER_IS_LARGER, m.RANGE_AGAIN, m.WRONG_END),
    )
    spaces = {
        Tier.SUPPORT: Space(_short, mode=(True, False), seed=range(420)),
        Tier.CORE: Space(_core, kind=range(3), seed=range(500)),
        Tier.CHALLENGE: Space(
            _missing, largest=(True, False), sort=range(3), seed=range(1000, 1090)
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_people_asked(spaces, "statistics.mode-and-range")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return _by_range(*values)
        kind, seed = values
        if tier is Tier.SUPPORT:
            numbers = _few(kind, seed)
            return (
                _mode(numbers, seed) if kind else _range(numbers, *listed(numbers, "range", seed))
            )
        if kind == 0:
            return _mode(scattered(seed, 10, 5, 13), seed)
        rows: tuple[Number, ...] | None = (
            scattered(seed, 6, -12, 14) if kind == 1 else _ragged(seed)
        )
        assert rows is not None
        shown = row(rows)
        words = by_turns(_COLD if kind == 1 else _LENGTHS, seed)
        return _range(rows, prompt(words, row=shown), Summary(shown.parts, "range"))


_COLD = (
    "These are temperatures in degrees: {row}. Find the range.",
    "Here are the temperatures in a greenhouse at night: {row}. Find the range.",
    "Find the range of {row}.",
)
_LENGTHS = (
    "These are the heights of plants in metres: {row}. Find the range.",
    "Find the range of {row}.",
    "The masses of marrows in kilograms are {row}. Find the range.",
)


def _mode(numbers: tuple[int, ...], seed: int) -> Draft:
    text, ask = listed(numbers, "mode", seed)
    most, (mode,) = _modes(numbers)
    key = t.Int(mode)
    twice = "twice" if most == 2 else f"{most} times"
    return Draft(
        text,
        ask,
        key,
        "integer",
        (
            Step("Write the numbers in order.", row(sorted(numbers))),
            Step(f"One number comes {twice}, and no other comes as often.", key),
        ),
        slips(
            (m.FREQUENCY_FOR_MODE, most),
            (m.LARGEST_FOR_MODE, max(numbers)),
            (m.MEDIAN_FOR_MODE, Fraction(twice_median(numbers), 2)),
            write=decimal_node,
            key=key,
        ),
        ("mode", *sorted(numbers)),
    )


def _range(numbers: tuple[Number, ...], text: tuple[Run, ...], ask: Summary) -> Draft:
    low, high = min(numbers), max(numbers)
    key = decimal_node(high - low)
    small = decimal_node(low)
    taken = t.Bracket(small) if low < 0 else small
    wrong: list[tuple[Any, Number]] = [(m.LARGEST_FOR_RANGE, high)]
    if low < 0:
        wrong.append((m.SIGN_LOST, high + low))
    if all(Fraction(n).denominator == 1 for n in numbers):
        wrong.append((m.ENDS_OF_LIST, abs(Fraction(numbers[0]) - numbers[-1])))
    else:
        by_digits = sorted(numbers, key=lambda n: _digits(Fraction(n)))
        wrong.append((m.LONGER_IS_LARGER, Fraction(by_digits[-1]) - Fraction(by_digits[0])))
    return Draft(
        text,
        ask,
        key,
        "integer" if Fraction(high - low).denominator == 1 else "decimal",
        (
            Step("Find the largest and the smallest.", row((high, low))),
            Step(
                "Subtract the smallest from the largest.",
                t.equals(t.sub(decimal_node(high), taken), key),
            ),
        ),
        slips(*wrong, write=decimal_node, key=key),
        ("range", *sorted(numbers)),
    )


_BY_RANGE = (
    "The range of {row} and {x} is {r}. {X} is the {largest} of the numbers. Find {x}.",
    "Here are some numbers: {row} and {x}. Their range is {r}, and {x} is the {largest}. Find {x}.",
    "{X} is the {largest} of these numbers: {row} and {x}. The range is {r}. What is {x}?",
)


def _by_range(largest: bool, sort: int, seed: int) -> Draft:
    numbers = _row_for(sort, seed)
    spread = max(numbers) - min(numbers)
    value = max(numbers) if largest else min(numbers)
    known = [n for n in numbers if n != value]
    x = t.Sym(by_turns(("x", "n", "y", "k"), seed))
    other = min(known) if largest else max(known)
    end, r = decimal_node(other), decimal_node(spread)
    words = by_turns(_BY_RANGE, seed + largest).replace("{X}", "{x}")
    words = words.replace("{largest}", "largest" if largest else "smallest")
    if largest:
        after = t.sub(x, t.Bracket(end) if other < 0 else end)
        worked = t.add(end, r)
    else:
        after = t.sub(end, x)
        worked = t.sub(end, r)
    model = t.equals(after, r)
    key = t.equals(x, decimal_node(value))
    return Draft(
        prompt(words, row=row(known), x=x, r=r),
        Find(x, (model,)),
        key,
        "solution",
        (
            Step(
                f"The {'smallest' if largest else 'largest'} of them is known. "
                "Largest less smallest is the range.",
                model,
            ),
            Step(
                f"{'Add' if largest else 'Subtract'} the range.",
                t.equals(x, worked),
            ),
            Step("Work it out.", key),
        ),
        slips(
            *(
                (mistake, t.equals(x, decimal_node(wrong)))
                for mistake, wrong in (
                    (m.RANGE_AGAIN, spread),
                    (m.WRONG_END, _wrong_end(known, spread, largest)),
                )
            ),
            key=key,
        ),
        ("by range", largest, *sorted(numbers)),
    )
