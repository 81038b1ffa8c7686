"""A key that repeats the question, or is half finished, is never proved; a finished one is."""

from __future__ import annotations

from dataclasses import replace

import pytest
from flint import fmpz_mpoly, fmpz_mpoly_ctx
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import CheckFailed
from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Compare, Item, Pick, Rewrite, Solve
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.proof.exact.exact_road import prove_fast
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from tests.proof.asked import asked

REPEATS = (
    ("find", "27/3", "27/3", "value"),
    ("find", "18/24", "9/12", "lowest-terms"),
    ("find", "3/4", "3/4", "lowest-terms"),
    ("find", "3 ÷ 4", "3/4", "value"),
    ("find", "0.75", "0.75", "decimal"),
    ("find", "0.75", "0.750", "value"),
    ("find", "-(3/4)", "(-3)/4", "value"),
    ("find", "2 : 3", "2 : 3", "ratio"),
    ("find", "1 : 4", "1 : 4", "one-to-n"),
    ("find", "2√3", "2√3", "surd"),
    ("find", "2 + √3", "√3 + 2", "surd"),
    ("find", "2 × 3", "3 × 2", "prime-factors"),
    ("find", "7", "7", "prime-factors"),
    ("find", "3.2 × 10^4", "3.2 × 10^4", "standard-form"),
    ("find", "£4.50", "£4.50", "value"),
    ("find", "40%", "40%", "percentage"),
    ("find", "5^6", "5^6", "power"),
    ("find", "x; x = 3/4", "3/4", "value"),
    ("find", "x; x = 3/4", "x = 3/4", "roots"),
    ("find", "x; 5 = x", "5", "value"),
    ("expand", "x + 2", "2 + x", "expanded"),
    ("factorise", "6(x + 1)", "6(1 + x)", "factorised"),
    ("factorise", "(x + 2)(x + 3)", "(3 + x)(x + 2)", "factorised"),
    ("simplify", "3x + 2y", "2y + 3x", "simplified"),
    ("simplify", "x/2", "x/2", "simplified"),
    ("simplify", "-x + y", "y - x", "simplified"),
    ("solve", "x = 3/4", "x = 3/4", "roots"),
    ("solve", "x = 3/4", "3/4", "value"),
    ("solve", "3 = x", "x = 3", "roots"),
    ("solve", "x = 1; y = 2", "y = 2, x = 1", "roots"),
    ("inequality", "x > 4", "4 < x", "inequality"),
    ("inequality", "1 < x ≤ 3", "3 ≥ x > 1", "inequality"),
    ("subject", "x = y + 2; x", "x = 2 + y", "subject"),
    ("order", "0.3, 0.4, 0.5", "0.3, 0.4, 0.5", "list"),
    ("order", "0.3, 0.40, 0.5", "0.3, 0.4, 0.5", "list"),
    ("places 1", "3.4", "3.4", "rounded"),
    ("nearest 10", "70", "70", "rounded"),
)
"""Right in value: all that is wrong is that nothing was done, or that nothing was to do."""


@pytest.mark.parametrize(("kind", "question", "key", "form"), REPEATS)
def test_a_key_that_says_the_question_again_is_not_proved(
    kind: str, question: str, key: str, form: str
) -> None:
    outcome = judge(asked(kind, question, key, form))
    assert outcome.state is not State.PROVED
    fault = form_fault(form, parse(key))
    if outcome.state is State.NEEDS_PERSON:
        assert not fault
        assert outcome.says.startswith("The key only repeats the question")
    else:
        assert fault in outcome.says


DONE = (
    ("find", "27/3", "9", "value"),
    ("find", "3 ÷ 4", "3/4", "lowest-terms"),
    ("find", "-(-3)", "3", "value"),
    ("find", "3 × 1/4", "3/4", "value"),
    ("find", "2 + 3/4", "2 3/4", "mixed"),
    ("find", "75/100", "75%", "percentage"),
    ("find", "-5", "(-5)/1", "fraction"),
    ("find", "-5", "-5/1", "lowest-terms"),
    ("find", "3 × √2", "3√2", "surd"),
    ("find", "10/(√3 + 1)", "5(√3 - 1)", "surd"),
    ("find", "5/(√3 + 1)", "5(√3 - 1)/2", "surd"),
    ("find", "5^3", "5 × 5 × 5", "product"),
    ("find", "(5^3)^2", "5^6", "power"),
    ("find", "2^3 × 2^4", "2^7", "power"),
    ("simplify", "5 × y", "5y", "simplified"),
    ("simplify", "x ÷ 2", "x/2", "simplified"),
    ("simplify", "2x + (-3y)", "2x - 3y", "simplified"),
    ("simplify", "x^5 ÷ x^2", "x^3", "power"),
    ("simplify", "1/x + 1/y", "(x + y)/(xy)", "single-fraction"),
    ("simplify", "x^2/x^5", "1/x^3", "positive-indices"),
    ("expand", "3x + (2y - 1)", "3x + 2y - 1", "expanded"),
    ("expand", "-(x + 2)", "-x - 2", "expanded"),
    ("find", "x; 4x = -3", "x = -(3/4)", "roots"),
    ("find", "x; 4x = -3", "(-3)/4", "roots"),
    ("solve", "2x = 6", "3 = x", "roots"),
    ("solve", "2x = 6", "x = (3)", "solution"),
    ("solve", "x^2 - 5x + 6 = 0", "2, 3", "roots"),
    ("solve", "x^2 - 5x + 6 = 0", "x = 2, x = 3", "roots"),
    ("inequality", "2x > 8", "4 < x", "inequality"),
    ("subject", "y = 3x + 2; x", "(y - 2)/3 = x", "subject"),
    ("order", "0.5, 0.3, 0.4", "0.3, 0.4, 0.5", "list"),
    ("places 1", "3.40", "3.4", "rounded"),
)


@pytest.mark.parametrize(("kind", "question", "key", "form"), DONE)
def test_a_finished_key_is_proved_however_it_is_spelled(
    kind: str, question: str, key: str, form: str
) -> None:
    outcome = judge(asked(kind, question, key, form))
    assert (outcome.state, outcome.says) == (State.PROVED, "")


def said(words: str, item: Item) -> Item:
    return replace(item, prompt=(words, *item.prompt[1:]))


WORDS = (
    ("Write as a single fraction: ", "simplify", "1/x + 2", "1/x + 2/1", "simplified"),
    ("Write as a single fraction: ", "simplify", "(x + 1)/x", "1/x + 1", "simplified"),
    ("Simplify, with positive indices: ", "simplify", "x^2/x^5", "x^(-3)", "simplified"),
    ("Give your answer in index form: ", "find", "12", "2 × 2 × 3", "prime-factors"),
    ("As a product of powers of its prime factors: ", "find", "12", "2 × 2 × 3", "prime-factors"),
    ("Rationalise the denominator of ", "find", "6/√12", "6/(2√3)", "value"),
    ("Write as a power of 2: ", "find", "8 × 8", "8^2", "power"),
    ("Write as a single power: ", "simplify", "x^2 × x^3", "xx^4", "simplified"),
    ("Give it in its lowest terms: ", "find", "3/8 + 3/8", "6/8", "value"),
    ("Give it in its lowest terms: ", "find", "3/8 + 3/8", "0.75", "value"),
    ("Give it in its simplest form: ", "find", "3/8 + 7/8", "1 2/8", "value"),
)


@pytest.mark.parametrize(("words", "kind", "question", "key", "form"), WORDS)
def test_the_form_that_the_words_ask_for_is_held_against_the_key(
    words: str, kind: str, question: str, key: str, form: str
) -> None:
    outcome = judge(said(words, asked(kind, question, key, form)))
    assert outcome.state is State.DISPROVED


def test_the_words_of_a_form_leave_a_finished_key_alone() -> None:
    for words, kind, question, key, form in (
        ("Write as a single fraction: ", "simplify", "1/x + 2", "(1 + 2x)/x", "simplified"),
        ("Using index notation: ", "find", "12", "2^2 × 3", "prime-factors"),
        ("Write as a power of 2: ", "find", "8 × 8", "2^6", "power"),
        ("Write as a power of 4: ", "find", "8 × 8", "4^3", "power"),
        ("Rationalise the denominator of ", "find", "6/√12", "√3", "value"),
        ("Give it in its lowest terms: ", "find", "3/8 + 3/8", "3/4", "value"),
    ):
        assert judge(said(words, asked(kind, question, key, form))).state is State.PROVED


@pytest.mark.parametrize(
    ("question", "key", "state"),
    [
        ("5 × 5 × 5 × 5", "5^4", State.PROVED),
        ("8 × 4", "2^5", State.PROVED),
        ("5 × 5 × 5 × 5", "625", State.DISPROVED),
        ("5 × 5 × 5 × 5", "25^2", State.DISPROVED),
        ("2 × 2 × 2 × 3 × 3", "2^3 × 9", State.DISPROVED),
    ],
)
def test_index_notation_keeps_the_factors_of_the_question(
    question: str, key: str, state: State
) -> None:
    assert judge(asked("find", question, key, "powers")).state is state


def test_5_to_the_4_written_out_has_only_fives() -> None:
    for key, state in (("5 × 5 × 5 × 5", State.PROVED), ("25 × 25", State.DISPROVED)):
        assert judge(asked("find", "5^4", key, "product")).state is state


@pytest.mark.parametrize(
    ("key", "state"),
    [
        ("3/4 > 2/3", State.PROVED),
        ("2/3 < 3/4", State.PROVED),
        ("3/4 < 2/3", State.DISPROVED),
        ("2/3 > 3/4", State.DISPROVED),
    ],
)
def test_a_comparison_may_be_read_from_either_side(key: str, state: State) -> None:
    left, right = parse("3/4"), parse("2/3")
    item = replace(asked("find", "3/4; 2/3", key, "sign"), ask=Compare(left, right))
    assert judge(item).state is state


def test_a_factorisation_too_long_to_look_into_is_left_to_a_person() -> None:
    outcome = judge(asked("factorise", "2x^13 + 2x + 2", "2(x^13 + x + 1)", "factorised"))
    assert outcome.state is State.NEEDS_PERSON
    assert "too long" in outcome.says


small = st.integers(-5, 5)
linear = st.tuples(small.filter(bool), small.filter(bool))


def bracket(a: int, b: int, letter: str = "x") -> t.Bracket:
    return t.Bracket(t.add(t.juxt(t.num(a), t.Sym(letter)), t.num(b)))


def product_of(pairs: list[tuple[int, int]], letters: list[str]) -> fmpz_mpoly:
    """Multiply out by flint: an engine that neither road uses."""
    context = fmpz_mpoly_ctx.get(("x", "y"))
    gens = dict(zip(("x", "y"), context.gens(), strict=True))
    product = context.constant(1)
    for (a, b), letter in zip(pairs, letters, strict=True):
        product *= a * gens[letter] + b
    return product


def written(product: fmpz_mpoly) -> t.Node:
    terms = []
    for exponents, c in product.to_dict().items():
        powers = [(name, int(n)) for name, n in zip("xy", exponents, strict=True) if n]
        factors = [t.Sym(name) if n == 1 else t.Power(t.Sym(name), t.num(n)) for name, n in powers]
        terms.append(t.juxt(t.num(int(c)), *factors))
    return t.add(*terms)


@given(st.lists(linear, min_size=2, max_size=3))
def test_an_expansion_of_brackets_is_proved_only_when_it_is_multiplied_out(
    pairs: list[tuple[int, int]],
) -> None:
    question = t.Juxt(tuple(bracket(*pair) for pair in pairs))
    key = written(product_of(pairs, ["x"] * len(pairs)))
    for answer, state in ((key, State.PROVED), (question, State.DISPROVED)):
        item = asked("expand", "x", "x", "expanded")
        item = replace(item, ask=Rewrite(question, "expand"), prompt=("Expand ", question))
        assert judge(replace(item, key=answer)).state is state


@given(st.lists(linear, min_size=1, max_size=3), st.sampled_from(["x", "y"]))
def test_a_bracket_splits_exactly_where_flint_finds_factors(
    pairs: list[tuple[int, int]], second: str
) -> None:
    product = product_of(pairs, ["x", *[second] * (len(pairs) - 1)])
    content, factors = product.factor()
    alone = sum(times for _, times in factors) == 1 and abs(int(content)) == 1
    fault = form_fault("factorised", t.Juxt((t.num(7), t.Bracket(written(product)))))
    assert (fault == "") == alone


def test_one_of_several_solutions_is_held_to_the_same_rules() -> None:
    for relation, key, state in (
        ("x^2 = 8", "x = 2√2", State.PROVED),
        ("x^2 = 8", "x = √8", State.DISPROVED),
        ("x^2 = 9", "x = 6/2", State.DISPROVED),
    ):
        item = asked("solve", relation, key, "roots")
        assert isinstance(item.ask, Solve)
        assert judge(replace(item, ask=Pick(item.ask, "positive"))).state is state


def test_a_generated_item_whose_key_repeats_its_question_is_refused() -> None:
    with pytest.raises(CheckFailed, match="only repeats the question"):
        prove_fast(asked("find", "3/4", "3/4", "lowest-terms"))
    prove_fast(asked("find", "6/8", "3/4", "lowest-terms"))
