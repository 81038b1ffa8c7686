"""Both roads accept true keys, refuse false ones, and read only what is printed."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.errors import CheckFailed
from itembank.items.forms.form_rules import number_node, simplest_node
from itembank.items.item import Ask, Choose, Compare, Find, Inequality, Item, Order, Run, Tier
from itembank.notation.tree import (
    Blank,
    Frac,
    Int,
    Juxt,
    Label,
    Listing,
    Money,
    Node,
    Product,
    Quantity,
    Sum,
    Sym,
    add,
    equals,
    frac,
    juxt,
    num,
    ratio,
    relate,
    sub,
)
from itembank.notation.value import NotExact
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.claim.finding import WrongKey
from itembank.proof.exact.elimination import answer
from itembank.proof.exact.ranges import solve_inequality

ROADS = [prove_fast, prove_symbolic]
roads = pytest.mark.parametrize("prove", ROADS)


def item(ask: Ask, key: Node, form: str, *prompt: Run, constants: tuple[int, ...] = ()) -> Item:
    return Item(
        "made.up/core/7", "made.up", Tier.CORE, prompt, ask, key, form, (), (), (), 1, constants
    )


x, a, b, c = Sym("x"), Sym("a"), Sym("b"), Sym("c")
THIRDS = add(frac(1, 2), frac(1, 3))
EQUATION = equals(sub(juxt(num(3), x), num(4)), num(11))
FORTY, THREE_TO_FIVE = Money(Int(40)), ratio(Int(3), Int(5))
SHARE = Find(Listing((a, b)), (equals(add(a, b), FORTY), equals(ratio(a, b), THREE_TO_FIVE)))
BELOW = relate(juxt(num(-2), x), "<", Int(6))
TWO_THREE, FOUR_FIVE = ratio(Int(2), Int(3)), ratio(Int(4), Int(5))
THINGS = (frac(2, 3), frac(1, 2), frac(3, 4))
BOX = equals(frac(3, 4), Frac(Int(15), Blank()))
SACK, BAG = Money(Int(6)), Money(Int(5))
SACK_KG, BAG_KG = Quantity(Int(4), "kg"), Quantity(Int(3), "kg")
PRICES = Choose(
    (
        ("Sack", Product(SACK, (("÷", SACK_KG),))),
        ("Bag", Product(BAG, (("÷", BAG_KG),))),
    ),
    "least",
)

CASES: dict[str, tuple[Item, Node]] = {
    "sum": (item(Find(THIRDS), frac(5, 6), "simplest", THIRDS), frac(2, 5)),
    "equation": (
        item(Find(x, (EQUATION,)), equals(x, num(5)), "solution", EQUATION),
        equals(x, num(-5)),
    ),
    "share": (
        item(SHARE, Listing((Money(Int(15)), Money(Int(25)))), "amounts", FORTY, THREE_TO_FIVE),
        Listing((Money(Int(25)), Money(Int(15)))),
    ),
    "fraction of whole": (
        item(
            Find(Frac(a, add(a, b)), (equals(ratio(a, b), THREE_TO_FIVE),)),
            frac(3, 8),
            "simplest",
            THREE_TO_FIVE,
        ),
        frac(3, 5),
    ),
    "combined ratio": (
        item(
            Find(
                ratio(a, b, c),
                (equals(ratio(a, b), TWO_THREE), equals(ratio(b, c), FOUR_FIVE)),
            ),
            ratio(Int(8), Int(12), Int(15)),
            "ratio",
            TWO_THREE,
            FOUR_FIVE,
        ),
        ratio(Int(2), Int(7), Int(5)),
    ),
    "empty box": (item(Find(Blank(), (BOX,)), num(20), "integer", BOX), num(16)),
    "inequality": (
        item(Inequality(BELOW), relate(x, ">", num(-3)), "inequality", BELOW),
        relate(x, "<", num(-3)),
    ),
    "order": (
        item(
            Order(THINGS),
            Listing((frac(1, 2), frac(2, 3), frac(3, 4))),
            "list",
            "Put in order, smallest first: ",
            *THINGS,
        ),
        Listing((frac(3, 4), frac(2, 3), frac(1, 2))),
    ),
    "compare": (
        item(
            Compare(frac(2, 3), frac(3, 4)),
            relate(frac(2, 3), "<", frac(3, 4)),
            "sign",
            frac(2, 3),
            frac(3, 4),
        ),
        relate(frac(2, 3), ">", frac(3, 4)),
    ),
    "best value": (
        item(PRICES, Label("Sack"), "name", "Sack: ", SACK_KG, SACK, " Bag: ", BAG_KG, BAG),
        Label("Bag"),
    ),
}


def with_key(of: Item, key: Node) -> Item:
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
        prove(with_key(good, frac(2, 5)))


@roads
def test_a_question_other_than_the_printed_one_is_refused(prove):
    asked = item(Find(THIRDS), frac(5, 6), "simplest", add(frac(1, 2), frac(1, 4)))
    with pytest.raises(CheckFailed, match="does not print"):
        prove(asked)


@roads
def test_a_model_may_use_only_printed_numbers_and_declared_constants(prove):
    fifty = Quantity(Int(50), "°")
    model = Find(x, (equals(add(x, fifty), Quantity(Int(180), "°")),))
    key = equals(x, Quantity(Int(130), "°"))
    prove(item(model, key, "solution", "Angles of ", fifty, constants=(180,)))
    with pytest.raises(CheckFailed, match="180"):
        prove(item(model, key, "solution", "Angles of ", fifty))


def test_a_key_in_the_wrong_form_is_refused():
    with pytest.raises(CheckFailed, match="lowest terms"):
        prove_fast(item(Find(THIRDS), frac(10, 12), "simplest", THIRDS))


def test_an_unsettled_or_contradictory_question_is_refused():
    with pytest.raises(NotExact):
        answer(a, (equals(ratio(a, b), TWO_THREE),))
    with pytest.raises(NotExact):
        answer(x, (equals(x, Int(1)), equals(juxt(num(2), x), Int(3))))
    with pytest.raises(NotExact):
        answer(x, (equals(juxt(num(2), x), sub(juxt(num(2), x), Int(1))),))


fractions = st.fractions(min_value=-20, max_value=20, max_denominator=30)
nonzero = fractions.filter(bool)


def linear_side(p: Fraction, q: Fraction) -> Node:
    letter = Juxt((Frac(Int(abs(p.numerator)), Int(p.denominator)), x))
    return Sum(number_node(q), (("+" if p > 0 else "-", letter),))


@settings(max_examples=60, deadline=None)
@given(nonzero, fractions, nonzero, fractions)
def test_both_roads_solve_linear_equations_as_flint_does(p, q, r, s):
    flint = pytest.importorskip("flint")
    if p == r:
        return
    exact = flint.fmpq(s.numerator, s.denominator) - flint.fmpq(q.numerator, q.denominator)
    exact /= flint.fmpq(p.numerator, p.denominator) - flint.fmpq(r.numerator, r.denominator)
    root = Fraction(int(exact.p), int(exact.q))
    equation = equals(linear_side(p, q), linear_side(r, s))
    for prove in ROADS:
        prove(item(Find(x, (equation,)), equals(x, number_node(root)), "solution", equation))
        with pytest.raises(WrongKey):
            prove(
                item(Find(x, (equation,)), equals(x, number_node(root + 1)), "solution", equation)
            )


@given(nonzero, fractions, fractions, st.sampled_from("<>≤≥"))
def test_inequalities_agree_with_trying_values(p, q, bound, sign):
    letter, found, edge = solve_inequality(relate(linear_side(p, q), sign, number_node(bound)))
    assert letter == "x"
    holds = {"<": Fraction.__lt__, ">": Fraction.__gt__, "≤": Fraction.__le__, "≥": Fraction.__ge__}
    for at in (edge - 1, edge, edge + Fraction(1, 7)):
        assert holds[sign](p * at + q, bound) == holds[found](at, edge)


@given(fractions, nonzero)
def test_quotients_agree_on_both_roads(p, q):
    printed = Product(simplest_node(p), (("÷", simplest_node(q)),))
    for prove in ROADS:
        prove(item(Find(printed), simplest_node(p / q), "simplest", printed))


EIGHT_KG = Quantity(Int(8), "kg")
PART = Product(frac(3, 4), (("of", EIGHT_KG),))


@roads
@pytest.mark.parametrize(
    ("ask", "key", "form", "printed"),
    [
        (Find(x, (EQUATION,)), equals(Sym("y"), num(5)), "solution", EQUATION),
        (Find(PART), Quantity(Int(6), "l"), "quantity", PART),
        (Find(PART), num(6), "amount", PART),
        (Find(THIRDS), frac(5, 6), "simplest", PART),
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


NEVER = equals(juxt(num(2), x), sub(juxt(num(2), x), Int(1)))
ALWAYS = equals(juxt(num(2), x), add(x, x))
SUM_ONLY = equals(add(a, b), FORTY)


@roads
@pytest.mark.parametrize(
    ("ask", "printed"),
    [
        (Find(x, (NEVER,)), NEVER),
        (Find(x, (ALWAYS,)), ALWAYS),
        (Find(a, (SUM_ONLY,)), SUM_ONLY),
        (Find(ratio(a, b), (SUM_ONLY,)), SUM_ONLY),
    ],
    ids=["no solution", "every number", "two unknowns", "a ratio not settled"],
)
def test_questions_without_one_answer_are_refused(prove, ask, printed):
    key = ratio(Int(1), Int(1)) if isinstance(ask.target, type(THREE_TO_FIVE)) else num(5)
    with pytest.raises(CheckFailed):
        prove(item(ask, key, "amount", printed))
