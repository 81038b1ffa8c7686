"""Keys on number found a third way: from the printed words, each by a rule of its own.

A rule is a pattern of the whole printed question and a function that answers it from the text. It
shares nothing with the generators, the tool's parser or its two roads: arithmetic is python-flint's
or is done by counting out.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal, localcontext
from typing import Any

import pytest
from flint import fmpq

from itembank.figures.figure import kind_of
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import line
from tests.generators.number_reader import root, value

EACH = 130
"""Questions of a tier that are answered again."""

MARKED = 25
"""Questions of a tier whose key and likely mistakes are typed and marked."""

Answer = Any
"""A number, the key as it is written, several numbers, an expression, or what judges the key."""
Rule = tuple[str, Callable[..., Answer]]


def printed(item: Item) -> str:
    text = "".join(run if isinstance(run, str) else f"{{{line(run)}}}" for run in item.prompt)
    if item.figure is None:
        return text
    # A picture as it is read out to who cannot see it.
    return f"{text} {kind_of(item.figure).words(item.figure)}"


def same(answer: Answer, key: str) -> bool:
    if isinstance(answer, tuple):
        return answer == tuple(value(part) for part in key.split(", "))
    if isinstance(answer, str):
        return answer == key
    if callable(answer):
        return bool(answer(key))
    if isinstance(answer, Expression):
        return answer.says(key)
    return bool(answer == value(key))


def boxed(text: str) -> fmpq:
    """Return what goes in the box of an equation that is of the first degree in it.

    Its two sides differ by a linear function of the box, so two trials settle it.
    """
    left, right = text.split(" = ")

    def gap(trial: int) -> fmpq:
        put = f"({trial})"
        return value(left.replace("□", put)) - value(right.replace("□", put))

    at_two, at_three = gap(2), gap(3)
    slope = at_three - at_two
    found = 2 - at_two / slope
    assert gap(5) == at_two + 3 * slope  # it is of the first degree
    return found


def spoken(words: str) -> fmpq:
    """Return a number that is read out: negative 3 point 4."""
    text = words.replace("negative ", "-").replace(" point ", ".").replace(" ", "")
    return value(text)


def ordered(numbers: str, first: str) -> str:
    """Return a list in order, as its numbers are printed."""
    parts = numbers.split(", ")
    falling = first in ("largest", "heaviest", "longest")
    return ", ".join(sorted(parts, key=value, reverse=falling))


def signed(a: str, b: str) -> str:
    sign = "<" if value(a) < value(b) else ">" if value(a) > value(b) else "="
    return f"{a} {sign} {b}"


def digit_worth(digit: str, number: str) -> fmpq:
    whole, _, places = number.partition(".")
    assert (whole + places).count(digit) == 1
    assert digit in places
    return fmpq(int(digit), 10 ** (places.index(digit) + 1))


def marked(low: str, high: str, steps: str, at: str) -> fmpq:
    return spoken(low) + (spoken(high) - spoken(low)) * int(at) / int(steps)


def two_numbers(total: str, product: str) -> Answer:
    """Find two numbers by trying every whole number."""
    s, p = int(value(total)), int(value(product))
    found = [(n, s - n) for n in range(-200, 201) if n * (s - n) == p]
    assert len(found) == 2
    return tuple(fmpq(n) for n in max(found))  # the larger one first


class Expression:
    """An expression in letters, to be compared with another where they stand for numbers."""

    def __init__(self, text: str) -> None:
        self.text = text

    def at(self, start: int) -> fmpq:
        text, letters = self.text, sorted(set(re.findall("[a-z]", self.text)))
        text = re.sub(r"(?<=[\da-z])(?=[a-z])", "×", text)
        for place, letter in enumerate(letters):
            text = text.replace(letter, str(start + 4 * place))
        return value(text)

    def says(self, other: str) -> bool:
        letters = set(re.findall("[a-z]", self.text))
        assert set(re.findall("[a-z]", other)) == letters
        return all(self.at(n) == Expression(other).at(n) for n in (2, 3, 7))


def one_power(text: str, base: str) -> Callable[[str], bool]:
    """Tell whether a key is one power of the base, and worth what was asked."""

    def tells(key: str) -> bool:
        match = re.fullmatch(rf"{base}\^(\d+|\(-\d+\))", key)
        return match is not None and Expression(text).says(key)

    return tells


def worth(text: str) -> Decimal:
    """Return a number, a quotient or a product in the decimal module, to 60 figures."""
    with localcontext() as context:
        context.prec = 60
        found = value(text)
        return Decimal(int(found.p)) / Decimal(int(found.q))


def to_places(text: str, places: str) -> str:
    step = Decimal(1).scaleb(-int(places))
    return f"{worth(text).quantize(step, ROUND_HALF_UP):f}"


def to_nearest(text: str, step: str) -> str:
    size = Decimal(1 if step == "whole" else step)
    return f"{(worth(text) / size).quantize(Decimal(1), ROUND_HALF_UP) * size:f}"


def to_figures(text: str, figures: str) -> str:
    """Round in the decimal module, whose precision is counted in significant figures."""
    with localcontext() as context:
        context.prec, context.rounding = int(figures), ROUND_HALF_UP
        found = +worth(text)
        # 0.9 to two figures has them both; 8500 has no point.
        missing = int(figures) - len(found.as_tuple().digits)
        if missing > 0:
            found = found.quantize(Decimal(1).scaleb(found.as_tuple().exponent - missing))
        return f"{found:f}"


def standard(text: str) -> Callable[[str], bool]:
    """Tell whether a key is in standard form and worth what is asked."""

    def tells(key: str) -> bool:
        match = re.fullmatch(r"([1-9](?:\.\d*[1-9])?) × 10\^(\d+|\(-\d+\))", key)
        return match is not None and value(key) == value(text)

    return tells


def ordinary(text: str) -> str:
    """Move the digits of a number in standard form, as text."""
    match = re.fullmatch(r"(\d)(?:\.(\d+))? × 10\^(\d+|\(-\d+\))", text)
    assert match is not None
    digits, places = match[1] + (match[2] or ""), len(match[2] or "")
    power = int(match[3].strip("()")) - places
    if power >= 0:
        return digits + "0" * power
    digits = digits.rjust(1 - power, "0")
    return f"{digits[:power]}.{digits[power:]}"


def estimated(text: str) -> fmpq:
    """Round every number of a line, as text, and work it out; an index stays as it is."""

    def rough(match: re.Match[str]) -> str:
        return to_figures(match[0], "1")

    return value(re.sub(r"(?<!\^)(?<![\d.])\d+(?:\.\d+)?", rough, text))


def interval(letter: str, number: str, how: str, to: str) -> Callable[[str], bool]:
    """Tell whether the ends of a key are where rounding in the decimal module changes."""
    rule = ROUND_HALF_UP if how == "rounded" else ROUND_DOWN

    def come_to(x: Decimal) -> Decimal:
        if match := re.fullmatch(r"(\d) significant figures?", to):
            with localcontext() as context:
                context.prec, context.rounding = int(match[1]), rule
                return +x
        if match := re.fullmatch(r"(\d) decimal places?", to):
            return x.quantize(Decimal(1).scaleb(-int(match[1])), rule)
        size = Decimal(to.removeprefix("the nearest ").replace("whole number", "1"))
        return (x / size).quantize(Decimal(1), rule) * size

    def tells(key: str) -> bool:
        match = re.fullmatch(rf"([\d.]+) ≤ {letter} < ([\d.]+)", key)
        if match is None:
            return False
        low, high, shown = Decimal(match[1]), Decimal(match[2]), Decimal(number)
        little = Decimal("1e-9")
        inside = come_to(low) == shown == come_to(high - little)
        return inside and come_to(low - little) != shown != come_to(high)

    return tells


def prime(n: int) -> bool:
    return n > 1 and all(n % k for k in range(2, n))


def prime_product(text: str) -> Callable[[str], bool]:
    """Tell whether a key is a product of powers of primes that comes to the number."""

    def tells(key: str) -> bool:
        bases = [int(part.partition("^")[0]) for part in key.split(" × ")]
        return all(map(prime, bases)) and bases == sorted(set(bases)) and value(key) == value(text)

    return tells


def braces(text: str) -> list[int]:
    return [int(value(part)) for part in re.findall(r"\{(.+?)\}", text)]


def highest(text: str) -> fmpq:
    """Try every number from the smallest of them down."""
    numbers = braces(text)
    return fmpq(next(k for k in range(min(numbers), 0, -1) if not any(n % k for n in numbers)))


def lowest(text: str) -> fmpq:
    """Count up in the largest of them."""
    numbers = braces(text)
    step = max(numbers)
    return fmpq(next(k for k in range(step, 10**6, step) if not any(k % n for n in numbers)))


def the_other(factor: str, multiple: str, one: str) -> fmpq:
    """Try every number up to the multiple."""
    found = [
        n
        for n in range(1, int(multiple) + 1)
        if highest(f"{{{one}}} {{{n}}}") == int(factor)
        and lowest(f"{{{one}}} {{{n}}}") == int(multiple)
    ]
    assert len(found) == 1
    return fmpq(found[0])


def written_out(base: str, index: str) -> Callable[[str], bool]:
    return lambda key: key == " × ".join([base] * int(index))


def with_roots(numbers: str) -> str:
    """Return numbers and square roots in order of their squares."""
    parts = numbers.split(", ")

    def square(text: str) -> fmpq:
        return value(text[1:]) if text[0] == "√" else value(text) ** 2

    return ", ".join(sorted(parts, key=square))


def known(given: str, asked: str) -> fmpq:
    left, right = given.split(" = ")
    assert value(left) == value(right)  # what pupils are told is true
    return value(asked)


def how_often(large: str, small: str) -> fmpq:
    """Take the small amount off as often as it goes."""
    left, count = value(large), 0
    while left > 0:
        left -= value(small)
        count += 1
    assert left == 0
    return fmpq(count)


AS_POWER: Rule = (r"Write \{(.+)\} as a (?:single )?power of \{(.+)\}\.", one_power)
KNOWN: Rule = (r"You are told that \{(.+)\}\. Use this to work out \{(.+)\}\.", known)
SIGN: Rule = (r"Put <, > or = between \{(.+)\} and \{(.+)\}\.", signed)
ORDER: Rule = (
    r"Write these in order of size, (smallest|largest) first: \{(.+)\}\.",
    lambda first, numbers: ordered(numbers, first),
)
WORK_OUT: Rule = (r"Work out \{([^{}]+)\}\.", lambda e: value(e))
BOX: Rule = (r"Find the number that goes in the box: \{([^{}]+)\}\.", boxed)


RULES: dict[str, list[Rule]] = {
    "number.order-of-operations": [
        WORK_OUT,
        BOX,
        (
            r"[A-Z][a-z ]+ buys \{(.+)\} [a-z ]+ at \{£(.+)\} each and \{(.+)\} [a-z ]+ at "
            r"\{£(.+)\} each\. It pays with \{£(.+)\}\. How much change does it get\?",
            lambda n, p, m, q, paid: value(paid) - value(n) * value(p) - value(m) * value(q),
        ),
    ],
    "number.negatives-add": [
        WORK_OUT,
        BOX,
        (
            r".+ temperature .+ is \{(.+)\}\. By \w+(?: am)? it has (risen|fallen) by \{(.+)\}\. "
            r"What is the temperature at .+\?",
            lambda a, way, b: value(a) + (value(b) if way == "risen" else -value(b)),
        ),
        (
            r".+ stands at \{(.+)\}\. The \w+ pay in \{(.+)\}, and a .+ \{(.+)\} is .+\. "
            r"What does it stand at now\?",
            lambda a, b, c: value(a) + value(b) - value(c),
        ),
        (
            r"On three nights the lowest temperatures .+ were \{(.+)\}, \{(.+)\} and \{(.+)\}\. "
            r"How much warmer was the warmest night than the coldest\?",
            lambda *all_three: max(map(value, all_three)) - min(map(value, all_three)),
        ),
    ],
    "number.negatives-multiply": [
        WORK_OUT,
        BOX,
        (r"Write two numbers whose sum is \{(.+)\} and product is \{(.+)\}\.", two_numbers),
    ],
    "number.order-decimals": [
        ORDER,
        SIGN,
        (
            r"[A-Z].+ these [\w, ]+: \{(.+)\}\. Write \w+(?: \w+)? in order, (\w+) first\.",
            ordered,
        ),
        (r"What is the value of the \{(.)\} in \{(.+)\}\?", digit_worth),
        (
            r"What decimal does the arrow A point to\? A number line goes from (.+) to (.+) in "
            r"(\d+) equal steps\. The arrow A points (\d+) steps? after .+\.",
            marked,
        ),
        (
            r"Write a decimal between \{(.+)\} and \{(.+)\}\.",
            lambda a, b: lambda key: value(a) < value(key) < value(b),
        ),
        (
            r"What number is halfway between \{(.+)\} and \{(.+)\}\?",
            lambda a, b: (value(a) + value(b)) / 2,
        ),
    ],
    "number.add-decimals": [
        WORK_OUT,
        BOX,
        (
            r".+ \{(.+)\}\. .+ \{(.+)\}\. How much (?:heavier|longer) .+ first(?: take)?\?",
            lambda a, b: value(a) - value(b),
        ),
        (
            r".+ buys a .+ for \{(.+)\} and an? .+ for \{(.+)\}\. The \w+ pays with \{(.+)\}\. "
            r"How much change is there\?",
            lambda a, b, paid: value(paid) - value(a) - value(b),
        ),
    ],
    "number.multiply-decimals": [
        WORK_OUT,
        BOX,
        KNOWN,
        (
            r".+ at \{(.+)\} a kilogram\. How much do \{(.+)\} kilograms of \w+ cost\?",
            lambda price, mass: value(price) * value(mass),
        ),
    ],
    "number.divide-decimals": [
        WORK_OUT,
        BOX,
        KNOWN,
        (
            r"\{(.+)\} \w+ share the .+ equally\. It costs \{(.+)\}\. How much does each pay\?",
            lambda people, price: value(price) / value(people),
        ),
        (
            r".+ has \{(.+)\} of .+ (?:holds|needs) \{(.+)\}\. "
            r"(?:How many|For how many) .+\?",
            how_often,
        ),
    ],
    "number.powers-and-roots": [
        WORK_OUT,
        AS_POWER,
        (
            r"Work out \{([^{}]+)\}\. Give your answer (?:as a fraction|in its lowest terms)\.",
            lambda e: value(e),
        ),
        (r"Write \{(\d+)\^(\d+)\} as a product, without powers\.", written_out),
        (
            r"A square .+ has an area of \{(.+)\} square metres\. How many metres .+ round it\?",
            lambda area: 4 * root(value(area), 2),
        ),
        (r"Write these in order of size, smallest first: \{(.+)\}\.", with_roots),
    ],
    "number.index-laws": [
        AS_POWER,
        (r"Simplify \{([^{}]+)\}\.", Expression),
    ],
    "number.prime-factors": [
        (r"Write \{(.+)\} as a product of its prime factors\.", prime_product),
        (r"Write \{(.+)\} as a product of powers of its prime factors\.", prime_product),
        (
            r"Without working it out, write \{(.+)\} as a product of its prime factors\.",
            prime_product,
        ),
        (
            r"Write a prime number between \{(.+)\} and \{(.+)\}\.",
            lambda a, b: lambda key: int(a) < int(key) < int(b) and prime(int(key)),
        ),
        BOX,
    ],
    "number.hcf": [
        (
            r"Write a common factor of \{(.+)\} and \{(.+)\} that is greater than \{1\}\.",
            lambda a, b: lambda key: int(key) > 1 and int(a) % int(key) == 0 == int(b) % int(key),
        ),
        (r"Find the highest common factor of ([^.]+)\.", highest),
        (r"Two numbers .+: (.+)\. Find their highest common factor\.", highest),
        (r"(.+ (?:greatest possible|largest square that) .+)\?", highest),
    ],
    "number.lcm": [
        (
            r"Write a common multiple of \{(.+)\} and \{(.+)\}\.",
            lambda a, b: lambda key: int(key) % int(a) == 0 == int(key) % int(b),
        ),
        (r"Find the lowest common multiple of ([^.]+)\.", lowest),
        (r"Two numbers .+: (.+)\. Find their lowest common multiple\.", lowest),
        (r"(.+) After how many (?:minutes|seconds) (?:will|are|do) .+ (?:together|time)\?", lowest),
        (
            r"The highest common factor of two numbers is \{(.+)\} and their lowest common "
            r"multiple is \{(.+)\}\. One of the numbers is \{(.+)\}\. What is the other number\?",
            the_other,
        ),
    ],
    "number.round-places": [
        (r"Round \{(.+)\} to (\d) decimal places?\.", to_places),
        (r"Round \{(.+)\} to the nearest (\w+)(?: number)?\.", to_nearest),
        (r"[A-Z].+ \{(.+)\} .+ Round this to the nearest (\d+)\.", to_nearest),
        (r"Write \{(.+)\} as a decimal, rounded to (\d) decimal places\.", to_places),
        (
            r"A (?:.+ )?\{(.+)\} .+ \{(.+)\} .+, to 2 decimal places\?",
            lambda a, b: to_places(f"{a}/{b}", "2"),
        ),
    ],
    "number.round-figures": [
        (r"Round \{(.+)\} to (\d) significant figures?\.", to_figures),
        (r"[A-Z].+ \{(.+)\} .+ Round this to (\d) significant figures?\.", to_figures),
        (r"Write \{(.+)\} as a decimal, rounded to (\d) significant figures\.", to_figures),
        (r"Work out \{(.+)\}\. Give your answer to (\d) significant figures\.", to_figures),
    ],
    "number.standard-form": [
        (r"Write \{(.+)\} in standard form\.", standard),
        (r"Write \{(.+)\} as an ordinary number\.", ordinary),
        (r"[A-Z].+ \{(.+)\} .+ Write this in standard form\.", standard),
        (r"[A-Z].+ \{(.+)\} .+ Write this as an ordinary number\.", ordinary),
        ORDER,
    ],
    "number.standard-form-calculate": [
        (r"Work out \{(.+)\}\. Give your answer in standard form\.", standard),
        (
            r".+ \{(.+)\} .+ \{(.+)\} .+\? Give your answer in standard form\.",
            lambda each, many: standard(f"({each}) × {many}"),
        ),
    ],
    "number.estimate": [
        (r"Estimate \{(.+)\} by rounding each number to 1 significant figure\.", estimated),
        (
            r"A .+ \{(.+)\} .+ at \{£(.+)\} each\. Estimate the total(?: cost)? by rounding each "
            r"number to 1 significant figure\.",
            lambda n, price: estimated(f"{n} × {price}"),
        ),
    ],
    "number.error-intervals": [
        (
            r"A number \{(\w)\} is \{(.+)\} when it is (rounded|truncated) to (.+)\. "
            r"Write the error interval for \{\1\}\.",
            interval,
        ),
        (
            r".+ is \{(\w)\} \w+(?: long)?\. (Rounded) to (.+), \{\1\} is \{(.+)\}\. "
            r"Write the error interval for \{\1\}\.",
            lambda letter, how, to, number: interval(letter, number, how.lower(), to),
        ),
    ],
}


@pytest.mark.parametrize("topic", RULES)
def test_a_third_engine_answers_from_the_printed_words(topic: str) -> None:
    source = find_topic(topic)
    rules = [(re.compile(pattern), answers) for pattern, answers in RULES[topic]]
    used: set[str] = set()
    for tier in Tier:
        own = source.spaces[tier].own
        for index in random.Random(f"{topic}/{tier}").sample(own, min(EACH, len(own))):
            item = source.item(tier, index)
            text = printed(item)
            fitting = [(m, rule) for rule in rules if (m := rule[0].fullmatch(text))]
            assert len(fitting) == 1, (item.address, text)
            match, (pattern, answers) = fitting[0]
            for step in item.steps:
                assert step.maths is None or line(step.maths)  # it can be written
            given: Any = answers(*match.groups())
            assert same(given, line(item.key)), (item.address, text, given, line(item.key))
            used.add(pattern.pattern)
    assert len(used) == len(rules), "a rule is for no question"


@pytest.mark.parametrize("topic", RULES)
def test_a_typed_key_is_right_and_no_likely_mistake_is(topic: str) -> None:
    source = find_topic(topic)
    for tier in Tier:
        own = source.spaces[tier].own
        for index in random.Random(f"{topic}/{tier}").sample(own, min(MARKED, len(own))):
            item = source.item(tier, index)
            marked = mark(item, line(item.key))
            assert marked.verdict is Verdict.RIGHT, (item.address, line(item.key), marked.says)
            for slip in item.slips:
                verdict = mark(item, line(slip.wrong)).verdict
                assert verdict is not Verdict.RIGHT, (item.address, line(slip.wrong))
