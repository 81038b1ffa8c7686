"""The equations strand: what is fit to print, and wrong answers by wrong methods.

A plain search answers the word problems from nothing but their text; all other keys are held by
``test_equations_engines.py``.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import flint
import pytest

from generators.equations._balance import balance
from generators.equations._writing import letter, side, terms
from itembank.items.asks import FaultyLine, Give
from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Find, Item, Tier
from itembank.items.kinds.mistakes import OTHER_LINE
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.proof.lines.steps import step_fault
from tests.depth import cases, each, only_whole, some, whole
from tests.generators.equations.equation_engines import answer_of, calculate, flint_number
from tests.generators.equations.equation_samples import (
    BOTH,
    NAMES,
    printed,
    sampled,
    text,
    topic,
    walked,
)
from tests.generators.mistakes import each_mistake
from tests.other_kinds import made_by


@pytest.mark.parametrize("name", each(NAMES, 2))
def test_tiers_are_large_enough_and_no_two_prompts_agree(name: str) -> None:
    for tier in Tier:
        prompts = printed(name, tier)
        assert len(prompts) >= 200
        assert len(set(prompts)) == len(prompts)


@whole
@pytest.mark.parametrize("name", NAMES)
def test_forms_working_and_wrong_answers_are_fit_to_print(name: str) -> None:
    declared = {(which.id, which.name) for which in topic(name).misconceptions}
    # A few of a tier show each of its structures; what is written is the same for all
    # numbers, and that lines come back as they were written is a property test of notation.
    for item in sampled(name, cases(12, 400, 60)):
        assert form_fault(item.form, item.key) == ""
        assert step_fault(item) == "", item.address
        assert len({line(slip.wrong) for slip in item.slips}) >= 2, text(item)
        for slip in each_mistake(item):
            assert (slip.misconception.id, slip.misconception.name) in declared
            assert type(slip.wrong) is type(item.key) or item.form in ("integer", "number")
        for node in (item.key, *(slip.wrong for slip in each_mistake(item))):
            assert parse(line(node)) == node
        for step in item.steps:
            assert step.say[0].isupper(), step.say
            assert step.say.endswith("."), step.say
            assert step.maths is not None
            assert parse(line(step.maths)) == step.maths


@pytest.mark.parametrize("name", each(NAMES, 2, 1))
def test_every_declared_misconception_shows_somewhere(name: str) -> None:
    shown = {slip.misconception.id for item in sampled(name, 400) for slip in each_mistake(item)}
    # A line that goes wrong, or a number that does not fit, may show one that no answer gives.
    for tier, space in topic(name).spaces.items():
        drafts = (topic(name).draft(tier, *space[index]) for index in made_by(space))
        other_kinds = (draft for draft in drafts if isinstance(draft.ask, FaultyLine | Give))
        shown |= {slip.misconception.id for draft in other_kinds for slip in draft.slips}
    assert shown - {OTHER_LINE.id} == {which.id for which in topic(name).misconceptions}


@only_whole
@pytest.mark.parametrize("name", each(BOTH, 2))
def test_no_equation_comes_again_with_its_sides_exchanged(name: str) -> None:
    for tier in Tier:
        seen = set()
        for asked in walked(name, tier):
            (equation,) = [run for run in asked.prompt if isinstance(run, t.Relation)]
            (unknown,) = t.symbols(equation)
            sides = frozenset(
                line(part).replace(unknown, "x") for part in (equation.first, equation.rest[0][1])
            )
            assert sides not in seen, asked.text
            seen.add(sides)


# Word problems, from their text alone: each rule says whether n fits the numbers read there.
RULES: tuple[tuple[str, Callable[..., bool]], ...] = (
    (r"multiply it by (\d+) and then add (\d+)\. The answer is (\d+)",
     lambda n, a, b, c: n * a + b == c),
    (r"multiply it by (\d+) and then subtract (\d+)\. The answer is (\d+)",
     lambda n, a, b, c: n * a - b == c),
    (r"packs (\d+) lettuces\. They fill (\d+) boxes, and (\d+) are left",
     lambda n, c, a, b: c - a * n == b and b < n),
    (r"charges £(\d+) to join and £(\d+) for each session\. One member has paid £(\d+)",
     lambda n, b, a, c: b + sum([a] * n) == c),
    (r"depot (\d+) people fill (\d+) minibuses, and (\d+) are",
     lambda n, c, a, b: divmod(c, n) == (a, b)),
    (r"Altogether (\d+) trays of plants and a £(\d+) watering can cost £(\d+)",
     lambda n, a, b, c: c - b == a * n),
    (r"Three consecutive whole numbers add up to (\d+)",
     lambda n, s: sum(range(n, n + 3)) == s),
    (r"plot is (\d+) m longer than it is wide\. Its perimeter is (\d+) m",
     lambda n, d, p: n + (n + d) + n + (n + d) == p),
    (r"angles of a triangle are x°, (\d+)x° and \(x \+ (\d+)\)°",
     lambda n, a, b: n + a * n + n + b == 180),
    (r"two equal sides, each (\d+) m longer than the third side\. Its perimeter is (\d+) m",
     lambda n, k, p: n + (n + k) + (n + k) == p),
    (r"has (\d+) passengers, (\d+) more",
     lambda n, s, d: s - n == n + d),
    (r"plants (\d+) bulbs: lilies, (\d+) times as many tulips as lilies, and (\d+) more",
     lambda n, s, a, d: s - a * n - (n + d) == n),
    (r"Multiplying it by (\d+) and subtracting (\d+) gives .* by (\d+) and adding (\d+)",
     lambda n, a, b, c, d: n * a - b == n * c + d),
    (r"charges £(\d+) to join and £(\d+) a .* £(\d+) to join and £(\d+) a",
     lambda n, b, a, d, c: b + sum([a] * n) == d + sum([c] * n)),
    (r"sides of a rectangle are \((\d+)x \+ (\d+)\) m and \((\d+)x \+ (\d+)\) m",
     lambda n, a, b, c, d: any(a * x + b == c * x + d == n for x in range(100))),
    (r"tanks contain (\d+) l and (\d+) l of fuel\. Each day (\d+) l .* and (\d+) l from",
     lambda n, f, g, a, c: f - a * n == g - c * n >= 0),
    (r"equal angles of an isosceles triangle are \((\d+)x \+ (\d+)\)° and \((\d+)x \+ (\d+)\)°",
     lambda n, a, b, c, d: any(
         a * x + b == c * x + d and 2 * (a * x + b) + n == 180 for x in range(100))),
)  # fmt: skip


@whole
def test_a_search_over_the_text_of_every_word_problem_finds_only_the_key() -> None:
    used, source = set(), topic("form-and-solve")
    for tier in Tier:
        for index in some(source.spaces[tier].own, 80):
            item = source.item(tier, index)
            words = text(item)
            if "call its corners" in words:
                continue
            ((pattern, rule, found),) = [
                (pattern, rule, found)
                for pattern, rule in RULES
                if (found := re.search(pattern, words))
                and not (pattern == RULES[3][0] and "Another" in words)
            ]
            used.add(pattern)
            numbers = [int(group) for group in found.groups()]
            fits = [n for n in range(1, 181) if rule(n, *numbers)]
            assert [flint_number(answer_of(item.key))] == fits, words
    assert len(used) == len(RULES)


def wrong_answers(item: Item) -> dict[str, Fraction]:
    values = {}
    for slip in each_mistake(item):
        value = flint_number(answer_of(slip.wrong))
        values[slip.misconception.id.partition(".")[2]] = Fraction(int(value.p), int(value.q))
    return values


def written(name: str, *lines: str) -> Item:
    """Find the item that prints all of `lines`."""
    wanted = [parse(text) for text in lines]
    for tier, space in topic(name).spaces.items():
        for index in space.own:
            prompt = topic(name).draft(tier, *space[index]).prompt
            if all(node in prompt for node in wanted):
                return topic(name).item(tier, index)
    raise AssertionError(f"{lines} are in no item of {name}")


# Each wrong answer worked by hand with the wrong method named.
BY_HAND = [
    ("one-step", "9n = 63", {"mixed-inverse": 54, "wrong-way-round": Fraction(1, 7)}),
    ("two-step", "6b - 6 = 12", {"wrong-order": 8, "same-operation": 1, "stops-early": 18}),
    ("two-step", "11 - n/2 = 4", {"lost-minus": -14, "same-operation": 30}),
    ("brackets", "4(y - 9) = 12", {"first-term-only": Fraction(21, 4), "stops-early": 48}),
    # 4y + 16 − 2y − 2 = 28 with the wrong sign in the second bracket.
    ("brackets", "4(y + 4) - 2(y - 1) = 28", {"bracket-sign": 7}),
    ("both-sides", "9b = 7b + 10", {"adds-letters": Fraction(5, 8), "stops-early": 10}),
    # 8 = 2 − 3k − 6k, and 8 + 2 = 3k: neither undoes what it should.
    ("both-sides", "8 - 6k = 2 - 3k", {"adds-letters": Fraction(-2, 3), "stops-early": 6}),
    (
        "both-sides",
        "2b + 5 = 5b - 1",
        {"adds-letters": Fraction(6, 7), "adds-numbers": Fraction(4, 3)},
    ),
    ("both-sides-brackets", "7(x + 3) = 6x + 28", {"first-term-only": 25, "adds-numbers": 49}),
    ("fractional", "(2/5)t = 16", {"multiplies-by-fraction": Fraction(32, 5)}),
    ("fractional", "x/3 - x/5 = 12", {"part-cleared": 6, "stops-early": 180}),
    ("negative-solutions", "3y - 8 = -35", {"smaller-from-larger": 9}),
    ("negative-solutions", "2 + 9t = -43", {"answer-sign": 5}),
    ("inequalities", "10 - 7w ≤ 52", {"lost-minus": 6, "keeps-sign": -6}),
]


@pytest.mark.parametrize(("name", "equation", "expected"), each(BY_HAND, 5))
def test_wrong_answers_are_what_the_wrong_methods_give(
    name: str, equation: str, expected: dict[str, Fraction]
) -> None:
    given = wrong_answers(written(name, equation))
    assert {which: given[which] for which in expected} == expected


def test_wrong_substitutions_are_what_the_wrong_methods_give() -> None:
    item = written("substitution", "y = 4 - 7x", "x = -8")
    assert wrong_answers(item) == {"sum-first": (4 - 7) * -8, "drops-minus": 4 - 7 * 8}
    item = written("substitution", "P = 2a + 2b", "a = 5", "b = 9")
    assert wrong_answers(item) == {"side-by-side": 25 + 29, "adds-factors": 7 + 11}
    item = written("substitution", "A = ((a + b)h)/2", "A = 56", "a = 6", "b = 10")
    assert wrong_answers(item)["forgets-half"] == Fraction(56, 16)


def test_half_multiplied_brackets_solve_the_half_multiplied_equation() -> None:
    for item in sampled("brackets", 200, (Tier.SUPPORT,)):
        assert isinstance(item.ask, Find)
        equation = item.ask.relations[0]
        match equation.first:
            case t.Juxt((t.Int(a), t.Bracket(t.Sum(_, ((op, t.Int(b)),))))):
                x = wrong_answers(item)["first-term-only"]
                (right,) = [part for _, part in equation.rest]
                assert a * x + (b if op == "+" else -b) == int(flint_number(right).p)
            case other:
                raise AssertionError(other)


@pytest.mark.parametrize("a", [-3, 1, 2, Fraction(3, 4)])
@pytest.mark.parametrize("b", [-5, 0, 7])
@pytest.mark.parametrize("c", [-2, 0, 4])
def test_balance_ends_on_the_solution_and_never_leaves_it(a: Any, b: Any, c: Any) -> None:
    x = t.Sym("x")
    solution = Fraction(5, 3)
    d = a * solution + b - c * solution
    steps = balance(x, a, b, c, d)
    root = flint.fmpq(5, 3)
    for step in steps:
        assert isinstance(step.maths, t.Relation)
        left = calculate(step.maths.first, flint.fmpq, {"x": root})
        assert left == calculate(step.maths.rest[0][1], flint.fmpq, {"x": root})
    assert steps[-1].maths == t.equals(x, t.frac(5, 3))


def test_sides_are_written_as_a_teacher_writes_them() -> None:
    x = t.Sym("x")
    assert line(side(1, x, -4)) == "x - 4"
    assert line(side(-1, x)) == "-x"
    assert line(side(0, x, 9)) == "9"
    assert line(terms(side(2, x, 3), t.juxt(t.num(-5), x), t.num(1))) == "2x + 3 - 5x + 1"
    assert len({letter(n).name for n in range(20)}) > 4
