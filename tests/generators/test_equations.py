"""The equations strand: keys by engines the tool does not use, wrong answers by wrong methods.

Three engines stand behind the keys here, none of them used by the tool itself: z3 decides
that a key is the only solution, python-flint finds it again from two values of the printed
equation, and a plain search answers the word problems from nothing but their text.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import cache
from typing import Any, NamedTuple

import flint
import pytest
import z3

from generators.equations._balance import balance
from generators.equations._writing import letter, side, terms
from itembank.figures.figure import words as figure_words
from itembank.items.asks import FaultyLine
from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Find, Inequality, Item, Run, Tier
from itembank.items.kinds.mistakes import OTHER_LINE
from itembank.items.topics.registry import find_topic
from itembank.items.topics.space_part import is_other_kind
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.proof.lines.steps import step_fault
from tests.depth import cases
from tests.generators.mistakes import each_mistake, own_items

NAMES = (
    "one-step",
    "two-step",
    "brackets",
    "both-sides",
    "both-sides-brackets",
    "fractional",
    "negative-solutions",
    "form-and-solve",
    "substitution",
    "inequalities",
)
MOST = 400
"""Items of a tier in a sample: the most that a test here asks for."""
SOLVED = NAMES[:7]
BOTH = ("both-sides", "both-sides-brackets", "fractional", "negative-solutions")


def topic(name: str) -> Topic:
    return find_topic(f"equations.{name}")


@cache
def items_of(name: str, tier: Tier) -> tuple[Item, ...]:
    """Return a sample of a tier's items, always the same ones, made once for all tests."""
    space = topic(name).spaces[tier]
    indices = random.Random(name).sample(space.own, min(MOST, len(space.own)))
    return tuple(topic(name).item(tier, index) for index in indices)


def sampled(name: str, count: int, tiers: tuple[Tier, ...] = tuple(Tier)) -> Iterator[Item]:
    """Yield `count` items of each tier, always the same ones."""
    assert count <= MOST
    for tier in tiers:
        yield from items_of(name, tier)[:count]


class Asked(NamedTuple):
    """What an item prints, and its key: of every item, since these take little room."""

    prompt: tuple[Run, ...]
    key: t.Node
    text: str


@cache
def walked(name: str, tier: Tier) -> tuple[Asked, ...]:
    """Return what every item of a tier asks, in order, made once for all tests."""
    return tuple(Asked(item.prompt, item.key, text(item)) for item in own_items(topic(name), tier))


def printed(name: str, tier: Tier) -> list[str]:
    """Return what every item of a tier prints, in order."""
    return [asked.text for asked in walked(name, tier)]


def text(item: Item) -> str:
    """Return what is read aloud: the prompt, and after it what is said of its figure."""
    asked = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
    return asked if item.figure is None else f"{asked} {figure_words(item.figure)}"


def calculate(node: t.Node, number: Callable[[int], Any], known: dict[str, Any]) -> Any:
    """Work a tree out in any arithmetic with + − × ÷: z3's reals, or flint's rationals."""

    def go(part: t.Node) -> Any:
        return calculate(part, number, known)

    match node:
        case t.Int(n):
            return number(n)
        case t.Sym(name):
            return known[name]
        case t.Neg(of):
            return number(0) - go(of)
        case t.Bracket(of):
            return go(of)
        case t.Money(of, _) | t.Quantity(of, _):
            return go(of)  # the stories keep to pounds, metres, litres and degrees
        case t.Frac(top, bottom):
            return go(top) / go(bottom)
        case t.Power(base, t.Int(exponent)):
            value = go(base)
            for _ in range(exponent - 1):
                value = value * go(base)
            return value
        case t.Juxt(factors):
            value = go(factors[0])
            for factor in factors[1:]:
                value = value * go(factor)
            return value
        case t.Sum(first, rest):
            value = go(first)
            for op, term in rest:
                value = value + go(term) if op == "+" else value - go(term)
            return value
        case t.Product(first, rest):
            value = go(first)
            for pop, factor in rest:
                value = value / go(factor) if pop == "÷" else value * go(factor)
            return value
    raise AssertionError(f"{node} is not expected in this strand")


def flint_number(node: t.Node) -> flint.fmpq:
    return calculate(node, flint.fmpq, {})


def answer_of(node: t.Node) -> t.Node:
    return node.rest[0][1] if isinstance(node, t.Relation) else node


def z3_relation(relation: t.Relation, known: dict[str, Any]) -> Any:
    (op, right) = relation.rest[0]
    a = calculate(relation.first, z3.RealVal, known)
    b = calculate(right, z3.RealVal, known)
    return {"=": a == b, "<": a < b, ">": a > b, "≤": a <= b, "≥": a >= b}[op]


@pytest.mark.parametrize("name", NAMES)
def test_tiers_are_large_enough_and_no_two_prompts_agree(name: str) -> None:
    for tier in Tier:
        prompts = printed(name, tier)
        assert len(prompts) >= 200
        assert len(set(prompts)) == len(prompts)


@pytest.mark.parametrize("name", NAMES)
def test_forms_working_and_wrong_answers_are_fit_to_print(name: str) -> None:
    declared = {(which.id, which.name) for which in topic(name).misconceptions}
    # Sixty of a tier show each of its structures many times; what is written is the same for all
    # numbers, and that lines come back as they were written is a property test of notation.
    for item in sampled(name, cases(60, 400)):
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


@pytest.mark.parametrize("name", NAMES)
def test_every_declared_misconception_shows_somewhere(name: str) -> None:
    shown = {slip.misconception.id for item in sampled(name, 400) for slip in each_mistake(item)}
    # A line that goes wrong may show one that no answer to the question gives.
    for tier, space in topic(name).spaces.items():
        drafts = (topic(name).draft(tier, *point) for point in space if is_other_kind(point))
        spotted = (draft for draft in drafts if isinstance(draft.ask, FaultyLine))
        shown |= {slip.misconception.id for draft in spotted for slip in draft.slips}
    assert shown - {OTHER_LINE.id} == {which.id for which in topic(name).misconceptions}


@pytest.mark.parametrize("name", SOLVED)
def test_flint_finds_the_key_from_two_values_of_the_printed_equation(name: str) -> None:
    """A linear f with f(0) = p and f(1) = q vanishes at p/(p − q), the rule of false position."""
    for item in sampled(name, 200):
        (equation,) = [run for run in item.prompt if isinstance(run, t.Relation)]
        (unknown,) = t.symbols(equation)

        def gap(value: int, equation: t.Relation = equation, unknown: str = unknown) -> flint.fmpq:
            known = {unknown: flint.fmpq(value)}
            left = calculate(equation.first, flint.fmpq, known)
            return left - calculate(equation.rest[0][1], flint.fmpq, known)

        root = gap(0) / (gap(0) - gap(1))
        assert flint_number(answer_of(item.key)) == root
        assert isinstance(item.key, t.Relation)
        assert item.key.first == t.Sym(unknown)
        for slip in each_mistake(item):
            assert flint_number(answer_of(slip.wrong)) != root, (text(item), slip)


@pytest.mark.parametrize("name", ["form-and-solve", "substitution"])
def test_z3_allows_the_key_and_nothing_else(name: str) -> None:
    for item in sampled(name, 60):
        if item.figure is not None:
            continue  # test_geometry_areas finds these from what is said of the figure
        assert isinstance(item.ask, Find)
        letters = {s for relation in item.ask.relations for s in t.symbols(relation)}
        known = {s: z3.Real(s) for s in letters}
        solver = z3.Solver()
        solver.add(*(z3_relation(relation, known) for relation in item.ask.relations))
        assert solver.check() == z3.sat
        target = calculate(item.ask.target, z3.RealVal, known)
        solver.add(target != calculate(answer_of(item.key), z3.RealVal, {}))
        assert solver.check() == z3.unsat, text(item)
        for slip in each_mistake(item):
            assert flint_number(answer_of(slip.wrong)) != flint_number(answer_of(item.key))


def test_z3_finds_no_number_where_an_inequality_and_its_key_part_company() -> None:
    for item in sampled("inequalities", 120):
        assert isinstance(item.ask, Inequality)
        assert isinstance(item.key, t.Relation)
        (unknown,) = t.symbols(item.ask.relation)
        known = {unknown: z3.Real(unknown)}
        asked = z3_relation(item.ask.relation, known)
        solver = z3.Solver()
        solver.add(asked != z3_relation(item.key, known))
        assert solver.check() == z3.unsat, text(item)
        for slip in each_mistake(item):
            assert isinstance(slip.wrong, t.Relation)
            apart = z3.Solver()
            apart.add(asked != z3_relation(slip.wrong, known))
            assert apart.check() == z3.sat, (text(item), slip)


@pytest.mark.parametrize("name", BOTH)
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


def test_a_search_over_the_text_of_every_word_problem_finds_only_the_key() -> None:
    used = set()
    for tier in Tier:
        for asked in walked("form-and-solve", tier):
            words = asked.text
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
            assert [flint_number(answer_of(asked.key))] == fits, words
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
    written = [line(node) for node in wanted]
    for tier in Tier:
        for index, words in enumerate(printed(name, tier)):
            if all(part in words for part in written):
                item = topic(name).item(tier, index)
                if all(node in item.prompt for node in wanted):
                    return item
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


@pytest.mark.parametrize(("name", "equation", "expected"), BY_HAND)
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
