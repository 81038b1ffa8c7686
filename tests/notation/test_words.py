"""What is said for what is printed (classroom practice, no source)."""

import contextlib
import random

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from itembank.notation import line, parse, words
from itembank.notation.tree import (
    Bracket,
    Dec,
    Frac,
    Int,
    Juxt,
    Label,
    Listing,
    Mixed,
    Neg,
    NotationError,
    Percent,
    Power,
    Product,
    Ratio,
    Root,
    Sum,
    Sym,
    walk,
)
from tests import depth
from tests.notation.trees import trees


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("3/4", "3 quarters"),
        ("1/2", "1 half"),
        ("2/3", "2 thirds"),
        ("7/12", "7 twelfths"),
        ("1/20", "1 twentieth"),
        ("7/45", "7 over 45"),
        ("x/5", "x over 5"),
        ("n/3 + 1", "n over 3, end of fraction, plus 1"),
        ("7/45 + 1", "7 over 45, end of fraction, plus 1"),
        ("x^n + 1", "x to the power n, end of power, plus 1"),
        ("5√2", "5 root 2"),
        ("(x + 1)/3 + 2", "the fraction x plus 1, over 3, end of fraction, plus 2"),
        ("(x + 1)/3", "the fraction x plus 1, over 3, end of fraction"),
        ("x + 1/3", "x plus 1 third"),
        ("2 3/4", "2 and 3 quarters"),
        ("x^2", "x squared"),
        ("x^3", "x cubed"),
        ("x^n", "x to the power n"),
        ("x^(n + 1)", "x to the power n plus 1, end of power"),
        ("3x", "3 x"),
        ("X", "capital X"),
        ("2π", "2 pi"),
        ("2(x + 1)", "2 open bracket x plus 1 close bracket"),
        ("-3", "negative 3"),
        ("-x", "minus x"),
        ("-3^2", "minus 3 squared"),
        ("(-3)^2", "open bracket negative 3 close bracket squared"),
        ("-3/4", "negative 3 quarters"),
        ("5 - 3", "5 minus 3"),
        ("5 - -3", "5 minus negative 3"),
        ("6 × 7 ÷ 2", "6 times 7 divided by 2"),
        ("x = 5", "x equals 5"),
        ("x ≤ 5", "x is less than or equal to 5"),
        ("x ≠ 5", "x is not equal to 5"),
        ("3 : 20", "3 to 20"),
        ("0.16̇", "0 point 1 6 recurring"),
        ("0.1̇42857̇", "0 point 1 4 2 8 5 7, with 1 4 2 8 5 7 recurring"),
        ("0.12̇3̇", "0 point 1 2 3, with 2 3 recurring"),
        ("£4.50", "4 pounds 50 pence"),
        ("£1.01", "1 pound 1 penny"),
        ("£0.75", "0 pounds 75 pence"),
        ("£3", "3 pounds"),
        ("£2.00", "2 pounds 0 pence"),
        ("45p", "45 pence"),
        ("1p", "1 penny"),
        ("40%", "40 per cent"),
        ("4.5 kg", "4 point 5 kilograms"),
        ("1 kg", "1 kilogram"),
        ("3/4 kg", "3 quarters of a kilogram"),
        ("1/2 h", "1 half of an hour"),
        ("30 cm^2", "30 square centimetres"),
        ("60 km/h", "60 kilometres per hour"),
        ("40°", "40 degrees"),
        ("3/4 of 60", "3 quarters of 60"),
        ("□ + 3", "a blank box plus 3"),
        ("√7", "the square root of 7"),
        ("∛(x + 1)", "the cube root of x plus 1, end of root"),
        ('1, 2, "Pack B"', "1, 2, Pack B"),
    ],
)
def test_phrase(text, said):
    assert words(parse(text)) == said


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("(x + 1)/3", "x + 1/3"),
        ("√(x + 1)", "√x + 1"),
        ("x^(n + 1)", "x^n + 1"),
        ("3/(45x)", "(3/45)x"),
        ("(x/2)y", "x/(2y)"),
        ("√(7x)", "√7x"),
        ("x/2^2", "(x/2)^2"),
        ("-(3 + 4)", "-3 + 4"),
        ("0.12̇3̇", "0.1̇23̇"),
        ("x", "X"),
        ("£0.75", "75p"),
        ("£2.00", "£2"),
        ("£0.05 + 1p", "5p + 1p"),
    ],
)
def test_two_readings_are_never_said_alike(one, other):
    assert words(parse(one)) != words(parse(other))


LEAVES = (Int(2), Int(3), Int(23), Sym("x"), Dec("0", "5"))


def larger(parts):
    """Return what one more step makes of some trees."""
    made = [Mixed(2, 1, 3)]
    for a in parts:
        made += [Neg(a), Bracket(a), Root(a, 2), Percent(a)]
        for b in parts:
            made += [Frac(a, b), Power(a, b), Juxt((a, b)), Ratio((a, b)), Listing((a, b))]
            made += [Sum(a, (("+", b),)), Sum(a, (("-", b),)), Product(a, (("×", b),))]
    return made


def printable(nodes):
    """Return the trees that can be printed and read back, by their line."""
    found = {}
    for node in nodes:
        with contextlib.suppress(NotationError):
            if parse(line(node)) == node:
                found[line(node)] = node
    return found


def test_no_two_of_many_thousand_trees_are_said_alike():
    small = printable((*LEAVES, *larger(LEAVES)))
    some = [*LEAVES, *random.Random(1).sample(list(small.values()), 40)]
    trees = printable((*small.values(), *larger(some)))
    assert len(trees) > 5000
    said = {}
    for typed, node in trees.items():
        said.setdefault(words(node), set()).add(typed)
    assert [group for group in said.values() if len(group) > 1] == []


MEASURED = """2 x 0.5 □ 1/2 x/2 2 1/2 x^-1 10^-2 √2 £3 £4.50 £0.50 50p £2.00 £2 £0.05 5p £12 □p 3 kg
1 h 30 min|1 h|30 min|1 m 50 cm|150 cm|3 cm^2|60 km/h|40°|40%|1 l|2 days|09:30|9:30 am|9 am|3 : 4
-3|-x|0.3̇|∛2|1/2 of 3|(1/2)/3|1/(2/3)|2^(1/2)|x^(-n)|2 1/2 h"""
JOINED = """%s + %s|%s - %s|%s × %s|%s ÷ %s|(%s)(%s)|(%s)/(%s)|%s/%s|%s/(%s)|(%s)/%s|(%s)^(%s)|%s^%s
%s%s|%s of %s|%s = %s|%s, %s|%s : %s|%s or %s|-%s + %s|√(%s) + %s|√%s + %s|-(%s) - %s|(%s)%% + %s
2(%s)/(%s)|1/(%s/%s)"""


def cases(text):
    return [
        one for row in text.split("\n") for one in (row.split("|") if "|" in row else row.split())
    ]


def read(text):
    """Return the tree a text writes, None where it writes none."""
    try:
        tree = parse(text)
        line(tree)
    except NotationError:
        return None
    return tree


def test_no_two_of_money_times_units_powers_fractions_and_roots_are_said_alike():
    leaves = cases(MEASURED)
    joined = [how % (a, b) for how in cases(JOINED) for a in leaves for b in leaves]
    typed = [*leaves, *random.Random(1).sample(joined, 8000)]
    found = {line(tree): tree for text in typed if (tree := read(text)) is not None}
    assert len(found) > 4000
    said = {}
    for text, tree in found.items():
        said.setdefault(words(tree), []).append(text)
    assert [group for group in said.values() if len(group) > 1] == []


@settings(deadline=None, max_examples=depth.cases(30, 300))
@given(trees, st.data())
def test_a_question_that_is_written_a_little_otherwise_is_said_otherwise(tree, data):
    """A sign left out, put in, or moved: wherever that is another tree, other words are said."""
    # A name is said as it stands, whatever it says.
    assume(not any(isinstance(node, Label) for node in walk(tree)))
    typed = line(tree)
    at = data.draw(st.integers(0, len(typed)))
    to = data.draw(st.integers(0, len(typed)))
    sign = data.draw(st.sampled_from([*"()+-×÷/^√∛=:,%p0123456789.x ", " of ", " or ", "£", " m"]))
    without = typed[:at] + typed[at + 1 :]
    for other in (
        without,
        typed[:at] + sign + typed[at:],
        without[:to] + typed[at : at + 1] + without[to:],
    ):
        changed = read(other)
        if changed is not None and changed != tree and line(changed) != typed:
            assert words(changed) != words(tree), (typed, line(changed))
