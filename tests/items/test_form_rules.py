"""Each form lets in what has it, and says what is missing from what has not."""

from __future__ import annotations

from math import gcd

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from itembank.items.forms.form_rules import FORMS, form_fault, form_words
from itembank.items.forms.polynomials import splits
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.parse import parse

FITS = {
    "value": "7; -3; 1.7̇; 6/8; 1 3/4; 40%; 2.5%; £4.50; 45p; 4.5 kg; 3√2; (3√2)/4; 2 + √3; "
    "3.2 × 10^4; -3/4; £2 1/2; 4√3 cm; 1/2 kg",
    "expression": "9/(2y); "
    "(6 - s)/11; (-4x)/5; (3y + 4)/6; -x/y; (x - 8)/19; 3(x + 1); x; 12; (3/4)x; "
    "x^2 + 3x + 2; 2x + 3y; x/2; 3x/4 + y; (x + 1)(x - 2); 5xy^2; 2^n; £3x; -5; 1/2; "
    "(x + 3)/(x - 2); x√2; (1/2)x^2; (F - 32)/1.8; y/1.8; x/2 + y/3; "
    "2(x + 1) + 3(x + 2); √x + √y; 2^n + 3^n",
    "simplified": "9/(2y); (6 - s)/11; (-4x)/5; (3y + 4)/6; -x/y; (x - 8)/19; 5x + 10; 5(x + 2); "
    "1/(x - 1) + 1; 3xy; x^5; (x + 1)/(x + 2); 12",
    "expanded": "x^2 + 5x + 6; 6x - 15; -2x^2 + 3xy; x^3 - 1; 12; (x + 1)/2",
    "factorised": "3(x + 2); (x + 1)(x - 4); (x + 3)^2; x^2(y - 1); 2x(3x + 1); -(x + 2)(x - 1); "
    "(2a + b)(2a - b); 2(x^2 + 4); x(x^2 + 1); 3(x + 1)^2; (x + 3)(x + 3); "
    "(x^2 - 2)(x + 1); 2(x^3 - 2); x(x^4 + 1); 3(xy + 1); 2(x^2 + y^2); 0.5(x + 2); "
    "a(bc + d); (2x + 3y)(x - y); 2x(2y + 3x); 5(x^2 + xy + 1); (x - y)(x^2 + xy + y^2); "
    "6a^2b",
    "surd": "2(1 + √3); 5(√3 - 1)/2; (5√2)/2; -3(2 - √5); 3 × √2; √2; 3√5; 2 + 3√5; (3√2)/4; "
    "√3/3; 7; 3/4; -2√7; 5 - √2; (1 + √5)/2; ∛2; √2 + √3",
    "standard-form": "3.2 × 10^4; 4 × 10^-3; -1.25 × 10^12; 1 × 10^0; 9.99 × 10^2",
    "prime-factors": "2^2 × 3; 2 × 2 × 3; 7; 2 × 3 × 5; 3^4",
    "roots": "x = -4 or x = 7; x = 2, y = 5; x = 1 + √2 or x = 1 - √2; x = 3; x = 1/2 or x = -2; "
    "x = 1, y = 2 or x = 3, y = 4; x = 0.62 or x = -1.62",
    "subject": "x = (y - 2)/3; r = √(A/π); b = (2A)/h; x = y; u = v - at; x = √y",
    "nth-term": "3n + 2; n^2; 7 - 2n; n(n + 1)/2; 5; (1/2)n + 3; n/2; 2n^2 - 1; 2^n",
    "lowest-terms": "3/4; -3/4; (-3)/4; -(3/4); 7/3",
    "fraction": "6/8; (-6)/8; 5/1; -(5/1)",
    "simplest": "3; 2/3; 2 1/3; -(2/3); (-2)/3",
    "percentage": "12.5%; 40%; 66 2/3%; -3%",
    "money": "£3; £4.50; 45p; -£3.20",
    "quantity": "3 kg; 2.5 m; -4 cm",
    "one-to-n": "1 : 3; 1 : 2.5; 1 : 7/2; 1 : 3 1/2",
    "n-to-one": "3 : 1; 2.5 : 1; 7/2 : 1",
    "solution": "x = 3; x = (3); x = -(3/4); x = (-3)/4; 3 = x; x = £4.50",
    "inequality": "x > 4; 4 < x; x ≥ (4); -2 < x ≤ 1/2; x < -1 or x > 1",
    "power": "5^6; x^-2; (-2)^3; (2/3)^4; -2^4; x^(1/2); 1.5^3; (x^7)",
    "powers": "2^3 × 3^2; a^2b; 5^4; 2^3 × 7; x^2y^3; (-2)^3 × 5",
    "prime-powers": "2^2 × 3; 3^4; 7; 2 × 3 × 5",
    "product": "5 × 5 × 5; x × x × y; xxy; (-2) × (-2); 2/3 × 2/3; 0.5 × 0.5",
    "single-fraction": "(x + y)/(xy); 5/(6x); -3/x; x + 1; (2x + 3)/((x + 1)(x + 2))",
    "positive-indices": "3/x^2; x^5; 1/(2y); 2a^2/b",
    "rounded": "2.50; 3; -1.4; £3.20; 4.6 kg; 12.5%; 3.20 × 10^4",
}
LACKS = {
    "value": "3 + 4; 2 × 3; x; √49; 2^5; 3 : 4; x = 3; 4, 5; 7/0; 1/2 + 1/3; 2√9; 2√3 × √5; 27/3; "
    "-6/3; (-6)/(-3); 5/1; 0/5; -(-3); 1 5/4; £45/10; 8/2 kg; √16; 4/2 + √3; 3 × 4; "
    "(3)(4); 5^0; 1.5/3",
    "expression": "2x + 3x; (2x + 4)/6; 6x/8; x × 3; 3 + 4; (2x)^2; x^1; x + 0; 2/4; 1x; x/(2x); "
    "x = 3; 3, 4; 2(x); (2)(3)x; xyx; (x/2)/3; x/0; 6 + 2x + 1; x ÷ 2; √12 + x; 3/1; "
    "3(x + 1) + 2(x + 1); 1/(x + 1) + 2/(x + 1); √x + √x; 2^n + 3 × 2^n; 2√x - √x; "
    "(-x)/(-y); x/(-2); x(-y); √2√3x; 5x/0.5; -(-x); 0x; x^0; 0/x",
    "simplified": "3(x + 2) + y; (x^2 - 1)/(x - 1); x + x; (x^2 + 3x + 2)/(x + 2); x(x + 1) - x; "
    "1/x + 1/y; 2/(x + 1) + 3/(x - 2); (x^2 - y^2)/(x - y); (ax + ay)/(x + y); "
    "2/x - 1/(x + 1)",
    "expanded": "3(x + 2); "
    "(x + 1)^2; x(x + 5) + 6; x + 2x; (x + 1)(x + 2); -(x + 1); x^2 + (3x + 2)",
    "factorised": "x^2 + 5x + 6; 2(2x + 4); 2(x^2 - 9); x(x^2 + x); 3x + 6; (x + 1)(2x - 2); "
    "2(x/2 + 1); 4(x^4 - 16); x(4a^2 - 9b^2); 2(3(x + 1)); 6; x(2x + 4); 2(3x + 6); "
    "(x + 1)(2x + 2); (x^2 - 1)(x + 2); 3(x^3 - 8); x(x^3 + 1); (x^4 + 4)(x + 1); "
    "2(ax + ay + bx + by); (x^2 + 2xy + y^2 - 9)x; 2(x^4 - 5x^2 + 6); "
    "(x^3 + 3x^2 + 3x + 1)(y + 1); 2 × (x + 3); xx(y + 1); (0.5x + 1)(x + 2); "
    "3(x^2 - 2xy + y^2)",
    "surd": "√12; 1/(√2); √49; 2√2 + 3√2; (2√3)/4; 6/8; 0.5; x; 2√8; ∛16; 2(2 + 2√3); "
    "√2(1 + √3); 2(1 + √3)/4; 2(1 + √12); 2√3 × √5; √2√3; 2 + -√3; 1/√2",
    "standard-form": "32 × 10^3; 0.32 × 10^5; 3.2; 3.2 × 100; 10 × 10^2; 3.2 × 10^0.5; 10^4; 32000",
    "prime-factors": "12; 4 × 3; 2^2 × 2; 2 × 3^1; 2 + 3; 1 × 3; 2^2 × 6; x",
    "roots": "x = 6/4; x = 2 + 1; 5; -4, 7; x > 3; x = √8",
    "subject": "y - 2; x = y - x; x + 1 = y; x > y; x = (2y - 4)/6; 2x = y",
    "nth-term": "3x + 2; 2 + 3 + n; 5 + 3(n - 1); n + n; 2n + 4n",
    "lowest-terms": "6/8; 3/(-4); (-3)/(-4); -((-3)/4); 2 1/3; 0.75; 5/1; √2/2; 0/5; 3/0",
    "fraction": "2 1/3; 0.75; 3; 3/0; 1.5/2; (-6)/(-8)",
    "simplest": "7/3; 2 2/6; 4/6; -(-3); 5/1",
    "percentage": "0.4; 40; 12.50%; 200/3%; (3 + 4)%",
    "money": "£4.5; 4.50; £9/2; £(3 + 4); -4",
    "quantity": "3; 2.50 m; 9/2 kg",
    "one-to-n": "2 : 6; 1 : 10/4; 1 : 2.50; 1 : 3 × 2; 1 : 2 : 3; 3",
    "n-to-one": "6 : 2; 10/4 : 1; 1 : 3",
    "ratio": "4 : 6; 1.5 : 2; 1/2 : 3; 2 : 4 : 6; 3/4; 0 : 0",
    "solution": "x = 6/2; x = -(-3); x = 3/(-4); 2x = 6; x = 3 + 4; x > 3; x = 2.50; x = 5/1",
    "inequality": "x > 8/2; 2x > 6; x = 4; 4 < 2x; -2 < x > 1; x > 3 + 1",
    "power": "(5^3)^2; 2^3 × 2^4; 5^1; 5^0; 125; x; 5^(2 + 4); 5^(6/2); 2^3 × 1; x^5/x^2; "
    "(2/4)^3; x^2x^3; (xy)^2; 5^(2 × 3); 1/5^3; -(-3^2)",
    "powers": "2 × 2 × 3; (2^3)^2; 2^1 × 3; x × x; 2^3 × 2; a^2ba; 2^2 ÷ 3; 1 × 2^3",
    "prime-powers": "2 × 2 × 3; 4 × 3; 4^2 × 3; 2^2 × 2; 12; 2^-1 × 3; 2^1; 1",
    "product": "5^3; 5^2 × 5; 125; x; 1 × 5; 10 ÷ 2; (2 + 3) × 5; 2/4 × 3",
    "single-fraction": "1/x + 1/y; 2x/6; 1 + 1/x; 2 - 3/(x + 1); (1/x)/y; (x^2 - 1)/(x - 1)",
    "positive-indices": "3x^-2; x^(-1); 1/x^-2; x^2x^3",
    "rounded": "5/2; 1.3̇; 2 1/2; x; 2 + 3; £3.2",
}


@pytest.mark.parametrize("form", FITS)
def test_what_has_the_form_is_let_in(form):
    told = {text: form_fault(form, parse(text)) for text in FITS[form].split("; ")}
    assert told == dict.fromkeys(told, "")


@pytest.mark.parametrize("form", LACKS)
def test_what_lacks_the_form_is_told_why(form):
    told = {text: form_fault(form, parse(text)) for text in LACKS[form].split("; ")}
    assert [text for text, fault in told.items() if not fault or fault.endswith(".")] == []


def test_every_form_has_words_for_people():
    for form in FORMS:
        assert form_words(form)
        assert form_words(form)[0].islower()


ODD = [
    "9^(9^9)",
    "1/0",
    "x/0",
    "(1/0)x",
    "√(0 - 1)",
    "0^-1",
    "((x + 1)^9)^9",
    '"A", "B"',
    "x^(1/2)",
    "10^10",
    "□ + 1",
    "0/0",
    "3 1/2 : 2",
    "√0",
    "∛(x + 1)",
    "x = 1 or 2",
]


@given(st.sampled_from(sorted(FORMS)), st.sampled_from(ODD))
def test_no_rule_raises(form, text):
    assert isinstance(form_fault(form, parse(text)), str)


@given(*[st.integers(-9, 9)] * 4)
def test_a_product_of_two_brackets_is_factorised_exactly_when_nothing_is_shared(a, b, c, d):
    # (ax + b)(cx + d): each bracket may have no common factor left.
    if 0 in (a, b, c, d):
        return
    first, second = (
        t.Bracket(t.add(t.juxt(t.num(p), t.Sym("x")), t.num(q))) for p, q in ((a, b), (c, d))
    )
    fault = form_fault("factorised", t.Juxt((first, second)))
    assert (fault == "") == (gcd(a, b) == 1 == gcd(c, d))


@given(st.integers(-9, 9), st.integers(-12, 12), st.integers(-12, 12))
def test_a_quadratic_bracket_is_called_factorised_exactly_when_sympy_cannot_factor_it(a, b, c):
    if 0 in (a, c):
        return
    x = sympy.Symbol("x")
    _, factors = sympy.factor_list(a * x**2 + b * x + c)
    linear = all(sympy.degree(factor, x) == 1 for factor, _ in factors)
    text = f"{a}x^2 {'+' if b >= 0 else '-'} {abs(b)}x {'+' if c >= 0 else '-'} {abs(c)}"
    assert splits(algebra(parse(text)).top) == linear


SAYS = (
    ("lowest-terms", "2 1/3", "it is a mixed number"),
    ("lowest-terms", "1/√2", "its numerator and denominator are not both whole numbers"),
    ("lowest-terms", "3 + 4", "it is not worked out"),
    ("fraction", "0.75", "it is a decimal"),
    ("mixed", "7/3", "it is a fraction"),
    ("simplest", "7/3", "it is an improper fraction"),
    ("improper", "3/4", "its numerator is smaller than its denominator"),
    ("quantity", "4.50 kg", "it ends in a 0 that is not needed"),
    ("value", "27/3", "the division is not done"),
    ("surd", "3/(-4)", "the minus sign stands in the denominator"),
    ("expression", "3 : 4", "it is not an expression"),
    ("factorised", "2 × (x + 3)", "a product of factors is written without times signs"),
    ("factorised", "2(x^3 - 8)", "x^3 - 8 can be factorised further"),
    ("power", "(5^3)^2", "a power stands inside a power"),
    ("single-fraction", "1/x + 1/y", "it is not a single fraction"),
    ("positive-indices", "3x^-2", "a negative power is left"),
)


@pytest.mark.parametrize(("form", "text", "says"), SAYS)
def test_the_reason_is_true_and_names_what_is_missing(form, text, says):
    assert form_fault(form, parse(text)) == says


def test_no_message_speaks_of_tops_and_bottoms():
    for form, texts in LACKS.items():
        for text in texts.split("; "):
            assert not {"top", "tops", "bottom", "bottoms"} & set(
                form_fault(form, parse(text)).split()
            )
