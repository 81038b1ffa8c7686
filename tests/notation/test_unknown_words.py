"""Words are told, products of letters are read. The lists are this project's own."""

import pytest
from hypothesis import given, reject
from hypothesis import strategies as st

from itembank.notation import NotationError, ParseError, line, parse, parse_together, parse_written
from itembank.notation.tree import Int, Juxt, Sym
from itembank.notation.unit_names import NAMES
from itembank.notation.unknown_words import unknown_word

PRODUCTS = """ab|xy|xyz|abc|3abc|12abcd|prt|lwh|V = lwh|V = lbh|I = PRT/100|v = u + at
s = ut + (1/2)at^2|v^2 = u^2 + 2as|2ab^2c|E = mgh|E = mc^2|A = πrl|V = πr^2h|A = (1/2)bh
y = mx + c|ax^2 + bx + c|b^2 - 4ac|F = ma|P = IV|V = IR|E = IVt|s = vt|p = mv|pqr|6pqr
2xy + 3yx|abx + cdy|4x^2yz|abcdef|3bcd|nRT|T = 2π√(l/g)|xxy|aab|(a + b)(c + d)|aa + bb
2lb + 2bh + 2lh|C = 2πr|A = lw|P = 2l + 2w|6mn|5pq - 2qp|(2/3)xy|ax + by = c|mgh = (1/2)mv^2
3x or 4y|3/4 of 48|√xy|4xyzw|PV = nRT|D = ST|d = st|cd + dc""".replace("\n", "|").split("|")

WORDS = """sweets|apples|boxes|marbles|pencils|eggs|chips|films|boys|girls|cows|sheep|trees|plants
pots|trays|seeds|buses|lengths|laps|swimmers|tickets|pupils|people|men|days off|cost|total|area
length|width|height|speed|distance|price|profit|answer|items|boxes each|coins|dots|cats|dogs|pens
rulers|packs|bags|tins|cans|jars|litres each|rows|seats|points|goals|stamps|cards|tiles|cups
spoons|tsp|tbsp|rpm|cents|dollars|euros each|people|ants|bees|stools|legs|wheels|eggs each
thousand|million|dozen|pairs|halves|thirds|quarters|tenths|units|squares|sides|edges""".replace(
    "\n", "|"
).split("|")


@pytest.mark.parametrize("text", PRODUCTS)
def test_products_that_teachers_write_are_read(text):
    assert parse(text) == parse_written(text)


@pytest.mark.parametrize("form", ["60 {}", "60{}", "{} = 60", "60 {} + 5", "x × {}"])
def test_words_are_told(form):
    for word in WORDS:
        with pytest.raises(ParseError) as refused:
            parse(form.format(word))
        said = str(refused.value)
        assert "put × between letters" in said or "function" in said, word
        assert f"‘{word.split()[0]}’" in said or "each" in word or "off" in word, word


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("sin(x + y)", "sin"),
        ("2sin x", "sin"),
        ("cosx", "cos"),
        ("tan 45°", "tan"),
        ("log 100", "log"),
        ("log(100)", "log"),
        ("ln 2", "ln"),
        ("lnx", "ln"),
        ("ln(x)", "ln"),
        ("exp(x)", "exp"),
        ("max(3, 4)", "max"),
        ("min(3, 4)", "min"),
        ("17 mod 5", "mod"),
        ("hcf(12, 18)", "hcf"),
        ("LCM(4, 6)", "LCM"),
        ("(1/2)absinC", "sin"),
        ("arctan x", "arctan"),
        ("abs(x)", "abs"),
        ("round(3)", "round"),
    ],
)
def test_functions_are_told_by_name(text, name):
    with pytest.raises(ParseError, match=f"‘{name}’ is the name of a function"):
        parse(text)


@pytest.mark.parametrize("text", ["x to y", "3 to 5", "x and y", "2 is x", "3 by 4", "x if y"])
def test_little_words_between_two_things_are_told(text):
    with pytest.raises(ParseError, match=r"a word|not a unit"):
        parse(text)


def test_the_message_says_what_to_do_and_where():
    with pytest.raises(ParseError) as refused:
        parse("5 + 60 sweets")
    assert str(refused.value) == (
        "‘sweets’ is not a unit that is known and no product of letters: "
        "write {60} sweets, or put × between letters."
    )
    assert refused.value.position == 8


@given(st.lists(st.sampled_from("abcdefghijklmnopqrstuvwxyz"), min_size=2, max_size=7))
def test_letters_known_for_numbers_are_a_product_whatever_they_spell(letters):
    product = Juxt(tuple(map(Sym, letters)))
    try:
        text = line(product)
    except ValueError:
        return  # it spells of, or
    alone = ", ".join(sorted(set(letters)))
    if (told := unknown_word(text, frozenset(letters))) is None:
        try:
            assert parse_together([alone, text])[1] == product
        except ParseError as error:
            assert "function" in str(error)  # noqa: PT017
    else:
        assert "function" in told.message
    assert parse_written(text) == product


@given(st.sets(st.sampled_from("bcdfghjklmnpqrstvwxyz"), min_size=2, max_size=4))
def test_products_in_the_order_of_the_alphabet_are_read(letters):
    """Without vowels no common word is met but those that are known to be one."""
    product = Juxt((Int(7), *map(Sym, sorted(letters))))
    try:
        text = line(product)
    except NotationError:
        reject()  # a unit: 7cl
    if text[1:] in NAMES:
        reject()  # a slip for a unit: 7kms
    try:
        assert parse(text) == product
    except ParseError as error:
        assert "two ways" in str(error) or "unit" in str(error) or "function" in str(error)  # noqa: PT017


def test_context_of_the_whole_question_counts():
    assert line(parse_together(["2c × 3a × 4t", "24cat"])[1]) == "24cat"
    with pytest.raises(ParseError):
        parse("24cat")
