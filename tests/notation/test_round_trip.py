"""A tree's line reads back to the tree, and its faces agree on what it is worth."""

from fractions import Fraction
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.notation import (
    NotationError,
    line,
    mathml,
    parse,
    parse_together,
    parse_written,
    words,
)
from itembank.notation.linear import constant, linear
from itembank.notation.tree import (
    Blank,
    Bracket,
    Dec,
    Frac,
    Int,
    Juxt,
    Label,
    Listing,
    Mixed,
    Money,
    Neg,
    Percent,
    Power,
    Product,
    Quantity,
    Ratio,
    Relation,
    Root,
    Sum,
    Sym,
    frac,
    symbols,
    walk,
)
from itembank.notation.value import NotExact
from tests.depth import cases
from tests.notation.read_mathml import NoValueError, read
from tests.notation.trees import algebra_trees, trees, values

fractions = st.fractions(-20, 20, max_denominator=12)


@given(trees)
@settings(max_examples=cases(60, 600), deadline=None)
def test_line_reads_back_to_the_same_tree(tree):
    assert parse_written(line(tree)) == tree


@given(trees)
@settings(max_examples=cases(40, 400), deadline=None)
def test_a_person_who_types_the_line_gets_the_tree_or_is_told(tree):
    """A run of letters may be refused, and 14:35 or 5pm be a time; nothing else is changed."""
    text = line(tree)
    try:
        read = parse(text, letters=symbols(tree), times=True)
    except NotationError as error:
        assert "function" in str(error)  # noqa: PT017
        return
    assert read == tree


@given(algebra_trees)
@settings(max_examples=cases(40, 400), deadline=None)
def test_a_line_with_the_letter_p_reads_back_to_the_same_tree(tree):
    assert parse_written(line(tree, pence=False), pence=False) == tree


@given(trees)
@settings(max_examples=cases(40, 400), deadline=None)
def test_spaces_do_not_change_brackets_and_signs(tree):
    text = line(tree)
    if not any(isinstance(node, Label | Mixed | Quantity) for node in walk(tree)):
        assert parse_written(text.replace(" = ", "=").replace(" + ", "+")) == tree


def _tree_value(tree, letters):
    parts = tree.parts if isinstance(tree, Ratio) else (tree,)
    return tuple(constant(linear(part, letters)) for part in parts)


@given(values, st.data())
@settings(max_examples=cases(60, 600), deadline=None)
def test_mathml_says_the_value_of_the_tree(tree, data):
    letters = {name: data.draw(fractions, label=name) for name in sorted(symbols(tree))}
    try:
        expected = _tree_value(tree, letters)
    except NotExact:
        return
    assert _tree_value(parse_written(line(tree)), letters) == expected
    assert read(mathml(tree), letters) == expected


# Random numbers seldom have rational roots, so these are chosen; values worked by hand.
@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("√(9/4)", Fraction(3, 2)),
        ("∛27 + √16", Fraction(7)),
        ("∜16", Fraction(2)),
        ("∛(-8)", Fraction(-2)),
        ("2^(-3)", Fraction(1, 8)),
        ("(2/3)^3", Fraction(8, 27)),
        ("2√(4 × 9)", Fraction(12)),
        ("6 km/h", Fraction(5, 3)),
        ("30 cm^2", Fraction(3, 1000)),
    ],
)
def test_mathml_of_roots_powers_and_units(text, value):
    assert read(mathml(parse(text))) == (value,)


@given(trees)
@settings(max_examples=cases(40, 400), deadline=None)
def test_mathml_is_well_formed_and_uses_a_true_minus(tree):
    text = mathml(tree)
    root = ElementTree.fromstring(text)
    for element in root.iter():
        if element.tag.endswith("}mo"):
            assert element.text
            assert "-" not in element.text


@given(trees)
@settings(max_examples=cases(40, 400), deadline=None)
def test_words_hold_no_signs_that_a_reader_would_stumble_over(tree):
    if any(isinstance(node, Label) for node in walk(tree)):
        return
    said = words(tree)
    assert said == " ".join(said.split())
    assert not set(said) & set("+-−×÷=<>≤≥≠:/()^√∛∜%£€$°□.\u0307")


def test_reader_of_mathml_reads_known_values():
    """The test's own reader is checked on hand-written MathML."""
    head = '<math xmlns="http://www.w3.org/1998/Math/MathML">'
    dot = '<mover accent="true"><mn>6</mn><mo>˙</mo></mover>'
    assert read(f"{head}<mrow><mn>0.1</mn>{dot}</mrow></math>") == (Fraction(1, 6),)
    half = "<mfrac><mn>1</mn><mn>2</mn></mfrac>"
    assert read(f"{head}<mn>2</mn><mo>×</mo>{half}<mo>+</mo><mn>1</mn></math>") == (2,)
    assert read(f"{head}<mn>2</mn><mo>+</mo>{half}<mo>×</mo><mn>4</mn></math>") == (4,)
    with pytest.raises(NoValueError):
        read(f"{head}<msqrt><mn>7</mn></msqrt></math>")


@pytest.mark.parametrize(
    "tree",
    [
        Int(-3),
        Int(10**200),
        Dec("", "5"),
        Dec("5", ""),
        Dec("0", "x"),
        Sym("xy"),
        Sym("1"),
        Sym("é"),
        Label(""),
        Label('say "x"'),
        Mixed(0, 1, 2),
        Neg(Neg(Int(3))),
        Neg(Sum(Int(1), (("+", Int(2)),))),
        Neg(Product(Int(1), (("×", Int(2)),))),
        Sum(Int(1), ()),
        Sum(Int(1), (("+", Sum(Int(1), (("+", Int(2)),))),)),
        Product(Sum(Int(1), (("+", Int(2)),)), (("×", Int(3)),)),
        Product(Int(1), (("·", Int(3)),)),
        Juxt((Int(3),)),
        Juxt((Int(3), Int(4))),
        Juxt((Sym("x"), Int(4))),
        Juxt((Int(3), Juxt((Sym("x"), Sym("y"))))),
        Juxt((frac(3, 4), Bracket(frac(5, 6)))),
        Juxt((frac(3, 4), Int(5), Sym("x"))),
        Juxt((Sym("x"), frac(3, 4))),
        Juxt((Int(5), Sym("k"), Sym("g"))),
        Juxt((Int(5), Sym("p"))),
        Juxt((Int(5), Sym("o"), Sym("f"))),
        Power(Frac(Int(1), Int(2)), Int(2)),
        Power(Root(Int(7)), Int(2)),
        Root(Int(7), 5),
        Quantity(Int(5), "furlong"),
        Quantity(Neg(Int(5)), "kg"),
        Money(Int(5), "x"),
        Money(Sym("x"), "p"),
        Percent(Neg(Int(5))),
        Ratio((Int(1),)),
        Ratio((Ratio((Int(1), Int(2))), Int(2))),
        Bracket(Ratio((Int(1), Int(2)))),
        Relation(Relation(Int(1), (("=", Int(2)),)), (("=", Int(2)),)),
        Listing((Int(1), Listing((Int(1), Int(2))))),
        Frac(Label("Pack B"), Int(2)),
        Sum(Blank(), (("±", Int(2)),)),
    ],
    ids=repr,
)
def test_trees_that_paper_could_not_show_are_refused(tree):
    with pytest.raises(NotationError, match=r"\w \w"):
        line(tree)


def test_deep_trees_are_refused_without_a_crash():
    tree = Int(1)
    for _ in range(41):
        tree = Bracket(tree)
    with pytest.raises(NotationError, match="40 deep"):
        line(tree)
    for _ in range(5000):
        tree = Bracket(tree)
    with pytest.raises(NotationError, match="too deeply"):
        line(tree)


def test_p_is_a_letter_in_every_line_once_it_is_one_in_any():
    question, key = parse_together(["100 - 16 = 4p - 10p - p", "p = -12"])
    assert symbols(question) == symbols(key) == {"p"}
    assert line(question, pence=False) == "100 - 16 = 4p - 10p - p"
    (money,) = parse_together(["4p + 12p"])
    assert not symbols(money)
    with pytest.raises(NotationError):
        line(money, pence=False)


def test_alternatives_are_joined_by_or():
    node = parse("x=-4 or x = 7")
    assert line(node) == "x = -4 or x = 7"
    assert words(node) == "x equals negative 4, or x equals 7"
    assert ">\u00a0or\u00a0<" in mathml(node)
    assert line(parse("x = 1, y = 2 or x = 2, y = 1")) == "x = 1, y = 2 or x = 2, y = 1"
    for text in ("or x = 7", "x = 7 or", '"Pack B" or 3'):
        with pytest.raises(NotationError):
            parse(text)
