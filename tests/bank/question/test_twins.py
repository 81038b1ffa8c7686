"""The same question in disguise is found; a different question never is."""

import random
import string
from dataclasses import dataclass, replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.bank.question.canonical import canonical
from itembank.items.item import (
    Choose,
    Common,
    Compare,
    Find,
    Inequality,
    Order,
    Rewrite,
    Round,
    Sequence,
    Solve,
    Subject,
)
from itembank.items.topics.registry import topics
from itembank.notation import tree as t
from itembank.notation.parse import parse
from itembank.notation.tree.face import BELOW, FACES, Parts
from tests.depth import some, whole


def asks(text):
    """Return the trees of lines parted by semicolons."""
    return tuple(parse(part) for part in text.split(";"))


def key(ask):
    return canonical(ask, "value")


SAME = [
    ("3/4 + 1/6", "1/6 + 3/4"),
    ("5 - 3 + 2", "5 + 2 - 3"),
    ("-3 + 5", "5 + (-3)"),
    ("-3 × 4", "4 × (-3)"),
    ("4 × 7 × 2", "7 × 2 × 4"),
    ("12 ÷ 3 × 5", "5 × 12 ÷ 3"),
    ("3/4 of 60", "60 × 3/4"),
    ("30% of £40", "£40 × 30%"),
    ("£4.50 × 3", "3 × £4.5"),
    ("2(x + 3) + 4x", "4y + 2(3 + y)"),
    ("2a × 3b", "3b × 2a"),
    ("3a + 2b", "2a + 3b"),
    ("-3x + 5", "5 - 3x"),
    ("-xy + 2", "2 - yx"),
    ("x^2 - 3x + 2", "2 + t^2 - 3t"),
    ("√12 + √27", "√27 + √12"),
    ("(2 + 3) × 4", "4 × (3 + 2)"),
]
DIFFERENT = [
    ("3/4 + 1/6", "3/4 + 1/5"),
    ("3/4 + 1/6", "3/6 + 1/4"),
    ("2/4 + 1/6", "1/2 + 1/6"),
    ("5 - 3", "3 - 5"),
    ("5 - 3", "5 + (-3)"),
    ("12 ÷ 3", "3 ÷ 12"),
    ("12 ÷ 3 × 5", "12 × 3 ÷ 5"),
    ("-3 × 4", "3 × (-4)"),
    ("2^3", "3^2"),
    ("2 : 3", "3 : 2"),
    ("10 - (3 - 2)", "10 - 3 - 2"),
    ("2 × (3 + 4)", "2 × 3 + 4"),
    ("30% of £40", "40% of £30"),
    ("3 kg + 2 g", "2 kg + 3 g"),
    ("£3 + 2p", "£2 + 3p"),
    ("3x + 2y + x", "3x + 2y + y^2"),
    ("3x + 2x", "3x + 2y"),
    ("2π + 3x", "2x + 3π"),
    ("0.5 + 1", "1/2 + 1"),
]


@pytest.mark.parametrize(("one", "other"), SAME)
def test_the_same_expression_in_another_order_or_other_letters(one, other):
    assert key(Find(parse(one))) == key(Find(parse(other)))


@pytest.mark.parametrize(("one", "other"), DIFFERENT)
def test_a_different_expression_is_no_twin(one, other):
    assert key(Find(parse(one))) != key(Find(parse(other)))


RELATIONS_SAME = [
    ("3x + 5 = 11", "11 = 5 + 3n"),
    ("x + y = 7; x - y = 1", "b + a = 7; 1 = a - b"),
    ("2x + 3y = 1; 4x + 5y = 2", "4y + 5x = 2; 3x + 2y = 1"),
    ("a : b = 2 : 3; a + b = 60", "3 : 2 = y : x; 60 = x + y"),
]
RELATIONS_DIFFERENT = [
    ("3x + 5 = 11", "5x + 3 = 11"),
    ("3x + 5 = 11", "3x - 5 = 11"),
    ("x + y = 7; x - y = 1", "x + y = 1; x - y = 7"),
    ("2x + 3y = 1; 4x + 5y = 2", "2x + 3y = 1; 5x + 4y = 2"),
]


@pytest.mark.parametrize(("one", "other"), RELATIONS_SAME)
def test_the_same_equations(one, other):
    assert key(Solve(asks(one))) == key(Solve(asks(other)))


@pytest.mark.parametrize(("one", "other"), RELATIONS_DIFFERENT)
def test_different_equations(one, other):
    assert key(Solve(asks(one))) != key(Solve(asks(other)))


def test_a_share_asked_for_the_other_part_is_another_question():
    relations = asks("a : b = 2 : 3; a + b = 60")
    a, b = t.Sym("a"), t.Sym("b")
    turned = asks("b : a = 3 : 2; a + b = 60")
    assert key(Find(a, relations)) != key(Find(b, relations))
    assert key(Find(a, relations)) == key(Find(a, turned))
    renamed = asks("y : x = 2 : 3; x + y = 60")
    assert key(Find(a, relations)) == key(Find(t.Sym("y"), renamed))


def test_an_equation_is_the_twin_of_the_model_that_says_it():
    (relation,) = asks("3x + 2 = 14")
    (model,) = asks("14 = 2 + 3k")
    assert canonical(Solve((relation,)), "roots") == canonical(Find(t.Sym("k"), (model,)), "value")


def test_inequalities_read_from_either_end():
    same = [Inequality(parse(text)) for text in ("2 < x", "y > 2")]
    assert key(same[0]) == key(same[1])
    chains = [Inequality(parse(text)) for text in ("2 < x ≤ 5", "5 ≥ n > 2", "2 ≤ x < 5")]
    assert key(chains[0]) == key(chains[1]) != key(chains[2])
    assert key(same[0]) != key(Inequality(parse("2 > x")))


def test_lists_to_be_ordered_or_compared_or_chosen_from_have_no_order():
    things = asks("1/2; 2/3; 3/5")
    turned = things[::-1]
    assert key(Order(things)) == key(Order(turned)) != key(Order(things, "descending"))
    assert key(Common(asks("12; 18"), "hcf")) == key(Common(asks("18; 12"), "hcf"))
    assert key(Common(asks("12; 18"), "hcf")) != key(Common(asks("12; 18"), "lcm"))
    assert key(Compare(*things[:2])) == key(Compare(*turned[1:]))
    options = tuple(zip("AB", things[:2], strict=True))
    renamed = tuple(zip("CD", turned[1:], strict=True))
    assert key(Choose(options, "least")) == key(Choose(renamed, "least"))
    assert key(Choose(options, "least")) != key(Choose(options, "greatest"))


def test_the_order_of_a_sequence_counts():
    assert key(Sequence(asks("2; 5; 8"))) != key(Sequence(asks("8; 5; 2")))


def test_what_is_to_be_done_counts():
    target = parse("2(x + 3)")
    assert key(Rewrite(target, "expand")) != key(Rewrite(target, "simplify"))
    assert key(Round(parse("3.146"), "places", 1)) != key(Round(parse("3.146"), "places", 2))
    formula = parse("y = 3x + 2")
    assert key(Subject(formula, t.Sym("x"))) != key(Subject(formula, t.Sym("y")))
    assert key(Subject(formula, t.Sym("x"))) == key(Subject(parse("2 + 3a = b"), t.Sym("a")))


def test_the_form_counts_where_it_is_the_question():
    number, calculation = Find(parse("7/4")), Find(parse("3/4 + 1"))
    assert canonical(number, "mixed") != canonical(number, "decimal")
    assert canonical(calculation, "mixed") == canonical(calculation, "improper")
    assert canonical(calculation, "mixed") != canonical(calculation, "decimal")


# Properties: shuffling what commutes and renaming letters changes nothing.

LEAVES = (
    st.builds(t.Int, st.integers(1, 30))
    | st.builds(t.Sym, st.sampled_from("abxyz"))
    | st.builds(t.Mixed, st.integers(1, 5), st.integers(1, 5), st.integers(6, 9))
    | st.builds(t.Dec, st.just("0"), st.sampled_from(["5", "25", "125"]))
)


def _compound(inner):
    bracketed = inner.map(lambda n: t.Bracket(n) if isinstance(n, t.Sum | t.Product | t.Neg) else n)
    signed = st.tuples(st.sampled_from("+-"), bracketed)
    factors = st.tuples(st.sampled_from(["×", "÷"]), bracketed)
    return (
        st.builds(t.Sum, bracketed, st.lists(signed, min_size=1, max_size=3).map(tuple))
        | st.builds(t.Product, bracketed, st.lists(factors, min_size=1, max_size=3).map(tuple))
        | st.builds(t.Frac, inner, inner)
        | st.builds(t.Power, bracketed, st.builds(t.Int, st.integers(2, 4)))
        | st.builds(t.Root, inner)
    )


TREES = st.recursive(LEAVES, _compound, max_leaves=10)


def shuffled(node, rng):
    """Return `node` with what commutes in another order, all the way down."""
    match node:
        case t.Sum(first, rest):
            terms = [("+", first), *rest]
            rng.shuffle(terms)
            lead = next(n for n, (sign, _) in enumerate(terms) if sign == "+")
            terms.insert(0, terms.pop(lead))
            moved = [(sign, shuffled(term, rng)) for sign, term in terms]
            return t.Sum(moved[0][1], tuple(moved[1:]))
        case t.Product(first, rest):
            factors = [("×", first), *rest]
            rng.shuffle(factors)
            lead = next(n for n, (op, _) in enumerate(factors) if op == "×")
            factors.insert(0, factors.pop(lead))
            moved = [(op, shuffled(factor, rng)) for op, factor in factors]
            return t.Product(moved[0][1], tuple(moved[1:]))
        case t.Frac(top, bottom):
            return t.Frac(shuffled(top, rng), shuffled(bottom, rng))
        case t.Bracket(of):
            return t.Bracket(shuffled(of, rng))
        case t.Root(of, index):
            return t.Root(shuffled(of, rng), index)
        case t.Power(base, exponent):
            return t.Power(shuffled(base, rng), exponent)
        case t.Relation(left, ((op, right),)) if op == "=":
            sides = [shuffled(left, rng), shuffled(right, rng)]
            rng.shuffle(sides)
            return t.equals(*sides)
    return node


def renamed(node, names):
    """Return `node` with its letters replaced, all at once."""
    if isinstance(node, t.Sym):
        return t.Sym(names[node.name])
    if isinstance(node, t.Sum | t.Product | t.Relation):
        rest = tuple((op, renamed(part, names)) for op, part in node.rest)
        return type(node)(renamed(node.first, names), rest)
    if isinstance(node, t.Frac):
        return t.Frac(renamed(node.num, names), renamed(node.den, names))
    if isinstance(node, t.Bracket):
        return t.Bracket(renamed(node.of, names))
    if isinstance(node, t.Root):
        return t.Root(renamed(node.of, names), node.index)
    if isinstance(node, t.Power):
        return t.Power(renamed(node.base, names), node.exponent)
    return node


def disguised(nodes, rng):
    """Return nodes shuffled inside and with one renaming of their letters for all."""
    names = dict(zip(string.ascii_lowercase, rng.sample(string.ascii_lowercase, 26), strict=True))
    return [renamed(shuffled(node, rng), names) for node in nodes]


@given(TREES, st.randoms(use_true_random=False))
def test_a_shuffled_renamed_expression_is_a_twin(tree, rng):
    (other,) = disguised([tree], rng)
    assert key(Find(tree)) == key(Find(other))
    assert key(Rewrite(tree, "simplify")) == key(Rewrite(other, "simplify"))


EQUATIONS = st.builds(t.equals, TREES, TREES)


@given(st.lists(EQUATIONS, min_size=1, max_size=3), st.randoms(use_true_random=False))
def test_shuffled_renamed_equations_are_twins(equations, rng):
    others = disguised(equations, rng)
    rng.shuffle(others)
    assert key(Solve(tuple(equations))) == key(Solve(tuple(others)))


@given(
    st.lists(EQUATIONS, min_size=1, max_size=3),
    st.integers(0, 4),
    st.randoms(use_true_random=False),
)
def test_a_disguised_model_is_a_twin(equations, which, rng):
    target = t.Sym("abxyz"[which])
    found, *others = disguised([target, *equations], rng)
    rng.shuffle(others)
    assert key(Find(target, tuple(equations))) == key(Find(found, tuple(others)))


def _with_number(node, at, n):
    """Return `node` with its number at place `at` in reading order made `n`, and the old one."""
    numbers = [part for part in t.walk(node) if isinstance(part, t.Int)]
    old, seen = numbers[at % len(numbers)], -1

    def change(part):
        nonlocal seen
        if isinstance(part, t.Int):
            seen += 1
            return t.Int(n) if seen == at % len(numbers) else part
        if isinstance(part, t.Sum | t.Product):
            first = change(part.first)
            return type(part)(first, tuple((op, change(term)) for op, term in part.rest))
        if isinstance(part, t.Frac):
            top = change(part.num)
            return t.Frac(top, change(part.den))
        if isinstance(part, t.Bracket):
            return t.Bracket(change(part.of))
        if isinstance(part, t.Root):
            return t.Root(change(part.of), part.index)
        if isinstance(part, t.Power):
            base = change(part.base)
            return t.Power(base, change(part.exponent))
        return part

    return change(node), old.n


@given(TREES, st.integers(0, 20), st.integers(1, 30), st.randoms(use_true_random=False))
def test_other_numbers_make_another_question(tree, at, n, rng):
    assume(any(isinstance(part, t.Int) for part in t.walk(tree)))
    other, old = _with_number(tree, at, n)
    assume(old != n)
    (other,) = disguised([other], rng)
    assert key(Find(tree)) != key(Find(other))


def test_many_letters_that_look_alike_are_numbered_quickly_and_alike():
    letters = string.ascii_lowercase[:14]
    total = t.add(*map(t.Sym, letters))
    turned = t.add(*map(t.Sym, letters[::-1]))
    assert key(Find(total)) == key(Find(turned))


@whole
def test_generated_items_that_are_twins_by_their_topic_are_no_worse_by_canon():
    """A canon that ran different questions together would find far fewer than a topic has."""
    for topic in some(topics(), 20):
        for tier, space in topic.spaces.items():
            # By name, so that a new topic leaves the samples of the others as they are.
            rng = random.Random(f"{topic.id}/{tier}")
            items = [topic.item(tier, at) for at in space.sample(min(30, len(space)), rng)]
            words = {(item.ask, item.form) for item in items}
            kinds = {canonical(item.ask, item.form) for item in items}
            assert len(kinds) <= len(words)
            assert len(kinds) >= len(words) * 0.8, (topic.id, tier)


def test_a_node_that_the_canon_does_not_know_is_told_by_its_parts(monkeypatch):
    """Without a word about it here, it is no twin of another, and letters in it are numbered."""

    @dataclass(frozen=True, slots=True)
    class Factorial:
        of: object

    faces = replace(FACES[t.Bracket], parts=Parts(lambda f: (f.of,), lambda f, of: Factorial(*of)))
    monkeypatch.setitem(FACES, Factorial, faces)
    monkeypatch.setitem(BELOW, Factorial, faces.parts.below)
    key = [canonical(Find(Factorial(of))) for of in (t.Sym("x"), t.Sym("y"), t.Int(4), t.Int(5))]
    assert key[0] == key[1]
    assert len(set(key)) == 3
