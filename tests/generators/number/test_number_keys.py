"""Keys on number found a third way: from the printed words, each by a rule of its own.

A rule is a pattern of the whole printed question and a function that answers it from the text. It
shares nothing with the generators, the tool's parser or its two roads: arithmetic is python-flint's
or is done by counting out.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from typing import Any

import pytest

from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import line
from tests.depth import cases, whole
from tests.generators.number.number_methods import (
    Answer,
    Expression,
    boxed,
    digit_worth,
    estimated,
    highest,
    how_often,
    interval,
    known,
    lowest,
    marked,
    one_power,
    ordered,
    ordinary,
    prime,
    prime_product,
    printed,
    same,
    signed,
    standard,
    the_other,
    to_figures,
    to_nearest,
    to_places,
    two_numbers,
    with_roots,
    written_out,
)
from tests.generators.number.number_reader import root, value

EACH = cases(65, 130, 130)
"""Questions of a tier that are answered again."""

MARKED = cases(8, 25, 25)
"""Questions of a tier whose key and likely mistakes are typed and marked."""

Rule = tuple[str, Callable[..., Answer]]


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


@whole
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


@whole
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
