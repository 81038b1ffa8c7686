"""Each likely mistake of the strand carried out by its name, on what is printed.

The topics work their wrong answers out from their parameters. Here each named wrong method
is carried out again on the printed question and its printed working, by rewriting a line as
the name says and solving that line with python-flint; the two have to agree on every item.
"""

from __future__ import annotations

import operator
import random
import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import Any

import flint
import pytest

from itembank.items.item import Inequality, Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t
from tests.depth import cases, whole
from tests.generators.equations.equation_engines import answer_of, calculate, flint_number
from tests.generators.equations.equation_samples import NAMES, text
from tests.generators.equations.wrong_formulas import (
    IN_FORMULA,
    drops_minus,
    one_side_only,
    undoubled,
    worked_out,
)
from tests.generators.equations.wrong_methods import (
    METHODS,
    asked,
    lines,
    lost_minus,
    short,
    working_only,
)
from tests.generators.mistakes import each_mistake

SIDES = ("one-step", "two-step", "both-sides", "both-sides-brackets", "fractional", "brackets")
SAMPLE = cases(40, 120, 120)
"""Items of a tier that are tried."""
EQUATIONS = (*SIDES, "negative-solutions", "inequalities")


def sampled(name: str, count: int) -> Iterator[Item]:
    topic: Topic = find_topic(f"equations.{name}")
    for tier in Tier:
        space = topic.spaces[tier]
        for index in random.Random(f"wrong {name}").sample(space.own, min(count, len(space.own))):
            yield topic.item(tier, index)


@whole
@pytest.mark.parametrize("name", [name for name in EQUATIONS if name != "inequalities"])
def test_wrong_solutions_are_what_the_named_method_gives(name: str) -> None:
    for item in sampled(name, SAMPLE):
        for slip in each_mistake(item):
            method = METHODS[short(slip.misconception.id)]
            given = flint_number(answer_of(slip.wrong))
            assert given == method(item), (text(item), slip.misconception.name)


TURN = {"<": ">", ">": "<", "≤": "≥", "≥": "≤"}


@whole
def test_wrong_inequalities_are_what_the_named_method_gives() -> None:
    """A sign is turned, kept or read backwards; all else is as with equations."""
    for item in sampled("inequalities", 2 * SAMPLE):
        assert isinstance(item.ask, Inequality)
        assert isinstance(item.key, t.Relation)
        right = item.key.rest[0][0]
        bound = flint_number(answer_of(item.key))
        swapped = item.steps[-1].say.startswith("Swap")
        divided = next((say for step in item.steps if "turn" in (say := step.say)), "")
        for slip in each_mistake(item):
            assert isinstance(slip.wrong, t.Relation)
            sign, number = slip.wrong.rest[0][0], flint_number(answer_of(slip.wrong))
            match short(slip.misconception.id):
                case "swaps-sides":
                    assert swapped, text(item)
                    before_swap = item.steps[-2].maths
                    assert isinstance(before_swap, t.Relation)
                    # The sign is copied as it stands between the sides that are swapped.
                    assert (sign, number) == (before_swap.rest[0][0], bound)
                case "turns-sign":
                    assert not swapped
                    assert not divided, "there is a need to turn it"
                    assert (sign, number) == (TURN[right], bound)
                case "keeps-sign":
                    assert re.search(r"by −\d+ and turn", divided)
                    assert (sign, number) == (asked(item).rest[0][0], bound)
                case "lost-minus":
                    # Divided by a positive number, the sign stays.
                    assert (sign, number) == (asked(item).rest[0][0], lost_minus(item))
                case which:
                    assert (sign, number) == (right, METHODS[which](item)), (text(item), which)


@whole
def test_wrong_substitutions_are_what_the_named_method_gives() -> None:
    for item in sampled("substitution", 3 * SAMPLE):
        inside = item.tier is Tier.CHALLENGE
        for slip in each_mistake(item):
            which = short(slip.misconception.id)
            if which == "drops-minus":
                expected = drops_minus(item)
            elif not inside:
                expected = worked_out(item, IN_FORMULA[which])
            elif which == "forgets-half":
                expected = undoubled(item)
            elif which == "extra-once":
                expected = one_side_only(item)
            else:
                expected = METHODS[which](working_only(item))
            assert flint_number(slip.wrong) == expected, (text(item), slip.misconception.name)


def story_values(item: Item) -> list[int]:
    return [int(n) for n in re.findall(r"\d+", text(item))]


# What each wrong method does with the numbers of a story, read from its words.
STORIES: tuple[tuple[str, str, Callable[..., Any]], ...] = (
    ("two-sides-only", "rectangular plot", lambda d, p: Fraction(p - d, 2)),
    ("forgets-difference", "rectangular plot", lambda d, p: Fraction(p, 4)),
    ("forgets-difference", "two equal sides", lambda k, p: Fraction(p, 3)),
    ("extra-once", "two equal sides", lambda k, p: Fraction(p - k, 3)),
    ("angle-sum-360", "angles of a triangle", lambda a, b: Fraction(360 - b, a + 2)),
    ("forgets-difference", "consecutive", lambda s: Fraction(s, 3)),
    ("forgets-difference", "passengers", lambda s, d: Fraction(s, 2)),
    ("forgets-difference", "bulbs", lambda s, a, d: Fraction(s, a + 2)),
    ("stops-early", "isosceles triangle", lambda a, b, c, d: a * Fraction(d - b, a - c) + b),
    ("extra-once", "isosceles triangle", lambda a, b, c, d: 180 - a * Fraction(d - b, a - c) - b),
    ("letter-only", "sides of a rectangle", lambda a, b, c, d: Fraction(d - b, a - c)),
)


@whole
def test_wrong_answers_to_stories_are_what_the_named_method_gives() -> None:
    used = set()
    for item in sampled("form-and-solve", 3 * SAMPLE):
        if item.figure is not None:
            continue
        words, given = text(item), story_values(item)
        for slip in each_mistake(item):
            which = short(slip.misconception.id)
            found = [rule for name, part, rule in STORIES if name == which and part in words]
            value = flint_number(answer_of(slip.wrong))
            if found:
                (rule,) = found
                used.add(rule)
                expected = Fraction(rule(*given))
                assert value == flint.fmpq(expected.numerator, expected.denominator), words
            else:
                assert value == METHODS[which](working_only(item)), (words, which)
    assert len(used) == len(STORIES)


@whole
@pytest.mark.parametrize("name", NAMES)
def test_a_question_to_ask_speaks_of_the_item_it_stands_with(name: str) -> None:
    """It names no letter that is not printed, and asks something."""
    for item in sampled(name, SAMPLE):
        printed = {
            letter
            for node in (*item.prompt, *(step.maths for step in item.steps))
            if isinstance(node, t.Node)
            for letter in t.symbols(node)
        }
        for slip in each_mistake(item):
            said = slip.misconception.ask
            without_units = re.sub(r"(?<=\d) m\b", "", said)
            letters = set(re.findall(r"(?<![A-Za-z])([A-Za-z])(?![A-Za-z])", without_units))
            assert letters <= printed | {"a"}, (text(item), said)
            assert "?" in said
            assert "-" not in re.sub(r"(?<=[a-z])-(?=[a-z])", "", said), said


@whole
@pytest.mark.parametrize("name", [*SIDES, "negative-solutions"])
def test_a_sum_to_work_out_gives_the_next_line_of_the_working(name: str) -> None:
    """“You subtract 8 from both sides. What is 18 − 8?” is the number of the next line."""
    seen = 0
    for item in sampled(name, SAMPLE):
        printed = lines(item)
        for slip in each_mistake(item):
            found = re.search(
                r"You (subtract|add) (\d+) (?:from|to) both sides\. What is (−?\d+) ([−+]) (\d+)\?",
                slip.misconception.ask,
            )
            if not found:
                continue
            seen += 1
            verb, by, start, op, again = found.groups()
            assert by == again
            assert (verb == "subtract") == (op == "−")
            says = f"{verb.capitalize()} {by} {'from' if verb == 'subtract' else 'to'} both sides."
            value = int(start.replace("−", "-")) + (int(by) if op == "+" else -int(by))
            assert any(say == says and value in (of.b, of.d) for say, _, of in printed[1:]), (
                text(item),
                slip.misconception.ask,
            )
    assert seen or name == "one-step"


@whole
def test_a_number_to_try_fits_the_wrong_answer_and_not_the_question() -> None:
    compare = {"<": operator.lt, ">": operator.gt, "≤": operator.le, "≥": operator.ge}
    seen = 0
    for item in sampled("inequalities", 2 * SAMPLE):
        for slip in each_mistake(item):
            found = re.match(r"Try ([a-z]) = (−?\d+), which fits", slip.misconception.ask)
            if not found:
                continue
            seen += 1
            known = {found[1]: flint.fmpq(int(found[2].replace("−", "-")))}
            for relation, holds in ((slip.wrong, True), (asked(item), False)):
                assert isinstance(relation, t.Relation)
                op, right = relation.rest[0]
                left = calculate(relation.first, flint.fmpq, known)
                assert compare[op](left, calculate(right, flint.fmpq, known)) is holds
    assert seen > SAMPLE / 2
