"""What people type is read as meant, or refused in one plain sentence."""

import subprocess
import sys
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.notation import ParseError, line, parse, parse_written
from itembank.notation.tree import (
    Blank,
    Bracket,
    Frac,
    Int,
    Juxt,
    Label,
    Mixed,
    Money,
    Neg,
    Power,
    Quantity,
    Sym,
    add,
    equals,
    frac,
    juxt,
    num,
    part_of,
    ratio,
    sub,
    times,
)
from itembank.notation.value import exact
from tests.depth import cases
from tests.notation.trees import trees

X, Y, A = Sym("x"), Sym("y"), Sym("a")


# Values worked by hand.
@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("(−6+6)/(8+4)", Fraction(0)),
        ("−5÷1/2", Fraction(-10)),
        ("−8(17/4)", Fraction(-34)),
        ("(-14/15)(9/20)", Fraction(-21, 50)),
        ("13 1/2÷9", Fraction(3, 2)),
        ("(8(9-2)−4(14-9))/(7(8-3)−3(16-9))", Fraction(18, 7)),
        ("25/36*6 3/10", Fraction(35, 8)),
        ("10÷0.1+(1.8)4-(0.3)^2", Fraction(10711, 100)),
        ("3/4*9/10", Fraction(27, 40)),
        ("-2^2", Fraction(-4)),
        ("(-2)^2", Fraction(4)),
        ("5--3", Fraction(8)),
        ("-2 × 3", Fraction(-6)),
        ("12 ÷ 3 × 2", Fraction(8)),
        ("9 - 4 + 1", Fraction(6)),
        ("2 + 3 × 4", Fraction(14)),
        ("1½", Fraction(3, 2)),
        ("½(6)", Fraction(3)),
        ("2²³", Fraction(2**23)),
        ("2⁻¹", Fraction(1, 2)),
        ("12⅘", Fraction(64, 5)),
        ("٣/٤", Fraction(3, 4)),
        ("３／４", Fraction(3, 4)),
        ("sqrt(16) + √9", Fraction(7)),
        ("∛27", Fraction(3)),
        ("0.1˙6˙", Fraction(16, 99)),
        (".5", Fraction(1, 2)),
        ("40% of 60", Fraction(24)),
    ],
)
def test_value_of_what_is_typed(text, value):
    assert exact(parse(text)) == value


@pytest.mark.parametrize(
    ("text", "tree"),
    [
        (
            "(5/4)a+15=(3/4)a-5",
            equals(add(juxt(frac(5, 4), A), num(15)), sub(juxt(frac(3, 4), A), num(5))),
        ),
        (
            "11-(1/5)a=(4/5)a+4",
            equals(sub(num(11), juxt(frac(1, 5), A)), add(juxt(frac(4, 5), A), num(4))),
        ),
        ("w/(−2)=99", equals(Frac(Sym("w"), Neg(Int(2))), num(99))),
        ("-(5/8)w=40", equals(Neg(juxt(frac(5, 8), Sym("w"))), num(40))),
        (
            "((1/8)x-(1/9)y)^2",
            Power(Bracket(sub(juxt(frac(1, 8), X), juxt(frac(1, 9), Y))), Int(2)),
        ),
        ("xy", juxt(X, Y)),
        ("5ab - 1", sub(juxt(num(5), A, Sym("b")), num(1))),
        ("(2y-9)y", juxt(Bracket(sub(juxt(num(2), Y), num(9))), Y)),
        ("a : b = 3 : 5", equals(ratio(A, Sym("b")), ratio(num(3), num(5)))),
        ("1 : n", ratio(num(1), Sym("n"))),
        ("1/2:3/4", ratio(frac(1, 2), frac(3, 4))),
        ("3x/4", Frac(juxt(num(3), X), Int(4))),
        ("-y/12", Neg(Frac(Y, Int(12)))),
        ("(-3/8)/(-y/12)", Frac(frac(-3, 8), Neg(Frac(Y, Int(12))))),
        ("w/-2", Frac(Sym("w"), Neg(Int(2)))),
        ("-x²", Neg(Power(X, Int(2)))),
        ("½x", juxt(frac(1, 2), X)),
        ("1½x", juxt(Mixed(1, 1, 2), X)),
        ("((3/4))x", juxt(Bracket(frac(3, 4)), X)),
        ("(3/4)(5/6)", Juxt((Bracket(frac(3, 4)), Bracket(frac(5, 6))))),
        ("-2*3", times(Neg(Int(2)), Int(3))),
        ("5 m", Quantity(Int(5), "m")),
        ("5m", juxt(num(5), Sym("m"))),
        ("5kg", Quantity(Int(5), "kg")),
        ("½kg", Quantity(frac(1, 2), "kg")),
        ("30 cm²", Quantity(Int(30), "cm^2")),
        ("12 km/h", Quantity(Int(12), "km/h")),
        ("3/4 of 60 m", part_of(frac(3, 4), Quantity(Int(60), "m"))),
        ("45p", Money(Int(45), "p")),
        ("3pq", juxt(num(3), Sym("p"), Sym("q"))),
        ("x<=5", parse("x ≤ 5")),
        ("x!=5", parse("x ≠ 5")),
        ("_ + ? = ___", equals(add(Blank(), Blank()), Blank())),
        ("“Pack  B”", Label("Pack  B")),
        ("2 · 3", times(num(2), num(3))),
        ("3·10^4", times(num(3), Power(num(10), num(4)))),
        ("  3 /  4 ", frac(3, 4)),
        ("𝑥", X),
    ],
)
def test_tree_of_what_is_typed(text, tree):
    assert parse(text) == tree


@pytest.mark.parametrize(
    "text",
    ["0.10d+0.25(d+7)=5.25", "4(2.5v-0.6)=7.6", "(10y-2)/3+3=(10y+1)/9", "40 cm : 1.2 m"],
)
def test_line_keeps_all_but_spaces(text):
    assert line(parse(text)).replace(" ", "") == text.replace(" ", "")


@pytest.mark.parametrize(
    ("text", "position", "advice"),
    [
        ("", 1, "nothing to read"),
        ("   ", 1, "nothing to read"),
        ("3/4x", 3, r"write \(3/4\)x or 3/\(4x\)"),
        ("1/2(x + 1)", 3, r"\(1/2\)\(x \+ 1\) or 1/\(2\(x \+ 1\)\)"),
        ("a/b/c", 4, "two ways"),
        ("2^3^2", 4, "two ways"),
        # Print with a raised decimal point, and × written as a dot: 1.7 or 7.
        ("1·7", 1, "write 1.7 or 1 × 7"),
        ("x = 12⋅50", 5, "write 12.50 or 12 × 50"),
        ("x 3", 3, "number first"),
        ("3 4", 3, "sign between"),
        ("(3", 3, "close it"),
        ("3)", 2, "never opened"),
        ("3+", 3, "too early"),
        ("+3", 1, "begin with"),
        ("--3", 2, r"-\(-3\)"),
        ("6 3/10x", 7, "needs brackets"),
        ("√7^2", 3, r"\(√7\)"),
        ("2 1/2p", 1, "pence"),
        ("0 1/2", 1, "part that is 0"),
        ("3 + #", 5, "#"),
        ("½ + ½ + #", 9, "#"),
        ('3 + "Pack B"', 5, "stands alone"),
        ('x = "Pack B', 5, "quotation mark at column 5 is not closed"),
        ("3/4/", 5, "too early"),
        ("1" * 2001, 2001, "2,000 characters"),
        ("1" * 201, 1, "200 digits"),
        ("(" * 41 + "1" + ")" * 41, 41, "40 deep"),
    ],
)
def test_refusals_say_where_and_what_to_do(text, position, advice):
    with pytest.raises(ParseError, match=advice) as refused:
        parse(text)
    assert refused.value.position == position
    assert "\n" not in str(refused.value)


def _read_or_refuse(text):
    """Check that `text` either reads to a tree that has a line, or is refused at a place in it."""
    refused = None
    try:
        tree = parse(text)
    except ParseError as error:
        refused = error
    if refused is None:
        assert parse_written(line(tree)) == tree
    else:
        assert 1 <= refused.position <= len(text) + 1
        assert str(refused)


@given(st.text() | st.text("0123456789xypmkgof.,:/^()+-*×÷=<>!%£√□?_½²° \"'\u0307"))
@settings(max_examples=cases(100, 1200), deadline=None)
def test_any_text_is_read_or_refused(text):
    _read_or_refuse(text)


@given(trees, st.data())
@settings(max_examples=cases(50, 600), deadline=None)
def test_damaged_lines_are_read_or_refused(tree, data):
    text = line(tree)
    at = data.draw(st.integers(0, len(text)))
    put = data.draw(st.text("0123456789xpkg.,:/^()+-=%£√ \u0307", max_size=2))
    drop = data.draw(st.integers(0, 2))
    _read_or_refuse(text[:at] + put + text[at + drop :])


def test_importing_the_package_loads_no_heavy_library():
    code = "import sys, itembank.notation\nprint({'lark', 'sympy', 'reportlab'} & set(sys.modules))"
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert shown.stdout.strip() == "set()"
