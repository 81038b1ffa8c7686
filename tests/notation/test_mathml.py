"""What the printed page shows, sign by sign."""

from xml.etree import ElementTree

import pytest

from itembank.notation import NotationError, mathml, parse
from itembank.notation.mathml import body
from itembank.notation.tree import Int, Label, Quantity, Sym


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("5 - 3", "<mn>5</mn><mo>−</mo><mn>3</mn>"),
        ("-3", '<mo form="prefix">−</mo><mn>3</mn>'),
        ("5 - -3", '<mn>5</mn><mo>−</mo><mo form="prefix">−</mo><mn>3</mn>'),
        ("3x", "<mn>3</mn><mo>\u2062</mo><mi>x</mi>"),
        ("x < 3", "<mi>x</mi><mo>&lt;</mo><mn>3</mn>"),
        ("1234", "<mn>1234</mn>"),
        ("12345", "<mn>12\u2009345</mn>"),
        ("1234567.25", "<mn>1\u2009234\u2009567.25</mn>"),
        ("4.5 kg", "<mn>4.5</mn><mtext>\u2009kg</mtext>"),
        ("30 cm^2", "<mn>30</mn><msup><mtext>\u2009cm</mtext><mn>2</mn></msup>"),
        ("40°", "<mn>40</mn><mtext>°</mtext>"),
        ("40%", "<mn>40</mn><mtext>%</mtext>"),
        ("£4.50", "<mtext>£</mtext><mn>4.50</mn>"),
        ("45p", "<mn>45</mn><mtext>p</mtext>"),
        ("(x + 1)/3", "<mfrac><mrow><mi>x</mi><mo>+</mo><mn>1</mn></mrow><mn>3</mn></mfrac>"),
        ("x^2", "<msup><mi>x</mi><mn>2</mn></msup>"),
        ("√7", "<msqrt><mn>7</mn></msqrt>"),
        ("∛8", "<mroot><mn>8</mn><mn>3</mn></mroot>"),
        ("1, 2", "<mn>1</mn><mo>,</mo><mn>2</mn>"),
    ],
)
def test_printed_form(text, printed):
    assert body(parse(text)) == printed


def test_recurring_dots_stand_over_first_and_last_digit_only():
    printed = mathml(parse("0.1̇42857̇"))
    assert printed.count("<mover") == 2
    assert '<mn>1</mn><mo>˙</mo></mover><mn>4285</mn><mover accent="true"><mn>7</mn>' in printed
    assert mathml(parse("0.16̇")).count("<mover") == 1


def test_names_are_escaped():
    assert body(Label("A & B <x>")) == "<mtext>A &amp; B &lt;x&gt;</mtext>"
    assert body(Sym("<")) == "<mi>&lt;</mi>"


def test_what_is_not_notation_is_refused():
    with pytest.raises(NotationError, match="not a kind"):
        mathml("3/4")
    with pytest.raises(NotationError, match="not a sign"):
        mathml(parse("1 + 2").__class__(Int(1), (("±", Int(2)),)))
    assert "m" in mathml(Quantity(Int(3), "m"))


@pytest.mark.parametrize("text", ["3/4", "2 3/4 = 2.75", "□ + 3 = 5", "0.16̇", "√(x + 1)", "3 : 20"])
def test_the_typesetter_for_pages_draws_it(text):
    """Every element used is one that is set on pages: that refuses what it does not know."""
    from itembank.pages.engine.maths.setting import set_formula

    drawn = set_formula(mathml(parse(text)))
    assert drawn.width > 0.5
    assert drawn.ascent > 0.5


@pytest.mark.parametrize(
    ("text", "printed"),
    [("56 l", "56\u00a0litres"), ("1 l", "1\u00a0litre"), ("3/4 l", "34\u00a0litre")],
)
def test_litres_are_a_word_for_a_lone_l_reads_as_a_1(text, printed):
    assert "".join(ElementTree.fromstring(mathml(parse(text))).itertext()) == printed
