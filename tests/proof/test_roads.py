"""Both roads accept true keys, refuse false ones, and read only what is printed."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.errors import CheckFailed
from itembank.items.forms.form_rules import number_node, simplest_node
from itembank.items.item import Ask, Choose, Compare, Find, Inequality, Item, Order, Run, Tier
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.claim.finding import WrongKey
from itembank.proof.exact.reckoning.elimination import answer
from itembank.proof.exact.reckoning.ranges import solve_inequality
from tests.depth import cases

ROADS = [prove_fast, prove_symbolic]
roads = pytest.mark.parametrize("prove", ROADS)


def item(ask: Ask, key: t.Node, form: str, *prompt: Run, constants: tuple[int, ...] = ()) -> Item:
    return Item(
        "made.up/core/7", "made.up", Tier.CORE, prompt, ask, key, form, (), (), (), 1, constants
    )


x, a, b, c = t.Sym("x"), t.Sym("a"), t.Sym("b"), t.Sym("c")
THIRDS = t.add(t.frac(1, 2), t.frac(1, 3))
EQUATION = t.equals(t.sub(t.juxt(t.num(3), x), t.num(4)), t.num(11))
FORTY, THREE_TO_FIVE = t.Money(t.Int(40)), t.ratio(t.Int(3), t.Int(5))
SHARE = Find(
    t.Listing((a, b)), (t.equals(t.add(a, b), FORTY), t.equals(t.ratio(a, b), THREE_TO_FIVE))
)
BELOW = t.relate(t.juxt(t.num(-2), x), "<", t.Int(6))
TWO_THREE, FOUR_FIVE = t.ratio(t.Int(2), t.Int(3)), t.ratio(t.Int(4), t.Int(5))
THINGS = (t.frac(2, 3), t.frac(1, 2), t.frac(3, 4))
BOX = t.equals(t.frac(3, 4), t.Frac(t.Int(15), t.Blank()))
SACK, BAG = t.Money(t.Int(6)), t.Money(t.Int(5))
SACK_KG, BAG_KG = t.Quantity(t.Int(4), "kg"), t.Quantity(t.Int(3), "kg")
PRICES = Choose(
    (
        ("Sack", t.Product(SACK, (("÷", SACK_KG),))),
        ("Bag", t.Product(BAG, (("÷", BAG_KG),))),
    ),
    "least",
)

CASES: dict[str, tuple[Item, t.Node]] = {
    "sum": (item(Find(THIRDS), t.frac(5, 6), "simplest", THIRDS), t.frac(2, 5)),
    "equation": (
        item(Find(x, (EQUATION,)), t.equals(x, t.num(5)), "solution", EQUATION),
        t.equals(x, t.num(-5)),
    ),
    "share": (
        item(
            SHARE,
            t.Listing((t.Money(t.Int(15)), t.Money(t.Int(25)))),
            "amounts",
            FORTY,
            THREE_TO_FIVE,
        ),
        t.Listing((t.Money(t.Int(25)), t.Money(t.Int(15)))),
    ),
    "fraction of whole": (
        item(
            Find(t.Frac(a, t.add(a, b)), (t.equals(t.ratio(a, b), THREE_TO_FIVE),)),
            t.frac(3, 8),
            "simplest",
            THREE_TO_FIVE,
        ),
        t.frac(3, 5),
    ),
    "combined ratio": (
        item(
            Find(
                t.ratio(a, b, c),
                (t.equals(t.ratio(a, b), TWO_THREE), t.equals(t.ratio(b, c), FOUR_FIVE)),
            ),
            t.ratio(t.Int(8), t.Int(12), t.Int(15)),
            "ratio",
            TWO_THREE,
            FOUR_FIVE,
        ),
        t.ratio(t.Int(2), t.Int(7), t.Int(5)),
    ),
    "empty box": (item(Find(t.Blank(), (BOX,)), t.num(20), "integer", BOX), t.num(16)),
    "inequality": (
        item(Inequality(BELOW), t.relate(x, ">", t.num(-3)), "inequality", BELOW),
        t.relate(x, "<", t.num(-3)),
    ),
    "order": (
        item(
            Order(THINGS),
            t.Listing((t.frac(1, 2), t.frac(2, 3), t.frac(3, 4))),
            "list",
            "Put in order, smallest first: ",
            *THINGS,
        ),
        t.Listing((t.frac(3, 4), t.frac(2, 3), t.frac(1, 2))),
    ),
    "compare": (
        item(
            Compare(t.frac(2, 3), t.frac(3, 4)),
            t.relate(t.frac(2, 3), "<", t.frac(3, 4)),
            "sign",
            t.frac(2, 3),
            t.frac(3, 4),
        ),
        t.relate(t.frac(2, 3), ">", t.frac(3, 4)),
    ),
    "best value": (
        item(PRICES, t.Label("Sack"), "name", "Sack: ", SACK_KG, SACK, " Bag: ", BAG_KG, BAG),
        t.Label("Bag"),
    ),
}


def with_key(of: Item, key: t.Node) -> Item:
    return item(of.ask, key, of.form, *of.prompt, constants=of.constants)


@roads
@pytest.mark.parametrize("name", CASES)
def test_true_keys_are_proved_and_false_ones_refused(prove, name):
    good, wrong = CASES[name]
    prove(good)
    with pytest.raises(WrongKey, match=r"made\.up/core/7"):
        prove(with_key(good, wrong))


@roads
def test_the_message_names_both_answers(prove):
    good, _ = CASES["sum"]
    with pytest.raises(WrongKey, match=r"5/6.*2/5"):
        prove(with_key(good, t.frac(2, 5)))


@roads
def test_a_question_other_than_the_printed_one_is_refused(prove):
    asked = item(Find(THIRDS), t.frac(5, 6), "simplest", t.add(t.frac(1, 2), t.frac(1, 4)))
    with pytest.raises(CheckFailed, match="does not print"):
        prove(asked)


@roads
def test_a_model_may_use_only_printed_numbers_and_declared_constants(prove):
    fifty = t.Quantity(t.Int(50), "°")
    model = Find(x, (t.equals(t.add(x, fifty), t.Quantity(t.Int(180), "°")),))
    key = t.equals(x, t.Quantity(t.Int(130), "°"))
    prove(item(model, key, "solution", "Angles of ", fifty, constants=(180,)))
    with pytest.raises(CheckFailed, match="180"):
        prove(item(model, key, "solution", "Angles of ", fifty))


def test_a_key_in_the_wrong_form_is_refused():
    with pytest.raises(CheckFailed, match="lowest terms"):
        prove_fast(item(Find(THIRDS), t.frac(10, 12), "simplest", THIRDS))


def test_an_unsettled_or_contradictory_question_is_refused():
    with pytest.raises(NotExact):
        answer(a, (t.equals(t.ratio(a, b), TWO_THREE),))
    with pytest.raises(NotExact):
        answer(x, (t.equals(x, t.Int(1)), t.equals(t.juxt(t.num(2), x), t.Int(3))))
    with pytest.raises(NotExact):
        answer(x, (t.equals(t.juxt(t.num(2), x), t.sub(t.juxt(t.num(2), x), t.Int(1))),))


fractions = st.fractions(min_value=-20, max_value=20, max_denominator=30)
nonzero = fractions.filter(bool)


def linear_side(p: Fraction, q: Fraction) -> t.Node:
    letter = t.Juxt((t.Frac(t.Int(abs(p.numerator)), t.Int(p.denominator)), x))
    return t.Sum(number_node(q), (("+" if p > 0 else "-", letter),))


@settings(max_examples=cases(25, 60), deadline=None)
@given(nonzero, fractions, nonzero, fractions)
def test_both_roads_solve_linear_equations_as_flint_does(p, q, r, s):
    flint = pytest.importorskip("flint")
    if p == r:
        return
    exact = flint.fmpq(s.numerator, s.denominator) - flint.fmpq(q.numerator, q.denominator)
    exact /= flint.fmpq(p.numerator, p.denominator) - flint.fmpq(r.numerator, r.denominator)
    root = Fraction(int(exact.p), int(exact.q))
    equation = t.equals(linear_side(p, q), linear_side(r, s))
    for prove in ROADS:
        prove(item(Find(x, (equation,)), t.equals(x, number_node(root)), "solution", equation))
        with pytest.raises(WrongKey):
            prove(
                item(Find(x, (equation,)), t.equals(x, number_node(root + 1)), "solution", equation)
            )


@given(nonzero, fractions, fractions, st.sampled_from("<>≤≥"))
def test_inequalities_agree_with_trying_values(p, q, bound, sign):
    letter, found, edge = solve_inequality(t.relate(linear_side(p, q), sign, number_node(bound)))
    assert letter == "x"
    holds = {"<": Fraction.__lt__, ">": Fraction.__gt__, "≤": Fraction.__le__, "≥": Fraction.__ge__}
    for at in (edge - 1, edge, edge + Fraction(1, 7)):
        assert holds[sign](p * at + q, bound) == holds[found](at, edge)


@given(fractions, nonzero)
def test_quotients_agree_on_both_roads(p, q):
    printed = t.Product(simplest_node(p), (("÷", simplest_node(q)),))
    for prove in ROADS:
        prove(item(Find(printed), simplest_node(p / q), "simplest", printed))


EIGHT_KG = t.Quantity(t.Int(8), "kg")
PART = t.Product(t.frac(3, 4), (("of", EIGHT_KG),))


@roads
@pytest.mark.parametrize(
    ("ask", "key", "form", "printed"),
    [
        (Find(x, (EQUATION,)), t.equals(t.Sym("y"), t.num(5)), "solution", EQUATION),
        (Find(PART), t.Quantity(t.Int(6), "l"), "quantity", PART),
        (Find(PART), t.num(6), "amount", PART),
        (Find(THIRDS), t.frac(5, 6), "simplest", PART),
    ],
    ids=["another letter", "another unit", "no unit", "another question"],
)
def test_the_right_number_of_the_wrong_thing_is_refused(prove, ask, key, form, printed):
    with pytest.raises(WrongKey):
        prove(item(ask, key, form, printed))


@roads
def test_a_list_needs_the_words_that_fix_its_order(prove):
    good, _ = CASES["order"]
    prove(good)
    with pytest.raises(WrongKey, match="smallest first"):
        prove(item(good.ask, good.key, good.form, "Put in order: ", *THINGS))


NEVER = t.equals(t.juxt(t.num(2), x), t.sub(t.juxt(t.num(2), x), t.Int(1)))
ALWAYS = t.equals(t.juxt(t.num(2), x), t.add(x, x))
SUM_ONLY = t.equals(t.add(a, b), FORTY)


@roads
@pytest.mark.parametrize(
    ("ask", "printed"),
    [
        (Find(x, (NEVER,)), NEVER),
        (Find(x, (ALWAYS,)), ALWAYS),
        (Find(a, (SUM_ONLY,)), SUM_ONLY),
        (Find(t.ratio(a, b), (SUM_ONLY,)), SUM_ONLY),
    ],
    ids=["no solution", "every number", "two unknowns", "a ratio not settled"],
)
def test_questions_without_one_answer_are_refused(prove, ask, printed):
    key = t.ratio(t.Int(1), t.Int(1)) if isinstance(ask.target, type(THREE_TO_FIVE)) else t.num(5)
    with pytest.raises(CheckFailed):
        prove(item(ask, key, "amount", printed))
