"""Keys of the algebra strand found a third way: from the printed words, in python-flint."""

from __future__ import annotations

import re
from collections.abc import Callable
from math import gcd

import pytest
from flint import fmpq, fmpq_mpoly_ctx

from itembank.figures.figure import kind_of
from itembank.items.item import Item
from itembank.notation import line
from tests.depth import whole
from tests.generators.key_reader import numbers, sample
from tests.generators.letter_values import same, worth


def terms_of(text: str) -> int:
    """Return how many terms an expression without brackets has."""
    assert "(" not in re.sub(r"\(\d+/\d+\)", "", text), text
    return len(re.findall(r" [+-] ", text)) + 1


def in_brackets(text: str) -> list[str]:
    return re.findall(r"\(([^()]*)\)", text)


def collect_terms(item: Item, text: str) -> str:
    key = line(item.key)
    assert terms_of(key) <= 2
    if found := re.fullmatch(r"Simplify (.*)\.", text):
        return found[1]
    if found := re.fullmatch(r"Which expression do you add to (.*) to get (.*)\? Give .*", text):
        return f"{found[2]} - ({found[1]})"
    if "perimeter in" in text:
        long, wide = in_brackets(text)
        return f"2 × ({long}) + 2 × ({wide})"
    whole, one, other = in_brackets(text)
    assert "third" in text
    return f"{whole} - ({one}) - ({other})"


def expand_one_bracket(item: Item, text: str) -> str:
    assert "(" not in line(item.key)
    if found := re.fullmatch(r"Expand(?: and simplify)? (.*)\.", text):
        return found[1]
    if found := re.search(r"(?:Each|has|holds).* \((.*?)\) .* (?:in|on) (\d+) ", text):
        return f"{found[2]} × ({found[1]})"
    sizes = re.findall(r"(\d+) metres? wide and \((.*?)\) metres long", text)
    whole, *hole = (f"{wide} × ({long})" for wide, long in sizes)
    assert ("rest" in text) == bool(hole)
    return " - ".join([whole, *hole])


def expand_two_brackets(item: Item, text: str) -> str:
    assert "(" not in line(item.key)
    if found := re.fullmatch(r"Expand and simplify (.*)\.", text):
        return found[1]
    long, wide = in_brackets(text)
    hole = re.search(r" It is (\w) metres long and (\d+) metres? wide", text)
    taken = f" - {hole[1]} × {hole[2]}" if hole else ""
    assert ("rest" in text) == bool(hole)
    return f"({long}) × ({wide}){taken}"


def quotient(text: str) -> str:
    area, *wide = in_brackets(text)
    width = wide[0] if wide else re.search(r"It is (\S+) metres wide", text)[1]  # type: ignore[index]
    assert "length" in text
    return f"({area}) ÷ ({width})"


def factorise(item: Item, text: str) -> str:
    if found := re.fullmatch(r"Factorise (.*?)(?: fully)?\.", text):
        assert all(map(does_not_split, in_brackets(line(item.key)))), (text, line(item.key))
        return found[1]
    if "Find two numbers" in text:
        total, product = numbers(text)
        first, second = numbers(line(item.key))
        assert (first + second, first * second) == (total, product)
        return ""
    return quotient(text)


def does_not_split(text: str) -> bool:
    """Tell whether python-flint finds one factor alone in a polynomial, and no common number."""
    ring = fmpq_mpoly_ctx.get(sorted(set(re.findall("[a-z]", text))), "lex")
    value = worth(text, dict(zip(map(str, ring.gens()), ring.gens(), strict=True)))
    _, factors = value.factor()
    assert all(number.q == 1 for number in value.coeffs())
    common = gcd(*(int(number.p) for number in value.coeffs()))
    return common == 1 and [power for _, power in factors] == [1]


DONE = {"adds": "+", "subtracts": "-", "multiplies by": "×", "divides by": "÷"}


def through(start: str, steps: str) -> str:
    """Return what comes of a number to which things are done, in the words of a sentence."""
    value = start
    for verb, number in re.findall(rf"({'|'.join(DONE)}) (\d+|x)", steps):
        value = f"({value}) {DONE[verb]} {number}"
    return value


def function_machines(item: Item, text: str) -> str:
    key = line(item.key)
    if item.figure is not None:
        words = kind_of(item.figure).words(item.figure)
        steps, number = re.fullmatch(
            r"A function machine (.*)\. The number (.*?) (?:goes|comes) .*", words
        ).groups()  # type: ignore[union-attr]
        number = number.replace("negative ", "-")
        if "input" in text:
            assert same(through(key, steps), number)
            return ""
        return through(number, steps)
    if "What number" in text and "a number." in text:
        start, end = re.search(r"input is (\d+), the output is (\d+)", text).groups()  # type: ignore[union-attr]
        steps = text.partition(". When")[0].replace("a number", key)
        steps = re.sub(r"multiplies (?=\d)", "multiplies by ", steps)
        assert same(through(start, steps), end)
        return ""
    steps = text.partition(". ")[0]
    if "the same number" in text:
        assert same(through(key, steps), key)
        return ""
    assert "The input is n" in text
    assert "(" not in key
    return through("n", steps)


TALES: tuple[tuple[str, str], ...] = (
    (r"of them (?:leave|are on loan|drive out)|spoils", "{0} - {1}"),
    (r" more\. .* equally| more join", "({0} + {1}) ÷ {2}"),
    (r" equally ", "{0} ÷ {1}"),
    (r"each (?:day|morning)\.|Each (?:bag|crate)", "{1} × {0}"),
    (r"pence and|child ticket|leeks|minibus|trailer", "{2} × {0} + {3} × {1}"),
    (r" plus |set up", "{0} + {1} × {2}"),
    (r" left\.$", "{0} - {1} × {2}"),
    (r"Each of", "{0} × ({1} + {2})"),
    (r" (?:fewer) ", "{0} + {1} × {0} + {1} × {0} - {2}"),
    (r"older|more (?:seats|lengths|story)", "{0} + {1}"),
    (r"subtracts it from", "{1} - {0}"),
    (r" times its width", "2 × {0} + 2 × ({2} × {0} + {1})"),
    (r" more \w+ than ", "{0} × {2} + {1} × ({2} + {3})"),
)
"""Words of a story, and what its numbers and letters make, in the order in which they come."""


def form_expressions(item: Item, text: str) -> str:
    if "thinks of" in text and "it from" not in text:
        number = re.search(r"a number (\w)", text)
        assert number
        steps = re.sub(r"multipl\w+ \w+ \w*? ?by", "multiplies by", text)
        return through(number[1], steps)
    parts = re.findall(r"(?<![A-Za-z'])(\d+|[b-z])(?![A-Za-z])", text)
    made = next(made for words, made in TALES if re.search(words, text))
    return made.format(*parts)


WORKED_OUT: dict[str, Callable[[Item, str], str]] = {
    "algebra.collect-terms": collect_terms,
    "algebra.expand-one-bracket": expand_one_bracket,
    "algebra.expand-two-brackets": expand_two_brackets,
    "algebra.factorise": factorise,
    "algebra.form-expressions": form_expressions,
    "algebra.function-machines": function_machines,
    "algebra.factorise-quadratics": factorise,
}
"""What the printed words ask, as one expression that the key has to be worth;
``""`` where it is checked."""


@whole
@pytest.mark.parametrize("name", WORKED_OUT)
def test_keys_are_worth_what_is_printed(name: str) -> None:
    for item, text in sample(name):
        asked = WORKED_OUT[name](item, text)
        if not asked:
            continue
        assert same(asked, line(item.key)), (item.address, text, line(item.key))
        for slip in item.slips:
            assert not same(asked, line(slip.wrong)), (item.address, text, line(slip.wrong))


@whole
def test_a_subject_gives_back_what_the_formula_says() -> None:
    for item, text in sample("algebra.make-subject"):
        found = re.search(r"formula (.*?)\. Make (\w)", text)
        if found:
            formula, subject = found[1], found[2]
        else:
            found = re.fullmatch(r"Make (\w) the subject of (.*)\.", text)
            assert found, text
            subject, formula = found[1], found[2]
        left, right = formula.split(" = ")
        letter, value = line(item.key).split(" = ")
        assert letter == subject
        wrong = [(line(slip.wrong).split(" = ")[1], False) for slip in item.slips]
        for answer, holds in ((value, True), *wrong):
            names = sorted(set(re.findall("[A-Za-z]", left + right)))
            at = {name: fmpq(37 + 11 * place * place) for place, name in enumerate(names)}
            at[letter] = worth(answer, at)
            assert (worth(left, at) == worth(right, at)) is holds, (item.address, text, answer)
